import type { Format } from './recording.ts';
import { encodingOf } from './text.ts';

/** Every sentence that says what can be read says this. */
export const READ = 'GPX, TCX, FIT and CSV can be read.';

/** Files that people choose by mistake, by the letters at their start. */
const OTHERS: readonly { start: string; message: string }[] = [
  { start: 'PK\u0003\u0004', message: 'This is a zip archive: unpack it first, and choose the recording in it.' },
  { start: '\u001f\u008b', message: 'This file is packed (gzip): unpack it first.' },
  { start: 'BZh', message: 'This file is packed: unpack it first.' },
  { start: '7z\u00bc\u00af', message: 'This is an archive: unpack it first, and choose the recording in it.' },
  { start: 'Rar!', message: 'This is an archive: unpack it first, and choose the recording in it.' },
  { start: '%PDF', message: `This is a PDF: ${READ}` },
  { start: '\u0089PNG', message: `This is a picture: ${READ}` },
  { start: '\u00ff\u00d8\u00ff', message: `This is a picture: ${READ}` },
  { start: 'GIF8', message: `This is a picture: ${READ}` },
  { start: 'RIFF', message: `This is a picture, a sound or a film: ${READ}` },
  { start: 'ID3', message: `This is a sound: ${READ}` },
  { start: '{', message: `This looks like JSON: ${READ}` },
];

/** How much of a file is looked at for the name of its root. */
const START = 65_536;

/** A file without its start is still known by its points. */
const POINT = /<(?:[\w.-]+:)?(?:trkpt|rtept|Trackpoint)[\s>]/;

/** What a file is, by its content; a sentence where it is nothing that can be read. */
export function kindOf(bytes: Uint8Array): { format: Format } | { message: string } {
  if (bytes.length === 0) return { message: 'This file is empty.' };
  const letters = String.fromCharCode(...bytes.subarray(0, 14));
  if (letters.slice(8, 12) === '.FIT') return { format: 'fit' };
  if (letters.slice(4, 8) === 'ftyp') return { message: `This is a picture or a film: ${READ}` };
  const other = OTHERS.find(({ start }) => letters.startsWith(start));
  if (other) return { message: other.message };

  const text = new TextDecoder(encodingOf(bytes)).decode(bytes.subarray(0, START)).trimStart();
  if (text === '') return { message: 'There is nothing in this file.' };
  if (text.startsWith('<') || POINT.test(text)) return kindOfXml(text);
  const strange = [...text.slice(0, 4000)].filter(
    (letter) => (letter < ' ' && !'\t\n\r\f'.includes(letter)) || letter === '\ufffd',
  );
  if (strange.length > 40) return { message: `This is not a recording that can be read: ${READ}` };
  return { format: 'csv' };
}

function kindOfXml(text: string): { format: Format } | { message: string } {
  // a damaged start still leaves its points to know it by
  const found = /<(?:[\w.-]+:)?(gpx|trk|trkseg|trkpt|rte|rtept|TrainingCenterDatabase|Trackpoint)[\s>/]/.exec(
    text,
  )?.[1];
  if (found === 'TrainingCenterDatabase' || found === 'Trackpoint') return { format: 'tcx' };
  if (found) return { format: 'gpx' };
  if (/<(?:!doctype\s+)?html/i.test(text))
    return { message: `This is a web page, perhaps one that was saved in place of the file: ${READ}` };
  if (/<svg[\s>]/.test(text)) return { message: `This is a picture: ${READ}` };
  if (/<kml[\s>]/.test(text)) return { message: `This is a KML file, which seldom holds times: ${READ}` };
  return { message: `This is XML of another kind: ${READ}` };
}

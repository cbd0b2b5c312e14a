import { readRecording } from '../../calculators/your-hill/reading/readRecording.ts';
import { type Part, problemText, type Recording } from '../../calculators/your-hill/reading/recording.ts';

/** Reads a text, or bytes, as a page would. */
export const read = (content: string | Uint8Array, file = 'file'): Recording =>
  readRecording(typeof content === 'string' ? new TextEncoder().encode(content) : content, file);

/** The only part of a recording. */
export function onlyPart(recording: Recording): Part {
  const [part, ...others] = recording.parts;
  if (!part || others.length) throw new Error(`${recording.parts.length} parts: ${said(recording)}`);
  return part;
}

/** All its sentences. */
export const said = ({ problems, notes }: Recording): string => [...problems.map(problemText), ...notes].join('\n');

/** Sum of the rises, as recorded: the crudest gain. */
export function rises(elevation: Iterable<number>): number {
  let sum = 0;
  let last = Number.NaN;
  for (const value of elevation) {
    if (value > last) sum += value - last;
    if (!Number.isNaN(value)) last = value;
  }
  return sum;
}

const point = (lat: number | string, lon: number | string, inner = ''): string =>
  `<trkpt lat="${lat}" lon="${lon}">${inner}</trkpt>`;

/** A point of a track that goes north from the open ocean by about 5.56 m each second. */
export const pointAt = (second: number, inner = `<ele>${100 + second}</ele>`): string =>
  point((-48.9 + second * 5e-5).toFixed(6), -123.4, `${inner}${timeAt(second)}`);

export const timeAt = (second: number): string =>
  `<time>${new Date(1_777_629_600_000 + second * 1000).toISOString()}</time>`;

/** GPX of one segment, a point a line from line 3 on. */
export const gpxOf = (...points: readonly string[]): string =>
  `<gpx version="1.1">\n<trk><trkseg>\n${points.join('\n')}\n</trkseg></trk>\n</gpx>`;

export const seconds = (count: number): number[] => Array.from({ length: count }, (_, second) => second);

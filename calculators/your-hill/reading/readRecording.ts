import { readCsv } from './csv.ts';
import { readFit } from './fit.ts';
import { readGpx } from './gpx.ts';
import { kindOf } from './kind.ts';
import { nothingRead } from './nothingRead.ts';
import { collectProblems, type Problems } from './problems.ts';
import { type Format, LARGEST, type Part, type Recording } from './recording.ts';
import { readTcx } from './tcx.ts';

export const tooLarge = (bytes: number): string =>
  `This file has ${Math.round(bytes / 1e6)} MB. Files of up to ${LARGEST / 1e6} MB are read.`;

/** What the reader of one format gives. */
export interface ReadParts {
  parts: Part[];
  notes: string[];
  cutShort: boolean;
  /** a problem says already why there are no parts */
  explained?: boolean;
}

const READERS: Record<
  Format,
  (bytes: Uint8Array, problems: Problems, onProgress: (share: number) => void) => ReadParts
> = {
  gpx: readGpx,
  tcx: readTcx,
  fit: readFit,
  csv: readCsv,
};

/**
 * What a file holds: rides, routes, and in sentences what could not be read. What kind of file it is, its content tells and not its name.
 * `onProgress` hears shares from 0 to 1. Never throws.
 */
export function readRecording(
  bytes: Uint8Array,
  file: string,
  onProgress: (share: number) => void = () => {},
): Recording {
  try {
    if (bytes.length > LARGEST) return nothingRead(file, tooLarge(bytes.length));
    const kind = kindOf(bytes);
    if ('message' in kind) return nothingRead(file, kind.message);
    const problems = collectProblems(kind.format === 'fit' ? 'record' : 'line');
    const { parts, notes, cutShort, explained = false } = READERS[kind.format](bytes, problems, onProgress);
    if (parts.length === 0 && !explained) problems.say(NO_PARTS);
    onProgress(1);
    return { file, format: kind.format, parts, problems: problems.list(), notes, cutShort };
  } catch (error) {
    // a mistake of ours, and still no reason for a page to stop
    console.error(error);
    return nothingRead(file, 'This file could not be read: something in it was not foreseen.');
  }
}

const NO_PARTS = 'There is no track or route in this file: at least two points with places or distances are needed.';

import type { Track } from '../../model/index.ts';

/** Bytes of the largest file that is read; a packed one counts as it is unpacked. */
export const LARGEST = 60_000_000;

/** What a file holds, whatever its format. */
export interface Recording {
  /** name of the file */
  file: string;
  /** undefined: none of them, and a problem says what it looks like */
  format: Format | undefined;
  /** tracks, activities, courses, routes: what has at least two points, in the order of the file */
  parts: Part[];
  /** what could not be read, and what was left out; the first few of each kind */
  problems: ReadProblem[];
  /** sentences on what was used and what was passed over, without any fault in the file */
  notes: string[];
  /** the file ends before its end: the parts hold what is whole */
  cutShort: boolean;
}

export type Format = 'gpx' | 'tcx' | 'fit' | 'csv';

/** One ride or route of a file. */
export interface Part {
  /** as the file calls it, else "Track 2" and the like */
  name: string;
  /** a route has no times: it is a hill without a ride */
  kind: 'ride' | 'route';
  track: Track;
  /** what its distance was taken from: the line on the ellipsoid from point to point, or the device's counter where there are no positions */
  distanceFrom: 'positions' | 'counter';
  /** m of the distance that were covered at less than 1 km/h: positions wander while a bike stands, and that adds up */
  crept: number;
  /** totals that the device wrote itself */
  device: DeviceTotals;
}

/** SI; absent where the file does not say. */
export interface DeviceTotals {
  distance?: number;
  gain?: number;
  /** s from start to end, pauses included; and without them */
  elapsed?: number;
  moving?: number;
}

/** A sentence about the file, and where in it: "line 812", "record 40", or nothing where it is about the whole. */
export interface ReadProblem {
  where: string;
  message: string;
}

/** "Line 812: The time goes back." */
export const problemText = ({ where, message }: ReadProblem): string =>
  where ? `${where[0]?.toUpperCase()}${where.slice(1)}: ${message}` : message;

import {
  type ClimbFigures,
  type ComparedDistances,
  climbFigures,
  compareDistances,
  findClimbs,
  type Gains,
  gainsOf,
  type Mended,
  mendElevation,
  smoothElevation,
  type Track,
} from '../model/index.ts';

/** How heights are treated; m. */
export interface ElevationChoice {
  /** of road, over which heights are smoothed */
  window: number;
  /** least rise that counts in the gain by threshold */
  threshold: number;
}

/** What is found in a part of a recording. */
export interface Analysis {
  /** m above sea level, mended and smoothed: what climbs and their figures are taken from */
  height: Float64Array;
  mended: Mended[];
  gains: Gains;
  /** along the way, both ends included */
  climbs: { from: number; to: number; figures: ClimbFigures }[];
  /** which of them is the hardest; −1 where there is none */
  hardest: number;
  /** by positions against the device's counter */
  compared: ComparedDistances | null;
  /** of the whole */
  figures: ClimbFigures;
}

/** Climbs that are listed: the hardest ones. A long ride over rolling land has dozens that nobody would call one. */
export const MOST_CLIMBS = 12;

/** Mends and smooths the heights of a part and finds its climbs. Linear in the points. */
export function analyse(track: Track, { window, threshold }: ElevationChoice): Analysis {
  const { distance, breaks } = track;
  const { elevation, mended } = mendElevation(track);
  const height = smoothElevation(distance, elevation, window, breaks);
  const byHardness = findClimbs(distance, height, breaks).slice(0, MOST_CLIMBS);
  const hardest = byHardness[0]?.from;
  const climbs = byHardness
    .sort((a, b) => a.from - b.from)
    .map(({ from, to }) => ({ from, to, figures: climbFigures(track, height, from, to) }));
  return {
    height,
    mended,
    gains: gainsOf(distance, elevation, breaks, { window, threshold }),
    climbs,
    hardest: climbs.findIndex(({ from }) => from === hardest),
    compared: compareDistances(track),
    figures: climbFigures(track, height, 0, distance.length - 1),
  };
}

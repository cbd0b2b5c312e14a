import {
  type Climb,
  type ClimbFigures,
  climbFigures,
  mendElevation,
  type Reserves,
  type RideSetting,
  steepness,
  type Track,
} from '../model/index.ts';
import { type Analysis, analyse, type ElevationChoice } from './analysis.ts';
import { type HillBelow, hillBelow, type NoHill } from './below.ts';
import { type Calibrated, calibrated } from './calibrated.ts';
import { type Altitude, altitudeOf, type Differences, differences } from './closeness.ts';

/*
 * What takes longer than a frame on a long recording, one thing made from another. It is done in a worker (`workbench-worker.ts`), and on
 * the page itself only where there are none.
 */

/** Something to be worked out, of the track, the heights and the hill that were last. */
export type Task =
  | { is: 'track'; track: Track }
  | { is: 'analysis'; choice: ElevationChoice }
  | { is: 'figures'; stretch: { from: number; to: number } }
  | { is: 'hill'; stretch: { from: number; to: number } }
  | { is: 'differences'; climb: Climb; reserves: Reserves }
  | { is: 'calibration'; stretch: { from: number; to: number }; setting: RideSetting };

export interface Results {
  track: undefined;
  analysis: Analysis | undefined;
  figures: StretchFigures | undefined;
  hill: HillBelow | NoHill;
  differences: Differences | undefined;
  calibration: Calibrated | undefined;
}

/** A stretch in figures. */
export interface StretchFigures {
  figures: ClimbFigures;
  /** m of road by class of grade (tan), the gentlest first */
  steepness: { low: number; high: number; distance: number }[];
  /** above the sea; undefined where nothing has a height */
  altitude: Altitude | undefined;
}

/** Most classes of steepness, and how wide they may be (tan): the narrowest that are no more than those. */
const MOST_CLASSES = 12;
const WIDTHS = [0.02, 0.04, 0.1, 0.2];

function figuresOf(track: Track, height: Float64Array, { from, to }: { from: number; to: number }): StretchFigures {
  const classes = WIDTHS.map((width) => steepness(track.distance, height, from, to, width));
  return {
    figures: climbFigures(track, height, from, to),
    // a class that nothing falls in says nothing
    steepness: (classes.find(({ length }) => length <= MOST_CLASSES) ?? []).filter((each) => each.distance >= 0.5),
    altitude: altitudeOf(track.distance, height, { from, to }),
  };
}

/** Works tasks off; it remembers what the next one is made from. */
export function openWorkbench(): (task: Task) => Results[Task['is']] {
  let track: Track | undefined;
  /** m, mended and not smoothed */
  let mended: Float64Array = new Float64Array();
  let height: Float64Array = new Float64Array();
  let choice: ElevationChoice | undefined;
  let picked: { hill: HillBelow; stretch: { from: number; to: number } } | undefined;
  return (task) => {
    switch (task.is) {
      case 'track':
        ({ track } = task);
        mended = mendElevation(track).elevation;
        return undefined;
      case 'analysis': {
        if (!track) return undefined;
        const analysis = analyse(track, task.choice);
        ({ height } = analysis);
        ({ choice } = task);
        return analysis;
      }
      case 'figures':
        return track && figuresOf(track, height, task.stretch);
      case 'hill': {
        const hill: HillBelow | NoHill = track ? hillBelow(track, height, task.stretch) : { problem: 'none' };
        picked = 'problem' in hill ? undefined : { hill, stretch: task.stretch };
        return hill;
      }
      case 'differences':
        if (!track || !choice || !picked) return undefined;
        return differences({ track, mended, height, window: choice.window, ...picked }, task.climb, task.reserves);
      case 'calibration':
        return track && calibrated(track, mended, task.stretch, task.setting);
    }
  };
}

import {
  type Climb,
  type ClimbFigures,
  calibrateRide,
  climbFigures,
  hillFromProfile,
  type Profile,
  type Reserves,
  type RideCalibration,
  type RideSetting,
  rideStages,
  steepness,
  type Track,
} from '../model/index.ts';
import { type Analysis, analyse, type ElevationChoice } from './analysis.ts';
import { type HillBelow, hillBelow, type NoHill } from './below.ts';

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
  | { is: 'difference'; climb: Climb; reserves: Reserves }
  | { is: 'calibration'; stretch: { from: number; to: number }; setting: RideSetting };

export interface Results {
  track: undefined;
  analysis: Analysis | undefined;
  figures: StretchFigures | undefined;
  hill: HillBelow | NoHill;
  /** s that the ride along the few pieces takes longer than along every point */
  difference: number;
  calibration: RideCalibration | undefined;
}

/** A stretch in figures. */
export interface StretchFigures {
  figures: ClimbFigures;
  /** m of road by class of grade (tan), the gentlest first */
  steepness: { low: number; high: number; distance: number }[];
}

/** Most classes of steepness, and how wide they may be (tan): the narrowest that are no more than those. */
const MOST_CLASSES = 12;
const WIDTHS = [0.02, 0.04, 0.1, 0.2];

function figuresOf(track: Track, height: Float64Array, { from, to }: { from: number; to: number }): StretchFigures {
  const classes = WIDTHS.map((width) => steepness(track.distance, height, from, to, width));
  return {
    figures: climbFigures(track, height, from, to),
    steepness: classes.find(({ length }) => length <= MOST_CLASSES) ?? [],
  };
}

/** Works tasks off; it remembers what the next one is made from. */
export function openWorkbench(): (task: Task) => Results[Task['is']] {
  let track: Track | undefined;
  let height: Float64Array = new Float64Array();
  let hill: HillBelow | NoHill = { problem: 'none' };
  return (task) => {
    switch (task.is) {
      case 'track':
        ({ track } = task);
        return undefined;
      case 'analysis': {
        if (!track) return undefined;
        const analysis = analyse(track, task.choice);
        ({ height } = analysis);
        return analysis;
      }
      case 'figures':
        return track && figuresOf(track, height, task.stretch);
      case 'hill':
        if (track) hill = hillBelow(track, height, task.stretch);
        return hill;
      case 'difference': {
        if ('problem' in hill) return Number.NaN;
        const { simple, full } = hill;
        const timeAlong = (profile: Profile): number =>
          rideStages({ ...task.climb, hill: hillFromProfile(profile) }, task.reserves).time;
        return timeAlong(simple) - timeAlong(full);
      }
      case 'calibration':
        return track && calibrateRide(track, height, task.stretch.from, task.stretch.to, task.setting);
    }
  };
}

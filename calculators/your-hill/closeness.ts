import {
  type Climb,
  cutProfile,
  hillFromProfile,
  type Profile,
  profileError,
  type Reserves,
  rideStages,
  smoothElevation,
  type Track,
} from '../model/index.ts';
import { at } from '../model/track/columns.ts';
import type { HillBelow } from './below.ts';

/*
 * How close the hill that is ridden is to what was recorded: few pieces stand for many points, and smoothing rounds ramps.
 */

/** s by which a ride takes longer elsewhere than along the hill below, and m by which that hill is off. */
export interface Differences {
  /** along every point, as smoothed */
  points: number;
  /** with heights smoothed over half and over twice the window; undefined where there is no road left */
  half: { window: number; time: number } | undefined;
  twice: { window: number; time: number } | undefined;
  /** the most that a height of the hill below is off what was recorded, zeros and spikes mended */
  offRecorded: number;
}

interface Picked {
  track: Track;
  /** m, mended; and smoothed over `window` too */
  mended: Float64Array;
  height: Float64Array;
  window: number;
  hill: HillBelow;
  stretch: { from: number; to: number };
}

/** Holds the hill below against the recording, ridden by one bike. Linear in the points. */
export function differences(
  { track, mended, height, window, hill, stretch: { from, to } }: Picked,
  climb: Climb,
  reserves: Reserves,
): Differences {
  const { distance, breaks } = track;
  const timeAlong = (profile: Profile): number =>
    rideStages({ ...climb, hill: hillFromProfile(profile) }, reserves).time;
  const time = timeAlong(hill.simple);
  const smoothedOver = (other: number): Differences['half'] => {
    try {
      const road = cutProfile(distance, smoothElevation(distance, mended, other, breaks), breaks, from, to);
      return { window: other, time: timeAlong(road) - time };
    } catch {
      return undefined;
    }
  };
  const recorded = cutProfile(distance, mended, breaks, from, to);
  // both begin at zero, and smoothing moves the foot too
  const foot = at(mended, from) - at(height, from) || 0;
  const lifted = { ...recorded, height: recorded.height.map((each) => each + foot) };
  return {
    points: timeAlong(hill.full) - time,
    half: window > 0 ? smoothedOver(window / 2) : undefined,
    twice: window > 0 ? smoothedOver(2 * window) : undefined,
    offRecorded: profileError(lifted, hill.simple).largest,
  };
}

/** m above the sea: the lowest, the highest, and the mean along the road. */
export interface Altitude {
  low: number;
  high: number;
  mean: number;
}

/** How high a stretch lies; undefined where nothing has a height. */
export function altitudeOf(
  distance: Float64Array,
  height: Float64Array,
  { from, to }: { from: number; to: number },
): Altitude | undefined {
  let [low, high, sum, way] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0];
  for (let i = from; i <= to; i++) {
    const here = at(height, i);
    if (!Number.isFinite(here)) continue;
    low = Math.min(low, here);
    high = Math.max(high, here);
    const length = i > from ? at(distance, i) - at(distance, i - 1) : 0;
    const before = at(height, i - 1);
    if (!(length > 0) || !Number.isFinite(before)) continue;
    sum += (length * (here + before)) / 2;
    way += length;
  }
  return way > 0 ? { low, high, mean: sum / way } : undefined;
}

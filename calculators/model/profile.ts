import { type Hill, hillFromGain } from './hill.ts';

/** A road of varying grade, straight between its points. */
export interface Profile {
  /** m along the road from the bottom: 0 first, strictly rising, at least two */
  distance: Float64Array;
  /** m above the bottom: 0 first, as many; between two points it changes by less than the distance does */
  height: Float64Array;
}

/**
 * A hill from its profile: distance, gain (top less bottom) and grade of the whole, with the profile to ride along.
 * @throws RangeError where the whole gains as much height as it is long
 */
export function hillFromProfile(profile: Profile): Hill {
  const distance = profile.distance.at(-1) ?? 0;
  return { ...hillFromGain(distance, profile.height.at(-1) ?? 0), profile };
}

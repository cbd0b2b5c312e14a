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

/** Height, m above the bottom, after `distance` (m along the road) of a hill: on its profile where it has one. At the ends it stays what it is there. */
export function heightAt(hill: Hill, distance: number): number {
  if (!hill.profile) return distance * hill.sin;
  const { distance: along, height } = hill.profile;
  const at = (list: Float64Array, i: number): number => list[i] ?? Number.NaN;
  let [before, after] = [0, along.length - 1];
  if (distance <= 0) return at(height, 0);
  if (distance >= at(along, after)) return at(height, after);
  while (after - before > 1) {
    const middle = (before + after) >> 1;
    if (at(along, middle) <= distance) before = middle;
    else after = middle;
  }
  const share = (distance - at(along, before)) / (at(along, after) - at(along, before));
  return at(height, before) + share * (at(height, after) - at(height, before));
}

/**
 * Grade (tan) of the steepest stretch of `window` metres along a road, and where it begins (m): of the whole where that is shorter.
 * Between the points of the road the rise over such a stretch goes straight, so the most is where one of its ends is at a point.
 */
export function steepestStretch(hill: Hill, window: number): { grade: number; from: number } {
  const { profile, distance, grade } = hill;
  if (!profile || distance <= window) return { grade, from: 0 };
  let [most, start] = [Number.NEGATIVE_INFINITY, 0];
  for (const point of profile.distance)
    for (const from of [point, point - window]) {
      if (from < 0 || from + window > distance) continue;
      const rise = heightAt(hill, from + window) - heightAt(hill, from);
      if (rise > most) [most, start] = [rise, from];
    }
  return { grade: most / Math.sqrt(window * window - most * most), from: start };
}

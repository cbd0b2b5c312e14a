import { type Hill, hillFromGain } from './hill.ts';
import { at, type PointRange } from './track/columns.ts';

/** A road of varying grade, straight between its points. */
export interface Profile {
  /** m along the road from the bottom: 0 first, strictly rising, at least two */
  distance: Float64Array;
  /** m above the bottom: 0 first, as many; between two points it changes by less than the distance does */
  height: Float64Array;
}

/** The profile of a road that is straight from bottom to top: m along it, and m gained. */
export function straightProfile(distance: number, gain: number): Profile {
  return { distance: Float64Array.of(0, distance), height: Float64Array.of(0, gain) };
}

/** The profile of a hill, straight from bottom to top where none is known. */
export function profileOf({ profile, distance, gain }: Hill): Profile {
  return profile ?? straightProfile(distance, gain);
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
  return hill.profile ? heightOn(hill.profile, distance) : distance * hill.sin;
}

/** Height, m above the bottom, after `distance` (m along the road) of a profile. At the ends it stays what it is there. */
export function heightOn({ distance: along, height }: Profile, distance: number): number {
  let [before, after] = [0, along.length - 1];
  if (distance <= 0) return at(height, 0);
  if (distance >= at(along, after)) return at(height, after);
  while (after - before > 1) {
    const middle = (before + after) >> 1;
    if (at(along, middle) <= distance) before = middle;
    else after = middle;
  }
  return heightBetween(along, height, before, distance);
}

/** Height, m, at a place (m along the road) between the points `i` and `i + 1`. */
function heightBetween(distance: Float64Array, height: Float64Array, i: number, place: number): number {
  const way = at(distance, i + 1) - at(distance, i);
  const share = way > 0 ? (place - at(distance, i)) / way : 0;
  return at(height, i) + share * (at(height, i + 1) - at(height, i));
}

/** Grade (tan) of the steepest stretch of `window` metres along a road, and where it begins (m): of the whole where that is shorter. */
export function steepestStretch(hill: Hill, window: number): { grade: number; from: number } {
  const { profile, distance, grade } = hill;
  if (!profile || distance <= window) return { grade, from: 0 };
  const { rise, from } = steepestRise(profile, { from: 0, to: profile.distance.length - 1 }, window);
  return { grade: rise / Math.sqrt(window * window - rise * rise), from };
}

/**
 * The most that a road rises over `length` metres within a part of its points, in m, and where it begins, m along it; −Infinity where the part is shorter.
 * Between the points of the road the rise over such a stretch goes straight, so the most is where one of its ends is at a point. Linear in the points.
 */
export function steepestRise(
  { distance, height }: Profile,
  { from, to }: PointRange,
  length: number,
): { rise: number; from: number } {
  const best = { rise: Number.NEGATIVE_INFINITY, from: 0 };
  const take = (rise: number, start: number): void => {
    if (rise > best.rise) [best.rise, best.from] = [rise, start];
  };
  let [behind, ahead] = [from, from];
  for (let i = from; i <= to; i++) {
    const here = at(distance, i);
    if (here - length >= at(distance, from)) {
      while (behind < to - 1 && at(distance, behind + 1) <= here - length) behind++;
      take(at(height, i) - heightBetween(distance, height, behind, here - length), here - length);
    }
    if (here + length <= at(distance, to)) {
      while (ahead < to - 1 && at(distance, ahead + 1) <= here + length) ahead++;
      take(heightBetween(distance, height, ahead, here + length) - at(height, i), here);
    }
  }
  return best;
}

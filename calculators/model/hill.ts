import type { Profile } from './profile.ts';

/**
 * A hill of constant grade, or of the mean grade of its profile where it has one. `distance` runs along the road, `gain` is vertical, so
 * `sin = gain / distance` and the grade of the trade is `tan`. A falling hill has a negative gain.
 */
export interface Hill {
  /** m along the road */
  distance: number;
  /** m, vertical */
  gain: number;
  sin: number;
  cos: number;
  /** tan of the slope angle: 0.10 is a "10 % grade" */
  grade: number;
  /** how the road climbs on its way, where that is known: rides then go along it */
  profile?: Profile;
}

/**
 * Hill from distance along the road and height gained, both in metres.
 * @throws RangeError when the distance is not positive, or no smaller than the height: a road cannot climb more than its length.
 */
export function hillFromGain(distance: number, gain: number): Hill {
  if (!(distance > 0)) throw new RangeError('A hill needs a distance above zero.');
  if (!(Math.abs(gain) < distance)) throw new RangeError('A hill cannot gain as much height as it is long.');
  const sin = gain / distance;
  const cos = Math.sqrt(1 - sin * sin);
  return { distance, gain, sin, cos, grade: sin / cos };
}

/** Hill from distance along the road (m) and grade (tan). */
export function hillFromGrade(distance: number, grade: number): Hill {
  return hillFromGain(distance, distance * sinOfGrade(grade));
}

/** Sine of the slope angle whose tangent is `grade`. */
export function sinOfGrade(grade: number): number {
  return grade / Math.sqrt(1 + grade * grade);
}

/**
 * Distance along the road (m) that gains `gain` metres at `grade` (tan).
 * Zero or opposite grade never gets there: Infinity.
 */
export function distanceForGain(gain: number, grade: number): number {
  const distance = gain / sinOfGrade(grade);
  return distance > 0 ? distance : Number.POSITIVE_INFINITY;
}

/*
 * What a road may be, whether it is typed, read from a link or cut from a recording: what one of them gives, the others take. All four are
 * ours: wider than roads that are ridden, narrow enough for a slip of the pen to be noticed.
 */

/** Steepest road: tan of its slope angle. */
export const STEEPEST_GRADE = 0.6;
/** m along the whole road: least and most. */
export const SHORTEST_ROAD = 20;
export const LONGEST_ROAD = 200_000;
/** m: no point is further above or below the bottom. */
export const FARTHEST_HEIGHT = 9000;

/** Whether a piece of `way` metres that rises (or falls) by `rise` is steeper than `STEEPEST_GRADE`, or no road at all. */
export function isTooSteep(way: number, rise: number): boolean {
  return !(way > Math.abs(rise)) || Math.abs(rise) > STEEPEST_GRADE * Math.sqrt(way * way - rise * rise);
}

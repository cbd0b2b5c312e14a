import { at } from '../model/track/columns.ts';

/*
 * A stretch of a recording, and moving its ends. A start lies after what was waited there, a top before it.
 */

/** Points of a recording from a start to a top, both included. */
export interface Stretch {
  from: number;
  to: number;
  /** the reader set its ends; else it is a climb that was found, and follows it when the heights are smoothed otherwise */
  own: boolean;
}

export type End = 'start' | 'top';

/** m: a shorter stretch is not offered. */
export const SHORTEST_STRETCH = 50;

/** The point nearest to a place (m along the way), the last of several that are as near. */
export function nearestPoint(distance: Float64Array, metres: number): number {
  let [low, high] = [0, distance.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(distance, middle) <= metres) low = middle;
    else high = middle;
  }
  return at(distance, high) - metres <= metres - at(distance, low) ? high : low;
}

/** Of the points at one place, the one that a start or a top is: the last or the first. */
function settle(distance: Float64Array, index: number, end: End): number {
  let i = index;
  if (end === 'start') while (i < distance.length - 1 && at(distance, i + 1) === at(distance, index)) i++;
  else while (i > 0 && at(distance, i - 1) === at(distance, index)) i--;
  return i;
}

/**
 * The stretch with one end moved to a place (m along the way): to the nearest point, and no nearer to the other end than
 * `SHORTEST_STRETCH`, where the way is as long.
 */
export function moveEnd(distance: Float64Array, stretch: Stretch, end: End, metres: number): Stretch {
  const { from, to } = stretch;
  const limit = end === 'start' ? at(distance, to) - SHORTEST_STRETCH : at(distance, from) + SHORTEST_STRETCH;
  const wanted = end === 'start' ? Math.min(metres, limit) : Math.max(metres, limit);
  let index = nearestPoint(distance, wanted);
  // the nearest point may lie on the wrong side of the limit
  if (end === 'start') while (index > 0 && at(distance, index) > limit) index--;
  else while (index < distance.length - 1 && at(distance, index) < limit) index++;
  const settled = settle(distance, index, end);
  const moved = end === 'start' ? { from: settled, to } : { from, to: settled };
  // on a way that is shorter than that, both ends stay apart at least
  return at(distance, moved.to) > at(distance, moved.from) ? { ...moved, own: true } : { ...stretch, own: true };
}

/**
 * The stretch with one end put at a place (m along the way) that somebody wrote. Where the other end is in the way it moves along and keeps
 * its distance, as far as the way goes: what is written is never changed.
 */
export function placeEnd(distance: Float64Array, stretch: Stretch, end: End, metres: number): Stretch {
  const [start, top] = [at(distance, stretch.from), at(distance, stretch.to)];
  const length = top - start;
  if (end === 'start' && metres > top - SHORTEST_STRETCH)
    return moveEnd(distance, moveEnd(distance, stretch, 'top', metres + length), 'start', metres);
  if (end === 'top' && metres < start + SHORTEST_STRETCH)
    return moveEnd(distance, moveEnd(distance, stretch, 'start', metres - length), 'top', metres);
  return moveEnd(distance, stretch, end, metres);
}

/** Where an end can be on a way of so many metres: the other one needs its place too. */
export const boundsOf = (end: End, whole: number): { min: number; max: number } =>
  end === 'start'
    ? { min: 0, max: Math.max(0, whole - SHORTEST_STRETCH) }
    : { min: Math.min(whole, SHORTEST_STRETCH), max: whole };

/** The stretch with one end moved on by some metres, at least to the next point in that direction. */
export function stepEnd(distance: Float64Array, stretch: Stretch, end: End, by: number): Stretch {
  const index = end === 'start' ? stretch.from : stretch.to;
  const here = at(distance, index);
  const moved = moveEnd(distance, stretch, end, here + by);
  const isThere = at(distance, end === 'start' ? moved.from : moved.to) !== here;
  if (isThere) return moved;
  let next = index;
  const step = Math.sign(by);
  while (next + step >= 0 && next + step < distance.length && at(distance, next) === here) next += step;
  return moveEnd(distance, stretch, end, at(distance, next));
}

/** The climb that a stretch is: the one that shares most of the way with it. −1 where none shares any. */
export function climbOfStretch(
  distance: Float64Array,
  climbs: readonly { from: number; to: number }[],
  stretch: { from: number; to: number },
): number {
  let [best, most] = [-1, 0];
  climbs.forEach(({ from, to }, i) => {
    const shared = at(distance, Math.min(to, stretch.to)) - at(distance, Math.max(from, stretch.from));
    if (shared > most) [best, most] = [i, shared];
  });
  return best;
}

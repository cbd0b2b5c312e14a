import { at } from '../model/track/columns.ts';
import type { Window } from './drawn.ts';
import type { Stretch } from './stretch.ts';

/*
 * What the close-up of a stretch shows. A road that slides away under a finger, or is drawn anew after each move, cannot be worked on: so
 * the window stays while the stretch lies well in it, and only opens where a handle is held against its edge.
 */

/** Room on either side of a stretch that was picked, as a share of it, and the least of it, m. */
const ROOM = 0.3;
const LEAST_ROOM = 150;
/** A stretch lies well in its window while it takes at least this share of it, and leaves this share on either side. */
const LEAST_SHARE = 0.3;
const LEAST_MARGIN = 0.04;
/** How near to an edge, as a share of the window, a handle opens it, and by how much each time. */
const EDGE = 0.04;
const OPENING = 0.02;

const lengthOf = (distance: Float64Array): number => at(distance, distance.length - 1);

/** The stretch with room around it, within the way. */
export function windowAround(distance: Float64Array, { from, to }: Stretch): Window {
  const [low, high] = [at(distance, from), at(distance, to)];
  const room = Math.max(ROOM * (high - low), LEAST_ROOM);
  return { low: Math.max(0, low - room), high: Math.min(lengthOf(distance), high + room) };
}

/** The window for a stretch whose ends were moved: the one that is shown while that does. */
export function windowAfter(shown: Window, distance: Float64Array, stretch: Stretch): Window {
  const [start, top, whole] = [at(distance, stretch.from), at(distance, stretch.to), lengthOf(distance)];
  const span = shown.high - shown.low;
  const hasRoom =
    (start - shown.low >= LEAST_MARGIN * span || shown.low === 0) &&
    (shown.high - top >= LEAST_MARGIN * span || shown.high === whole);
  const isWithin = start >= shown.low && top <= shown.high && shown.high <= whole;
  return isWithin && hasRoom && top - start >= LEAST_SHARE * span ? shown : windowAround(distance, stretch);
}

/**
 * The window opened where a handle is held against its edge.
 * @param share where the handle is held, 0 to 1 across the window, or beyond
 */
export function opened(shown: Window, distance: Float64Array, share: number): Window {
  const by = OPENING * (shown.high - shown.low);
  if (share < EDGE) return { ...shown, low: Math.max(0, shown.low - by) };
  if (share > 1 - EDGE) return { ...shown, high: Math.min(lengthOf(distance), shown.high + by) };
  return shown;
}

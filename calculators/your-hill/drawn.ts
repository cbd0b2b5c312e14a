import { type Break, isPause } from '../model/index.ts';
import { at, known, stretchesOf } from '../model/track/columns.ts';
import { roundNumbers, type Tick } from '../parts/scale.ts';
import { formatNumber, fromSi, type Kind, type System, shownUnit, toSi } from '../quantities/index.ts';

/** What a chart shows of a way: m along it. */
export interface Window {
  low: number;
  high: number;
}

type Line = (readonly [metres: number, height: number])[];

/**
 * The line of a profile in as few points as an eye can tell from all: of each slice of the way its lowest and its highest point. One line
 * for each run of points without a break or a hole between them.
 * @param most points, about
 */
export function drawnLines(
  distance: Float64Array,
  height: Float64Array,
  breaks: readonly Break[],
  { low, high }: Window,
  most = 600,
): Line[] {
  const slice = (high - low) / (most / 2);
  const lines: Line[] = [];
  // a line goes on to what lies outside on either side, so that it reaches the edge
  const [first, last] = [pointBefore(distance, low), Math.min(distance.length - 1, pointBefore(distance, high) + 1)];
  const spans = stretchesOf(height.length, breaks).map(({ from, to }) => ({
    from: Math.max(from, first),
    to: Math.min(to, last),
  }));
  for (const { from, to } of known(height, spans)) {
    const kept: number[] = [from];
    for (let i = from; i <= to; ) {
      // at least the point itself, also where points are further apart than slices are wide
      const end = Math.max(at(distance, i), Math.min(high, at(distance, i)) + slice);
      let [lowest, highest] = [i, i];
      for (; i <= to && at(distance, i) <= end; i++) {
        if (at(height, i) < at(height, lowest)) lowest = i;
        if (at(height, i) > at(height, highest)) highest = i;
      }
      kept.push(Math.min(lowest, highest), Math.max(lowest, highest));
      if (i > to) kept.push(to);
    }
    const line = [...new Set(kept)].map((i) => [at(distance, i), at(height, i)] as const);
    if (line.length > 1) lines.push(line);
  }
  return lines;
}

/** The last point that lies before a place (m along the way), or the first one. */
function pointBefore(distance: Float64Array, metres: number): number {
  let [low, high] = [0, distance.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(distance, middle) < metres) low = middle;
    else high = middle;
  }
  return low;
}

/** Where a way is interrupted, m along it: breaks that are no pause on the spot. */
export function gapsIn(distance: Float64Array, height: Float64Array, breaks: readonly Break[]): number[] {
  return breaks
    .filter((each) => each.index > 0 && each.index < height.length && !isPause(each, height))
    .map(({ index }) => distance[index] ?? Number.NaN);
}

/** Fewest marks of a scale. */
const LEAST_MARKS = 3;

/** Round marks between two values (SI) in the reader's unit. */
export function ticksBetween(
  { low, high }: Window,
  kind: Kind,
  system: System,
  count = 4,
): { unit: string; ticks: Tick[] } {
  const unit = shownUnit(kind, system);
  const [from, to] = [fromSi(low, unit), fromSi(high, unit)];
  // one number makes no scale: then closer ones
  const stepFor = (most: number): number => roundNumbers(to - from, most)[1] ?? to - from;
  const marksOf = (step: number): number => Math.floor(to / step + 1e-9) - Math.ceil(from / step - 1e-9) + 1;
  const steps = [count, 1.5 * count, 2 * count].map(stepFor);
  const step = steps.find((each) => marksOf(each) >= LEAST_MARKS) ?? stepFor(3 * count);
  const digits = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return {
    unit: unit.text,
    ticks: Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
      const shown = (first + i) * step;
      return { at: toSi(shown, unit), text: formatNumber(shown, digits) };
    }),
  };
}

/** Lowest and highest of some lines, with room above and below; never so little that noise looks like a hill. */
export function heightsOf(lines: readonly Line[], least = 20): Window {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const line of lines)
    for (const [, height] of line) {
      low = Math.min(low, height);
      high = Math.max(high, height);
    }
  if (!(high >= low)) return { low: 0, high: least };
  const room = Math.max(least - (high - low), 0.16 * (high - low)) / 2;
  return { low: low - room, high: high + room };
}

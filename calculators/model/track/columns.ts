import type { Break } from './track.ts';

/** A run of points, both ends included. */
export interface PointRange {
  from: number;
  to: number;
}

/** Value of a column at a point that exists. */
export const at = (column: ArrayLike<number>, index: number): number => column[index] as number;

/** The stretches between breaks. */
export function stretchesOf(points: number, breaks: readonly Break[]): PointRange[] {
  const spans: PointRange[] = [];
  let from = 0;
  for (const { index } of breaks) {
    if (index <= from || index >= points) continue;
    spans.push({ from, to: index - 1 });
    from = index;
  }
  if (from < points) spans.push({ from, to: points - 1 });
  return spans;
}

/** The parts of a span in which every point has a value. */
export function known(column: ArrayLike<number>, spans: readonly PointRange[]): PointRange[] {
  const parts: PointRange[] = [];
  for (const { from, to } of spans) {
    let start = -1;
    for (let i = from; i <= to + 1; i++) {
      const there = i <= to && Number.isFinite(at(column, i));
      if (there && start < 0) start = i;
      if (!there && start >= 0) {
        parts.push({ from: start, to: i - 1 });
        start = -1;
      }
    }
  }
  return parts;
}

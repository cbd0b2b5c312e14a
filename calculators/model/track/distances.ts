import { at, type PointRange, stretchesOf } from './columns.ts';
import type { Track } from './track.ts';

/** How far one stretch is by either count. */
export interface ComparedStretch {
  from: number;
  to: number;
  /** m, sum over the positions */
  positions: number;
  /** m by the device's own counter */
  counter: number;
}

/** The way by positions beside the way by the device's counter. */
export interface ComparedDistances {
  /** over all stretches, m */
  positions: number;
  counter: number;
  stretches: ComparedStretch[];
  /** the stretch on which the two differ most, in metres */
  worst: ComparedStretch;
}

/**
 * Compares the way that the positions add up to with the device's counter, over the whole and for each stretch between breaks.
 * A sum of positions is inflated wherever the rider stands or goes slowly, since every error of a position adds to it, and cut short
 * in bends; a wheel sensor is wrong by what its circumference is. Where the counter falls it began anew: neither way is counted there.
 * Where a track's distance was itself taken from the counter the two agree, which says nothing.
 * @returns null where no stretch has a counter
 */
export function compareDistances({
  distance,
  counter,
  breaks,
}: Pick<Track, 'distance' | 'counter' | 'breaks'>): ComparedDistances | null {
  const stretches = stretchesOf(distance.length, breaks).flatMap((stretch): ComparedStretch[] => {
    const compared = compareStretch(distance, counter, stretch);
    return compared.positions + compared.counter > 0 ? [compared] : [];
  });
  const [first, ...others] = stretches;
  if (!first) return null;
  const off = (stretch: ComparedStretch): number => Math.abs(stretch.positions - stretch.counter);
  return {
    positions: stretches.reduce((sum, stretch) => sum + stretch.positions, 0),
    counter: stretches.reduce((sum, stretch) => sum + stretch.counter, 0),
    stretches,
    worst: others.reduce((worst, stretch) => (off(stretch) > off(worst) ? stretch : worst), first),
  };
}

function compareStretch(distance: Float64Array, counter: Float64Array, { from, to }: PointRange): ComparedStretch {
  const compared = { from, to, positions: 0, counter: 0 };
  let last = -1;
  for (let i = from; i <= to; i++) {
    if (!Number.isFinite(at(counter, i))) continue;
    const ahead = last < 0 ? -1 : at(counter, i) - at(counter, last);
    if (ahead >= 0) {
      compared.positions += at(distance, i) - at(distance, last);
      compared.counter += ahead;
    }
    last = i;
  }
  return compared;
}

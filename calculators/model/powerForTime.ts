import type { Climb } from './climb.ts';
import { crossingOf } from './crossing.ts';
import { type Reserves, rideStages } from './stages.ts';

/** W. No rider and no motor has it: where it is too slow, nothing is fast enough. */
const BEYOND = 1e6;

/** W, as good as none. */
const LEAST = 1e-3;

/** Share of the time that the search leaves. */
const EXACT = 1e-10;

/**
 * Power, W, with which a ride takes `time` (s), by trying. `lowest` where that is as fast already, Infinity where no power is fast enough.
 * Where more power is slower, as it can be with a motor that gets hot, it is one of several.
 * @param climbAt the climb with that power, of whatever gives it
 * @param guess where to look first, W
 */
export function powerForTime(
  climbAt: (power: number) => Climb,
  reserves: Reserves,
  time: number,
  lowest: number,
  guess = 200,
): number {
  /** how much faster than asked for, as a share: it grows about evenly with power; what rounding leaves of it is nothing */
  const ahead = (power: number): number => {
    const share = time / rideStages(climbAt(power), reserves).time - 1;
    return Math.abs(share) < EXACT ? 0 : share;
  };
  let high = Math.min(Math.max(guess, lowest, LEAST), BEYOND);
  let off = ahead(high);
  let low = high;
  // up or down, further each time, by somewhat more than should be enough
  for (let reach = 1.5; off < 0; reach *= 2) {
    if (high >= BEYOND) return Number.POSITIVE_INFINITY;
    low = high;
    high = Math.min(BEYOND, high * Math.min(10, 1.02 * (1 + off) ** -reach));
    off = ahead(high);
  }
  for (let reach = 1.5; low === high && off > 0; reach *= 2) {
    low = Math.max(lowest, high * Math.max(0.1, 0.98 * (1 + off) ** -reach));
    if (low < LEAST) low = lowest;
    off = ahead(low);
    if (off >= 0) {
      if (low === lowest) return lowest;
      high = low;
    }
  }
  return off === 0 ? high : crossingOf(ahead, low, high);
}

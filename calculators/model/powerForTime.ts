import type { Climb } from './climb.ts';
import { crossingOf } from './crossing.ts';
import { type Reserves, rideStages } from './stages.ts';

/** W. No rider and no motor has it: where it is too slow, nothing is fast enough. */
const BEYOND = 1e6;

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
  /** how much faster than asked for, as a share: it grows about evenly with power */
  const ahead = (power: number): number => time / rideStages(climbAt(power), reserves).time - 1;
  let high = Math.max(guess, lowest);
  let low = lowest;
  if (ahead(high) < 0) {
    do {
      if (high >= BEYOND) return Number.POSITIVE_INFINITY;
      low = high;
      high = Math.min(BEYOND, 1.4 * high + 1);
    } while (ahead(high) < 0);
  } else {
    for (let next = 0.7 * high; ; next *= 0.7) {
      if (next <= Math.max(lowest, 1e-9)) {
        if (ahead(lowest) >= 0) return lowest;
        break;
      }
      if (ahead(next) < 0) {
        low = next;
        break;
      }
      high = next;
    }
  }
  return crossingOf(ahead, low, high);
}

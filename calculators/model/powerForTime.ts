import type { Climb } from './climb.ts';
import { type Reserves, rideStages } from './stages.ts';

/** W. No rider and no motor has it: where it is too slow, nothing is fast enough. */
const BEYOND = 1e6;

/** W, as good as none. */
const LEAST = 1e-3;

/** Share of the time that the search leaves. */
const EXACT = 1e-12;

/** Of what lifts more than it pushes air, and is not all that does. */
const STEEPNESS = -1.2;

/** So near and with so little left of the last two, the next power is as exact without a ride. */
const NEARLY = 1e-6;
const LEFT = 1e-13;

/** Rides that are enough for any search: where the time jumps, halving comes to its end before. */
const MOST_RIDES = 200;

/** How a power is looked for. */
export interface Search {
  /** W, where to look first: the power of a climb that is nearly the same spares rides */
  guess?: number | undefined;
  /** power goes about as time to this power, below zero */
  steepness?: number | undefined;
  /** rides a climb; for one that remembers its rides */
  riding?: typeof rideStages | undefined;
}

/**
 * Power, W, with which a ride takes `time` (s), by trying. `lowest` where that is as fast already, Infinity where no power is fast enough.
 * Where more power is slower, as it can be with a motor that gets hot, it is one of several.
 *
 * By the secant of the last two rides; by halving once a power on either side is known and the secant leads out between them, or hardly on.
 * @param climbAt the climb with that power, of whatever gives it
 */
export function powerForTime(
  climbAt: (power: number) => Climb,
  reserves: Reserves,
  time: number,
  lowest: number,
  { guess = 200, steepness = STEEPNESS, riding = rideStages }: Search = {},
): number {
  /** how much faster than asked for, as a share: it grows about evenly with power; what rounding leaves of it is nothing */
  const ahead = (power: number): number => {
    const share = time / riding(climbAt(power), reserves).time - 1;
    return Math.abs(share) < EXACT ? 0 : share;
  };
  let power = Math.min(Math.max(guess, lowest, LEAST), BEYOND);
  let off = ahead(power);
  // a power that is too slow, and one that is fast enough
  let [low, high] = [Number.NaN, Number.NaN];
  let next = power * (1 + off) ** steepness;
  for (let i = 0; i < MOST_RIDES && off !== 0; i++) {
    if (off < 0) {
      if (power >= BEYOND) return Number.POSITIVE_INFINITY;
      low = power;
    } else {
      if (power === lowest) return lowest;
      high = power;
    }
    if (high - low <= 1e-12 * high) return high;
    // at most ten times as much or as little, and never back
    if (Number.isNaN(high)) next = next > power ? Math.min(next, 10 * power, BEYOND) : Math.min(2 * power, BEYOND);
    else if (Number.isNaN(low)) next = next < power ? Math.max(next, power / 10, lowest) : Math.max(power / 2, lowest);
    else if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (next < LEAST) next = lowest;
    const before = { power, off };
    power = next;
    off = ahead(power);
    const isSlow = Math.abs(off) > 0.5 * Math.abs(before.off);
    next = power - (off * (power - before.power)) / (off - before.off);
    if (isSlow && high > low) next = Number.NaN;
    // a secant leaves some of the product of what the last two left: that need not be ridden to be known
    else if (Math.abs(off) < NEARLY && Math.abs(off * before.off) < LEFT && next > lowest) return next;
  }
  return power;
}

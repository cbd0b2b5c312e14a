import { crossingOf } from './crossing.ts';
import { noncentralTCdf, studentizedRangeQuantile, tQuantile } from './distributions.ts';
import { effectiveFreedom } from './gum.ts';

/** A test that is still to be ridden: every bike as often, all up the same hill. */
export interface TestPlan {
  /**
   * what the whole of its total power at the crank, rider and motor, is worth on each bike, in the unit that differences are to have: that power
   * itself, W, or the seconds that it loses for each share of it
   */
  perShare: readonly number[];
  /** standard deviation of one run, relative to total power: wind, line, pacing and what the meter scatters */
  scatter: number;
  /** standard uncertainty of a bike's total power that no further run lessens (unlike tyres, drive), relative; 0 without */
  fixed: number;
  /** control runs, all together: from two on their scatter counts too */
  controls: number;
  /** two bikes are judged as one among all pairs of the day (Tukey), not as the only pair that anybody speaks of */
  amongAll: boolean;
}

/** How well a plan tells two of its bikes apart. */
export interface PairPrecision {
  /** of their difference, in the unit of `perShare` */
  standardError: number;
  /** degrees of freedom of that, by Welch and Satterthwaite where a part is fixed; 0 when no run is ridden twice */
  freedom: number;
  /** a difference is called real when it is more than this many standard errors */
  critical: number;
}

/** Most runs on each bike that a plan looks at. */
export const MOST_REPEATS = 60;

/** Degrees of freedom of the scatter, pooled over all bikes and the control runs. */
export function pooledFreedom(bikes: number, repeats: number, controls: number): number {
  return bikes * Math.max(0, repeats - 1) + Math.max(0, controls - 1);
}

/**
 * Precision of the difference between two bikes, by index, with `repeats` runs on each. What all runs share (hill, meter scale, control
 * runs) is left out: it changes both alike.
 */
export function pairPrecision(plan: TestPlan, first: number, second: number, repeats: number): PairPrecision {
  const bikes = plan.perShare.length;
  const size = Math.hypot(plan.perShare[first] ?? Number.NaN, plan.perShare[second] ?? Number.NaN);
  const parts = [
    { standard: (plan.scatter * size) / Math.sqrt(repeats), freedom: pooledFreedom(bikes, repeats, plan.controls) },
    { standard: plan.fixed * size },
  ];
  const freedom = effectiveFreedom(parts);
  return {
    standardError: Math.hypot(...parts.map(({ standard }) => standard)),
    freedom,
    critical: !(freedom > 0)
      ? Number.POSITIVE_INFINITY
      : plan.amongAll
        ? studentizedRangeQuantile(0.95, bikes, freedom) / Math.SQRT2
        : tQuantile(0.975, freedom),
  };
}

/**
 * Chance that a true difference, in the unit of the standard error, comes out real and the right way round: the power of the two-sided 5 % t test from the noncentral t, exact
 * for normal scatter. Coming out real the wrong way round does not count.
 */
export function powerOfPair(difference: number, { standardError, freedom, critical }: PairPrecision): number {
  if (critical === Number.POSITIVE_INFINITY) return 0;
  if (standardError === 0) return difference === 0 ? 0 : 1;
  // beyond 200 standard errors nothing is in doubt
  const noncentrality = Math.min(Math.abs(difference) / standardError, 200);
  return 1 - noncentralTCdf(critical, freedom, noncentrality);
}

/**
 * Fewest runs on each bike, from 2 on, with which a true difference, in the unit of `perShare`, comes out real with the chance `wanted`.
 * Null when `MOST_REPEATS` do not reach it, as where what is fixed hides the difference.
 */
export function repeatsFor(
  plan: TestPlan,
  first: number,
  second: number,
  difference: number,
  wanted = 0.8,
): number | null {
  const enough = (repeats: number): boolean =>
    powerOfPair(difference, pairPrecision(plan, first, second, repeats)) >= wanted;
  if (!enough(MOST_REPEATS)) return null;
  // every further run helps, so the fewest lies between the most that fails and the least that does not
  let [fails, reaches] = [1, MOST_REPEATS];
  while (reaches - fails > 1) {
    const middle = Math.floor((fails + reaches) / 2);
    if (enough(middle)) reaches = middle;
    else fails = middle;
  }
  return reaches;
}

/** Smallest true difference, in the unit of `perShare`, that comes out real with the chance `wanted`. Null when no run is ridden twice. */
export function detectableDifference(
  plan: TestPlan,
  first: number,
  second: number,
  repeats: number,
  wanted = 0.8,
): number | null {
  const precision = pairPrecision(plan, first, second, repeats);
  if (precision.critical === Number.POSITIVE_INFINITY) return null;
  if (precision.standardError === 0) return 0;
  const missing = (errors: number): number => powerOfPair(errors * precision.standardError, precision) - wanted;
  let high = precision.critical;
  while (missing(high) < 0) high *= 2;
  return crossingOf(missing, 0, high) * precision.standardError;
}

/** Bikes by index in the order of riding, round by round; every bike once in each. */
export type Order = readonly (readonly number[])[];

const counted = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

/**
 * A balanced Latin square (Williams 1949): every bike stands in each place equally often, as far as the number of rounds allows, and within
 * the rounds follows each other bike equally often after `bikes` rounds (an odd number of bikes: after twice as many). Of three bikes or more
 * none is ridden twice in a row.
 */
export function rotatedOrder(bikes: number, repeats: number): Order {
  // 0, last, 1, last but one, … : neighbours differ by every step just once (an odd number of bikes: once together with the mirrored rounds)
  const first = counted(bikes).map((place) => (place % 2 === 0 ? place / 2 : bikes - (place + 1) / 2));
  return counted(repeats).map((round) => {
    const shift = round % bikes;
    const mirrored = bikes % 2 === 1 && Math.floor(round / bikes) % 2 === 1;
    return mirrored
      ? first.map((bike) => (bike + shift) % bikes).reverse()
      : first.map((bike) => (bike + bikes - shift) % bikes);
  });
}

/** There and back (ABBA): after each second round every bike has stood, on the mean, in the middle, so that a steady drift cancels. */
export function forwardAndBack(bikes: number, repeats: number): Order {
  const forward = counted(bikes);
  return counted(repeats).map((round) => (round % 2 === 0 ? forward : forward.toReversed()));
}

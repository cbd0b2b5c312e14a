import {
  noncentralTCdf,
  normalQuantile,
  pairPrecision,
  powerOfPair,
  type TestPlan,
  tQuantile,
} from '../../calculators/model/index.ts';
import type { Check, Status } from './check.ts';

/** Two bikes that scatter by 1: our plan is then the textbook's t test of two groups. */
export const twoGroups: TestPlan = { perShare: [1, 1], scatter: 1, fixed: 0, controls: 0, amongAll: false };

/** Chance that a difference of so many standard deviations comes out real, two groups of n each. */
export const powerOfGroups = (difference: number, n: number): number =>
  powerOfPair(difference, pairPrecision(twoGroups, 0, 1, n));

/** The same for n pairs, or for one group against a fixed value. */
export const powerOfPairs = (difference: number, n: number): number =>
  powerOfPair(difference, { standardError: 1 / Math.sqrt(n), freedom: n - 1, critical: tQuantile(0.975, n - 1) });

/** One-sided, one group. */
const powerOneSided = (difference: number, n: number): number =>
  1 - noncentralTCdf(tQuantile(0.95, n - 1), n - 1, difference * Math.sqrt(n));

/** Size, a real number, at which the power is reached: by halving. */
function sizeFor(power: number, difference: number): number {
  let [low, high] = [2, 1000];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (powerOfGroups(difference, middle) < power) low = middle;
    else high = middle;
  }
  return high;
}

const quantiles = (...chances: number[]): number => chances.reduce((sum, p) => sum + normalQuantile(p), 0);

/** The handbook's way: the size from t with the freedom of the size before. */
const iterated = (n: number): number => (tQuantile(0.95, n - 1) + tQuantile(0.9, n - 1)) ** 2;

type Row = [string, () => number, number];
const rows = (quantity: string, tolerance: number, source: string, status: Status, values: readonly Row[]): Check[] =>
  values.map(([given, computed, expected]) => ({
    quantity,
    given,
    expected,
    computed,
    unit: '',
    tolerance,
    source,
    status,
  }));

// to half a unit of the last digit that is given
export const sampleSize: Check[] = [
  ...rows('Runs needed by the normal formula', 5e-7, 'worked out apart', 'recomputed', [
    ['one group, 80 % chance', () => quantiles(0.975, 0.8) ** 2, 7.84888],
    ['one group, 90 % chance', () => quantiles(0.975, 0.9) ** 2, 10.507423],
  ]),
  ...rows('Runs needed by the normal formula', 0.005, 'Cohen 1988, two groups half a deviation apart', 'memory', [
    ['two groups, 80 % chance', () => (2 * quantiles(0.975, 0.8) ** 2) / 0.5 ** 2, 62.79],
  ]),
  ...rows('Runs needed, each step with t', 5e-4, 'NIST e-Handbook 7.2.2.2', 'memory', [
    // printed 8.567, 10.604 and 10.142; the first, worked out apart, is 8.5638
    ['after 9', () => iterated(9), 10.604],
    ['after 11', () => iterated(11), 10.142],
  ]),
  ...rows('Runs needed, each step with t', 5e-5, 'worked out apart', 'recomputed', [
    ['by the normal formula', () => quantiles(0.95, 0.9) ** 2, 8.5638],
    ['after 9', () => iterated(9), 10.6039],
    ['after 11', () => iterated(11), 10.142],
  ]),
  ...rows('Power of the t test', 5e-8, 'manual of a statistics language', 'memory', [
    ['two groups of 20, one deviation apart', () => powerOfGroups(1, 20), 0.8689528],
  ]),
  ...rows('Runs for 90 % power', 5e-6, 'manual of a statistics language', 'memory', [
    ['two groups, one deviation apart', () => sizeFor(0.9, 1), 22.0211],
  ]),
  ...rows('Power of the t test', 5e-6, 'worked out apart', 'recomputed', [
    ['two groups of 64, half a deviation apart', () => powerOfGroups(0.5, 64), 0.80146],
    ['two groups of 63, half a deviation apart', () => powerOfGroups(0.5, 63), 0.79517],
    ['34 pairs, half a deviation apart', () => powerOfPairs(0.5, 34), 0.80778],
    ['33 pairs, half a deviation apart', () => powerOfPairs(0.5, 33), 0.79536],
    ['one-sided, 11 values, one deviation off', () => powerOneSided(1, 11), 0.92449],
    ['one-sided, 10 values, one deviation off', () => powerOneSided(1, 10), 0.89752],
  ]),
];

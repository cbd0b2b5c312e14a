import { expect, test } from 'vitest';
import {
  autocorrelation1,
  crossingOf,
  fitLine,
  lineAt,
  meanOf,
  oneWayAnova,
  standardDeviation,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';

/* NIST's reference data stand in test/reference/statistics.ts. */

test('NIST NumAcc1 (seen in a secondary copy): 10000001, 10000003, 10000002, all exact', () => {
  const values = [10_000_001, 10_000_003, 10_000_002];
  expect(meanOf(values)).toBe(10_000_002);
  expect(standardDeviation(values)).toBe(1);
  expect(autocorrelation1(values)).toBe(-0.5);
});

test('a large constant takes no digits from the scatter', () => {
  // 1, 2 and 4 have variance 7/3; 2^40 + each of them is exact
  const values = [1, 2, 4].map((value) => value + 2 ** 40);
  expect(standardDeviation(values)).toBeCloseTo(Math.sqrt(7 / 3), 14);
});

test('one value has a mean but no scatter', () => {
  expect(meanOf([3])).toBe(3);
  expect(standardDeviation([3])).toBeNaN();
});

test('autocorrelation1 by hand: 1 2 3 4 falls short of 1 by its ends; up and down is negative', () => {
  // off the mean −1.5 −0.5 0.5 1.5: products 0.75 − 0.25 + 0.75 over 5
  expect(autocorrelation1([1, 2, 3, 4])).toBeCloseTo(0.25, 15);
  // off the mean −1 1 −1 1: −3 over 4
  expect(autocorrelation1([0, 2, 0, 2])).toBe(-0.75);
});

test('fitLine by hand: (0, 1), (1, 2), (2, 4), (3, 5)', () => {
  // mean 1.5 and 3; Sxx 5, Sxy 7: slope 1.4, intercept 0.9; residuals 0.1 −0.3 0.3 −0.1, squares 0.2, variance 0.1
  const fit = fitLine([0, 1, 2, 3], [1, 2, 4, 5]);
  expect(fit.slope).toBeCloseTo(1.4, 14);
  expect(fit.intercept).toBeCloseTo(0.9, 14);
  expect(fit.squares).toBeCloseTo(0.2, 14);
  expect(fit.explained).toBeCloseTo(9.8, 13);
  expect(fit.freedom).toBe(2);
  expect(fit.residualDeviation).toBeCloseTo(Math.sqrt(0.1), 14);
  expect(fit.slopeError).toBeCloseTo(Math.sqrt(0.1 / 5), 14);
  expect(fit.interceptError).toBeCloseTo(Math.sqrt(0.1 * (1 / 4 + 2.25 / 5)), 14);
  // −1.5/√(3.5): of squares of x
  expect(fit.correlation).toBeCloseTo(-1.5 / Math.sqrt(3.5), 14);
});

test('lineAt: at the mean of x the line is known best, to the scatter over √n', () => {
  const r = random(820);
  for (let i = 0; i < 200; i++) {
    const x = Array.from({ length: r.whole(3, 12) }, () => r.between(-5, 20));
    const fit = fitLine(
      x,
      x.map((value) => 3 + 0.5 * value + r.between(-1, 1)),
    );
    const middle = meanOf(x);
    const best = lineAt(fit, middle);
    // intercept and slope nearly cancel there, so a few digits go
    expect(relative(best.standard, fit.residualDeviation / Math.sqrt(x.length))).toBeLessThan(1e-8);
    expect(lineAt(fit, middle + 3).standard).toBeGreaterThan(best.standard);
    expect(lineAt(fit, 0).standard).toBeCloseTo(fit.interceptError, 14);
  }
});

test('oneWayAnova by hand: 1 2 3, 2 3 4 and 6 7 8', () => {
  // means 2, 3, 7, of all 4: between 3 (4 + 1 + 9) = 42 of 2, within 6 of 6; F 21; its tail with 2 above is (1 + F/3)^-3 = 1/512
  const { between, within, ratio, probability, residualDeviation } = oneWayAnova([
    [1, 2, 3],
    [2, 3, 4],
    [6, 7, 8],
  ]);
  expect(between).toEqual({ squares: 42, freedom: 2 });
  expect(within).toEqual({ squares: 6, freedom: 6 });
  expect(ratio).toBeCloseTo(21, 13);
  expect(probability).toBeCloseTo(1 / 512, 14);
  expect(residualDeviation).toBe(1);
});

test('the squares between and within groups of any size add up to those of all values', () => {
  const r = random(821);
  for (let i = 0; i < 200; i++) {
    const groups = Array.from({ length: r.whole(2, 6) }, () =>
      Array.from({ length: r.whole(2, 7) }, () => r.between(400, 900)),
    );
    const { between, within } = oneWayAnova(groups);
    const all = groups.flat();
    const total = standardDeviation(all) ** 2 * (all.length - 1);
    expect(relative(between.squares + within.squares, total)).toBeLessThan(1e-12);
    expect(between.freedom + within.freedom).toBe(all.length - 1);
  }
});

test('crossingOf finds the root of what bends either way, and of a line at once', () => {
  expect(crossingOf((x) => x ** 3 - 2, 0, 5)).toBeCloseTo(Math.cbrt(2), 12);
  expect(crossingOf((x) => 1 - Math.exp(3 - x), -4, 40)).toBeCloseTo(3, 12);
  let asked = 0;
  expect(
    crossingOf(
      (x) => {
        asked++;
        return 2 * x - 3;
      },
      0,
      4,
    ),
  ).toBe(1.5);
  expect(asked).toBe(3);
});

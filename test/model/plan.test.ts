import { describe, expect, test } from 'vitest';
import {
  detectableDifference,
  forwardAndBack,
  MOST_REPEATS,
  meanOf,
  normalDraw,
  type Order,
  pairPrecision,
  pooledFreedom,
  powerOfPair,
  randomSource,
  repeatsFor,
  rotatedOrder,
  type TestPlan,
  tQuantile,
} from '../../calculators/model/index.ts';
import { type Random, random, relative } from '../random.ts';
import { powerOfGroups, twoGroups } from '../reference/sample-size.ts';

/* Published powers and sizes stand in test/reference/sample-size.ts. */

/** Four bikes: two light-assist, a mid- and a full-assist one, 200 W of the rider; a run scatters by 1.5 %. */
const FOUR: TestPlan = { perShare: [500, 500, 650, 820], scatter: 0.015, fixed: 0, controls: 2, amongAll: false };

function anyPlan(r: Random): TestPlan {
  return {
    perShare: Array.from({ length: r.whole(2, 6) }, () => r.between(200, 1000)),
    scatter: r.between(0.003, 0.04),
    fixed: r.chance(0.5) ? 0 : r.between(0.001, 0.02),
    controls: r.whole(0, 4),
    amongAll: r.chance(0.3),
  };
}

describe('precision of a pair', () => {
  test('by hand: 4 bikes ridden 5 times and 2 control runs pool 4 · 4 + 1 = 17 degrees of freedom', () => {
    expect(pooledFreedom(4, 5, 2)).toBe(17);
    // one control run tells nothing of scatter, nor does one run on each bike
    expect(pooledFreedom(4, 5, 1)).toBe(16);
    expect(pooledFreedom(4, 1, 0)).toBe(0);
    const { standardError, freedom, critical } = pairPrecision(FOUR, 0, 1, 5);
    // 1.5 % of 500 W is 7.5 W; times √(2/5)
    expect(standardError).toBeCloseTo(7.5 * Math.sqrt(0.4), 12);
    expect(freedom).toBeCloseTo(17, 12);
    // 2.1098, table
    expect(critical).toBeCloseTo(2.1098, 4);
    // 1.5 % of √(500² + 820²), over √5
    expect(pairPrecision(FOUR, 0, 3, 5).standardError).toBeCloseTo((0.015 * Math.hypot(500, 820)) / Math.sqrt(5), 12);
  });

  test('among all pairs: q(0.95; 4, 20) of 3.958 over √2 (value from memory)', () => {
    // 4 bikes ridden 6 times have 20 degrees of freedom
    const { freedom, critical } = pairPrecision({ ...FOUR, controls: 0, amongAll: true }, 0, 1, 6);
    expect(freedom).toBeCloseTo(20, 12);
    expect(critical * Math.SQRT2).toBeCloseTo(3.958, 3);
  });

  test('what is fixed adds to the variance and brings degrees of freedom, by Welch and Satterthwaite', () => {
    // scatter 7.5 W over √3 = 4.330 on 9 degrees of freedom, fixed 5 W; for the pair each times √2
    const { standardError, freedom } = pairPrecision({ ...FOUR, fixed: 0.01 }, 0, 1, 3);
    expect(standardError).toBeCloseTo(Math.sqrt(2 * (18.75 + 25)), 10);
    // 9 (43.75/18.75)²
    expect(freedom).toBeCloseTo(49, 10);
  });

  test('nothing ridden twice: nothing can be called real, and nothing is detected', () => {
    const precision = pairPrecision({ ...FOUR, controls: 1 }, 0, 1, 1);
    expect(precision.critical).toBe(Infinity);
    expect(powerOfPair(1000, precision)).toBe(0);
    expect(detectableDifference({ ...FOUR, controls: 1 }, 0, 1, 1)).toBeNull();
  });
});

describe('power', () => {
  test('of no difference it is 2.5 %: real by chance, this way round; it grows with the difference, whichever sign, to 1', () => {
    const precision = pairPrecision(FOUR, 0, 1, 4);
    expect(powerOfPair(0, precision)).toBeCloseTo(0.025, 10);
    let last = 0;
    for (let difference = 1; difference < 60; difference++) {
      const power = powerOfPair(difference, precision);
      expect(power).toBeGreaterThan(last);
      expect(powerOfPair(-difference, precision)).toBe(power);
      last = power;
    }
    expect(last).toBeGreaterThan(0.999);
    expect(powerOfPair(1e9, precision)).toBeCloseTo(1, 12);
  });

  test('without scatter every difference is real', () => {
    const plan = { ...FOUR, scatter: 0 };
    expect(powerOfPair(0.1, pairPrecision(plan, 0, 1, 2))).toBe(1);
    expect(repeatsFor(plan, 0, 1, 0.1)).toBe(2);
    expect(detectableDifference(plan, 0, 1, 2)).toBe(0);
  });

  test('days ridden by chance come out real as often as planned, and by the right sign', { timeout: 60_000 }, () => {
    const DAYS = 10_000;
    const source = randomSource(840);
    for (const { repeats, fixed, amongAll } of [
      { repeats: 3, fixed: 0, amongAll: false },
      { repeats: 5, fixed: 0, amongAll: true },
      { repeats: 3, fixed: 0.008, amongAll: false },
      { repeats: 2, fixed: 0.004, amongAll: false },
    ]) {
      // two like bikes as far apart as should come out real on 80 of 100 days
      const plan = { ...FOUR, fixed, amongAll };
      const planned = pairPrecision(plan, 0, 1, repeats);
      const difference = detectableDifference(plan, 0, 1, repeats) ?? Number.NaN;
      const powers = plan.perShare.map((power, i) => power + (i === 0 ? -0.5 : i === 1 ? 0.5 : 0) * difference);
      let real = 0;
      for (let day = 0; day < DAYS; day++) {
        let squares = 0;
        const means = powers.map((power) => {
          const bike = power * (1 + fixed * normalDraw(source));
          const runs = Array.from({ length: repeats }, () => bike * (1 + plan.scatter * normalDraw(source)));
          const mean = meanOf(runs);
          squares += runs.reduce((sum, run) => sum + (run / mean - 1) ** 2, 0);
          return mean;
        });
        const controls = Array.from({ length: plan.controls }, () => 1 + plan.scatter * normalDraw(source));
        squares += controls.reduce((sum, run) => sum + (run / meanOf(controls) - 1) ** 2, 0);
        const scatter = Math.sqrt(squares / pooledFreedom(powers.length, repeats, plan.controls));
        const judged = pairPrecision({ ...plan, perShare: means, scatter, amongAll: false }, 0, 1, repeats);
        // without a fixed part the freedom is the same every day, and so is what Tukey asks for
        const critical = amongAll ? planned.critical : judged.critical;
        if ((means[1] ?? 0) - (means[0] ?? 0) > critical * judged.standardError) real++;
      }
      // four standard errors of a share of 10,000 are 1.6 points
      expect(Math.abs(real / DAYS - 0.8)).toBeLessThan(0.016);
    }
  });
});

describe('repeatsFor', () => {
  test('two groups a deviation apart need 17 each: 16.71 in the manual of a statistics language (value from memory)', () => {
    expect(repeatsFor(twoGroups, 0, 1, 1)).toBe(17);
    expect(powerOfGroups(1, 17)).toBeGreaterThan(0.8);
    expect(powerOfGroups(1, 16)).toBeLessThan(0.8);
    // 22.02 for 90 %
    expect(repeatsFor(twoGroups, 0, 1, 1, 0.9)).toBe(23);
  });

  test('is the least number that reaches the chance, and one run less does not', () => {
    const r = random(841);
    let found = 0;
    for (let i = 0; i < 100; i++) {
      const plan = anyPlan(r);
      const [difference, wanted] = [r.between(5, 60), r.between(0.5, 0.95)];
      const repeats = repeatsFor(plan, 0, 1, difference, wanted);
      const power = (n: number): number => powerOfPair(difference, pairPrecision(plan, 0, 1, n));
      if (repeats === null) {
        expect(power(MOST_REPEATS)).toBeLessThan(wanted);
        continue;
      }
      found++;
      expect(repeats).toBeGreaterThanOrEqual(2);
      expect(power(repeats)).toBeGreaterThanOrEqual(wanted);
      if (repeats > 2) expect(power(repeats - 1)).toBeLessThan(wanted);
    }
    expect(found).toBeGreaterThan(40);
  });

  test('what is fixed can hide a difference from any number of runs', () => {
    // 1 % of 500 W on each is 7.1 W between the two: 12 W are 1.7 of these, however often they are ridden
    expect(repeatsFor({ ...FOUR, fixed: 0.01 }, 0, 1, 12)).toBeNull();
    expect(repeatsFor(FOUR, 0, 1, 12)).not.toBeNull();
    // nor does any number show what is not there
    expect(repeatsFor(FOUR, 0, 1, 0)).toBeNull();
  });

  test('among all pairs of the day it takes more than alone', () => {
    const alone = repeatsFor(FOUR, 0, 1, 15) ?? 0;
    expect(repeatsFor({ ...FOUR, amongAll: true }, 0, 1, 15)).toBeGreaterThan(alone);
  });
});

describe('detectableDifference', () => {
  test('is the difference whose power is the wanted one', () => {
    const r = random(842);
    for (let i = 0; i < 100; i++) {
      const plan = anyPlan(r);
      const [repeats, wanted] = [r.whole(2, 12), r.between(0.3, 0.99)];
      const difference = detectableDifference(plan, 0, 1, repeats, wanted) ?? Number.NaN;
      expect(powerOfPair(difference, pairPrecision(plan, 0, 1, repeats))).toBeCloseTo(wanted, 10);
    }
  });

  test('the shortcut (t₀.₉₇₅ + t₀.₈) s √(2/n) comes within 1 % of it from 6 runs on, not at 2', () => {
    const shortcut = (n: number): number => {
      const { freedom, critical, standardError } = pairPrecision(twoGroups, 0, 1, n);
      return (critical + tQuantile(0.8, freedom)) * standardError;
    };
    const off = (n: number): number => relative(shortcut(n), detectableDifference(twoGroups, 0, 1, n) ?? Number.NaN);
    for (let n = 6; n <= 40; n++) expect(off(n)).toBeLessThan(0.01);
    expect(off(2)).toBeGreaterThan(0.05);
  });

  test('falls with every run, and of twice the power it is twice as much', () => {
    let last = Infinity;
    for (let n = 2; n <= 20; n++) {
      const difference = detectableDifference(FOUR, 0, 1, n) ?? Number.NaN;
      expect(difference).toBeLessThan(last);
      last = difference;
      const doubled = { ...FOUR, perShare: FOUR.perShare.map((power) => 2 * power) };
      expect(detectableDifference(doubled, 0, 1, n)).toBeCloseTo(2 * difference, 8);
    }
  });
});

describe('orders', () => {
  const designs = [1, 2, 3, 4, 5, 6, 7, 8].flatMap((bikes) =>
    [1, 2, 3, 4, 5, 6, 8, 12, 14, 24].map((repeats) => [bikes, repeats] as const),
  );
  const counts = (values: number[], size: number): number[] => {
    const counted = new Array<number>(size).fill(0);
    for (const value of values) counted[value] = (counted[value] ?? 0) + 1;
    return counted;
  };
  const all = (bikes: number): number[] => Array.from({ length: bikes }, (_, i) => i);
  /** Mean place of every bike in the row of all runs. */
  const meanPlaces = (order: Order, bikes: number): number[] => {
    const row = order.flat();
    return all(bikes).map((bike) => meanOf(row.flatMap((ridden, place) => (ridden === bike ? [place] : []))));
  };
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

  test.each(designs)('%d bikes ridden %d times: every bike once in each round of either order', (bikes, repeats) => {
    for (const order of [rotatedOrder(bikes, repeats), forwardAndBack(bikes, repeats)]) {
      expect(order.length).toBe(repeats);
      for (const round of order) expect([...round].sort((a, b) => a - b)).toEqual(all(bikes));
    }
  });

  test.each(designs)('%d bikes ridden %d times, rotated: each place as often, but for one', (bikes, repeats) => {
    const order = rotatedOrder(bikes, repeats);
    for (let place = 0; place < bikes; place++) {
      const often = counts(
        order.map((round) => round[place] ?? Number.NaN),
        bikes,
      );
      expect(spread(often)).toBeLessThanOrEqual(repeats % bikes === 0 ? 0 : 1);
    }
  });

  test.each([2, 3, 4, 5, 6, 7, 8])('%d bikes, rotated: each follows each other bike equally often', (bikes) => {
    const rounds = bikes % 2 === 0 ? bikes : 2 * bikes;
    const pairs = rotatedOrder(bikes, rounds).flatMap((round) =>
      round.slice(1).map((bike, i) => bikes * (round[i] ?? Number.NaN) + bike),
    );
    const often = counts(pairs, bikes * bikes);
    for (const before of all(bikes))
      for (const after of all(bikes)) expect(often[bikes * before + after]).toBe(before === after ? 0 : rounds / bikes);
  });

  test.each(designs.filter(([bikes]) => bikes > 2))(
    '%d bikes ridden %d times, rotated: none twice in a row',
    (bikes, repeats) => {
      const row = rotatedOrder(bikes, repeats).flat();
      for (let i = 1; i < row.length; i++) expect(row[i]).not.toBe(row[i - 1]);
    },
  );

  test.each(designs)('%d bikes ridden %d times: a steady drift cancels where it can', (bikes, repeats) => {
    if (repeats % 2 === 0) expect(spread(meanPlaces(forwardAndBack(bikes, repeats), bikes))).toBe(0);
    if (repeats % bikes === 0) expect(spread(meanPlaces(rotatedOrder(bikes, repeats), bikes))).toBeLessThan(1e-12);
  });

  test('by hand: two bikes there and back are ABBA; four rotated are a Williams square', () => {
    expect(forwardAndBack(2, 2).flat()).toEqual([0, 1, 1, 0]);
    expect(rotatedOrder(4, 4)).toEqual([
      [0, 3, 1, 2],
      [3, 2, 0, 1],
      [2, 1, 3, 0],
      [1, 0, 2, 3],
    ]);
  });
});

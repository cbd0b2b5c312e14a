import { describe, expect, test } from 'vitest';
import {
  combine,
  covariance,
  coverageInterval,
  effectiveFreedom,
  expandedUncertainty,
  monteCarlo,
  normalDraw,
  randomSource,
  summaryOf,
  tDraw,
  tQuantile,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { lossDrawn, lossLinear, weightDrawn, weightLinear } from '../reference/uncertainty.ts';

/* The worked examples of JCGM 100, annex H, and JCGM 101, clause 9, stand in test/reference/uncertainty.ts. */

describe('where the linear method fails (JCGM 101:2008, values from memory)', () => {
  test('9.3: the air’s push bends the model at a place where it is level, so the linear range is too narrow', () => {
    expect(weightLinear.standard).toBeCloseTo(0.0539, 4);
    expect(weightDrawn(0).standard).toBeCloseTo(0.0754, 3);
    // printed: [1.1285, 1.3395] against [1.0834, 1.3825]
    const linear = 2 * expandedUncertainty(weightLinear.standard, Infinity);
    const { low, high } = weightDrawn(0).shortest;
    expect(linear).toBeCloseTo(1.3395 - 1.1285, 3);
    expect(high - low).toBeCloseTo(1.3825 - 1.0834, 2);
  });

  test('9.4: at the bottom of a square the linear method sees no loss and no doubt; drawing sees 50 and 50 millionths', () => {
    expect(lossLinear[0]?.value).toBe(0);
    expect(lossLinear[0]?.standard).toBe(0);
    // 0.7 % and 1 %: three standard errors of 200,000 trials
    expect(relative(lossDrawn(0).mean, 50)).toBeLessThan(0.007);
    expect(relative(lossDrawn(0).standard, 50)).toBeLessThan(0.01);
    expect(lossDrawn(0).shortest.low).toBeLessThan(0.01);
    expect(relative(lossDrawn(0).shortest.high, 150)).toBeLessThan(0.01);
  });

  test('9.4: further up, 100 and 100 against 150 and 112; far up they agree, 2500 and 500 against 2551 and 502', () => {
    expect([lossLinear[1]?.value, lossLinear[1]?.standard].map((x) => Math.round(x ?? 0))).toEqual([100, 100]);
    expect(relative(lossDrawn(1).mean, 150)).toBeLessThan(0.005);
    expect(relative(lossDrawn(1).standard, 112)).toBeLessThan(0.01);
    expect([lossLinear[2]?.value, lossLinear[2]?.standard].map((x) => Math.round(x ?? 0))).toEqual([2500, 500]);
    expect(relative(lossDrawn(2).mean, 2551)).toBeLessThan(0.002);
    expect(relative(lossDrawn(2).standard, 502)).toBeLessThan(0.01);
  });
});

describe('H.1 with its second order', () => {
  test('drawing the end gauge gives 34 nm where the linear method gives 32 (JCGM 100:2008, H.1.7; seen in a secondary copy)', () => {
    const trials = monteCarlo(
      (random) => {
        const even = (half: number): number => half * (2 * random() - 1);
        const standard = 50_000_623 + 25 * normalDraw(random);
        const difference = 215 + 9.7 * normalDraw(random);
        const warmth = -0.1 + 0.2 * normalDraw(random) + 0.5 * Math.sin(2 * Math.PI * random());
        const alpha = 11.5e-6 + even(2e-6);
        return [standard + difference - standard * (even(1e-6) * warmth + alpha * even(0.05))];
      },
      100_000,
      randomSource(830),
    );
    const { mean, standard } = summaryOf(trials[0] ?? []);
    expect(mean).toBeCloseTo(50_000_838, 0);
    // √(31.66² + 11.9² + 1.7²) = 33.9
    expect(Math.abs(standard - 34)).toBeLessThan(0.5);
  });
});

describe('combine', () => {
  test('a sum and a product by hand', () => {
    // 3 ± 0.3 and 4 ± 0.4: the sum 7 ± 0.5; the product 12 ± √(1.2² + 1.2²)
    const [sum, product] = combine(
      [
        { value: 3, standard: 0.3, freedom: 4 },
        { value: 4, standard: 0.4 },
      ],
      ([a = 0, b = 0]) => [a + b, a * b],
    );
    expect(sum?.standard).toBeCloseTo(0.5, 14);
    expect(product?.standard).toBeCloseTo(Math.sqrt(2.88), 13);
    // (0.5)⁴/(0.3⁴/4) and (2.88)²/(1.44²/4)
    expect(sum?.freedom).toBeCloseTo(30.8642, 4);
    expect(product?.freedom).toBeCloseTo(16, 10);
  });

  test('what two results share cancels in their difference exactly as far as it does', () => {
    const [a, b, difference] = combine(
      [
        { value: 0, standard: 2 },
        { value: 0, standard: 1 },
      ],
      ([shared = 0, own = 0]) => [3 * shared, 3 * shared + own, own],
    );
    const both = covariance(a?.shifts ?? [], b?.shifts ?? []);
    const variance = (a?.standard ?? 0) ** 2 + (b?.standard ?? 0) ** 2 - 2 * both;
    expect(variance).toBeCloseTo((difference?.standard ?? 0) ** 2, 12);
  });

  test('inputs that go together add, inputs that go apart cancel; then there are no degrees of freedom', () => {
    const inputs = [
      { value: 1, standard: 0.3 },
      { value: 1, standard: 0.3 },
    ];
    const sum = ([a = 0, b = 0]: number[]): number[] => [a + b];
    expect(combine(inputs, sum, () => 1)[0]?.standard).toBeCloseTo(0.6, 14);
    expect(combine(inputs, sum, () => -1)[0]?.standard).toBeCloseTo(0, 14);
    expect(combine(inputs, sum, () => 0)[0]?.standard).toBeCloseTo(Math.SQRT2 * 0.3, 14);
    expect(combine(inputs, sum, () => 0)[0]?.freedom).toBeNull();
  });

  test('linear and drawn agree where the problem is nearly linear', () => {
    const inputs = [
      { value: 9, standard: 0.05 },
      { value: 442, standard: 0.8 },
      { value: 100, standard: 0.6 },
    ];
    // a mass up a height in a time
    const power = ([height = 0, time = 0, mass = 0]: number[]): number[] => [(mass * 9.80665 * height * 17) / time];
    const [linear] = combine(inputs, power);
    const [trials = []] = monteCarlo(
      (source) => power(inputs.map(({ value, standard }) => value + standard * normalDraw(source))),
      100_000,
      randomSource(831),
    );
    const drawn = summaryOf(trials);
    expect(relative(drawn.mean, linear?.value ?? 0)).toBeLessThan(2e-4);
    // three standard errors of a standard deviation from 100,000 trials are 0.7 %
    expect(relative(drawn.standard, linear?.standard ?? 0)).toBeLessThan(0.007);
  });
});

describe('effectiveFreedom', () => {
  test('GUM H.1: repeat 5.8 of 24, random 3.9 of 5, systematic 6.7 of 8 make 25.6 (seen in a secondary copy)', () => {
    const found = effectiveFreedom([
      { standard: 5.8, freedom: 24 },
      { standard: 3.9, freedom: 5 },
      { standard: 6.7, freedom: 8 },
    ]);
    // printed with 9.7 for 9.68
    expect(Math.abs(found - 25.6)).toBeLessThan(0.2);
  });

  test('lies between the least and the sum, is Infinity without repeats, and 0 where nothing was repeated', () => {
    const r = random(832);
    for (let i = 0; i < 300; i++) {
      const parts = Array.from({ length: r.whole(1, 6) }, () => ({
        standard: r.between(0.1, 5),
        freedom: r.whole(1, 30),
      }));
      const found = effectiveFreedom(parts);
      expect(found).toBeGreaterThanOrEqual(Math.min(...parts.map(({ freedom }) => freedom)) * (1 - 1e-12));
      expect(found).toBeLessThanOrEqual(parts.reduce((sum, { freedom }) => sum + freedom, 0) * (1 + 1e-12));
    }
    expect(effectiveFreedom([{ standard: 2 }, { standard: 3 }])).toBe(Infinity);
    expect(effectiveFreedom([{ standard: 0 }])).toBe(Infinity);
    expect(effectiveFreedom([{ standard: 2, freedom: 0 }, { standard: 3 }])).toBe(0);
  });

  test('ranges with it hold the truth in 95 of 100 cases: 3 repeats and an exactly known part', () => {
    const source = randomSource(833);
    let held = 0;
    const TIMES = 20_000;
    for (let i = 0; i < TIMES; i++) {
      const values = [normalDraw(source), normalDraw(source), normalDraw(source)];
      const mean = (values[0] as number) / 3 + (values[1] as number) / 3 + (values[2] as number) / 3;
      const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 2 / 3);
      const bias = 0.5 * normalDraw(source);
      const freedom = effectiveFreedom([{ standard: spread, freedom: 2 }, { standard: 0.5 }]);
      if (Math.abs(mean + bias) < expandedUncertainty(Math.hypot(spread, 0.5), freedom)) held++;
    }
    // the formula is an approximation, good to two points or so here
    expect(Math.abs(held / TIMES - 0.95)).toBeLessThan(0.02);
  });
});

describe('ranges of trials', () => {
  test('coverageInterval by hand: of 0 to 100, 95 of the steps, in the middle or where it is shortest', () => {
    const values = Array.from({ length: 101 }, (_, i) => (i > 90 ? 90 + 10 * (i - 90) : i));
    const { symmetric, shortest } = coverageInterval(values, 0.9);
    // 0.9 of 101 is 91: from the 5th to the 96th (JCGM 101, 7.7.2); the shortest leaves out the long end
    expect(symmetric).toEqual({ low: 4, high: 140 });
    expect(shortest).toEqual({ low: 0, high: 100 });
  });

  test('a lopsided distribution: equal tails and shortest differ as worked out (exponential, 95 %)', () => {
    const [trials = []] = monteCarlo((source) => [-Math.log(1 - source())], 200_000, randomSource(834));
    const { mean, standard, symmetric, shortest } = summaryOf(trials);
    expect(mean).toBeCloseTo(1, 2);
    expect(standard).toBeCloseTo(1, 2);
    // −ln 0.975, −ln 0.025; the shortest begins at 0 and ends at −ln 0.05
    expect(symmetric.low).toBeCloseTo(0.0253, 2);
    expect(Math.abs(symmetric.high - 3.6889)).toBeLessThan(0.03);
    expect(shortest.low).toBeLessThan(0.001);
    expect(Math.abs(shortest.high - 2.9957)).toBeLessThan(0.03);
  });

  test('drawn from few repeats, the range is Student’s', () => {
    const [trials = []] = monteCarlo((source) => [10 + 2 * tDraw(source, 4)], 200_000, randomSource(835));
    const { symmetric } = summaryOf(trials);
    expect(Math.abs((symmetric.high - symmetric.low) / 2 - 2 * tQuantile(0.975, 4))).toBeLessThan(0.05);
  });

  test('monteCarlo is the same for the same seed and keeps results that are drawn together together', () => {
    const draw = (source: () => number): number[] => {
      const shared = source();
      return [shared, shared + 1];
    };
    const [a = [], b = []] = monteCarlo(draw, 100, randomSource(836));
    expect(Array.from(a, (value, i) => (b[i] ?? 0) - value).every((off) => Math.abs(off - 1) < 1e-15)).toBe(true);
    expect(monteCarlo(draw, 100, randomSource(836))[0]).toEqual(a);
  });
});

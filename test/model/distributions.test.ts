import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import {
  chiSquareCdf,
  chiSquareDraw,
  chiSquareQuantile,
  fTail,
  meanOf,
  noncentralTCdf,
  normalCdf,
  normalDraw,
  normalQuantile,
  randomSource,
  standardDeviation,
  studentizedRangeCdf,
  studentizedRangeQuantile,
  tCdf,
  tDraw,
  tQuantile,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';

/* Values with many digits: mpmath 1.3 with 20 to 30 digits for normal, t and noncentral t; SciPy 1.17 for the others. */

test.each([
  [-37, 5.725571222524577e-300],
  [-20, 2.7536241186062337e-89],
  [-8, 6.220960574271784e-16],
  [-3, 0.0013498980316300946],
  // on either side of where series and continued fraction meet
  [-2.5001, 0.006207912714815194],
  [-1, 0.15865525393145705],
  [0.5, 0.6914624612740131],
  [2.2, 0.9860965524865014],
])('normalCdf(%d) keeps its leading digits far out', (z, expected) => {
  expect(relative(normalCdf(z), expected)).toBeLessThan(3e-12);
});

test.each([
  [0.001, -3.0902323061678136],
  [0.1, -1.2815515655446004],
  [0.3, -0.5244005127080408],
  [0.8, 0.8416212335729144],
  [0.975, 1.9599639845400538],
  [0.9999, 3.7190164854557084],
])('normalQuantile(%d)', (p, expected) => {
  expect(normalQuantile(p)).toBeCloseTo(expected, 13);
});

test('the ends of chances: infinite at 0 and 1, and nothing outside', () => {
  expect(normalQuantile(0)).toBe(-Infinity);
  expect(normalQuantile(1)).toBe(Infinity);
  expect(normalQuantile(1.1)).toBeNaN();
  expect(normalQuantile(1e-300)).toBeCloseTo(-37.0471, 4);
  expect([normalCdf(-50), normalCdf(50), normalCdf(0)]).toEqual([0, 1, 0.5]);
  expect([tQuantile(0, 3), tQuantile(1, 3)]).toEqual([-Infinity, Infinity]);
  expect([tCdf(-1e300, 3), tCdf(1e300, 3)]).toEqual([0, 1]);
  expect([chiSquareCdf(0, 3), chiSquareCdf(-1, 3), chiSquareQuantile(0, 3)]).toEqual([0, 0, 0]);
  expect(studentizedRangeCdf(0, 3, 10)).toBe(0);
});

describe('Student’s t', () => {
  test.each([
    [-1000, 0.3, 0.04399953309171958],
    [-50, 1.5, 0.0010662154551444333],
    [-6, 2.7, 0.006218684149069591],
    [-3, 5, 0.015049623948731288],
    [-0.5, 16.75, 0.3117899523469495],
    [1, 30, 0.8373456922869851],
    [-12, 100, 2.197543857802189e-21],
    [-6, 1000, 1.3776845866887345e-9],
    [2.5, 12345.6, 0.993783899927187],
    [-2, 1_000_000, 0.022750266925659603],
  ])('tCdf(%d, %d)', (t, freedom, expected) => {
    expect(relative(tCdf(t, freedom), expected)).toBeLessThan(1e-10);
  });

  test('closed forms: an arctangent for 1, a root for 2, a cubic of a root for 4 degrees of freedom', () => {
    const r = random(810);
    for (let i = 0; i < 500; i++) {
      const t = r.between(-30, 30);
      expect(tCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
      expect(tCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 13);
      const x = t / Math.sqrt(4 + t * t);
      expect(tCdf(t, 4)).toBeCloseTo(0.5 + 0.75 * (x - (x * x * x) / 3), 13);
    }
  });

  test('infinite freedom is the normal, and large freedom comes near it', () => {
    expect(tCdf(-1.7, Infinity)).toBe(normalCdf(-1.7));
    expect(tQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    // the first correction is (z³ + z)/4ν
    const z = normalQuantile(0.975);
    expect(tQuantile(0.975, 1e6) - z).toBeCloseTo((z ** 3 + z) / 4e6, 9);
  });

  test('tQuantile gives back the chance, far out and for any freedom, and is odd', () => {
    const r = random(811);
    for (let i = 0; i < 500; i++) {
      const freedom = 10 ** r.between(-0.5, 5);
      const p = 10 ** r.between(-12, -0.31);
      const t = tQuantile(p, freedom);
      // from 1e5 degrees of freedom on the continued fraction loses digits
      expect(relative(tCdf(t, freedom), p)).toBeLessThan(1e-10);
      expect(tQuantile(0.975, freedom)).toBeCloseTo(-tQuantile(0.025, freedom), 10);
    }
    expect(tQuantile(0.5, 3)).toBeCloseTo(0, 15);
  });
});

describe('noncentral t', () => {
  test.each([
    [2, 1, 0.5, 0.7484855842392902],
    [12, 1, 10, 0.4062816941175521],
    [4, 3, 2.8, 0.6684417619971574],
    [2, 5.5, 5, 0.004394236623871886],
    [-1, 10, 1, 0.02680185676947955],
    [2, 20, 2.8, 0.2155869427854209],
    [2, 38, 1, 0.831985882560855],
    [0.5, 126, 2.8, 0.01072831969098146],
    [4, 500, 5, 0.1600913594588498],
  ])('noncentralTCdf(%d, %d, %d)', (t, freedom, off, expected) => {
    expect(Math.abs(noncentralTCdf(t, freedom, off) - expected)).toBeLessThan(1e-12);
  });

  test('with no noncentrality it is Student’s t; with infinite freedom a shifted normal', () => {
    const r = random(812);
    for (let i = 0; i < 300; i++) {
      const [t, freedom, off] = [r.between(-8, 8), r.between(1, 200), r.between(-3, 10)];
      expect(noncentralTCdf(t, freedom, 0)).toBeCloseTo(tCdf(t, freedom), 12);
      expect(noncentralTCdf(t, Infinity, off)).toBe(normalCdf(t - off));
      // mirrored
      expect(noncentralTCdf(-t, freedom, -off)).toBeCloseTo(1 - noncentralTCdf(t, freedom, off), 12);
      // at 0 only the sign of Z + off counts
      expect(noncentralTCdf(0, freedom, off)).toBeCloseTo(normalCdf(-off), 12);
    }
  });
});

describe('studentized range', () => {
  test.each([
    [1, 3, 2, 0.2158180092854727],
    [3.5, 4, 3, 0.7595100765419346],
    [9, 20, 1, 0.6791581443624699],
    [3.5, 3, 10, 0.9228966891615896],
    [5, 10, 20.5, 0.9504156885981957],
    [2, 6, 60, 0.2816420354504572],
    [3.5, 4, 1000, 0.9354997484092443],
    [2, 20, 1000, 0.0024119615495966722],
  ])('studentizedRangeCdf(%d, %d, %d)', (q, groups, freedom, expected) => {
    expect(Math.abs(studentizedRangeCdf(q, groups, freedom) - expected)).toBeLessThan(1e-9);
  });

  test.each([
    [0.9, 3, 2, 5.732648952563369],
    [0.95, 4, 3, 6.824526451073047],
    [0.95, 4, 10, 4.32658211573119],
    [0.99, 10, 20, 6.086475660584955],
    [0.95, 10, 60, 4.646323963266348],
  ])('studentizedRangeQuantile(%d, %d, %d)', (p, groups, freedom, expected) => {
    expect(relative(studentizedRangeQuantile(p, groups, freedom), expected)).toBeLessThan(1e-8);
  });

  test('of two groups it is √2 t, two-sided', () => {
    const r = random(813);
    for (let i = 0; i < 100; i++) {
      const [freedom, q] = [r.between(1, 100), r.between(0.1, 10)];
      expect(studentizedRangeCdf(q, 2, freedom)).toBeCloseTo(2 * tCdf(q / Math.SQRT2, freedom) - 1, 9);
      expect(studentizedRangeQuantile(0.95, 2, freedom)).toBeCloseTo(Math.SQRT2 * tQuantile(0.975, freedom), 10);
    }
  });

  test('the quantile gives back the chance, and grows with the groups', () => {
    const r = random(814);
    for (let i = 0; i < 40; i++) {
      const [p, freedom, groups] = [r.between(0.5, 0.999), r.between(1, 100), r.whole(3, 12)];
      const q = studentizedRangeQuantile(p, groups, freedom);
      expect(studentizedRangeCdf(q, groups, freedom)).toBeCloseTo(p, 11);
      expect(q).toBeGreaterThan(studentizedRangeQuantile(p, groups - 1, freedom));
    }
  });
});

describe('chi-square and F', () => {
  test.each([
    [0.01, 0.5, 0.2930808947210196],
    [3, 2, 0.7768698398515702],
    [10, 5, 0.9247647538534878],
    [50, 20, 0.9997785233617512],
    [110, 100, 0.7677952194991436],
    [1000, 1000, 0.5059471461707603],
  ])('chiSquareCdf(%d, %d)', (x, freedom, expected) => {
    expect(relative(chiSquareCdf(x, freedom), expected)).toBeLessThan(1e-12);
    expect(relative(chiSquareQuantile(expected, freedom), x)).toBeLessThan(1e-10);
  });

  test.each([
    [1.18046237440255, 4, 20, 0.34944749340219294],
    [15.946733567793, 1, 46, 0.00023268444833892546],
    [3, 2, 3, 0.19245008972987523],
    [0.5, 10, 200, 0.8887193487120607],
    [100, 1, 1, 0.06345103486110713],
  ])('fTail(%d, %d, %d)', (ratio, above, below, expected) => {
    expect(relative(fTail(ratio, above, below), expected)).toBeLessThan(1e-12);
  });

  test('two degrees of freedom leave an exponential, and t squared is F', () => {
    const r = random(815);
    for (let i = 0; i < 300; i++) {
      const [x, freedom, t] = [r.between(0, 30), r.between(1, 100), r.between(0, 8)];
      expect(chiSquareCdf(x, 2)).toBeCloseTo(-Math.expm1(-x / 2), 13);
      expect(fTail(t * t, 1, freedom)).toBeCloseTo(2 * tCdf(-t, freedom), 12);
    }
  });

  test('a general library says the same', () => {
    const r = random(816);
    for (let i = 0; i < 300; i++) {
      const [x, freedom, z] = [r.between(0.1, 60), r.between(0.5, 60), r.between(-5, 5)];
      // its gamma series is good to about ten digits
      expect(chiSquareCdf(x, freedom)).toBeCloseTo(jstat.chisquare.cdf(x, freedom), 9);
      expect(normalCdf(z)).toBeCloseTo(jstat.normal.cdf(z, 0, 1), 11);
    }
  });
});

describe('draws', () => {
  const COUNT = 100_000;
  const many = (draw: (source: () => number) => number, seed: number): number[] => {
    const source = randomSource(seed);
    return Array.from({ length: COUNT }, () => draw(source));
  };

  test('randomSource gives the same for the same seed, something else for the next, also beyond 32 bits', () => {
    const first = (seed: number) => Array.from({ length: 5 }, randomSource(seed));
    expect(first(7)).toEqual(first(7));
    const starts = [0, 1, 2, 7, 2 ** 32, 2 ** 33, -1].map((seed) => first(seed)[0]);
    expect(new Set(starts).size).toBe(starts.length);
  });

  test('randomSource fills [0, 1) evenly, in one number and in two that follow each other', () => {
    const source = randomSource(817);
    const counts = new Array(1024).fill(0);
    for (let i = 0; i < 512_000; i++) {
      const [a, b] = [source(), source()];
      if (a < 0 || a >= 1) throw new Error(`${a} is outside`);
      counts[32 * Math.floor(32 * a) + Math.floor(32 * b)]++;
    }
    const square = counts.reduce((sum, count) => sum + (count - 500) ** 2 / 500, 0);
    // 1023 degrees of freedom: outside these by chance once in 500 seeds, and the seed is fixed
    expect(chiSquareCdf(square, 1023)).toBeGreaterThan(0.001);
    expect(chiSquareCdf(square, 1023)).toBeLessThan(0.999);
  });

  test('sources of neighbouring seeds have nothing to do with each other', () => {
    const pairs = Array.from({ length: 20_000 }, (_, seed) => [
      randomSource(seed)() - 0.5,
      randomSource(seed + 1)() - 0.5,
    ]);
    const correlation = meanOf(pairs.map(([a = 0, b = 0]) => 12 * a * b));
    // four standard errors of 1/√20 000
    expect(Math.abs(correlation)).toBeLessThan(0.028);
  });

  // Kolmogorov and Smirnov: the largest distance between the share and the chance is beyond 1.95/√n once in a thousand
  const distance = (values: number[], cdf: (x: number) => number): number =>
    values
      .sort((a, b) => a - b)
      .reduce((most, x, i) => Math.max(most, Math.abs(cdf(x) - (i + 0.5) / values.length)), 0);

  test.each([
    ['normalDraw', (source: () => number) => normalDraw(source), normalCdf],
    ['tDraw with 3', (source: () => number) => tDraw(source, 3), (x: number) => tCdf(x, 3)],
    ['tDraw with Infinity', (source: () => number) => tDraw(source, Infinity), normalCdf],
    [
      'chiSquareDraw with 0.7',
      (source: () => number) => chiSquareDraw(source, 0.7),
      (x: number) => chiSquareCdf(x, 0.7),
    ],
    ['chiSquareDraw with 2', (source: () => number) => chiSquareDraw(source, 2), (x: number) => chiSquareCdf(x, 2)],
    [
      'chiSquareDraw with 16.75',
      (source: () => number) => chiSquareDraw(source, 16.75),
      (x: number) => chiSquareCdf(x, 16.75),
    ],
  ] as const)('%s follows its distribution', (_, draw, cdf) => {
    expect(distance(many(draw, 818), cdf)).toBeLessThan(1.95 / Math.sqrt(COUNT));
  });

  test('normalDraw has mean 0 and standard deviation 1', () => {
    const values = many(normalDraw, 819);
    // four standard errors
    expect(Math.abs(meanOf(values))).toBeLessThan(4 / Math.sqrt(COUNT));
    expect(Math.abs(standardDeviation(values) - 1)).toBeLessThan(4 / Math.sqrt(2 * COUNT));
  });
});

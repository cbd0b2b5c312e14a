import jstat from 'jstat';
import * as model from '../../calculators/model/index.ts';
import { random } from '../random.ts';
import type { Check } from './check.ts';
import type { Comparison } from './comparisons.ts';

const CHANCES = [0.9, 0.95, 0.975, 0.99, 0.995];

/** Quantiles of Student's t for those chances, by degrees of freedom. */
const students: Record<number, number[]> = {
  1: [3.0777, 6.3138, 12.7062, 31.8205, 63.6567],
  2: [1.8856, 2.92, 4.3027, 6.9646, 9.9248],
  3: [1.6377, 2.3534, 3.1824, 4.5407, 5.8409],
  4: [1.5332, 2.1318, 2.7764, 3.7469, 4.6041],
  5: [1.4759, 2.015, 2.5706, 3.3649, 4.0321],
  6: [1.4398, 1.9432, 2.4469, 3.1427, 3.7074],
  8: [1.3968, 1.8595, 2.306, 2.8965, 3.3554],
  9: [1.383, 1.8331, 2.2622, 2.8214, 3.2498],
  10: [1.3722, 1.8125, 2.2281, 2.7638, 3.1693],
  16: [1.3368, 1.7459, 2.1199, 2.5835, 2.9208],
  20: [1.3253, 1.7247, 2.086, 2.528, 2.8453],
  30: [1.3104, 1.6973, 2.0423, 2.4573, 2.75],
  60: [1.2958, 1.6706, 2.0003, 2.3901, 2.6603],
  120: [1.2886, 1.6577, 1.9799, 2.3578, 2.6174],
};

/** Points of the studentized range: chance, groups, degrees of freedom, value. */
const ranges: [number, number, number, number][] = [
  [0.95, 3, 5, 4.602],
  [0.95, 3, 10, 3.877],
  [0.95, 3, 20, 3.578],
  [0.95, 4, 10, 4.327],
  [0.95, 4, 20, 3.958],
  [0.95, 5, 10, 4.654],
  [0.95, 6, 20, 4.445],
  [0.95, 3, Number.POSITIVE_INFINITY, 3.314],
  [0.95, 4, Number.POSITIVE_INFINITY, 3.633],
  [0.95, 10, Number.POSITIVE_INFINITY, 4.474],
  [0.99, 3, 10, 5.27],
  [0.99, 4, 20, 5.018],
];

export const distributions: Check[] = [
  ...Object.entries(students).flatMap(([freedom, values]) =>
    values.map(
      (expected, i): Check => ({
        quantity: 'Quantiles of Student’s t',
        given: `${CHANCES[i]}, ${freedom} degrees of freedom`,
        expected,
        computed: () => model.tQuantile(CHANCES[i] ?? Number.NaN, Number(freedom)),
        unit: '',
        tolerance: 5e-5,
        source: 'JCGM 100:2008, table G.2, and NIST e-Handbook 1.3.6.7.2',
        status: 'memory',
      }),
    ),
  ),
  ...ranges.map(
    ([chance, groups, freedom, expected]): Check => ({
      quantity: 'Points of the studentized range',
      given: `${chance}, ${groups} groups, ${freedom} degrees of freedom`,
      expected,
      computed: () => model.studentizedRangeQuantile(chance, groups, freedom),
      unit: '',
      tolerance: 5e-4,
      source: 'printed tables',
      status: 'memory',
    }),
  ),
];

const COUNT = 500;
/** The studentized range is slow on either side. */
const FEW = 100;

/** Largest difference of two chances over random inputs. */
function largest(seed: number, count: number, pair: (r: ReturnType<typeof random>) => [number, number]): () => number {
  return () => {
    const r = random(seed);
    let most = 0;
    for (let i = 0; i < count; i++) {
      const [ours, theirs] = pair(r);
      most = Math.max(most, Math.abs(ours - theirs));
    }
    return most;
  };
}

/**
 * Against a general library. Its own series stop at 3e-7 (t, F), and its studentized range is off by up to 1e-5 below 5 degrees of freedom:
 * test/model/distributions.test.ts holds values with more digits.
 */
export const distributionComparisons: Comparison[] = [
  {
    quantity: 'Chances of Student’s t and of F',
    against: '`jstat` 1.9',
    cases: COUNT,
    largest: largest(800, COUNT, (r) => {
      const freedom = r.between(1, 60);
      const t = r.between(-6, 6);
      const above = r.whole(1, 10);
      const ratio = r.between(0.01, 8);
      return r.chance(0.5)
        ? [model.tCdf(t, freedom), jstat.studentt.cdf(t, freedom)]
        : [model.fTail(ratio, above, freedom), 1 - jstat.centralF.cdf(ratio, above, freedom)];
    }),
    tolerance: 1e-6,
  },
  {
    quantity: 'Chances of noncentral t',
    against: '`jstat` 1.9',
    cases: COUNT,
    largest: largest(801, COUNT, (r) => {
      const [t, freedom, off] = [r.between(-4, 8), r.between(1, 60), r.between(-1, 5)];
      return [model.noncentralTCdf(t, freedom, off), jstat.noncentralt.cdf(t, freedom, off)];
    }),
    tolerance: 1e-6,
  },
  {
    quantity: 'Chances of the studentized range',
    against: '`jstat` 1.9',
    cases: FEW,
    largest: largest(802, FEW, (r) => {
      const [q, groups, freedom] = [r.between(0.2, 8), r.whole(2, 10), r.between(5, 60)];
      return [model.studentizedRangeCdf(q, groups, freedom), jstat.tukey.cdf(q, groups, freedom)];
    }),
    tolerance: 1e-6,
  },
  {
    quantity: 'Quantiles of Student’s t',
    against: 'the chance that they were asked for',
    cases: COUNT,
    largest: largest(803, COUNT, (r) => {
      const [p, freedom] = [r.between(0.001, 0.999), r.between(1, 200)];
      return [model.tCdf(model.tQuantile(p, freedom), freedom), p];
    }),
    tolerance: 1e-12,
  },
];

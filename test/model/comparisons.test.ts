import { expect, test } from 'vitest';
import { cubicOf, cubicRoot } from '../reference/comparisons.ts';
import { comparisons } from '../reference/index.ts';

test.each(comparisons.map((one) => [`${one.quantity} agrees with ${one.against}, ${one.cases} cases`, one] as const))(
  '%s',
  (_, one) => {
    expect(one.largest()).toBeLessThanOrEqual(one.tolerance);
  },
);

test('cubicRoot finds the root of a cubic that was made from it: (v − 3)(v² + 2v + 5) = v³ − v² − v − 15', () => {
  expect(cubicRoot([-15, -1, -1, 1])).toBeCloseTo(3, 12);
});

test('cubicOf(r, P) is v·F(v) − P, multiplied out by hand for F = 50 + 2v + 0.25 (v + 4)²', () => {
  // v (50 + 2v + 0.25 v² + 2v + 4) − 300
  expect(cubicOf({ constant: 50, linear: 2, quadratic: 0.25, headWind: 4 }, 300)).toEqual([-300, 54, 4, 0.25]);
});

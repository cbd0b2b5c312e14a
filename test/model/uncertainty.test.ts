import { describe, expect, test } from 'vitest';
import { propagate, type UncertainInput } from '../../calculators/model/index.ts';
import { random } from '../random.ts';

const around = (name: string, value: number, half: number): UncertainInput => ({
  name,
  value,
  low: value - half,
  high: value + half,
});

test('propagate is exact on a sum: half-widths add in squares, 3 and 4 make 5', () => {
  const [sum] = propagate([around('a', 10, 3), around('b', 20, 4)], ([a = 0, b = 0]) => [a + b]);
  expect(sum).toMatchObject({ value: 30, low: 25, high: 35 });
});

test('propagate is exact on any linear function', () => {
  const r = random(100);
  for (let i = 0; i < 200; i++) {
    const inputs = Array.from({ length: r.whole(1, 8) }, (_, k) =>
      around(`x${k}`, r.between(-5, 5), r.between(0.1, 3)),
    );
    const slopes = inputs.map(() => r.between(-4, 4));
    const [result] = propagate(inputs, (x) => [x.reduce((sum, one, k) => sum + one * (slopes[k] ?? 0), 1)]);
    const half = Math.hypot(...inputs.map((input, k) => (input.high - input.value) * (slopes[k] ?? 0)));
    expect(result?.high).toBeCloseTo((result?.value ?? 0) + half, 9);
    expect(result?.low).toBeCloseTo((result?.value ?? 0) - half, 9);
  }
});

describe('errors that several results share', () => {
  const inputs = [around('scale', 0, 10), around('a', 100, 1), around('b', 90, 1)];
  const measure = ([scale = 0, a = 0, b = 0]: number[]): number[] => [
    a + scale,
    b + scale,
    a - b,
    (a + scale) / (b + scale),
  ];

  test('cancel in a difference, to the last digit', () => {
    const [a, , difference] = propagate(inputs, measure);
    expect((a?.high ?? 0) - (a?.value ?? 0)).toBeCloseTo(Math.hypot(10, 1), 12);
    expect(difference?.value).toBe(10);
    expect(difference?.high).toBeCloseTo(10 + Math.SQRT2, 12);
    expect(difference?.low).toBeCloseTo(10 - Math.SQRT2, 12);
  });

  test('almost cancel in a ratio', () => {
    const [, , , ratio] = propagate(inputs, measure);
    // ±10 on both moves 100/90 by (110/100 and 90/80): about ±0.012, while unshared they would make ±0.15
    expect((ratio?.high ?? 0) - (ratio?.low ?? 0)).toBeLessThan(0.05);
  });
});

describe('lopsided ranges', () => {
  const surface = { name: 'surface', value: 0.028, low: 0.015, high: 0.035 };

  test('come out as they went in, and turned round by a falling function', () => {
    const [same, turned] = propagate([surface], ([x = 0]) => [x, 1 - x]);
    expect(same?.low).toBeCloseTo(0.015, 15);
    expect(same?.high).toBeCloseTo(0.035, 15);
    expect(turned?.low).toBeCloseTo(1 - 0.035, 15);
    expect(turned?.high).toBeCloseTo(1 - 0.015, 15);
  });

  test('add in squares by side', () => {
    const [sum] = propagate([surface, around('b', 0, 0.004)], ([x = 0, b = 0]) => [x + b]);
    expect(sum?.high).toBeCloseTo(0.028 + Math.hypot(0.007, 0.004), 15);
    expect(sum?.low).toBeCloseTo(0.028 - Math.hypot(0.013, 0.004), 15);
  });

  test('a result at a turning point moves to one side only', () => {
    const [square] = propagate([around('x', 0, 2)], ([x = 0]) => [x * x]);
    expect(square).toMatchObject({ value: 0, low: 0, high: 4 });
  });
});

test('causes are named, largest first, with the shift to each side', () => {
  const [sum] = propagate([around('small', 0, 1), around('large', 0, 5)], ([a = 0, b = 0]) => [a - 2 * b]);
  expect(sum?.causes).toEqual([
    { name: 'large', down: -10, up: 10 },
    { name: 'small', down: -1, up: 1 },
  ]);
});

test('an input that does not matter changes nothing, and no inputs leave the value alone', () => {
  expect(propagate([around('idle', 1, 1)], () => [7])[0]).toMatchObject({ value: 7, low: 7, high: 7 });
  expect(propagate([], () => [7, 8])).toEqual([
    { value: 7, low: 7, high: 7, causes: [] },
    { value: 8, low: 8, high: 8, causes: [] },
  ]);
});

test('a side that no number bounds is infinite, the other side stays', () => {
  const [inverse] = propagate([{ name: 'x', value: 1, low: 0, high: 2 }], ([x = 0]) => [1 / x]);
  expect(inverse).toMatchObject({ value: 1, low: 0.5, high: Number.POSITIVE_INFINITY });
});

test('propagate does not change its inputs', () => {
  const frozen = Object.freeze([Object.freeze(around('a', 1, 1))]);
  expect(() => propagate(frozen, (x) => [...x])).not.toThrow();
});

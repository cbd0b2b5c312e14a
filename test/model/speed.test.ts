import { expect, test } from 'vitest';
import {
  coastingSpeed,
  loadOf,
  type Resistance,
  resistanceOf,
  resistingForce,
  steadySpeed,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { bisect } from '../reference/comparisons.ts';
import { anyClimb, PLAIN } from './climbs.ts';

const LEVEL: Resistance = { constant: 0, linear: 0, quadratic: 0.3, headWind: 0 };

test('steadySpeed(r, P) on the level with air alone is the cube root: 300 W against 0.3 kg/m give 10 m/s', () => {
  expect(steadySpeed(LEVEL, 300)).toBeCloseTo(10, 14);
});

test('steadySpeed(r, P) without air is P / F: 200 W against 50 N give 4 m/s', () => {
  expect(steadySpeed({ constant: 50, linear: 0, quadratic: 0, headWind: 0 }, 200)).toBe(4);
});

test('steadySpeed(r, P) without air, with a part that grows with speed: 300 W against 10 N + 5 N s/m × v', () => {
  // 5 v² + 10 v = 300, by hand: v = −1 + √61
  expect(steadySpeed({ constant: 10, linear: 5, quadratic: 0, headWind: 0 }, 300)).toBeCloseTo(Math.sqrt(61) - 1, 13);
});

test('steadySpeed(r, 0) is the coasting speed: 0 uphill and on the level', () => {
  expect(steadySpeed(resistanceOf(loadOf(PLAIN)), 0)).toBe(0);
  expect(steadySpeed(LEVEL, 0)).toBe(0);
  expect(steadySpeed({ ...LEVEL, constant: 5 }, -1)).toBe(0);
});

test('coastingSpeed(r) on a descent: 30 N of push against 0.3 kg/m end at 10 m/s', () => {
  expect(coastingSpeed({ ...LEVEL, constant: -30 })).toBeCloseTo(10, 14);
  expect(coastingSpeed({ ...LEVEL, constant: -30, headWind: 4 })).toBeCloseTo(6, 14);
  expect(coastingSpeed({ ...LEVEL, constant: -30, headWind: -4 })).toBeCloseTo(14, 14);
});

test('coastingSpeed(r): a tail wind carries a bike on the level, slower than itself when tyres hold it', () => {
  expect(coastingSpeed({ ...LEVEL, headWind: -7 })).toBeCloseTo(7, 14);
  // 0.3 (8 − v)² = 2.7 N
  expect(coastingSpeed({ ...LEVEL, constant: 2.7, headWind: -8 })).toBeCloseTo(5, 14);
  expect(coastingSpeed({ ...LEVEL, constant: 20, headWind: -8 })).toBe(0);
});

test('coastingSpeed(r) is where no force is left, on any descent and in any wind', () => {
  const r = random(30);
  let moving = 0;
  for (let i = 0; i < 2000; i++) {
    const resistance = resistanceOf(loadOf(anyClimb(r)));
    const v = coastingSpeed(resistance);
    if (v === 0) expect(resistingForce(resistance, 0)).toBeGreaterThanOrEqual(0);
    else {
      moving++;
      expect(
        relative(
          v,
          bisect((x) => resistingForce(resistance, x), 0, 1e3),
        ),
      ).toBeLessThan(1e-12);
    }
  }
  expect(moving).toBeGreaterThan(500);
});

test('steadySpeed(r, P) leaves no power over: up, down, against, with and faster than the wind', () => {
  const r = random(31);
  let down = 0;
  let blown = 0;
  for (let i = 0; i < 5000; i++) {
    const resistance = resistanceOf(loadOf(anyClimb(r)));
    const power = 10 ** r.between(-3, 3.5);
    const v = steadySpeed(resistance, power);
    const f = (x: number): number =>
      resistingForce(resistance, x) < 0 ? -1 : x * resistingForce(resistance, x) - power;
    expect(relative(v, bisect(f, 0, 1e4))).toBeLessThan(1e-11);
    expect(resistingForce(resistance, v)).toBeGreaterThanOrEqual(0);
    if (resistance.constant < 0) down++;
    if (v + resistance.headWind < 0) blown++;
  }
  expect(down).toBeGreaterThan(1000);
  expect(blown).toBeGreaterThan(300);
});

test('steadySpeed(r, P) rises with power and never falls below coasting', () => {
  const r = random(32);
  for (let i = 0; i < 1000; i++) {
    const resistance = resistanceOf(loadOf(anyClimb(r)));
    const power = r.between(1, 1000);
    const v = steadySpeed(resistance, power);
    expect(steadySpeed(resistance, power * 1.001)).toBeGreaterThan(v);
    expect(v).toBeGreaterThan(coastingSpeed(resistance));
  }
});

test('steadySpeed(r, P) passes smoothly from pedalling to coasting', () => {
  const down: Resistance = { constant: -30, linear: 0.0087, quadratic: 0.3, headWind: 2 };
  const coasting = coastingSpeed(down);
  // dv/dP there is 1 / (v F′), so a microwatt changes next to nothing
  expect(steadySpeed(down, 1e-6) - coasting).toBeGreaterThan(0);
  expect(steadySpeed(down, 1e-6) - coasting).toBeLessThan(1e-7);
});

test('steadySpeed is Infinity where the slope pushes and nothing grows with speed', () => {
  const nothing: Resistance = { constant: -10, linear: 0, quadratic: 0, headWind: 0 };
  expect(steadySpeed(nothing, 0)).toBe(Number.POSITIVE_INFINITY);
  expect(steadySpeed(nothing, 100)).toBe(Number.POSITIVE_INFINITY);
  expect(coastingSpeed({ ...nothing, linear: 0.5 })).toBe(20);
});

import { expect, test } from 'vitest';
import {
  assistShare,
  drivenSpeed,
  FADE_WIDTH,
  loadOf,
  resistanceOf,
  rideClimb,
  steadySpeed,
} from '../../calculators/model/index.ts';
import { random } from '../random.ts';
import { anyClimb, PLAIN } from './climbs.ts';

const KMH = 1 / 3.6;

test('assistShare(v, limit) is 1 below the fade, half in its middle, 0 from the limit on', () => {
  const limit = 25 * KMH;
  expect(assistShare(0, limit)).toBe(1);
  expect(assistShare(22.9 * KMH, limit)).toBe(1);
  expect(assistShare(24 * KMH, limit)).toBeCloseTo(0.5, 12);
  expect(assistShare(24.5 * KMH, limit)).toBeCloseTo(0.25, 12);
  expect(assistShare(limit, limit)).toBe(0);
  expect(assistShare(40 * KMH, limit)).toBe(0);
});

test('assistShare(v, null) is 1 at any speed', () => {
  expect(assistShare(50, null)).toBe(1);
});

test('a motor gives nothing while nobody pedals', () => {
  const still = { ...PLAIN, riderPower: 0 };
  expect(drivenSpeed(resistanceOf(loadOf(still)), still)).toBe(0);
});

test('drivenSpeed is that of the whole power below the fade, of the rider alone above the limit', () => {
  const r = resistanceOf(loadOf(PLAIN));
  const both = steadySpeed(r, 0.96 * 550);
  expect(drivenSpeed(r, PLAIN)).toBe(both);
  expect(drivenSpeed(r, { ...PLAIN, assistLimit: both + FADE_WIDTH })).toBe(both);
  const alone = steadySpeed(r, 0.96 * 170);
  expect(drivenSpeed(r, { ...PLAIN, assistLimit: alone })).toBe(alone);
  expect(drivenSpeed(r, { ...PLAIN, assistLimit: alone / 2 })).toBe(alone);
});

test('drivenSpeed never falls and never jumps as the limit rises through the fade', () => {
  const r = resistanceOf(loadOf(PLAIN));
  const step = 0.001;
  let before = drivenSpeed(r, { ...PLAIN, assistLimit: 0.5 });
  for (let limit = 0.5 + step; limit < 8; limit += step) {
    const v = drivenSpeed(r, { ...PLAIN, assistLimit: limit });
    // the speed cannot gain more than the limit does
    expect(v - before).toBeGreaterThanOrEqual(-1e-12);
    expect(v - before).toBeLessThanOrEqual(step + 1e-12);
    before = v;
  }
});

test('drivenSpeed never falls as the motor grows, and a limited one is never faster than its limit', () => {
  const r = random(41);
  let faded = 0;
  for (let i = 0; i < 2000; i++) {
    const climb = anyClimb(r);
    const resistance = resistanceOf(loadOf(climb));
    const v = drivenSpeed(resistance, climb);
    expect(drivenSpeed(resistance, { ...climb, motorPower: climb.motorPower + 1 })).toBeGreaterThanOrEqual(
      v * (1 - 1e-14),
    );
    const alone = drivenSpeed(resistance, { ...climb, motorPower: 0 });
    expect(v).toBeGreaterThanOrEqual(alone * (1 - 1e-14));
    if (climb.assistLimit !== null && alone < climb.assistLimit) {
      expect(v).toBeLessThanOrEqual(climb.assistLimit);
      if (v > climb.assistLimit - FADE_WIDTH) faded++;
    }
  }
  expect(faded).toBeGreaterThan(100);
});

test('in the middle of the fade the motor gives half, and that half keeps the speed', () => {
  const limit = 6;
  const v = limit - FADE_WIDTH / 2;
  const r = resistanceOf(loadOf(PLAIN));
  const wheel = v * (r.constant + r.linear * v + r.quadratic * v * v);
  const motorPower = 2 * (wheel / 0.96 - 170);
  const ride = rideClimb({ ...PLAIN, motorPower, assistLimit: limit });
  expect(ride.speed).toBeCloseTo(v, 12);
  expect(ride.motorPower).toBeCloseTo(motorPower / 2, 8);
});

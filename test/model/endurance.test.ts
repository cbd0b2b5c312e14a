import { describe, expect, test } from 'vitest';
import {
  endurancePower,
  enduranceTime,
  fitInverseTime,
  fitThree,
  fitTime,
  fitWork,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { efforts } from '../reference/critical-power.ts';

const RIDER = { criticalPower: 220, workAbove: 18_000 };

test('enduranceTime by hand: 280 W are 60 W above 220 W, and 18 kJ last 300 s at that; at or below it there is no end', () => {
  expect(enduranceTime(280, RIDER)).toBe(300);
  expect(enduranceTime(220, RIDER)).toBe(Number.POSITIVE_INFINITY);
  expect(enduranceTime(100, RIDER)).toBe(Number.POSITIVE_INFINITY);
});

test('endurancePower and enduranceTime are each other’s inverse', () => {
  const r = random(90);
  for (let i = 0; i < 500; i++) {
    const time = r.between(60, 3600);
    // W′/t is small beside CP after an hour, so the difference P − CP has lost that many digits
    expect(relative(enduranceTime(endurancePower(time, RIDER), RIDER), time)).toBeLessThan(1e-12);
  }
});

describe('the fits', () => {
  test.each([
    ['fitTime', fitTime],
    ['fitWork', fitWork],
    ['fitInverseTime', fitInverseTime],
    ['fitThree', fitThree],
  ] as const)('%s finds the rider whose efforts have no error', (_, fitting) => {
    const r = random(91);
    for (let i = 0; i < 200; i++) {
      const rider = { criticalPower: r.between(100, 400), workAbove: r.between(5000, 40_000) };
      const exact = [120, 240, 480, 900, 1500].map((time) => ({ time, power: endurancePower(time, rider) }));
      const found = fitting(exact);
      expect(relative(found.criticalPower, rider.criticalPower)).toBeLessThan(1e-7);
      expect(relative(found.workAbove, rider.workAbove)).toBeLessThan(1e-5);
    }
  });

  test('fitThree finds a largest power that is in the efforts', () => {
    const [criticalPower, workAbove, peakPower] = [250, 20_000, 1100];
    const exact = [500, 420, 360, 310, 280].map((power) => ({
      power,
      time: workAbove / (power - criticalPower) - workAbove / (peakPower - criticalPower),
    }));
    const found = fitThree(exact);
    expect(found.criticalPower).toBeCloseTo(250, 6);
    expect(found.workAbove).toBeCloseTo(20_000, 1);
    expect(found.peakPower).toBeCloseTo(1100, 1);
  });

  test.each([
    ['fitTime', fitTime],
    ['fitThree', fitThree],
  ] as const)('%s leaves the least squares: no other CP near it leaves less', (_, fitting) => {
    const best = fitting(efforts);
    // W′ (and the shift) of the neighbour by the published efforts' own straight line
    const left = (cp: number): number => {
      const x = efforts.map(({ power }) => 1 / (power - cp));
      const t = efforts.map(({ time }) => time);
      const mean = (of: number[]): number => of.reduce((a, b) => a + b, 0) / of.length;
      const [mx, mt] = fitting === fitThree ? [mean(x), mean(t)] : [0, 0];
      const b =
        x.reduce((sum, xi, i) => sum + (xi - mx) * ((t[i] ?? 0) - mt), 0) /
        x.reduce((sum, xi) => sum + (xi - mx) ** 2, 0);
      return x.reduce((sum, xi, i) => sum + ((t[i] ?? 0) - mt - b * (xi - mx)) ** 2, 0);
    };
    expect(best.squares).toBeCloseTo(left(best.criticalPower), 6);
    for (const by of [-1, -0.01, 0.01, 1]) expect(left(best.criticalPower + by)).toBeGreaterThan(best.squares);
  });

  test('the share that a straight line explains is as recomputed: 0.99961804 in work, 0.98739708 in power', () => {
    const share = (values: number[], squares: number): number => {
      const mean = values.reduce((a, b) => a + b, 0) / values.length;
      return 1 - squares / values.reduce((sum, y) => sum + (y - mean) ** 2, 0);
    };
    const work = efforts.map(({ power, time }) => power * time);
    expect(share(work, fitWork(efforts).squares)).toBeCloseTo(0.99961804, 8);
    const powers = efforts.map(({ power }) => power);
    expect(share(powers, fitInverseTime(efforts).squares)).toBeCloseTo(0.98739708, 8);
  });

  test('the four of them differ by 13 W on one set of efforts: the model is part of the doubt', () => {
    const fitted = [fitTime, fitWork, fitInverseTime, fitThree].map((fitting) => fitting(efforts).criticalPower);
    expect(Math.max(...fitted) - Math.min(...fitted)).toBeCloseTo(13.5, 1);
  });
});

import { describe, expect, test } from 'vitest';
import {
  endurancePower,
  enduranceTime,
  fitInverseTime,
  fitThree,
  fitTime,
  fitWork,
  workBalance,
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

describe('workBalance', () => {
  test('by hand: 200 s at 280 W leave 6 kJ of 18; 180 s at 120 W bring back all but 1/e of what was spent; then 320 W empty it', () => {
    const { after, lowest, emptyAt } = workBalance(
      [
        { power: 280, time: 200 },
        { power: 120, time: 180 },
        { power: 320, time: 200 },
      ],
      RIDER,
    );
    expect(after[0]).toBe(6000);
    expect(after[1]).toBeCloseTo(18_000 - 12_000 / Math.E, 9);
    expect(after[2]).toBeCloseTo(-2000 - 12_000 / Math.E, 9);
    expect(lowest).toBe(after[2]);
    expect(emptyAt).toBeCloseTo(380 + (18_000 - 12_000 / Math.E) / 100, 9);
  });

  test('one effort empties it just when enduranceTime says, and never at the critical power', () => {
    const r = random(92);
    for (let i = 0; i < 300; i++) {
      const power = r.between(221, 600);
      const { emptyAt } = workBalance([{ power, time: 1e6 }], RIDER);
      expect(emptyAt).toBeCloseTo(enduranceTime(power, RIDER), 8);
    }
    expect(workBalance([{ power: 220, time: 1e6 }], RIDER)).toEqual({ after: [18_000], lowest: 18_000, emptyAt: null });
    expect(workBalance([], RIDER)).toEqual({ after: [], lowest: 18_000, emptyAt: null });
  });

  test('agrees with the published rule taken in steps of a second, whose error it bounds', () => {
    const r = random(93);
    for (let i = 0; i < 100; i++) {
      const stretches = Array.from({ length: 8 }, () => ({ power: r.between(0, 330), time: r.whole(30, 600) }));
      let spent = 0;
      for (const { power, time } of stretches)
        for (let second = 0; second < time; second++) {
          const above = power - RIDER.criticalPower;
          // Skiba et al. 2015: dW′/dt = −(P − CP) above, and what is spent goes down by (CP − P)/W′ of itself a second below
          spent += above > 0 ? above : (spent * above) / RIDER.workAbove;
        }
      const last = workBalance(stretches, RIDER).after.at(-1) ?? Number.NaN;
      // a second is at most 220 W/18 kJ = 1.2 % of the time constant, so that Euler's steps are off by half of that of what comes back
      expect(Math.abs(RIDER.workAbove - spent - last)).toBeLessThan(0.01 * RIDER.workAbove);
    }
  });

  test('a stretch cut in two is the same stretch', () => {
    const r = random(94);
    for (let i = 0; i < 200; i++) {
      const stretches = Array.from({ length: 6 }, () => ({ power: r.between(0, 330), time: r.between(30, 600) }));
      const halves = stretches.flatMap(({ power, time }) => [
        { power, time: 0.3 * time },
        { power, time: 0.7 * time },
      ]);
      const [whole, cut] = [workBalance(stretches, RIDER), workBalance(halves, RIDER)];
      expect(cut.after.at(-1)).toBeCloseTo(whole.after.at(-1) ?? Number.NaN, 7);
      expect(cut.lowest).toBeCloseTo(whole.lowest, 7);
      if (whole.emptyAt === null) expect(cut.emptyAt).toBeNull();
      else expect(cut.emptyAt).toBeCloseTo(whole.emptyAt, 7);
    }
  });
});

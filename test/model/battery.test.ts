import { describe, expect, test } from 'vitest';
import { drawnPower, emptyAfter, gaugeEnergy, impliedEfficiency, usableEnergy } from '../../calculators/model/index.ts';
import { random } from '../random.ts';

const WH = 3600;

test('usableEnergy by hand: 500 Wh, nine tenths with age, four fifths in the cold, a tenth kept, are 324 Wh', () => {
  expect(usableEnergy(500 * WH, { health: 0.9, cold: 0.8, reserve: 0.1 }) / WH).toBeCloseTo(324, 10);
  expect(usableEnergy(500 * WH, { health: 1, cold: 1, reserve: 0 })).toBe(500 * WH);
  expect(usableEnergy(500 * WH, { health: 1, cold: 1, reserve: 1 })).toBe(0);
});

test('drawnPower by hand: 400 W through 0.8 and 5 W of lights are 505 W; without a motor the lights stay', () => {
  expect(drawnPower(400, 0.8, 5)).toBe(505);
  expect(drawnPower(0, 0.8, 5)).toBe(5);
  expect(drawnPower(-30, 0.8, 5)).toBe(5);
});

test('emptyAfter by hand: 250 Wh at 500 W last half an hour, at nothing for ever', () => {
  expect(emptyAfter(250 * WH, 500)).toBe(1800);
  expect(emptyAfter(250 * WH, 0)).toBe(Number.POSITIVE_INFINITY);
  expect(emptyAfter(0, 500)).toBe(0);
});

describe('gaugeEnergy', () => {
  test('by hand: 80 to 60 % of 500 Wh in steps of 5 % is 100 Wh, and anything from 75 to 125 Wh', () => {
    const { value, low, high } = gaugeEnergy(500 * WH, 0.8, 0.6, 0.05);
    expect(value / WH).toBeCloseTo(100, 10);
    expect(low / WH).toBeCloseTo(75, 10);
    expect(high / WH).toBeCloseTo(125, 10);
  });

  test('a full battery known to ±10 % widens both ends', () => {
    const { low, high } = gaugeEnergy(500 * WH, 0.8, 0.6, 0.05, 0.1);
    expect(low / WH).toBeCloseTo(75 * 0.9, 10);
    expect(high / WH).toBeCloseTo(125 * 1.1, 10);
  });

  test('a step as large as what was used may be nothing; nobody uses more than the whole', () => {
    expect(gaugeEnergy(500 * WH, 0.8, 0.8, 0.2).low).toBe(0);
    expect(gaugeEnergy(500 * WH, 1, 0, 0.2).high).toBe(500 * WH);
  });

  test('holds whatever was used when both readings are rounded to the step', () => {
    const r = random(80);
    for (let i = 0; i < 2000; i++) {
      const step = r.pick([0.01, 0.05, 0.1, 0.2]);
      const [before, used] = [r.between(0.3, 1), r.between(0.01, 0.3)];
      const shown = (share: number): number => step * Math.round(share / step);
      const { low, high } = gaugeEnergy(1, shown(before), shown(before - used), step);
      expect(used).toBeGreaterThanOrEqual(low - 1e-12);
      expect(used).toBeLessThanOrEqual(high + 1e-12);
    }
  });
});

describe('impliedEfficiency', () => {
  test('by hand: 60 Wh at the crank out of 75 (50 to 100) Wh are 0.8, from 0.6 to 1.2', () => {
    const { value, low, high } = impliedEfficiency(60 * WH, { value: 75 * WH, low: 50 * WH, high: 100 * WH });
    expect([value, low, high]).toEqual([0.8, 0.6, 1.2]);
  });

  test('a finer gauge narrows it, and nothing bounds it where the gauge may have used nothing', () => {
    const fine = impliedEfficiency(40 * WH, gaugeEnergy(340 * WH, 0.12, 0, 0.01));
    const coarse = impliedEfficiency(40 * WH, gaugeEnergy(340 * WH, 0.12, 0, 0.05));
    expect(fine.high - fine.low).toBeLessThan(coarse.high - coarse.low);
    expect(fine.value).toBe(coarse.value);
    expect(impliedEfficiency(40 * WH, gaugeEnergy(340 * WH, 0.12, 0, 0.2)).high).toBe(Number.POSITIVE_INFINITY);
  });
});

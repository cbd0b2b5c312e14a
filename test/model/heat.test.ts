import { describe, expect, test } from 'vitest';
import {
  finalRise,
  type Heat,
  heldPower,
  holdTime,
  intermittentOverload,
  riseAfter,
  shortTimeOverload,
  torqueRatio,
} from '../../calculators/model/index.ts';
import { type Random, random, relative } from '../random.ts';

const COLD: Heat = { continuous: 250, continuousCadence: 75, timeConstant: 1200, fixedLosses: 0.5, rise: 0 };

function anyHeat(r: Random): Heat {
  return {
    continuous: r.between(50, 600),
    continuousCadence: r.between(40, 110),
    timeConstant: r.between(60, 7200),
    fixedLosses: r.between(0, 3),
    rise: r.between(0, 0.99),
  };
}

test('torqueRatio(power, cadence) by hand: 500 W at 60 rpm are 2.5 times the torque of 250 W at 75 rpm', () => {
  expect(torqueRatio(500, 60, COLD)).toBeCloseTo(2.5, 14);
  expect(torqueRatio(250, 75, COLD)).toBe(1);
});

test('heldPower(cadence) is the lasting torque at that cadence: ratio 1, held for ever', () => {
  const r = random(70);
  for (let i = 0; i < 500; i++) {
    const heat = anyHeat(r);
    const cadence = r.between(30, 120);
    expect(relative(torqueRatio(heldPower(cadence, heat), cadence, heat), 1)).toBeLessThan(1e-15);
  }
  expect(heldPower(60, COLD)).toBe(200);
});

test('finalRise(k, fixed losses): nothing done leaves what the fixed losses warm, the lasting torque the whole', () => {
  expect(finalRise(0, 0.5)).toBeCloseTo(1 / 3, 15);
  expect(finalRise(1, 0.5)).toBe(1);
  expect(finalRise(2, 0.5)).toBe(3);
});

describe('holdTime(k, heat)', () => {
  test('is Infinity at and below the lasting torque, whatever is warm already', () => {
    const r = random(71);
    for (let i = 0; i < 500; i++) {
      const heat = { ...anyHeat(r), rise: r.between(0, 1.2) };
      expect(holdTime(r.between(0, 1), heat)).toBe(Number.POSITIVE_INFINITY);
      expect(holdTime(1, heat)).toBe(Number.POSITIVE_INFINITY);
      const at = r.between(30, 120);
      expect(holdTime(torqueRatio(0.999 * heldPower(at, heat), at, heat), heat)).toBe(Number.POSITIVE_INFINITY);
    }
  });

  test('is 0 above it once the rise is there', () => {
    expect(holdTime(1.01, { ...COLD, rise: 1 })).toBe(0);
    expect(holdTime(3, { ...COLD, rise: 1.1 })).toBe(0);
  });

  test('and shortTimeOverload are each other’s inverse from cold', () => {
    const r = random(72);
    for (let i = 0; i < 2000; i++) {
      const heat = { ...anyHeat(r), rise: 0 };
      const t = r.between(0.01, 4) * heat.timeConstant;
      const k = shortTimeOverload(t, heat.timeConstant, heat.fixedLosses);
      expect(k).toBeGreaterThan(1);
      expect(relative(holdTime(k, heat), t)).toBeLessThan(1e-11);
      const back = shortTimeOverload(holdTime(k, heat), heat.timeConstant, heat.fixedLosses);
      expect(relative(back, k)).toBeLessThan(1e-11);
    }
  });

  test('ends where riseAfter is the permitted rise, from cold and from warm', () => {
    const r = random(73);
    for (let i = 0; i < 1000; i++) {
      const heat = anyHeat(r);
      const k = r.between(1.01, 5);
      expect(riseAfter(k, holdTime(k, heat), heat)).toBeCloseTo(1, 11);
    }
  });

  test('is shorter for more torque, a warmer start and a quicker motor', () => {
    const r = random(74);
    for (let i = 0; i < 500; i++) {
      const heat = anyHeat(r);
      const k = r.between(1.01, 5);
      const t = holdTime(k, heat);
      expect(holdTime(k * 1.01, heat)).toBeLessThan(t);
      expect(holdTime(k, { ...heat, rise: heat.rise + 0.005 })).toBeLessThan(t);
      expect(relative(holdTime(k, { ...heat, timeConstant: heat.timeConstant / 2 }), t / 2)).toBeLessThan(1e-13);
    }
  });

  test('fixed losses leave less of the rise to a load that is small, more to one that is large', () => {
    // at the permitted rise itself they are part of what is allowed, so from cold an overload has longer with them
    expect(holdTime(2, { ...COLD, fixedLosses: 1 })).toBeGreaterThan(holdTime(2, { ...COLD, fixedLosses: 0 }));
    expect(finalRise(0.5, 1)).toBeGreaterThan(finalRise(0.5, 0));
  });

  test('keeps its digits where the overload is huge: there it is (1 − θ₀)(1 + α) τ ÷ k², to first order', () => {
    // 1,000 times the torque is a million times the losses; the next order is 1e-6 of it
    expect(relative(holdTime(1000, { ...COLD, rise: 0.2 }), (0.8 * 1.5 * 1200) / 1e6)).toBeLessThan(2e-6);
    expect(relative(holdTime(1e7, { ...COLD, rise: 0.2 }), (0.8 * 1.5 * 1200) / 1e14)).toBeLessThan(1e-12);
    expect(holdTime(Number.POSITIVE_INFINITY, COLD)).toBe(0);
  });

  test('by hand: twice the torque from cold without fixed losses, τ ln(4/3) = 0.28768 τ', () => {
    expect(holdTime(2, { ...COLD, fixedLosses: 0 })).toBeCloseTo(1200 * Math.log(4 / 3), 9);
  });
});

test('riseAfter starts where it is told, ends at the final rise, and is 63.2 % of the way after one time constant', () => {
  const r = random(75);
  for (let i = 0; i < 200; i++) {
    const heat = anyHeat(r);
    const k = r.between(0, 4);
    const final = finalRise(k, heat.fixedLosses);
    expect(relative(riseAfter(k, 0, heat), heat.rise)).toBeLessThan(1e-12);
    expect(riseAfter(k, 60 * heat.timeConstant, heat)).toBeCloseTo(final, 12);
    const way = (riseAfter(k, heat.timeConstant, heat) - heat.rise) / (final - heat.rise);
    expect(way).toBeCloseTo(0.6321205588, 8);
  }
});

test('riseAfter solves C dθ/dt = losses − θ/R, checked by its slope', () => {
  const r = random(76);
  for (let i = 0; i < 200; i++) {
    const heat = anyHeat(r);
    const [k, t] = [r.between(0, 4), r.between(0, 2) * heat.timeConstant];
    const step = 1e-4 * heat.timeConstant;
    const slope = (riseAfter(k, t + step, heat) - riseAfter(k, t - step, heat)) / (2 * step);
    const losses = (k * k + heat.fixedLosses) / (1 + heat.fixedLosses);
    // the central difference is good to 1e-8 of the span
    expect(slope * heat.timeConstant).toBeCloseTo(losses - riseAfter(k, t, heat), 6);
  }
});

describe('intermittentOverload', () => {
  test('the circulated answer to example 5.3 is what −15/100 gives as the whole number −1', () => {
    expect(intermittentOverload(15, 30, 15, 150, 0.4)).toBeCloseTo(1.071304005, 9);
    expect(intermittentOverload(15, 30, 100, 150, 0.4)).toBeCloseTo(1.6025382537, 9);
  });

  test('without rest it is the lasting load; with endless rest the short-time overload', () => {
    expect(intermittentOverload(15, 0, 100, 150, 0.4)).toBeCloseTo(1, 12);
    expect(intermittentOverload(15, 1e6, 100, 150, 0.4)).toBeCloseTo(shortTimeOverload(15, 100, 0.4), 12);
  });

  test('ridden again and again it comes back to the permitted rise and no further', () => {
    const r = random(77);
    for (let i = 0; i < 50; i++) {
      const [on, off, heating, cooling] = [
        r.between(10, 300),
        r.between(10, 900),
        r.between(200, 2000),
        r.between(200, 3000),
      ];
      const fixedLosses = r.between(0, 1);
      const k = intermittentOverload(on, off, heating, cooling, fixedLosses);
      let rise = 0;
      for (let cycle = 0; cycle < 5000; cycle++) {
        rise = riseAfter(k, on, { ...COLD, timeConstant: heating, fixedLosses, rise });
        if (cycle < 4999) rise *= Math.exp(-off / cooling);
      }
      expect(rise).toBeCloseTo(1, 9);
    }
  });
});

import { describe, expect, test } from 'vitest';
import { GAUSS, KRONROD, NODES, Settling } from '../../calculators/model/settling.ts';

describe('the rules', () => {
  const sum = (weights: Float64Array, power: number): number =>
    weights.reduce((total, weight, i) => total + weight * (NODES[i] as number) ** power, 0);

  test('integrate powers of x from −1 to 1: Gauss’s up to the 13th, Kronrod’s up to the 23rd, and no further', () => {
    for (let power = 0; power <= 23; power++) {
      const exact = power % 2 === 0 ? 2 / (power + 1) : 0;
      expect(Math.abs(sum(KRONROD, power) - exact)).toBeLessThan(1e-15);
      if (power <= 13) expect(Math.abs(sum(GAUSS, power) - exact)).toBeLessThan(1e-15);
    }
    expect(Math.abs(sum(GAUSS, 14) - 2 / 15)).toBeGreaterThan(1e-6);
    expect(Math.abs(sum(KRONROD, 24) - 2 / 25)).toBeGreaterThan(1e-12);
  });
});

describe('a bike that settles', () => {
  const still = { linear: 0, quadratic: 0, headWind: 0 };

  test('without power against an even force it comes to rest: v²/2a, and half of the speed after half of the time', () => {
    const settling = new Settling();
    // 100 kg against 50 N from 8 m/s: 0.5 m/s², 64 m, 16 s
    settling.start(100, { ...still, constant: 50 }, 0, 0, 8, 0, true, 1);
    expect(settling.distanceToRest()).toBeCloseTo(64, 12);
    settling.reach(1, 0, 8, Number.POSITIVE_INFINITY);
    expect(settling.speed).toBeCloseTo(4, 12);
    expect(settling.distance).toBeCloseTo(48, 12);
  });

  test('with even power against an even force: m v∞/F × (ln(y₀/y) − Δv/v∞) in time, worked by hand', () => {
    const settling = new Settling();
    // 300 W against 100 N: v∞ 3 m/s. dt = m v dv/(P − F v), from 1 to 2 m/s: (m/F)[−v − v∞ ln(v∞ − v)] = 1 × (−1 + 3 ln 2)
    settling.start(100, { ...still, constant: 100 }, 300, 0, 1, 3, true, 1);
    settling.to(Math.LN2, 2);
    expect(settling.time).toBeCloseTo(3 * Math.LN2 - 1, 13);
    // ds = v dt: (m/F)[−v²/2 − v∞ v − v∞² ln(v∞ − v)] = −1.5 − 3 + 9 ln 2
    expect(settling.distance).toBeCloseTo(9 * Math.LN2 - 4.5, 13);
    // the same law, its end not known beforehand
    settling.start(100, { ...still, constant: 100 }, 300, 0, 1, 3, false, 1);
    settling.to(settling.progressAt(2), 2);
    expect(settling.time).toBeCloseTo(3 * Math.LN2 - 1, 12);
  });

  test('coasting in air alone: distance (m/k) ln(v₀/v), time (m/k)(1/v − 1/v₀)', () => {
    const settling = new Settling();
    settling.start(90, { ...still, quadratic: 0.3, constant: 1e-9 }, 0, 0, 12, 0, true, 1);
    settling.reach(0, 1, 300 * Math.LN2, Number.POSITIVE_INFINITY);
    expect(settling.speed).toBeCloseTo(6, 6);
    expect(settling.time).toBeCloseTo(300 / 12, 6);
  });
});

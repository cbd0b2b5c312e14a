import { expect, test } from 'vitest';
import {
  crankPower,
  forces,
  kineticPower,
  type Load,
  loadOf,
  resistanceOf,
  resistingForce,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { anyClimb } from './climbs.ts';

const LEVEL: Load = {
  sin: 0,
  cos: 1,
  mass: 100,
  rolling: 0,
  dragArea: 0.5,
  density: 1.2,
  headWind: 0,
  bearings: false,
};

test('forces(load, v) add up to resistingForce at any speed, wind and slope', () => {
  const r = random(20);
  for (let i = 0; i < 1000; i++) {
    const load = { ...loadOf(anyClimb(r)), bearings: r.chance(0.5) };
    const v = r.between(0, 25);
    const { gravity, rolling, air } = forces(load, v);
    const largest = Math.max(...[gravity, rolling, air].map(Math.abs));
    expect(Math.abs(gravity + rolling + air - resistingForce(resistanceOf(load), v)) / largest).toBeLessThan(1e-13);
  }
});

test('resistingForce(r, v) never falls with speed, so that a power has one speed', () => {
  const r = random(21);
  for (let i = 0; i < 1000; i++) {
    const resistance = resistanceOf(loadOf(anyClimb(r)));
    const v = r.between(0, 25);
    const faster = v + r.between(0.01, 3);
    expect(resistingForce(resistance, faster)).toBeGreaterThan(resistingForce(resistance, v));
  }
});

test('air resistance follows the speed of the air, not of the bike', () => {
  // 0.3 kg/m × (8 m/s)²
  expect(forces({ ...LEVEL, headWind: 3 }, 5).air).toBeCloseTo(19.2, 12);
  expect(forces({ ...LEVEL, headWind: -5 }, 5).air).toBe(0);
  // a tail wind of 8 m/s pushes a bike at 5 m/s with 0.3 × 3²
  expect(forces({ ...LEVEL, headWind: -8 }, 5).air).toBeCloseTo(-2.7, 12);
});

test('bearings take 0.091 N and 0.0087 N per m/s, counted with rolling (Martin et al. 1998; value from memory)', () => {
  const bearings = { ...LEVEL, bearings: true };
  expect(forces(bearings, 0).rolling).toBeCloseTo(0.091, 15);
  expect(forces(bearings, 10).rolling).toBeCloseTo(0.178, 15);
  expect(forces(LEVEL, 10).rolling).toBe(0);
});

test('crankPower(r, v, efficiency) divides by the efficiency only while power flows to the wheel', () => {
  const up = { constant: 60, linear: 0, quadratic: 0, headWind: 0 };
  expect(crankPower(up, 5, 0.96)).toBeCloseTo(312.5, 12);
  expect(crankPower({ ...up, constant: -60 }, 5, 0.96)).toBe(-300);
  expect(crankPower(up, 0, 0.96)).toBe(0);
});

test('kineticPower(…) is the change of kinetic energy over time, the wheels counted as mass', () => {
  // ½ (90 + 10) kg (6² − 4²) m²/s² in 20 s
  expect(kineticPower(90, 10, 4, 6, 20)).toBe(50);
  expect(kineticPower(90, 10, 6, 4, 20)).toBe(-50);
  expect(kineticPower(90, 10, 5, 5, 20)).toBe(0);
});

test('weight, slope, tyres and bearings stay where they are when the wind turns', () => {
  const r = random(22);
  for (let i = 0; i < 200; i++) {
    const load = loadOf(anyClimb(r));
    const v = r.between(0, 20);
    const still = forces({ ...load, headWind: 0 }, v);
    expect(forces(load, v)).toMatchObject({ gravity: still.gravity, rolling: still.rolling });
    // in the frame of the air both are one
    expect(
      relative(
        forces(load, v).air,
        forces({ ...load, headWind: 0 }, Math.abs(v + load.headWind)).air * Math.sign(v + load.headWind),
      ),
    ).toBeLessThan(1e-13);
  }
});

import { describe, expect, test } from 'vitest';
import {
  cadenceAt,
  crankTorque,
  type Gear,
  gearSpeed,
  holdingForce,
  pedalTorque,
  steepestGrade,
  torqueCadence,
  torquePower,
  wheelForce,
  wheelTorque,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';

/** 34 teeth at the crank, 51 at a wheel of 0.35 m. */
const LOWEST: Gear = { wheelRadius: 0.35, turns: 34 / 51 };

test('power, torque and cadence are three sides of one thing', () => {
  const r = random(60);
  for (let i = 0; i < 500; i++) {
    const [torque, cadence] = [r.between(5, 200), r.between(20, 160)];
    const power = torquePower(torque, cadence);
    expect(relative(crankTorque(power, cadence), torque)).toBeLessThan(1e-14);
    expect(relative(torqueCadence(power, torque), cadence)).toBeLessThan(1e-14);
  }
  expect(torquePower(60 / (2 * Math.PI), 60)).toBeCloseTo(60, 12);
});

test('what the wheel turns faster it turns with less torque: the power stays', () => {
  const r = random(61);
  for (let i = 0; i < 500; i++) {
    const gear = { wheelRadius: r.between(0.2, 0.4), turns: r.between(0.4, 4) };
    const [torque, cadence] = [r.between(5, 200), r.between(20, 160)];
    expect(relative(wheelForce(torque, gear) * gearSpeed(cadence, gear), torquePower(torque, cadence))).toBeLessThan(
      1e-13,
    );
    expect(relative(wheelForce(torque, gear) * gear.wheelRadius, wheelTorque(torque, gear))).toBeLessThan(1e-14);
  }
});

test('gearSpeed(cadence, gear) by hand: 60 rpm through 34 and 51 teeth roll 2π × 0.35 × 2/3 = 1.4661 m each second', () => {
  expect(gearSpeed(60, LOWEST)).toBeCloseTo(1.46608, 5);
});

describe('cadenceAt(speed, gear, preferred)', () => {
  test('is the preferred one from the speed of the lowest gear on, and falls with the speed below it', () => {
    const v = gearSpeed(70, LOWEST);
    expect(cadenceAt(v * 3, LOWEST, 70)).toBe(70);
    expect(cadenceAt(v * 1.0001, LOWEST, 70)).toBe(70);
    expect(cadenceAt(v / 2, LOWEST, 70)).toBeCloseTo(35, 12);
    expect(cadenceAt(0, LOWEST, 70)).toBe(0);
  });
});

test('pedalTorque(force, crank): 70 kg standing on a level pedal of 170 mm are 116.7 N·m (70 × 9.80665 × 0.17)', () => {
  expect(pedalTorque(70 * 9.80665, 0.17)).toBeCloseTo(116.699, 3);
});

describe('steepestGrade(force, mass, rolling)', () => {
  test('and holdingForce are each other’s inverse on any slope, up and down', () => {
    const r = random(62);
    for (let i = 0; i < 2000; i++) {
      const [grade, mass, rolling] = [r.between(-0.5, 2), r.between(40, 250), r.between(0, 0.15)];
      const found = steepestGrade(holdingForce(mass, grade, rolling), mass, rolling);
      expect(Math.abs((found ?? Number.NaN) - grade)).toBeLessThan(1e-10);
    }
  });

  test('is null where the force carries the whole weight, and never anything that is no number', () => {
    expect(steepestGrade(2000, 100, 0.02)).toBeNull();
    // weight × √(1 + 0.02²) = 980.861 N is the most that any slope asks for
    expect(steepestGrade(980.87, 100, 0.02)).toBeNull();
    expect(steepestGrade(980.85, 100, 0.02)).toBeGreaterThan(40);
    // just the weight: sin θ + c cos θ = 1 where tan θ = (1 − c²) ÷ 2c = 24.99
    expect(steepestGrade(980.665, 100, 0.02)).toBeCloseTo(24.99, 9);
    const r = random(63);
    for (let i = 0; i < 2000; i++) {
      const grade = steepestGrade(r.between(0, 3000), r.between(30, 300), r.between(0, 0.2));
      if (grade !== null) expect(Number.isFinite(grade)).toBe(true);
    }
  });

  test('is below the level where a force does not even overcome the tyres: 5 N against 100 kg at 0.02 is −1.5 %', () => {
    // (5 − 19.6133) ÷ 980.665 = −0.0149
    expect(steepestGrade(5, 100, 0.02)).toBeCloseTo(-0.0149, 4);
    expect(steepestGrade(0, 100, 0.02)).toBeCloseTo(-0.02, 12);
  });

  test('grows with the force, falls with mass and rolling', () => {
    const grade = (force: number, mass: number, rolling: number): number => steepestGrade(force, mass, rolling) ?? 99;
    expect(grade(201, 110, 0.02)).toBeGreaterThan(grade(200, 110, 0.02));
    expect(grade(200, 111, 0.02)).toBeLessThan(grade(200, 110, 0.02));
    expect(grade(200, 110, 0.021)).toBeLessThan(grade(200, 110, 0.02));
  });
});

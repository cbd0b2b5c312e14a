import { describe, expect, test } from 'vitest';
import { batteryEnergy, type Climb, hillFromGain, hillFromGrade, rideClimb } from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { imbalance } from '../reference/comparisons.ts';
import { anyAscent, anyClimb, PLAIN } from './climbs.ts';

test('rideClimb(climb): time, speed and climbing speed belong together', () => {
  const r = random(50);
  for (let i = 0; i < 500; i++) {
    const climb = anyAscent(r);
    const ride = rideClimb(climb);
    expect(relative(ride.time * ride.speed, climb.hill.distance)).toBeLessThan(1e-13);
    expect(relative(ride.time * ride.verticalSpeed, climb.hill.gain)).toBeLessThan(1e-12);
    expect(ride.crankPower).toBe(climb.riderPower + ride.motorPower);
    expect(ride.motorPower).toBeLessThanOrEqual(climb.motorPower);
  }
});

test('rideClimb(climb) of a climb worked out by hand: no air, no bearings to speak of', () => {
  // 100 kg at 9.80665 m/s² on 5 % (sin): 49.0 N; tyres 0.02 × 980.665 × 0.99875: 19.6 N, which at 1 m/s are as many watts
  const ride = rideClimb({
    ...PLAIN,
    hill: hillFromGain(1000, 50),
    mass: 100,
    rolling: 0.02,
    dragArea: 1e-9,
    efficiency: 1,
    motorPower: 0,
    riderPower: 49.03325 + 19.588768 + 0.091 + 0.0087,
  });
  expect(ride.speed).toBeCloseTo(1, 7);
  expect(ride.time).toBeCloseTo(1000, 4);
  expect(ride.powers.gravity).toBeCloseTo(49.03325, 5);
  expect(ride.powers.rolling).toBeCloseTo(19.688468, 4);
});

describe('energy balance to 1e-9', () => {
  test('what goes into the crank comes out as gravity, rolling, air and drive, on any hill in any wind', () => {
    const r = random(51);
    for (let i = 0; i < 2000; i++) expect(imbalance(anyClimb(r))).toBeLessThan(1e-9);
  });

  test('coasting, the hill pays for tyres and air', () => {
    const r = random(52);
    for (let i = 0; i < 500; i++) {
      const climb = { ...anyClimb(r), riderPower: 0 };
      expect(imbalance(climb)).toBeLessThan(1e-9);
      expect(rideClimb(climb)).toMatchObject({ motorPower: 0, crankPower: 0, powers: { drive: 0 } });
    }
  });

  test('over the whole climb gravity takes m g H', () => {
    const r = random(53);
    for (let i = 0; i < 500; i++) {
      const climb = anyAscent(r);
      const ride = rideClimb(climb);
      expect(relative(ride.powers.gravity * ride.time, climb.mass * 9.80665 * climb.hill.gain)).toBeLessThan(1e-12);
    }
  });
});

describe('monotone, on 1,000 hills up and down in any wind', () => {
  const slower: [string, (climb: Climb) => Climb][] = [
    ['more mass', (climb) => ({ ...climb, mass: climb.mass + 1 })],
    ['more grade', (climb) => ({ ...climb, hill: hillFromGrade(climb.hill.distance, climb.hill.grade + 0.001) })],
    ['rougher ground', (climb) => ({ ...climb, rolling: climb.rolling + 0.001 })],
    ['more head wind', (climb) => ({ ...climb, headWind: climb.headWind + 0.1 })],
    ['less rider power', (climb) => ({ ...climb, riderPower: climb.riderPower * 0.99 })],
    ['less motor', (climb) => ({ ...climb, motorPower: climb.motorPower * 0.99 })],
    ['a lower limit', (climb) => ({ ...climb, assistLimit: (climb.assistLimit ?? 20) * 0.99 })],
    ['a worse drive', (climb) => ({ ...climb, efficiency: climb.efficiency * 0.99 })],
  ];
  test.each(slower)('%s never makes a climb faster', (name, change) => {
    const r = random(54);
    let strictly = 0;
    for (let i = 0; i < 1000; i++) {
      const climb = anyClimb(r);
      // a heavier bike rolls down faster: only what resists grows with mass where slope and tyres together hold back
      const pushes = climb.hill.sin + climb.rolling * climb.hill.cos < 0;
      if (name === 'more mass' && pushes) continue;
      const [before, after] = [rideClimb(climb).time, rideClimb(change(climb)).time];
      expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-13));
      if (after > before * (1 + 1e-9)) strictly++;
    }
    expect(strictly).toBeGreaterThan(100);
  });

  test('more mass makes a descent faster', () => {
    const down = { ...PLAIN, hill: hillFromGrade(1000, -0.08) };
    expect(rideClimb({ ...down, mass: 120 }).time).toBeLessThan(rideClimb(down).time);
  });

  test('a larger drag area slows a bike in still air and speeds it up in a tail wind that is faster than it', () => {
    const wider = { ...PLAIN, dragArea: 0.6 };
    expect(rideClimb(wider).time).toBeGreaterThan(rideClimb(PLAIN).time);
    expect(rideClimb({ ...wider, headWind: -12 }).time).toBeLessThan(rideClimb({ ...PLAIN, headWind: -12 }).time);
  });
});

test('twice the hill at the same grade takes twice the time', () => {
  const twice = { ...PLAIN, hill: hillFromGrade(2 * PLAIN.hill.distance, PLAIN.hill.grade) };
  expect(rideClimb(twice).time).toBeCloseTo(2 * rideClimb(PLAIN).time, 9);
});

test('nobody pedals: uphill the time is Infinity, all powers 0, and no NaN anywhere', () => {
  const ride = rideClimb({ ...PLAIN, riderPower: 0 });
  expect(ride).toEqual({
    speed: 0,
    verticalSpeed: 0,
    time: Number.POSITIVE_INFINITY,
    motorPower: 0,
    crankPower: 0,
    powers: { gravity: 0, rolling: 0, air: 0, drive: 0 },
  });
});

test('rideClimb does not change its input', () => {
  const frozen = Object.freeze({ ...PLAIN, hill: Object.freeze({ ...PLAIN.hill }) });
  expect(() => rideClimb(frozen)).not.toThrow();
});

test('batteryEnergy(P, t, efficiency): 400 W for 9 minutes through 0.8 draw 75 Wh', () => {
  expect(batteryEnergy(400, 540, 0.8)).toBe(75 * 3600);
  expect(batteryEnergy(0, Number.POSITIVE_INFINITY, 0.8)).toBe(0);
  expect(batteryEnergy(-20, 540, 0.8)).toBe(0);
});

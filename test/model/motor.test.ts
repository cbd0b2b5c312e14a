import { describe, expect, test } from 'vitest';
import {
  assistShare,
  type Climb,
  drivenSpeed,
  FADE_WIDTH,
  hillFromGain,
  loadOf,
  motorBound,
  motorOutput,
  resistanceOf,
  rideClimb,
  riderForPeak,
  steadySpeed,
} from '../../calculators/model/index.ts';
import { random } from '../random.ts';
import { anyAscent, anyBoundAscent, anyClimb, PLAIN } from './climbs.ts';

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

describe('motorBound', () => {
  // 80 N·m at 60 rpm make 502.65 W; 2.5 times 170 W are 425 W
  const drive = { ...PLAIN, motorPower: 600, torque: 80, cadence: 60, support: 2.5 };

  test('is the least of peak, torque × cadence and support × rider power, by name', () => {
    expect(motorBound(drive)).toEqual({ power: 425, binds: 'support' });
    expect(motorBound({ ...drive, support: 4 }).binds).toBe('torque');
    expect(motorBound({ ...drive, support: 4 }).power).toBeCloseTo(502.6548, 4);
    expect(motorBound({ ...drive, support: 4, motorPower: 300 })).toEqual({ power: 300, binds: 'peak' });
    expect(motorBound({ ...drive, support: 4 }, 90)).toEqual({ power: 600, binds: 'peak' });
  });

  test('what is absent does not bind, and of equals the peak counts', () => {
    expect(motorBound(PLAIN)).toEqual({ power: 380, binds: 'peak' });
    expect(motorBound({ ...PLAIN, torque: 1 })).toEqual({ power: 380, binds: 'peak' });
    expect(motorBound({ ...PLAIN, support: 380 / 170 })).toEqual({ power: 380, binds: 'peak' });
  });

  test('is nothing while nobody pedals', () => {
    expect(motorBound({ ...drive, riderPower: 0 }).power).toBe(0);
    expect(motorOutput({ ...drive, riderPower: 0 }, 2)).toBe(0);
  });
});

test('riderForPeak(peak, support): 500 W at four times need 125 W, and at that power support stops binding', () => {
  expect(riderForPeak(500, 4)).toBe(125);
  const drive = { ...PLAIN, motorPower: 500, support: 4 };
  expect(motorBound({ ...drive, riderPower: 124.9 }).binds).toBe('support');
  expect(motorBound({ ...drive, riderPower: 125 })).toEqual({ power: 500, binds: 'peak' });
  expect(riderForPeak(500, 0)).toBe(Number.POSITIVE_INFINITY);
});

test('without bounds the motor is what it was before there were any, to the last bit', () => {
  const r = random(42);
  for (let i = 0; i < 2000; i++) {
    const climb = anyClimb(r);
    const v = r.between(0, 20);
    expect(motorOutput(climb, v)).toBe(climb.motorPower * assistShare(v, climb.assistLimit));
    expect(rideClimb({ ...climb, torque: 1e9, cadence: 80, support: 1e9 })).toEqual(rideClimb(climb));
  }
});

test('in the lowest gear the torque is a force, by hand: 50 N·m through 34 and 51 teeth at 0.35 m push with 214.29 N', () => {
  // 264.186 N of slope and 0.0997 N of bearings at 1 m/s: 214.2857 W come from the motor there and 50 W from the rider
  const climb = {
    ...PLAIN,
    hill: hillFromGain(1000, 100),
    mass: 264.186 / (9.80665 * 0.1),
    rolling: 0,
    dragArea: 1e-9,
    efficiency: 1,
    riderPower: 50,
    motorPower: 600,
    torque: 50,
    cadence: 70,
    gear: { wheelRadius: 0.35, turns: 34 / 51 },
  };
  const ride = rideClimb(climb);
  expect(ride.speed).toBeCloseTo(1, 4);
  expect(ride.motorPower).toBeCloseTo(214.2857 * ride.speed, 3);
  // with the cadence kept it would have been 50 N·m × 70 rpm = 366.5 W
  expect(rideClimb({ ...climb, gear: undefined }).motorPower).toBeCloseTo(366.5191, 4);
});

describe('on 2,000 climbs with any motor', () => {
  const stronger: [string, (climb: Climb) => Climb][] = [
    ['more torque', (climb) => ({ ...climb, torque: climb.torque && climb.torque * 1.05 })],
    ['more peak', (climb) => ({ ...climb, motorPower: climb.motorPower * 1.05 })],
    ['more support', (climb) => ({ ...climb, support: climb.support && climb.support * 1.05 })],
    ['a higher cadence', (climb) => ({ ...climb, cadence: climb.cadence && climb.cadence * 1.05 })],
    ['a lower gear', (climb) => ({ ...climb, gear: climb.gear && { ...climb.gear, turns: climb.gear.turns / 1.05 } })],
    ['more rider power', (climb) => ({ ...climb, riderPower: climb.riderPower * 1.05 })],
    ['no bound on torque', (climb) => ({ ...climb, torque: undefined })],
    ['no bound on support', (climb) => ({ ...climb, support: undefined })],
  ];
  test.each(stronger)('%s never lowers the output at a speed, nor raises the time', (_, change) => {
    const r = random(43);
    let faster = 0;
    for (let i = 0; i < 2000; i++) {
      const climb = anyBoundAscent(r);
      const changed = change(climb);
      const v = r.between(0.1, 12);
      expect(motorOutput(changed, v)).toBeGreaterThanOrEqual(motorOutput(climb, v));
      const [before, after] = [rideClimb(climb).time, rideClimb(changed).time];
      expect(after).toBeLessThanOrEqual(before * (1 + 1e-13));
      if (after < before * (1 - 1e-9)) faster++;
    }
    expect(faster).toBeGreaterThan(100);
  });

  test('the motor gives what it may at the speed that it rides, and the powers balance', () => {
    const r = random(44);
    for (let i = 0; i < 2000; i++) {
      const climb = anyBoundAscent(r);
      const ride = rideClimb(climb);
      const { gravity, rolling, air, drive } = ride.powers;
      expect(ride.motorPower).toBe(motorOutput(climb, ride.speed));
      expect(Math.abs(gravity + rolling + air + drive - ride.crankPower)).toBeLessThan(1e-9 * ride.crankPower);
    }
  });

  test('no motor, however strong, is faster than the limit where the rider alone is slower', () => {
    const r = random(45);
    let held = 0;
    for (let i = 0; i < 2000; i++) {
      const any = r.chance(0.5) ? anyAscent(r) : anyBoundAscent(r);
      const climb = { ...any, motorPower: r.pick([1e3, 1e4, 1e6]), assistLimit: r.between(3, 12) };
      if (rideClimb({ ...climb, motorPower: 0 }).speed > climb.assistLimit) continue;
      const { time } = rideClimb(climb);
      expect(time).toBeGreaterThanOrEqual((climb.hill.distance / climb.assistLimit) * (1 - 1e-13));
      if (time < (1.001 * climb.hill.distance) / climb.assistLimit) held++;
    }
    expect(held).toBeGreaterThan(100);
  });
});

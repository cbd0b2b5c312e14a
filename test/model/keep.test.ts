import { describe, expect, test } from 'vitest';
import { type Climb, motorToKeep, powerAtLimit, rideClimb, riderToKeep } from '../../calculators/model/index.ts';
import { type Random, random } from '../random.ts';
import { anyAscent, anyBoundAscent, PLAIN } from './climbs.ts';

/** One climb, and the time of somebody else on the same hill. */
function two(r: Random): { climb: Climb; time: number } {
  const climb = anyBoundAscent(r);
  return { climb, time: rideClimb({ ...anyAscent(r), hill: climb.hill }).time };
}

describe('riderToKeep(climb, time)', () => {
  test('ridden again it takes that time, with any motor, gear, support and limit', () => {
    const r = random(100);
    let ridden = 0;
    for (let i = 0; i < 2000; i++) {
      const { climb, time } = two(r);
      const riderPower = riderToKeep(climb, time);
      expect(riderPower).toBeGreaterThanOrEqual(0);
      if (riderPower === 0) continue;
      ridden++;
      expect(Math.abs(rideClimb({ ...climb, riderPower }).time - time)).toBeLessThan(1e-6 + 1e-12 * time);
    }
    expect(ridden).toBeGreaterThan(1000);
  });

  test('is 0 where the motor makes the time with any pedalling at all', () => {
    const r = random(101);
    let zeros = 0;
    for (let i = 0; i < 2000; i++) {
      const { climb, time } = two(r);
      if (riderToKeep(climb, time) > 0) continue;
      zeros++;
      expect(rideClimb({ ...climb, riderPower: 1e-3 }).time).toBeLessThanOrEqual(time * (1 + 1e-3));
    }
    expect(zeros).toBeGreaterThan(50);
  });

  test('at a support of 1 half of what the climb takes, by hand', () => {
    const alone = { ...PLAIN, motorPower: 0, riderPower: 300 };
    const helped = { ...PLAIN, motorPower: 1000, support: 1 };
    expect(riderToKeep(helped, rideClimb(alone).time)).toBeCloseTo(150, 9);
  });

  test('is its own power for its own time', () => {
    expect(riderToKeep(PLAIN, rideClimb(PLAIN).time)).toBeCloseTo(170, 9);
  });
});

describe('motorToKeep(climb, time)', () => {
  test('ridden again it takes that time; a reason where there is none is true', () => {
    const r = random(102);
    const seen = new Map<string, number>();
    for (let i = 0; i < 4000; i++) {
      const { climb: any, time } = two(r);
      const climb = r.chance(0.05) ? { ...any, riderPower: 0 } : any;
      const motor = motorToKeep(climb, time);
      const kind = typeof motor === 'number' ? 'power' : motor;
      seen.set(kind, (seen.get(kind) ?? 0) + 1);
      const speed = climb.hill.distance / time;
      if (typeof motor === 'number') {
        expect(Math.abs(rideClimb({ ...climb, motorPower: motor }).time - time)).toBeLessThan(1e-6 + 1e-12 * time);
      } else if (motor === 'none-needed') {
        expect(rideClimb({ ...climb, motorPower: 0 }).time).toBeLessThanOrEqual(time * (1 + 1e-12));
      } else if (motor === 'beyond-limit') {
        expect(speed).toBeGreaterThanOrEqual(climb.assistLimit ?? Number.NaN);
      } else {
        // nobody pedals, or torque or support binds first: a motor without any bound on its peak is slower as well
        expect(rideClimb({ ...climb, motorPower: 1e9 }).time).toBeGreaterThan(time);
      }
    }
    for (const kind of ['power', 'none-needed', 'no-pedalling', 'beyond-limit', 'bound'])
      expect(seen.get(kind)).toBeGreaterThan(50);
  });

  test('asks for more than it gives where the limit has begun to fade it', () => {
    const fast = { ...PLAIN, motorPower: 500 };
    const { time, speed } = rideClimb(fast);
    expect(motorToKeep(PLAIN, time)).toBeCloseTo(500, 9);
    // in the middle of a fade of 2 km/h half comes through
    const limited = { ...PLAIN, assistLimit: speed + 1 / 3.6 };
    expect(motorToKeep(limited, time)).toBeCloseTo(1000, 7);
  });
});

describe('powerAtLimit(climb)', () => {
  test('is what the hill takes there from the motor: unlimited it rides exactly the limit', () => {
    const r = random(103);
    for (let i = 0; i < 1000; i++) {
      const climb = { ...anyAscent(r), assistLimit: r.between(3, 12) };
      const power = powerAtLimit(climb);
      if (power === null) {
        expect(rideClimb({ ...climb, motorPower: 0 }).speed).toBeGreaterThanOrEqual(climb.assistLimit * (1 - 1e-12));
        continue;
      }
      const { speed } = rideClimb({ ...climb, motorPower: power, assistLimit: null });
      expect(Math.abs(speed - climb.assistLimit)).toBeLessThan(1e-9);
    }
  });

  test('is null without a limit', () => {
    expect(powerAtLimit(PLAIN)).toBeNull();
  });
});

import { expect, test } from 'vitest';
import { crankPowerForTime, FADE_WIDTH, inferMotor, rideClimb } from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { anyAscent, PLAIN } from './climbs.ts';

test('inferMotor reads back the motor that rode the climb, below the fade and inside it', () => {
  const r = random(70);
  let faded = 0;
  for (let i = 0; i < 2000; i++) {
    const climb = { ...anyAscent(r), motorPower: r.between(50, 1200) };
    const ride = rideClimb(climb);
    const motor = inferMotor(climb, ride.time);
    expect(Math.abs(motor.mean - ride.motorPower) / ride.crankPower).toBeLessThan(1e-9);
    const fading = climb.assistLimit !== null && ride.speed > climb.assistLimit - FADE_WIDTH * (1 - 1e-9);
    if (fading && ride.motorPower > 0.05 * climb.motorPower) {
      faded++;
      expect(motor.insideFade).toBe(true);
      expect(motor.mean).toBeLessThan(climb.motorPower);
      // carried on with its own fade, the motor rides the same hill in the same time
      const again = rideClimb({ ...climb, motorPower: motor.mean, fadeWidth: motor.fadeWidth ?? Number.NaN });
      expect(relative(again.time, ride.time)).toBeLessThan(1e-9);
    } else if (!fading) {
      expect(motor.insideFade).toBe(false);
      expect(motor.fadeWidth).toBeNull();
    }
  }
  expect(faded).toBeGreaterThan(100);
});

test('above the limit a time says nothing about the motor but what it gave: nothing', () => {
  const fast = { ...PLAIN, assistLimit: 1 };
  const motor = inferMotor(fast, rideClimb(fast).time);
  expect(motor.insideFade).toBe(true);
  expect(motor.mean).toBeCloseTo(0, 9);
});

test('a time longer than the rider alone needs gives a motor below zero, not an error', () => {
  const alone = rideClimb({ ...PLAIN, motorPower: 0 }).time;
  expect(inferMotor(PLAIN, alone).mean).toBeCloseTo(0, 9);
  expect(inferMotor(PLAIN, alone * 1.1).mean).toBeLessThan(-10);
});

test('a motor below zero stays below zero inside the fade', () => {
  const climb = { ...PLAIN, assistLimit: 4 };
  const motor = inferMotor({ ...climb, riderPower: 900 }, climb.hill.distance / 3.8);
  expect(motor.insideFade).toBe(true);
  expect(motor.mean).toBeLessThan(-100);
});

test('a shorter time takes more power, in all', () => {
  let before = crankPowerForTime(PLAIN, 3000);
  for (let time = 2900; time >= 200; time -= 100) {
    const power = crankPowerForTime(PLAIN, time);
    expect(power).toBeGreaterThan(before);
    before = power;
  }
});

test('on a descent the power for a time may be negative: that much must be braked', () => {
  const down = {
    ...PLAIN,
    hill: { ...PLAIN.hill, sin: -PLAIN.hill.sin, gain: -PLAIN.hill.gain, grade: -PLAIN.hill.grade },
  };
  expect(crankPowerForTime(down, 1000)).toBeLessThan(0);
});

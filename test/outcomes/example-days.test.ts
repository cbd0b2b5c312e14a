import { describe, expect, test } from 'vitest';
import {
  ABAB,
  ABBA,
  behind,
  closer,
  errorBudget,
  FULL,
  falseAmong,
  halfWidth,
  LIGHT,
  lostBy,
  MID,
  motorOf,
  OTHER_LIGHT,
  pairOf,
  reduced,
  ridden,
  seemsSlower,
  TARGET_POWER,
  uncontrolled,
  widerAmong,
  withUnlikeTyres,
} from '../../content/example-days.ts';

/* What the pages on testing say in words of days that they invent: the figures beside the words are computed with every build. */

const BIKES = [LIGHT, OTHER_LIGHT, MID, FULL];

describe('the invented day', () => {
  // runs of one bike lie evenly about its motor, so a mean of times is off by the bend of the curve only: well below 1 W
  test.each(BIKES)('gives back the motor of $name', (bike) => {
    expect(Math.abs(motorOf(reduced, bike).value - bike.motor)).toBeLessThan(1);
  });

  test('holds the motors without a control run too, in ranges about twice as wide', () => {
    for (const bike of BIKES) {
      const { low, high } = motorOf(uncontrolled, bike);
      expect(bike.motor).toBeGreaterThan(low);
      expect(bike.motor).toBeLessThan(high);
      expect(halfWidth(motorOf(uncontrolled, bike)) / halfWidth(motorOf(reduced, bike))).toBeGreaterThan(1.6);
    }
  });

  test('shows Light behind Full among all pairs, behind Other light as one pair, and not when the motors are closer', () => {
    expect(pairOf(reduced, LIGHT, FULL).time.realAmongAll).toBe(true);
    const { realAlone, realAmongAll } = pairOf(reduced, LIGHT, OTHER_LIGHT).time;
    expect([realAlone, realAmongAll]).toEqual([true, false]);
    const near = pairOf(closer, LIGHT, OTHER_LIGHT).time;
    expect(near.realAlone).toBe(false);
    expect(near.runsNeeded).toBeGreaterThan(0);
  });

  test('tells a difference of like motors better than either, and never with unlike tyres', () => {
    const { motorPower } = pairOf(reduced, LIGHT, OTHER_LIGHT);
    for (const bike of [LIGHT, OTHER_LIGHT])
      expect(halfWidth(motorPower.difference)).toBeLessThan(halfWidth(motorOf(reduced, bike)));
    expect(motorOf(reduced, LIGHT).high).toBeGreaterThan(motorOf(reduced, OTHER_LIGHT).low);
    expect(pairOf(withUnlikeTyres, LIGHT, OTHER_LIGHT).motorPower.runsNeeded).toBeNull();
  });

  test('says how far the slower one is behind: the difference of their times on the hill, within its range', () => {
    const { value, low, high } = behind(pairOf(reduced, LIGHT, FULL));
    const planted = ridden(LIGHT, TARGET_POWER) - ridden(FULL, TARGET_POWER);
    expect(low).toBeLessThan(planted);
    expect(high).toBeGreaterThan(planted);
    expect(Math.abs(value - planted)).toBeLessThan(0.5);
  });
});

describe('what the page on the method tells', () => {
  test('more runs, a checked meter and like tyres each make the widths smaller', () => {
    const [instruments, good, ordinary, more, unlike, , without] = errorBudget;
    const all = ({ motors, differences }: (typeof errorBudget)[number]) => [...motors, ...differences];
    const smaller = (a: typeof instruments, b: typeof instruments): boolean =>
      a !== undefined && b !== undefined && all(a).every((width, i) => width < (all(b)[i] ?? 0));
    expect(smaller(instruments, good)).toBe(true);
    expect(smaller(good, ordinary)).toBe(true);
    expect(smaller(more, ordinary)).toBe(true);
    expect(smaller(ordinary, unlike)).toBe(true);
    expect(smaller(ordinary, without)).toBe(true);
  });

  // A motor that follows loses its own share of the slip too: (rider + motor) / rider as much power, air and bearings apart.
  test.each(BIKES)('a slip comes back enlarged where $name follows the rider', (bike) => {
    const ratio = lostBy(bike, 3, true) / lostBy(bike, 3);
    expect(ratio / ((TARGET_POWER + bike.motor) / TARGET_POWER)).toBeCloseTo(1, 1);
  });

  // By hand: in A, B, A, B bike B comes one place later on the mean, 0.5 % of 329 s = 1.65 s, less what the air softens.
  test('a steady drift drops out of A, B, B, A', () => {
    expect(Math.abs(seemsSlower(ABBA, 0.005))).toBeLessThan(0.05);
    expect(seemsSlower(ABAB, 0.005)).toBeGreaterThan(1.4);
    expect(seemsSlower(ABAB, 0.005)).toBeLessThan(1.65);
  });

  // Two bikes are one pair. Four: studentized range for 95 %, 4 means and 9 degrees of freedom 4.415, t 2.262 (tables, value from memory).
  test('a table needs wider ranges than a pair', () => {
    expect(reduced.scatter.freedom).toBe(9);
    expect(falseAmong(2)).toBeCloseTo(0.05, 6);
    expect(widerAmong(2)).toBeCloseTo(1, 6);
    expect(widerAmong(4)).toBeCloseTo(4.415 / Math.SQRT2 / 2.262, 3);
  });
});

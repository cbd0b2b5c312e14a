import { expect, test } from 'vitest';
import { hillFromGrade, isGradeFar, proportionalTime, rideClimb } from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { anyAscent } from './climbs.ts';

test('proportionalTime(time, gain, target): 550 ft in 6:00 makes 2,000 ft in 21:49', () => {
  expect(proportionalTime(360, 550, 2000)).toBeCloseTo(1309.0909, 4);
});

test('on the same grade multiplying by height is what the model does', () => {
  const r = random(80);
  for (let i = 0; i < 300; i++) {
    const climb = anyAscent(r);
    const taller = { ...climb, hill: hillFromGrade(climb.hill.distance * r.between(0.2, 20), climb.hill.grade) };
    const multiplied = proportionalTime(rideClimb(climb).time, climb.hill.gain, taller.hill.gain);
    expect(relative(multiplied, rideClimb(taller).time)).toBeLessThan(1e-9);
  }
});

test('isGradeFar(grade, target) past a tenth of the measured grade, either way', () => {
  expect(isGradeFar(0.1, 0.1)).toBe(false);
  expect(isGradeFar(0.1, 0.1099)).toBe(false);
  expect(isGradeFar(0.1, 0.0901)).toBe(false);
  expect(isGradeFar(0.1, 0.111)).toBe(true);
  expect(isGradeFar(0.1, 0.089)).toBe(true);
  expect(isGradeFar(-0.1, -0.105)).toBe(false);
  expect(isGradeFar(-0.1, 0.1)).toBe(true);
  expect(isGradeFar(0, 0.001)).toBe(true);
});

import { expect, test } from 'vitest';
import { distanceForGain, hillFromGain, hillFromGrade, sinOfGrade } from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';

test('hillFromGain(distance, gain) measures along the road: a 3-4-5 triangle', () => {
  expect(hillFromGain(500, 300)).toEqual({ distance: 500, gain: 300, sin: 0.6, cos: 0.8, grade: 0.6 / 0.8 });
});

test('hillFromGain(distance, gain) takes a falling and a level road', () => {
  expect(hillFromGain(500, -300).grade).toBeCloseTo(-0.75, 15);
  expect(hillFromGain(500, 0)).toMatchObject({ sin: 0, cos: 1, grade: 0 });
});

test.each([
  [0, 0],
  [-5, 1],
  [Number.NaN, 1],
])('hillFromGain(%d, %d) refuses a road without length', (distance, gain) => {
  expect(() => hillFromGain(distance, gain)).toThrow('A hill needs a distance above zero.');
});

test.each([
  [100, 100],
  [100, 101],
  [100, -100],
  [100, Number.NaN],
])('hillFromGain(%d, %d) refuses a road that climbs more than its length', (distance, gain) => {
  expect(() => hillFromGain(distance, gain)).toThrow('A hill cannot gain as much height as it is long.');
});

test('sinOfGrade(0.1) is 0.0995: half a percent less than the grade', () => {
  // 0.1 / √1.01, by hand
  expect(sinOfGrade(0.1)).toBeCloseTo(0.09950371902, 11);
});

test('distance and gain, distance and grade, gain and grade make the same hill', () => {
  const r = random(10);
  for (let i = 0; i < 500; i++) {
    const distance = r.between(20, 50_000);
    const grade = r.between(-0.4, 0.6);
    const hill = hillFromGrade(distance, grade);
    expect(relative(hill.grade, grade)).toBeLessThan(1e-13);
    expect(relative(hillFromGain(distance, hill.gain).grade, grade)).toBeLessThan(1e-13);
    expect(relative(distanceForGain(hill.gain, grade), distance)).toBeLessThan(1e-13);
    expect(hill.sin ** 2 + hill.cos ** 2).toBeCloseTo(1, 14);
  }
});

test('distanceForGain(gain, grade) is Infinity where the grade never gets there', () => {
  expect(distanceForGain(100, 0)).toBe(Number.POSITIVE_INFINITY);
  expect(distanceForGain(100, -0.05)).toBe(Number.POSITIVE_INFINITY);
});

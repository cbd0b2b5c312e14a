import { expect, test } from 'vitest';
import { heightAt, hillFromGain, hillFromProfile, steepestStretch } from '../../calculators/model/index.ts';
import { random } from '../random.ts';

const hill = hillFromProfile({ distance: Float64Array.of(0, 100, 160, 400), height: Float64Array.of(0, 5, 17, 13) });

test('the height on the way is on the straight line between two points, and stays beyond the ends', () => {
  // 5 m on the first 100, 12 m on the next 60, 4 m down on the last 240
  expect([-1, 0, 50, 100, 130, 160, 280, 400, 500].map((distance) => heightAt(hill, distance))).toEqual([
    0, 0, 2.5, 5, 11, 17, 15, 13, 13,
  ]);
});

test('without a profile it is the distance times the sine', () => {
  expect(heightAt(hillFromGain(2000, 150), 500)).toBe(37.5);
});

test('the steepest 100 m hold the ramp and the steeper of what stands before and after it', () => {
  // the 60 m ramp rises 12 m; 40 m before it rise 2 m, 40 m after it fall 0.67 m: 14 m on 100 m of road
  const { grade, from } = steepestStretch(hill, 100);
  expect(from).toBe(60);
  expect(grade).toBeCloseTo(14 / Math.sqrt(100 ** 2 - 14 ** 2), 12);
  // 60 m find the ramp alone
  expect(steepestStretch(hill, 60).grade).toBeCloseTo(12 / Math.sqrt(60 ** 2 - 12 ** 2), 12);
  // longer than the hill: the whole, 13 m on 400 m
  expect(steepestStretch(hill, 1000).grade).toBeCloseTo(13 / Math.sqrt(400 ** 2 - 13 ** 2), 12);
});

test('no stretch that one tries is steeper', () => {
  const r = random(9);
  for (let i = 0; i < 50; i++) {
    const distance = Float64Array.from({ length: 12 }, (_, k) => 70 * k + (k > 0 ? r.between(-30, 30) : 0));
    const height = Float64Array.from({ length: 12 }, (_, k) => (k > 0 ? r.between(-4, 8) + 3 * k : 0));
    const road = hillFromProfile({ distance, height });
    const { grade } = steepestStretch(road, 100);
    for (let from = 0; from + 100 <= road.distance; from += 0.5) {
      const rise = heightAt(road, from + 100) - heightAt(road, from);
      expect(rise / Math.sqrt(100 ** 2 - rise ** 2)).toBeLessThanOrEqual(grade + 1e-12);
    }
  }
});

import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { presetOf, resultOf } from '../../calculators/scenario/vocabulary.ts';
import { ROAD, riddenTime, STEEP_SHARE, unevenTime, uniformTime } from '../../content/example-hills.ts';

/* What the pages on a recorded hill say in words: the figures beside the words are computed with every build. */

const si = (query: string, name: string, bike?: number): number =>
  resultOf(outcomeOf('your-hill', query), name, bike).si ?? Number.NaN;

describe('the invented road of 10 km', () => {
  // Worked out apart from this code, in Python, by bisection of 250 = v (m g (sin + C_rr cos) + ½ ρ C_dA v²): 36:21 and 40:29.
  test('takes what the same balance gives elsewhere', () => {
    expect(Math.round(uniformTime())).toBe(36 * 60 + 21);
    expect(Math.round(unevenTime())).toBe(40 * 60 + 29);
    // sin of 6 % over sin of 11 %
    expect(STEEP_SHARE).toBeCloseTo(0.0598922 / 0.1093401, 5);
  });

  test('with speeding up and slowing down takes a little more or less, and the mean grade is still the lower bound', () => {
    const { power, mass } = ROAD;
    // steady speeds of its two parts, by that bisection: 2.762 and 10.129 m/s
    const [slow, fast] = [2.762, 10.129];
    // it ends with that much more kinetic energy than it began with, or less: half of it is won or lost on each way
    const kinetic = (0.5 * mass * (fast ** 2 - slow ** 2)) / power;
    const [rising, falling] = [riddenTime('steep'), riddenTime('flat')];
    expect(rising).toBeGreaterThan(unevenTime());
    expect(falling).toBeLessThan(unevenTime());
    // in air that takes its part of the kinetic energy, more of it the longer the bike is fast
    expect(rising - falling).toBeGreaterThan(kinetic);
    expect(rising - falling).toBeLessThan(2 * kinetic);
    expect(falling - uniformTime()).toBeGreaterThan(200);
  });
});

describe('the example of Your hill', () => {
  test('keeps every bike below its limit at the mean grade, and meets it on the way', () => {
    for (const bike of [1, 2, 3]) {
      expect(si('limit=none', 'time-mean-grade', bike)).toBeCloseTo(si('', 'time-mean-grade', bike), 6);
      expect(si('', 'time', bike)).toBeGreaterThan(si('limit=none', 'time', bike) + 5);
    }
  });

  test('loses less to its mean grade without a limit', () => {
    expect(si('limit=none', 'time-bias', 3)).toBeLessThan(si('', 'time-bias', 3) - 10);
  });
});

test('ramps and flats: both bikes lose time, the strong one more, so the gap shrinks', () => {
  const { query } = presetOf('ramp-and-flat');
  const [light, full] = [1, 2].map((bike) => si(query, 'time-bias', bike)) as [number, number];
  expect(light).toBeGreaterThan(30);
  expect(full).toBeGreaterThan(light + 10);
  const gapAtMeanGrade = si(query, 'time-mean-grade', 1) - si(query, 'time-mean-grade', 2);
  expect(si(query, 'gap', 1)).toBeLessThan(gapAtMeanGrade - 10);
});

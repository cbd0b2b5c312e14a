import { describe, expect, test } from 'vitest';
import { hillFromProfile, rideProfile } from '../../calculators/model/index.ts';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { presetOf, resultOf } from '../../calculators/scenario/vocabulary.ts';
import { ROAD, STEEP_SHARE, unevenTime, uniformTime } from '../../content/example-hills.ts';

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

  test.each([
    ['steep first', true],
    ['flat first', false],
  ])('%s, with speeding up and slowing down: the mean grade is still the lower bound', (_, steepFirst) => {
    const { distance, grade, power, mass, rolling, dragArea, density } = ROAD;
    const gain = (distance * grade) / Math.hypot(1, grade);
    const turn = steepFirst ? STEEP_SHARE * distance : (1 - STEEP_SHARE) * distance;
    const ride = (heights: number[], places: number[]) =>
      rideProfile(
        {
          hill: hillFromProfile({ distance: Float64Array.from(places), height: Float64Array.from(heights) }),
          mass,
          rolling,
          dragArea,
          density,
          headWind: 0,
          efficiency: 1,
          riderPower: power,
          motorPower: 0,
          assistLimit: null,
        },
        {},
      );
    const even = ride([0, gain], [0, distance]);
    const uneven = ride([0, steepFirst ? gain : 0, gain], [0, turn, distance]);
    // minutes apart; what the change of speed is worth is seconds
    expect(uneven.time - even.time).toBeGreaterThan(200);
    expect(Math.abs(uneven.time - even.time - (unevenTime() - uniformTime()))).toBeLessThan(15);
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

import { describe, expect, test } from 'vitest';
import type { Climb, Track } from '../../calculators/model/index.ts';
import type { Differences } from '../../calculators/your-hill/closeness.ts';
import { openWorkbench, type StretchFigures } from '../../calculators/your-hill/workbench.ts';
import { PLAIN } from '../model/climbs.ts';
import { heightOn, type Road, trackOf } from '../model/recorded-rides.ts';

/** A bench with the recording of a road on it, a point each 5 m, and its heights as they are. */
function benchFor(road: Road, wave = (_: number): number => 0) {
  const length = road.reduce((sum, piece) => sum + piece.length, 0);
  const distance = Float64Array.from({ length: length / 5 + 1 }, (_, i) => 5 * i);
  const elevation = distance.map((place) => 300 + heightOn(road, place) + wave(place));
  const track: Track = trackOf({ distance, elevation });
  const work = openWorkbench();
  work({ is: 'track', track });
  work({ is: 'analysis', choice: { window: 0, threshold: 5 } });
  return { work, whole: { from: 0, to: distance.length - 1 } };
}

describe('steepness', () => {
  const widthOf = (steepest: number): { width: number; count: number } => {
    const grades = Array.from({ length: Math.round(steepest / 0.02) }, (_, k) => 0.02 * k + 0.01);
    const { work, whole } = benchFor(grades.map((grade) => ({ length: 100, grade })));
    const { steepness } = work({ is: 'figures', stretch: whole }) as StretchFigures;
    const [first] = steepness;
    return { width: (first?.high ?? 0) - (first?.low ?? 0), count: steepness.length };
  };

  test('is told in the narrowest classes of which there are no more than twelve', () => {
    // grades of 0 to 24 % fill 12 classes of 2 %, of 0 to 26 % 13: then they are 4 % wide
    expect(widthOf(0.24)).toEqual({ width: expect.closeTo(0.02, 9), count: 12 });
    expect(widthOf(0.26)).toEqual({ width: expect.closeTo(0.04, 9), count: 7 });
  });
});

test('along every point of a road that waves a ride takes longer than along the few pieces, never less', () => {
  // 400 waves of 30 m along 12 km: more than forty pieces can follow
  const { work, whole } = benchFor(
    [{ length: 12_000, grade: 0.06 }],
    (place) => 0.8 * Math.sin((2 * Math.PI * place) / 30),
  );
  expect(work({ is: 'hill', stretch: whole })).toHaveProperty('text');
  const climb: Climb = { ...PLAIN, motorPower: 0 };
  const { points } = work({ is: 'differences', climb, reserves: {} }) as Differences;
  // for equal power an even grade is the fastest; the whole takes an hour or so
  expect(points).toBeGreaterThan(1);
  expect(points).toBeLessThan(200);
});

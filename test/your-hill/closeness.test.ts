import { describe, expect, test } from 'vitest';
import { hillFromProfile } from '../../calculators/model/index.ts';
import { climbOf, reservesOf } from '../../calculators/scenario/index.ts';
import { exampleOf } from '../../calculators/scenario/vocabulary.ts';
import { rideSetting } from '../../calculators/your-hill/calibration.ts';
import { altitudeOf } from '../../calculators/your-hill/closeness.ts';
import { readRecording } from '../../calculators/your-hill/reading/readRecording.ts';
import { openWorkbench, type Results, type Task } from '../../calculators/your-hill/workbench.ts';
import { generator } from '../random.ts';
import { gpxOf, ride, THREE_HILLS, type Tour } from './tour.ts';

/* What smoothing and few pieces cost, and a calibration that does not depend on what the reader chose to see. */

/** Ramps of 60 m at 14 % between flats: smoothing over 100 m leaves little of them. */
const STEPS: Tour = {
  ...THREE_HILLS,
  road: Array.from({ length: 12 }, () => [
    [60, 0.14],
    [90, 0.01],
  ]).flat() as [number, number][],
};

const scenario = exampleOf('your-hill');

/** Works tasks off on a recording of a tour, with heights smoothed over so many metres. */
function bench(tour: Tour, window: number, noise = 0) {
  const next = generator(11);
  const points = ride(tour).map((point) => ({ ...point, height: point.height + noise * (next() - 0.5) }));
  const { track } = readRecording(new TextEncoder().encode(gpxOf(points)), 'tour.gpx').parts[0] ?? {};
  if (!track) throw new Error('nothing read');
  const work = openWorkbench();
  const ask = <Kind extends Task['is']>(task: Extract<Task, { is: Kind }>) => work(task) as Results[Kind];
  ask({ is: 'track', track });
  const analysis = ask({ is: 'analysis', choice: { window, threshold: 5 } });
  return { track, ask, analysis };
}

describe('how close the hill below is to what was recorded', () => {
  const { track, ask, analysis } = bench(STEPS, 100);
  const stretch = { from: 0, to: track.distance.length - 1 };
  const hill = ask({ is: 'hill', stretch });
  if (!('text' in hill) || !analysis) throw new Error('no hill');
  const climb = climbOf(scenario, hillFromProfile(hill.simple), 0);
  const differences = ask({ is: 'differences', climb, reserves: reservesOf(scenario, 0) });
  if (!differences) throw new Error('no differences');

  test('the pieces follow the smoothed heights, and are off the recorded ones by what smoothing took', () => {
    // a corner from 14 to 1 %, 50 m of the window on either side: about (0.14 − 0.01) · 100 / 8 = 1.6 m are rounded off
    expect(hill.largestError).toBeLessThan(0.4);
    expect(differences.offRecorded).toBeGreaterThan(0.8);
    expect(differences.offRecorded).toBeLessThan(2.5);
  });

  test('with less smoothing the road has its ramps back, and takes longer', () => {
    // an assisted bike is quick on what was flattened: time along a road is least where the grade is even
    expect(differences.half).toMatchObject({ window: 50 });
    expect(differences.twice).toMatchObject({ window: 200 });
    expect(differences.half?.time).toBeGreaterThan(1);
    expect(differences.twice?.time).toBeLessThan(0);
    expect(Math.abs(differences.points)).toBeLessThan(differences.half?.time ?? 0);
  });

  test('heights that nobody smoothed have no half of a window', () => {
    const raw = bench(STEPS, 0);
    const own = raw.ask({ is: 'hill', stretch });
    if (!('text' in own)) throw new Error('no hill');
    const told = raw.ask({ is: 'differences', climb, reserves: reservesOf(scenario, 0) });
    expect(told?.half).toBeUndefined();
    expect(told?.twice).toBeUndefined();
  });

  test('where there is no hill there is nothing to compare', () => {
    expect('problem' in ask({ is: 'hill', stretch: { from: 7, to: 7 } })).toBe(true);
    expect(ask({ is: 'differences', climb, reserves: reservesOf(scenario, 0) })).toBeUndefined();
  });
});

test('a calibration stays the same however heights are shown, and says what hangs on the weight', () => {
  const results = [10, 100, 300].map((window) => {
    const { ask, track } = bench(THREE_HILLS, window, 0.6);
    // the middle hill, from 3.0 to 4.8 km
    const at = (metres: number): number => track.distance.findIndex((each) => each >= metres);
    const stretch = { from: at(3050), to: at(4750) };
    const told = ask({ is: 'calibration', stretch, setting: rideSetting(scenario, { rider: 80, bike: 12 }) });
    if (!told || 'problem' in told.ride) throw new Error('not calibrated');
    return { rolling: told.ride.rolling.value, heavier: told.heavier ?? Number.NaN };
  });
  // it went from 0.0220 to 0.0203 with the window
  for (const { rolling } of results) expect(rolling).toBe(results[0]?.rolling);
  expect(Math.abs((results[0]?.rolling ?? 0) - THREE_HILLS.rolling)).toBeLessThan(0.001);
  /*
   * m · (sin + C_rr) stays: 92 · (0.0722 + 0.012) = 7.75 kg; with 102 kg it is 0.0759, so C_rr is 0.0083 less. Mean sin of 700, 400 and
   * 700 m at 0.08, 0.045 and 0.08: 130 / 1,800 = 0.0722.
   */
  expect(results[0]?.heavier).toBeGreaterThan(-0.0093);
  expect(results[0]?.heavier).toBeLessThan(-0.0073);
});

test('how high a stretch lies is weighted by the way, and holes are left out', () => {
  // 100 m at 500 to 510 m, then 300 m at 510 to 570 m: (100 · 505 + 300 · 540) / 400
  const distance = Float64Array.of(0, 100, 400, 450);
  const height = Float64Array.of(500, 510, 570, Number.NaN);
  expect(altitudeOf(distance, height, { from: 0, to: 3 })).toEqual({ low: 500, high: 570, mean: 531.25 });
  expect(altitudeOf(distance, height, { from: 3, to: 3 })).toBeUndefined();
});

import { beforeAll, describe, expect, test } from 'vitest';
import { calibrateRide, climbFigures, type RideCalibration, type Track } from '../../calculators/model/index.ts';
import { edit } from '../../calculators/scenario/editing.ts';
import { profileFromText } from '../../calculators/scenario/profile-text.ts';
import { exampleOf } from '../../calculators/scenario/vocabulary.ts';
import { analyse } from '../../calculators/your-hill/analysis.ts';
import { hillBelow, MOST_PIECES } from '../../calculators/your-hill/below.ts';
import { rideSetting, supported, supportedRange, uncalibratedText } from '../../calculators/your-hill/calibration.ts';
import {
  coverageText,
  disagreementText,
  meanReason,
  mendedTexts,
  pausesText,
} from '../../calculators/your-hill/found-words.ts';
import { readRecording } from '../../calculators/your-hill/reading/readRecording.ts';
import type { Part, Recording } from '../../calculators/your-hill/reading/recording.ts';
import { endText, foundText, partText } from '../../calculators/your-hill/words.ts';
import { gpxOf, ride, THREE_HILLS, type TourPoint } from './tour.ts';

/* From a file to the hill below, against what was put into the file. */

const read = (text: string): Recording => readRecording(new TextEncoder().encode(text), 'tour.gpx');
const usual = { window: 100, threshold: 5 };
const points = ride(THREE_HILLS);
let recording: Recording;
let part: Part;
let track: Track;

beforeAll(() => {
  recording = read(gpxOf(points, 'Three hills', 'Drawn'));
  part = recording.parts.find(({ kind }) => kind === 'ride') as Part;
  ({ track } = part);
});

describe('three hills', () => {
  test('are found in their order, and the middle one is the hardest', () => {
    const { climbs, hardest } = analyse(track, usual);
    expect(climbs.length).toBe(3);
    expect(hardest).toBe(1);
    // where the road of the tour turns up and down again: 600, 1,600, 3,000, 4,800, 6,700 and 7,650 m
    const ends = climbs.flatMap(({ from, to }) => [track.distance[from], track.distance[to]]);
    const road = [600, 1600, 3000, 4800, 6700, 7650];
    // half the window around a corner is rounded off
    ends.forEach((end, i) => {
      expect(Math.abs((end ?? 0) - (road[i] ?? 0))).toBeLessThan(50);
    });
  });

  test('gain what was put in: 0.003 · 600 + 60 + 56 + 18 + 56 + 0.8 + 38 m', () => {
    const gain = 1.8 + 60 + 56 + 18 + 56 + 0.8 + 38;
    const { gains } = analyse(track, { window: 0, threshold: 0.5 });
    expect(gains.raw).toBeGreaterThan(gain - 1);
    expect(gains.raw).toBeLessThan(gain + 1);
    expect(gains.threshold).toBeCloseTo(gains.raw, 0);
  });

  test('the hill below keeps length and gain of the stretch, in few pieces, near every height', () => {
    const { height, climbs } = analyse(track, usual);
    const stretch = climbs[1] ?? { from: 0, to: 0 };
    const hill = hillBelow(track, height, stretch);
    if ('problem' in hill) throw new Error(hill.problem);
    const profile = profileFromText(hill.text);
    expect(profile.distance.length).toBeLessThanOrEqual(MOST_PIECES + 1);
    const figures = climbFigures(track, height, stretch.from, stretch.to);
    // to the decimetre of the text
    expect(Math.abs((profile.distance.at(-1) ?? 0) - figures.distance)).toBeLessThan(0.051);
    expect(Math.abs((profile.height.at(-1) ?? 0) - figures.gain)).toBeLessThan(0.051);
    expect(hill.largestError).toBeLessThan(1);
    expect(hill.text).not.toMatch(/48\.9|123\.4/);
  });

  test('between ends without a road there is no hill', () => {
    expect(hillBelow(track, analyse(track, usual).height, { from: 7, to: 7 })).toEqual({
      problem: 'none',
    });
  });
});

/** A stretch calibrated in the air and with the chain of the example. */
function calibrated(
  track: Track,
  height: Float64Array,
  { from, to }: { from: number; to: number },
  masses: { rider: number; bike: number },
): RideCalibration {
  return calibrateRide(track, height, from, to, rideSetting(exampleOf('your-hill'), masses));
}

describe('calibration', () => {
  test('finds the rolling resistance of the tour, and prints no digit too many', () => {
    const { height, climbs } = analyse(track, { window: 30, threshold: 5 });
    // the tour was ridden in the air that is the default, with the default drag area and chain
    const result = calibrated(track, height, climbs[1] ?? { from: 0, to: 0 }, {
      rider: 80,
      bike: 12,
    });
    if ('problem' in result) throw new Error(result.problem);
    expect(result.rolling.value).toBeGreaterThan(THREE_HILLS.rolling - 0.001);
    expect(result.rolling.value).toBeLessThan(THREE_HILLS.rolling + 0.001);
    expect(result.rolling.low).toBeLessThan(THREE_HILLS.rolling);
    expect(result.rolling.high).toBeGreaterThan(THREE_HILLS.rolling);
    expect(supported(result.rolling)).toBe('0.012');
    expect(supportedRange(result.rolling)).toMatch(/^0\.00\d to 0\.0\d\d$/);
  });

  test('a rider said to be far too heavy needs a surface that no road has: it says so', () => {
    const { height, climbs } = analyse(track, usual);
    const result = calibrated(track, height, climbs[1] ?? { from: 0, to: 0 }, {
      rider: 150,
      bike: 30,
    });
    if (!('problem' in result)) throw new Error('calibrated');
    expect(result.problem).toBe('absurd');
    expect(uncalibratedText(result, { used: '', least: '' }, -0.01, 'metric')).toMatch(
      /^It asks for a rolling resistance of −0\.0\d\d, which no surface has\. Check both weights first: 10\u202fkg less would make it −?0\.0\d\d\. Then .+, and whether a motor helped\.$/,
    );
  });

  test('without power it says why not', () => {
    const silent = read(gpxOf(ride({ ...THREE_HILLS, powerless: 0.3 }))).parts[0] as Part;
    const { height, climbs } = analyse(silent.track, usual);
    const result = calibrated(silent.track, height, climbs[1] ?? { from: 0, to: 0 }, {
      rider: 80,
      bike: 12,
    });
    if (!('problem' in result)) throw new Error('calibrated');
    expect(uncalibratedText(result, { used: '', least: '' }, -0.01, 'metric')).toMatch(
      /^Power covers (69|70|71)\u202f% of this stretch: too little to calibrate with\.$/,
    );
  });
});

describe('in words', () => {
  test('a part, and what was found', () => {
    // the route has every tenth point: its last one is at 1,680 s, 66 m before the end
    expect(partText(part, 'metric')).toMatch(/^Three hills: ride, 8\.2\d\u202fkm, 28:06$/);
    expect(partText(recording.parts.find(({ kind }) => kind === 'route') as Part, 'metric')).toMatch(
      /^Drawn: route, 8\.18\u202fkm$/,
    );
    expect(foundText(recording, part, analyse(track, usual))).toBe('Read 1\u202f687 points, 3 climbs found.');
  });

  test('an end is told with two decimals, so that each step is heard', () => {
    expect(endText('start', 1240, 812.3, 'metric')).toBe('Start, 1.24\u202fkm, 812\u202fm above sea');
    expect(endText('top', 12_340, 812.3, 'metric')).toBe('Top, 12.34\u202fkm, 812\u202fm above sea');
    expect(endText('start', 540, Number.NaN, 'metric')).toBe('Start, 540\u202fm');
  });

  test('a mean over gaps is not claimed', () => {
    expect(meanReason('power', { mean: undefined, coverage: 0.834 })).toBe(
      'Power for 83\u202f% of the riding time only: no mean is given.',
    );
    expect(meanReason('power', { mean: undefined, coverage: 0.949 })).toContain('94\u202f%');
    expect(meanReason('heart rate', { mean: undefined, coverage: 0 })).toBe('No heart rate on this stretch.');
    expect(meanReason('power', { mean: 200, coverage: 1 })).toBe('');
  });

  test('a spike and a run of zeros are named with their size and place', () => {
    const broken = points.map((point): TourPoint => {
      if (point.seconds === 700) return { ...point, height: point.height + 60 };
      if (point.seconds >= 900 && point.seconds < 905) return { ...point, height: 0 };
      return point;
    });
    const { track: mendable } = read(gpxOf(broken)).parts[0] as Part;
    const texts = mendedTexts(analyse(mendable, usual).mended, mendable, 'metric');
    expect(texts.length).toBe(2);
    // after 900 s the tour is at 3.98 km, and 206 m up a moment later
    expect(texts[0]).toMatch(/^Heights mended: 1 run of zeros, the worst 206\u202fm off, at 3\.98\u202fkm\.$/);
    expect(texts[1]).toMatch(/^Heights mended: 1 spike, the worst 60\u202fm off, at 3\.\d+\u202fkm\.$/);
  });

  test('positions against the counter, and where they differ most', () => {
    const compared = {
      positions: 10_200,
      counter: 10_000,
      stretches: [
        { from: 0, to: 200, positions: 1500, counter: 1490 },
        { from: 201, to: 1600, positions: 8700, counter: 8510 },
      ],
      worst: { from: 201, to: 1600, positions: 8700, counter: 8510 },
    };
    const text = disagreementText(part, compared, 'metric');
    expect(text).toMatch(
      /^By positions the way is 200\u202fm \(2\.0\u202f%\) longer than by the counter\. They differ most, by 190\u202fm, between /,
    );
    expect(disagreementText({ ...part, distanceFrom: 'counter' }, null, 'metric')).toMatch(
      /^The file has no positions/,
    );
  });

  test('pauses and coverage', () => {
    const { figures } = analyse(track, usual);
    expect(pausesText(track, figures, [], 'metric')).toBe('No pause, no break.');
    expect(coverageText(figures, part)).toEqual([
      'Measured: power for 100\u202f% of the riding time.',
      'Not in the file: cadence, heart rate.',
    ]);
    const paused = { ...figures, pauses: { count: 2, seconds: 90 }, gaps: 1 };
    const breaks = [{ index: 500, why: 'timer' as const, seconds: 60, apart: 250 }];
    const places = [
      { place: 1240, seconds: 30 },
      { place: 3000, seconds: 60 },
    ];
    expect(pausesText({ ...track, breaks }, paused, places, 'metric')).toBe(
      '2 pauses, 1:30 in all: 0:30 at 1.24\u202fkm, 1:00 at 3.00\u202fkm. At 1 of them the recording goes on elsewhere, 250\u202fm apart as the crow flies. None was bridged: nothing is counted over them.',
    );
  });
});

test('a hill that is put in can be read by the scenario', () => {
  const { height, climbs } = analyse(track, usual);
  const hill = hillBelow(track, height, climbs[0] ?? { from: 0, to: 1 });
  const text = 'text' in hill ? hill.text : hill.problem;
  const scenario = edit(exampleOf('your-hill'), 'profile', 0, text);
  expect(scenario.cells.profile?.value).toBe(text);
});

import { describe, expect, test } from 'vitest';
import {
  type Break,
  fitLine,
  GAIN_THRESHOLD,
  gainsOf,
  lineAt,
  mendElevation,
  SMOOTHING_WINDOW,
  smoothElevation,
} from '../../calculators/model/index.ts';
import { exampleGains, exampleRecording, TRUE_RISES } from '../../calculators/your-hill/example-recording.ts';
import { type Random, random, relative } from '../random.ts';

const every = (metres: number, points: number): Float64Array =>
  Float64Array.from({ length: points }, (_, i) => i * metres);
const gap = (index: number, apart = 0): Break => ({ index, why: 'timer', seconds: 60, apart });
const DEFAULTS = { window: SMOOTHING_WINDOW, threshold: GAIN_THRESHOLD };

/** A way of any shape with pauses on it, breaks and missing heights. */
function anyWay(
  r: Random,
  points = r.whole(1, 200),
): { distance: Float64Array; elevation: Float64Array; breaks: Break[] } {
  let place = r.between(0, 100);
  let height = r.between(-50, 3000);
  const distance = new Float64Array(points);
  const elevation = new Float64Array(points);
  const holes = r.chance(0.3) ? 0.1 : 0;
  for (let i = 0; i < points; i++) {
    distance[i] = place;
    elevation[i] = r.chance(holes) ? Number.NaN : height;
    if (r.chance(0.9)) place += r.between(0, 30);
    height += r.between(-3, 3.2);
  }
  const breaks = [...distance.keys()]
    .filter((i) => i > 0 && r.chance(0.02))
    .map((index) => gap(index, r.between(0, 60)));
  return { distance, elevation, breaks };
}

describe('gain', () => {
  test('the published example gains 13 exactly', () => {
    // 12 17 15 20 22 18 15 16 14 12: rises of 5, 5, 2 and 1 (a public tutorial prints 14, a slip of its arithmetic)
    const elevation = Float64Array.of(12, 17, 15, 20, 22, 18, 15, 16, 14, 12);
    const gains = gainsOf(every(50, 10), elevation, [], { window: 0, threshold: 0 });
    expect(gains).toEqual({ net: 0, raw: 13, smoothed: 13, threshold: 13 });
  });

  test('a threshold of 3 m counts the rise from 12 to 22 as one and leaves out that of 1 m', () => {
    const elevation = Float64Array.of(12, 17, 15, 20, 22, 18, 15, 16, 14, 12);
    const above = (threshold: number): number =>
      gainsOf(every(50, 10), elevation, [], { window: 0, threshold }).threshold;
    expect(above(3)).toBe(10);
    // the fall of 2 m from 17 to 15 ends a rise where the threshold is lower: 5 + 7, and the 1 m counts not
    expect(above(1.5)).toBe(12);
    expect(above(9.9)).toBe(10);
    // a rise counts once it exceeds the threshold
    expect(above(10)).toBe(0);
  });

  test('nothing is counted across a break, and a rise goes on after it', () => {
    // up 4, a jump of 100 over the break, up 4
    const elevation = Float64Array.of(0, 2, 4, 104, 106, 108);
    const gains = gainsOf(every(20, 6), elevation, [gap(3)], { window: 0, threshold: 5 });
    expect(gains).toEqual({ net: 108, raw: 8, smoothed: 8, threshold: 8 });
  });

  test('methods agree on a steady slope; a threshold never makes more than the raw sum', () => {
    const r = random(501);
    for (let i = 0; i < 300; i++) {
      const { distance, elevation, breaks } = anyWay(r);
      const heights = mendElevation({ distance, elevation, breaks }).elevation;
      const gains = gainsOf(distance, heights, breaks, { window: r.between(0, 300), threshold: r.between(0, 10) });
      if (heights.every(Number.isNaN)) {
        expect(gains).toEqual({ net: Number.NaN, raw: 0, smoothed: 0, threshold: 0 });
        continue;
      }
      expect(gains.threshold).toBeLessThanOrEqual(gains.raw + 1e-9);
      expect(Object.values(gains).every(Number.isFinite)).toBe(true);
    }
    const steady = gainsOf(every(7, 300), every(0.4, 300), []);
    for (const value of Object.values(steady)) expect(value).toBeCloseTo(0.4 * 299, 9);
  });

  test('without noise a threshold and the raw sum are the hill, and smoothing rounds its corners off', () => {
    for (const speed of [1.5, 5]) {
      const { distance, elevation } = exampleRecording(1, 'exact', speed);
      const gains = gainsOf(distance, elevation, []);
      // 600 m by 48, 900 by 90, 300 by −18, 700 by 70, 1000 by 35 and 500 by 45: 288 up; the last point lies a step before the top
      expect(TRUE_RISES).toBe(288);
      expect(gains.raw).toBeGreaterThan(287.5);
      expect(gains.raw).toBeLessThanOrEqual(288 + 1e-9);
      expect(gains.threshold).toBeCloseTo(gains.raw, 9);
      // a corner between grades a and b is rounded by (b − a) window / 8: 0.16 · 100 / 8 = 2 m at the crest, as much in the dip
      expect(gains.raw - gains.smoothed).toBeGreaterThan(3.5);
      expect(gains.raw - gains.smoothed).toBeLessThan(4.1);
    }
  });

  test('noise: the raw sum overstates, the more the slower; smoothing and a threshold mend what a barometer adds', () => {
    const raw = (sensor: 'barometer' | 'positions', speed: number) => exampleGains(sensor, speed, DEFAULTS).raw;
    expect(raw('barometer', 1.5)).toBeGreaterThan(1.2);
    expect(raw('barometer', 5)).toBeGreaterThan(1.01);
    expect(raw('positions', 1.5)).toBeGreaterThan(2);
    expect(raw('positions', 5)).toBeGreaterThan(1.3);
    for (const speed of [1.5, 5]) {
      const barometer = exampleGains('barometer', speed, DEFAULTS);
      expect(Math.abs(barometer.smoothed - 1)).toBeLessThan(0.02);
      expect(Math.abs(barometer.threshold - 1)).toBeLessThan(0.01);
      // of heights from positions only smoothing does at any speed
      expect(Math.abs(exampleGains('positions', speed, DEFAULTS).smoothed - 1)).toBeLessThan(0.05);
    }
    expect(exampleGains('positions', 1.5, DEFAULTS).threshold).toBeGreaterThan(1.2);
  });
});

describe('smoothElevation', () => {
  test('a straight slope stays as it is, up to both ends', () => {
    const r = random(502);
    for (let i = 0; i < 100; i++) {
      const { distance } = anyWay(r);
      const slope = r.between(-0.3, 0.3);
      const straight = distance.map((place) => 700 + slope * place);
      const smooth = smoothElevation(distance, straight, r.between(1, 500), []);
      for (const [k, height] of smooth.entries()) expect(height).toBeCloseTo(straight[k] ?? 0, 6);
    }
  });

  test('a corner is rounded by a quarter of what the slopes differ over half a window', () => {
    // mean of |x| from −h to h is h / 2: 0.1 · 50 / 2
    const distance = every(10, 41);
    const corner = distance.map((place) => 0.1 * Math.abs(place - 200));
    expect(smoothElevation(distance, corner, 100, [])[20]).toBeCloseTo(2.5, 9);
    expect(smoothElevation(distance, corner, 100, [])[0]).toBe(20);
  });

  test('is the mean over the window, near the ends the line that fits best, by sums over many thin slices', () => {
    const r = random(503);
    const seen = { middle: 0, end: 0 };
    for (let i = 0; i < 120; i++) {
      const distance = every(0, 40);
      for (let k = 1; k < 40; k++) distance[k] = (distance[k - 1] ?? 0) + r.between(1, 30);
      const elevation = Float64Array.from(distance, () => r.between(100, 160));
      const window = r.between(5, 400);
      const heightAt = (place: number): number => {
        const k = Math.max(
          1,
          distance.findIndex((here) => here >= place - 1e-9),
        );
        const [a = 0, b = 0] = [distance[k - 1], distance[k]];
        return (elevation[k - 1] ?? 0) + ((place - a) / (b - a)) * ((elevation[k] ?? 0) - (elevation[k - 1] ?? 0));
      };
      const k = r.whole(0, 39);
      const here = distance[k] ?? 0;
      const [low, high] = [Math.max(0, here - window / 2), Math.min(distance[39] ?? 0, here + window / 2)];
      const slices = 4000;
      const x = Array.from({ length: slices }, (_, s) => low + ((s + 0.5) / slices) * (high - low));
      const line = lineAt(fitLine(x, x.map(heightAt)), here).value;
      seen[high - low < window ? 'end' : 'middle']++;
      expect(Math.abs((smoothElevation(distance, elevation, window, [])[k] ?? 0) - line)).toBeLessThan(0.02);
    }
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
  });

  test('a first height that is off by 2 m makes no wall', () => {
    const distance = every(5, 200);
    const elevation = distance.map((place) => 500 + 0.1 * place);
    elevation[0] = 502;
    const smooth = smoothElevation(distance, elevation, 100, []);
    // within 50 m, half a metre of 2 m over 5 m, at most four times its share of the window: 4 · 2 · 2.5 / 50
    for (const [i, height] of smooth.entries()) expect(Math.abs(height - 500 - 0.5 * i)).toBeLessThan(0.4);
    for (const [i, height] of smooth.entries()) if (i > 0) expect(height - (smooth[i - 1] ?? 0)).toBeLessThan(0.6);
  });

  test('never looks across a break or a hole', () => {
    const elevation = Float64Array.of(0, 0, 0, 0, 100, 100, 100, Number.NaN, 200, 200, 200);
    expect([...smoothElevation(every(10, 11), elevation, 80, [gap(4)])]).toEqual([...elevation]);
  });

  test('stays about the heights it is given, says nothing where there is none, and bears any track', () => {
    const r = random(504);
    for (let i = 0; i < 400; i++) {
      const { distance, elevation, breaks } = anyWay(r, r.whole(0, 60));
      const smooth = smoothElevation(distance, elevation, r.between(0, 400), breaks);
      const heights = elevation.filter(Number.isFinite);
      const [low, high] = [Math.min(...heights), Math.max(...heights)];
      smooth.forEach((height, k) => {
        expect(Number.isNaN(height)).toBe(Number.isNaN(elevation[k]));
        if (Number.isFinite(height)) {
          // at an end the line that fits best may shoot over, by a third of what the heights span at most
          expect(height).toBeGreaterThan(low - (high - low) / 3 - 1e-6);
          expect(height).toBeLessThan(high + (high - low) / 3 + 1e-6);
        }
      });
    }
  });

  test('a wait at the start does not climb', () => {
    const distance = Float64Array.of(0, 0, 0, 50, 100, 150);
    const smooth = smoothElevation(distance, Float64Array.of(10, 11, 12, 11, 11, 11), 100, []);
    expect(new Set(smooth.slice(0, 3)).size).toBe(1);
    const nowhere = smoothElevation(new Float64Array(3), Float64Array.of(10, 11, 12), 100, []);
    expect([...nowhere]).toEqual([11, 11, 11]);
  });
});

describe('mendElevation', () => {
  const slope = (points: number): Float64Array => Float64Array.from({ length: points }, (_, i) => 300 + 0.3 * i);

  test('names zeros, spikes and holes and puts the line over the way in their place', () => {
    const elevation = slope(100);
    elevation.fill(0, 0, 3);
    elevation[20] = 340;
    elevation[21] = 341;
    elevation.fill(Number.NaN, 40, 46);
    elevation[70] = 0;
    elevation.fill(Number.NaN, 97);
    const { elevation: mended, mended: list } = mendElevation({ distance: every(5, 100), elevation, breaks: [] });
    expect(list.map(({ kind, from, to }) => `${kind} ${from} ${to}`)).toEqual([
      'zero 0 2',
      'spike 20 21',
      'hole 40 45',
      'zero 70 70',
      'hole 97 99',
    ]);
    // 341 − 306.3; the zeros at the start take the first height, 300.9; 7 steps of 5 m from the last point before to the first after
    expect(list.map(({ metres }) => Math.round(100 * metres) / 100)).toEqual([300.9, 34.7, 35, 321, 15]);
    const truth = slope(100);
    for (let i = 3; i < 97; i++) expect(mended[i]).toBeCloseTo(truth[i] ?? 0, 9);
    expect([...mended.slice(0, 3)]).toEqual([300.9, 300.9, 300.9]);
    expect(mended[99]).toBeCloseTo(300 + 0.3 * 96, 9);
  });

  test('zeros by the sea stay, and so do steep roads, summits and the steps of a barometer', () => {
    const alone = (elevation: Float64Array, metres = 5) =>
      mendElevation({ distance: every(metres, elevation.length), elevation, breaks: [] });
    expect(alone(Float64Array.of(3, 1, 0, 0, 0, 2, 6)).mended).toEqual([]);
    expect(alone(new Float64Array(50)).mended).toEqual([]);
    // a drawn route down to the shore
    expect(alone(Float64Array.of(60, 30, 0, 0, 2, 8), 80).mended).toEqual([]);
    // 30 % up and down again over 15 m each
    expect(alone(Float64Array.of(300, 301.5, 303, 304.5, 303, 301.5, 300)).mended).toEqual([]);
    // a drawn route with points 100 m apart
    expect(alone(Float64Array.of(300, 310, 325, 312, 300), 100).mended).toEqual([]);
    const { elevation } = exampleRecording(3, 'barometer', 5);
    expect(alone(elevation).mended).toEqual([]);
  });

  test('a step up that stays is a road or a bridge, no spike', () => {
    const elevation = Float64Array.from({ length: 60 }, (_, i) => (i < 30 ? 300 : 320));
    expect(mendElevation({ distance: every(5, 60), elevation, breaks: [] }).mended).toEqual([]);
  });

  test('a spike that comes back to a road a little higher or lower is one', () => {
    const elevation = Float64Array.from({ length: 60 }, (_, i) => (i < 30 ? 300 : 303));
    elevation[30] = 330;
    const { mended } = mendElevation({ distance: every(2, 60), elevation, breaks: [] });
    expect(mended).toEqual([{ kind: 'spike', from: 30, to: 30, metres: 28.5 }]);
  });

  test('planted spikes are found and the road comes back', () => {
    const r = random(505);
    for (let i = 0; i < 200; i++) {
      const truth = Float64Array.from({ length: 80 }, (_, k) => 500 + 8 * Math.sin(k / 12));
      const elevation = Float64Array.from(truth);
      const [from, size] = [r.whole(10, 60), r.whole(1, 5)];
      const height = r.pick([-1, 1]) * r.between(12, 200);
      for (let k = from; k < from + size; k++) elevation[k] = (truth[k] ?? 0) + height;
      const { elevation: mended, mended: list } = mendElevation({ distance: every(4, 80), elevation, breaks: [] });
      expect(list.map(({ kind }) => kind)).toEqual(['spike']);
      expect(list[0]).toMatchObject({ from, to: from + size - 1 });
      expect(Math.abs((list[0]?.metres ?? 0) - Math.abs(height))).toBeLessThan(1);
      for (const [k, value] of mended.entries()) expect(Math.abs(value - (truth[k] ?? 0))).toBeLessThan(0.6);
    }
  });

  test('never fills a hole across a break; a stretch without heights stays without', () => {
    const n = Number.NaN;
    const elevation = Float64Array.of(100, 101, n, n, 200, 201, n, n, n, n, 50);
    const { elevation: mended, mended: list } = mendElevation({
      distance: every(10, 11),
      elevation,
      breaks: [gap(3), gap(6), gap(9)],
    });
    expect([...mended]).toEqual([100, 101, 101, 200, 200, 201, n, n, n, 50, 50]);
    expect(list.map(({ kind, from, to }) => `${kind} ${from} ${to}`)).toEqual([
      'hole 2 2',
      'hole 3 3',
      'hole 6 8',
      'hole 9 9',
    ]);
  });

  test('a spike at the edge of a hole is one too', () => {
    const n = Number.NaN;
    const { elevation, mended } = mendElevation({
      distance: Float64Array.of(0, 10, 20, 30, 40),
      elevation: Float64Array.of(100, 101, 160, n, 104),
      breaks: [],
    });
    // 3 m in 30 m between the two good ones
    expect([...elevation]).toEqual([100, 101, 102, 103, 104]);
    expect(mended.map(({ kind, from, to }) => `${kind} ${from} ${to}`)).toEqual(['spike 2 2', 'hole 3 3']);
  });

  test('mending what is mended changes nothing, and any track is borne', () => {
    const r = random(506);
    const seen = new Map<string, number>();
    for (let i = 0; i < 300; i++) {
      const way = anyWay(r, r.whole(0, 60));
      // now and then a sensor reads zero for a while, or leaps
      const spoilt = way.elevation.map((height) => height);
      if (r.chance(0.5) && spoilt.length > 10) {
        const start = r.whole(1, spoilt.length - 5);
        if (r.chance(0.5)) spoilt.fill(0, start, start + r.whole(1, 4));
        else spoilt[start] = (spoilt[start] ?? 0) + r.pick([-1, 1]) * r.between(60, 500);
      }
      const { elevation: once, mended } = mendElevation({ ...way, elevation: spoilt });
      for (const { kind } of mended) seen.set(kind, (seen.get(kind) ?? 0) + 1);
      const twice = mendElevation({ ...way, elevation: once });
      expect(twice.mended.filter(({ kind }) => kind !== 'hole')).toEqual([]);
      expect(twice.elevation).toEqual(once);
      once.forEach((height, k) => {
        const isMended = mended.some(({ from, to }) => from <= k && k <= to);
        if (!isMended && Number.isFinite(spoilt[k])) expect(relative(height, spoilt[k] ?? 0)).toBeLessThan(1e-12);
      });
    }
    for (const kind of ['hole', 'zero', 'spike']) expect(seen.get(kind)).toBeGreaterThan(20);
  });
});

import { describe, expect, test } from 'vitest';
import {
  type Break,
  climbFigures,
  compareDistances,
  FULL_COVERAGE,
  findClimbs,
  gradeOf,
  smoothElevation,
  steepness,
  type Track,
} from '../../calculators/model/index.ts';
import { exampleRecording } from '../../calculators/your-hill/example-recording.ts';
import { type Random, random } from '../random.ts';
import { heightOn, lengthOf, type Road, trackOf } from './recorded-rides.ts';

const gap = (index: number, apart = 0, why: Break['why'] = 'timer'): Break => ({ index, why, seconds: 60, apart });

/** A road with a point every 10 m, from 100 m up. */
function along(road: Road, step = 10): { distance: Float64Array; height: Float64Array } {
  const distance = Float64Array.from({ length: Math.round(lengthOf(road) / step) + 1 }, (_, i) => i * step);
  return { distance, height: distance.map((place) => 100 + heightOn(road, place)) };
}

/** Climbs of a road as places in metres. */
const placesOf = (road: Road, breaks: Break[] = [], options = {}): [number, number][] => {
  const { distance, height } = along(road);
  return findClimbs(distance, height, breaks, options).map(({ from, to }) => [distance[from] ?? 0, distance[to] ?? 0]);
};

describe('findClimbs', () => {
  test('leaves off a flat way to the foot and on from the top', () => {
    const road = [
      { length: 2000, grade: 0 },
      { length: 500, grade: 0.01 },
      { length: 1500, grade: 0.08 },
      { length: 800, grade: 0.005 },
      { length: 2000, grade: -0.05 },
    ];
    expect(placesOf(road)).toEqual([[2500, 4000]]);
  });

  test('sorts the hardest first: gain times grade', () => {
    const road = [
      { length: 1000, grade: 0.04 }, // 40 m at 4 %: 1.6
      { length: 1000, grade: -0.06 },
      { length: 800, grade: 0.1 }, // 80 m at 10 %: 8
      { length: 1000, grade: -0.06 },
      { length: 2000, grade: 0.05 }, // 100 m at 5 %: 5
    ];
    expect(placesOf(road)).toEqual([
      [2000, 2800],
      [3800, 5800],
      [0, 1000],
    ]);
  });

  test('a dip of 8 m is part of a climb, one of 20 m parts two; on a long climb the share counts', () => {
    const dipping = (before: number, dip: number, after = 1000): Road => [
      { length: before, grade: 0.08 },
      { length: dip / 0.04, grade: -0.04 },
      { length: after, grade: 0.08 },
    ];
    expect(placesOf(dipping(1000, 8))).toEqual([[0, 2200]]);
    expect(placesOf(dipping(1000, 20))).toHaveLength(2);
    // 15 % of 239 m are 36 m; the fall is measured from a line of 1 %
    expect(placesOf(dipping(3000, 20))).toEqual([[0, 4500]]);
    // a dip of 32 m falls by 40 m from that line, of 24 m by 30 m
    expect(placesOf(dipping(3000, 32, 3000))).toHaveLength(2);
    expect(placesOf(dipping(3000, 24, 3000))).toEqual([[0, 6600]]);
  });

  test('a flat of 1.5 km parts two small climbs, one of 300 m does not', () => {
    const halting = (flat: number): Road => [
      { length: 700, grade: 0.06 },
      { length: flat, grade: 0 },
      { length: 700, grade: 0.06 },
    ];
    expect(placesOf(halting(300))).toEqual([[0, 1700]]);
    expect(placesOf(halting(1500))).toEqual([
      [0, 700],
      [2200, 2900],
    ]);
  });

  test('a flat of 3 km ends even a great climb', () => {
    const road = [
      { length: 8000, grade: 0.07 },
      { length: 3000, grade: 0 },
      { length: 4000, grade: 0.07 },
    ];
    expect(placesOf(road)).toEqual([
      [0, 8000],
      [11_000, 15_000],
    ]);
  });

  test('what comes after such an end begins at its lowest point, not where the end was seen', () => {
    // 45 m and 4.5 m of line lost over 500 m; 3 % gains them back after 2.2 km more, beyond the 2 km that end the first
    const road = [
      { length: 8000, grade: 0.07 },
      { length: 500, grade: -0.08 },
      { length: 3000, grade: 0.03 },
    ];
    expect(placesOf(road)).toEqual([
      [0, 8000],
      [8500, 11_500],
    ]);
  });

  test('a small climb before a great one is not lost with the flat between them', () => {
    const road = [
      { length: 500, grade: 0.06 },
      { length: 900, grade: 0 },
      { length: 3000, grade: 0.09 },
    ];
    expect(placesOf(road)).toEqual([
      [1400, 4400],
      [0, 500],
    ]);
  });

  test('needs 20 m and 2 % unless told otherwise', () => {
    expect(placesOf([{ length: 240, grade: 0.08 }])).toEqual([]);
    expect(placesOf([{ length: 260, grade: 0.08 }])).toEqual([[0, 260]]);
    expect(placesOf([{ length: 5000, grade: 0.019 }])).toEqual([]);
    expect(placesOf([{ length: 5000, grade: 0.021 }])).toEqual([[0, 5000]]);
    expect(placesOf([{ length: 5000, grade: 0.019 }], [], { grade: 0.01 })).toEqual([[0, 5000]]);
    expect(placesOf([{ length: 240, grade: 0.08 }], [], { gain: 10 })).toEqual([[0, 240]]);
  });

  test('goes on after a pause on the spot, never over a break that is none', () => {
    const road = [{ length: 2000, grade: 0.08 }];
    expect(placesOf(road, [gap(100, 15)])).toEqual([[0, 2000]]);
    const parted = [
      [1000, 2000],
      [0, 990],
    ];
    expect(placesOf(road, [gap(100, 25)])).toEqual(parted);
    // without positions a timer is taken for a pause, a new stretch of the file is not
    expect(placesOf(road, [gap(100, Number.NaN)])).toEqual([[0, 2000]]);
    expect(placesOf(road, [gap(100, Number.NaN, 'file')])).toEqual(parted);
    // ends that differ by 6 m in height
    const { distance, height } = along(road);
    const jumping = height.map((value, i) => (i < 100 ? value : value + 6));
    expect(findClimbs(distance, jumping, [gap(100)])).toHaveLength(2);
    expect(
      findClimbs(
        distance,
        height.map((value, i) => (i < 100 ? value : value + 3)),
        [gap(100)],
      ),
    ).toHaveLength(1);
  });

  test('finds the invented hill under the noise of a barometer, and from foot to top', () => {
    for (const speed of [1.5, 5]) {
      const { distance, elevation } = exampleRecording(7, 'barometer', speed);
      const [climb, ...others] = findClimbs(distance, smoothElevation(distance, elevation, 100, []), []);
      expect(others).toEqual([]);
      expect(distance[climb?.from ?? 0]).toBeLessThan(60);
      expect(distance[climb?.to ?? 0]).toBeGreaterThan(3900);
    }
  });

  test('every climb counts as one, lies between its foot and its top, and shares no road with another', () => {
    const r = random(511);
    let found = 0;
    for (let i = 0; i < 300; i++) {
      const { distance, height, breaks } = anyRide(r);
      const climbs = findClimbs(distance, height, breaks);
      found += climbs.length;
      const taken = new Set<number>();
      let steps = 0;
      for (const { from, to } of climbs) {
        const [gain, way] = [(height[to] ?? 0) - (height[from] ?? 0), (distance[to] ?? 0) - (distance[from] ?? 0)];
        if (!breaks.some(({ index }) => index > from && index <= to)) {
          expect(gain).toBeGreaterThanOrEqual(20);
          expect(gradeOf(gain, way)).toBeGreaterThanOrEqual(0.02);
          const within = height.subarray(from, to + 1);
          expect(Math.min(...within)).toBe(height[from]);
          expect(Math.max(...within)).toBe(height[to]);
        }
        expect(height.subarray(from, to + 1).every(Number.isFinite)).toBe(true);
        for (let k = from + 1; k <= to; k++) taken.add(k);
        steps += to - from;
      }
      expect(taken.size).toBe(steps);
    }
    expect(found).toBeGreaterThan(300);
  });

  test('bears any track', () => {
    const none = new Float64Array(0);
    expect(findClimbs(none, none, [])).toEqual([]);
    expect(findClimbs(Float64Array.of(0), Float64Array.of(5), [])).toEqual([]);
    expect(findClimbs(Float64Array.of(0, 500), Float64Array.of(5, 55), [])).toEqual([{ from: 0, to: 1 }]);
    const standing = new Float64Array(50);
    expect(findClimbs(standing, standing, [])).toEqual([]);
    expect(
      findClimbs(
        standing,
        standing.map((_, i) => i),
        [],
      ),
    ).toEqual([]);
    expect(
      findClimbs(
        standing.map((_, i) => i),
        new Float64Array(50).fill(Number.NaN),
        [],
      ),
    ).toEqual([]);
  });
});

/** Hills with dips and flats, breaks and holes. */
function anyRide(r: Random): { distance: Float64Array; height: Float64Array; breaks: Break[] } {
  const road = Array.from({ length: r.whole(1, 15) }, () => ({
    length: r.whole(1, 200) * 10,
    grade: r.pick([r.between(-0.12, 0.15), r.between(0, 0.03), r.between(0.03, 0.12)]),
  }));
  const { distance, height } = along(road);
  const holes = r.chance(0.2) ? 0.01 : 0;
  const holed = height.map((value) => (r.chance(holes) ? Number.NaN : value));
  const breaks = [...distance.keys()]
    .filter((i) => i > 0 && r.chance(0.003))
    .map((index) => gap(index, r.between(0, 40)));
  return { distance, height: holed, breaks };
}

/** One point a second at 4 m/s up 5 %, 201 points: 800 m. Power 200 W, cadence 80, no heart rate. */
function evenRide(): Track {
  const time = Float64Array.from({ length: 201 }, (_, i) => i);
  const distance = time.map((seconds) => 4 * seconds);
  return trackOf({
    distance,
    time,
    elevation: distance.map((place) => 0.05 * place),
    power: time.map(() => 200),
    cadence: time.map(() => 80),
  });
}

describe('climbFigures', () => {
  test('an even ride', () => {
    const ride = evenRide();
    const figures = climbFigures(ride, ride.elevation, 0, 200);
    // sin 0.05 is tan 0.050063; 0.2 m/s up are 720 m/h
    expect(figures).toMatchObject({ distance: 800, gaps: 0, elapsed: 200, riding: 200, speed: 4 });
    expect(figures.gain).toBeCloseTo(40, 9);
    expect(figures.grade).toBeCloseTo(0.0500626, 6);
    expect((figures.verticalSpeed ?? 0) * 3600).toBeCloseTo(720, 6);
    expect(figures.power).toEqual({ mean: 200, coverage: 1 });
    expect(figures.cadence).toEqual({ mean: 80, coverage: 1 });
    expect(figures.heartRate).toEqual({ mean: undefined, coverage: 0 });
    expect(figures.pauses).toEqual({ count: 0, seconds: 0 });
    expect(figures.steepest.grade).toBeCloseTo(0.0500626, 6);
    expect(figures.steepest.length).toBe(100);
  });

  test('a route has no times and no speeds', () => {
    const ride = { ...evenRide(), time: new Float64Array(201).fill(Number.NaN) };
    const figures = climbFigures(ride, ride.elevation, 0, 200);
    expect(figures).toMatchObject({ distance: 800, elapsed: undefined, riding: undefined, speed: undefined });
    expect(figures.verticalSpeed).toBeUndefined();
    expect(figures.power).toEqual({ mean: undefined, coverage: 0 });
  });

  test('means are weighted by time, zeros count, and what is missing does not', () => {
    const ride = evenRide();
    // 60 s of coasting: 140/200 of 200 W
    ride.power.fill(0, 1, 61);
    expect(climbFigures(ride, ride.elevation, 0, 200).power).toEqual({ mean: 140, coverage: 1 });
    // 8 s missing of 200 s: the rest has 132 s of 200 W in 192 s
    ride.power.fill(Number.NaN, 101, 109);
    const { power } = climbFigures(ride, ride.elevation, 0, 200);
    expect(power.coverage).toBeCloseTo(0.96, 12);
    expect(power.mean).toBeCloseTo((132 * 200) / 192, 9);
    // 12 s missing: 94 % is not enough
    ride.power.fill(Number.NaN, 101, 113);
    const less = climbFigures(ride, ride.elevation, 0, 200).power;
    expect(less.coverage).toBeCloseTo(0.94, 12);
    expect(less.mean).toBeUndefined();
    expect(FULL_COVERAGE).toBe(0.95);
  });

  test('unequal intervals: a value stands for the time before its point', () => {
    const ride = trackOf({
      distance: Float64Array.of(0, 40, 120),
      time: Float64Array.of(0, 10, 30),
      elevation: Float64Array.of(0, 4, 10),
      power: Float64Array.of(900, 100, 400),
    });
    // 10 s of 100 W and 20 s of 400 W
    expect(climbFigures(ride, ride.elevation, 0, 2).power.mean).toBeCloseTo(300, 9);
  });

  test('pauses are set apart: a stopped timer, and standing on', () => {
    const { time, distance, elevation, power } = evenRide();
    // the timer stops for 90 s before point 50
    const stopped = trackOf({
      distance,
      elevation,
      power,
      time: time.map((t, i) => (i < 50 ? t : t + 90)),
      breaks: [{ ...gap(50), seconds: 91 }],
    });
    const figures = climbFigures(stopped, elevation, 0, 200);
    expect(figures).toMatchObject({ elapsed: 290, riding: 199, pauses: { count: 1, seconds: 91 } });
    // 30 s at one place, recorded: points 81 to 110
    const place = (i: number): number => 4 * (i <= 80 ? i : Math.max(80, i - 30));
    const stood = trackOf({
      time,
      power: time.map((_, i) => (i > 80 && i <= 110 ? 0 : 200)),
      distance: time.map((_, i) => place(i)),
    });
    const there = climbFigures(
      stood,
      stood.distance.map((x) => 0.05 * x),
      0,
      200,
    );
    expect(there).toMatchObject({
      elapsed: 200,
      riding: 170,
      pauses: { count: 1, seconds: 30 },
      distance: 680,
      speed: 4,
    });
    expect(there.power.mean).toBe(200);
    // two stops at lights of 12 s and 15 s
    const twice = time.map((_, i) => 4 * (i <= 40 ? i : i <= 100 ? Math.max(40, i - 12) : Math.max(88, i - 27)));
    const lights = climbFigures(trackOf({ time, distance: twice, power: time.map(() => 150) }), twice, 0, 200);
    expect(lights).toMatchObject({ riding: 173, pauses: { count: 2, seconds: 27 }, power: { mean: 150, coverage: 1 } });
    // nine seconds are no pause
    const held = time.map((_, i) => 4 * (i <= 80 ? i : Math.max(80, i - 9)));
    expect(climbFigures(trackOf({ time, distance: held }), held, 0, 200).pauses.count).toBe(0);
  });

  test('a break that is no pause is a gap; its jump is not climbed', () => {
    const { distance, elevation } = evenRide();
    const heights = elevation.map((height, i) => (i < 100 ? height : height + 25));
    const track = trackOf({ distance, elevation: heights, breaks: [gap(100, 500)] });
    const figures = climbFigures(track, heights, 0, 200);
    expect(figures.gaps).toBe(1);
    // 40 m less the 0.2 m that the break's own step would have been
    expect(figures.gain).toBeCloseTo(39.8, 9);
    expect(figures.steepest.grade).toBeCloseTo(0.0500626, 6);
  });

  test('jumps over several breaks are each taken out', () => {
    const { distance, elevation } = evenRide();
    const heights = elevation.map((height, i) => height + (i < 60 ? 0 : i < 120 ? 3 : i < 160 ? -2 : 4));
    const track = trackOf({ distance, elevation: heights, breaks: [gap(60), gap(120), gap(160)] });
    // each break's own step of 0.2 m is left out
    expect(climbFigures(track, heights, 0, 200).gain).toBeCloseTo(39.4, 9);
    expect(climbFigures(track, heights, 130, 200).gain).toBeCloseTo(13.8, 9);
  });

  test('the steepest 100 m are where they are, between points too', () => {
    const distance = Float64Array.of(0, 130, 230, 400);
    const height = Float64Array.of(0, 5, 17, 20);
    const { steepest } = climbFigures(trackOf({ distance }), height, 0, 3);
    expect(steepest).toMatchObject({ at: 130, length: 100 });
    expect(steepest.grade).toBeCloseTo(12 / Math.sqrt(100 ** 2 - 12 ** 2), 9);
    // 60 m at 15 % between gentle ones, over 100 m: 9 m and 40 m at 2 %
    const short = climbFigures(
      trackOf({ distance: Float64Array.of(0, 300, 360, 600) }),
      Float64Array.of(0, 6, 15, 19.8),
      0,
      3,
    );
    expect(short.steepest.grade).toBeCloseTo(gradeOf(9.8, 100), 9);
    const whole = climbFigures(trackOf({ distance: Float64Array.of(0, 50) }), Float64Array.of(0, 3), 0, 1);
    expect(whole.steepest).toMatchObject({ at: 0, length: 50 });
  });

  test('the steepest part against every window of a fine grid', () => {
    const r = random(512);
    for (let i = 0; i < 40; i++) {
      const distance = Float64Array.from({ length: 60 }, () => 0);
      for (let k = 1; k < 60; k++) distance[k] = (distance[k - 1] ?? 0) + r.whole(1, 25);
      const height = Float64Array.from(distance, () => r.between(0, 12));
      const heightAt = (place: number): number => {
        const k = Math.max(
          1,
          distance.findIndex((here) => here >= place),
        );
        const [a = 0, b = 0] = [distance[k - 1], distance[k]];
        return (height[k - 1] ?? 0) + ((place - a) / (b - a)) * ((height[k] ?? 0) - (height[k - 1] ?? 0));
      };
      let most = Number.NEGATIVE_INFINITY;
      // ends of windows at whole metres are ends at points too
      for (let s = 0; s + 100 <= (distance[59] ?? 0); s++) most = Math.max(most, heightAt(s + 100) - heightAt(s));
      expect(climbFigures(trackOf({ distance }), height, 0, 59).steepest.grade).toBeCloseTo(gradeOf(most, 100), 9);
    }
  });

  test('any ends of any track give figures', () => {
    const finite = (value: unknown): boolean =>
      value === undefined ||
      (typeof value === 'number' ? Number.isFinite(value) : Object.values(value as object).every(finite));
    const r = random(513);
    for (let i = 0; i < 300; i++) {
      const { distance, height, breaks } = anyRide(r);
      const n = distance.length;
      const holes = (value: number) => (r.chance(0.2) ? Number.NaN : value);
      const track = trackOf({
        distance,
        breaks,
        time: r.chance(0.3) ? new Float64Array(n).fill(Number.NaN) : distance.map((place) => holes(place / 4)),
        power: distance.map(() => holes(r.between(0, 400))),
      });
      expect(finite(climbFigures(track, height, r.whole(0, n - 1), r.whole(0, n - 1)))).toBe(true);
    }
    const empty = trackOf({ distance: new Float64Array(0) });
    expect(finite(climbFigures(empty, empty.elevation, 0, 0))).toBe(true);
    const nowhere = trackOf({ distance: new Float64Array(5) });
    expect(finite(climbFigures(nowhere, nowhere.elevation, 0, 4))).toBe(true);
  });
});

describe('steepness', () => {
  test('how far the road lies in each class', () => {
    const { distance, height } = along([
      { length: 300, grade: 0.03 },
      { length: 500, grade: 0.06 },
      { length: 200, grade: 0.11 },
    ]);
    const classes = steepness(distance, height, 0, 100).map(({ low, high, distance: way }) => [
      Math.round(100 * low),
      Math.round(100 * high),
      Math.round(way),
    ]);
    expect(classes).toEqual([
      [2, 4, 300],
      [4, 6, 0],
      [6, 8, 500],
      [8, 10, 0],
      [10, 12, 200],
    ]);
  });

  test('all the way is in some class, none is empty at the ends, and an impossible step does not make a thousand of them', () => {
    const r = random(514);
    for (let i = 0; i < 200; i++) {
      const { distance, height } = anyRide(r);
      const n = distance.length;
      const whole = height.every(Number.isFinite);
      if (r.chance(0.2)) height[r.whole(0, n - 1)] = 9000;
      const classes = steepness(distance, height, 0, n - 1);
      const sum = classes.reduce((total, { distance: way }) => total + way, 0);
      if (whole) expect(sum).toBeCloseTo(distance[n - 1] ?? 0, 6);
      expect(classes.length).toBeLessThanOrEqual(61);
      if (classes.length > 0)
        expect(Math.min(classes[0]?.distance ?? 0, classes.at(-1)?.distance ?? 0)).toBeGreaterThan(0);
    }
    expect(steepness(new Float64Array(0), new Float64Array(0), 0, 0)).toEqual([]);
  });
});

describe('compareDistances', () => {
  test('says by how much positions and counter differ, and on which stretch most', () => {
    const distance = Float64Array.of(0, 100, 200, 200, 300, 400);
    const counter = Float64Array.of(5000, 5098, 5196, 5196, 5290, 5384);
    const compared = compareDistances({ distance, counter, breaks: [gap(3)] });
    expect(compared).toMatchObject({ positions: 400, counter: 384 });
    expect(compared?.stretches).toHaveLength(2);
    expect(compared?.worst).toEqual({ from: 3, to: 5, positions: 200, counter: 188 });
  });

  test('a counter that begins anew or fails for a while is compared where it counts', () => {
    const n = Number.NaN;
    const distance = Float64Array.of(0, 100, 200, 300, 400, 500);
    const counter = Float64Array.of(900, 1001, 0, 99, n, 300);
    // 0 to 1 and 2 to 5: 100 + 300 against 101 + 300
    expect(compareDistances({ distance, counter, breaks: [] })).toMatchObject({ positions: 400, counter: 401 });
    expect(compareDistances({ distance, counter: distance.map(() => n), breaks: [] })).toBeNull();
    expect(compareDistances({ distance: new Float64Array(0), counter: new Float64Array(0), breaks: [] })).toBeNull();
  });
});

import { describe, expect, test } from 'vitest';
import {
  type CalibratedRide,
  calibrateRide,
  digitsOf,
  type RideCalibration,
  type RideDoubts,
  type RideSetting,
  smoothElevation,
  type Track,
} from '../../calculators/model/index.ts';
import { type Random, random } from '../random.ts';
import {
  correlated,
  lengthOf,
  missing,
  normal,
  type Road,
  restless,
  ridden,
  type TrueRide,
  trackOf,
} from './recorded-rides.ts';

/** Invented half-widths of 95 %, of the size that a careful rider has. */
const DOUBTS: RideDoubts = {
  meter: 0.02,
  mass: 1.1,
  gain: 0.03,
  drift: 2,
  distance: 0.01,
  drive: 0.02,
  density: 0.01,
  wind: 0.5,
  drag: 0.1,
};

/** As good as sure. */
const SURE = Object.fromEntries(Object.keys(DOUBTS).map((name) => [name, 1e-6])) as unknown as RideDoubts;

const SETTING: RideSetting = {
  mass: 95,
  efficiency: 0.96,
  density: 1.15,
  headWind: 0,
  dragArea: 0.45,
  doubts: DOUBTS,
};

const TRUTH: TrueRide = { ...SETTING, rolling: 0.025 };

const STEEP: Road = [
  { length: 500, grade: 0.1 },
  { length: 700, grade: 0.12 },
  { length: 600, grade: 0.08 },
];
/** Steep and gentle by turns: 2.5 km each at up to 9 m/s. */
const MIXED: Road = [
  { length: 700, grade: 0.07 },
  { length: 2500, grade: -0.01 },
  { length: 800, grade: 0.06 },
  { length: 2500, grade: -0.008 },
  { length: 400, grade: 0.05 },
];

const whole = (track: Track, setting: RideSetting, height = track.elevation): RideCalibration =>
  calibrateRide(track, height, 0, track.distance.length - 1, setting);

const fitted = (calibration: RideCalibration): CalibratedRide => {
  if ('problem' in calibration) throw new Error(calibration.problem);
  return calibration;
};

/** A ride of which everything is off by as much as the doubts say, recorded by a barometer that trembles and a meter that scatters. */
function erring(r: Random, road: Road, doubts: RideDoubts): { calibration: CalibratedRide; truth: TrueRide } {
  const off = (half: number): number => (normal(r) * half) / 1.96;
  const truth: TrueRide = {
    mass: SETTING.mass + off(doubts.mass),
    rolling: 0.025,
    dragArea: SETTING.dragArea + off(doubts.drag),
    density: SETTING.density * (1 + off(doubts.density)),
    headWind: off(doubts.wind),
    efficiency: SETTING.efficiency + off(doubts.drive),
  };
  const ride = ridden(road, truth, restless(r));
  const points = ride.distance.length;
  const scale = { meter: 1 + off(doubts.meter), gain: 1 + off(doubts.gain), distance: 1 + off(doubts.distance) };
  const drift = off(doubts.drift);
  const trembling = correlated(r, points, 0.3, 0.95);
  const elevation = ride.elevation.map(
    (height, i) => 500 + scale.gain * height + (drift * (ride.distance[i] ?? 0)) / lengthOf(road) + (trembling[i] ?? 0),
  );
  const track = {
    ...ride,
    distance: ride.distance.map((place) => scale.distance * place),
    elevation,
    power: ride.power.map((watts) => scale.meter * watts * (1 + 0.05 * normal(r))),
  };
  const height = smoothElevation(track.distance, elevation, 100, []);
  return { calibration: fitted(whole(track, { ...SETTING, doubts }, height)), truth };
}

describe('calibrateRide', () => {
  test('gives back the surface that a ride without error was ridden on', () => {
    for (const road of [STEEP, MIXED]) {
      const track = ridden(road, TRUTH, restless(random(531)));
      const { rolling } = fitted(whole(track, { ...SETTING, doubts: SURE }));
      // what is left comes from speeds at the ends of pieces and from steps of a second
      expect(Math.abs(rolling.value - 0.025)).toBeLessThan(0.0002);
    }
  });

  test('gives back the air too where part of the way is fast, with hardly a guess', () => {
    const track = ridden(MIXED, { ...TRUTH, dragArea: 0.58 }, restless(random(532)));
    const { rolling, dragArea, dragAreaIsInformed } = fitted(
      whole(track, { ...SETTING, doubts: { ...SURE, drag: 1 } }),
    );
    expect(Math.abs(rolling.value - 0.025)).toBeLessThan(0.0003);
    expect(Math.abs(dragArea.value - 0.58)).toBeLessThan(0.01);
    expect(dragAreaIsInformed).toBe(true);
  });

  test('one piece of steady climb, by hand', () => {
    // 400 m in 100 s at 4 m/s, 20 m up, 320 W: 0.96 · 32,000 J = 30,720 J
    const time = Float64Array.from({ length: 101 }, (_, i) => i);
    const track = trackOf({
      time,
      distance: time.map((t) => 4 * t),
      elevation: time.map((t) => 0.2 * t),
      power: time.map(() => 320),
    });
    const { rolling } = fitted(whole(track, { ...SETTING, doubts: SURE }));
    // gravity 95 · 9.80665 · 20 = 18,632.6 J; air ½ · 1.15 · 0.45 · 16 · 400 = 1,656 J; bearings (0.091 + 0.0087 · 4) · 400 = 50.3 J;
    // 10,381.1 J are left for 95 · 9.80665 N over √(400² − 20²) m = 399.4997 m
    expect(rolling.value).toBeCloseTo(10_381.1 / (95 * 9.80665 * 399.4997), 5);
  });

  test.each([
    ['steep', STEEP, 541],
    ['mixed', MIXED.map((part) => ({ ...part, length: part.length / 2 })), 542],
  ] as const)('%s: the range holds the truth in 93 to 97 % of 400 rides', (_, road, seed) => {
    const r = random(seed);
    const held = { rolling: 0, dragArea: 0 };
    for (let i = 0; i < 400; i++) {
      const { calibration, truth } = erring(r, road, DOUBTS);
      for (const name of ['rolling', 'dragArea'] as const) {
        const { low, high } = calibration[name];
        if (low <= truth[name] && truth[name] <= high) held[name]++;
      }
    }
    // 95 % of 400 rides are 380, give or take 4.4 (1 SD)
    for (const count of Object.values(held)) {
      expect(count).toBeGreaterThanOrEqual(0.93 * 400);
      expect(count).toBeLessThanOrEqual(0.97 * 400);
    }
  });

  test('a steep hill says nothing of the air; fast gentle parts do, where the wind is known and the guess is wide', () => {
    const informed = (road: Road, doubts: RideDoubts): number => {
      const r = random(543);
      let count = 0;
      for (let i = 0; i < 30; i++) if (erring(r, road, doubts).calibration.dragAreaIsInformed) count++;
      return count;
    };
    const calm = { ...DOUBTS, wind: 0.2, drag: 0.25 };
    expect(informed(STEEP, calm)).toBe(0);
    expect(informed(STEEP, DOUBTS)).toBe(0);
    expect(informed(MIXED, calm)).toBeGreaterThan(27);
    // air that may move by 1.5 m/s either way tells less than a fair guess
    expect(informed(MIXED, { ...DOUBTS, wind: 1.5 })).toBe(0);
  });

  test('on an even hill the meter moves C_rr by its share of all the power, and the mass by nearly its own', () => {
    const track = ridden([{ length: 2000, grade: 0.1 }], TRUTH, () => 220);
    const { rolling } = fitted(whole(track, SETTING));
    const moved = (name: string): number => rolling.causes.find((cause) => cause.name === name)?.up ?? 0;
    // sin 0.0995 and 0.025 · 0.995 and 0.7 N of air are 0.1252 of the weight: 2 % of it; 1.1 kg of 95 kg of 0.1244
    expect(moved('meter')).toBeCloseTo(0.0025, 4);
    expect(moved('mass')).toBeCloseTo(0.00144, 4);
    // 3 % of 9.95 m per 100 m; 2 m over 2 km
    expect(moved('gain')).toBeCloseTo(0.003, 4);
    expect(moved('drift')).toBeCloseTo(0.001, 4);
    // the range is their root of squares
    const squares = rolling.causes.reduce((sum, { up }) => sum + up * up, 0);
    expect(rolling.high - rolling.value).toBeCloseTo(Math.sqrt(squares), 9);
  });

  test('a ride with a stop, a pause and coasting leaves those pieces out', () => {
    const track = ridden(MIXED, TRUTH, restless(random(534)));
    const all = fitted(whole(track, { ...SETTING, doubts: SURE }));
    // brakes without pedalling: 60 s without power while the speed is as it was
    const braked = { ...track, power: track.power.map((watts, i) => (i > 400 && i < 460 ? 0 : watts)) };
    const left = fitted(whole(braked, { ...SETTING, doubts: SURE }));
    expect(left.used.pieces).toBeLessThan(all.used.pieces);
    expect(Math.abs(left.rolling.value - 0.025)).toBeLessThan(0.0004);
    // ten minutes at rest, timer stopped
    const rested = {
      ...track,
      time: track.time.map((t, i) => (i < 300 ? t : t + 600)),
      breaks: [{ index: 300, why: 'timer' as const, seconds: 601, apart: 2 }],
    };
    expect(Math.abs(fitted(whole(rested, { ...SETTING, doubts: SURE })).rolling.value - 0.025)).toBeLessThan(0.0004);
  });

  test.each([
    [0.08, true],
    [0.12, false],
  ])('a piece with %d of its time without pedalling is used: %s', (share, isUsed) => {
    // 1 m/s up 10 m per 100 m: pieces of 150 s, in each of them six times a rest of 2 or 3 s in 25
    const time = Float64Array.from({ length: 1501 }, (_, i) => i);
    const even = { time, distance: time, elevation: time.map((t) => 0.1 * t) };
    const coasted = trackOf({ ...even, power: time.map((t) => (t % 25 < 25 * share ? 0 : 125)) });
    const some = whole(coasted, SETTING);
    expect('used' in some ? some.used.pieces : some.problem).toBe(isUsed ? 10 : 'short');
  });

  test('says why a ride tells nothing', () => {
    const track = ridden(STEEP, TRUTH, restless(random(535)));
    const points = track.distance.length;
    expect(whole({ ...track, time: missing(points) }, SETTING)).toMatchObject({ problem: 'times' });
    expect(whole({ ...track, power: missing(points) }, SETTING)).toMatchObject({ problem: 'power', coverage: 0 });
    const gaps = { ...track, power: track.power.map((watts, i) => (i % 10 === 0 ? Number.NaN : watts)) };
    const problem = whole(gaps, SETTING);
    expect(problem).toMatchObject({ problem: 'power' });
    expect(problem).toHaveProperty('coverage', expect.closeTo(0.9, 2));
    expect(calibrateRide(track, track.elevation, 0, 80, SETTING)).toMatchObject({ problem: 'short' });
    expect(calibrateRide(track, track.elevation, 5, 5, SETTING)).toMatchObject({ problem: 'times' });
    expect(whole(trackOf({ distance: new Float64Array(0) }), SETTING)).toMatchObject({ problem: 'times' });
    expect(whole(track, SETTING, missing(points))).toMatchObject({ problem: 'short', distance: 0 });
  });

  test('a rider who is 40 kg lighter than told asks for a C_rr below zero, and the scales are named', () => {
    const track = ridden(STEEP, { ...TRUTH, mass: 70 }, restless(random(536)));
    const absurd = whole(track, { ...SETTING, mass: 110, doubts: { ...DOUBTS, mass: 10 } });
    if (!('problem' in absurd)) throw new Error('It was taken for a surface.');
    expect(absurd.problem).toBe('absurd');
    expect(absurd.rolling).toBeLessThan(0);
    expect(absurd.likely?.[0]).toBe('mass');
    // a motor that helped looks the same; power of another rider asks for sand
    const strong = { ...track, power: track.power.map((watts) => 3 * watts) };
    expect(whole(strong, SETTING)).toMatchObject({ problem: 'absurd' });
  });

  test('any ride gives numbers or a reason', () => {
    const r = random(537);
    for (let i = 0; i < 150; i++) {
      const points = r.whole(0, 600);
      let place = 0;
      const distance = Float64Array.from({ length: points }, () => {
        place += r.chance(0.95) ? r.between(0, 8) : 0;
        return place;
      });
      const track = trackOf({
        distance,
        elevation: distance.map((way) => (r.chance(0.02) ? Number.NaN : 0.06 * way + r.between(-2, 2))),
        time: distance.map((_, k) => k),
        power: distance.map(() => (r.chance(0.02) ? Number.NaN : r.between(0, 500))),
        breaks: points > 100 && r.chance(0.5) ? [{ index: 50, why: 'silence', seconds: 1, apart: 8 }] : [],
      });
      const calibration = whole(track, { ...SETTING, headWind: r.between(-6, 6) });
      const numbers =
        'problem' in calibration
          ? [calibration.coverage, calibration.distance, calibration.rolling ?? 0]
          : [calibration.rolling, calibration.dragArea].flatMap(({ value, low, high }) => [value, low, high]);
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
  });
});

describe('digitsOf', () => {
  test('a figure is told down to the first digit of its half-width', () => {
    // 0.0247 ± 0.006: thousandths, 0.025
    expect(digitsOf(0.0247, 0.0187, 0.0307)).toBe(2);
    expect(digitsOf(0.0247, 0.0245, 0.0249)).toBe(3);
    expect(digitsOf(0.56, 0.39, 0.73)).toBe(1);
    expect(digitsOf(0.56, 0.54, 0.58)).toBe(2);
    expect(digitsOf(1234, 1200, 1268)).toBe(3);
    // the doubt is larger than the figure
    expect(digitsOf(0.004, -0.03, 0.038)).toBe(1);
    expect(digitsOf(-0.0247, -0.0307, -0.0187)).toBe(2);
    expect(digitsOf(5, 5, 5)).toBe(6);
    expect(digitsOf(5, Number.NEGATIVE_INFINITY, 8)).toBe(0);
    expect(digitsOf(Number.NaN, 0, 1)).toBe(0);
  });
});

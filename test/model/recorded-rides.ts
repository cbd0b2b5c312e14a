/** Invented recordings of known truth: a rider, a hill and instruments that err as they are told to. */
import { GRAVITY, type Track } from '../../calculators/model/index.ts';
import type { Random } from '../random.ts';

/** A hill as pieces of road: how long, how steep (tan). */
export type Road = readonly { length: number; grade: number }[];

/** Height, m, at a place, m from the bottom along the road; straight on after the end. */
export function heightOn(road: Road, place: number): number {
  let [height, left] = [0, place];
  for (const [k, { length, grade }] of road.entries()) {
    const way = k === road.length - 1 ? left : Math.min(left, length);
    height += (way * grade) / Math.hypot(1, grade);
    left -= way;
    if (left <= 0) break;
  }
  return height;
}

const sinOn = (road: Road, place: number): number => {
  let left = place;
  const piece = road.find(({ length }) => {
    left -= length;
    return left < 0;
  });
  const grade = (piece ?? road.at(-1))?.grade ?? 0;
  return grade / Math.hypot(1, grade);
};

export const lengthOf = (road: Road): number => road.reduce((sum, { length }) => sum + length, 0);

export interface TrueRide {
  mass: number;
  rolling: number;
  dragArea: number;
  density: number;
  headWind: number;
  efficiency: number;
}

/** A column of so many points without a value. */
export const missing = (points: number): Float64Array => new Float64Array(points).fill(Number.NaN);

/** A track from some of its columns. */
export const trackOf = (columns: Partial<Track> & Pick<Track, 'distance'>): Track => {
  const none = () => missing(columns.distance.length);
  return {
    elevation: none(),
    time: none(),
    power: none(),
    cadence: none(),
    heartRate: none(),
    counter: none(),
    breaks: [],
    ...columns,
  };
};

/**
 * A ride up a road, once a second without error: Newton's law in steps of a tenth of a second (Martin et al. 1998 with bearings), from
 * the speed that the rider starts at.
 * @param power W at the crank at a time, s
 */
export function ridden(road: Road, ride: TrueRide, power: (time: number) => number, startSpeed = 3): Track {
  const step = 0.1;
  const rows: { time: number; distance: number; elevation: number; power: number }[] = [];
  let [v, place] = [startSpeed, 0];
  let work = 0;
  for (let tick = 0; place < lengthOf(road) && tick < 200_000; tick++) {
    const time = tick * step;
    if (tick % 10 === 0) {
      rows.push({ time, distance: place, elevation: heightOn(road, place), power: work });
      work = 0;
    }
    const watts = power(time);
    work += watts * step;
    const sin = sinOn(road, place);
    const u = v + ride.headWind;
    const force =
      (ride.efficiency * watts) / v -
      ride.mass * GRAVITY * (sin + ride.rolling * Math.sqrt(1 - sin * sin)) -
      0.5 * ride.density * ride.dragArea * u * Math.abs(u) -
      (0.091 + 0.0087 * v);
    const next = Math.max(0.3, v + (force / ride.mass) * step);
    place += 0.5 * (v + next) * step;
    v = next;
  }
  const column = (name: 'time' | 'distance' | 'elevation' | 'power') => Float64Array.from(rows, (row) => row[name]);
  return trackOf({
    time: column('time'),
    distance: column('distance'),
    elevation: column('elevation'),
    power: column('power'),
  });
}

/** A value of the standard normal (Box and Muller). */
export const normal = (r: Random): number =>
  Math.sqrt(-2 * Math.log(1 - r.between(0, 1))) * Math.cos(2 * Math.PI * r.between(0, 1));

/** Noise of so many points whose neighbours err alike: standard deviation, and how much of it is left after one point. */
export function correlated(r: Random, points: number, deviation: number, kept: number): Float64Array {
  let error = normal(r) * deviation;
  return Float64Array.from({ length: points }, () => {
    const here = error;
    error = kept * error + Math.sqrt(1 - kept * kept) * deviation * normal(r);
    return here;
  });
}

/** Rider power that changes every so often, 100 to 300 W. */
export function restless(r: Random, low = 100, high = 300): (time: number) => number {
  const watts = Array.from({ length: 1000 }, () => r.between(low, high));
  return (time) => watts[Math.floor(time / 40) % watts.length] ?? low;
}

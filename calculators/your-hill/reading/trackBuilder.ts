import type { Break, Track } from '../../model/index.ts';
import { distanceBetween } from './geodesy.ts';
import type { Problems } from './problems.ts';
import type { DeviceTotals, Part } from './recording.ts';

/* From points as a file gives them to the columns of a track: what cannot be is left out and named, and nothing is bridged. */

/** One point of a file. NaN where the file has no value. */
export interface Point {
  /** degrees */
  latitude: number;
  longitude: number;
  /** m above sea level */
  elevation: number;
  /** s since any moment */
  time: number;
  /** W */
  power: number;
  /** rpm */
  cadence: number;
  /** beats per minute */
  heartRate: number;
  /** m */
  counter: number;
  /** W by a field that an app added: counts where the device wrote no power at all */
  otherPower: number;
}

type Column = keyof Point;

/** Points that one file may have: some eleven days of one each second. Ours. */
export const MOST_POINTS = 1_000_000;
/** s, and multiple of the usual interval, after which nothing recorded is a break. Ours: devices that save points may be silent for several s. */
export const SILENCE = 15;
export const INTERVALS_OF_SILENCE = 5;
/** m/s. Ours: nobody rides faster, so whatever leaps so far was not measured. */
const FASTEST = 100;
/** m/s below which a bike stands or creeps. Ours. */
const CREEPING = 1 / 3.6;

/** Share of the steps by which a counter may fall and still be one: it starts anew now and then. Ours. */
const MOST_FALLS = 0.05;

/** What a column may hold: the widest that a device on Earth can mean; beyond it a number is no measurement. */
const RANGES: Record<Exclude<Column, 'latitude' | 'longitude'>, { low: number; high: number; name: string }> = {
  // some three thousand years either way
  time: { low: -1e11, high: 1e11, name: 'time' },
  elevation: { low: -1000, high: 10_000, name: 'elevation' },
  power: { low: 0, high: 5000, name: 'power' },
  cadence: { low: 0, high: 300, name: 'cadence' },
  // a rider has a heartbeat: devices write 0 when the strap is lost
  heartRate: { low: 1, high: 300, name: 'heart rate' },
  counter: { low: 0, high: 1e8, name: 'distance' },
  otherPower: { low: 0, high: 5000, name: 'power' },
};
const RANGED = Object.keys(RANGES) as (keyof typeof RANGES)[];

export const blankPoint = (): Point => ({
  latitude: Number.NaN,
  longitude: Number.NaN,
  elevation: Number.NaN,
  time: Number.NaN,
  power: Number.NaN,
  cadence: Number.NaN,
  heartRate: Number.NaN,
  counter: Number.NaN,
  otherPower: Number.NaN,
});

const POINT_COLUMNS = Object.keys(blankPoint()) as Column[];

/** Makes a point blank again, so that a million of them need one object. */
export function clearPoint(point: Point): void {
  for (const column of POINT_COLUMNS) point[column] = Number.NaN;
}

/** Points in columns that grow, with the place of each in the file. */
export interface TrackBuilder {
  /** Takes the point's values; `at` is its line or record. Values that cannot be are left out and named. */
  add: (point: Readonly<Point>, at: number) => void;
  /** The next point begins a new stretch. */
  breakHere: () => void;
  readonly size: number;
  /** How many points have a value. */
  count: (column: Column) => number;
  /** Index of the first point of this time or later; all points where there is none. */
  firstFrom: (time: number) => number;
  /** A part of the points from one index to another, the second not included; undefined where they make no part. */
  part: (options: PartOptions) => Part | undefined;
}

export interface PartOptions {
  name: string;
  /** drawn or planned: its times are no ride */
  planned: boolean;
  device?: DeviceTotals;
  from?: number;
  to?: number;
  /** when the timer was stopped, as times of points */
  stops?: readonly number[];
}

/** How many points a file may still bring, over all its parts. */
export interface Room {
  left: number;
  isFull: boolean;
}

export const newRoom = (): Room => ({ left: MOST_POINTS, isFull: false });

export function trackBuilder(problems: Problems, room: Room): TrackBuilder {
  let capacity = 0;
  let size = 0;
  const columns = Object.fromEntries(POINT_COLUMNS.map((column) => [column, new Float64Array()])) as Record<
    Column,
    Float64Array
  >;
  let places = new Int32Array();
  const marks: number[] = [];

  const grow = (): void => {
    capacity = Math.max(256, capacity * 2);
    for (const column of POINT_COLUMNS) {
      const larger = new Float64Array(capacity).fill(Number.NaN);
      larger.set(columns[column]);
      columns[column] = larger;
    }
    const larger = new Int32Array(capacity);
    larger.set(places);
    places = larger;
  };

  const add = (point: Readonly<Point>, at: number): void => {
    if (room.left === 0) {
      if (!room.isFull)
        problems.add('', at, 'The file has more than a million points: those from here on are not read.');
      room.isFull = true;
      return;
    }
    if (size === capacity) grow();
    const { latitude, longitude } = point;
    if (!isPlace(latitude, longitude)) {
      problems.add('points that are nowhere on Earth', at, nowhere(latitude, longitude));
      return;
    }
    // devices that write power and position apart give two points of the same time, each with what the other lacks
    const joins = size > 0 && point.time === columns.time[size - 1] && marks.at(-1) !== size && completes(point);
    const index = joins ? size - 1 : size;
    for (const column of POINT_COLUMNS) {
      const value = point[column];
      if (!joins || Number.isNaN(columns[column][index] as number)) columns[column][index] = value;
    }
    for (const column of RANGED) {
      const { low, high, name } = RANGES[column];
      const value = point[column];
      if (Number.isNaN(value) || (value >= low && value <= high)) continue;
      columns[column][index] = Number.NaN;
      // a plain zero is how devices write that they have none
      if (column !== 'heartRate' || value !== 0)
        problems.add(`values of ${name} that cannot be`, at, `The ${name} cannot be ${value}: the value is left out.`);
    }
    if (joins) return;
    places[index] = at;
    size++;
    room.left--;
  };

  /** Whether a point of the same time only adds what is missing. */
  const completes = (point: Readonly<Point>): boolean =>
    POINT_COLUMNS.every(
      (column) => column === 'time' || Number.isNaN(point[column]) || Number.isNaN(columns[column][size - 1] as number),
    );

  const part = (options: PartOptions): Part | undefined =>
    partOf({ columns, places, marks }, { from: 0, to: size, ...options }, problems);

  return {
    add,
    breakHere: () => {
      if (size > 0 && marks.at(-1) !== size) marks.push(size);
    },
    get size() {
      return size;
    },
    count: (column) => countOf(columns[column].subarray(0, size)),
    firstFrom(time) {
      const found = columns.time.subarray(0, size).findIndex((value) => value >= time);
      return found < 0 ? size : found;
    },
    part,
  };
}

const isPlace = (latitude: number, longitude: number): boolean =>
  (Number.isNaN(latitude) && Number.isNaN(longitude)) ||
  (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 && (latitude !== 0 || longitude !== 0));

function nowhere(latitude: number, longitude: number): string {
  if (Number.isNaN(latitude) || Number.isNaN(longitude))
    return 'The point has only one of latitude and longitude: it is left out.';
  return latitude === 0 && longitude === 0
    ? 'Latitude and longitude are both 0, which devices write before they know where they are: the point is left out.'
    : `No place has the latitude ${latitude} and the longitude ${longitude}: the point is left out.`;
}

interface Points {
  columns: Record<Column, Float64Array>;
  places: Int32Array;
  /** indices before which the file begins a new stretch, rising */
  marks: readonly number[];
}

function partOf(
  points: Points,
  options: PartOptions & { from: number; to: number },
  problems: Problems,
): Part | undefined {
  const { from, to, planned, name } = options;
  const { places } = points;
  const all = Int32Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
  const isRide = !planned && countOf(points.columns.time, all) >= 2;
  const kept = isRide
    ? inOrder(points.columns.time, all, places, problems)
    : moving(points.columns, all, places, problems);
  const length = kept.length;
  const column = (of: Column): Float64Array => Float64Array.from(kept, (index) => points.columns[of][index] as number);
  const placesKept = places.length ? Int32Array.from(kept, (index) => places[index] as number) : new Int32Array();

  const latitude = column('latitude');
  const longitude = column('longitude');
  const time = isRide ? column('time') : new Float64Array(length).fill(Number.NaN);
  const start = time.find((value) => !Number.isNaN(value)) ?? 0;
  const breaks = new Map<number, Break['why']>();
  for (const mark of points.marks) addBreak(breaks, 'file', firstAt(kept, mark), length);
  if (isRide)
    for (const stop of options.stops ?? [])
      addBreak(
        breaks,
        'timer',
        time.findIndex((value) => value > stop),
        length,
      );
  if (isRide) addSilences(breaks, time);

  const positions = countOf(latitude);
  const counter = column('counter');
  const counted = countOf(counter);
  if (Math.max(positions, counted) < 2) {
    if (length > 1) problems.say(`“${name}” has neither positions nor distances: it is left out.`);
    return undefined;
  }
  const distanceFrom: Part['distanceFrom'] = positions >= length / 2 || positions >= counted ? 'positions' : 'counter';
  const between = (one: number, other: number): number =>
    distanceBetween(
      latitude[one] as number,
      longitude[one] as number,
      latitude[other] as number,
      longitude[other] as number,
    );
  mendCounter(counter, time, placesKept, problems);
  if (isRide && distanceFrom === 'positions')
    leaveOutLeaps({ latitude, longitude, time, places: placesKept, breaks }, between, problems);

  const distance = alongTheWay(
    length,
    distanceFrom === 'positions' ? latitude : counter,
    distanceFrom === 'positions' ? between : (one, other) => (counter[other] as number) - (counter[one] as number),
    breaks,
    [counter, time],
  );
  const track: Track = {
    distance,
    elevation: column('elevation'),
    time: time.map((value) => value - start),
    power: countOf(points.columns.power, all) > 0 ? column('power') : column('otherPower'),
    cadence: column('cadence'),
    heartRate: column('heartRate'),
    counter,
    breaks: [...breaks]
      .sort(([a], [b]) => a - b)
      .map(([index, why]) => ({
        index,
        why,
        seconds: (time[index] as number) - (time[index - 1] as number),
        apart: between(index - 1, index),
      })),
  };
  return {
    name,
    kind: isRide ? 'ride' : 'route',
    track,
    distanceFrom,
    crept: isRide && distanceFrom === 'positions' ? creptOf(track) : 0,
    device: options.device ?? {},
  };
}

function countOf(values: Float64Array, indices?: Int32Array): number {
  let count = 0;
  const length = indices?.length ?? values.length;
  for (let i = 0; i < length; i++) if (!Number.isNaN(values[indices ? (indices[i] as number) : i] as number)) count++;
  return count;
}

/** Position in a rising list of the first that is no smaller. */
function firstAt(rising: Int32Array, value: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((rising[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function addBreak(breaks: Map<number, Break['why']>, why: Break['why'], index: number, length: number): void {
  if (index > 0 && index < length && !breaks.has(index)) breaks.set(index, why);
}

function addSilences(breaks: Map<number, Break['why']>, time: Float64Array): void {
  const known = time.filter((value) => !Number.isNaN(value));
  const intervals = new Float64Array(Math.max(0, known.length - 1));
  for (let i = 0; i < intervals.length; i++) intervals[i] = (known[i + 1] as number) - (known[i] as number);
  const usual = intervals.sort()[intervals.length >> 1] ?? 0;
  const silence = Math.max(SILENCE, INTERVALS_OF_SILENCE * usual);
  let last = Number.NaN;
  for (let i = 0; i < time.length; i++) {
    const now = time[i] as number;
    if (now - last > silence) addBreak(breaks, 'silence', i, time.length);
    if (!Number.isNaN(now)) last = now;
  }
}

/**
 * The indices whose times rise, with the fewest left out: a single wrong clock reading costs one point, wherever it points to. Points
 * without a time stay. Longest rising subsequence, by the usual search for the smallest end of each length.
 */
function inOrder(time: Float64Array, indices: Int32Array, places: Int32Array, problems: Problems): Int32Array {
  let rises = true;
  for (let i = 0, last = Number.NEGATIVE_INFINITY; i < indices.length && rises; i++) {
    const now = time[indices[i] as number] as number;
    if (Number.isNaN(now)) continue;
    rises = now > last;
    last = now;
  }
  if (rises) return indices;

  const ends = new Int32Array(indices.length);
  const before = new Int32Array(indices.length).fill(-1);
  let longest = 0;
  const timeAt = (i: number): number => time[indices[i] as number] as number;
  for (let i = 0; i < indices.length; i++) {
    const now = timeAt(i);
    if (Number.isNaN(now)) continue;
    let low = 0;
    let high = longest;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (timeAt(ends[middle] as number) < now) low = middle + 1;
      else high = middle;
    }
    if (low > 0) before[i] = ends[low - 1] as number;
    // of two points of the same time the first stays
    if (low === longest || timeAt(ends[low] as number) !== now) ends[low] = i;
    longest = Math.max(longest, low + 1);
  }
  const stays = new Uint8Array(indices.length);
  for (let i = longest > 0 ? (ends[longest - 1] as number) : -1; i >= 0; i = before[i] as number) stays[i] = 1;
  let last = Number.NaN;
  return indices.filter((index, i) => {
    const now = timeAt(i);
    if (Number.isNaN(now)) return true;
    if (stays[i]) {
      last = now;
      return true;
    }
    const at = places[index] as number;
    if (now === last)
      problems.add('points of a time that was already there', at, 'A second point of the same time: it is left out.');
    else
      problems.add(
        'points whose time does not fit',
        at,
        'Its time does not lie between those before and after: the point is left out.',
      );
    return false;
  });
}

/** Without times: the indices of points that are not the same place as the point before. */
function moving(
  { latitude, longitude, counter }: Record<Column, Float64Array>,
  indices: Int32Array,
  places: Int32Array,
  problems: Problems,
): Int32Array {
  let last = -1;
  return indices.filter((index) => {
    const isRepeated =
      last >= 0 &&
      (Number.isNaN(latitude[index] as number)
        ? counter[index] === counter[last]
        : latitude[index] === latitude[last] && longitude[index] === longitude[last]);
    if (isRepeated)
      problems.add(
        'points that repeat the one before',
        places[index] as number,
        'It is the same place as the point before: left out.',
      );
    else last = index;
    return !isRepeated;
  });
}

/** Whether so many metres in the time between two points are a leap and no ride. */
const isLeap = (metres: number, seconds: number): boolean => metres > FASTEST * seconds;

/** The next index after `index` that has a value. */
function nextKnown(values: Float64Array, index: number): number {
  let next = index + 1;
  while (next < values.length && Number.isNaN(values[next] as number)) next++;
  return next;
}

/**
 * A counter that never falls or leaps: a value that does not fit those before and after is left out; where the counter goes on from
 * another value, it is carried on from the last.
 */
function mendCounter(counter: Float64Array, time: Float64Array, places: Int32Array, problems: Problems): void {
  let last = nextKnown(counter, -1);
  let carried = 0;
  if (fallsOften(counter)) {
    counter.fill(Number.NaN);
    problems.say('The distances beside the points fall too often to be counted from the start: they are not used.');
    return;
  }
  for (let i = nextKnown(counter, last); i < counter.length; i = nextKnown(counter, i)) {
    const step = (to: number): number => (counter[to] as number) + carried - (counter[last] as number);
    const isWrong = (to: number): boolean =>
      step(to) < 0 || isLeap(step(to), (time[to] as number) - (time[last] as number));
    if (isWrong(i)) {
      const next = nextKnown(counter, i);
      if (next < counter.length && !isWrong(next)) {
        counter[i] = Number.NaN;
        problems.add(
          'distances that do not fit',
          places[i] as number,
          'Its distance does not fit those before and after: it is left out.',
        );
        continue;
      }
      problems.add(
        'new starts of the distance',
        places[i] as number,
        'The distance starts anew: it is carried on from the point before.',
      );
      carried -= step(i);
    }
    // carried on by a rounded number, it could fall by the last digit
    counter[i] = Math.max((counter[i] as number) + carried, counter[last] as number);
    last = i;
  }
}

/** Some programs write the distance from point to point where others count from the start. */
function fallsOften(counter: Float64Array): boolean {
  let falls = 0;
  let steps = 0;
  let last = Number.NaN;
  for (const value of counter) {
    if (Number.isNaN(value)) continue;
    if (value < last) falls++;
    steps++;
    last = value;
  }
  return falls > 3 && falls > steps * MOST_FALLS;
}

/** A position that leaps away and back again is left out; where the track goes on elsewhere, it is interrupted. */
function leaveOutLeaps(
  at: {
    latitude: Float64Array;
    longitude: Float64Array;
    time: Float64Array;
    places: Int32Array;
    breaks: Map<number, Break['why']>;
  },
  between: (one: number, other: number) => number,
  problems: Problems,
): void {
  const { latitude, longitude, time, places, breaks } = at;
  const leaps = (one: number, other: number): boolean =>
    isLeap(between(one, other), (time[other] as number) - (time[one] as number));
  let last = nextKnown(latitude, -1);
  for (let i = nextKnown(latitude, last); i < latitude.length; i = nextKnown(latitude, i)) {
    if (!breaks.has(i) && leaps(last, i)) {
      const next = nextKnown(latitude, i);
      if (next < latitude.length && !leaps(last, next)) {
        latitude[i] = Number.NaN;
        longitude[i] = Number.NaN;
        problems.add(
          'positions that leap away',
          places[i] as number,
          'Its position leaps away and back again: the position is left out.',
        );
        continue;
      }
      problems.add(
        'leaps of the track',
        places[i] as number,
        'The track leaps to another place faster than anybody rides: nothing is counted between.',
      );
      addBreak(breaks, 'silence', i, latitude.length);
    }
    last = i;
  }
}

/**
 * m from the first point. Between two known points lies `step`, but nothing where the recording was interrupted between them. Points
 * without a place of their own are set between their neighbours by the first of the `guides` that is known all the way.
 */
function alongTheWay(
  length: number,
  known: Float64Array,
  step: (one: number, other: number) => number,
  breaks: ReadonlyMap<number, unknown>,
  guides: readonly Float64Array[],
): Float64Array {
  const distance = new Float64Array(length);
  let last = -1;
  let interrupted = false;
  for (let i = 0; i < length; i++) {
    interrupted ||= breaks.has(i);
    const reached = last < 0 ? 0 : (distance[last] as number);
    distance[i] = reached;
    if (Number.isNaN(known[i] as number)) continue;
    if (last >= 0 && !interrupted) {
      const metres = step(last, i);
      distance[i] = reached + metres;
      if (i > last + 1) fill(distance, last, i, guides);
    }
    last = i;
    interrupted = false;
  }
  return distance;
}

function fill(distance: Float64Array, from: number, to: number, guides: readonly Float64Array[]): void {
  const guide = guides.find((values) => {
    for (let i = from; i < to; i++) if (!((values[i + 1] as number) >= (values[i] as number))) return false;
    return (values[to] as number) > (values[from] as number);
  });
  const start = distance[from] as number;
  const metres = (distance[to] as number) - start;
  for (let i = from + 1; i < to; i++) {
    const share = guide
      ? ((guide[i] as number) - (guide[from] as number)) / ((guide[to] as number) - (guide[from] as number))
      : (i - from) / (to - from);
    // rounding must not let the distance fall at the end of the gap
    distance[i] = Math.min(start + metres * share, distance[to] as number);
  }
}

function creptOf({ distance, time }: Track): number {
  let crept = 0;
  for (let i = 1; i < distance.length; i++) {
    const metres = (distance[i] as number) - (distance[i - 1] as number);
    if (metres < CREEPING * ((time[i] as number) - (time[i - 1] as number))) crept += metres;
  }
  return crept;
}

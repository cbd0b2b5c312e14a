/**
 * Test days of our own making, whose motors are known: a seeded world with true values, ridden by the model's physics, and read by
 * instruments that are off by what is stated of them. Everything here is invented. Speeds are found by bisection, not by the code under test.
 */
import {
  type DayDoubts,
  type Factor,
  hillFromGain,
  normalDraw,
  randomSource,
  reduceDay,
  type TestDay,
  type TestRun,
} from '../../calculators/model/index.ts';

export interface Planted {
  day: TestDay;
  /** true motor power of the assisted bikes, W */
  motors: number[];
  /** their true times at the target power, as the day's meter reads it, s */
  times: number[];
}

export interface PlantedOptions {
  /** true motor power of each assisted bike, W */
  motors: readonly number[];
  /** kg, of each; all alike by default */
  masses?: readonly number[];
  /** on each assisted bike */
  runs: number;
  /** spread over the day, first and last first; 0 for none */
  controls: number;
  /** what the instruments, the bikes and the runs are off by: 95 % half-widths of normal errors */
  doubts: DayDoubts;
  factor?: Factor;
  /** of the rider's pacing about the target power, relative, as a standard deviation */
  pacing?: number;
  /** C_rr by which the tyres of two bikes may differ without anybody having said so, 95 % half-width */
  unlikeTyres?: number;
  /** … unless somebody has: each bike then has tyres of its own */
  tyresEntered?: boolean;
  /** change of C_rr from the first run to the last, relative to its mean */
  drift?: number;
  /** m/s, head wind that nobody entered */
  wind?: number;
}

const HALF = 1.959964;
const EFFICIENCY = 0.96;
const ROLLING = 0.028;
const DRAG_AREA = 0.45;
const DENSITY = 1.15;
const RIDER = 80;
const CONTROL_BIKE = 12;
const TARGET = 200;
const HILL = hillFromGain(1600, 168);
const GRAVITY = 9.80665;

/** Orders that bring each bike to each place: round by round one further on. */
const turned = <T>(list: readonly T[], by: number): T[] => list.map((_, i) => list[(i + by) % list.length] as T);

/** The bikes in the order of the day; −1 is a control run. */
export function orderOf(bikes: number, runs: number, controls: number): number[] {
  const order = Array.from({ length: runs }, (_, round) => turned([...Array(bikes).keys()], round)).flat();
  // first, last, then in between
  const places = [
    0,
    order.length,
    ...Array.from({ length: controls }, (_, i) => Math.round(((i + 1) * order.length) / controls)),
  ];
  const chosen = places.slice(0, controls).sort((a, b) => b - a);
  for (const place of chosen) order.splice(place, 0, -1);
  return order;
}

/** One day, drawn from `random`. */
export function plantedDay(random: () => number, options: PlantedOptions): Planted {
  const {
    motors,
    runs,
    controls,
    doubts,
    factor = 'bikes',
    pacing = 0.02,
    unlikeTyres = 0,
    tyresEntered = false,
    drift = 0,
    wind = 0,
  } = options;
  const off = (halfWidth: number): number => (halfWidth / HALF) * normalDraw(random);
  const masses = options.masses ?? motors.map(() => 20);
  // what is true, and what all runs share
  const meter = off(doubts.meterScale);
  const truth = {
    distance: HILL.distance * (1 + off(doubts.distance)),
    gain: HILL.gain * (1 + off(doubts.gain)),
    dragArea: DRAG_AREA + off(doubts.dragArea),
    rollingWithSpeed: off(doubts.rollingWithSpeed),
    efficiency: EFFICIENCY + off(doubts.efficiency),
    density: DENSITY * (1 + off(doubts.density)),
    headWind: wind + off(doubts.headWind),
    rider: RIDER + off(doubts.riderMass),
    rolling:
      controls > 0
        ? ROLLING
        : (doubts.rollingLow + doubts.rollingHigh) / 2 + off((doubts.rollingHigh - doubts.rollingLow) / 2),
  };
  const held = factor !== 'bikes';
  const shared = { mass: off(doubts.bikeMass), drive: off(doubts.efficiencyBetween) };
  const bike = (mass: number) => ({
    mass: mass + (held ? shared.mass : off(doubts.bikeMass)),
    drive: held ? shared.drive : off(doubts.efficiencyBetween),
    tyres: off(unlikeTyres / Math.SQRT2),
  });
  const bikes = masses.map(bike);
  const control = held ? { ...bike(masses[0] ?? Number.NaN) } : bike(CONTROL_BIKE);
  const sin = truth.gain / truth.distance;
  const cos = Math.sqrt(1 - sin * sin);
  /** speed at which a bike climbs with so much at the crank */
  const speed = (one: typeof control, power: number, progress = 0.5): number => {
    const weight = (truth.rider + one.mass) * GRAVITY;
    const needed = (v: number): number => {
      // rolling is stated at the speed of an unassisted climb
      const rolling =
        (truth.rolling * (1 + drift * (progress - 0.5)) + one.tyres) * (1 + truth.rollingWithSpeed * (v - 1.6));
      const u = v + truth.headWind;
      const force =
        weight * (sin + rolling * cos) + 0.091 + 0.0087 * v + 0.5 * truth.density * truth.dragArea * u * Math.abs(u);
      return (force * v) / (truth.efficiency + one.drive);
    };
    let [low, high] = [0, 30];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (needed(middle) < power) low = middle;
      else high = middle;
    }
    return low;
  };
  const order = orderOf(motors.length, runs, controls);
  const ridden = order.map((index, place): TestRun => {
    const one = index < 0 ? control : (bikes[index] as typeof control);
    const rider = TARGET * (1 + pacing * normalDraw(random));
    const total = (rider + (motors[index] ?? 0)) * (1 + off(doubts.scatter));
    const time = truth.distance / speed(one, total, place / (order.length - 1));
    return {
      bike: index < 0 ? (held ? 0 : motors.length) : index,
      assisted: index >= 0,
      time: time + off(doubts.stopwatch),
      riderPower: (rider * (1 + off(doubts.meterRepeatability))) / (1 + meter),
    };
  });
  const readBike = (mass: number, i = -1) => ({ mass, assistLimit: null, tyres: tyresEntered ? i : 0 });
  return {
    motors: [...motors],
    times: bikes.map((one, i) => truth.distance / speed(one, TARGET * (1 + meter) + (motors[i] ?? 0))),
    day: {
      factor,
      hill: HILL,
      density: DENSITY,
      headWind: 0,
      dragArea: DRAG_AREA,
      efficiency: EFFICIENCY,
      rolling: (doubts.rollingLow + doubts.rollingHigh) / 2,
      riderMass: RIDER,
      targetPower: TARGET,
      bikes: [...masses.map(readBike), ...(held ? [] : [readBike(CONTROL_BIKE)])],
      runs: ridden,
      gaugeStep: 0.01,
    },
  };
}

/** Two motors alike, the others anything. */
export function anyBikes(random: () => number): Pick<PlantedOptions, 'motors' | 'masses'> {
  const between = (low: number, high: number): number => low + (high - low) * random();
  const light = between(250, 400);
  return {
    motors: [light, light, between(350, 500), between(450, 700)],
    masses: [1, 2, 3, 4].map(() => between(16, 25)),
  };
}

export const EQUAL_BIKES = { motors: [400, 400, 400, 400], masses: [20, 20, 20, 20] };

/** Nothing is off but the runs themselves, by so much of total power (a standard deviation). */
export function onlyScatter(scatter: number): DayDoubts {
  return {
    meterScale: 0,
    meterRepeatability: 0,
    stopwatch: 0,
    riderMass: 0,
    bikeMass: 0,
    distance: 0,
    gain: 0,
    dragArea: 0,
    rollingLow: ROLLING,
    rollingHigh: ROLLING,
    tyres: 0,
    rollingWithSpeed: 0,
    efficiency: 0,
    efficiencyBetween: 0,
    density: 0,
    headWind: 0,
    scatter: HALF * scatter,
    battery: 0,
    targetRolling: 0,
  };
}

/** How often something held, of how many. */
export interface Count {
  held: number;
  of: number;
}

export const perCent = ({ held, of }: Count): number => held / of;

/** Three standard errors of the share that holds among so many independent trials, when it should be `expected`. */
export const threeErrors = (expected: number, of: number): number => 3 * Math.sqrt((expected * (1 - expected)) / of);

/** What many days showed. Lists are by bike or by pair, so that each count is of independent days. */
export interface Tally {
  days: number;
  motors: Count[];
  differences: Count[];
  times: Count[];
  timeDifferences: Count[];
  /** pairs of equal motors called different, and days with such a pair when all are equal */
  realAlone: Count;
  realAmongAll: Count;
  timeRealAlone: Count;
  timeRealAmongAll: Count;
  /** sums over the days: half-widths of the motors, W; relative scatter; days whose drift has a probability below 5 % */
  halfWidths: number[];
  scatter: number;
  drifting: number;
}

const count = (counts: Count[], i: number, holds: boolean): void => {
  const { held, of } = counts[i] ?? { held: 0, of: 0 };
  counts[i] = { held: held + (holds ? 1 : 0), of: of + 1 };
};

/** Draws and reduces days, and compares with what is true. @param stated doubts that the reduction is told */
export function countDays(
  days: number,
  options: (random: () => number) => PlantedOptions,
  stated?: DayDoubts,
  seed = 1,
): Tally {
  const random = randomSource(seed);
  const motors: Count[] = [];
  const differences: Count[] = [];
  const times: Count[] = [];
  const timeDifferences: Count[] = [];
  const wrong: Count[] = [];
  const tally = { halfWidths: [] as number[], scatter: 0, drifting: 0 };
  for (let i = 0; i < days; i++) {
    const chosen = options(random);
    const planted = plantedDay(random, chosen);
    const { bikes, pairs, scatter, drift } = reduceDay(planted.day, stated ?? chosen.doubts);
    const holds = (estimate: { low: number; high: number } | undefined, truth: number): boolean =>
      estimate !== undefined && truth >= estimate.low && truth <= estimate.high;
    planted.motors.forEach((motor, bike) => {
      const { motorPower, time } = bikes[bike] ?? {};
      count(motors, bike, holds(motorPower, motor));
      count(times, bike, holds(time, planted.times[bike] ?? Number.NaN));
      tally.halfWidths[bike] = (tally.halfWidths[bike] ?? 0) + ((motorPower?.high ?? 0) - (motorPower?.low ?? 0)) / 2;
    });
    pairs.forEach((pair, k) => {
      const apart = (values: number[]): number => (values[pair.second] ?? 0) - (values[pair.first] ?? 0);
      count(differences, k, holds(pair.motorPower.difference, apart(planted.motors)));
      count(timeDifferences, k, holds(pair.time.difference, apart(planted.times)));
      if (apart(planted.motors) !== 0) return;
      count(wrong, 0, pair.motorPower.realAlone);
      count(wrong, 2, pair.time.realAlone);
    });
    count(
      wrong,
      1,
      pairs.some(({ motorPower }) => motorPower.realAmongAll),
    );
    count(
      wrong,
      3,
      pairs.some(({ time }) => time.realAmongAll),
    );
    tally.scatter += scatter.relative;
    if (drift && drift.probability < 0.05) tally.drifting++;
  }
  const none: Count = { held: 0, of: 0 };
  const [realAlone = none, realAmongAll = none, timeRealAlone = none, timeRealAmongAll = none] = wrong;
  return {
    days,
    motors,
    differences,
    times,
    timeDifferences,
    realAlone,
    realAmongAll,
    timeRealAlone,
    timeRealAmongAll,
    ...tally,
  };
}

import {
  airDensity,
  type Climb,
  type DayDoubts,
  type Estimate,
  forwardAndBack,
  hillFromGain,
  type Order,
  type ReducedPair,
  type Reduction,
  reduceDay,
  rideClimb,
  studentizedRangeCdf,
  studentizedRangeQuantile,
  type TestBike,
  type TestDay,
  type TestRun,
  tQuantile,
} from '../calculators/model/index.ts';
import { formatQuantity, formatRange, type Kind } from '../calculators/quantities/index.ts';
import { COVERAGE, DAY_DOUBTS } from '../calculators/scenario/doubts.ts';
import { defaultOf } from '../calculators/scenario/vocabulary.ts';

/*
 * Invented test days for the pages on testing. Their times are those of the model with known motors, spread about them by a stated
 * scatter, so that a page can say what a test of each kind would have found and how surely. The hill and three of the bikes are those
 * of the example on the page that takes a test day.
 */

export const HILL = hillFromGain(1500, 150);
export const RIDER = 82;
export const TARGET_POWER = 200;
/** C_rr of the ground, which no tester knows. */
const GROUND = 0.026;

/** A bike of the test with the motor that it really has, W. */
export interface PlantedBike {
  name: string;
  mass: number;
  motor: number;
}

export const LIGHT: PlantedBike = { name: 'Light', mass: 18.6, motor: 290 };
export const OTHER_LIGHT: PlantedBike = { name: 'Other light', mass: 18.9, motor: 311 };
export const MID: PlantedBike = { name: 'Mid', mass: 22.9, motor: 440 };
export const FULL: PlantedBike = { name: 'Full', mass: 24.7, motor: 590 };
/** Without a motor; the control runs are ridden on it. */
export const CONTROL: PlantedBike = { name: 'Control', mass: 12.4, motor: 0 };

/** How the day was ridden, and what it was like. */
export interface Riding {
  bikes: readonly PlantedBike[];
  /** assisted runs on each bike */
  repeats: number;
  /** runs without assistance on the control bike, half of them before and half after the others */
  controls: number;
  /** standard deviation from run to run, relative to total power */
  scatter: number;
  /** bikes with a number of their own roll on tyres of their own; the control bike has number 0 */
  tyres?: readonly number[];
  /** motor-off runs on each bike with a motor */
  motorOff?: number;
}

const setting = {
  hill: HILL,
  density: airDensity(600, 18),
  headWind: 0,
  dragArea: Number(defaultOf('climb-time', 'drag')),
  efficiency: Number(defaultOf('climb-time', 'drive')),
};

/** A ride of that bike on the hill, with `factor` on its total power. */
export function ridden({ mass, motor }: PlantedBike, riderPower: number, factor = 1): number {
  const climb: Climb = {
    ...setting,
    mass: RIDER + mass,
    rolling: GROUND,
    riderPower,
    motorPower: factor * (riderPower + motor) - riderPower,
    assistLimit: null,
  };
  return rideClimb(climb).time;
}

/** `count` values about nothing whose standard deviation is 1, high and low in turn. */
function spread(count: number): number[] {
  if (count < 2) return Array.from({ length: count }, () => 0);
  const even = Array.from({ length: count }, (_, i) => i - (count - 1) / 2);
  const size = Math.sqrt(even.reduce((sum, x) => sum + x * x, 0) / (count - 1));
  const turns = even.toSorted((a, b) => Math.abs(b) - Math.abs(a));
  return turns.map((x) => x / size);
}

/** The day as it would be written down: control runs first and last, the bikes forward and back between them. */
export function dayOf({ bikes, repeats, controls, scatter, tyres = [], motorOff = 0 }: Riding): TestDay {
  const all = [CONTROL, ...bikes];
  const run = (bike: number, assisted: boolean, spreads: readonly number[], round: number): TestRun => {
    const planted = all[bike] ?? CONTROL;
    const factor = 1 + scatter * (spreads[round] ?? 0);
    const time = ridden(assisted ? planted : { ...planted, motor: 0 }, TARGET_POWER, factor);
    return { bike, assisted, time, riderPower: TARGET_POWER };
  };
  const numbers = bikes.map((_, i) => i + 1);
  const rounds = (count: number, assisted: boolean): TestRun[] => {
    const spreads = spread(count);
    return Array.from({ length: count }, (_, round) =>
      (round % 2 === 0 ? numbers : numbers.toReversed()).map((bike) => run(bike, assisted, spreads, round)),
    ).flat();
  };
  const controlRuns = spread(controls).map((_, i, spreads) => run(0, false, spreads, i));
  const first = Math.ceil(controls / 2);
  const testBikes: TestBike[] = all.map(({ mass }, i) => ({
    mass,
    assistLimit: null,
    tyres: i === 0 ? 0 : (tyres[i - 1] ?? 0),
  }));
  return {
    ...setting,
    factor: 'bikes',
    rolling: Number(defaultOf('climb-time', 'rolling')),
    riderMass: RIDER,
    targetPower: TARGET_POWER,
    bikes: testBikes,
    runs: [
      ...controlRuns.slice(0, first),
      ...rounds(motorOff, false),
      ...rounds(repeats, true),
      ...controlRuns.slice(first),
    ],
    gaugeStep: 0.01,
  };
}

/** What the site takes for one run to the next, as a standard deviation; and half of it, for a careful rider in still air. */
const ORDINARY_SCATTER = DAY_DOUBTS.scatter / COVERAGE;
const CAREFUL_SCATTER = ORDINARY_SCATTER / 2;
/** ±1 % at 95 %: checked with hung weights before and after. */
const CHECKED_METER = 0.01;

/** Four bikes, three runs on each, a control run first and last. */
export const ordinary: Riding = {
  bikes: [LIGHT, OTHER_LIGHT, MID, FULL],
  repeats: 3,
  controls: 2,
  scatter: ORDINARY_SCATTER,
};

export const ordinaryDay = dayOf(ordinary);
/** The same day as if nobody had ridden a control run. */
const uncontrolledDay: TestDay = { ...ordinaryDay, runs: ordinaryDay.runs.filter(({ assisted }) => assisted) };
/** The same with other tyres on each bike. */
export const unlikeTyres: Riding = { ...ordinary, tyres: [1, 2, 3, 4] };

/** One of the bikes is at this place of a day of `ordinary`. */
const placeOf = (bike: PlantedBike): number => 1 + ordinary.bikes.indexOf(bike);

export const reduced = reduceDay(ordinaryDay, DAY_DOUBTS);
/** The same with an Other light that is only 12 W above Light. */
export const closer = reduceDay(
  dayOf({ ...ordinary, bikes: [LIGHT, { ...OTHER_LIGHT, motor: LIGHT.motor + 12 }, MID, FULL] }),
  DAY_DOUBTS,
);
export const uncontrolled = reduceDay(uncontrolledDay, DAY_DOUBTS);
export const withUnlikeTyres = reduceDay(dayOf(unlikeTyres), DAY_DOUBTS);

/** Half of a 95 % range. */
export const halfWidth = ({ low, high }: Estimate): number => (high - low) / 2;

/** A value with its range: "290 W (270 to 310 W)". */
export function estimateText({ value, low, high }: Estimate, kind: Kind): string {
  return `${formatQuantity(value, kind, 'metric')} (${formatRange(low, high, kind, 'metric')})`;
}

/** What the day says of a bike’s motor. */
export function motorOf({ bikes }: Reduction, bike: PlantedBike): Estimate {
  const motor = bikes[placeOf(bike)]?.motorPower;
  if (!motor) throw new Error(`“${bike.name}” has no motor on this day.`);
  return motor;
}

/** What the day says of two bikes; the first is the slower one. */
export function pairOf({ pairs }: Reduction, slower: PlantedBike, faster: PlantedBike): ReducedPair {
  const pair = pairs.find(({ first, second }) => first === placeOf(slower) && second === placeOf(faster));
  if (!pair) throw new Error(`“${slower.name}” and “${faster.name}” are no pair of this day.`);
  return pair;
}

/** How far the first bike is behind, s. */
export function behind({ time: { difference } }: ReducedPair): Estimate {
  const { value, low, high } = difference;
  return { ...difference, value: -value, low: -high, high: -low };
}

/** Mid’s motor when one thing about the day is taken to be otherwise than it is. */
export const mistaken = (change: Partial<TestDay>): Estimate =>
  motorOf(reduceDay({ ...ordinaryDay, ...change }, DAY_DOUBTS), MID);

/** The bikes of the day, Mid heavier by so many kg. */
export const midHeavierBy = (more: number): TestBike[] =>
  ordinaryDay.bikes.map((bike, i) => (i === placeOf(MID) ? { ...bike, mass: bike.mass + more } : bike));

/** s that a run loses when the rider gives so much of the target power less; `follows`: the motor gives as much less. */
export function lostBy(bike: PlantedBike, less: number, follows = false): number {
  const share = 1 - less / TARGET_POWER;
  const motor = follows ? bike.motor * share : bike.motor;
  return ridden({ ...bike, motor }, TARGET_POWER * share) - ridden(bike, TARGET_POWER);
}

/** s by which the second of two equal bikes seems slower, when each run is weaker than the last by `drift` of total power. */
export function seemsSlower(order: Order, drift: number): number {
  const mean = (bike: number): number => {
    const places = order.flat().flatMap((each, place) => (each === bike ? [place] : []));
    return places.reduce((sum, place) => sum + ridden(MID, TARGET_POWER, 1 - drift * place), 0) / places.length;
  };
  return mean(1) - mean(0);
}
/** A, B, A, B and A, B, B, A. */
export const ABAB: Order = [
  [0, 1],
  [0, 1],
];
export const ABBA: Order = forwardAndBack(2, 2);

/** 95 % half-width, W, that one doubt alone would give: to Light’s motor, and to its difference from another bike. */
export function alone(doubts: Partial<DayDoubts>, riding: Riding = ordinary): (other?: PlantedBike) => number {
  const nothing = Object.fromEntries(Object.keys(DAY_DOUBTS).map((name) => [name, 0])) as unknown as DayDoubts;
  const { rolling } = ordinaryDay;
  const day = dayOf({ ...riding, scatter: 0 });
  const reduction = reduceDay(day, { ...nothing, rollingLow: rolling, rollingHigh: rolling, ...doubts });
  return (other) =>
    halfWidth(other ? pairOf(reduction, LIGHT, other).motorPower.difference : motorOf(reduction, LIGHT));
}

/** Degrees of freedom of the day’s scatter. */
const { freedom } = reduced.scatter;
/** How likely so many equal bikes show a difference somewhere, when each pair is judged as if it were the only one. */
export const falseAmong = (bikes: number): number =>
  1 - studentizedRangeCdf(Math.SQRT2 * tQuantile(0.975, freedom), bikes, freedom);
/** How much wider a range has to be when all pairs of so many bikes are ranked. */
export const widerAmong = (bikes: number): number =>
  studentizedRangeQuantile(0.95, bikes, freedom) / Math.SQRT2 / tQuantile(0.975, freedom);

/** A kind of test: how it is ridden, and what is in doubt otherwise than usual. */
interface TestKind {
  name: string;
  riding: Riding;
  doubts?: Partial<DayDoubts>;
}

/** Nothing but scales, watch, measured hill and meter. */
const INSTRUMENTS: Partial<DayDoubts> = {
  rollingWithSpeed: 0,
  efficiency: 0,
  efficiencyBetween: 0,
  density: 0,
  headWind: 0,
  dragArea: 0,
};

const tests: readonly TestKind[] = [
  {
    name: 'Instruments alone, meter ±1\u202f%, one control run',
    riding: { ...ordinary, controls: 1, scatter: 0 },
    doubts: { ...INSTRUMENTS, meterScale: CHECKED_METER },
  },
  {
    name: 'Good practice: meter ±1\u202f%, still air, half the scatter, 4\u00a0runs, 4\u00a0control runs',
    riding: { ...ordinary, repeats: 4, controls: 4, scatter: CAREFUL_SCATTER },
    doubts: { meterScale: CHECKED_METER, headWind: 0.2 },
  },
  { name: 'Ordinary day: 3\u00a0runs, 2\u00a0control runs', riding: ordinary },
  { name: 'The same, 6\u00a0runs, 4\u00a0control runs', riding: { ...ordinary, repeats: 6, controls: 4 } },
  { name: 'Ordinary day, unlike tyres', riding: unlikeTyres },
  { name: 'The same, 2\u00a0motor-off runs on each bike', riding: { ...unlikeTyres, motorOff: 2 } },
  { name: 'Ordinary day, no control run', riding: { ...ordinary, controls: 0 } },
];

/** What a test of each kind can know: 95 % half-widths, W, of motors and of how far they lie above Light’s. */
export const errorBudget = tests.map(({ name, riding, doubts }) => {
  const reduction = reduceDay(dayOf(riding), { ...DAY_DOUBTS, ...doubts });
  return {
    name,
    motors: [LIGHT, MID, FULL].map((bike) => halfWidth(motorOf(reduction, bike))),
    differences: [OTHER_LIGHT, FULL].map((bike) => halfWidth(pairOf(reduction, LIGHT, bike).motorPower.difference)),
  };
});

import { BEARINGS_CONSTANT, BEARINGS_PER_SPEED, GRAVITY } from '../constants.ts';
import { drivenSpeed } from '../motor.ts';
import { crankPower, type Load, resistanceOf } from '../resistance.ts';
import { type DayErrors, noErrors } from './dayErrors.ts';
import type { SortedBike, SortedDay, SortedRun, TyreGroup } from './sortDay.ts';

/*
 * From the runs of a day to what they say, if every reading is off by the errors that are given. Ranges come from asking again with other
 * errors: `reduce.ts` tries them one after the other, `sampleDay.ts` by chance.
 */

/** What is settled before errors are tried, so that none of them flips it. */
export interface DayJudgement {
  /** weight of each run in the calibration, 1/N² */
  weights: readonly number[];
  /** weight of the prior of C_dA, 1/m⁴ */
  dragWeight: number;
  bikes: readonly BikeJudgement[];
}

export interface BikeJudgement {
  /** support × rider power holds the motor back */
  followsRider: boolean;
  /** the mean run lies in the fade before the limit, and so shows where it begins with this motor */
  insideFade: boolean;
  /** the mean run lies above the limit with a motor that helps, so the limit is another */
  aboveLimit: boolean;
}

/** C_rr as it was at some speed, m/s; NaN where nothing tells at which, and then it is the same at all. */
export interface RollingAtSpeed {
  value: number;
  speed: number;
}

export interface DayCalibration {
  /** by tyres */
  rolling: readonly RollingAtSpeed[];
  /** mean of the calibrated tyres */
  common: RollingAtSpeed;
  /** m² */
  dragArea: number;
}

export interface RunResult {
  /** W at the crank that belongs to its time */
  totalPower: number;
  /** W, the reading corrected */
  riderPower: number;
  motorPower: number;
  /** m/s */
  speed: number;
}

/** What a day says of a bike. */
export const FIGURES = ['motorPower', 'time', 'speed', 'targetTime', 'batteryEnergy', 'efficiency'] as const;

/** In the units of `ReducedBike`. What cannot be told is NaN, a time that never ends Infinity. */
export type BikeResult = Record<(typeof FIGURES)[number], number>;

export interface DayResults {
  calibration: DayCalibration;
  runs: readonly RunResult[];
  /** by bike; null without an assisted run */
  bikes: readonly (BikeResult | null)[];
}

/** Everything that one asking needs. */
interface Asked {
  sorted: SortedDay;
  judgement: DayJudgement;
  errors: DayErrors;
}

/** Calibrates the hill, infers each run's motor, takes the mean of each bike, normalises and carries it. */
export function dayResults(sorted: SortedDay, judgement: DayJudgement, errors: DayErrors): DayResults {
  const asked = { sorted, judgement, errors };
  const calibration = calibrateDay(asked);
  const runs = sorted.runs.map((run) => inferRun(asked, calibration, run));
  const bikes = sorted.bikes.map((bike) => (bike.runs.length > 0 ? bikeResult(asked, calibration, bike, runs) : null));
  return { calibration, runs, bikes };
}

/** m along the road, as corrected */
const distanceOf = ({ sorted, errors }: Asked): number => sorted.day.hill.distance * (1 + errors.distance);

/** What a bike meets on the measured hill, rolling resistance apart. */
function loadOnHill({ sorted, errors }: Asked, bike: number, riderMass: number, headWind: number): Load {
  const { hill, density, dragArea, bikes } = sorted.day;
  const sin = Math.min(1, (hill.sin * (1 + errors.gain)) / (1 + errors.distance));
  return {
    mass: riderMass + errors.riderMass + (bikes[bike]?.mass ?? Number.NaN) + (errors.bikeMass[bike] ?? 0),
    sin,
    cos: Math.sqrt(1 - sin * sin),
    rolling: 0,
    dragArea,
    density: density * (1 + errors.density),
    headWind: headWind + errors.headWind,
    bearings: true,
  };
}

function loadOfRun(asked: Asked, { run, bikeIndex }: SortedRun): Load {
  const { riderMass, headWind } = asked.sorted.day;
  return loadOnHill(asked, bikeIndex, run.riderMass ?? riderMass, run.headWind ?? headWind);
}

const driveOf = ({ sorted, errors }: Asked, bike: number): number =>
  sorted.day.efficiency + errors.efficiency + (errors.efficiencyBetween[bike] ?? 0);

const readingOf = ({ errors }: Asked, power: number): number => power * (1 + errors.meterScale);

/** Step 1: C_rr of each tyres and one C_dA, by weighted least squares over the control runs, the prior of C_dA one more observation. */
function calibrateDay(asked: Asked): DayCalibration {
  const { sorted, judgement, errors } = asked;
  const sums = sorted.groups.map((group) => (group.controls.length > 0 ? sumsOf(asked, group) : null));
  // the normal equations with each C_rr eliminated: what is left is one line for C_dA
  let weight = judgement.dragWeight;
  let weighted = judgement.dragWeight * (sorted.day.dragArea + errors.dragArea);
  for (const sum of sums) {
    if (!sum) continue;
    weight += sum.aa - (sum.ra * sum.ra) / sum.rr;
    weighted += sum.ay - (sum.ra * sum.ry) / sum.rr;
  }
  const dragArea = weighted / weight;
  const seen = sums.map((sum) => sum && { value: (sum.ry - sum.ra * dragArea) / sum.rr, speed: sum.speed });
  const known = seen.filter((one) => one !== null);
  const mean = (of: (one: RollingAtSpeed) => number): number =>
    known.reduce((sum, one) => sum + of(one), 0) / known.length;
  const common = sorted.isCalibrated
    ? { value: mean(({ value }) => value), speed: mean(({ speed }) => speed) }
    : { value: sorted.day.rolling + errors.rolling, speed: Number.NaN };
  const rolling = seen.map((one, i) => one ?? { ...common, value: common.value + (errors.tyres[i] ?? 0) });
  return { rolling, common, dragArea };
}

/**
 * Sums of the normal equations: each control run says `η P / v − m g sin θ − bearings = m g cos θ · C_rr + ½ ρ u|u| · C_dA`
 * (r and a stand for the factors of the two unknowns, y for the left side).
 */
function sumsOf(asked: Asked, group: TyreGroup) {
  const { errors, judgement } = asked;
  const distance = distanceOf(asked);
  const speed = meanOver(group.controls, ({ run }) => distance / run.time);
  const sum = { rr: 0, ra: 0, aa: 0, ry: 0, ay: 0, speed };
  for (const sortedRun of group.controls) {
    const { run, index, bikeIndex } = sortedRun;
    const load = loadOfRun(asked, sortedRun);
    const v = distance / run.time;
    const u = v + load.headWind;
    const power = readingOf(asked, run.riderPower) * (1 + (errors.runs[index] ?? 0));
    const weight = load.mass * GRAVITY;
    const y = (driveOf(asked, bikeIndex) * power) / v - weight * load.sin - BEARINGS_CONSTANT - BEARINGS_PER_SPEED * v;
    const r = weight * load.cos * (1 + errors.rollingWithSpeed * (v - speed));
    const a = 0.5 * load.density * u * Math.abs(u);
    const w = judgement.weights[index] ?? 0;
    sum.rr += w * r * r;
    sum.ra += w * r * a;
    sum.aa += w * a * a;
    sum.ry += w * r * y;
    sum.ay += w * a * y;
  }
  return sum;
}

/** C_rr of these tyres at a speed. Where tyres are what is compared, one value for all: what they are worth then shows as motor power. */
function rollingAt(asked: Asked, calibration: DayCalibration, tyres: number, speed: number, compared = true): number {
  const { sorted, errors } = asked;
  const own = compared && sorted.day.factor === 'tyres' ? calibration.common : calibration.rolling[tyres];
  if (!own) return Number.NaN;
  return Number.isNaN(own.speed) ? own.value : own.value * (1 + errors.rollingWithSpeed * (speed - own.speed));
}

/** Step 2: `P_motor = P_crank(v) − P_rider` of one run. */
function inferRun(asked: Asked, calibration: DayCalibration, sortedRun: SortedRun): RunResult {
  const { run, index, bikeIndex, tyreIndex } = sortedRun;
  const speed = distanceOf(asked) / run.time;
  const load = loadOfRun(asked, sortedRun);
  load.rolling = rollingAt(asked, calibration, tyreIndex, speed, run.assisted);
  load.dragArea = calibration.dragArea;
  // what a control run is off by is in its calibration
  const off = run.assisted ? (asked.errors.runs[index] ?? 0) : 0;
  const totalPower = crankPower(resistanceOf(load), speed, driveOf(asked, bikeIndex)) * (1 + off);
  const riderPower = readingOf(asked, run.riderPower);
  return { totalPower, riderPower, motorPower: totalPower - riderPower, speed };
}

/** Mean over runs; not a number where there is none, or one has none. */
export function meanOver(runs: readonly SortedRun[], of: (run: SortedRun) => number | undefined): number {
  return runs.reduce((sum, run) => sum + (of(run) ?? Number.NaN), 0) / runs.length;
}

function meanRun(runs: readonly SortedRun[], results: readonly RunResult[]): RunResult {
  const mean = (of: keyof RunResult): number => meanOver(runs, ({ index }) => results[index]?.[of]);
  return {
    totalPower: mean('totalPower'),
    riderPower: mean('riderPower'),
    motorPower: mean('motorPower'),
    speed: mean('speed'),
  };
}

function bikeResult(
  asked: Asked,
  calibration: DayCalibration,
  bike: SortedBike,
  runs: readonly RunResult[],
): BikeResult {
  const mean = meanRun(bike.runs, runs);
  const judged = asked.judgement.bikes[bike.index] ?? SATURATED;
  const time = timeAtTarget(asked, calibration, bike, mean, judged);
  return {
    motorPower: mean.motorPower,
    time,
    speed: distanceOf(asked) / time,
    targetTime: timeOnTarget(asked, calibration, bike, mean, judged),
    ...batteryOf(asked, bike, runs),
  };
}

/** Step 3: time, s, on the measured hill at the target power, the day's rider on the bike, its motor as `ridden` shows it. */
function timeAtTarget(
  asked: Asked,
  calibration: DayCalibration,
  bike: SortedBike,
  ridden: RunResult,
  judged = NO_LIMIT,
) {
  const { targetPower, riderMass, headWind } = asked.sorted.day;
  const load = loadOnHill(asked, bike.index, riderMass, headWind);
  load.rolling = rollingAt(asked, calibration, bike.tyreIndex, ridden.speed, judged !== NO_LIMIT);
  load.dragArea = calibration.dragArea;
  // the target is a reading of the same meter
  return timeUp(asked, bike, ridden, load, distanceOf(asked), readingOf(asked, targetPower), judged);
}

/** A motor that gives the same whatever the rider and the limit do: the judgement before anything is judged. */
const SATURATED: BikeJudgement = { followsRider: false, insideFade: false, aboveLimit: false };

/** A control run has no motor that anything could hold back. */
const NO_LIMIT: BikeJudgement = { followsRider: false, insideFade: false, aboveLimit: true };

/** Each run's own time at the target power, s, with nothing off. */
export function runTimesAtTarget(sorted: SortedDay, judgement: DayJudgement, results: DayResults): number[] {
  const asked = { sorted, judgement, errors: noErrors() };
  return sorted.runs.map(({ run, index, bikeIndex }) => {
    const bike = sorted.bikes[bikeIndex];
    const ridden = results.runs[index];
    if (!bike || !ridden) return Number.NaN;
    return timeAtTarget(asked, results.calibration, bike, ridden, run.assisted ? judgement.bikes[bikeIndex] : NO_LIMIT);
  });
}

/** Step 7: time, s, on the other hill. More of the measured hill shares its errors, another is taken as it is said to be. */
function timeOnTarget(
  asked: Asked,
  calibration: DayCalibration,
  bike: SortedBike,
  ridden: RunResult,
  judged: BikeJudgement,
): number {
  const { sorted, errors } = asked;
  const { target, targetPower } = sorted.day;
  if (!target) return Number.NaN;
  const load = loadOnHill(asked, bike.index, target.riderMass, target.headWind);
  load.rolling = (target.rolling ?? rollingAt(asked, calibration, bike.tyreIndex, ridden.speed)) + errors.targetRolling;
  load.dragArea = calibration.dragArea;
  load.density = target.density * (1 + errors.density);
  if (!sorted.carriesRolling) {
    load.sin = target.hill.sin;
    load.cos = target.hill.cos;
    load.headWind = target.headWind;
  }
  const distance = target.hill.distance * (sorted.carriesRolling ? 1 + errors.distance : 1);
  // the same power is the same reading of the same meter; a figure of its own is taken as true
  const power = target.riderPower === targetPower ? readingOf(asked, target.riderPower) : target.riderPower;
  return timeUp(asked, bike, ridden, load, distance, power, judged);
}

function timeUp(
  asked: Asked,
  bike: SortedBike,
  ridden: RunResult,
  load: Load,
  distance: number,
  power: number,
  judged: BikeJudgement,
): number {
  const limit = judged.aboveLimit ? null : bike.bike.assistLimit;
  const drive = {
    riderPower: power,
    motorPower: motorAt(bike, ridden, power, judged.followsRider),
    efficiency: driveOf(asked, bike.index),
    assistLimit: limit,
  };
  // a run inside the fade began its own where it was ridden
  const fade = judged.insideFade && limit !== null && limit > ridden.speed ? { fadeWidth: limit - ridden.speed } : {};
  return distance / drivenSpeed(resistanceOf(load), { ...drive, ...fade });
}

/** Motor, W, at another rider power: it follows a rider whom it multiplies, and else stays until support × rider power is less. */
function motorAt({ bike }: SortedBike, ridden: RunResult, power: number, followsRider: boolean): number {
  if (followsRider) return (ridden.motorPower * power) / ridden.riderPower;
  const { support } = bike;
  const holds = support !== undefined && ridden.motorPower <= support * ridden.riderPower;
  return holds ? Math.min(ridden.motorPower, support * power) : ridden.motorPower;
}

/** Step 6: energy, J, from the battery for one climb by its gauge, and the motor's work over it. */
function batteryOf({ errors }: Asked, { index, bike, gauge }: SortedBike, results: readonly RunResult[]) {
  if (!gauge || bike.usableEnergy === undefined) return { batteryEnergy: Number.NaN, efficiency: Number.NaN };
  const full = bike.usableEnergy * (1 + (errors.battery[index] ?? 0));
  const batteryEnergy = full * (gauge.share + (errors.gauge[index] ?? 0));
  const work = meanOver(gauge.runs, (run) => (results[run.index]?.motorPower ?? Number.NaN) * run.run.time);
  return { batteryEnergy, efficiency: work / batteryEnergy };
}

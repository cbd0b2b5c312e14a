import type { Estimate, ReducedBike, ReducedPair, Reduction, TestDay } from '../model/day/day.ts';
import { reduceDay } from '../model/day/reduce.ts';
import { exact, none, type Outcome, type Result, ranged } from '../scenario/outcome.ts';
import type { DayDocument } from './document.ts';
import { type DayReading, readDay } from './read.ts';
import { dayResultKind, dayResultNames } from './results.ts';

/** What a test day answers: results under their public names, and what sentences and charts need. */
export interface DayOutcome extends Outcome {
  reading: DayReading;
  /** for each bike of the day its place in the document, from 1: `data-bike` */
  numbers: readonly number[];
  /** absent while there is nothing to reduce; `reading.missing` says why */
  about?: About;
}

export interface About {
  day: TestDay;
  reduction: Reduction;
}

const NO_ASSISTED = 'No assisted run of this bike counts.';
const STANDS_STILL = 'At the target power this bike would stand still.';
const NO_GAUGE = 'This needs the battery’s energy and gauge readings before and after a run.';
const NO_TARGET = 'No other hill was entered.';
const TARGET_STANDS = 'This bike does not get up the other hill with that power.';
const NO_DRAG = 'The control runs do not tell drag from rolling.';
const NO_DRIFT = 'Too few runs to see a drift.';
const NO_MASS = 'This bike’s mass is not filled in.';
/** Also the `reason` of `runs-needed` without a value. */
export const NO_NUMBER = 'No number of runs would show it.';

/** Reads and reduces a test day. Never throws; what has no value has a reason. */
export function dayOutcome(document: DayDocument): DayOutcome {
  const reading = readDay(document);
  const numbers = reading.bikeIds.map((id) => 1 + document.bikes.findIndex((bike) => bike.id === id));
  const { day, doubts } = reading;
  if (!day) return { results: withoutDay(document, reading.missing), reading, numbers };
  const reduction = reduceDay(day, doubts);
  const unread = document.bikes.flatMap(({ id }, i) => (reading.bikeIds.includes(id) ? [] : [i + 1]));
  return {
    results: [
      ...reduction.bikes.flatMap((bike, i) =>
        isControlOnly(day, reading, i) ? [] : bikeResults(bike, numbers[i] ?? 0, day),
      ),
      ...unread.flatMap((number) => withoutBike(number, NO_MASS)),
      ...reduction.pairs.flatMap((pair) => pairResults(pair, numbers)),
      ...dayResults(day, reduction, numbers),
    ],
    reading,
    numbers,
    about: { day, reduction },
  };
}

/** A bike without a motor, or one that was only ridden with it off, tells the hill and has no result of its own. */
function isControlOnly({ runs }: TestDay, { claimedMotors }: DayReading, bike: number): boolean {
  const own = runs.filter((run) => run.bike === bike);
  return own.every(({ assisted }) => !assisted) && (own.length > 0 || claimedMotors[bike] === null);
}

/** Every result of a bike but its number of runs, for want of a value. */
const withoutBike = (number: number, reason: string): Result[] =>
  dayResultNames.flatMap(({ name, kind, of }) =>
    of === 'bike' && name !== 'runs' ? [none(name, kind, reason, number)] : [],
  );

const withoutDay = (document: DayDocument, reason: string): Result[] => [
  ...document.bikes.flatMap((_, i) => withoutBike(i + 1, reason)),
  ...dayResultNames.flatMap(({ name, kind, of }) => (of === 'tyres' || of === 'day' ? [none(name, kind, reason)] : [])),
];

/** An estimate as a result; `floor` is what it cannot be below. */
function estimated(
  name: string,
  estimate: Estimate | undefined,
  reason: string,
  bike?: number,
  floor?: number,
): Result {
  const kind = dayResultKind(name);
  return estimate
    ? ranged(name, kind, { ...estimate, causes: [] }, reason, bike, floor)
    : none(name, kind, reason, bike);
}

function bikeResults(bike: ReducedBike, number: number, { hill, target }: TestDay): Result[] {
  const runs = exact('runs', 'count', bike.runs, '', number);
  if (!bike.motorPower) return [runs, ...withoutBike(number, NO_ASSISTED)];
  const noTarget = target ? TARGET_STANDS : NO_TARGET;
  const ratio = target && hill.gain > 0 && target.hill.gain > 0 ? target.hill.gain / hill.gain : Number.NaN;
  return [
    runs,
    estimated('time', bike.time, STANDS_STILL, number, 0),
    estimated('speed', bike.speed, STANDS_STILL, number, 0),
    estimated('motor-power', bike.motorPower, NO_ASSISTED, number),
    exact('correction', 'seconds', bike.correction ?? Number.NaN, STANDS_STILL, number),
    estimated('battery-energy', bike.batteryEnergy, NO_GAUGE, number, 0),
    estimated('implied-efficiency', bike.efficiency, NO_GAUGE, number),
    estimated('target-time', bike.targetTime, noTarget, number, 0),
    exact(
      'target-time-proportional',
      'duration',
      (bike.time?.value ?? Number.NaN) * ratio,
      target ? 'Multiplying heights needs two hills that gain height.' : NO_TARGET,
      number,
    ),
  ];
}

function pairResults({ first, second, time, motorPower }: ReducedPair, numbers: readonly number[]): Result[] {
  const bike = numbers[second] ?? 0;
  const results = [
    estimated('gap-time', time.difference, STANDS_STILL, bike),
    estimated('gap-power', motorPower.difference, NO_ASSISTED, bike),
    exact('runs-needed', 'count', time.runsNeeded ?? Number.NaN, NO_NUMBER, bike),
  ];
  return results.map((result) => ({ ...result, against: numbers[first] ?? 0 }));
}

function dayResults({ bikes }: TestDay, reduction: Reduction, numbers: readonly number[]): Result[] {
  const { rolling, dragArea, scatter, drift } = reduction;
  return [
    ...rolling.map(({ tyres, estimate }) => {
      const owner = rolling.length > 1 ? numbers[bikes.findIndex((bike) => bike.tyres === tyres)] : undefined;
      return estimated('rolling', estimate, '', owner);
    }),
    estimated('drag', dragArea, NO_DRAG),
    exact('scatter', 'percent', scatter.relative, ''),
    drift ? exact('drift', 'percent', drift.perRun, NO_DRIFT) : none('drift', 'percent', NO_DRIFT),
  ];
}

/** A result of a pair, whichever way round it is asked for; undefined where there is no such pair. */
export const pairResult = (outcome: DayOutcome, name: string, bike: number, against: number): Result | undefined =>
  outcome.results.find((one) => one.name === name && one.bike === bike && one.against === against);

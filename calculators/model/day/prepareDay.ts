import { assistShare } from '../motor.ts';
import { type Load, resistanceOf, resistingForce } from '../resistance.ts';
import { type Budget, budgetOf, estimateOf } from './budget.ts';
import type { DayDoubts, TestDay } from './day.ts';
import {
  COVERAGE,
  type DayErrors,
  type ErrorSource,
  errorSourcesOf,
  noErrors,
  type RunDoubt,
  runDoubtOf,
  type Scatter,
  sizeOf,
} from './dayErrors.ts';
import { type BikeJudgement, type DayJudgement, type DayResults, dayResults, meanOver } from './dayResults.ts';
import { type SortedDay, type SortedRun, sortDay } from './sortDay.ts';

/*
 * What has to be settled before errors are tried: weights of the control runs, which bikes fade and which follow their rider, how much
 * runs scatter, and the list of everything that may be off.
 */

/** Fewer degrees of freedom than this tell less than the assumption does: with 2, a range is twice as wide as with many. */
const LEAST_FREEDOM = 3;

/** A day with all that is needed to try errors on it. */
export interface PreparedDay {
  sorted: SortedDay;
  judgement: DayJudgement;
  /** the day as it was read */
  centre: DayResults;
  /** by run: total power over what its bike's mean and its rider make, less 1; of a control run, over the calibrated hill */
  residuals: readonly number[];
  scatter: Scatter;
  /** by run */
  runDoubts: readonly RunDoubt[];
  sources: readonly ErrorSource[];
  resultsWith: (errors: DayErrors) => DayResults;
  budget: Budget;
}

export function prepareDay(day: TestDay, doubts: DayDoubts): PreparedDay {
  const sorted = sortDay(day);
  const saturated = prepare(sorted, doubts, []);
  const following = sorted.bikes.map(({ index }) => followsRider(saturated, index));
  return following.includes(true) ? prepare(sorted, doubts, following) : saturated;
}

/** Support × rider power is what the motor gave, within what is known of it. */
function followsRider({ sorted, judgement, centre, budget }: PreparedDay, index: number): boolean {
  const bike = sorted.bikes[index];
  if (bike?.bike.support === undefined || bike.runs.length === 0 || judgement.bikes[index]?.insideFade) return false;
  const motor = estimateOf(budget, ({ bikes }) => bikes[index]?.motorPower ?? Number.NaN);
  const most = bike.bike.support * meanOver(bike.runs, ({ index: run }) => centre.runs[run]?.riderPower);
  return most >= motor.low && most <= motor.high;
}

function prepare(sorted: SortedDay, doubts: DayDoubts, following: readonly boolean[]): PreparedDay {
  const calibration = calibrationWeights(sorted, doubts);
  const first = dayResults(sorted, { ...calibration, bikes: [] }, noErrors());
  const judgement = {
    ...calibration,
    bikes: sorted.bikes.map(({ index }) => judgeBike(sorted, first, index, following)),
  };
  const resultsWith = (errors: DayErrors): DayResults => dayResults(sorted, judgement, errors);
  const runDoubts = sorted.runs.map((run) => doubtOfRun(sorted, first, run, doubts));
  const residuals = sorted.runs.map((run) => residualOf(sorted, first, judgement, run));
  const scatter = scatterOf(sorted, residuals, runDoubts);
  const sources = errorSourcesOf(sorted, doubts, scatter, runDoubts);
  const budget = budgetOf(resultsWith, sources);
  return { sorted, judgement, centre: budget.centre, residuals, scatter, runDoubts, sources, resultsWith, budget };
}

/** What resists a run by the figures of the day, before any control run is looked at. */
function priorLoad({ day }: SortedDay, { run, bike }: SortedRun): Load {
  return {
    mass: (run.riderMass ?? day.riderMass) + bike.mass,
    sin: day.hill.sin,
    cos: day.hill.cos,
    rolling: day.rolling,
    dragArea: day.dragArea,
    density: day.density,
    headWind: run.headWind ?? day.headWind,
    bearings: true,
  };
}

/**
 * Weights of the control runs and of the prior of C_dA. A run counts by the force that the figures of the day let expect, not by its reading:
 * a mistyped power would otherwise outvote the rest.
 */
function calibrationWeights(sorted: SortedDay, doubts: DayDoubts): Pick<DayJudgement, 'weights' | 'dragWeight'> {
  const weights = sorted.runs.map((sortedRun) => {
    const force = resistingForce(
      resistanceOf(priorLoad(sorted, sortedRun)),
      sorted.day.hill.distance / sortedRun.run.time,
    );
    const off = sizeOf(runDoubtOf(sortedRun.run.time, 1, 1, doubts));
    return 1 / Math.max(1e-9, Math.abs(force) * off) ** 2;
  });
  return { weights, dragWeight: (COVERAGE / Math.max(1e-9, doubts.dragArea)) ** 2 };
}

/** How the limit and the rider hold the motor of a bike back. */
function judgeBike(
  sorted: SortedDay,
  { runs, bikes }: DayResults,
  index: number,
  following: readonly boolean[],
): BikeJudgement {
  const bike = sorted.bikes[index];
  const limit = bike?.bike.assistLimit ?? null;
  const speed = meanOver(bike?.runs ?? [], (run) => runs[run.index]?.speed);
  const helps = (bikes[index]?.motorPower ?? 0) > 0;
  return {
    followsRider: following[index] ?? false,
    insideFade: helps && limit !== null && speed < limit && assistShare(speed, limit) < 1,
    aboveLimit: helps && limit !== null && speed >= limit,
  };
}

/** What a run may be off by itself, by instruments and an assumed day. */
function doubtOfRun(
  sorted: SortedDay,
  { runs, calibration }: DayResults,
  sortedRun: SortedRun,
  doubts: DayDoubts,
): RunDoubt {
  const { run, index } = sortedRun;
  const result = runs[index];
  const riderShare = run.assisted && result ? result.riderPower / result.totalPower : 1;
  const resistance = resistanceOf({ ...priorLoad(sorted, sortedRun), dragArea: calibration.dragArea });
  const v = sorted.day.hill.distance / run.time;
  const { linear, quadratic, headWind } = resistance;
  const steepness = 1 + (v * (linear + 2 * quadratic * Math.abs(v + headWind))) / resistingForce(resistance, v);
  return runDoubtOf(run.time, riderShare, steepness, doubts);
}

/** Total power of a run over what was to be expected, less 1. */
function residualOf(
  sorted: SortedDay,
  { runs, bikes }: DayResults,
  judgement: DayJudgement,
  { run, index }: SortedRun,
): number {
  const { totalPower, riderPower } = runs[index] ?? { totalPower: Number.NaN, riderPower: Number.NaN };
  if (!run.assisted) return totalPower / riderPower - 1;
  const motorPower = bikes[run.bike]?.motorPower ?? Number.NaN;
  const follows = judgement.bikes[run.bike]?.followsRider;
  const own = sorted.bikes[run.bike]?.runs ?? [];
  const meanRider = meanOver(own, (other) => runs[other.index]?.riderPower);
  return totalPower / (riderPower + (follows ? (motorPower * riderPower) / meanRider : motorPower)) - 1;
}

/** Runs that repeat one another: of each bike, and the control runs of each tyres. */
export function repeatsOf({ bikes, groups }: SortedDay): (readonly SortedRun[])[] {
  return [...bikes.map(({ runs }) => runs), ...groups.map(({ controls }) => controls)].filter(
    (runs) => runs.length > 0,
  );
}

/**
 * How far runs scatter against what was stated of them, pooled over all that repeat, with Σ(n − 1) degrees of freedom. It holds stopwatch and
 * repeatability already. Repeats too few to go by count only where they are worse than what is assumed, and then with the few degrees of freedom
 * that they have.
 */
function scatterOf(sorted: SortedDay, residuals: readonly number[], doubts: readonly RunDoubt[]): Scatter {
  const repeats = repeatsOf(sorted);
  const freedom = repeats.reduce((sum, runs) => sum + runs.length - 1, 0);
  const inSizes = ({ index }: SortedRun): number => {
    const doubt = doubts[index];
    return doubt ? (residuals[index] ?? 0) / sizeOf(doubt) : 0;
  };
  const squares = repeats
    .filter((runs) => runs.length > 1)
    .flat()
    .reduce((sum, run) => sum + inSizes(run) ** 2, 0);
  const ratio = freedom > 0 ? Math.sqrt(squares / freedom) : 0;
  if (freedom < LEAST_FREEDOM && ratio <= 1) return { ratio: 1, freedom: 0, assumed: true };
  return { ratio, freedom, assumed: false };
}

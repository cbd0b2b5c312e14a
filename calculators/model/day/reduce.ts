import { tCdf } from '../distributions.ts';
import { meanOf } from '../statistics.ts';
import { type Budget, estimateOf, type Figure } from './budget.ts';
import type { DayDoubts, Estimate, ReducedBike, ReducedPair, ReducedRun, Reduction, TestDay } from './day.ts';
import { COVERAGE, sizeOf } from './dayErrors.ts';
import { type BikeResult, FIGURES, runTimesAtTarget } from './dayResults.ts';
import { type PreparedDay, prepareDay, repeatsOf } from './prepareDay.ts';
import type { SortedBike } from './sortDay.ts';
import { verdictOf } from './verdict.ts';

/**
 * Reduces a day of test runs: calibrates the hill with the control runs, infers each motor, takes means, normalises to the target power,
 * and gives each result and each difference its 95 % range (JCGM 100:2008: linear, with Welch and Satterthwaite's degrees of freedom).
 * @throws RangeError for a run of a bike that is not there
 */
export function reduceDay(day: TestDay, doubts: DayDoubts): Reduction {
  const prepared = prepareDay(day, doubts);
  const dragArea = informedDragArea(prepared, doubts);
  const drift = driftOf(prepared);
  return {
    rolling: reducedRolling(prepared),
    ...(dragArea && { dragArea }),
    scatter: reducedScatter(prepared),
    ...(drift && { drift }),
    runs: reducedRuns(prepared),
    bikes: prepared.sorted.bikes.map((bike) => reducedBike(prepared, bike)),
    pairs: pairsOf(prepared),
  };
}

function reducedRolling({ sorted, budget }: PreparedDay): Reduction['rolling'] {
  return sorted.groups.map(({ index, tyres, controls }) => ({
    tyres,
    runs: controls.length,
    estimate: estimateOf(budget, ({ calibration }) => calibration.rolling[index]?.value ?? Number.NaN),
  }));
}

/** C_dA where the control runs tell it: they halve the doubt of the prior, or bring it below 0.05 m². */
function informedDragArea({ sorted, budget }: PreparedDay, { dragArea: prior }: DayDoubts): Estimate | undefined {
  if (!sorted.isCalibrated) return undefined;
  const estimate = estimateOf(budget, ({ calibration }) => calibration.dragArea);
  const half = COVERAGE * estimate.standard;
  return half < prior / 2 || (half < 0.05 && prior >= 0.05) ? estimate : undefined;
}

/** Scatter of a run of the day: root mean square of what the ranges use. */
function reducedScatter({ scatter, runDoubts }: PreparedDay): Reduction['scatter'] {
  const { ratio, freedom, assumed } = scatter;
  return { relative: ratio * Math.sqrt(meanOf(runDoubts.map((doubt) => sizeOf(doubt) ** 2))), freedom, assumed };
}

function reducedRuns({ sorted, judgement, centre, residuals }: PreparedDay): ReducedRun[] {
  const times = runTimesAtTarget(sorted, judgement, centre);
  return centre.runs.map(({ totalPower, motorPower }, i) => {
    const time = times[i] ?? Number.NaN;
    return {
      totalPower,
      motorPower,
      timeAtTarget: time < Infinity ? time : Number.NaN,
      residual: residuals[i] ?? Number.NaN,
    };
  });
}

const figureOf =
  (bike: SortedBike, name: keyof BikeResult): Figure =>
  ({ bikes }) =>
    bikes[bike.index]?.[name] ?? Number.NaN;

function reducedBike({ budget, centre, judgement }: PreparedDay, bike: SortedBike): ReducedBike {
  const reduced: ReducedBike = { runs: bike.runs.length };
  if (bike.runs.length === 0) return reduced;
  for (const name of FIGURES) {
    const figure = figureOf(bike, name);
    if (Number.isFinite(figure(centre)))
      reduced[name] = name === 'efficiency' ? efficiencyOf(budget, figure) : estimateOf(budget, figure);
  }
  reduced.measuredTime = meanOf(bike.runs.map(({ run }) => run.time));
  if (reduced.time) reduced.correction = reduced.time.value - reduced.measuredTime;
  const judged = judgement.bikes[bike.index];
  reduced.followsRider = judged?.followsRider ?? false;
  reduced.insideFade = judged?.insideFade || judged?.aboveLimit || false;
  return reduced;
}

/**
 * The motor's work over the battery's energy. Its doubt is in the energy, so the range is that of energy over work, turned over: a coarse gauge
 * bounds an efficiency from below only.
 */
function efficiencyOf(budget: Budget, figure: Figure): Estimate {
  const estimate = estimateOf(budget, figure);
  if (!(estimate.value > 0)) return estimate;
  const inverse = estimateOf(budget, (results) => 1 / figure(results));
  return { ...estimate, low: 1 / inverse.high, high: inverse.low > 0 ? 1 / inverse.low : Infinity };
}

/** Every two bikes with assisted runs. */
function pairsOf({ sorted, budget, centre }: PreparedDay): ReducedPair[] {
  const compared = sorted.bikes.filter(({ runs }) => runs.length > 0);
  return compared.flatMap((first, i) =>
    compared.slice(i + 1).map((second): ReducedPair => {
      const verdict = (name: keyof BikeResult) => {
        const [a, b] = [figureOf(first, name), figureOf(second, name)];
        return verdictOf(budget, first, second, (results) => b(results) - a(results), compared.length);
      };
      const hasTarget =
        sorted.day.target !== undefined &&
        Number.isFinite(figureOf(first, 'targetTime')(centre) + figureOf(second, 'targetTime')(centre));
      return {
        first: first.index,
        second: second.index,
        time: verdict('time'),
        motorPower: verdict('motorPower'),
        ...(hasTarget && { targetTime: verdict('targetTime') }),
      };
    }),
  );
}

/**
 * Change of total power from run to run: the line that the residuals follow in the order of the day, each bike and each tyres about its own
 * mean, and how likely chance alone gives as steep a one (t, one degree of freedom less than the scatter).
 */
function driftOf({ sorted, residuals }: PreparedDay): Reduction['drift'] {
  let [xx, xy, yy, freedom] = [0, 0, 0, -1];
  for (const runs of repeatsOf(sorted)) {
    const places = meanOf(runs.map(({ index }) => index));
    const level = meanOf(runs.map(({ index }) => residuals[index] ?? 0));
    for (const { index } of runs) {
      const [x, y] = [index - places, (residuals[index] ?? 0) - level];
      xx += x * x;
      xy += x * y;
      yy += y * y;
    }
    freedom += runs.length - 1;
  }
  if (freedom < 1 || xx === 0) return undefined;
  const perRun = xy / xx;
  const left = Math.max(0, yy - perRun * xy);
  const t = Math.abs(perRun) / Math.sqrt(left / freedom / xx);
  return { perRun, probability: left > 0 ? 2 * (1 - tCdf(t, freedom)) : perRun === 0 ? 1 : 0 };
}

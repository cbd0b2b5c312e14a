import { studentizedRangeQuantile } from '../distributions.ts';
import { type Budget, coverageFactor, estimateOf, type Figure, freedomOf, shiftsOf } from './budget.ts';
import type { Verdict } from './day.ts';
import type { SortedBike } from './sortDay.ts';

/*
 * Whether a difference between two bikes is more than its doubt, and how many runs would tell.
 */

/** More runs than anybody rides. */
const MOST_RUNS = 1000;

/** Judges second less first. @param groups how many bikes are compared with one another that day */
export function verdictOf(
  budget: Budget,
  first: SortedBike,
  second: SortedBike,
  figure: Figure,
  groups: number,
): Verdict {
  const difference = estimateOf(budget, figure);
  const { value, standard, freedom } = difference;
  const widthAmongAll = tukeyFactor(groups, freedom) * standard;
  const realAlone = Math.abs(value) > coverageFactor(freedom) * standard;
  return {
    difference,
    realAlone,
    realAmongAll: Math.abs(value) > widthAmongAll,
    widthAmongAll,
    runsNeeded: realAlone ? 0 : runsNeeded(Math.abs(value), partsOf(budget, first, second, figure)),
  };
}

/** Variance of a difference by how it goes down with further runs on its two bikes. */
interface Parts {
  /** what no further run of theirs averages: control runs, instruments, tyres, masses */
  stays: number;
  /** the part of it that is scatter of the runs */
  scatterStays: number;
  first: { runs: number; variance: number };
  second: { runs: number; variance: number };
  /** of the scatter; Infinity when it is assumed */
  freedom: number;
}

function partsOf(budget: Budget, first: SortedBike, second: SortedBike, figure: Figure): Parts {
  const parts: Parts = {
    stays: 0,
    scatterStays: 0,
    first: { runs: first.runs.length, variance: 0 },
    second: { runs: second.runs.length, variance: 0 },
    freedom: Infinity,
  };
  const shifts = shiftsOf(budget, figure);
  budget.trials.forEach(({ source }, i) => {
    const variance = (shifts[i] ?? 0) ** 2;
    const { run } = source;
    parts.freedom = Math.min(parts.freedom, source.freedom);
    if (run?.run.assisted && run.bikeIndex === first.index) parts.first.variance += variance;
    else if (run?.run.assisted && run.bikeIndex === second.index) parts.second.variance += variance;
    else {
      parts.stays += variance;
      if (run) parts.scatterStays += variance;
    }
  });
  return parts;
}

/** Further runs on each of the two with which a difference of this size would be real; null when no number would do. */
function runsNeeded(size: number, parts: Parts): number | null {
  const { stays, scatterStays, first, second, freedom } = parts;
  const isReal = (more: number): boolean => {
    const averaged = (part: Parts['first']): number => (part.variance * part.runs) / (part.runs + more);
    const own = averaged(first) + averaged(second);
    const estimated = freedom === Infinity ? 0 : scatterStays + own;
    return size > coverageFactor(freedomOf(stays + own, estimated, freedom + 2 * more)) * Math.sqrt(stays + own);
  };
  if (!isReal(MOST_RUNS)) return null;
  let [few, enough] = [0, MOST_RUNS];
  while (enough - few > 1) {
    const middle = (few + enough) >> 1;
    if (isReal(middle)) enough = middle;
    else few = middle;
  }
  return enough;
}

/** Between these the logarithm of the width is a cubic in 1/freedom to 0.03 %, also of ten groups. */
const NODES = [Infinity, 12, 5, 3];
const widths = new Map<number, number[]>();

/** Half-width of a difference among all pairs over its standard uncertainty: Tukey's studentized range, over √2. */
export function tukeyFactor(groups: number, freedom: number): number {
  if (groups <= 2) return coverageFactor(freedom);
  if (freedom < 3) return studentizedRangeQuantile(0.95, groups, freedom) / Math.SQRT2;
  // the exact one takes milliseconds, and many pairs ask for it at every key
  const known = widths.get(groups) ?? NODES.map((node) => Math.log(studentizedRangeQuantile(0.95, groups, node)));
  widths.set(groups, known);
  const basis = (i: number): number =>
    NODES.reduce(
      (product, node, j) =>
        j === i ? product : (product * (1 / freedom - 1 / node)) / (1 / (NODES[i] ?? 0) - 1 / node),
      1,
    );
  return Math.exp(known.reduce((sum, log, i) => sum + log * basis(i), 0)) / Math.SQRT2;
}

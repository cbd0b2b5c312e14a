import { tQuantile } from '../distributions.ts';
import { effectiveFreedom } from '../gum.ts';
import type { DoubtName, Estimate } from './day.ts';
import { type DayErrors, type ErrorSource, noErrors } from './dayErrors.ts';
import type { DayResults } from './dayResults.ts';

/*
 * Linear propagation (JCGM 100:2008, 5.1): every cause of error is tried alone, one standard uncertainty either way, and what any result
 * moves by is read off the same trials. A difference is a result like any other, so what its two sides share cancels.
 */

/** A cause of error with what the day says when it is one standard uncertainty up and down. */
export interface Trial {
  source: ErrorSource;
  /** index into the names of the budget */
  name: number;
  up: DayResults;
  down: DayResults;
}

export interface Budget {
  centre: DayResults;
  names: readonly DoubtName[];
  trials: readonly Trial[];
}

/** One figure of a day's results. */
export type Figure = (results: DayResults) => number;

/** Tries every cause. */
export function budgetOf(resultsWith: (errors: DayErrors) => DayResults, sources: readonly ErrorSource[]): Budget {
  const withError = (source: ErrorSource, amount: number): DayResults => {
    const errors = noErrors();
    source.add(errors, amount);
    return resultsWith(errors);
  };
  const names = [...new Set(sources.map(({ name }) => name))];
  return {
    centre: resultsWith(noErrors()),
    names,
    trials: sources.map((source) => ({
      source,
      name: names.indexOf(source.name),
      up: withError(source, source.standard),
      down: withError(source, -source.standard),
    })),
  };
}

/** How far a figure moves for one standard uncertainty of each cause, in the order of the trials. */
export function shiftsOf({ trials }: Budget, figure: Figure): number[] {
  return trials.map(({ up, down }) => (figure(up) - figure(down)) / 2);
}

/** Variance of a figure and its degrees of freedom. All finite freedoms belong to one estimate, the scatter of the runs (Welch and Satterthwaite). */
export function varianceOf({ trials }: Budget, shifts: readonly number[]): { variance: number; freedom: number } {
  let variance = 0;
  let scattered = 0;
  let scatterFreedom = Infinity;
  trials.forEach(({ source }, i) => {
    const part = (shifts[i] ?? 0) ** 2;
    variance += part;
    if (source.freedom === Infinity) return;
    scattered += part;
    scatterFreedom = source.freedom;
  });
  return { variance, freedom: freedomOf(variance, scattered, scatterFreedom) };
}

/** Degrees of freedom of a variance of which a part was estimated with `freedom`, the rest is known. */
export const freedomOf = (variance: number, estimated: number, freedom: number): number =>
  effectiveFreedom([{ standard: Math.sqrt(variance - estimated) }, { standard: Math.sqrt(estimated), freedom }]);

/** Half-width of a 95 % range over its standard uncertainty. */
export const coverageFactor = (freedom: number): number => tQuantile(0.975, freedom);

/** A figure with its 95 % range and what makes it. */
export function estimateOf(budget: Budget, figure: Figure): Estimate {
  const value = figure(budget.centre);
  const shifts = shiftsOf(budget, figure);
  const { variance, freedom } = varianceOf(budget, shifts);
  const standard = Math.sqrt(variance);
  const half = coverageFactor(freedom) * standard;
  return {
    value,
    low: value - half,
    high: value + half,
    standard,
    freedom,
    causes: causesOf(budget, shifts, variance),
  };
}

/** Shares of the variance by name, largest first. */
function causesOf({ names, trials }: Budget, shifts: readonly number[], variance: number): Estimate['causes'] {
  if (!(variance > 0)) return [];
  const shares = names.map(() => 0);
  trials.forEach(({ name }, i) => {
    shares[name] = (shares[name] ?? 0) + (shifts[i] ?? 0) ** 2 / variance;
  });
  const causes = names.map((name, i) => ({ name, share: shares[i] ?? 0 }));
  return causes.filter(({ share }) => share > 1e-9).sort((a, b) => b.share - a.share);
}

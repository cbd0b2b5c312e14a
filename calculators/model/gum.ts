import { tQuantile } from './distributions.ts';
import { meanOf, standardDeviation } from './statistics.ts';

/*
 * Uncertainty by the two methods of the GUM: linear (JCGM 100:2008) with degrees of freedom, and by drawing (JCGM 101:2008).
 * `uncertainty.ts` propagates lopsided 95 % ranges; here inputs have standard uncertainties, and some come from few repeats.
 */

/** An input: a value, its standard uncertainty, and from how many degrees of freedom that is known (absent: as good as exactly). */
export interface StandardInput {
  value: number;
  standard: number;
  freedom?: number;
}

/** A result of the linear method. */
export interface Combined {
  value: number;
  /** combined standard uncertainty */
  standard: number;
  /** effective degrees of freedom; null where inputs are correlated, for which there is no such formula */
  freedom: number | null;
  /** what one standard uncertainty of each input moves the result by, with its sign */
  shifts: readonly number[];
}

/** Correlation of the inputs i and j, from −1 to 1. */
export type Correlation = (i: number, j: number) => number;

/** Covariance of two results from the shifts that the same inputs give them. */
export function covariance(a: readonly number[], b: readonly number[], correlation?: Correlation): number {
  let sum = 0;
  for (const [i, shift] of a.entries()) {
    for (const [j, other] of b.entries()) sum += shift * other * (i === j ? 1 : (correlation?.(i, j) ?? 0));
  }
  return sum;
}

/**
 * Effective degrees of freedom of a sum of independent parts (Welch and Satterthwaite; JCGM 100, G.4.1), any number, not rounded down.
 * Infinity when no part was estimated from repeats.
 */
export function effectiveFreedom(parts: readonly { standard: number; freedom?: number }[]): number {
  let variance = 0;
  let sum = 0;
  for (const { standard, freedom = Infinity } of parts) {
    variance += standard ** 2;
    sum += standard ** 4 / freedom;
  }
  return sum > 0 ? variance ** 2 / sum : Infinity;
}

/**
 * Linear propagation of standard uncertainties (JCGM 100, 5.1 and 5.2). Each shift is half of what the result moves by between one standard
 * uncertainty below and one above (5.1.3 note 2). It fails where the function bends within that: `monteCarlo` does not.
 * @param f maps input values, in order, to any number of results
 */
export function combine(
  inputs: readonly StandardInput[],
  f: (values: number[]) => number[],
  correlation?: Correlation,
): Combined[] {
  const values = inputs.map((input) => input.value);
  const ends = inputs.map(({ value, standard }, i) => ({
    above: f(values.with(i, value + standard)),
    below: f(values.with(i, value - standard)),
  }));
  return f(values).map((value, k) => {
    const shifts = ends.map(({ above, below }) => ((above[k] ?? Number.NaN) - (below[k] ?? Number.NaN)) / 2);
    const parts = inputs.map(({ freedom = Infinity }, i) => ({ standard: shifts[i] ?? Number.NaN, freedom }));
    return {
      value,
      standard: Math.sqrt(covariance(shifts, shifts, correlation)),
      freedom: correlation ? null : effectiveFreedom(parts),
      shifts,
    };
  });
}

/** Half-width of the range that holds the value with chance `coverage`: t times the standard uncertainty. */
export function expandedUncertainty(standard: number, freedom: number, coverage = 0.95): number {
  return standard * tQuantile((1 + coverage) / 2, freedom);
}

/**
 * Propagation of distributions: draws all inputs anew in every trial (JCGM 101, clause 7). What several results share is drawn once for them all.
 * @param draw one trial's results, from inputs that it draws with `random`
 * @returns the trials of each result, in the order of drawing
 */
export function monteCarlo(
  draw: (random: () => number) => readonly number[],
  trials: number,
  random: () => number,
): Float64Array[] {
  const samples: Float64Array[] = [];
  for (let trial = 0; trial < trials; trial++) {
    draw(random).forEach((value, k) => {
      samples[k] ??= new Float64Array(trials).fill(Number.NaN);
      samples[k][trial] = value;
    });
  }
  return samples;
}

/** What the trials of one result say. */
export interface Sampled {
  mean: number;
  standard: number;
  /** as many trials below as above */
  symmetric: { low: number; high: number };
  /** the shortest range that holds as many */
  shortest: { low: number; high: number };
}

/** Mean, standard deviation and the two 95 % ranges of trials (JCGM 101, 7.6 and 7.7). At least 40 trials for 0.95. */
export function summaryOf(samples: Float64Array | readonly number[], coverage = 0.95): Sampled {
  const values = Array.from(samples);
  return { mean: meanOf(values), standard: standardDeviation(values), ...coverageInterval(values, coverage) };
}

/** The range that holds a share of the trials, once with equal tails and once as short as it can be. */
export function coverageInterval(
  samples: Float64Array | readonly number[],
  coverage = 0.95,
): Pick<Sampled, 'symmetric' | 'shortest'> {
  const sorted = Float64Array.from(samples).sort();
  const held = Math.min(Math.round(coverage * sorted.length), sorted.length - 1);
  const from = (rank: number) => ({ low: sorted[rank] ?? Number.NaN, high: sorted[rank + held] ?? Number.NaN });
  let shortest = from(0);
  for (let rank = 1; rank + held < sorted.length; rank++) {
    const next = from(rank);
    if (next.high - next.low < shortest.high - shortest.low) shortest = next;
  }
  return { symmetric: from(Math.max(0, Math.ceil((sorted.length - held) / 2) - 1)), shortest };
}

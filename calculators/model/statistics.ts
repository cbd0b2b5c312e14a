import { fTail } from './distributions.ts';

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const squaresOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

/** Mean. What is left after a first mean is averaged too, so that values with many equal leading digits keep their last ones. */
export function meanOf(values: readonly number[]): number {
  const first = sumOf(values) / values.length;
  return first + sumOf(values.map((value) => value - first)) / values.length;
}

/** Sum of the squared distances from the mean. What the mean, as a number of so many digits, is off is taken out again. */
function squaresAboutMean(values: readonly number[]): number {
  const mean = meanOf(values);
  const off = values.map((value) => value - mean);
  return squaresOf(off) - sumOf(off) ** 2 / values.length;
}

/** Standard deviation of the population that the values are drawn from, with n − 1. NaN for fewer than two. */
export function standardDeviation(values: readonly number[]): number {
  return Math.sqrt(squaresAboutMean(values) / (values.length - 1));
}

/** Autocorrelation at lag 1: how far each value follows the one before it, from −1 to 1. Near −1/n when the order does not matter. */
export function autocorrelation1(values: readonly number[]): number {
  const mean = meanOf(values);
  const off = values.map((value) => value - mean);
  return off.slice(1).reduce((sum, value, i) => sum + value * (off[i] ?? 0), 0) / squaresOf(off);
}

/** A straight line y = intercept + slope · x by least squares. Standard errors need three points. */
export interface LineFit {
  intercept: number;
  slope: number;
  interceptError: number;
  slopeError: number;
  /** of intercept and slope: where x is far from zero they move against each other */
  correlation: number;
  /** standard deviation of y about the line */
  residualDeviation: number;
  /** n − 2 */
  freedom: number;
  /** sum of squares of y about the line, and what the line explains */
  squares: number;
  explained: number;
}

/** Fits a straight line to points, all of equal weight (JCGM 100:2008, H.3.2). */
export function fitLine(x: readonly number[], y: readonly number[]): LineFit {
  const n = x.length;
  const [meanX, meanY] = [meanOf(x), meanOf(y)];
  const offX = x.map((value) => value - meanX);
  const sxx = squaresOf(offX);
  const slope = offX.reduce((sum, off, i) => sum + off * ((y[i] ?? Number.NaN) - meanY), 0) / sxx;
  const squares = squaresOf(y.map((value, i) => value - meanY - slope * (offX[i] ?? Number.NaN)));
  const residualDeviation = Math.sqrt(squares / (n - 2));
  return {
    intercept: meanY - slope * meanX,
    slope,
    interceptError: residualDeviation * Math.sqrt(1 / n + (meanX * meanX) / sxx),
    slopeError: residualDeviation / Math.sqrt(sxx),
    correlation: -meanX / Math.sqrt(sxx / n + meanX * meanX),
    residualDeviation,
    freedom: n - 2,
    squares,
    explained: slope * slope * sxx,
  };
}

/** The line's y at `x` and its standard error, which takes in that intercept and slope go together. */
export function lineAt(fit: LineFit, x: number): { value: number; standard: number } {
  const { interceptError: a, slopeError: b, correlation: r } = fit;
  return {
    value: fit.intercept + fit.slope * x,
    standard: Math.sqrt(a * a + x * x * b * b + 2 * x * a * b * r),
  };
}

/** One-way analysis of variance: scatter between groups against scatter within them. */
export interface Anova {
  between: { squares: number; freedom: number };
  within: { squares: number; freedom: number };
  /** F, the mean square between over that within */
  ratio: number;
  /** how likely groups that are all alike give an F as large */
  probability: number;
  /** standard deviation within groups, pooled */
  residualDeviation: number;
}

/** Analyses groups that may differ in size. At least two groups, and one with two values. */
export function oneWayAnova(groups: readonly (readonly number[])[]): Anova {
  // values close together are subtracted exactly, so that the rest is worked out with all their digits
  const origin = groups[0]?.[0] ?? 0;
  const shifted = groups.map((group) => group.map((value) => value - origin));
  const all = shifted.flat();
  const mean = meanOf(all);
  const between = {
    squares: sumOf(shifted.map((group) => group.length * (meanOf(group) - mean) ** 2)),
    freedom: groups.length - 1,
  };
  const within = { squares: sumOf(shifted.map(squaresAboutMean)), freedom: all.length - groups.length };
  const variance = within.squares / within.freedom;
  const ratio = between.squares / between.freedom / variance;
  return {
    between,
    within,
    ratio,
    probability: fTail(ratio, between.freedom, within.freedom),
    residualDeviation: Math.sqrt(variance),
  };
}

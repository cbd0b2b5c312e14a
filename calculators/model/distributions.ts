import { crossingOf } from './crossing.ts';

/*
 * The distributions that ranges and plans need, of our own: pages carry a few of these functions, and the libraries that hold them all are large.
 * Absolute errors are below 1e-12 unless a function says otherwise; small tails of the normal and of Student's t keep their leading digits too.
 */

const ROOT_OF_TWO_PI = Math.sqrt(2 * Math.PI);

/** Chance that a standard normal value is at most `z`. */
export function normalCdf(z: number): number {
  const x = Math.abs(z);
  if (x > 40) return z > 0 ? 1 : 0;
  const density = Math.exp(-0.5 * x * x) / ROOT_OF_TWO_PI;
  if (x < 2.5) {
    // Φ(z) = ½ + φ(z) (z + z³/3 + z⁵/(3·5) + …)
    let term = z;
    let sum = z;
    for (let odd = 3; Math.abs(term) > 1e-17; odd += 2) {
      term *= (z * z) / odd;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  // the tail is φ(x)/(x + 1/(x + 2/(x + 3/(x + …)))) (Laplace)
  let fraction = x;
  for (let k = 40; k > 0; k--) fraction = x + k / fraction;
  return z > 0 ? 1 - density / fraction : density / fraction;
}

/** Value that a standard normal one does not exceed with chance `p`; infinite at 0 and 1. */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) return p === 0 ? -Infinity : p === 1 ? Infinity : Number.NaN;
  if (p > 0.5) return -normalQuantile(1 - p);
  // a start good to 0.003 (Abramowitz and Stegun 26.2.22), then Halley's steps, each of which triples the right digits
  const s = Math.sqrt(-2 * Math.log(p));
  let z = (2.30753 + 0.27061 * s) / (1 + s * (0.99229 + 0.04481 * s)) - s;
  for (let i = 0; i < 3; i++) {
    const step = (normalCdf(z) - p) * ROOT_OF_TWO_PI * Math.exp(0.5 * z * z);
    z -= step / (1 + 0.5 * z * step);
  }
  return z;
}

/** What Stirling's formula leaves of the logarithm of the gamma function: ln Γ(x) = (x − ½) ln x − x + ½ ln 2π + this. x > 0. */
function stirlingRest(x: number): number {
  let rest = 0;
  let y = x;
  for (; y < 16; y++) rest += (y + 0.5) * Math.log1p(1 / y) - 1;
  const w = 1 / (y * y);
  return rest + (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w / 1188)))) / y;
}

/** Logarithm of a ratio whose excess over 1 is known to more digits than the ratio itself. */
const logRatio = (ratio: number, excess: number): number =>
  Math.abs(excess) < 0.5 ? Math.log1p(excess) : Math.log(ratio);

/** The regularised incomplete beta function I_x(a, b), with `y` = 1 − x given apart so that neither end loses digits. */
function incompleteBeta(x: number, y: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  if (x * (a + b + 2) > a + 1) return 1 - incompleteBeta(y, x, b, a);
  // x^a y^b/B(a, b), by Stirling's formula, so that large a and b cost no digits
  const skew = x * b - y * a;
  const powers = a * logRatio((x * (a + b)) / a, skew / a) + b * logRatio((y * (a + b)) / b, -skew / b);
  const front =
    Math.exp(powers + stirlingRest(a + b) - stirlingRest(a) - stirlingRest(b)) * Math.sqrt((a * b) / (a + b));
  // the continued fraction (Abramowitz and Stegun 26.5.8), from its head on (Lentz)
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1, factor = 2; Math.abs(factor - 1) > 1e-15; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    c = 1 + even / c;
    d = 1 / (1 + even * d);
    fraction *= c * d;
    c = 1 + odd / c;
    d = 1 / (1 + odd * d);
    factor = c * d;
    fraction *= factor;
  }
  return (front * fraction) / (a * ROOT_OF_TWO_PI);
}

/** Degrees of freedom from which t is the normal with one term of correction, to 14 digits. */
const MANY = 1e7;

/** Chance that Student's t with `freedom` degrees of freedom is at most `t`. Freedom is any number above 0; Infinity is the normal. */
export function tCdf(t: number, freedom: number): number {
  if (freedom === Infinity || Number.isNaN(t)) return normalCdf(t);
  const square = (t * t) / freedom;
  // so many cost the beta function its digits, and the nearest normal has them all (Abramowitz and Stegun 26.7.8)
  if (freedom > MANY) return normalCdf((t * (1 - 0.25 / freedom)) / Math.sqrt(1 + 0.5 * square));
  const tail =
    square === Infinity ? 0 : 0.5 * incompleteBeta(1 / (1 + square), square / (1 + square), freedom / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}

/** Value that Student's t does not exceed with chance `p`. Freedom is any number above 0; Infinity is the normal. */
export function tQuantile(p: number, freedom: number): number {
  const start = normalQuantile(p);
  if (freedom === Infinity || !Number.isFinite(start)) return start;
  if (freedom > MANY) return start + (start * (start * start + 1)) / (4 * freedom); // 26.7.5
  if (p > 0.5) return -tQuantile(1 - p, freedom);
  // Below the middle the chance bends upwards, so Newton's steps from the normal's value, which is too near, all go one way and never past the root.
  const a = freedom / 2;
  const peak = Math.exp(stirlingRest(a + 0.5) - stirlingRest(a) + a * Math.log1p(1 / freedom) - 0.5) / ROOT_OF_TWO_PI;
  for (let t = start; ; ) {
    const density = peak * Math.exp(-(a + 0.5) * Math.log1p((t * t) / freedom));
    const next = t - (tCdf(t, freedom) - p) / density;
    if (!(next < t)) return t;
    t = next;
  }
}

/** Chance that chi-square with `freedom` degrees of freedom is at most `x`. */
export function chiSquareCdf(x: number, freedom: number): number {
  if (!(x > 0)) return Number.isNaN(x) ? x : 0;
  const a = freedom / 2;
  const over = x / freedom - 1;
  // x^a e^-x/Γ(a + 1) Σ x^n/((a + 1)…(a + n)) of x/2 (Abramowitz and Stegun 6.5.29)
  let term = Math.exp(a * (Math.log1p(over) - over) - stirlingRest(a)) / Math.sqrt(2 * Math.PI * a);
  let sum = term;
  for (let n = 1; term > 1e-17 * sum; n++) {
    term *= x / 2 / (a + n);
    sum += term;
  }
  return Math.min(1, sum);
}

/** Value that chi-square does not exceed with chance `p`, from 0 to below 1. */
export function chiSquareQuantile(p: number, freedom: number): number {
  let high = freedom;
  while (chiSquareCdf(high, freedom) < p) high *= 2;
  return p > 0 ? crossingOf((x) => chiSquareCdf(x, freedom) - p, 0, high) : 0;
}

/** Chance that the F ratio of two variances, with `above` and `below` degrees of freedom, is at least `ratio`. */
export function fTail(ratio: number, above: number, below: number): number {
  const x = below + above * ratio;
  return incompleteBeta(below / x, (above * ratio) / x, below / 2, above / 2);
}

/**
 * Mean of `f(s)` over s = √(χ²/freedom), which is how far a standard deviation from repeats is off the true one. In the logarithm of s the
 * density is smooth and dies away at both ends, so that plain sums with an even step are good to rounding. `steepness` is how fast f may change.
 */
function overSpread(freedom: number, steepness: number, f: (s: number) => number): number {
  if (freedom === Infinity) return f(1);
  const step = 0.5 / Math.sqrt(freedom + steepness * steepness + 10);
  let weights = 0;
  let sum = 0;
  const add = (u: number): boolean => {
    const weight = Math.exp(-0.5 * freedom * (Math.expm1(2 * u) - 2 * u));
    weights += weight;
    sum += weight * f(Math.exp(u));
    return weight > 1e-13;
  };
  for (let i = 0; add(i * step); i++);
  for (let i = -1; add(i * step); i--);
  return sum / weights;
}

/**
 * Chance that the noncentral t, (Z + noncentrality)/√(χ²/freedom), is at most `t`: the power of a t test is one less this at its limit.
 * Absolute error below 1e-10.
 */
export function noncentralTCdf(t: number, freedom: number, noncentrality: number): number {
  return overSpread(freedom, noncentrality, (s) => normalCdf(t * s - noncentrality));
}

/**
 * Chance that the studentized range of `groups` means is at most `q`, the standard deviation having `freedom` degrees of freedom (Tukey).
 * Absolute error below 1e-9.
 */
export function studentizedRangeCdf(q: number, groups: number, freedom: number): number {
  if (!(q > 0)) return Number.isNaN(q) ? q : 0;
  // over the lowest of the values, the others lying within the width above it
  const lowest = Array.from({ length: 53 }, (_, i) => {
    const z = (i - 26) / 4;
    return { z, below: normalCdf(z), weight: Math.exp(-0.5 * z * z) / (4 * ROOT_OF_TWO_PI) };
  });
  return overSpread(freedom, 0, (s) => {
    let chance = 0;
    for (const { z, below, weight } of lowest) chance += weight * (normalCdf(z + q * s) - below) ** (groups - 1);
    return groups * chance;
  });
}

/**
 * Width that the studentized range of `groups` means does not exceed with chance `p`: two of them differ when they are further apart than this
 * times the standard error of one mean. Relative error below 1e-8.
 */
export function studentizedRangeQuantile(p: number, groups: number, freedom: number): number {
  // two groups have √2 t; of more, the chance is at most the sum over all pairs (Bonferroni)
  const pair = (share: number): number => -Math.SQRT2 * tQuantile((1 - p) / 2 / share, freedom);
  const [low, high] = [pair(1), pair((groups * (groups - 1)) / 2)];
  if (groups === 2 || !Number.isFinite(high)) return low;
  return crossingOf((q) => studentizedRangeCdf(q, groups, freedom) - p, low, high);
}

import { fitLine } from './statistics.ts';

/** How long a rider holds a power: `t = W′/(P − CP)`, valid for about 2 to 30 minutes (Monod and Scherrer 1965). */
export interface Endurance {
  /** CP, W: held for long */
  criticalPower: number;
  /** W′, J: work that can be done above it */
  workAbove: number;
}

/** Time, s, for which a rider lasts at `power` (W). Infinity at or below the critical power. */
export function enduranceTime(power: number, { criticalPower, workAbove }: Endurance): number {
  return power > criticalPower ? workAbove / (power - criticalPower) : Number.POSITIVE_INFINITY;
}

/** Power, W, that a rider holds for `time` (s). */
export function endurancePower(time: number, { criticalPower, workAbove }: Endurance): number {
  return criticalPower + workAbove / time;
}

/** What is left of W′ over a day of efforts and rests. */
export interface WorkBalance {
  /** J left after each stretch; below zero: more was asked than the rider has */
  after: readonly number[];
  /** J, the least that was left */
  lowest: number;
  /** s from the start at which nothing was left for the first time; null when that never came */
  emptyAt: number | null;
}

/**
 * The balance of W′, from full. Above the critical power it falls by (P − CP) dt; below it what was spent decays by exp(−(CP − P) dt/W′),
 * so that the last of it comes back slowly (Skiba et al. 2015, the differential form; seen in a secondary copy).
 * @param stretches efforts and rests one after the other: mean power, W, and how long, s
 */
export function workBalance(stretches: readonly Effort[], { criticalPower, workAbove }: Endurance): WorkBalance {
  let [left, lowest, clock] = [workAbove, workAbove, 0];
  let emptyAt: number | null = null;
  const after = stretches.map(({ power, time }) => {
    const above = power - criticalPower;
    if (above > 0) {
      if (emptyAt === null && left - above * time <= 0) emptyAt = clock + left / above;
      left -= above * time;
      lowest = Math.min(lowest, left);
    } else {
      left = workAbove - (workAbove - left) * Math.exp((above * time) / workAbove);
    }
    clock += time;
    return left;
  });
  return { after, lowest, emptyAt };
}

/** One effort: mean power, W, and how long it was held, s. Fits take efforts to the limit. */
export interface Effort {
  power: number;
  time: number;
}

/** A fit with its standard errors; `squares` is the sum of squared residuals in the unit of what was fitted. */
export interface EnduranceFit extends Endurance {
  criticalPowerError: number;
  workAboveError: number;
  squares: number;
}

/** The line through points (x, y), in the words of a fit. */
function line(points: readonly (readonly [number, number])[]) {
  const { intercept, slope, interceptError, slopeError, squares } = fitLine(
    points.map(([x]) => x),
    points.map(([, y]) => y),
  );
  return { a: intercept, b: slope, aError: interceptError, bError: slopeError, squares };
}

/** Work against time: `P t = W′ + CP t`, residuals in work. At least three efforts. */
export function fitWork(efforts: readonly Effort[]): EnduranceFit {
  const { a, b, aError, bError, squares } = line(efforts.map(({ power, time }) => [time, power * time] as const));
  return { criticalPower: b, workAbove: a, criticalPowerError: bError, workAboveError: aError, squares };
}

/** Power against inverse time: `P = CP + W′/t`, residuals in power. At least three efforts. */
export function fitInverseTime(efforts: readonly Effort[]): EnduranceFit {
  const { a, b, aError, bError, squares } = line(efforts.map(({ power, time }) => [1 / time, power] as const));
  return { criticalPower: a, workAbove: b, criticalPowerError: aError, workAboveError: bError, squares };
}

/**
 * The CP of a fit in time, W, by halving. The squares of the residuals `r` have their least where Σ r/(P − CP)² changes its sign:
 * with W′ fitted for each CP that sum is their slope, but for a factor. It falls below zero as CP nears the weakest power.
 */
function criticalPowerOf(efforts: readonly Effort[], residuals: (criticalPower: number) => number[]): number {
  let [low, high] = [0, Math.min(...efforts.map(({ power }) => power))];
  for (;;) {
    const cp = 0.5 * (low + high);
    if (cp <= low || cp >= high) return cp;
    const left = residuals(cp);
    const slope = efforts.reduce((sum, { power }, i) => sum + (left[i] ?? 0) / (power - cp) ** 2, 0);
    if (slope > 0) low = cp;
    else high = cp;
  }
}

/** Time against power: `t = W′/(P − CP)`, residuals in time. At least three efforts. For a given CP, W′ follows from a straight line through zero. */
export function fitTime(efforts: readonly Effort[]): EnduranceFit {
  const at = (criticalPower: number) => {
    const inverse = efforts.map(({ power }) => 1 / (power - criticalPower));
    const sxx = inverse.reduce((sum, x) => sum + x * x, 0);
    const workAbove = efforts.reduce((sum, { time }, i) => sum + time * (inverse[i] ?? 0), 0) / sxx;
    return { inverse, workAbove, residuals: efforts.map(({ time }, i) => time - workAbove * (inverse[i] ?? 0)) };
  };
  const criticalPower = criticalPowerOf(efforts, (cp) => at(cp).residuals);
  const { inverse, workAbove, residuals } = at(criticalPower);
  const squares = residuals.reduce((sum, r) => sum + r * r, 0);
  // Standard errors from the slopes of t at the solution: 1/(P − CP) for W′ and W′/(P − CP)² for CP.
  const sum = (f: (x: number) => number): number => inverse.reduce((total, x) => total + f(x), 0);
  const [ww, wc, cc] = [sum((x) => x * x), sum((x) => workAbove * x ** 3), sum((x) => workAbove ** 2 * x ** 4)];
  const scale = squares / (efforts.length - 2) / (ww * cc - wc * wc);
  return {
    criticalPower,
    workAbove,
    criticalPowerError: Math.sqrt(scale * ww),
    workAboveError: Math.sqrt(scale * cc),
    squares,
  };
}

/** Three parameters: `t = W′/(P − CP) − W′/(P_max − CP)`, residuals in time (Morton 1996). At least four efforts. For a given CP it is a straight line. */
export function fitThree(efforts: readonly Effort[]): Endurance & { peakPower: number; squares: number } {
  const at = (criticalPower: number) =>
    line(efforts.map(({ power, time }) => [1 / (power - criticalPower), time] as const));
  const criticalPower = criticalPowerOf(efforts, (cp) => {
    const { a, b } = at(cp);
    return efforts.map(({ power, time }) => time - a - b / (power - cp));
  });
  const { a, b, squares } = at(criticalPower);
  return { criticalPower, workAbove: b, peakPower: criticalPower - b / a, squares };
}

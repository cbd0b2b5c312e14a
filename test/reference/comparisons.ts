import { inv, type Matrix, matrix, multiply, polynomialRoot, transpose } from 'mathjs';
import {
  assistShare,
  type Calibration,
  type CalibrationSetting,
  type Climb,
  type ControlRun,
  calibrate,
  crankPower,
  drivenSpeed,
  GRAVITY,
  hillFromGrade,
  inferMotor,
  loadOf,
  type Resistance,
  resistanceOf,
  resistingForce,
  rideClimb,
  steadySpeed,
} from '../../calculators/model/index.ts';
import { anyAscent, anyClimb } from '../model/climbs.ts';
import { type Random, random, relative } from '../random.ts';

/** The model against general-purpose mathematics, on random inputs that are the same in every run. */
export interface Comparison {
  quantity: string;
  /** against what */
  against: string;
  /** how many random inputs */
  cases: number;
  /** largest relative difference over all inputs */
  largest: () => number;
  tolerance: number;
}

/** Coefficients of `v·F(v) = P`, constant first, while the air speed is not negative. */
export function cubicOf(r: Resistance, wheelPower: number): [number, number, number, number] {
  const { constant, linear, quadratic: k, headWind: w } = r;
  return [-wheelPower, constant + k * w * w, linear + 2 * k * w, k];
}

type Root = number | { re: number; im: number };

/** The positive real root of a climb's cubic, by mathjs: on a climb there is exactly one. */
export function cubicRoot(coefficients: readonly [number, number, number, number]): number {
  const roots = polynomialRoot(...coefficients) as unknown as Root[];
  const real = roots.map((root) =>
    typeof root === 'number' ? root : Math.abs(root.im) <= 1e-7 * Math.abs(root.re) ? root.re : Number.NaN,
  );
  const positive = real.filter((root) => root > 0);
  if (positive.length !== 1)
    throw new Error(`The cubic ${coefficients.join(', ')} has ${positive.length} positive roots.`);
  return positive[0] as number;
}

/** A climb in still air or against the wind. */
export function anyCubic(r: Random, stillAir: boolean): { resistance: Resistance; wheelPower: number } {
  const climb = { ...anyAscent(r), headWind: stillAir ? 0 : r.between(0, 15) };
  return { resistance: resistanceOf(loadOf(climb)), wheelPower: r.between(20, 1500) };
}

function cubic(stillAir: boolean, seed: number, count: number): number {
  const r = random(seed);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const { resistance, wheelPower } = anyCubic(r, stillAir);
    largest = Math.max(
      largest,
      relative(steadySpeed(resistance, wheelPower), cubicRoot(cubicOf(resistance, wheelPower))),
    );
  }
  return largest;
}

/** Root of a rising function by halving, as far as doubles go. */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (;;) {
    const middle = a + (b - a) / 2;
    if (middle <= a || middle >= b) return middle;
    if (f(middle) > 0) b = middle;
    else a = middle;
  }
}

/** Speed of rider and motor by halving, written from the definition: the wheel's power balance with the fade inside. */
export function bisectedSpeed(climb: Climb): number {
  const r = resistanceOf(loadOf(climb));
  const surplus = (v: number): number => {
    const motor = climb.riderPower > 0 ? climb.motorPower * assistShare(v, climb.assistLimit) : 0;
    const force = resistingForce(r, v);
    // where the hill pushes, the bike still gathers speed
    return force < 0 ? force : v * force - climb.efficiency * (climb.riderPower + motor);
  };
  return bisect(surplus, 0, 1e4);
}

function fade(count: number): number {
  const r = random(3);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const climb = anyClimb(r);
    largest = Math.max(largest, relative(drivenSpeed(resistanceOf(loadOf(climb)), climb), bisectedSpeed(climb)));
  }
  return largest;
}

/** Power into the crank against the sum of where it goes, relative to the largest term. */
export function imbalance(climb: Climb): number {
  const ride = rideClimb(climb);
  const { gravity, rolling, air, drive } = ride.powers;
  const largest = Math.max(ride.crankPower, ...[gravity, rolling, air, drive].map(Math.abs));
  const rest = Math.abs(gravity + rolling + air + drive - ride.crankPower);
  return rest === 0 ? 0 : rest / largest;
}

function balance(count: number): number {
  const r = random(4);
  let largest = 0;
  for (let i = 0; i < count; i++) largest = Math.max(largest, imbalance(anyClimb(r)));
  return largest;
}

/** The fit of `calibrate` as a textbook's weighted least squares: (Aᵀ W A)⁻¹ Aᵀ W y, the prior of C_dA as one more row. */
export function leastSquares(runs: readonly ControlRun[], setting: CalibrationSetting) {
  const { hill, density, headWind, efficiency } = setting;
  const design: number[][] = [[0, 1]];
  const observed: number[][] = [[setting.dragArea]];
  const weights: number[] = [setting.dragAreaUncertainty ** -2];
  for (const run of runs) {
    const v = hill.distance / run.time;
    const u = v + headWind;
    const weight = run.mass * GRAVITY;
    // the force at the wheel that only rolling and air explain, and its standard uncertainty from the meter's repeatability
    design.push([weight * hill.cos, 0.5 * density * u * Math.abs(u)]);
    observed.push([(efficiency * run.riderPower) / v - weight * hill.sin - 0.091 - 0.0087 * v]);
    weights.push(((efficiency * run.riderPower * setting.powerRepeatability) / v) ** -2);
  }
  const a = matrix(design);
  const weighted = multiply(transpose(a), matrix(weights.map((w, i) => weights.map((_, k) => (k === i ? w : 0)))));
  const covariance = inv(multiply(weighted, a) as Matrix) as Matrix;
  const fitted = multiply(covariance, multiply(weighted, matrix(observed)) as Matrix) as Matrix;
  return {
    rolling: fitted.get([0, 0]) as number,
    dragArea: fitted.get([1, 0]) as number,
    rollingUncertainty: Math.sqrt(covariance.get([0, 0]) as number),
    dragAreaUncertainty: Math.sqrt(covariance.get([1, 1]) as number),
  };
}

/** Control runs of a hill with known tyres and air, each power misread by its own error, so that no curve goes through all. */
export function anyControls(r: Random, count: number): { runs: ControlRun[]; setting: CalibrationSetting } {
  const hill = hillFromGrade(r.between(500, 5000), r.between(0.02, 0.15));
  const setting = {
    hill,
    density: r.between(0.9, 1.3),
    headWind: r.between(-2, 4),
    efficiency: r.between(0.9, 1),
    dragArea: r.between(0.3, 0.6),
    dragAreaUncertainty: r.between(0.02, 0.1),
    powerRepeatability: r.between(0.005, 0.03),
  };
  const runs = Array.from({ length: count }, () => {
    const riderPower = r.between(150, 400);
    const mass = r.between(65, 110);
    const rolling = r.between(0.02, 0.03);
    const climb = { ...setting, mass, rolling, riderPower, motorPower: 0, assistLimit: null };
    return { mass, riderPower: riderPower * r.between(0.97, 1.03), time: rideClimb(climb).time };
  });
  return { runs, setting };
}

function controlFit(count: number): number {
  const r = random(5);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const { runs, setting } = anyControls(r, r.whole(2, 6));
    const ours: Calibration = calibrate(runs, setting);
    const theirs = leastSquares(runs, setting);
    for (const key of ['rolling', 'dragArea', 'rollingUncertainty', 'dragAreaUncertainty'] as const)
      largest = Math.max(largest, relative(ours[key], theirs[key], 1e-3));
  }
  return largest;
}

function roundTrip(count: number): number {
  const r = random(6);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const climb = { ...anyAscent(r), motorPower: r.between(50, 1200), assistLimit: null };
    const { mean } = inferMotor(climb, rideClimb(climb).time);
    largest = Math.max(largest, relative(mean, climb.motorPower));
  }
  return largest;
}

function powerBack(count: number): number {
  const r = random(7);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const climb = anyAscent(r);
    const resistance = resistanceOf(loadOf(climb));
    const power = r.between(10, 1500);
    const v = steadySpeed(resistance, power * climb.efficiency);
    largest = Math.max(largest, relative(crankPower(resistance, v, climb.efficiency), power));
  }
  return largest;
}

const MATHJS = 'mathjs 15';

export const comparisons: readonly Comparison[] = [
  {
    quantity: 'Steady speed in still air',
    against: `\`polynomialRoot\` of ${MATHJS}`,
    cases: 1000,
    largest: () => cubic(true, 1, 1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Steady speed against a wind',
    against: `\`polynomialRoot\` of ${MATHJS}`,
    cases: 1000,
    largest: () => cubic(false, 2, 1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Speed with a motor that fades before its limit',
    against: 'halving; hills up and down in any wind',
    cases: 1000,
    largest: () => fade(1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Energy balance',
    against: 'power in against power out; hills up and down in any wind',
    cases: 1000,
    largest: () => balance(1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Power from a speed, speed from a power',
    against: 'each other',
    cases: 1000,
    largest: () => powerBack(1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Motor read back from a time',
    against: 'the motor that rode it',
    cases: 1000,
    largest: () => roundTrip(1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Calibration from 2 to 6 control runs, for a bigger hill',
    against: `weighted least squares in ${MATHJS} matrices`,
    cases: 300,
    largest: () => controlFit(300),
    tolerance: 1e-9,
  },
];

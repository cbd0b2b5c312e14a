import type { Hill } from '../hill.ts';

/*
 * What a day of test runs is made of, and what it is reduced to. `reduce.ts` does it.
 */

/** One bike of the test, or one variant of it in a paired experiment. */
export interface TestBike {
  /** kg */
  mass: number;
  /** m/s; null without a limit */
  assistLimit: number | null;
  /** bikes with the same number roll on the same tyres at the same pressure */
  tyres: number;
  /** motor power over rider power at full assist, where it is known */
  support?: number;
  /** J that the full battery gives until its gauge shows nothing */
  usableEnergy?: number;
}

/** One timed ride up the hill. */
export interface TestRun {
  /** index into `bikes` */
  bike: number;
  /** false for a control run: the motor off, or a bike without one */
  assisted: boolean;
  /** s */
  time: number;
  /** W, mean of the stretch, as the meter read */
  riderPower: number;
  /** kg with kit, where it differs from the day's */
  riderMass?: number;
  /** m/s, head wind positive, where it differs from the day's */
  headWind?: number;
  /** gauge readings as shares of the full battery */
  gaugeBefore?: number;
  gaugeAfter?: number;
}

/** Another hill that the result is carried to. */
export interface TargetHill {
  hill: Hill;
  riderMass: number;
  riderPower: number;
  headWind: number;
  density: number;
  /** C_rr there; absent: the calibrated one */
  rolling?: number;
}

/** What is held the same in a comparison, so that its error cancels. */
export type Factor = 'bikes' | 'tyres' | 'mass' | 'setting';

export interface TestDay {
  /** what differs between the entries of `bikes`: everything, or one thing on the same bike */
  factor: Factor;
  hill: Hill;
  /** kg/m³ */
  density: number;
  /** m/s, head wind positive, on all runs that do not say otherwise */
  headWind: number;
  /** m² */
  dragArea: number;
  /** of chain and gears */
  efficiency: number;
  /** C_rr before any control run is looked at */
  rolling: number;
  /** kg with kit; also the common rider of the comparison */
  riderMass: number;
  /** W that the comparison is made at */
  targetPower: number;
  bikes: readonly TestBike[];
  /** in the order in which they were ridden */
  runs: readonly TestRun[];
  /** smallest step of a gauge, as a share */
  gaugeStep: number;
  target?: TargetHill;
}

/** How well everything is known: 95 % half-widths (1.96 standard uncertainties), absolute or relative as named. */
export interface DayDoubts {
  /** relative, of every reading of rider power alike */
  meterScale: number;
  /** relative, of each run's rider power for itself */
  meterRepeatability: number;
  /** s, each run */
  stopwatch: number;
  /** kg */
  riderMass: number;
  /** kg, each bike for itself */
  bikeMass: number;
  /** relative */
  distance: number;
  /** relative */
  gain: number;
  /** m² */
  dragArea: number;
  /** the ends of C_rr before any control run */
  rollingLow: number;
  rollingHigh: number;
  /** C_rr, between tyres that are not the same */
  tyres: number;
  /** relative change of rolling per m/s of speed: a slow control run cannot see it */
  rollingWithSpeed: number;
  /** of chain and gears, all bikes alike */
  efficiency: number;
  /** of chain and gears, each bike for itself */
  efficiencyBetween: number;
  /** relative */
  density: number;
  /** m/s, all runs alike */
  headWind: number;
  /**
   * relative to total power, run to run: wind, line and pacing, beside stopwatch and repeatability. A 95 % half-width as all of these, not
   * a standard deviation. Used while repeats leave fewer than 3 degrees of freedom; from then on they tell all three
   */
  scatter: number;
  /** relative, of the energy of a full battery */
  battery: number;
  /** C_rr of the other hill, when it has a grade or surface of its own */
  targetRolling: number;
}

/** What makes a result doubtful. `rolling` is the range of C_rr where there is no control run, `gauge` the steps of the gauge. */
export type DoubtName = Exclude<keyof DayDoubts, 'rollingLow' | 'rollingHigh'> | 'rolling' | 'gauge';

/** A result with its 95 % range (t with `freedom` degrees by Welch and Satterthwaite) and what makes it. */
export interface Estimate {
  value: number;
  low: number;
  high: number;
  /** combined standard uncertainty */
  standard: number;
  /** effective degrees of freedom; Infinity when nothing was estimated from repeats */
  freedom: number;
  /** share of the variance by cause, largest first, together 1 */
  causes: readonly { name: DoubtName; share: number }[];
}

/** What one run says. */
export interface ReducedRun {
  /** W at the crank, rider and motor */
  totalPower: number;
  /** W; of a control run, what it is off the calibrated hill */
  motorPower: number;
  /** time at the target power, s; NaN where the bike would stand still */
  timeAtTarget: number;
  /** total power over that of its bike's mean (or of the calibrated hill), less 1 */
  residual: number;
}

export interface ReducedBike {
  /** assisted runs that were counted */
  runs: number;
  /** W; of a bike with no assisted run absent, and so is all below */
  motorPower?: Estimate;
  /** s at the target power, common rider, own mass */
  time?: Estimate;
  /** m/s at the target power */
  speed?: Estimate;
  /** mean of the measured times, s */
  measuredTime?: number;
  /** s that normalising added to the mean of the measured times */
  correction?: number;
  /** support × rider power held the motor back in these runs, so it follows the rider */
  followsRider?: boolean;
  /** ridden, in the mean, in the fade before the limit or above it: the motor is a mean on this hill, a lower bound */
  insideFade?: boolean;
  /** J from the battery for one climb, by its gauge */
  batteryEnergy?: Estimate;
  /** the motor's work over it */
  efficiency?: Estimate;
  /** s on the other hill */
  targetTime?: Estimate;
}

/** Whether a difference is more than its doubt. */
export interface Verdict {
  /** second minus first */
  difference: Estimate;
  /** judged as the one pair that the page speaks of */
  realAlone: boolean;
  /** judged as one among all pairs of the day, by Tukey's width */
  realAmongAll: boolean;
  /** half-width of the difference among all pairs */
  widthAmongAll: number;
  /** further runs on each of the two that would make this difference real (alone), 0 when it is; null when no number would */
  runsNeeded: number | null;
}

export interface ReducedPair {
  first: number;
  second: number;
  time: Verdict;
  motorPower: Verdict;
  targetTime?: Verdict;
}

export interface Reduction {
  /** effective C_rr by tyres, in the order of their first bike */
  rolling: readonly { tyres: number; runs: number; estimate: Estimate }[];
  /** only where the control runs halve its prior or bring it below 0.05 m² */
  dragArea?: Estimate;
  scatter: {
    /** standard deviation of one run relative to total power that the ranges use */
    relative: number;
    /** from repeats; 0 when it is assumed */
    freedom: number;
    assumed: boolean;
  };
  /** change of total power from run to run, relative, and how likely chance alone gives as much */
  drift?: { perRun: number; probability: number };
  runs: readonly ReducedRun[];
  bikes: readonly ReducedBike[];
  /** every two bikes with assisted runs, by index */
  pairs: readonly ReducedPair[];
}

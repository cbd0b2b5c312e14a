import { type DayDoubts, FADE_WIDTH, type UncertainInput } from '../model/index.ts';

/*
 * How well each input is known: 95 % ranges, told with their sources in `causes.ts`. Two kinds: of things that nobody has measured on
 * this hill, and of instruments. What the reader says about the hill, the rider and the bike is taken as true.
 */

/** A trail that nobody surveyed, C_rr: two cross-country courses were at 0.022 and 0.030. */
export const UNSURVEYED_ROLLING = { low: 0.015, high: 0.035 };
/** Half-width, m², around any drag area. */
export const DRAG_HALF_WIDTH = 0.1;
/** Half-width of the efficiency of chain and gears. */
export const DRIVE_HALF_WIDTH = 0.02;
/** Half-width of the efficiency of the drive unit. */
export const UNIT_HALF_WIDTH = 0.05;
/** A figure for rolling resistance that the reader states: relative half-width, about what one read back from a control run has. */
export const STATED_ROLLING = 0.3;
/** No figure for rolling resistance is surer than this. */
export const LEAST_ROLLING = 0.001;
/** Width of the fade before the assist limit, m/s: 1 to 4 km/h, an assumption as the width itself. */
export const FADE_RANGE = { low: 1 / 3.6, high: 4 / 3.6 };

/** Usable energy of a pack: relative half-width, an assumption. */
export const PACK_KNOWN = 0.06;
/** Thermal time constant of a bicycle motor, s: nobody published one, small machines warm up over minutes to tens of minutes. */
export const UNKNOWN_WARM_UP = { low: 300, high: 2400 };
/** A time constant that the reader states: relative half-width. */
export const STATED_WARM_UP = 0.3;
/** Fixed over copper losses at continuous output, an assumption. */
export const FIXED_LOSSES_RANGE = { low: 0, high: 0.5 };

/** Half-width of C_rr on another hill when nothing is said about its surface: half the difference of those two courses. */
export const SURFACE_THERE = 0.004;

/** Instruments of a measured climb. Relative or absolute half-widths as named. */
/** Rider power that was held by feel and not read from a meter: relative half-width, all runs alike; an assumption. */
export const UNREAD_POWER = 0.15;
export const METER_SCALE = 0.02; // of rider power, shared by all runs
export const STEADINESS = 0.024; // of rider power, each run for itself: twice the scatter of one meter, 1.2 %
export const STOPWATCH = 1; // s, each run
export const RIDER_SCALE = 1; // kg
export const BIKE_SCALE = 0.3; // kg
export const DISTANCE_RELATIVE = 0.01;
export const GAIN_RELATIVE = 0.03;

/** Relative standard uncertainty of one run's rider power, for the weights of several control runs. */
export const POWER_REPEATABILITY = 0.012;
/**
 * 95 % half-width over standard uncertainty, of plans and control runs. A test day has it with more figures (`model/day/dayErrors.ts`). Both
 * stay: published links and days keep their results to 10⁻⁹, and one figure for both would change those of the one or the other by 2 · 10⁻⁵.
 */
export const COVERAGE = 1.96;

/** How well a day of test runs is known while the tester says nothing else: 95 % half-widths, each with where it comes from. */
export const DAY_DOUBTS: DayDoubts = {
  // a meter checked with hung weights; 54 unchecked ones scattered by 3.2 % (1 SD) about −0.9 % (Maier et al. 2017)
  meterScale: METER_SCALE,
  // 1.2 % (1 SD, the same study)
  meterRepeatability: STEADINESS,
  stopwatch: STOPWATCH,
  riderMass: RIDER_SCALE,
  bikeMass: BIKE_SCALE,
  distance: DISTANCE_RELATIVE,
  // barometric gain scatters by 1.5 to 1.9 % (1 SD) and reads 2 to 5 % low in the dry (Menaspà et al. 2016)
  gain: GAIN_RELATIVE,
  dragArea: DRAG_HALF_WIDTH,
  rollingLow: UNSURVEYED_ROLLING.low,
  rollingHigh: UNSURVEYED_ROLLING.high,
  // between tyres that are not alike: common practice, no source
  tyres: 0.005,
  // an assumption: nobody has measured it on such surfaces
  rollingWithSpeed: 0.03,
  efficiency: DRIVE_HALF_WIDTH,
  // a chain lost 2.1 ± 1.5 % on a bench (Smit et al. 2023): that two bikes differ by as much is an assumption
  efficiencyBetween: 0.015,
  // a pressure or altitude and a thermometer in the shade
  density: 0.01,
  // m/s, leaves that hardly move: an assumption
  headWind: 0.5,
  // an ordinary day, 1.8 % of total power as 1 SD: common practice, no source
  scatter: 0.035,
  battery: PACK_KNOWN,
  targetRolling: SURFACE_THERE,
};

const around = (name: string, value: number, half: number): UncertainInput => ({
  name,
  value,
  low: value - half,
  high: value + half,
});

/** Range of C_rr: that of an unsurveyed trail while the default stands, ±30 % of a figure that the reader states. */
export function rollingDoubt(value: number, stated: boolean): UncertainInput {
  return stated
    ? around('rolling', value, Math.max(LEAST_ROLLING, STATED_ROLLING * value))
    : { name: 'rolling', value, ...UNSURVEYED_ROLLING };
}

/** Range of a drag area, kept positive. */
export function dragDoubt(value: number): UncertainInput {
  return { name: 'drag', value, low: Math.max(0.05, value - DRAG_HALF_WIDTH), high: value + DRAG_HALF_WIDTH };
}

/** Range of an efficiency: at most 1. */
export function efficiencyDoubt(name: 'drive' | 'unit', value: number): UncertainInput {
  const half = name === 'drive' ? DRIVE_HALF_WIDTH : UNIT_HALF_WIDTH;
  return { name, value, low: value - half, high: Math.min(1, value + half) };
}

/** Range of the width of the fade; a width that a run gave away is taken as it is. */
export const fadeDoubt: UncertainInput = { name: 'fade', value: FADE_WIDTH, ...FADE_RANGE };

/** Range of a motor's time constant: wide while the default stands, ±30 % of a figure that the reader states. */
export function warmUpDoubt(value: number, stated: boolean): UncertainInput {
  return stated ? around('warm-up', value, STATED_WARM_UP * value) : { name: 'warm-up', value, ...UNKNOWN_WARM_UP };
}

/** Range of the fixed losses, widened to hold the value. */
export function fixedLossesDoubt(value: number): UncertainInput {
  const { low, high } = FIXED_LOSSES_RANGE;
  return { name: 'fixed-losses', value, low: Math.min(low, value), high: Math.max(high, value) };
}

/** A measured value with an absolute half-width. */
export const measured = around;

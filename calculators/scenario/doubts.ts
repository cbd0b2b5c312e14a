import { FADE_WIDTH, type UncertainInput } from '../model/index.ts';

/**
 * How well each input is known: 95 % ranges, stated on the page with their source. Two kinds: of things that nobody has measured on
 * this hill, and of instruments. What the reader says about the hill, the rider and the bike is taken as true.
 */
export interface Doubt {
  /** as in a sentence: "Most of the doubt is the surface." */
  cause: string;
  /** what the range is, for the table on the page */
  range: string;
  /** id in the bibliography, or why there is none */
  source: string;
}

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
export const METER_SCALE = 0.02; // of rider power, shared by all runs
export const STEADINESS = 0.024; // of rider power, each run for itself: twice the scatter of one meter, 1.2 %
export const STOPWATCH = 1; // s, each run
export const RIDER_SCALE = 1; // kg
export const BIKE_SCALE = 0.3; // kg
export const DISTANCE_RELATIVE = 0.01;
export const GAIN_RELATIVE = 0.03;

/** Relative standard uncertainty of one run's rider power, for the weights of several control runs. */
export const POWER_REPEATABILITY = 0.012;
/** 95 % half-width over standard uncertainty. */
export const COVERAGE = 1.96;

const percent = (ratio: number): string => `±${Number((100 * ratio).toFixed(1))}\u202f%`;
const STATED = `${percent(STATED_ROLLING)} around a figure of your own`;

export const doubts: Readonly<Record<string, Doubt>> = {
  rolling: {
    cause: 'the surface',
    range: `C_rr ${UNSURVEYED_ROLLING.low} to ${UNSURVEYED_ROLLING.high} on a trail that nobody surveyed; ${STATED}`,
    source: 'maier-2018',
  },
  surfaceThere: {
    cause: 'the surface of the other hill',
    range: `C_rr ±${SURFACE_THERE} of the measured hill’s, unless it is more of the same hill; as much around a figure of your own, at most ${percent(STATED_ROLLING)}`,
    source: 'maier-2019',
  },
  drag: {
    cause: 'how much air you push',
    range: `drag area ±${DRAG_HALF_WIDTH.toFixed(2)} m²`,
    source: 'bertucci-2013',
  },
  drive: { cause: 'the chain and gears', range: `efficiency ±${100 * DRIVE_HALF_WIDTH} points`, source: 'smit-2023' },
  unit: {
    cause: 'the losses of the drive unit',
    range: `efficiency ±${100 * UNIT_HALF_WIDTH} points`,
    source: 'assumption',
  },
  fade: {
    cause: 'how early the motor fades before its limit',
    range: `over the last ${3.6 * FADE_RANGE.low} to ${3.6 * FADE_RANGE.high} km/h`,
    source: 'assumption',
  },
  pack: {
    cause: 'how much the battery really holds',
    range: `${percent(PACK_KNOWN)} of its usable energy`,
    source: 'assumption',
  },
  'warm-up': {
    cause: 'how fast the motor warms up',
    range: `${UNKNOWN_WARM_UP.low / 60} to ${UNKNOWN_WARM_UP.high / 60} min: no measured value of a bicycle motor is published; ${percent(STATED_WARM_UP)} around a figure of your own`,
    source: 'assumption',
  },
  'fixed-losses': {
    cause: 'the motor’s fixed losses',
    range: `${FIXED_LOSSES_RANGE.low} to ${FIXED_LOSSES_RANGE.high} of the copper losses`,
    source: 'assumption',
  },
  meter: {
    cause: 'the power meter’s scale',
    range: `${percent(METER_SCALE)} of rider power, the same for all runs, for a meter that was checked; unchecked ones scatter three times as wide`,
    source: 'maier-2017',
  },
  steady: {
    cause: 'how steadily each run was ridden',
    range: `${percent(STEADINESS)} of rider power in each run`,
    source: 'maier-2017',
  },
  watch: { cause: 'the stopwatch', range: `±${STOPWATCH} s in each run`, source: 'assumption' },
  riderMass: { cause: 'the rider’s weight', range: `±${RIDER_SCALE} kg`, source: 'assumption' },
  bikeMass: { cause: 'the bikes’ weights', range: `±${BIKE_SCALE} kg for each bike`, source: 'assumption' },
  distance: { cause: 'the measured distance', range: percent(DISTANCE_RELATIVE), source: 'assumption' },
  gain: { cause: 'the measured height', range: percent(GAIN_RELATIVE), source: 'menaspa-2016' },
};

/** Name of the doubt behind an input of a propagation: `steady:2` belongs to `steady`. */
export function doubtOf(inputName: string): Doubt | undefined {
  return doubts[inputName.split(':')[0] ?? ''];
}

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

import type { UncertainResult } from '../model/index.ts';
import {
  BIKE_SCALE,
  DISTANCE_RELATIVE,
  DRAG_HALF_WIDTH,
  DRIVE_HALF_WIDTH,
  FADE_RANGE,
  FIXED_LOSSES_RANGE,
  GAIN_RELATIVE,
  METER_SCALE,
  PACK_KNOWN,
  RIDER_SCALE,
  STATED_ROLLING,
  STATED_WARM_UP,
  STEADINESS,
  STOPWATCH,
  SURFACE_THERE,
  UNIT_HALF_WIDTH,
  UNKNOWN_WARM_UP,
  UNSURVEYED_ROLLING,
} from './doubts.ts';

/*
 * Doubts in words: what a page says of them. It loads with the sentences and with the fold of a form, not before.
 */

export interface Doubt {
  /** as in a sentence: "Most of the doubt is the surface." */
  cause: string;
  /** what the range is, for the table on the page */
  range: string;
  /** id in the bibliography, or why there is none */
  source: string;
}

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

/** The cause of most of a result's doubt, or undefined when nothing moves it. Causes of one kind (each run's stopwatch) count together. */
export function mainCause(result: UncertainResult): { cause: string; low: number; high: number } | undefined {
  const sums = new Map<string, { down2: number; up2: number }>();
  let total = 0;
  for (const { name, down, up } of result.causes) {
    const cause = doubtOf(name)?.cause ?? name;
    const sum = sums.get(cause) ?? { down2: 0, up2: 0 };
    sum.down2 += down * down;
    sum.up2 += up * up;
    total += down * down + up * up;
    sums.set(cause, sum);
  }
  const largest = [...sums].sort(([, a], [, b]) => b.down2 + b.up2 - (a.down2 + a.up2))[0];
  if (!largest || !(total > 0) || !Number.isFinite(total)) return undefined;
  const [cause, { down2, up2 }] = largest;
  return { cause, low: result.value - Math.sqrt(down2), high: result.value + Math.sqrt(up2) };
}

import {
  airDensity,
  digitsOf,
  type RideCalibration,
  type RideDoubts,
  type RideSetting,
  type UncertainResult,
} from '../model/index.ts';
import { formatNumber, formatQuantity, type System } from '../quantities/index.ts';
import {
  BIKE_SCALE,
  DAY_DOUBTS,
  DISTANCE_RELATIVE,
  DRAG_HALF_WIDTH,
  DRIVE_HALF_WIDTH,
  GAIN_RELATIVE,
  METER_SCALE,
  RIDER_SCALE,
  rollingDoubt,
} from '../scenario/doubts.ts';
import { numberOf, type Scenario } from '../scenario/index.ts';
import { wholePercent } from './words.ts';

/** m by which the recorded height may drift on a climb: a barometer in changing weather, 0.4 hPa. An assumption. */
const HEIGHT_DRIFT = 3;

/** How well a recorded ride is known, 95 % half-widths. */
export const RIDE_DOUBTS: RideDoubts = {
  meter: METER_SCALE,
  mass: Math.hypot(RIDER_SCALE, BIKE_SCALE),
  gain: GAIN_RELATIVE,
  drift: HEIGHT_DRIFT,
  distance: DISTANCE_RELATIVE,
  drive: DRIVE_HALF_WIDTH,
  density: DAY_DOUBTS.density,
  wind: DAY_DOUBTS.headWind,
  drag: DRAG_HALF_WIDTH,
};

/** A stretch that was ridden with these masses (kg), in the air and with the drive of the scenario. */
export function rideSetting(scenario: Scenario, masses: { rider: number; bike: number }): RideSetting {
  return {
    mass: masses.rider + masses.bike,
    efficiency: numberOf(scenario, 'drive'),
    density: airDensity(numberOf(scenario, 'altitude'), numberOf(scenario, 'temperature')),
    headWind: numberOf(scenario, 'wind'),
    dragArea: numberOf(scenario, 'drag'),
    doubts: RIDE_DOUBTS,
  };
}

/** Decimals to which a range supports a figure: as many as its half-width needs for its first digit, and the figure for one of its own. */
function decimalsOf({ value, low, high }: Figure): number {
  const digits = Math.max(1, digitsOf(value, low, high));
  return Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
}

type Figure = Pick<UncertainResult, 'value' | 'low' | 'high'>;

/** A figure as a field takes it, to the digits that its range supports: 0.0247 ± 0.006 is 0.025, and 0.02 ± 0.004 is 0.020. */
export const supported = (result: Figure): string => result.value.toFixed(decimalsOf(result));

/** Its range, to the decimals of the figure, in words. */
export function supportedRange(result: Figure): string {
  const [low, high] = [result.low, result.high].map((end) => formatNumber(Math.max(0, end), decimalsOf(result)));
  return `${low} to ${high}`;
}

/** kg by which a weight may be wrong without anybody noticing: what a figure would be with so much more says how much hangs on it. */
export const WEIGHT_STEP = 10;

/**
 * C_rr of the smoothest and of the roughest surface that is commonly ridden: bicycle tyres on good asphalt, and soft ground. Values from
 * memory; beyond them a mistake is likelier than such a surface.
 */
export const COMMON_ROLLING = { low: 0.004, high: 0.05 };

/** Whether a figure is one that common surfaces have. */
export const isCommon = ({ value }: Figure): boolean => value >= COMMON_ROLLING.low && value <= COMMON_ROLLING.high;

/**
 * What is to be checked where a figure is not one of common surfaces, and how much of any figure hangs on the weight.
 * @param heavier change of C_rr if everything weighed `WEIGHT_STEP` more
 */
export function weightText(result: Figure, heavier: number, system: System): string {
  const step = formatQuantity(WEIGHT_STEP, 'mass', system, { digits: 0 });
  const change = formatNumber(Math.abs(heavier), 3);
  const moves = `${step} more would make it ${change} ${heavier < 0 ? 'less' : 'more'}.`;
  if (isCommon(result)) return moves;
  return `Hardly any surface rolls ${result.value < COMMON_ROLLING.low ? 'so well' : 'so badly'}. Check both weights first: ${moves}`;
}

/**
 * What the answer takes a rolling resistance to be good to once it stands in the field, beside what the ride told: a field holds no range.
 * @returns the sentence, and whether the answer's range is the narrower one
 */
export function rangeBelow(result: Figure): { text: string; isTooNarrow: boolean } {
  const { low, high } = rollingDoubt(Number(supported(result)), true);
  const isTooNarrow = high - low < 0.95 * (result.high - result.low);
  const below = `In the field it counts as good to ${supportedRange({ ...result, low, high })}`;
  return {
    isTooNarrow,
    text: isTooNarrow
      ? `${below}. This ride is less sure than that, so the answer’s range comes out too narrow.`
      : `${below}, as any figure that is typed there.`,
  };
}

const CAUSES: Readonly<Record<keyof RideDoubts | 'scatter', string>> = {
  meter: 'the power meter’s scale',
  mass: 'the weight of rider and bike',
  gain: 'the scale of the heights',
  drift: 'the drift of the heights',
  distance: 'the recorded way',
  drive: 'the chain and gears',
  density: 'the air’s density',
  wind: 'the wind',
  drag: 'how much air was pushed',
  scatter: 'how the stretch varies from piece to piece',
};

/** Causes of a result's doubt in words, the largest first. */
export const causesOf = ({ causes }: UncertainResult, most = 3): string[] =>
  causes
    .filter(({ down, up }) => up !== down)
    .slice(0, most)
    .map(({ name }) => CAUSES[name as keyof typeof CAUSES] ?? name);

/**
 * Why a ride says nothing of its hill.
 * @param road what can be used of the stretch and what is needed, as people read it
 * @param heavier change of C_rr if everything weighed `WEIGHT_STEP` more, where the ride asks for one
 */
export function uncalibratedText(
  { problem, coverage, rolling = Number.NaN, likely = [] }: Extract<RideCalibration, { problem: string }>,
  road: { used: string; least: string },
  heavier: number | undefined,
  system: System,
): string {
  switch (problem) {
    case 'times':
      return 'There are no times on this stretch: only a ride can be calibrated.';
    case 'power':
      return coverage > 0
        ? `Power covers ${wholePercent(coverage)} of this stretch: too little to calibrate with.`
        : 'There is no power on this stretch: without it the surface cannot be told.';
    case 'short':
      return `Only ${road.used} of this stretch can be used, without stops and coasting: at least ${road.least} are needed.`;
    case 'absurd': {
      const isLow = rolling < 0;
      const lighter = heavier === undefined ? Number.NaN : rolling - heavier;
      const other = isLow ? lighter : rolling + (heavier ?? Number.NaN);
      const step = formatQuantity(WEIGHT_STEP, 'mass', system, { digits: 0 });
      const weights = Number.isFinite(other)
        ? `Check both weights first: ${step} ${isLow ? 'less' : 'more'} would make it ${formatNumber(other, 3)}.`
        : 'Check both weights first.';
      const others = likely
        .filter((name) => name !== 'mass')
        .slice(0, 2)
        .map((name) => CAUSES[name])
        .join(' and ');
      return `It asks for a rolling resistance of ${formatNumber(rolling, 3)}, which no surface has. ${weights} Then ${others}, and ${
        isLow ? 'whether a motor helped' : 'whether a brake dragged'
      }.`;
    }
  }
}

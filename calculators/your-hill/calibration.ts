import {
  airDensity,
  digitsOf,
  type RideCalibration,
  type RideDoubts,
  type RideSetting,
  type UncertainResult,
} from '../model/index.ts';
import { formatNumber } from '../quantities/index.ts';
import {
  BIKE_SCALE,
  DAY_DOUBTS,
  DISTANCE_RELATIVE,
  DRAG_HALF_WIDTH,
  DRIVE_HALF_WIDTH,
  GAIN_RELATIVE,
  METER_SCALE,
  RIDER_SCALE,
} from '../scenario/doubts.ts';
import { numberOf, type Scenario } from '../scenario/index.ts';

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

/** A figure as a field takes it, to the digits that its range supports: 0.0247 ± 0.006 is 0.025. */
export function supported({ value, low, high }: UncertainResult): string {
  return String(Number(value.toPrecision(Math.max(1, digitsOf(value, low, high)))));
}

/** Its range, to the decimals of the figure, in words. */
export function supportedRange(result: UncertainResult): string {
  const decimals = supported(result).split('.')[1]?.length ?? 0;
  const [low, high] = [result.low, result.high].map((end) => formatNumber(Math.max(0, end), decimals));
  return `${low} to ${high}`;
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

/** Why a ride says nothing of its hill; `least` is the road that is needed, as people read it. */
export function uncalibratedText(
  { problem, coverage, rolling, likely = [] }: Extract<RideCalibration, { problem: string }>,
  road: { used: string; least: string },
): string {
  switch (problem) {
    case 'times':
      return 'There are no times on this stretch: only a ride can be calibrated.';
    case 'power':
      return coverage > 0
        ? `Power covers ${formatNumber(Math.floor(100 * coverage))}\u202f% of this stretch: too little to calibrate with.`
        : 'There is no power on this stretch: without it the surface cannot be told.';
    case 'short':
      return `Only ${road.used} of this stretch can be used, without stops and coasting: at least ${road.least} are needed.`;
    case 'absurd':
      return `It asks for a rolling resistance of ${formatNumber(rolling ?? Number.NaN, 3)}, which no surface has. Check ${likely
        .slice(0, 2)
        .map((name) => CAUSES[name])
        .join(' and ')}, and whether a motor helped.`;
  }
}

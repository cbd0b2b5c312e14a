import { calibrateRide, type RideCalibration, type RideSetting, smoothElevation, type Track } from '../model/index.ts';
import { WEIGHT_STEP } from './calibration.ts';

/** What a ride says of its hill, and how much of that hangs on the weight. */
export interface Calibrated {
  ride: RideCalibration;
  /** change of C_rr if everything weighed `WEIGHT_STEP` more; undefined where the ride says nothing */
  heavier: number | undefined;
}

/**
 * m of road over which heights are smoothed here, whatever the reader chose to see: a wide window takes ramps off both ends of a piece, and
 * so height that was climbed. Wide enough for the steps of a barometer. Ours.
 */
const WINDOW = 20;

/**
 * Calibrates a stretch that was ridden without a motor.
 * @param mended m, with what cannot be a height replaced, and not smoothed
 */
export function calibrated(
  track: Track,
  mended: Float64Array,
  { from, to }: { from: number; to: number },
  setting: RideSetting,
): Calibrated {
  const height = smoothElevation(track.distance, mended, WINDOW, track.breaks);
  const rollingAt = (mass: number): RideCalibration => calibrateRide(track, height, from, to, { ...setting, mass });
  const ride = rollingAt(setting.mass);
  const heavier = rollingOf(rollingAt(setting.mass + WEIGHT_STEP)) - rollingOf(ride);
  return { ride, heavier: Number.isFinite(heavier) ? heavier : undefined };
}

/** C_rr that a ride asks for, absurd or not; NaN where it asks for none. */
const rollingOf = (ride: RideCalibration): number =>
  ('problem' in ride ? ride.rolling : ride.rolling.value) ?? Number.NaN;

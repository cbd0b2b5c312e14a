import { type Climb, loadOf } from './climb.ts';
import { assistShare } from './motor.ts';
import { crankPower, resistanceOf } from './resistance.ts';

/** A climb whose motor is the unknown. */
export type ClimbWithoutMotor = Omit<Climb, 'motorPower'>;

/** Motor output read back from a measured time. W at the crank. */
export interface InferredMotor {
  /** mean output over this hill: crank power at that speed less the rider's. Negative when the time is longer than the rider alone would need. */
  mean: number;
  /** the run was ridden inside the fade or above the limit: how much more the motor would give lower down, nobody can tell from it, and `mean` is a lower bound */
  insideFade: boolean;
  /** the motor still gave power where its limit allows none: limit or time is wrong */
  aboveLimit: boolean;
  /**
   * Inside the fade: m/s below the limit at which a motor that holds `mean` starts to fade, namely where this run was ridden. Carried
   * on with it, the motor rides the same grade as fast as it did. Null elsewhere: the run says nothing about the fade.
   */
  fadeWidth: number | null;
}

/** Power at the crank, W, that riding the hill in `time` (s) took. */
export function crankPowerForTime(climb: ClimbWithoutMotor, time: number): number {
  const resistance = resistanceOf(loadOf({ ...climb, motorPower: 0 }));
  return crankPower(resistance, climb.hill.distance / time, climb.efficiency);
}

/**
 * Mean motor output from a time: `P_crank(v) − P_rider`. It is crank-equivalent, at this cadence, charge and temperature, and net of drag against motor-off.
 * @param time s, positive
 */
export function inferMotor(climb: ClimbWithoutMotor, time: number): InferredMotor {
  const mean = crankPowerForTime(climb, time) - climb.riderPower;
  const speed = climb.hill.distance / time;
  const below = climb.assistLimit === null ? Number.POSITIVE_INFINITY : climb.assistLimit - speed;
  const insideFade = assistShare(speed, climb.assistLimit) < 1;
  return { mean, insideFade, aboveLimit: below <= 0 && mean > 0, fadeWidth: insideFade && below > 0 ? below : null };
}

import { type Climb, loadOf } from './climb.ts';
import { assistShare } from './motor.ts';
import { crankPower, resistanceOf } from './resistance.ts';

/** A climb whose motor is the unknown. */
export type ClimbWithoutMotor = Omit<Climb, 'motorPower'>;

/** Motor output read back from a measured time. W at the crank. */
export interface InferredMotor {
  /** mean output over this hill: crank power at that speed less the rider's. Negative when the time is longer than the rider alone would need. */
  mean: number;
  /** output before the limit's fade; equals `mean` below the fade. Above the limit, and where `mean` is negative, nothing more can be known and it equals `mean`. */
  held: number;
  /** the run was ridden inside the fade or above the limit, so `mean` is only a lower bound for what the motor can give */
  insideFade: boolean;
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
  const share = assistShare(climb.hill.distance / time, climb.assistLimit);
  return { mean, held: mean > 0 && share > 0 ? mean / share : mean, insideFade: share < 1 };
}

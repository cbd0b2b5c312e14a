import { type Climb, loadOf } from './climb.ts';
import { assistShare } from './motor.ts';
import { powerForTime } from './powerForTime.ts';
import { crankPower, resistanceOf } from './resistance.ts';
import { rideProfile } from './ride.ts';

/** A climb whose motor is the unknown. */
export type ClimbWithoutMotor = Omit<Climb, 'motorPower'>;

/** Motor output read back from a measured time. W at the crank. */
export interface InferredMotor {
  /** mean output over this hill: crank power at that speed less the rider's. Negative when the time is longer than the rider alone would need. */
  mean: number;
  /** along a profile on which the limit binds on parts of the way: what the motor holds below its fade so that it takes that time. Absent elsewhere. */
  held?: number;
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

/** Power at the crank, W, that riding the hill in `time` (s) took; along a profile the even power that takes that time, 0 where the bike rolls as fast. */
export function crankPowerForTime(climb: ClimbWithoutMotor, time: number): number {
  const resistance = resistanceOf(loadOf({ ...climb, motorPower: 0 }));
  const power = crankPower(resistance, climb.hill.distance / time, climb.efficiency);
  if (!climb.hill.profile) return power;
  return powerForTime((riderPower) => ({ ...climb, riderPower, motorPower: 0 }), {}, time, 0, {
    guess: Math.max(1, power),
  });
}

/**
 * Mean motor output from a time: `P_crank(v) − P_rider`. It is crank-equivalent, at this cadence, charge and temperature, and net of drag against motor-off.
 * Along a profile it is the mean over time of a motor that holds one power wherever its limit lets it.
 * @param time s, positive
 */
export function inferMotor(climb: ClimbWithoutMotor, time: number): InferredMotor {
  if (climb.hill.profile) return inferAlongProfile(climb, time);
  const mean = crankPowerForTime(climb, time) - climb.riderPower;
  const speed = climb.hill.distance / time;
  const below = climb.assistLimit === null ? Number.POSITIVE_INFINITY : climb.assistLimit - speed;
  const insideFade = assistShare(speed, climb.assistLimit) < 1;
  return { mean, insideFade, aboveLimit: below <= 0 && mean > 0, fadeWidth: insideFade && below > 0 ? below : null };
}

function inferAlongProfile(climb: ClimbWithoutMotor, time: number): InferredMotor {
  const free = crankPowerForTime(climb, time) - climb.riderPower;
  const known = { insideFade: false, aboveLimit: false, fadeWidth: null };
  const { assistLimit, riderPower } = climb;
  if (!(free > 0) || assistLimit === null || !(riderPower > 0)) return { mean: free, ...known };
  const held = powerForTime((motorPower) => ({ ...climb, motorPower }), {}, time, free);
  // no motor, however strong, is as fast with this limit
  if (held === Number.POSITIVE_INFINITY) return { mean: free, insideFade: true, aboveLimit: true, fadeWidth: null };
  const ride = rideProfile({ ...climb, motorPower: held }, {});
  const limited = ride.spans.filter(({ limit }) => limit === 'assist-limit');
  if (limited.length === 0) return { mean: free, ...known };
  const inFade = limited.reduce((sum, { from, to }) => sum + to.time - from.time, 0);
  return { mean: ride.motorPower, held, ...known, insideFade: inFade > 0.999 * ride.time };
}

import { FADE_WIDTH } from './constants.ts';
import { type Gear, torquePower, wheelForce } from './gears.ts';
import type { Resistance } from './resistance.ts';
import { steadySpeed } from './speed.ts';

/** What turns the crank. Powers in W at the crank; `assistLimit` in m/s, null where none applies. What is absent does not bind. */
export interface Drive {
  riderPower: number;
  /** output the motor holds below the fade when nothing else binds, 0 for none */
  motorPower: number;
  assistLimit: number | null;
  /** m/s below the limit at which the motor starts to fade; `FADE_WIDTH` where nothing else is known */
  fadeWidth?: number;
  /** chain and gears, 0 to 1 */
  efficiency: number;
  /** most motor power for each watt of the rider */
  support?: number | undefined;
  /** most torque of the motor at the crank, N·m; it binds where the cadence is known */
  torque?: number | undefined;
  /** rpm that the rider keeps while the gears allow it */
  cadence?: number | undefined;
  /** the lowest gear: below its speed the cadence falls */
  gear?: Gear | undefined;
}

/** What a motor gives at most below the fade, W at the crank, and what sets it. */
export interface MotorBound {
  power: number;
  binds: 'peak' | 'torque' | 'support';
}

/** Least of peak, support × rider power and torque × cadence; nothing while the rider does not pedal. Where two are equal the first of these counts. */
export function motorBound(drive: Drive, cadence = drive.cadence): MotorBound {
  const { riderPower, motorPower, support, torque } = drive;
  let bound: MotorBound = { power: riderPower > 0 ? motorPower : 0, binds: 'peak' };
  const least = (power: number, binds: MotorBound['binds']): void => {
    if (power < bound.power) bound = { power, binds };
  };
  if (support !== undefined) least(support * riderPower, 'support');
  if (torque !== undefined && cadence !== undefined) least(torquePower(torque, cadence), 'torque');
  return bound;
}

/** Rider power, W, that brings out a peak (W) at a support ratio: Infinity where nothing is added. */
export const riderForPeak = (peak: number, support: number): number => (peak > 0 ? peak / support : 0);

/** Share of its output that a motor may give at speed `v` (m/s): 1 below the fade, linear to 0 at the limit. */
export function assistShare(v: number, assistLimit: number | null, fadeWidth = FADE_WIDTH): number {
  if (assistLimit === null) return 1;
  return Math.min(1, Math.max(0, (assistLimit - v) / fadeWidth));
}

/** Force at the ground, N, nothing lost, that the torque allows in the lowest gear; Infinity where torque or gear are unknown. */
function torqueForce({ torque, gear }: Drive): number {
  return torque !== undefined && gear ? wheelForce(torque, gear) : Number.POSITIVE_INFINITY;
}

/** Motor output, W at the crank, at speed `v` (m/s): the bound after the fade, and in the lowest gear what the torque allows there. */
export function motorOutput(drive: Drive, v: number): number {
  const faded = motorBound(drive).power * assistShare(v, drive.assistLimit, drive.fadeWidth);
  const force = torqueForce(drive);
  return force === Number.POSITIVE_INFINITY ? faded : Math.min(faded, force * v);
}

/**
 * Steady speed, m/s, of rider and motor together, the fade before the assist limit included.
 * A motor gives nothing while the rider does not pedal.
 */
export function drivenSpeed(r: Resistance, drive: Drive): number {
  const v = fadedSpeed(r, drive, motorBound(drive).power);
  const force = torqueForce(drive);
  if (!(force * v < motorOutput({ ...drive, gear: undefined }, v))) return v;
  // Below the lowest gear's speed the cadence falls, and a torque that binds is a constant force: so much less that resists.
  const { efficiency, riderPower } = drive;
  return steadySpeed({ ...r, constant: r.constant - efficiency * force }, efficiency * riderPower);
}

function fadedSpeed(r: Resistance, drive: Drive, motorPower: number): number {
  const { riderPower, assistLimit, efficiency, fadeWidth = FADE_WIDTH } = drive;
  const full = steadySpeed(r, efficiency * (riderPower + motorPower));
  if (assistLimit === null || motorPower === 0 || full <= assistLimit - fadeWidth) return full;
  const unassisted = steadySpeed(r, efficiency * riderPower);
  if (unassisted >= assistLimit) return unassisted;
  // Inside the fade the motor falls linearly with speed, which is a constant force more against a larger power.
  const perSpeed = motorPower / fadeWidth;
  const faded = { ...r, constant: r.constant + efficiency * perSpeed };
  return steadySpeed(faded, efficiency * (riderPower + perSpeed * assistLimit));
}

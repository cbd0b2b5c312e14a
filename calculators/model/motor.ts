import { FADE_WIDTH } from './constants.ts';
import type { Resistance } from './resistance.ts';
import { steadySpeed } from './speed.ts';

/** What turns the crank. Powers in W at the crank; `assistLimit` in m/s, null where none applies. */
export interface Drive {
  riderPower: number;
  /** mean output the motor holds below the fade, 0 for none */
  motorPower: number;
  assistLimit: number | null;
  /** m/s below the limit at which the motor starts to fade; `FADE_WIDTH` where nothing else is known */
  fadeWidth?: number;
  /** chain and gears, 0 to 1 */
  efficiency: number;
}

/** Share of its output that a motor may give at speed `v` (m/s): 1 below the fade, linear to 0 at the limit. */
export function assistShare(v: number, assistLimit: number | null, fadeWidth = FADE_WIDTH): number {
  if (assistLimit === null) return 1;
  return Math.min(1, Math.max(0, (assistLimit - v) / fadeWidth));
}

/**
 * Steady speed, m/s, of rider and motor together, the fade before the assist limit included.
 * A motor gives nothing while the rider does not pedal.
 */
export function drivenSpeed(r: Resistance, drive: Drive): number {
  const { riderPower, assistLimit, efficiency, fadeWidth = FADE_WIDTH } = drive;
  const motorPower = riderPower > 0 ? drive.motorPower : 0;
  const full = steadySpeed(r, efficiency * (riderPower + motorPower));
  if (assistLimit === null || motorPower === 0 || full <= assistLimit - fadeWidth) return full;
  const unassisted = steadySpeed(r, efficiency * riderPower);
  if (unassisted >= assistLimit) return unassisted;
  // Inside the fade the motor falls linearly with speed, which is a constant force more against a larger power.
  const perSpeed = motorPower / fadeWidth;
  const faded = { ...r, constant: r.constant + efficiency * perSpeed };
  return steadySpeed(faded, efficiency * (riderPower + perSpeed * assistLimit));
}

/** A motor's first-order heating. Powers in W at the crank, cadences in rpm. */
export interface Heat {
  /** what it holds for ever */
  continuous: number;
  /** cadence at which that is stated */
  continuousCadence: number;
  /** s: after it, the rise has come 63 % of the way */
  timeConstant: number;
  /** losses that do not depend on torque, over the copper losses at continuous output */
  fixedLosses: number;
  /** rise at the start over the permitted rise, 0 to 1 */
  rise: number;
}

/** Torque over the torque held for ever, when the motor gives `power` (W) at `cadence` (rpm). */
export function torqueRatio(power: number, cadence: number, heat: Heat): number {
  return (power * heat.continuousCadence) / (heat.continuous * cadence);
}

/** Cadence in rpm while there is any choice: the rider's, or else the one at which the motor's lasting output is stated. */
export const cadenceOf = ({ cadence }: { cadence?: number | undefined }, heat: Heat): number =>
  cadence ?? heat.continuousCadence;

/** Output, W, that heat allows for ever at `cadence` (rpm): the torque held for ever, turned at that cadence. */
export const heldPower = (cadence: number, heat: Heat): number => (heat.continuous * cadence) / heat.continuousCadence;

/** Final rise over the permitted one at a torque ratio `k`: copper losses go with its square, the fixed ones stay. */
export const finalRise = (k: number, fixedLosses: number): number => (k * k + fixedLosses) / (1 + fixedLosses);

/** Time, s, for which a torque ratio `k` can be held until the permitted rise is reached. Infinity at or below 1; 0 where it is reached already. */
export function holdTime(k: number, { timeConstant, fixedLosses, rise }: Heat): number {
  if (rise >= 1) return k > 1 ? 0 : Number.POSITIVE_INFINITY;
  if (k <= 1) return Number.POSITIVE_INFINITY;
  // τ ln((K − θ₀)/(K − 1)), in the form that keeps its digits for a large K
  return timeConstant * Math.log1p((1 - rise) / (finalRise(k, fixedLosses) - 1));
}

/** Rise over the permitted one after `t` seconds at a torque ratio `k`. */
export function riseAfter(k: number, t: number, { timeConstant, fixedLosses, rise }: Heat): number {
  const final = finalRise(k, fixedLosses);
  return final + (rise - final) * Math.exp(-t / timeConstant);
}

/** Torque ratio that a cold machine stands for `t` seconds (duty S2 of IEC 60034-1): the inverse of `holdTime`. */
export function shortTimeOverload(t: number, timeConstant: number, fixedLosses: number): number {
  return Math.sqrt((1 + fixedLosses) / -Math.expm1(-t / timeConstant) - fixedLosses);
}

/** Torque ratio that a machine stands for `on` seconds of every `on + off` (duty S3), with time constants of heating and of cooling at rest. */
export function intermittentOverload(
  on: number,
  off: number,
  heating: number,
  cooling: number,
  fixedLosses: number,
): number {
  const cycle = -Math.expm1(-(on / heating + off / cooling));
  return Math.sqrt(((1 + fixedLosses) * cycle) / -Math.expm1(-on / heating) - fixedLosses);
}

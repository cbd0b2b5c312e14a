import { GRAVITY } from './constants.ts';

/** From crank to ground in one gear. */
export interface Gear {
  /** rolling radius of the driven wheel, m */
  wheelRadius: number;
  /** turns of the wheel for one turn of the crank: teeth at the crank over teeth at the wheel */
  turns: number;
}

/** Crank power, W, of a torque (N·m) at a cadence (rpm). */
export const torquePower = (torque: number, cadence: number): number => (torque * 2 * Math.PI * cadence) / 60;

/** Mean torque, N·m, behind a power (W) at a cadence (rpm). */
export const crankTorque = (power: number, cadence: number): number => power / ((2 * Math.PI * cadence) / 60);

/** Cadence in rpm at which `torque` (N·m) makes `power` (W): above it the torque no longer limits. */
export const torqueCadence = (power: number, torque: number): number => (60 * power) / (2 * Math.PI * torque);

/** Torque, N·m, at the wheel of a torque at the crank, nothing lost on the way. */
export const wheelTorque = (torque: number, gear: Gear): number => torque / gear.turns;

/** Force, N, at the ground of a torque (N·m) at the crank, nothing lost on the way. */
export const wheelForce = (torque: number, gear: Gear): number => wheelTorque(torque, gear) / gear.wheelRadius;

/** Torque, N·m, at the crank of a force (N) on a level pedal. */
export const pedalTorque = (force: number, crankLength: number): number => force * crankLength;

/** Speed, m/s, at a cadence (rpm) in a gear. */
export const gearSpeed = (cadence: number, gear: Gear): number =>
  (2 * Math.PI * gear.wheelRadius * gear.turns * cadence) / 60;

/** Cadence, rpm, at a speed (m/s): the preferred one while the lowest gear allows it, below that it falls with the speed. */
export function cadenceAt(speed: number, gear: Gear, preferred: number): number {
  return Math.min(preferred, (60 * speed) / (2 * Math.PI * gear.wheelRadius * gear.turns));
}

/** Force, N, that holds `mass` (kg) on a slope at rest or at a crawl: m g (sin θ + C_rr cos θ). `grade` is tan. */
export function holdingForce(mass: number, grade: number, rolling: number): number {
  return (mass * GRAVITY * (grade + rolling)) / Math.sqrt(1 + grade * grade);
}

/**
 * Steepest grade (tan) that a force (N, not negative) at the ground holds: the inverse of `holdingForce`. Negative where it does not even roll on the level.
 * Null where the force carries more than the weight: no slope is too steep for it.
 */
export function steepestGrade(force: number, mass: number, rolling: number): number | null {
  const weight = mass * GRAVITY;
  if (!(force / (weight * Math.sqrt(1 + rolling * rolling)) < 1)) return null;
  const share = force / weight;
  // tan θ + c = k √(1 + tan² θ), a quadratic in tan θ, in the form without cancellation. Roots are the same in every browser; sines are not.
  const root = share * Math.sqrt(Math.max(0, 1 + rolling * rolling - share * share));
  return share < 0.5 ? (root - rolling) / (1 - share * share) : (share * share - rolling * rolling) / (root + rolling);
}

import { BEARINGS_CONSTANT, BEARINGS_PER_SPEED, GRAVITY } from './constants.ts';

/** What the hill and the air hold against a bike, apart from its speed. */
export interface Load {
  /** kg: rider, kit, bike, everything that moves */
  mass: number;
  sin: number;
  cos: number;
  /** C_rr, coefficient of rolling resistance */
  rolling: number;
  /** C_dA, m² (add F_W here if wheel rotation counts apart) */
  dragArea: number;
  /** kg/m³ */
  density: number;
  /** m/s, head wind positive */
  headWind: number;
  /** Count wheel bearings (the site does; some published checks do not). */
  bearings: boolean;
}

/** Force against motion as a function of speed: `constant + linear·v + quadratic·u|u|`, `u = v + headWind`. SI. */
export interface Resistance {
  constant: number;
  linear: number;
  quadratic: number;
  headWind: number;
}

/** Resistance law of a load: Martin et al. 1998, the terms without acceleration. */
export function resistanceOf(load: Load): Resistance {
  const weight = load.mass * GRAVITY;
  return {
    constant: weight * (load.sin + load.rolling * load.cos) + (load.bearings ? BEARINGS_CONSTANT : 0),
    linear: load.bearings ? BEARINGS_PER_SPEED : 0,
    quadratic: 0.5 * load.density * load.dragArea,
    headWind: load.headWind,
  };
}

/** Force in N against motion at speed `v` (m/s). Negative where the slope or a tail wind pushes. */
export function resistingForce(r: Resistance, v: number): number {
  const u = v + r.headWind;
  return r.constant + r.linear * v + r.quadratic * u * Math.abs(u);
}

/** The forces one by one, in N, at speed `v` (m/s). Their sum is `resistingForce`. Bearings count as rolling when `bearings` is set. */
export function forces(load: Load, v: number): { gravity: number; rolling: number; air: number } {
  const weight = load.mass * GRAVITY;
  const u = v + load.headWind;
  return {
    gravity: weight * load.sin,
    rolling: weight * load.cos * load.rolling + (load.bearings ? BEARINGS_CONSTANT + BEARINGS_PER_SPEED * v : 0),
    air: 0.5 * load.density * load.dragArea * u * Math.abs(u),
  };
}

/**
 * Power at the crank, W, to hold speed `v` (m/s). The drive loses a share of what passes through it,
 * so efficiency applies only while power flows to the wheel.
 */
export function crankPower(r: Resistance, v: number, driveEfficiency: number): number {
  const wheel = v * resistingForce(r, v);
  return wheel > 0 ? wheel / driveEfficiency : wheel;
}

/** Mean power, W, that goes into speeding up from `v0` to `v1` (m/s) in `seconds`; `inertia / radius²` is what the spinning wheels add to the mass (kg). */
export function kineticPower(mass: number, wheelMass: number, v0: number, v1: number, seconds: number): number {
  return (0.5 * (mass + wheelMass) * (v1 * v1 - v0 * v0)) / seconds;
}

import type { Hill } from './hill.ts';
import { type Drive, drivenSpeed, motorOutput } from './motor.ts';
import { forces, type Load, resistanceOf } from './resistance.ts';

/** Everything that decides a climb at steady speed. */
export interface Climb extends Drive {
  hill: Hill;
  /** kg, rider, bike and all they carry */
  mass: number;
  /** C_rr */
  rolling: number;
  /** C_dA, m² */
  dragArea: number;
  /** of the air, kg/m³ */
  density: number;
  /** m/s, negative for a tail wind */
  headWind: number;
  /** m/s above which the rider brakes, on a ride along a profile; none where absent */
  topSpeed?: number | undefined;
  /** kg that spinning wheels add to what must be sped up, inertia over radius squared; none where absent */
  wheelMass?: number | undefined;
  /** wheel bearings are counted, unless a published check leaves them out */
  bearings?: false | undefined;
}

/** A climb at steady speed, SI. `time` is Infinity when the bike does not move; the powers are then 0. */
export interface SteadyClimb {
  /** m/s along the road */
  speed: number;
  /** m/s, straight up */
  verticalSpeed: number;
  /** s */
  time: number;
  /** W at the crank, after the fade; `crankPower` is the rider's with it */
  motorPower: number;
  crankPower: number;
  /** where the crank power goes, W; they add up to it */
  powers: { gravity: number; rolling: number; air: number; drive: number };
}

/** The load that a climb puts on the bike, on the mean grade of its hill; wheel rotation left to C_dA. */
export function loadOf(climb: Climb): Load {
  const { hill, mass, rolling, dragArea, density, headWind, bearings = true } = climb;
  return { sin: hill.sin, cos: hill.cos, mass, rolling, dragArea, density, headWind, bearings };
}

/** Speed, time and power split of a climb ridden at steady speed from bottom to top. */
export function rideClimb(climb: Climb): SteadyClimb {
  const load = loadOf(climb);
  const speed = drivenSpeed(resistanceOf(load), climb);
  const force = forces(load, speed);
  const powers = { gravity: force.gravity * speed, rolling: force.rolling * speed, air: force.air * speed, drive: 0 };
  const motorPower = motorOutput(climb, speed);
  const crankPower = climb.riderPower + motorPower;
  powers.drive = speed > 0 ? (1 - climb.efficiency) * crankPower : 0;
  return {
    speed,
    verticalSpeed: speed * climb.hill.sin,
    time: climb.hill.distance / speed,
    motorPower,
    crankPower,
    powers,
  };
}

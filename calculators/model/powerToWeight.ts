import { type Climb, rideClimb } from './climb.ts';

/** W/kg with everything counted in. "rider" means body and kit. */
export interface PowerToWeight {
  /** rider power ÷ rider */
  rider: number;
  /** (rider + motor) ÷ rider, the motor at its full output */
  assisted: number;
  /** (rider + motor) ÷ all that moves */
  system: number;
  /** rider power on the same bike with the motor off that climbs as fast ÷ rider: the motor after the assist limit's fade */
  unassistedEquivalent: number;
}

/** Power-to-weight of a climb; `riderMass` in kg is the part of `climb.mass` that is body and kit. */
export function powerToWeight(climb: Climb, riderMass: number): PowerToWeight {
  const motorPower = climb.riderPower > 0 ? climb.motorPower : 0;
  return {
    rider: climb.riderPower / riderMass,
    assisted: (climb.riderPower + motorPower) / riderMass,
    system: (climb.riderPower + motorPower) / climb.mass,
    unassistedEquivalent: rideClimb(climb).crankPower / riderMass,
  };
}

/** Seconds that one more kilogram costs on this climb. */
export function timePerKilogram(climb: Climb): number {
  return rideClimb({ ...climb, mass: climb.mass + 1 }).time - rideClimb(climb).time;
}

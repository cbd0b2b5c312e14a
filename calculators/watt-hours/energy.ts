import {
  type Climb,
  drawnPower,
  emptyAfter,
  hillFromGain,
  type Reserves,
  rideClimb,
  rideStages,
} from '../model/index.ts';
import { batteryOf, optionalOf, type Scenario } from '../scenario/index.ts';

export type Battery = NonNullable<Reserves['battery']>;

/** What so many climbs take from a battery, and what follows where it holds less. SI. */
export interface Draw {
  /** J for all climbs with help to the top, idle included */
  needed: number;
  /** J drawn: that, or all there is */
  drawn: number;
  /** J that the motor's own work is of that, at the crank */
  motorWork: number;
  /** W at the crank, rider and motor, while there is help */
  crankPower: number;
  /** m along the road on one charge; Infinity where nothing is drawn */
  reach: number;
  /** s for all climbs, the part after the battery is empty ridden without help */
  time: number;
  /** s of that part */
  alone: number;
  /** share of the work at the crank that legs do */
  riderShare: number;
}

/** One long climb in place of several on the same hill. */
export function repeated(climb: Climb, laps: number): Climb {
  const { distance, gain } = climb.hill;
  return { ...climb, hill: hillFromGain(distance * laps, gain * laps) };
}

/** What a climb from bottom to top takes. Ways down are left out: repeated climbs are one long one. Not finite where the bike stands still. */
export function drawOf(climb: Climb, battery: Battery): Draw {
  const { motorPower, crankPower, time, speed } = rideClimb(climb);
  const draw = drawnPower(motorPower, battery.unitEfficiency, battery.idle);
  const ridden = rideStages(climb, { battery });
  return {
    needed: draw * time,
    drawn: ridden.energy,
    motorWork: motorPower * time,
    crankPower,
    reach: emptyAfter(battery.energy, draw) * speed,
    time: ridden.time,
    alone: ridden.stages.find(({ limit }) => limit === 'battery')?.time ?? 0,
    // a mean over stages may be more than all by its last digit
    riderShare: Math.min(1, climb.riderPower / ridden.crankPower),
  };
}

/** Nominal energy of the battery without its add-on, J: volts × amp-hours where both are given. */
export function nominalOf(scenario: Scenario): number {
  const product = (optionalOf(scenario, 'volts') ?? Number.NaN) * (optionalOf(scenario, 'amp-hours') ?? Number.NaN);
  return Number.isNaN(product) ? (batteryOf(scenario, 0) ?? Number.NaN) : product;
}

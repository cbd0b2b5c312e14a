import {
  type Climb,
  drawnPower,
  type Hill,
  inferMotor,
  isAlongProfile,
  type ProfileRide,
  type Reserves,
  rideStages,
  type StagedClimb,
} from '../model/index.ts';

/** Rides a climb. */
export type Riding = (climb: Climb, reserves: Reserves) => StagedClimb;

/** All that a ride on a known hill follows from, a bike's battery left out: whatever a climb and its reserves hold, so that nothing new is forgotten. */
function keyOf({ hill: _, ...climb }: Climb, reserves: Omit<Reserves, 'battery'>): string {
  return JSON.stringify([climb, reserves]);
}

/** The same ride, with what it draws from a battery. Its stages are made only where somebody asks for them, which copying would do. */
function drawing(ride: StagedClimb, energy: number): StagedClimb {
  if (!isAlongProfile(ride)) return { ...ride, energy };
  const { time, speed, verticalSpeed, motorPower, crankPower, powers, points, spans, brakes, kinetic } = ride;
  const drawn: ProfileRide = {
    ...{ time, speed, verticalSpeed, motorPower, crankPower, powers },
    ...{ points, spans, brakes, kinetic, energy },
    get stages() {
      return ride.stages;
    },
  };
  return drawn;
}

/**
 * Rides of one hill, each ridden once. A range asks for many rides, most of them alike: what another bike is known to, or how much a battery
 * holds that lasts anyway, does not change a ride. One that is empty on the way is ridden as it is. A hill of one grade takes no time worth saving.
 */
export function ridesOf(hill: Hill): Riding {
  if (!hill.profile) return rideStages;
  const known = new Map<string, StagedClimb>();
  return (climb, reserves) => {
    if (climb.hill !== hill) return rideStages(climb, reserves);
    const { battery, ...rest } = reserves;
    const key = keyOf(climb, rest);
    const lasting = known.get(key) ?? rideStages(climb, rest);
    known.set(key, lasting);
    if (!battery || !Number.isFinite(lasting.time)) return lasting;
    const energy = lasting.time * drawnPower(lasting.motorPower, battery.unitEfficiency, battery.idle);
    return energy < battery.energy ? drawing(lasting, energy) : rideStages(climb, reserves);
  };
}

/** Mean output of motors, W, read back from times up one hill (s), each once: along a hill in pieces that takes many rides. */
export function motorsOf(hill: Hill): (climb: Climb, time: number) => number {
  const known = new Map<string, number>();
  return (climb, time) => {
    if (!hill.profile) return inferMotor(climb, time).mean;
    const key = `${keyOf(climb, {})},${time}`;
    const mean = known.get(key) ?? inferMotor(climb, time).mean;
    known.set(key, mean);
    return mean;
  };
}

import { type Climb, loadOf } from './climb.ts';
import { assistShare, motorBound, motorOutput } from './motor.ts';
import { powerForTime, type Search } from './powerForTime.ts';
import { profileOf } from './profile.ts';
import { crankPower, resistanceOf } from './resistance.ts';
import { type Reserves, rideStages } from './stages.ts';

/** Power at the crank, W, that rides the hill at `speed` (m/s). */
const crankPowerAt = (climb: Climb, speed: number): number =>
  crankPower(resistanceOf(loadOf(climb)), speed, climb.efficiency);

/** Later than `time` by more than rounding. */
const isLater = (taken: number, time: number): boolean => taken > time * (1 + 1e-9);

/** Hardly any pedalling, W: enough for a motor to help. */
const TOUCH = 1e-3;

/** W, more than any motor has. */
const FAR_TOO_MUCH = 1e6;

/**
 * Power, W, of the rider that takes `time` (s) up this hill with this motor. Zero where less than any pedalling would do:
 * a motor gives nothing without it, and with it the climb is faster. Where something runs out on the way, the legs make up for it.
 * @param search for a hill with a profile
 */
export function riderToKeep(climb: Climb, time: number, reserves: Reserves = {}, search: Search = {}): number {
  if (climb.hill.profile) return riderAlongProfile(climb, time, reserves, search);
  const lasting = riderWhileItLasts(climb, time);
  const isSlow = (riderPower: number): boolean => isLater(rideStages({ ...climb, riderPower }, reserves).time, time);
  let low = Math.max(lasting, TOUCH);
  if (!isSlow(low)) return lasting;
  let high = crankPowerAt(climb, climb.hill.distance / time); // no help at all
  while (high - low > 1e-12 * high) {
    const middle = 0.5 * (low + high);
    if (middle <= low || middle >= high) break;
    if (rideStages({ ...climb, riderPower: middle }, reserves).time > time) low = middle;
    else high = middle;
  }
  return high;
}

/** The same along a profile, by trying. */
function riderAlongProfile(climb: Climb, time: number, reserves: Reserves, search: Search): number {
  const guess = search.guess ?? Math.max(1, riderWhileItLasts(climb, time));
  const withLegs = (riderPower: number): Climb => ({ ...climb, riderPower });
  const power = powerForTime(withLegs, reserves, time, TOUCH, { ...search, guess });
  return power > TOUCH ? power : 0;
}

/** The same with a motor that gives what it can from bottom to top. */
function riderWhileItLasts(climb: Climb, time: number): number {
  const speed = climb.hill.distance / time;
  const needed = crankPowerAt(climb, speed);
  const { support, ...rest } = climb;
  const helped = motorOutput({ ...rest, riderPower: 1 }, speed);
  const alone = needed - helped;
  if (support === undefined) return Math.max(0, alone);
  // while support × rider power is the least, the legs and what they bring out add up to what is needed
  const share = assistShare(speed, climb.assistLimit, climb.fadeWidth);
  return Math.max(0, alone, needed / (1 + support * share));
}

/** Why no motor makes up the time: nobody pedals, the limit stops it before that speed, the legs do it alone, torque or support binds before, or its battery or heat ends it on the way. */
export type NoMotor = 'no-pedalling' | 'beyond-limit' | 'none-needed' | 'bound' | 'runs-out';

/**
 * Power, W, that the motor must hold below its fade so that the rider takes `time` (s); or why there is none.
 * @param search for a hill with a profile
 */
export function motorToKeep(
  climb: Climb,
  time: number,
  reserves: Reserves = {},
  search: Search = {},
): number | NoMotor {
  if (climb.hill.profile) return motorAlongProfile(climb, time, reserves, search);
  const speed = climb.hill.distance / time;
  const needed = crankPowerAt(climb, speed) - climb.riderPower;
  if (!(needed > 0)) return 'none-needed';
  if (!(climb.riderPower > 0)) return 'no-pedalling';
  const share = assistShare(speed, climb.assistLimit, climb.fadeWidth);
  if (share === 0) return 'beyond-limit';
  const motorPower = needed / share;
  const given = { ...climb, motorPower };
  if (motorBound(given).binds !== 'peak' || motorOutput(given, speed) < needed * (1 - 1e-12)) return 'bound';
  return isLater(rideStages(given, reserves).time, time) ? 'runs-out' : motorPower;
}

function motorAlongProfile(climb: Climb, time: number, reserves: Reserves, search: Search): number | NoMotor {
  const { riding = rideStages } = search;
  if (riding({ ...climb, motorPower: 0 }, {}).time <= time) return 'none-needed';
  if (!(climb.riderPower > 0)) return 'no-pedalling';
  const guess = search.guess ?? Math.max(1, crankPowerAt(climb, climb.hill.distance / time) - climb.riderPower);
  const withMotor = (motorPower: number): Climb => ({ ...climb, motorPower });
  const motor = powerForTime(withMotor, {}, time, 0, { ...search, guess });
  if (motor === Number.POSITIVE_INFINITY) {
    const unbound = { ...climb, support: undefined, torque: undefined, motorPower: FAR_TOO_MUCH };
    return isLater(riding(unbound, {}).time, time) ? 'beyond-limit' : 'bound';
  }
  return isLater(riding({ ...climb, motorPower: motor }, reserves).time, time) ? 'runs-out' : motor;
}

/**
 * Motor power, W at the crank, that the hill takes at the assist limit: no motor, however strong, is faster there. Null without a limit, or where the rider
 * alone is. Along a profile its steepest piece decides.
 */
export function powerAtLimit(climb: Climb): number | null {
  if (climb.assistLimit === null) return null;
  const power = crankPowerAt(steepest(climb), climb.assistLimit) - climb.riderPower;
  return power > 0 ? power : null;
}

/** The climb on the steepest piece of its profile. */
function steepest(climb: Climb): Climb {
  if (!climb.hill.profile) return climb;
  const { distance, height } = profileOf(climb.hill);
  let sin = -1;
  for (let i = 1; i < distance.length; i++) {
    const rise = (height[i] as number) - (height[i - 1] as number);
    sin = Math.max(sin, rise / ((distance[i] as number) - (distance[i - 1] as number)));
  }
  return { ...climb, hill: { ...climb.hill, sin, cos: Math.sqrt(1 - sin * sin) } };
}

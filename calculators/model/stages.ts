import { drawnPower, emptyAfter } from './battery.ts';
import { type Climb, rideClimb, type SteadyClimb } from './climb.ts';
import { crossingOf } from './crossing.ts';
import type { Endurance } from './endurance.ts';
import { cadenceAt, crankTorque } from './gears.ts';
import { cadenceOf, type Heat, heldPower, holdTime, torqueRatio } from './heat.ts';
import { assistShare, motorBound } from './motor.ts';
import { isAlongProfile, rideProfile, type SpanLimit } from './ride.ts';

/** What a long climb can use up. What is absent lasts for ever. */
export interface Reserves {
  battery?:
    | {
        /** J that can be drawn from the bottom on */
        energy: number;
        /** battery to crank */
        unitEfficiency: number;
        /** W for display, controller and lights */
        idle: number;
      }
    | undefined;
  heat?: Heat | undefined;
  /** the rider, who goes on at the critical power once the work above it is done */
  endurance?: Endurance | undefined;
}

/** A part of a climb at one steady speed; `limit` is what holds the motor back on it. */
export interface Stage {
  limit: 'none' | 'heat' | 'battery';
  /** where it begins: m and s from the bottom */
  from: { distance: number; time: number };
  /** m along the road, and s */
  distance: number;
  time: number;
  /** m/s */
  speed: number;
  /** W at the crank */
  motorPower: number;
  /** m/s at its two ends, along a profile, where `speed` is the mean */
  ends?: readonly [number, number];
}

/** A climb in stages: speed and powers are means over its time. */
export interface StagedClimb extends SteadyClimb {
  /** J drawn from the battery, 0 where none is given */
  energy: number;
  stages: Stage[];
}

/** Time, s, for which a cold or warm motor rides on like this before heat limits it. In the lowest gear a slow bike turns its motor slowly, at more torque for its power. */
function heatIn(climb: Climb, heat: Heat, { motorPower, speed }: SteadyClimb): number {
  if (!(motorPower > 0)) return Number.POSITIVE_INFINITY;
  const preferred = cadenceOf(climb, heat);
  const cadence = climb.gear ? cadenceAt(speed, climb.gear, preferred) : preferred;
  return holdTime(torqueRatio(motorPower, cadence, heat), heat);
}

/** The climb once heat limits its motor: the torque held for ever, turned at the rider's cadence or what the lowest gear leaves of it. */
function heatLimited(climb: Climb, heat: Heat): Climb {
  const { torque = Number.POSITIVE_INFINITY } = climb;
  const held = heldPower(cadenceOf(climb, heat), heat);
  return {
    ...climb,
    motorPower: Math.min(climb.motorPower, held),
    torque: Math.min(torque, crankTorque(heat.continuous, heat.continuousCadence)),
    // More than the held power came through the fade at a higher speed, so all of the held power comes through at this lower one.
    assistLimit: null,
  };
}

/**
 * A long climb: full output until heat limits it, then what heat allows, until the battery is empty, then the rider alone. On one grade with
 * nothing to use up it is `rideClimb`. Along a profile, and where the rider tires, it is `rideProfile`.
 */
export function rideStages(climb: Climb, reserves: Reserves): StagedClimb {
  if (climb.hill.profile || reserves.endurance) return rideProfile(climb, reserves);
  return rideOneGrade(climb, reserves);
}

function rideOneGrade(climb: Climb, { battery, heat }: Reserves): StagedClimb {
  const rides: { ride: SteadyClimb; time: number }[] = [];
  const stages: Stage[] = [];
  let limit: Stage['limit'] = 'none';
  let ride = rideClimb(climb);
  // Nobody pedals: nothing is used up, and there is no top to get to. Or one is there at once.
  if (!(ride.speed > 0 && ride.time > 0)) return { ...ride, energy: 0, stages };
  let [distance, time, energy] = [0, 0, 0];
  let hotIn = heat ? heatIn(climb, heat, ride) : Number.POSITIVE_INFINITY;
  for (;;) {
    const drawn =
      battery && limit !== 'battery' ? drawnPower(ride.motorPower, battery.unitEfficiency, battery.idle) : 0;
    // where the motor gives nothing, as beyond its limit, an empty battery changes nothing either
    const left = battery && ride.motorPower > 0 ? battery.energy - energy : Number.POSITIVE_INFINITY;
    const emptyIn = emptyAfter(left, drawn);
    const toTop = (climb.hill.distance - distance) / ride.speed;
    const lasts = Math.min(toTop, hotIn, emptyIn);
    if (lasts > 0) {
      const { speed, motorPower } = ride;
      const stretch = lasts === toTop ? climb.hill.distance - distance : speed * lasts;
      stages.push({ limit, from: { distance, time }, distance: stretch, time: lasts, speed, motorPower });
      rides.push({ ride, time: lasts });
      distance += stretch;
      time += lasts;
      energy = Math.min(energy + drawn * lasts, battery?.energy ?? 0);
    }
    if (!(lasts < toTop)) break;
    if (emptyIn <= hotIn) {
      limit = 'battery';
      ride = rideClimb({ ...climb, motorPower: 0 });
      if (battery) energy = battery.energy;
    } else if (heat) {
      limit = 'heat';
      ride = rideClimb(heatLimited(climb, heat));
    }
    hotIn = Number.POSITIVE_INFINITY;
  }
  const first = rides[0];
  if (rides.length === 1 && first) return { ...first.ride, energy, stages };
  const mean = (of: (ride: SteadyClimb) => number): number =>
    rides.reduce((sum, { ride: part, time: lasts }) => sum + of(part) * lasts, 0) / time;
  return {
    time,
    speed: climb.hill.distance / time,
    verticalSpeed: climb.hill.gain / time,
    motorPower: mean((part) => part.motorPower),
    crankPower: mean((part) => part.crankPower),
    powers: {
      gravity: mean(({ powers }) => powers.gravity),
      rolling: mean(({ powers }) => powers.rolling),
      air: mean(({ powers }) => powers.air),
      drive: mean(({ powers }) => powers.drive),
    },
    energy,
    stages,
  };
}

/** Something that holds a climb back, from where on, and what it costs. */
export interface Limit {
  limit: SpanLimit;
  /** s more than the same climb without it */
  lost: number;
  /** m and s from the bottom, where it first binds */
  from: { distance: number; time: number };
}

/**
 * What binds on a climb, the costliest first; empty where nothing does. The rider's endurance and a top speed are among them where they are given.
 * @param riding rides a climb; for one that remembers its rides
 */
export function limitsOf(climb: Climb, reserves: Reserves, riding = rideStages): Limit[] {
  const ride = riding(climb, reserves);
  const limits = bindingOn(climb, ride).map((one) => costOf(climb, reserves, ride, one, riding));
  return limits.filter((one) => isFelt(ride, one)).sort((a, b) => b.lost - a.lost);
}

/** The one of these limits that is asked for, from a ride that is known already; undefined where it does not bind. */
export function costOfLimit(
  climb: Climb,
  reserves: Reserves,
  ride: StagedClimb,
  limit: Limit['limit'],
  riding = rideStages,
): Limit | undefined {
  const binding = bindingOn(climb, ride).find((one) => one.limit === limit);
  const cost = binding && costOf(climb, reserves, ride, binding, riding);
  return cost && isFelt(ride, cost) ? cost : undefined;
}

/** What costs nothing (or a last digit) does not bind: another limit is the lower one. But heat may save what the battery then has for longer. */
const isFelt = (ride: StagedClimb, { limit, lost }: Limit): boolean => lost > 1e-12 * ride.time || limit === 'heat';

function costOf(
  climb: Climb,
  reserves: Reserves,
  ride: StagedClimb,
  { limit, from }: Omit<Limit, 'lost'>,
  riding: typeof rideStages,
): Limit {
  const without =
    limit === 'assist-limit'
      ? riding({ ...climb, assistLimit: null }, reserves)
      : limit === 'torque' || limit === 'support'
        ? riding({ ...climb, [limit]: undefined }, reserves)
        : limit === 'brakes'
          ? riding({ ...climb, topSpeed: undefined }, reserves)
          : riding(climb, { ...reserves, [limit]: undefined });
  return { limit, lost: Math.max(0, ride.time - without.time), from };
}

/** What holds the climb back, and from where on: along a profile as it was ridden, on one grade as it follows from the speeds. */
function bindingOn(climb: Climb, ride: StagedClimb): Omit<Limit, 'lost'>[] {
  const limits: Omit<Limit, 'lost'>[] = [];
  if (isAlongProfile(ride)) {
    for (const { limit, from } of ride.spans)
      if (!limits.some((one) => one.limit === limit)) limits.push({ limit, from });
    return limits;
  }
  const add = (limit: Limit['limit'], from = { distance: 0, time: 0 }): void => {
    limits.push({ limit, from });
  };
  const first = ride.stages[0];
  const bound = motorBound(climb);
  if (first?.limit === 'none' && bound.power > 0 && assistShare(first.speed, climb.assistLimit, climb.fadeWidth) < 1)
    add('assist-limit');
  const torqueBinds = bound.binds === 'torque' || (first?.limit === 'none' && isTorqueBound(climb, first));
  if (torqueBinds) add('torque');
  else if (bound.binds === 'support') add('support');
  for (const limit of ['heat', 'battery'] as const) {
    const stage = ride.stages.find((one) => one.limit === limit);
    if (stage) add(limit, stage.from);
  }
  return limits;
}

/** In the lowest gear the cadence falls, and with it what the torque makes. */
function isTorqueBound(climb: Climb, { motorPower, speed }: Stage): boolean {
  const faded = motorBound(climb).power * assistShare(speed, climb.assistLimit, climb.fadeWidth);
  return motorPower < faded * (1 - 1e-12);
}

/**
 * Distance, m, from the bottom after `time` (s) of a climb in stages; the top where it is over. Along a profile a bike is taken to settle to the speed at which
 * it leaves a stage as a decaying exponential does, at the rate that takes its time: within a metre or so of where it is.
 */
export function distanceAfter({ stages }: StagedClimb, time: number): number {
  let distance = 0;
  for (const stage of stages) {
    const spent = time - stage.from.time;
    if (spent <= 0) break;
    distance += spent >= stage.time || !stage.ends ? stage.speed * Math.min(stage.time, spent) : settled(stage, spent);
  }
  return distance;
}

/** Distance, m, after `spent` seconds of a stage whose speed goes from one end to the other. */
function settled({ speed, time, ends = [speed, speed] }: Stage, spent: number): number {
  const [from, to] = ends;
  // what the mean speed has left of the difference: (1 − e^−z)/z for z e-foldings in all
  const share = (speed - to) / (from - to);
  if (!(share > 0 && share < 1)) return speed * spent;
  const shareOf = (z: number): number => -Math.expm1(-z) / z;
  const foldings = crossingOf((z) => share - shareOf(z), 1e-9, 2 / share);
  const progress = (foldings * spent) / time;
  return spent * (to + (from - to) * shareOf(progress));
}

import {
  type Climb,
  type Heat,
  holdTime,
  motorToKeep,
  type Reserves,
  rideClimb,
  riderToKeep,
  rideStages,
  shortTimeOverload,
} from '../../calculators/model/index.ts';
import { anyAscent, anyBoundAscent, anyClimb, anyReserves } from '../model/climbs.ts';
import { type Random, random, relative } from '../random.ts';
import { bisect, type Comparison } from './comparisons.ts';

/*
 * Long climbs by small steps in time, written from the definitions and not from the model: what the motor may give in this state,
 * the speed at which the powers balance, then a little further up, a little warmer, a little emptier.
 */

/**
 * What the motor gives at speed `v`, W at the crank: the least of what it can and the rider brings out, faded before its limit; and no
 * more than its torque makes in the lowest gear, nor than `lasting` (N·m) once it is hot. What heat leaves is held: a motor that gave
 * less in its fade would cool down and be let up again.
 */
export function output(climb: Climb, v: number, lasting: number, preferred: number): number {
  if (!(climb.riderPower > 0)) return 0;
  const { gear, assistLimit, fadeWidth = 2 / 3.6, support = Number.POSITIVE_INFINITY } = climb;
  const { torque = Number.POSITIVE_INFINITY, cadence = Number.POSITIVE_INFINITY } = climb;
  const lowest = gear ? v / (2 * Math.PI * gear.wheelRadius * gear.turns) : Number.POSITIVE_INFINITY; // turns/s
  const fade = assistLimit === null ? 1 : Math.max(0, Math.min(1, (assistLimit - v) / fadeWidth));
  const full = Math.min(climb.motorPower, support * climb.riderPower, (2 * Math.PI * torque * cadence) / 60);
  return Math.min(fade * full, 2 * Math.PI * torque * lowest, 2 * Math.PI * lasting * Math.min(lowest, preferred / 60));
}

/** Speed at which what the crank passes on is what hill, tyres, bearings and air take. */
export function balancedSpeed(climb: Climb, motor: (v: number) => number): number {
  const { mass, rolling, hill, density, dragArea, headWind, efficiency, riderPower } = climb;
  const surplus = (v: number): number => {
    const u = v + headWind;
    const slope = Math.atan(hill.grade);
    const weight = mass * 9.80665 * (Math.sin(slope) + rolling * Math.cos(slope));
    const force = weight + 0.091 + 0.0087 * v + 0.5 * density * dragArea * u * Math.abs(u);
    return force < 0 ? force : v * force - efficiency * (riderPower + motor(v));
  };
  return bisect(surplus, 0, 1e4);
}

/** Speed in the lowest gear and above it, by halving. */
function boundSpeed(count: number): number {
  const r = random(34);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const any = { ...anyBoundAscent(r), headWind: r.between(-15, 15) };
    const climb = { ...any, hill: r.chance(0.2) ? anyClimb(r).hill : any.hill };
    const motor = (v: number): number => output(climb, v, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);
    largest = Math.max(largest, relative(rideClimb(climb).speed, balancedSpeed(climb, motor)));
  }
  return largest;
}

/** Time, s, motor work, J, and energy drawn, J, of a climb in `steps` steps or somewhat more. */
export function marched(climb: Climb, { battery, heat }: Reserves, steps: number) {
  const preferred = climb.cadence ?? heat?.continuousCadence ?? Number.POSITIVE_INFINITY;
  const turns = (v: number): number => {
    const { gear } = climb;
    return gear ? Math.min(preferred, (60 * v) / (2 * Math.PI * gear.wheelRadius * gear.turns)) : preferred;
  };
  const lasting = heat ? (30 * heat.continuous) / (Math.PI * heat.continuousCadence) : Number.POSITIVE_INFINITY;
  const paces = new Map<number, { v: number; power: number }>();
  const pace = (charged: boolean, cool: boolean): { v: number; power: number } => {
    const motor = (v: number): number =>
      charged ? output(climb, v, cool ? Number.POSITIVE_INFINITY : lasting, preferred) : 0;
    const v = balancedSpeed(climb, motor);
    return { v, power: motor(v) };
  };
  const dt = rideClimb(climb).time / steps;
  let [distance, time, work, drawn, rise] = [0, 0, 0, 0, heat?.rise ?? 0];
  for (;;) {
    const charged = !battery || drawn < battery.energy;
    const cool = rise < 1;
    const state = Number(charged) + 2 * Number(cool);
    const known = paces.get(state) ?? pace(charged, cool);
    paces.set(state, known);
    const { v, power } = known;
    const step = Math.min(dt, (climb.hill.distance - distance) / v);
    distance += v * step;
    time += step;
    work += power * step;
    if (battery && charged) drawn += (power / battery.unitEfficiency + battery.idle) * step;
    if (heat) {
      const ratio = power / ((lasting * Math.PI * turns(v)) / 30);
      const final = (ratio * ratio + heat.fixedLosses) / (1 + heat.fixedLosses);
      rise += (step * (final - rise)) / heat.timeConstant;
    }
    if (step < dt) return { time, work, drawn };
  }
}

/** A climb that is worth stepping through: not so slow without its motor that it never ends. */
export function anyLongClimb(r: Random): { climb: Climb; reserves: Reserves } {
  for (;;) {
    const climb = { ...anyBoundAscent(r), riderPower: r.between(60, 400) };
    const alone = rideClimb({ ...climb, motorPower: 0 }).time;
    if (alone < 20 * rideClimb(climb).time) return { climb, reserves: anyReserves(r, climb) };
  }
}

/** Largest difference in time, and in the motor's work and the energy drawn as shares of all work at the crank. */
function stages(count: number): number {
  const r = random(31);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const { climb, reserves } = anyLongClimb(r);
    const [ours, theirs] = [rideStages(climb, reserves), marched(climb, reserves, 20_000)];
    const all = ours.crankPower * ours.time;
    const work = Math.abs(ours.motorPower * ours.time - theirs.work) / all;
    const drawn = Math.abs(ours.energy - theirs.drawn) / all;
    largest = Math.max(largest, relative(ours.time, theirs.time), work, drawn);
  }
  return largest;
}

function overloadAndBack(count: number): number {
  const r = random(32);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const heat: Heat = {
      continuous: 250,
      continuousCadence: 75,
      timeConstant: r.between(60, 7200),
      fixedLosses: r.between(0, 3),
      rise: 0,
    };
    const t = r.between(0.02, 3) * heat.timeConstant;
    largest = Math.max(largest, relative(holdTime(shortTimeOverload(t, heat.timeConstant, heat.fixedLosses), heat), t));
  }
  return largest;
}

/** The rider, and the motor, that take a companion's time, ridden again. */
function kept(count: number): number {
  const r = random(33);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const climb = anyBoundAscent(r);
    const { time } = rideClimb({ ...anyAscent(r), hill: climb.hill });
    const rider = riderToKeep(climb, time);
    if (rider > 0) largest = Math.max(largest, relative(rideClimb({ ...climb, riderPower: rider }).time, time));
    const motor = motorToKeep(climb, time);
    if (typeof motor === 'number')
      largest = Math.max(largest, relative(rideClimb({ ...climb, motorPower: motor }).time, time));
  }
  return largest;
}

export const longClimbs: readonly Comparison[] = [
  {
    quantity: 'Speed with a motor bound by torque, support and limit',
    against: 'halving; any lowest gear, hills up and down in any wind',
    cases: 1000,
    largest: () => boundSpeed(1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Long climbs on which heat or battery give out',
    against: 'small steps in time; any motor, gear, limit and wind',
    cases: 200,
    largest: () => stages(200),
    tolerance: 1e-4,
  },
  {
    quantity: 'Time for which a load can be held, load for a time',
    against: 'each other',
    cases: 1000,
    largest: () => overloadAndBack(1000),
    tolerance: 1e-9,
  },
  {
    quantity: 'Rider or motor that keeps a companion’s time',
    against: 'the climb ridden with them',
    cases: 1000,
    largest: () => kept(1000),
    tolerance: 1e-9,
  },
];

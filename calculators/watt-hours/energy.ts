import { type Climb, distanceAfter, drawnPower, heightAt, type Reserves } from '../model/index.ts';
import { batteryOf, optionalOf, type Scenario } from '../scenario/index.ts';
import type { Riding } from '../scenario/rides.ts';

export type Battery = NonNullable<Reserves['battery']>;

/** What so many climbs take from a battery, and what follows where it holds less. SI. */
export interface Draw {
  /** J for all climbs with help to the top, idle included */
  needed: number;
  /** J drawn: that, or all there is */
  drawn: number;
  /** J that the motor's own work is of that, at the crank */
  motorWork: number;
  /** W at the crank, rider and motor, while there is help; the mean of it along a hill in pieces */
  crankPower: number;
  /** m along the road on one charge, and in height; Infinity where nothing is drawn */
  reach: number;
  height: number;
  /** s for all climbs, the part after the battery is empty ridden without help */
  time: number;
  /** s of that part */
  alone: number;
  /** share of the work at the crank that legs do */
  riderShare: number;
}

/**
 * What `laps` climbs from bottom to top take, each begun at the pace of its first metres. Ways down are left out. Nothing of it is finite where
 * the bike stands still.
 * @param riding rides one of them
 */
export function drawOf(climb: Climb, laps: number, battery: Battery, riding: Riding): Draw {
  const { hill } = climb;
  const lap = riding(climb, {});
  const { motorPower, crankPower } = lap;
  const perLap = drawnPower(motorPower, battery.unitEfficiency, battery.idle) * lap.time;
  if (!Number.isFinite(lap.time)) return { ...STANDING, crankPower };
  const whole = perLap > 0 ? Math.floor(battery.energy / perLap) : Number.POSITIVE_INFINITY;
  const rest = perLap > 0 ? Math.max(0, battery.energy - whole * perLap) : 0;
  // one that lasts would be empty somewhere on a later climb
  const later = distanceAfter(lap, (perLap > 0 ? rest / perLap : 0) * lap.time);
  const all: Draw = {
    needed: perLap * laps,
    drawn: Math.min(perLap * laps, battery.energy),
    motorWork: motorPower * lap.time * laps,
    crankPower,
    ...placeAfter(whole, later),
    time: lap.time * laps,
    alone: 0,
    riderShare: 1 - motorPower / crankPower,
  };
  // where the motor gives nothing, an empty battery changes nothing
  if (whole >= laps || !(motorPower > 0)) return all;

  const last = riding(climb, { battery: { ...battery, energy: rest } });
  const empty = last.stages.find(({ limit }) => limit === 'battery')?.from ?? {
    distance: hill.distance,
    time: last.time,
  };
  const more = laps - whole - 1;
  const unhelped = more > 0 ? riding({ ...climb, motorPower: 0 }, {}) : last;
  const over = (of: (ride: typeof lap) => number): number =>
    whole * of(lap) + of(last) + (more > 0 ? more * of(unhelped) : 0);
  const motorWork = over((ride) => ride.motorPower * ride.time);
  const crankWork = over((ride) => ride.crankPower * ride.time);
  return {
    ...all,
    ...placeAfter(whole, empty.distance),
    time: over(({ time }) => time),
    alone: last.time - empty.time + (more > 0 ? more * unhelped.time : 0),
    riderShare: 1 - motorWork / crankWork,
  };

  /** Along the road and in height, after whole climbs and a part of the next. */
  function placeAfter(climbs: number, distance: number): { reach: number; height: number } {
    if (climbs === Number.POSITIVE_INFINITY) return { reach: climbs, height: climbs };
    return { reach: climbs * hill.distance + distance, height: climbs * hill.gain + heightAt(hill, distance) };
  }
}

const STANDING: Draw = {
  needed: Number.POSITIVE_INFINITY,
  drawn: 0,
  motorWork: Number.NaN,
  crankPower: 0,
  reach: 0,
  height: 0,
  time: Number.POSITIVE_INFINITY,
  alone: 0,
  riderShare: 1,
};

/** Nominal energy of the battery without its add-on, J: volts × amp-hours where both are given. */
export function nominalOf(scenario: Scenario): number {
  const product = (optionalOf(scenario, 'volts') ?? Number.NaN) * (optionalOf(scenario, 'amp-hours') ?? Number.NaN);
  return Number.isNaN(product) ? (batteryOf(scenario, 0) ?? Number.NaN) : product;
}

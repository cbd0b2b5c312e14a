import {
  assistShare,
  batteryEnergy,
  type Climb,
  distanceAfter,
  type Hill,
  heightAt,
  type Limit,
  limitsOf,
  propagate,
  type Reserves,
  type StagedClimb,
  type UncertainResult,
} from '../model/index.ts';
import { type Binding, type Binds, bindingOf, bindingReason, bindsOf, placeOfBinding } from './binding.ts';
import { none, type Remark, type Result, ranged, STANDS_STILL } from './outcome.ts';
import { motorsOf, type Riding, ridesOf } from './rides.ts';
import { columnsOf, optionalOf, type Scenario } from './scenario.ts';
import { batteryOf, climbDoubts, climbOf, reservesOf } from './setting.ts';

/*
 * Several bikes with one rider up one hill. What all share is moved once for all, so a gap is surer than the times it comes from.
 */

/** One bike up the hill. */
export interface Ridden {
  /** s */
  time: number;
  /** m/s */
  speed: number;
  /** W at the crank */
  motorPower: number;
  /** J from the battery */
  energy: number;
  /** m from the bottom after so many seconds; not a number where nobody knows */
  distanceAfter: (time: number) => number;
  /** how it was ridden, unless its time was measured */
  staged?: StagedClimb;
}

/** By its motor, or by its measured time, from which the motor follows. */
function rideOf(
  climb: Climb,
  reserves: Reserves,
  unitEfficiency: number,
  measured: number | undefined,
  riding: Riding,
  motorFrom: ReturnType<typeof motorsOf>,
): Ridden {
  if (measured === undefined) {
    const staged = riding(climb, reserves);
    const { time, speed, motorPower } = staged;
    const energy = reserves.battery ? staged.energy : batteryEnergy(motorPower, time, unitEfficiency);
    return { time, speed, motorPower, energy, distanceAfter: (t) => distanceAfter(staged, t), staged };
  }
  const speed = climb.hill.distance / measured;
  const motorPower = motorFrom(climb, measured);
  const energy = batteryEnergy(motorPower, measured, unitEfficiency);
  // a time says nothing of where on an uneven road the bike was
  const whereAfter = (t: number): number =>
    climb.hill.profile ? (t >= measured ? climb.hill.distance : Number.NaN) : speed * t;
  return { time: measured, speed, motorPower, energy, distanceAfter: whereAfter };
}

/** One bike with one set of values of all that is not known. */
export interface Trial {
  climb: Climb;
  reserves: Reserves;
  ride: Ridden;
  /** s of the bike that is first when everything is as stated */
  fastest: number;
  /** m that the bike has still to ride when that one is up */
  behind: number;
  /** nominal energy of its battery, J; not a number where none is given */
  battery: number;
  /** where the same thing binds; absent for a measured time */
  bound: Binding | undefined;
}

/** A result of each bike. */
export interface Column {
  name: string;
  kind: Result['kind'];
  of: (trial: Trial) => number;
  /** what the result cannot be below or above: adding in squares does not know it */
  floor?: (hill: Hill, measured: number | undefined) => number | undefined;
  ceiling?: (hill: Hill) => number | undefined;
}

const zero = (): number => 0;
/** Of the whole road, m above the bottom; a road of one grade is measured from its bottom on. */
const lowest = ({ profile }: Hill): number | undefined => (profile ? Math.min(...profile.height) : undefined);
const highest = ({ profile, gain }: Hill): number => (profile ? Math.max(...profile.height) : gain);

/** Height, m, still to climb when there are so many metres to ride. */
const heightLeft = (hill: Hill, behind: number): number =>
  hill.profile ? hill.gain - heightAt(hill, hill.distance - behind) : behind * hill.sin;

/** Results that calculators of several bikes share, by name. */
export const RESULT_COLUMNS = {
  time: { name: 'time', kind: 'duration', of: ({ ride }) => ride.time },
  gap: { name: 'gap', kind: 'duration', of: ({ ride, fastest }) => ride.time - fastest, floor: zero },
  distanceBehind: { name: 'distance-behind', kind: 'distance', of: ({ behind }) => behind, floor: zero },
  heightBehind: {
    name: 'height-behind',
    kind: 'height',
    of: ({ climb, behind }) => heightLeft(climb.hill, behind),
    // what is left of a way down is below zero
    floor: ({ gain, profile }) => (gain >= 0 && !profile ? 0 : undefined),
  },
  speed: { name: 'speed', kind: 'speed', of: ({ ride }) => ride.speed, floor: zero },
  motorPower: {
    name: 'motor-power',
    kind: 'power',
    of: ({ ride }) => ride.motorPower,
    // a measured time may say that a motor took power; a modelled motor gives some or none
    floor: (_, measured) => (measured === undefined ? 0 : undefined),
  },
  batteryEnergy: { name: 'battery-energy', kind: 'energy', of: ({ ride }) => ride.energy, floor: zero },
  batteryShare: {
    name: 'battery-share',
    kind: 'percent',
    of: ({ ride, battery }) => ride.energy / battery,
    floor: zero,
  },
  bindsAfter: { name: 'binds-after', kind: 'duration', of: ({ bound }) => bound?.after ?? Number.NaN, floor: zero },
  bindsHeight: {
    name: 'binds-height',
    kind: 'height',
    of: ({ bound }) => bound?.height ?? Number.NaN,
    floor: lowest,
    ceiling: highest,
  },
  timeLost: { name: 'time-lost', kind: 'duration', of: ({ bound }) => bound?.lost ?? Number.NaN, floor: zero },
} as const satisfies Record<string, Column>;

const OF_BINDING = new Set(['binds-after', 'binds-height', 'time-lost']);

const UNKNOWN_PLACE = 'A measured time does not say where on this hill the bike was then.';
/** A result that asks where a bike with a measured time was on an uneven road. */
const isSomewhere = (name: string, measured: number | undefined, { profile }: Hill): boolean =>
  name.endsWith('-behind') && measured !== undefined && profile !== undefined;

/** What the sentences about one bike need. */
export interface BikeDetail {
  climb: Climb;
  reserves: Reserves;
  /** its measured time, where it has one */
  measured: number | undefined;
  /** its ride, unless the time was measured */
  ride: StagedClimb | undefined;
  limits: Limit[];
  /** the assist limit holds it back */
  limited: boolean;
  /** energy over the nominal one */
  share: number;
  time: UncertainResult;
}

export interface Comparison {
  results: Result[];
  bikes: BikeDetail[];
  /** the one that is first, from 0 */
  first: number;
}

/** The results of bikes that do not ride, each with the reason. */
export function withoutHill(scenario: Scenario, columns: readonly Column[], problem: string): Result[] {
  return columnsOf(scenario, 'bike').flatMap((bike): Result[] =>
    [...columns, { name: 'binds', kind: 'text' } as const].map(({ name, kind }) => none(name, kind, problem, bike + 1)),
  );
}

/**
 * Rides all bikes of a scenario up a hill.
 * @param endures s for which the rider lasts, where that is told and not in the ride
 * @param reservesFor what a bike can use up on the way
 */
export function compareBikes(
  scenario: Scenario,
  hill: Hill,
  columns: readonly Column[],
  endures: number | undefined,
  reservesFor: (scenario: Scenario, bike: number) => Reserves = reservesOf,
): Comparison {
  const bikes = columnsOf(scenario, 'bike').map((bike) => ({
    climb: climbOf(scenario, hill, bike),
    reserves: reservesFor(scenario, bike),
    measured: optionalOf(scenario, 'time', bike),
    battery: batteryOf(scenario, bike) ?? Number.NaN,
  }));
  const { inputs, at, reservesAt, unitAt } = climbDoubts(scenario);
  const riding = ridesOf(hill);
  const motorFrom = motorsOf(hill);
  const ridesAt = (values: readonly number[]) =>
    bikes.map((bike) => {
      const climb = at(bike.climb, values);
      const reserves = reservesAt(bike.reserves, values);
      return { climb, reserves, ride: rideOf(climb, reserves, unitAt(values), bike.measured, riding, motorFrom) };
    });
  const centre = ridesAt(inputs.map(({ value }) => value));
  const first = centre.reduce((best, { ride }, bike) => (ride.time < (centre[best]?.ride.time ?? 0) ? bike : best), 0);
  const limits = bikes.map(({ climb, reserves, measured }) =>
    measured === undefined ? limitsOf(climb, reserves, riding) : [],
  );
  const binds = bikes.map(({ climb, measured }, bike): Binds => {
    const { time = 0, speed = 0 } = centre[bike]?.ride ?? {};
    if (measured === undefined) return bindsOf(limits[bike] ?? [], endures, time);
    return climb.riderPower > 0 && assistShare(speed, climb.assistLimit) < 1 ? 'assist-limit' : 'none';
  });

  const spread = propagate(inputs, (values) => {
    const rides = ridesAt(values);
    const fastest = rides[first]?.ride.time ?? 0;
    return rides.flatMap(({ climb, reserves, ride }, bike) => {
      const behind = hill.distance - ride.distanceAfter(fastest);
      const bound = ride.staged
        ? bindingOf(binds[bike] ?? 'none', climb, reserves, ride.staged, endures, riding)
        : undefined;
      const battery = bikes[bike]?.battery ?? Number.NaN;
      return columns.map(({ of }) => of({ climb, reserves, ride, fastest, behind, battery, bound }));
    });
  });

  const results: Result[] = [];
  const details = bikes.flatMap(({ climb, reserves, measured, battery }, bike): BikeDetail[] => {
    const own = spread.slice(bike * columns.length, (bike + 1) * columns.length);
    const bound = binds[bike] ?? 'none';
    const whyUnbound =
      measured === undefined ? bindingReason(bound) : 'A measured time holds whatever happened on the way.';
    columns.forEach(({ name, kind, floor, ceiling }, k) => {
      const result = own[k] && (name.startsWith('binds-') ? placeOfBinding(own[k], bound, hill) : own[k]);
      const reason = OF_BINDING.has(name)
        ? whyUnbound
        : isSomewhere(name, measured, hill)
          ? UNKNOWN_PLACE
          : STANDS_STILL;
      if (result) results.push(ranged(name, kind, result, reason, bike + 1, floor?.(hill, measured), ceiling?.(hill)));
    });
    results.push({ name: 'binds', kind: 'text', bike: bike + 1, text: bound });
    const ride = centre[bike]?.ride;
    const [time] = own;
    if (!time) return [];
    const isLimited = bound === 'assist-limit' || (limits[bike] ?? []).some(({ limit }) => limit === 'assist-limit');
    const share = (ride?.energy ?? 0) / battery;
    return [
      { climb, reserves, measured, ride: ride?.staged, limits: limits[bike] ?? [], limited: isLimited, share, time },
    ];
  });
  return { results, bikes: details, first };
}

/** What a comparison answers, for its page and its sentences. */
export interface ComparisonOutcome extends Comparison {
  /** sentences about what was entered */
  notes: Remark[];
  /** s for which the rider lasts */
  endures: number | undefined;
}

import {
  assistShare,
  batteryEnergy,
  type Climb,
  distanceAfter,
  inferMotor,
  type Limit,
  limitsOf,
  propagate,
  type Reserves,
  rideStages,
  type StagedClimb,
  type UncertainResult,
} from '../model/index.ts';
import {
  type Binds,
  batteryOf,
  bindingOf,
  bindingReason,
  bindsOf,
  climbDoubts,
  climbOf,
  columnsOf,
  enduranceOf,
  enduranceResult,
  hillOf,
  none,
  type Outcome,
  optionalOf,
  type Remark,
  type Result,
  ranged,
  reservesOf,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';

/** What adding in squares must not take below zero. */
const NEVER_NEGATIVE = new Set([
  'gap',
  'distance-behind',
  'speed',
  'battery-energy',
  'battery-share',
  'binds-after',
  'time-lost',
]);

const NAMES: [string, Result['kind']][] = [
  ['time', 'duration'],
  ['gap', 'duration'],
  ['distance-behind', 'distance'],
  ['height-behind', 'height'],
  ['speed', 'speed'],
  ['motor-power', 'power'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
  ['binds-after', 'duration'],
  ['binds-height', 'height'],
  ['time-lost', 'duration'],
];

/** One bike up the hill. */
interface Ridden {
  time: number;
  speed: number;
  motorPower: number;
  /** J from the battery */
  energy: number;
  /** m from the bottom after so many seconds */
  distanceAfter: (time: number) => number;
  /** how it was ridden, unless its time was measured */
  staged?: StagedClimb;
}

/** By its motor, or by its measured time, from which the motor follows. */
function rideOf(climb: Climb, reserves: Reserves, unitEfficiency: number, measured: number | undefined): Ridden {
  if (measured === undefined) {
    const staged = rideStages(climb, reserves);
    const { time, speed, motorPower } = staged;
    const energy = reserves.battery ? staged.energy : batteryEnergy(motorPower, time, unitEfficiency);
    return { time, speed, motorPower, energy, distanceAfter: (t) => distanceAfter(staged, t), staged };
  }
  const speed = climb.hill.distance / measured;
  const motorPower = inferMotor(climb, measured).mean;
  const energy = batteryEnergy(motorPower, measured, unitEfficiency);
  return { time: measured, speed, motorPower, energy, distanceAfter: (t) => speed * t };
}

/** What the sentences about one bike need. */
export interface BikeDetail {
  climb: Climb;
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

export interface SideBySideOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  bikes: BikeDetail[];
  /** s for which the rider lasts */
  endures: number | undefined;
}

/** Two to six bikes with one rider up one hill. What all share is moved once for all, so a gap is surer than the times it comes from. */
export function sideBySide(scenario: Scenario): SideBySideOutcome {
  const bikes = columnsOf(scenario, 'bike');
  const setting = hillOf(scenario);
  if (!setting.ok) {
    const results = bikes.flatMap((bike): Result[] =>
      [...NAMES, ['binds', 'text'] as const].map(([name, kind]) => none(name, kind, setting.problem, bike + 1)),
    );
    return {
      results: [...results, none('endurance-time', 'duration', setting.problem)],
      notes: setting.notes,
      bikes: [],
      endures: undefined,
    };
  }
  const hill = setting.value;
  const climbs = bikes.map((bike) => climbOf(scenario, hill, bike));
  const reserves = bikes.map((bike) => reservesOf(scenario, bike));
  const measured = bikes.map((bike) => optionalOf(scenario, 'time', bike));
  const endures = enduranceOf(scenario);
  const { inputs, at, reservesAt, unitAt } = climbDoubts(scenario);
  const ridesAt = (values: readonly number[]): Ridden[] =>
    climbs.map((climb, bike) =>
      rideOf(at(climb, values), reservesAt(reserves[bike] ?? {}, values), unitAt(values), measured[bike]),
    );
  const values = inputs.map(({ value }) => value);
  const centre = ridesAt(values);
  const first = centre.reduce((best, ride, bike) => (ride.time < (centre[best]?.time ?? 0) ? bike : best), 0);
  const limits = climbs.map((climb, bike) =>
    measured[bike] === undefined ? limitsOf(climb, reserves[bike] ?? {}) : [],
  );
  const binds = climbs.map((climb, bike): Binds => {
    const { time = 0, speed = 0 } = centre[bike] ?? {};
    if (measured[bike] === undefined) return bindsOf(limits[bike] ?? [], endures, time);
    return climb.riderPower > 0 && assistShare(speed, climb.assistLimit) < 1 ? 'assist-limit' : 'none';
  });

  const spread = propagate(inputs, (values) => {
    const rides = ridesAt(values);
    const fastest = rides[first]?.time ?? 0;
    return rides.flatMap((ride, bike) => {
      const behind = hill.distance - ride.distanceAfter(fastest);
      const climb = climbs[bike];
      const bound =
        climb && ride.staged
          ? bindingOf(
              binds[bike] ?? 'none',
              at(climb, values),
              reservesAt(reserves[bike] ?? {}, values),
              ride.staged,
              endures,
            )
          : undefined;
      return [
        ride.time,
        ride.time - fastest,
        behind,
        behind * hill.sin,
        ride.speed,
        ride.motorPower,
        ride.energy,
        ride.energy / (batteryOf(scenario, bike) ?? Number.NaN),
        bound?.after ?? Number.NaN,
        bound?.height ?? Number.NaN,
        bound?.lost ?? Number.NaN,
      ];
    });
  });

  const results: Result[] = [];
  const details: BikeDetail[] = [];
  bikes.forEach((bike) => {
    const own = spread.slice(bike * NAMES.length, (bike + 1) * NAMES.length);
    const bound = binds[bike] ?? 'none';
    const reasons = new Map(
      ['binds-after', 'binds-height', 'time-lost'].map((name) => [
        name,
        measured[bike] === undefined ? bindingReason(bound) : 'A measured time holds whatever happened on the way.',
      ]),
    );
    NAMES.forEach(([name, kind], k) => {
      const result = own[k];
      if (!result) return;
      // a measured time may say that a motor took power; a modelled motor gives some or none. What is left of a way down is below zero.
      const isFloored =
        NEVER_NEGATIVE.has(name) ||
        (name === 'motor-power' && measured[bike] === undefined) ||
        (name === 'height-behind' && hill.gain >= 0);
      const floor = isFloored ? 0 : undefined;
      results.push(
        ranged(
          name,
          kind,
          result,
          reasons.get(name) ?? STANDS_STILL,
          bike + 1,
          floor,
          name === 'binds-height' ? hill.gain : undefined,
        ),
      );
    });
    results.push({ name: 'binds', kind: 'text', bike: bike + 1, text: bound });
    if (own[0])
      details.push({
        climb: climbs[bike] as Climb,
        measured: measured[bike],
        ride: centre[bike]?.staged,
        limits: limits[bike] ?? [],
        limited: bound === 'assist-limit' || (limits[bike] ?? []).some(({ limit }) => limit === 'assist-limit'),
        share: own[7]?.value ?? 0,
        time: own[0],
      });
  });
  results.push(enduranceResult(endures));
  return { results, notes: setting.notes, bikes: details, endures };
}

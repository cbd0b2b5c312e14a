import {
  assistShare,
  batteryEnergy,
  type Climb,
  inferMotor,
  propagate,
  rideClimb,
  type UncertainResult,
} from '../model/index.ts';
import {
  batteryOf,
  climbDoubts,
  climbOf,
  columnsOf,
  hillOf,
  inputOf,
  none,
  type Outcome,
  type Remark,
  type Result,
  ranged,
  type Scenario,
} from '../scenario/index.ts';

const STANDS_STILL = 'This power does not move this bike on this hill.';

/** What adding in squares must not take below zero. */
const NEVER_NEGATIVE = new Set(['gap', 'speed', 'battery-energy', 'battery-share']);

const NAMES: [string, Result['kind']][] = [
  ['time', 'duration'],
  ['gap', 'duration'],
  ['distance-behind', 'distance'],
  ['height-behind', 'height'],
  ['speed', 'speed'],
  ['motor-power', 'power'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
];

/** One bike up the hill: by its motor, or by its measured time, from which the motor follows. */
function rideOf(climb: Climb, measured: number | undefined): { time: number; speed: number; motor: number } {
  if (measured === undefined) {
    const ride = rideClimb(climb);
    return { time: ride.time, speed: ride.speed, motor: ride.motorPower };
  }
  return { time: measured, speed: climb.hill.distance / measured, motor: inferMotor(climb, measured).mean };
}

/** What the sentences about one bike need. */
export interface BikeDetail {
  climb: Climb;
  /** its measured time, where it has one */
  measured: number | undefined;
  /** the assist limit holds it back */
  limited: boolean;
  share: number;
  time: UncertainResult;
}

export interface SideBySideOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  bikes: BikeDetail[];
}

/** Two to six bikes with one rider up one hill. What all share is moved once for all, so a gap is surer than the times it comes from. */
export function sideBySide(scenario: Scenario): SideBySideOutcome {
  const bikes = columnsOf(scenario, 'bike');
  const setting = hillOf(scenario);
  if (!setting.ok) {
    const results = bikes.flatMap((bike): Result[] =>
      [...NAMES, ['binds', 'text'] as const].map(([name, kind]) => none(name, kind, setting.problem, bike + 1)),
    );
    return { results, notes: [{ tone: 'wrong', text: setting.problem, field: setting.field }], bikes: [] };
  }
  const hill = setting.value;
  const climbs = bikes.map((bike) => climbOf(scenario, hill, bike));
  const measured = bikes.map((bike) => {
    const time = inputOf(scenario, 'time', bike);
    return typeof time === 'number' ? time : undefined;
  });
  const centre = climbs.map((climb, bike) => rideOf(climb, measured[bike]));
  const first = centre.reduce((best, ride, bike) => (ride.time < (centre[best]?.time ?? 0) ? bike : best), 0);

  const { inputs, at } = climbDoubts(scenario);
  const spread = propagate(inputs, (values) => {
    const rides = climbs.map((climb, bike) => rideOf(at(climb, values), measured[bike]));
    const fastest = rides[first]?.time ?? 0;
    return rides.flatMap((ride, bike) => {
      const behind = hill.distance - ride.speed * fastest;
      const energy = batteryEnergy(ride.motor, ride.time, values[3] ?? 1);
      return [
        ride.time,
        ride.time - fastest,
        behind,
        behind * hill.sin,
        ride.speed,
        ride.motor,
        energy,
        energy / (batteryOf(scenario, bike) ?? Number.NaN),
      ];
    });
  });

  const results: Result[] = [];
  const details: BikeDetail[] = [];
  bikes.forEach((bike) => {
    const own = spread.slice(bike * NAMES.length, (bike + 1) * NAMES.length);
    NAMES.forEach(([name, kind], k) => {
      const result = own[k];
      if (result)
        results.push(ranged(name, kind, result, STANDS_STILL, bike + 1, NEVER_NEGATIVE.has(name) ? 0 : undefined));
    });
    const climb = climbs[bike] as Climb;
    const speed = centre[bike]?.speed ?? 0;
    const helped = climb.riderPower > 0 && (climb.motorPower > 0 || measured[bike] !== undefined);
    const limited = helped && assistShare(speed, climb.assistLimit) < 1;
    results.push({ name: 'binds', kind: 'text', bike: bike + 1, text: limited ? 'assist-limit' : 'none' });
    if (own[0]) details.push({ climb, measured: measured[bike], limited, share: own[7]?.value ?? 0, time: own[0] });
  });
  return {
    results,
    notes: setting.notes,
    bikes: details,
  };
}

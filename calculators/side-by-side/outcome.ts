import {
  assistShare,
  batteryEnergy,
  type Climb,
  inferMotor,
  propagate,
  rideClimb,
  type UncertainResult,
} from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import {
  batteryOf,
  bikeName,
  climbDoubts,
  climbOf,
  columnsOf,
  hillOf,
  inputOf,
  isGiven,
  mainCause,
  none,
  numberOf,
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

/** Two to six bikes with one rider up one hill. What all share is moved once for all, so a gap is surer than the times it comes from. */
export function sideBySide(scenario: Scenario): Outcome {
  const bikes = columnsOf(scenario, 'bike');
  const setting = hillOf(scenario);
  if (!setting.ok) {
    const results = bikes.flatMap((bike): Result[] =>
      [...NAMES, ['binds', 'text'] as const].map(([name, kind]) => none(name, kind, setting.problem, bike + 1)),
    );
    return { results, remarks: [{ tone: 'wrong', text: setting.problem, field: setting.field }] };
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
  const remarks: Remark[] = [...setting.notes];
  const timeSpreads: UncertainResult[] = [];
  bikes.forEach((bike) => {
    const own = spread.slice(bike * NAMES.length, (bike + 1) * NAMES.length);
    NAMES.forEach(([name, kind], k) => {
      const result = own[k];
      if (result)
        results.push(ranged(name, kind, result, STANDS_STILL, bike + 1, NEVER_NEGATIVE.has(name) ? 0 : undefined));
    });
    if (own[0]) timeSpreads.push(own[0]);
    const climb = climbs[bike] as Climb;
    const speed = centre[bike]?.speed ?? 0;
    const helped = climb.riderPower > 0 && (climb.motorPower > 0 || measured[bike] !== undefined);
    const limited = helped && assistShare(speed, climb.assistLimit) < 1;
    results.push({ name: 'binds', kind: 'text', bike: bike + 1, text: limited ? 'assist-limit' : 'none' });
    remarks.push(...remarksOf(scenario, climb, bike, measured[bike], limited, own[7]?.value ?? 0));
  });
  const slowest = timeSpreads.reduce<UncertainResult | undefined>(
    (worst, one) => (!worst || one.value > worst.value ? one : worst),
    undefined,
  );
  const cause = slowest && mainCause(slowest);
  if (cause)
    remarks.unshift({
      tone: 'plain',
      text: `Most of the doubt is ${cause.cause}. All bikes share it, so the gaps are surer than the times.`,
    });
  if (numberOf(scenario, 'power') === 0 && climbs.some((climb) => climb.motorPower > 0))
    remarks.unshift({ tone: 'wrong', text: 'Nobody pedals: a motor that assists gives nothing then.' });
  return { results, remarks };
}

function remarksOf(
  scenario: Scenario,
  climb: Climb,
  bike: number,
  measured: number | undefined,
  limited: boolean,
  share: number,
): Remark[] {
  const remarks: Remark[] = [];
  const name = bikeName(scenario, bike);
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  if (measured !== undefined) {
    const { mean } = inferMotor(climb, measured);
    if (isGiven(scenario, 'motor', bike))
      remarks.push({ tone: 'plain', text: `${name} has a measured time, which beats its motor figure.` });
    if (mean < 0)
      remarks.push({
        tone: 'wrong',
        text: `${name}: ${text(measured, 'duration')} is longer than the rider alone would need, so the motor comes out below zero. Check the time, the rider’s power and the weights.`,
      });
  }
  if (limited && climb.assistLimit !== null) {
    const free =
      measured === undefined
        ? ` Without a limit it would take ${text(rideClimb({ ...climb, assistLimit: null }).time, 'duration')}.`
        : '';
    remarks.push({
      tone: 'caution',
      text: `${name} is held back by the assist limit of ${formatQuantity(climb.assistLimit, 'speed', scenario.system, { trim: true })}.${free}`,
    });
  }
  if (share > 1)
    remarks.push({
      tone: 'caution',
      text: `${name} would need more than its battery holds; what follows an empty battery is not worked out here yet.`,
    });
  return remarks;
}

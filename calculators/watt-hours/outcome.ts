import {
  type Climb,
  GRAVITY,
  type Hill,
  hillFromGain,
  isAlongProfile,
  type UncertainResult,
  usableEnergy,
} from '../model/index.ts';
import {
  climbDoubts,
  climbOf,
  conditionOf,
  exact,
  hillOf,
  none,
  numberOf,
  type Outcome,
  type Remark,
  type Result,
  ranged,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';
import { propagateNamed } from '../scenario/named.ts';
import { ridesOf } from '../scenario/rides.ts';
import { type Battery, drawOf, nominalOf } from './energy.ts';
import { gaugeResults, type Read, readingsOf } from './gauge.ts';

export interface WattHoursOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  /** what the other sentences are about; absent where there is no hill */
  about?: {
    /** one of the climbs */
    climb: Climb;
    /** J for all climbs with help to the top */
    needed: UncertainResult;
    /** J at the bottom, the reserve with it */
    full: number;
    /** the battery is empty before the last top */
    empty: boolean;
    /** within the ranges it may come out the other way */
    unsure: boolean;
    /** the assist limit holds the motor back while it helps */
    limited: boolean;
    read: Read;
  };
}

/** What climbs take from a battery, how many one charge holds, where it ends, and what two readings of the gauge say. */
export function wattHours(scenario: Scenario): WattHoursOutcome {
  const setting = hillOf(scenario);
  if (setting.ok) return climbed(scenario, setting.value, setting.notes);
  // the results of any hill, none of them with a value
  const { results } = climbed(scenario, hillFromGain(1000, 0), []);
  return {
    results: results.map(({ name, kind }) => none(name, kind, setting.problem)),
    notes: setting.notes,
  };
}

function climbed(scenario: Scenario, hill: Hill, notes: Remark[]): WattHoursOutcome {
  const laps = numberOf(scenario, 'laps');
  const rider = numberOf(scenario, 'rider');
  const climb = climbOf(scenario, hill, 0);
  const riding = ridesOf(hill);
  const [distance, gain] = [hill.distance * laps, hill.gain * laps];

  const nominal = nominalOf(scenario) + numberOf(scenario, 'add-on');
  const condition = conditionOf(scenario);
  const full = usableEnergy(nominal, { ...condition, reserve: 0 });
  const supply: Battery = {
    energy: usableEnergy(nominal, condition),
    unitEfficiency: numberOf(scenario, 'unit'),
    idle: numberOf(scenario, 'idle'),
  };

  const { inputs, at, reservesAt } = climbDoubts(scenario);
  const spread = propagateNamed(inputs, (values) => {
    const battery = reservesAt({ battery: supply }, values).battery ?? supply;
    const { needed, ...draw } = drawOf(at(climb, values), laps, battery, riding);
    return {
      climbs: (laps * battery.energy) / needed,
      'energy-per-climb': needed / laps,
      'needed-energy': needed,
      'battery-energy': draw.drawn,
      'battery-share': draw.drawn / nominal,
      'usable-energy': battery.energy,
      'battery-left': Math.max(0, 1 - needed / battery.energy),
      'empty-at': draw.height,
      'empty-distance': draw.reach,
      time: draw.time,
      'time-without-help': draw.alone,
      'energy-per-distance': needed / distance,
      'rider-share': draw.riderShare,
      'watts-per-kilogram-unassisted-equivalent': draw.crankPower / rider,
      'motor-work': draw.motorWork,
    };
  });

  const ride = riding(climb, {});
  const needed = spread['needed-energy'];
  const left = spread['battery-left'];
  const moves = Number.isFinite(ride.time);
  const empty = moves && needed.value > supply.energy;
  const limited = isAlongProfile(ride)
    ? ride.spans.some(({ limit }) => limit === 'assist-limit')
    : ride.motorPower < (climb.riderPower > 0 ? climb.motorPower : 0);
  const read = readingsOf(scenario, climb, ride, full, spread['motor-work']);

  /** the result of that name, or the reason why there is none */
  const give = (name: keyof typeof spread, kind: Result['kind'], reason: string | false = false): Result => {
    if (!moves) return none(name, kind, STANDS_STILL);
    const nothing = needed.value > 0 ? '' : 'Nothing draws on the battery.';
    return reason ? none(name, kind, nothing || reason) : ranged(name, kind, spread[name], nothing, undefined, 0);
  };
  /** where it ends; what lies beyond the last top is no bound */
  const upTo = (end: number, result: Result): Result => {
    if (result.high !== undefined && result.high > end) delete result.high;
    return result;
  };
  const lasts = !empty && 'It lasts to the top.';
  const lap = Math.ceil(spread['empty-distance'].value / hill.distance);
  const share = give('rider-share', 'percent');
  if (share.high !== undefined) share.high = Math.min(1, share.high);
  const results: Result[] = [
    give('climbs', 'count'),
    give('energy-per-climb', 'energy'),
    give('needed-energy', 'energy'),
    give('battery-energy', 'energy'),
    give('battery-share', 'percent'),
    exact('nominal-energy', 'energy', nominal, ''),
    ranged('usable-energy', 'energy', spread['usable-energy'], ''),
    give('battery-left', 'percent'),
    upTo(gain, give('empty-at', 'height', lasts || (gain <= 0 && 'This road gains no height: see the distance.'))),
    upTo(distance, give('empty-distance', 'distance', lasts)),
    lasts ? { ...give('empty-distance', 'count', lasts), name: 'empty-lap' } : exact('empty-lap', 'count', lap, ''),
    give('time', 'duration'),
    give('time-without-help', 'duration', lasts),
    give('energy-per-distance', 'energy-per-distance'),
    exact('lift-energy', 'energy', climb.mass * GRAVITY * gain, ''),
    share,
    exact('watts-per-kilogram', 'specific-power', climb.riderPower / rider, ''),
    give('watts-per-kilogram-unassisted-equivalent', 'specific-power'),
    ...gaugeResults(read, distance),
    { name: 'binds', kind: 'text', text: empty ? 'battery' : limited ? 'assist-limit' : 'none' },
  ];
  const unsure = empty ? left.high > 0 : left.low <= 0;
  return {
    results,
    notes,
    about: { climb, needed, full, empty, unsure, limited, read },
  };
}

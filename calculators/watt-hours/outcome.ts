import {
  type Climb,
  GRAVITY,
  type Limits,
  powerToWeight,
  rideClimb,
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
import { type Battery, drawOf, repeated } from './energy.ts';
import { type Read, readingsOf } from './gauge.ts';
import { nominalOf } from './nominal.ts';

export interface WattHoursOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  /** what the other sentences are about; absent where there is no hill */
  about?: {
    /** all climbs as one */
    climb: Climb;
    /** J for all climbs with help to the top */
    needed: UncertainResult;
    /** J at the bottom with the reserve taken off, and with it */
    usable: number;
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

const EQUIVALENT = 'watts-per-kilogram-unassisted-equivalent';

const NAMES: [string, Result['kind']][] = [
  ['climbs', 'count'],
  ['energy-per-climb', 'energy'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
  ['nominal-energy', 'energy'],
  ['usable-energy', 'energy'],
  ['battery-left', 'percent'],
  ['empty-at', 'height'],
  ['empty-distance', 'distance'],
  ['empty-lap', 'count'],
  ['time', 'duration'],
  ['time-without-help', 'duration'],
  ['energy-per-distance', 'energy-per-distance'],
  ['lift-energy', 'energy'],
  ['rider-share', 'percent'],
  ['watts-per-kilogram', 'specific-power'],
  [EQUIVALENT, 'specific-power'],
  ['gauge-energy', 'energy'],
  ['gauge-energy-per-distance', 'energy-per-distance'],
  ['implied-efficiency', 'percent'],
  ['binds', 'text'],
];

const NOTHING_DRAWS = 'Nothing draws on the battery.';
const LASTS = 'It lasts to the top.';
const NO_HEIGHT = 'This road gains no height: see the distance.';

/** What climbs take from a battery, how many one charge holds, where it ends, and what two readings of the gauge say. */
export function wattHours(scenario: Scenario): WattHoursOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok)
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      notes: [{ tone: 'wrong', text: setting.problem, field: setting.field }],
    };
  const laps = numberOf(scenario, 'laps');
  const rider = numberOf(scenario, 'rider');
  const climb = repeated(climbOf(scenario, setting.value, 0), laps);
  const { distance, gain, sin } = climb.hill;

  const own = nominalOf(scenario);
  const addOn = numberOf(scenario, 'add-on');
  const nominal = own.nominal + addOn;
  const condition = conditionOf(scenario);
  const full = usableEnergy(nominal, { ...condition, reserve: 0 });
  const usable = usableEnergy(nominal, condition);
  const supply: Battery = {
    energy: usable,
    unitEfficiency: numberOf(scenario, 'unit'),
    idle: numberOf(scenario, 'idle'),
  };

  const { inputs, at, reservesAt } = climbDoubts(scenario);
  const spread = propagateNamed(inputs, (values) => {
    const there = at(climb, values);
    const battery = reservesAt({ battery: supply }, values).battery ?? supply;
    const held = battery.energy;
    const draw = drawOf(there, battery);
    return {
      'battery-energy': draw.needed,
      'energy-per-climb': draw.needed / laps,
      'battery-share': draw.needed / nominal,
      'usable-energy': held,
      climbs: (laps * held) / draw.needed,
      'battery-left': 1 - draw.needed / held,
      'empty-at': draw.reach * sin,
      'empty-distance': draw.reach,
      time: draw.time,
      'time-without-help': draw.alone,
      'energy-per-distance': draw.needed / distance,
      'rider-share': draw.riderShare,
      [EQUIVALENT]: powerToWeight(there, rider).unassistedEquivalent,
      'motor-work': draw.motorWork,
    };
  });
  type Varying = keyof typeof spread;

  const helped = rideClimb(climb);
  const moves = Number.isFinite(helped.time);
  const left = spread['battery-left'];
  const reach = spread['empty-distance'].value;
  const empty = moves && left.value < 0;
  const limited = helped.motorPower < (climb.riderPower > 0 ? climb.motorPower : 0);
  const read = readingsOf(scenario, climb, full, spread['motor-work']);

  const lack = (name: string, kind: Result['kind'], reason: string): Result =>
    none(name, kind, !moves ? STANDS_STILL : spread['battery-energy'].value > 0 ? reason : NOTHING_DRAWS);
  const varying = (name: Varying, kind: Result['kind'], reason = NOTHING_DRAWS): Result =>
    moves ? ranged(name, kind, spread[name], reason, undefined, 0) : lack(name, kind, '');
  /** where it ends, or why it does not; what lies beyond the last top is no bound */
  const whereEmpty = (name: Varying, kind: Result['kind'], end: number): Result => {
    if (!empty) return lack(name, kind, LASTS);
    if (!(end > 0)) return none(name, kind, NO_HEIGHT);
    const { high, ...result } = varying(name, kind);
    return high === undefined || high > end ? result : { ...result, high };
  };
  const atLeastNothing = ({ value, low, high, causes }: UncertainResult): UncertainResult => ({
    value: Math.max(0, value),
    low: Math.max(0, low),
    high: Math.max(0, high),
    causes,
  });

  const results: Result[] = [
    varying('climbs', 'count'),
    varying('energy-per-climb', 'energy'),
    varying('battery-energy', 'energy'),
    varying('battery-share', 'percent'),
    exact('nominal-energy', 'energy', nominal, ''),
    ranged('usable-energy', 'energy', spread['usable-energy'], ''),
    moves
      ? ranged('battery-left', 'percent', atLeastNothing(left), '', undefined, 0)
      : lack('battery-left', 'percent', ''),
    whereEmpty('empty-at', 'height', gain),
    whereEmpty('empty-distance', 'distance', distance),
    empty ? exact('empty-lap', 'count', Math.ceil((reach * laps) / distance), '') : lack('empty-lap', 'count', LASTS),
    varying('time', 'duration'),
    empty ? varying('time-without-help', 'duration') : lack('time-without-help', 'duration', LASTS),
    varying('energy-per-distance', 'energy-per-distance'),
    exact('lift-energy', 'energy', climb.mass * GRAVITY * gain, ''),
    atMostAll(varying('rider-share', 'percent', 'Nothing works at the crank.')),
    exact('watts-per-kilogram', 'specific-power', climb.riderPower / rider, ''),
    moves
      ? ranged(EQUIVALENT, 'specific-power', spread[EQUIVALENT], '', undefined, climb.riderPower / rider)
      : lack(EQUIVALENT, 'specific-power', ''),
    ...gaugeResults(read, distance),
    { name: 'binds', kind: 'text', text: empty ? 'battery' : limited ? 'assist-limit' : 'none' },
  ];
  return {
    results,
    notes: [...setting.notes, ...own.notes],
    about: {
      climb,
      needed: spread['battery-energy'],
      usable,
      full,
      empty,
      unsure: empty ? left.high > 0 : left.low < 0,
      limited,
      read,
    },
  };
}

/** A share is never more than all, which adding in squares does not know. */
const atMostAll = (share: Result): Result =>
  share.high === undefined ? share : { ...share, high: Math.min(1, share.high) };

/** What two readings say; their ranges are limits, not 95 %. */
function gaugeResults(read: Read, distance: number): Result[] {
  const perDistance = 'gauge-energy-per-distance';
  if (!read.ok)
    return [
      none('gauge-energy', 'energy', read.reason),
      none(perDistance, 'energy-per-distance', read.reason),
      none('implied-efficiency', 'percent', read.reason),
    ];
  const { energy, efficiency, reason } = read.value;
  const limits = (name: string, kind: Result['kind'], { value, low, high }: Limits, over = 1): Result =>
    ranged(name, kind, { value: value / over, low: low / over, high: high / over, causes: [] }, '');
  return [
    limits('gauge-energy', 'energy', energy),
    limits(perDistance, 'energy-per-distance', energy, distance),
    efficiency ? limits('implied-efficiency', 'percent', efficiency) : none('implied-efficiency', 'percent', reason),
  ];
}

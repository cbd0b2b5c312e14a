import {
  batteryEnergy,
  type Climb,
  hillFromGrade,
  type Limit,
  limitsOf,
  powerAtLimit,
  propagate,
  type Reserves,
  rideStages,
  type StagedClimb,
  type UncertainResult,
} from '../model/index.ts';
import { formatQuantity, type System, shownUnit, toSi } from '../quantities/index.ts';
import {
  batteryOf,
  bindingOf,
  bindingReason,
  bindsOf,
  type ClimbDoubts,
  climbDoubts,
  climbOf,
  enduranceOf,
  enduranceResult,
  exact,
  hillOf,
  none,
  numberOf,
  type Outcome,
  propagateNamed,
  type Remark,
  type Result,
  ranged,
  reservesOf,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';

/** What a change of one input does to the time, s. */
export interface Effect {
  /** as in "10 W more" */
  change: string;
  more: number;
  less: number;
}

/** Climb time against motor power, W and s, with the 95 % range of each point. */
export interface CurvePoint {
  motor: number;
  time: number;
  low: number;
  high: number;
}

export interface ClimbTimeOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  effects: Effect[];
  curve: CurvePoint[];
  /** what the sentences are about; absent where there is no hill */
  about?: {
    climb: Climb;
    ride: StagedClimb;
    limits: Limit[];
    time: UncertainResult;
    /** s without the assist limit */
    unlimited: number;
    /** W of motor at the assist limit */
    limitPower: number | null;
    /** s for which the rider lasts */
    endures: number | undefined;
  };
}

const NAMES: [string, Result['kind']][] = [
  ['time', 'duration'],
  ['speed', 'speed'],
  ['vertical-speed', 'climb-rate'],
  ['grade', 'grade'],
  ['crank-power', 'power'],
  ['power-gravity', 'power'],
  ['power-rolling', 'power'],
  ['power-air', 'power'],
  ['power-drive', 'power'],
  ['motor-power', 'power'],
  ['watts-per-kilogram', 'specific-power'],
  ['rider-energy', 'energy'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
  ['binds', 'text'],
  ['binds-after', 'duration'],
  ['binds-height', 'height'],
  ['time-lost', 'duration'],
  ['limit-power', 'power'],
  ['endurance-time', 'duration'],
];

/** Time, speed, power split and energy of one bike on one hill, what holds it back, with ranges, sensitivities and the curve behind the chart. */
export function climbTime(scenario: Scenario): ClimbTimeOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok) {
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      effects: [],
      curve: [],
      notes: setting.notes,
    };
  }
  const hill = setting.value;
  const climb = climbOf(scenario, hill, 0);
  const reserves = reservesOf(scenario, 0);
  const battery = batteryOf(scenario, 0) ?? Number.NaN;
  const doubts = climbDoubts(scenario);
  const ride = rideStages(climb, reserves);
  const limits = limitsOf(climb, reserves);
  const endures = enduranceOf(scenario);
  const binds = bindsOf(limits, endures, ride.time);

  const spread = propagateNamed(doubts.inputs, (values) => {
    const there = doubts.at(climb, values);
    const reservesThere = doubts.reservesAt(reserves, values);
    const ridden = rideStages(there, reservesThere);
    const bound = bindingOf(binds, there, reservesThere, ridden, endures);
    const energy = reserves.battery
      ? ridden.energy
      : batteryEnergy(ridden.motorPower, ridden.time, doubts.unitAt(values));
    return {
      time: ridden.time,
      speed: ridden.speed,
      vertical: ridden.verticalSpeed,
      crank: ridden.crankPower,
      ...ridden.powers,
      motor: ridden.motorPower,
      legs: climb.riderPower * ridden.time,
      energy,
      share: energy / battery,
      ...bound,
      limitPower: powerAtLimit(there) ?? Number.NaN,
    };
  });
  const reason = bindingReason(binds);
  const results: Result[] = [
    ranged('time', 'duration', spread.time, STANDS_STILL),
    ranged('speed', 'speed', spread.speed, STANDS_STILL, undefined, 0),
    ranged('vertical-speed', 'climb-rate', spread.vertical, STANDS_STILL),
    exact('grade', 'grade', hill.grade, ''),
    ranged('crank-power', 'power', spread.crank, STANDS_STILL, undefined, climb.riderPower),
    ranged('power-gravity', 'power', spread.gravity, STANDS_STILL),
    ranged('power-rolling', 'power', spread.rolling, STANDS_STILL, undefined, 0),
    ranged('power-air', 'power', spread.air, STANDS_STILL),
    ranged('power-drive', 'power', spread.drive, STANDS_STILL, undefined, 0),
    ranged('motor-power', 'power', spread.motor, STANDS_STILL, undefined, 0),
    exact('watts-per-kilogram', 'specific-power', climb.riderPower / numberOf(scenario, 'rider'), ''),
    ranged('rider-energy', 'energy', spread.legs, STANDS_STILL, undefined, 0),
    ranged('battery-energy', 'energy', spread.energy, STANDS_STILL, undefined, 0),
    ranged('battery-share', 'percent', spread.share, STANDS_STILL, undefined, 0),
    { name: 'binds', kind: 'text', text: binds },
    ranged('binds-after', 'duration', spread.after, reason, undefined, 0),
    ranged('binds-height', 'height', spread.height, reason, undefined, 0, hill.gain),
    ranged('time-lost', 'duration', spread.lost, reason, undefined, 0),
    ranged('limit-power', 'power', spread.limitPower, 'No limit, or the legs alone are faster.', undefined, 0),
    enduranceResult(endures),
  ];
  return {
    results,
    effects: Number.isFinite(spread.time.value) ? effectsOf(climb, reserves, scenario.system) : [],
    curve: curveOf(climb, reserves, doubts),
    notes: setting.notes,
    about: {
      climb,
      ride,
      limits,
      time: spread.time,
      unlimited: rideStages({ ...climb, assistLimit: null }, reserves).time,
      limitPower: powerAtLimit(climb),
      endures,
    },
  };
}

/** ±10 W, ±1 kg (1 lb), ±1 % of grade: the change of the time in seconds. The grade changes at the same distance. */
function effectsOf(climb: Climb, reserves: Reserves, system: System): Effect[] {
  const mass = toSi(1, shownUnit('mass', system));
  const now = rideStages(climb, reserves).time;
  const shift = (change: Partial<Climb>): number => rideStages({ ...climb, ...change }, reserves).time - now;
  const steeper = (by: number) => ({ hill: hillFromGrade(climb.hill.distance, climb.hill.grade + by) });
  return [
    {
      change: '10 W of rider power',
      more: shift({ riderPower: climb.riderPower + 10 }),
      less: shift({ riderPower: Math.max(0, climb.riderPower - 10) }),
    },
    {
      change: formatQuantity(mass, 'mass', system),
      more: shift({ mass: climb.mass + mass }),
      less: shift({ mass: climb.mass - mass }),
    },
    { change: '1 % of grade', more: shift(steeper(0.01)), less: shift(steeper(-0.01)) },
  ];
}

const CURVE_POINTS = 16;

/** Time for motors from none to beyond this one. */
function curveOf(climb: Climb, reserves: Reserves, { inputs, at, reservesAt }: ClimbDoubts): CurvePoint[] {
  if (climb.riderPower === 0) return [];
  const top = Math.max(600, 1.25 * climb.motorPower);
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    // closer together where the curve is steep
    const motorPower = top * (i / CURVE_POINTS) ** 1.5;
    const [time] = propagate(inputs, (values) => [
      rideStages({ ...at(climb, values), motorPower }, reservesAt(reserves, values)).time,
    ]);
    return { motor: motorPower, time: time?.value ?? 0, low: time?.low ?? 0, high: time?.high ?? 0 };
  });
}

import {
  assistShare,
  batteryEnergy,
  type Climb,
  hillFromGrade,
  propagate,
  rideClimb,
  type UncertainResult,
} from '../model/index.ts';
import { formatQuantity, type System, shownUnit, toSi } from '../quantities/index.ts';
import {
  batteryOf,
  climbDoubts,
  climbOf,
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
  effects: Effect[];
  curve: CurvePoint[];
  /** what the sentences are about; absent where there is no hill */
  about?: { notes: Remark[]; climb: Climb; time: UncertainResult; share: number; limited: boolean };
  problem?: Remark;
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
  ['watts-per-kilogram', 'specific-power'],
  ['rider-energy', 'energy'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
  ['binds', 'text'],
];

/** Time, speed, power split and energy of one bike on one hill, with ranges, sensitivities and the curve behind the chart. */
export function climbTime(scenario: Scenario): ClimbTimeOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok) {
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      effects: [],
      curve: [],
      problem: { tone: 'wrong', text: setting.problem, field: setting.field },
    };
  }
  const hill = setting.value;
  const climb = climbOf(scenario, hill, 0);
  const battery = batteryOf(scenario, 0);
  const { inputs, at } = climbDoubts(scenario);

  const spread = propagate(inputs, (values) => {
    const ride = rideClimb(at(climb, values));
    const energy = batteryEnergy(ride.motorPower, ride.time, values[3] ?? 1);
    const { gravity, rolling, air, drive } = ride.powers;
    return [
      ride.time,
      ride.speed,
      ride.verticalSpeed,
      ride.crankPower,
      gravity,
      rolling,
      air,
      drive,
      climb.riderPower * ride.time,
      energy,
      energy / (battery ?? Number.NaN),
    ];
  });
  const [time, speed, vertical, crank, gravity, rolling, air, drive, legs, energy, share] = spread as [
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
    UncertainResult,
  ];
  const limited = climb.motorPower > 0 && climb.riderPower > 0 && assistShare(speed.value, climb.assistLimit) < 1;
  const results: Result[] = [
    ranged('time', 'duration', time, STANDS_STILL),
    ranged('speed', 'speed', speed, STANDS_STILL, undefined, 0),
    ranged('vertical-speed', 'climb-rate', vertical, STANDS_STILL),
    exact('grade', 'grade', hill.grade, ''),
    ranged('crank-power', 'power', crank, STANDS_STILL, undefined, climb.riderPower),
    ranged('power-gravity', 'power', gravity, STANDS_STILL),
    ranged('power-rolling', 'power', rolling, STANDS_STILL, undefined, 0),
    ranged('power-air', 'power', air, STANDS_STILL),
    ranged('power-drive', 'power', drive, STANDS_STILL, undefined, 0),
    exact('watts-per-kilogram', 'specific-power', climb.riderPower / numberOf(scenario, 'rider'), ''),
    ranged('rider-energy', 'energy', legs, STANDS_STILL, undefined, 0),
    ranged('battery-energy', 'energy', energy, STANDS_STILL, undefined, 0),
    ranged('battery-share', 'percent', share, STANDS_STILL, undefined, 0),
    { name: 'binds', kind: 'text', text: limited ? 'assist-limit' : 'none' },
  ];
  return {
    results,
    effects: Number.isFinite(time.value) ? effectsOf(climb, scenario.system) : [],
    curve: curveOf(climb, climbDoubts(scenario)),
    about: { notes: setting.notes, climb, time, share: share.value, limited },
  };
}

/** ±10 W, ±1 kg (1 lb), ±1 % of grade: the change of the time in seconds. The grade changes at the same distance. */
function effectsOf(climb: Climb, system: System): Effect[] {
  const mass = toSi(1, shownUnit('mass', system));
  const now = rideClimb(climb).time;
  const shift = (change: Partial<Climb>): number => rideClimb({ ...climb, ...change }).time - now;
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
function curveOf(climb: Climb, { inputs, at }: ReturnType<typeof climbDoubts>): CurvePoint[] {
  if (climb.riderPower === 0) return [];
  const top = Math.max(600, 1.25 * climb.motorPower);
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    // closer together where the curve is steep
    const motorPower = top * (i / CURVE_POINTS) ** 1.5;
    const [time] = propagate(inputs, (values) => [rideClimb({ ...at(climb, values), motorPower }).time]);
    return { motor: motorPower, time: time?.value ?? 0, low: time?.low ?? 0, high: time?.high ?? 0 };
  });
}

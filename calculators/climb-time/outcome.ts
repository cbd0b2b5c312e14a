import {
  assistShare,
  batteryEnergy,
  type Climb,
  hillFromGrade,
  propagate,
  rideClimb,
  type UncertainResult,
} from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import {
  batteryOf,
  climbOf,
  dragDoubt,
  efficiencyDoubt,
  exact,
  hillOf,
  isGiven,
  mainCause,
  none,
  numberOf,
  type Outcome,
  type Remark,
  type Result,
  ranged,
  rollingDoubt,
  type Scenario,
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
}

const STANDS_STILL = 'This power does not move the bike up this hill.';

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

/** The four things about a climb that hardly anyone can know, and the climb as a function of them. */
function doubtsOf(scenario: Scenario, climb: Climb) {
  const inputs = [
    rollingDoubt(climb.rolling, isGiven(scenario, 'rolling')),
    dragDoubt(climb.dragArea),
    efficiencyDoubt('drive', climb.efficiency),
    efficiencyDoubt('unit', numberOf(scenario, 'unit')),
  ];
  const at = ([rolling = 0, dragArea = 0, efficiency = 1]: number[], base = climb): Climb => ({
    ...base,
    rolling,
    dragArea,
    efficiency,
  });
  return { inputs, at };
}

/** Time, speed, power split and energy of one bike on one hill, with ranges, sensitivities and the curve behind the chart. */
export function climbTime(scenario: Scenario): ClimbTimeOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok) {
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      remarks: [{ tone: 'wrong', text: setting.problem, field: setting.field }],
      effects: [],
      curve: [],
    };
  }
  const hill = setting.value;
  const climb = climbOf(scenario, hill, 0);
  const battery = batteryOf(scenario, 0);
  const { inputs, at } = doubtsOf(scenario, climb);

  const spread = propagate(inputs, (values) => {
    const ride = rideClimb(at(values));
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
  const limited = climb.motorPower > 0 && assistShare(speed.value, climb.assistLimit) < 1;
  const results: Result[] = [
    ranged('time', 'duration', time, STANDS_STILL),
    ranged('speed', 'speed', speed, STANDS_STILL),
    ranged('vertical-speed', 'climb-rate', vertical, STANDS_STILL),
    exact('grade', 'grade', hill.grade, ''),
    ranged('crank-power', 'power', crank, STANDS_STILL),
    ranged('power-gravity', 'power', gravity, STANDS_STILL),
    ranged('power-rolling', 'power', rolling, STANDS_STILL),
    ranged('power-air', 'power', air, STANDS_STILL),
    ranged('power-drive', 'power', drive, STANDS_STILL),
    exact('watts-per-kilogram', 'specific-power', climb.riderPower / numberOf(scenario, 'rider'), ''),
    ranged('rider-energy', 'energy', legs, STANDS_STILL),
    ranged('battery-energy', 'energy', energy, STANDS_STILL),
    ranged('battery-share', 'percent', share, STANDS_STILL),
    { name: 'binds', kind: 'text', text: limited ? 'assist-limit' : 'none' },
  ];
  return {
    results,
    remarks: [
      ...setting.notes.map((text): Remark => ({ tone: 'plain', text })),
      ...remarksOf(scenario, climb, time, share.value, limited),
    ],
    effects: Number.isFinite(time.value) ? effectsOf(climb) : [],
    curve: curveOf(climb, inputs.slice(0, 3), at),
  };
}

function remarksOf(scenario: Scenario, climb: Climb, time: UncertainResult, share: number, limited: boolean): Remark[] {
  const remarks: Remark[] = [];
  const duration = (si: number): string => formatQuantity(si, 'duration', scenario.system);
  if (!Number.isFinite(time.value)) {
    const text = climb.riderPower === 0 ? 'Nobody pedals: a motor that assists gives nothing then.' : STANDS_STILL;
    return [{ tone: 'wrong', text }];
  }
  const cause = mainCause(time);
  if (cause && Number.isFinite(cause.high)) {
    remarks.push({
      tone: 'plain',
      text: `Most of the doubt is ${cause.cause}: that alone puts the time anywhere from ${duration(cause.low)} to ${duration(cause.high)}.`,
    });
  }
  if (limited && climb.assistLimit !== null) {
    const free = rideClimb({ ...climb, assistLimit: null });
    const motor = rideClimb(climb).motorPower;
    remarks.push({
      tone: 'caution',
      text: `The assist limit of ${formatQuantity(climb.assistLimit, 'speed', scenario.system, { trim: true })} holds this bike back: the motor gives ${formatQuantity(motor, 'power', scenario.system)} of its ${formatQuantity(climb.motorPower, 'power', scenario.system)} here, and without a limit the climb would take ${duration(free.time)}.`,
    });
  }
  if (climb.riderPower === 0 && climb.motorPower > 0)
    remarks.push({
      tone: 'caution',
      text: 'Nobody pedals: a motor that assists gives nothing then, so this is the bike rolling by itself.',
    });
  if (share > 1)
    remarks.push({
      tone: 'caution',
      text: `That is more than the battery holds. What happens once it is empty is not worked out here yet: take it that you ride the rest without help.`,
    });
  if (climb.hill.gain > 0 && time.value * 0.8 > climb.hill.distance)
    remarks.push({ tone: 'caution', text: 'That is slower than a stroll: most people would be pushing.' });
  return remarks;
}

/** ±10 W, ±1 kg, ±1 % of grade: the change of the time in seconds. The grade changes at the same distance. */
function effectsOf(climb: Climb): Effect[] {
  const now = rideClimb(climb).time;
  const shift = (change: Partial<Climb>): number => rideClimb({ ...climb, ...change }).time - now;
  const steeper = (by: number) => ({ hill: hillFromGrade(climb.hill.distance, climb.hill.grade + by) });
  return [
    {
      change: '10 W of rider power',
      more: shift({ riderPower: climb.riderPower + 10 }),
      less: shift({ riderPower: Math.max(0, climb.riderPower - 10) }),
    },
    { change: '1 kg', more: shift({ mass: climb.mass + 1 }), less: shift({ mass: climb.mass - 1 }) },
    { change: '1 % of grade', more: shift(steeper(0.01)), less: shift(steeper(-0.01)) },
  ];
}

const CURVE_POINTS = 16;

/** Time for motors from none to beyond this one. */
function curveOf(
  climb: Climb,
  inputs: Parameters<typeof propagate>[0],
  at: (values: number[], base: Climb) => Climb,
): CurvePoint[] {
  if (climb.riderPower === 0) return [];
  const top = Math.max(600, 1.25 * climb.motorPower);
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    // closer together where the curve is steep
    const motor = top * (i / CURVE_POINTS) ** 1.5;
    const [time] = propagate(inputs, (values) => [rideClimb({ ...at(values, climb), motorPower: motor }).time]);
    return { motor, time: time?.value ?? 0, low: time?.low ?? 0, high: time?.high ?? 0 };
  });
}

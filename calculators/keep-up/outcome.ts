import {
  assistShare,
  type Climb,
  enduranceTime,
  limitsOf,
  motorOutput,
  motorToKeep,
  type NoMotor,
  powerAtLimit,
  type Reserves,
  riderToKeep,
  type Search,
  type UncertainResult,
} from '../model/index.ts';
import {
  climbDoubts,
  climbOf,
  dragDoubt,
  enduranceOf,
  enduranceResult,
  exact,
  hillOf,
  inputOf,
  NOBODY_PEDALS,
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
  waitsForPedals,
} from '../scenario/index.ts';
import { type Riding, ridesOf } from '../scenario/rides.ts';

/** Time against the rider's power, W and s, with the 95 % range of each point. */
export interface CurvePoint {
  power: number;
  time: number;
  low: number;
  high: number;
}

export type MotorClass = 'none' | 'light' | 'mid' | 'full' | 'beyond';

export interface KeepUpOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  curve: CurvePoint[];
  /** what the other sentences are about; absent where there is no hill */
  about?: {
    you: Climb;
    companion: Climb;
    /** m/s, the companion's, which you must ride; the mean of it along a hill in pieces */
    pace: number;
    /** what of your motor comes through there, W */
    motorPower: number;
    rider: UncertainResult;
    /** W, or why there is no such motor */
    motor: number | NoMotor;
    /** the class at the upper end of its range; nothing where no motor is enough there */
    highest: MotorClass | undefined;
    limitPower: number | null;
    /** s for which you last at the power that keeps up */
    endures: number | undefined;
  };
}

const NAMES: [string, Result['kind']][] = [
  ['rider-needed', 'power'],
  ['rider-needed-per-kilogram', 'specific-power'],
  ['motor-needed', 'power'],
  ['class-needed', 'text'],
  ['companion-time', 'duration'],
  ['companion-speed', 'speed'],
  ['time', 'duration'],
  ['gap', 'duration'],
  ['motor-power', 'power'],
  ['endurance-time', 'duration'],
  ['limit-power', 'power'],
  ['limit-time', 'duration'],
  ['binds', 'text'],
];

const COMPANION_STANDS = 'This power does not move the companion on this hill.';

/** Why there is no motor power to name. */
const NO_MOTOR: Readonly<Record<NoMotor, string>> = {
  'no-pedalling': NOBODY_PEDALS,
  'beyond-limit': 'The companion rides as fast as your assist limit or faster, where no motor helps.',
  'none-needed': 'Your legs alone are as fast.',
  bound: 'Something else than its power holds the motor back.',
  'runs-out': 'Its battery would be empty before the top.',
};

/** Most that a motor of each class gives, W. Common practice, no source; where full assist ends is our choice. */
export const CLASSES: readonly (readonly [MotorClass, number])[] = [
  ['none', 0],
  ['light', 300],
  ['mid', 450],
  ['full', 750],
  ['beyond', Number.POSITIVE_INFINITY],
];

/** The weakest class whose motors give so much, W. */
const classOf = (motor: number): MotorClass => CLASSES.find(([, most]) => motor <= most)?.[0] ?? 'beyond';

/** As a number for the range: nothing where none is needed, and no motor is enough beyond the limit. */
function motorValue(motor: number | NoMotor): number {
  if (typeof motor === 'number') return motor;
  if (motor === 'none-needed') return 0;
  return motor === 'beyond-limit' || motor === 'runs-out' ? Number.POSITIVE_INFINITY : Number.NaN;
}

/** "At least nothing" is no range. */
function tellingRange({ low, ...result }: Result): Result {
  return low === undefined || (low === 0 && result.high === undefined) ? result : { ...result, low };
}

/** The companion's climb: the same hill, surface and air, with another rider and bike. */
function companionOf(scenario: Scenario, you: Climb): Climb {
  const motor = inputOf(scenario, 'companion-motor');
  const limit = inputOf(scenario, 'companion-limit');
  return {
    ...you,
    mass: numberOf(scenario, 'companion-rider') + numberOf(scenario, 'companion-bike'),
    riderPower: numberOf(scenario, 'companion-power'),
    motorPower: typeof motor === 'number' ? motor : 0,
    assistLimit: typeof limit === 'number' ? limit : null,
  };
}

/** A search that begins at a power that is known, from it and the own one. `ratio` is of their times. */
function nearTo(power: number, own: number, ratio: number, riding: Riding): Search {
  const steepness = Math.log(power / own) / Math.log(ratio);
  return { guess: power, riding, ...(steepness < -0.5 && steepness > -5 ? { steepness } : {}) };
}

/** What it takes to ride this hill in a companion's time: from your legs with your motor, or from a motor with your legs. */
export function keepUp(scenario: Scenario): KeepUpOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok)
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      notes: setting.notes,
      curve: [],
    };
  const you = climbOf(scenario, setting.value, 0);
  const varies = you.hill.profile !== undefined;
  const riding = ridesOf(you.hill);
  const companion = companionOf(scenario, you);
  const mass = numberOf(scenario, 'rider');
  const criticalPower = inputOf(scenario, 'endurance');
  const endurance = (power: number): number =>
    typeof criticalPower === 'number'
      ? enduranceTime(power, { criticalPower, workAbove: numberOf(scenario, 'endurance-work') })
      : Number.NaN;

  // One trail, one wind, chains alike: what is not known of them moves both. Two bodies do not push the same air.
  const doubts = climbDoubts(scenario);
  const reserves = reservesOf(scenario, 0);
  const inputs = [...doubts.inputs, { ...dragDoubt(you.dragArea), name: 'drag:companion' }];
  const both = (values: number[]): [Climb, Climb] => [
    doubts.at(you, values),
    { ...doubts.at(companion, values), dragArea: values.at(-1) ?? Number.NaN },
  ];
  // what keeps up as stated is where to look first when something is a little other
  let [toRider, toMotor]: [Search, Search] = [{ riding }, { riding }];
  const spread = propagateNamed(inputs, (values) => {
    const [mine, theirs] = both(values);
    const { time, speed } = riding(theirs, {});
    const mineReserves = doubts.reservesAt(reserves, values);
    const own = riding(mine, mineReserves).time;
    const rider = riderToKeep(mine, time, mineReserves, toRider);
    const needed = motorToKeep(mine, time, mineReserves, toMotor);
    if (toRider.guess === undefined) {
      toRider = nearTo(rider, you.riderPower, time / own, riding);
      if (typeof needed === 'number') toMotor = nearTo(needed, you.motorPower, time / own, riding);
    }
    // along a hill in pieces there is no one speed: the mean of what the motor gives while you keep up
    const motorPower = varies
      ? riding({ ...mine, riderPower: rider }, mineReserves).motorPower
      : motorOutput({ ...mine, riderPower: 1 }, speed);
    return {
      companion: time,
      speed,
      own,
      gap: own - time,
      rider,
      perKilogram: rider / mass,
      motor: motorValue(needed),
      motorPower,
      limit: powerAtLimit(mine) ?? Number.NaN,
      endures: endurance(rider),
    };
  });

  const { time, speed: pace } = riding(companion, {});
  const moves = pace > 0;
  const motor = motorToKeep(you, time, reserves, { riding });
  const rolls = riderToKeep({ ...you, motorPower: 0 }, time, {}, { riding }) === 0;
  // along a hill in pieces no one speed is the limit's
  const limitPower = varies ? null : powerAtLimit(you);
  const needed = spread.rider.value;
  const keeping = { ...you, riderPower: needed };
  const limited = varies
    ? limitsOf(keeping, reserves, riding).some(({ limit }) => limit === 'assist-limit')
    : you.motorPower > 0 && assistShare(pace, you.assistLimit) < 1;
  const ranOut = riding(keeping, reserves).stages.some(({ limit }) => limit === 'battery');

  /** a result that needs a companion who gets to the top */
  const paced = (result: Result): Result => (moves ? result : none(result.name, result.kind, COMPANION_STANDS));
  const legs = (name: string, kind: Result['kind'], value: UncertainResult): Result =>
    needed > 0
      ? ranged(name, kind, value, '', undefined, 0)
      : none(
          name,
          kind,
          rolls ? 'You roll down as fast without pedalling.' : 'Turning the pedals is enough: your motor is faster.',
        );
  const stands = waitsForPedals(you) ? NOBODY_PEDALS : STANDS_STILL;
  const whyNoMotor = typeof motor === 'number' ? '' : NO_MOTOR[motor];
  const whyNoLimit =
    you.assistLimit === null
      ? 'Your bike has no assist limit.'
      : varies
        ? 'Along a hill in pieces your speed changes, and with it what the assist limit leaves of a motor.'
        : 'You reach your assist limit without a motor.';

  const results: Result[] = [
    paced(legs('rider-needed', 'power', spread.rider)),
    paced(legs('rider-needed-per-kilogram', 'specific-power', spread.perKilogram)),
    paced(
      typeof motor === 'number'
        ? tellingRange(ranged('motor-needed', 'power', spread.motor, '', undefined, 0))
        : none('motor-needed', 'power', whyNoMotor),
    ),
    paced(
      typeof motor === 'number'
        ? { name: 'class-needed', kind: 'text', text: classOf(motor) }
        : motor === 'none-needed'
          ? { name: 'class-needed', kind: 'text', text: 'none' }
          : none('class-needed', 'text', whyNoMotor),
    ),
    ranged('companion-time', 'duration', spread.companion, COMPANION_STANDS),
    paced(ranged('companion-speed', 'speed', spread.speed, '', undefined, 0)),
    ranged('time', 'duration', spread.own, stands),
    paced(ranged('gap', 'duration', spread.gap, stands)),
    paced(ranged('motor-power', 'power', spread.motorPower, '', undefined, 0)),
    paced(
      typeof criticalPower === 'number'
        ? ranged('endurance-time', 'duration', spread.endures, 'That is no more than what you hold for long.')
        : enduranceResult(undefined),
    ),
    limitPower === null
      ? none('limit-power', 'power', whyNoLimit)
      : ranged('limit-power', 'power', spread.limit, whyNoLimit, undefined, 0),
    exact(
      'limit-time',
      'duration',
      you.assistLimit === null || limitPower === null ? Number.NaN : you.hill.distance / you.assistLimit,
      whyNoLimit,
    ),
    { name: 'binds', kind: 'text', text: !moves ? 'none' : ranOut ? 'battery' : limited ? 'assist-limit' : 'none' },
  ];
  return {
    results,
    notes: setting.notes,
    curve: moves && Number.isFinite(spread.own.value) ? curveOf(you, reserves, needed, doubts, riding) : [],
    about: {
      you,
      companion,
      pace,
      motorPower: spread.motorPower.value,
      rider: spread.rider,
      motor,
      highest: Number.isFinite(spread.motor.high) ? classOf(spread.motor.high) : undefined,
      limitPower,
      endures: enduranceOf(scenario, needed),
    },
  };
}

/** Along a hill in pieces each point takes longer to work out, and what it is known to is worked out for every fourth: in between, as a share of the time, it goes straight. */
const CURVE = { whole: { points: 16, known: 1 }, pieces: { points: 8, known: 4 } };

/** Time for rider powers from hardly any to beyond what keeps up. */
function curveOf(
  you: Climb,
  reserves: Reserves,
  needed: number,
  { inputs, at, reservesAt }: ReturnType<typeof climbDoubts>,
  riding: Riding,
): CurvePoint[] {
  const { points, known } = you.hill.profile ? CURVE.pieces : CURVE.whole;
  const top = Math.max(250, 1.3 * needed, 1.3 * you.riderPower);
  // the motor helps as soon as anybody pedals
  const powers = Array.from({ length: points + 1 }, (_, i) => top * (i === 0 ? 0.002 : i / points));
  const timeAt = (power: number, values: readonly number[]): number =>
    riding({ ...at(you, values), riderPower: power }, reservesAt(reserves, values)).time;
  const stated = inputs.map(({ value }) => value);
  const ends = powers.map((power, i): CurvePoint | undefined => {
    if (i % known > 0) return undefined;
    const { time } = propagateNamed(inputs, (values) => ({ time: timeAt(power, values) }));
    return { power, time: time.value, low: time.low, high: time.high };
  });
  return powers.flatMap((power, i): CurvePoint[] => {
    const from = ends[i - (i % known)];
    const to = ends[i - (i % known) + known] ?? from;
    if (i % known === 0 || !from || !to) return from ? [from] : [];
    const time = timeAt(power, stated);
    const way = (power - from.power) / (to.power - from.power);
    const part = (of: 'low' | 'high'): number => time * ((1 - way) * (from[of] / from.time) + way * (to[of] / to.time));
    return [{ power, time, low: part('low'), high: part('high') }];
  });
}

import {
  type Climb,
  crankPowerForTime,
  detectableDifference,
  type Endurance,
  type Hill,
  inferMotor,
  pairPrecision,
  powerOfPair,
  repeatsFor,
  rideClimb,
  type TestPlan,
} from '../model/index.ts';
import {
  batteryOf,
  COVERAGE,
  climbOf,
  columnsOf,
  exact,
  hillOf,
  inputOf,
  none,
  numberOf,
  type Outcome,
  optionalOf,
  type Remark,
  type Result,
  type Scenario,
} from '../scenario/index.ts';
import { lowestLeft, type Turn, turningPoint } from './legs.ts';
import { clockOf, type Expected, fixedOf, type Scatter, scatterOf, secondsPerShareAt } from './scatter.ts';
import { orderOf, type Pauses, type Ridden, type Schedule, scheduleOf, withControls } from './schedule.ts';

/** Runs of each bike that a plan takes where no number is enough. */
const WHEN_NONE_IS_ENOUGH = 4;
/** Longest rest that is looked at, s, and the highest power, W. */
const LONGEST_REST = 10_800;
const HIGHEST_POWER = 1500;

/** What a number of runs of each bike finds. */
export interface Choice {
  repeats: number;
  /** all of them, control runs with them */
  runs: number;
  /** s that it finds with the chance that is wanted; null when nothing is ridden twice */
  difference: number | null;
  /** the same in W */
  power: number | null;
  /** chance to find the difference that matters */
  chance: number;
}

/** What the sentences, the table and the chart need; absent where there is no plan. */
export interface PlanAbout {
  bikes: Expected[];
  /** the one that a run's scatter costs the most seconds */
  slowest: number;
  scatter: Scatter;
  /** fewest runs of each; null where no number is enough */
  needed: number | null;
  /** runs of each that are planned */
  repeats: number;
  choices: Choice[];
  schedule: Schedule;
  lastLight: number;
  /** bikes whose battery does not hold one run above its reserve */
  small: number[];
  /** gap of each bike, s, to the nearest one, and the runs of each that show it; null where no number does */
  nearest: { gap: number; repeats: number | null }[];
  legs: { lowest: number; endurance: Endurance; aloneTooMuch: boolean };
}

export interface PlanOutcome extends Outcome {
  notes: Remark[];
  about?: PlanAbout;
}

const ONCE: [name: string, kind: Result['kind']][] = [
  ['repeats', 'count'],
  ['repeats-planned', 'count'],
  ['runs', 'count'],
  ['chance', 'percent'],
  ['detectable-difference', 'seconds'],
  ['detectable-power', 'power'],
  ['detectable-difference-all', 'seconds'],
  ['least-difference', 'seconds'],
  ['repeats-for-gaps', 'count'],
  ['scatter', 'percent'],
  ['scatter-time', 'seconds'],
  ['control-time', 'duration'],
  ['ends-at', 'duration'],
  ['runs-in-light', 'count'],
  ['repeats-in-light', 'count'],
  ['detectable-in-light', 'seconds'],
  ['legs-lowest', 'percent'],
  ['power-lasting', 'power'],
  ['rest-lasting', 'duration'],
  ['rider-work', 'work'],
];
const PER_BIKE: [name: string, kind: Result['kind']][] = [
  ['time', 'duration'],
  ['gap', 'duration'],
  ['gap-chance', 'percent'],
  ['repeats-for-gap', 'count'],
  ['motor-power', 'power'],
  ['battery-energy', 'energy'],
  ['battery-left', 'percent'],
  ['swaps', 'count'],
];

/** How many runs of each bike tell a difference that matters, in which order, and what the day asks of batteries, legs and light. */
export function plan(scenario: Scenario): PlanOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok)
    return without(scenario, setting.problem, [{ tone: 'wrong', text: setting.problem, field: setting.field }]);
  const expected = columnsOf(scenario, 'bike').map((bike) => expectedOf(scenario, setting.value, bike));
  const control = controlOf(scenario, setting.value);
  const bikes = expected.filter((one) => one !== undefined);
  if (bikes.length < expected.length || !(control.time < Number.POSITIVE_INFINITY)) {
    const problem = `At this power ${bikes.length < expected.length ? 'one of the bikes' : 'the bike of the control runs'} does not move up this hill, or rolls by itself.`;
    return without(scenario, problem, [...setting.notes, { tone: 'wrong', text: problem }]);
  }
  return planned(scenario, bikes, control, setting.notes);
}

/** Every result for want of a plan. */
function without(scenario: Scenario, reason: string, notes: Remark[]): PlanOutcome {
  return {
    results: [
      ...ONCE.map(([name, kind]) => none(name, kind, reason)),
      ...columnsOf(scenario, 'bike').flatMap((bike) =>
        PER_BIKE.map(([name, kind]) => none(name, kind, reason, bike + 1)),
      ),
    ],
    notes,
  };
}

/** A bike by its expected time, from which the motor follows, or by its motor; nothing where it does not move by power. */
function expectedOf(scenario: Scenario, hill: Hill, bike: number): Expected | undefined {
  const climb = climbOf(scenario, hill, bike);
  const given = optionalOf(scenario, 'time', bike);
  const time = given ?? rideClimb(climb).time;
  if (!(time < Number.POSITIVE_INFINITY)) return undefined;
  const totalPower = crankPowerForTime(climb, time);
  const secondsPerShare = secondsPerShareAt(climb, time);
  if (!(totalPower > 0 && secondsPerShare > 0)) return undefined;
  const motorPower = given === undefined ? climb.motorPower : Math.max(0, inferMotor(climb, given).mean);
  return { climb: { ...climb, motorPower }, time, totalPower, secondsPerShare };
}

/** The bike without assistance: its climb, and the time that it takes or is expected to take. */
function controlOf(scenario: Scenario, hill: Hill): { climb: Climb; time: number } {
  const mass = numberOf(scenario, 'rider') + (optionalOf(scenario, 'control-bike') ?? 0);
  const riderPower = optionalOf(scenario, 'control-power') ?? 0;
  const climb = { ...climbOf(scenario, hill, 0), mass, riderPower, motorPower: 0 };
  return { climb, time: scenario.controls === 0 ? 0 : (optionalOf(scenario, 'control-time') ?? rideClimb(climb).time) };
}

function planned(
  scenario: Scenario,
  bikes: Expected[],
  control: { climb: Climb; time: number },
  notes: Remark[],
): PlanOutcome {
  const wanted = numberOf(scenario, 'chance');
  const difference = numberOf(scenario, 'difference');
  const { controls } = scenario;
  const scatter = scatterOf(scenario, bikes);
  const slowest = bikes.reduce(
    (worst, { secondsPerShare }, i) => (secondsPerShare > (bikes[worst]?.secondsPerShare ?? 0) ? i : worst),
    0,
  );
  const { secondsPerShare = 1, totalPower = 0 } = bikes[slowest] ?? {};

  // differences are in seconds: a share of total power costs each bike its own
  const test: TestPlan = {
    perShare: bikes.map((bike) => bike.secondsPerShare),
    scatter: scatter.relative,
    fixed: fixedOf(scenario, bikes),
    controls,
    amongAll: false,
  };
  const neededAt = (relative: number): number | null =>
    difference > 0 ? repeatsFor({ ...test, scatter: relative }, slowest, slowest, difference, wanted) : null;
  const needed = neededAt(scatter.relative);
  const given = optionalOf(scenario, 'repeats');
  const repeats = Math.round(given ?? needed ?? WHEN_NONE_IS_ENOUGH);

  const watts = (seconds: number | null): number | null =>
    seconds === null ? null : (seconds / secondsPerShare) * totalPower;
  const finds = (count: number): number | null => found(test, slowest, count, wanted);
  const choiceOf = (count: number): Choice => {
    const least = finds(count);
    return {
      repeats: count,
      runs: count * bikes.length + controls,
      difference: least,
      power: watts(least),
      chance: chanceOf(test, slowest, slowest, count, difference),
    };
  };
  const counts = [...new Set([2, 3, 4, 5, 6, 8, 10, repeats])].filter((count) => count > 1).sort((a, b) => a - b);
  const choices = counts.map(choiceOf);
  const own = choices.find((choice) => choice.repeats === repeats) ?? choiceOf(repeats);
  const amongAll = found({ ...test, amongAll: true }, slowest, repeats, wanted);
  const least = found({ ...test, scatter: 0 }, slowest, 2, wanted);

  const nearest = bikes.map((bike, i) => {
    const other = bikes.reduce<number | undefined>((best, { time }, j) => {
      const away = (time_: number): number => Math.abs(time_ - bike.time);
      return j === i || (best !== undefined && away(bikes[best]?.time ?? 0) <= away(time)) ? best : j;
    }, undefined);
    const gap = Math.abs((bikes[other ?? i]?.time ?? 0) - bike.time);
    return { gap, repeats: gap > 0 ? repeatsFor(test, i, other ?? i, gap, wanted) : null };
  });
  const forGaps = nearest.every((one) => one.repeats !== null)
    ? Math.max(...nearest.map((one) => one.repeats ?? 0))
    : Number.NaN;

  const pauses: Pauses = {
    start: clockOf(scenario, 'first-start'),
    wayDown: numberOf(scenario, 'way-down'),
    coolDown: numberOf(scenario, 'cool-down'),
    swap: numberOf(scenario, 'swap'),
  };
  const ridden = bikes.map((bike, i) => riddenOf(scenario, bike, i));
  const order = String(inputOf(scenario, 'order'));
  const ridesOf = (count: number): (number | null)[] =>
    withControls(orderOf(order, bikes.length, count).flat(), controls);
  const rides = ridesOf(repeats);
  const schedule = scheduleOf(rides, ridden, control.time, pauses);
  const lastLight = clockOf(scenario, 'last-light');
  const inLight = schedule.runs.filter(({ back }) => back <= lastLight).length;
  let repeatsInLight = repeats;
  while (repeatsInLight > 0 && scheduleOf(ridesOf(repeatsInLight), ridden, control.time, pauses).end > lastLight)
    repeatsInLight--;
  const small = ridden.flatMap(({ energy, full, reserve }, i) => (energy > full - reserve ? [i] : []));

  const legs = legsOf(scenario, bikes, control, rides, pauses);
  const ordered = bikes.map(({ time }, i) => ({ time, i })).sort((a, b) => a.time - b.time);
  const tooFew = 'One run of each shows no scatter.';
  const seconds = (name: string, value: number | null, reason = tooFew): Result =>
    exact(name, 'seconds', value ?? Number.NaN, reason);

  const repeatsResult = exact(
    'repeats',
    'count',
    needed ?? Number.NaN,
    difference > 0
      ? 'No number of runs to 60 finds that difference with that chance.'
      : 'No number of runs shows a difference of nothing.',
  );
  if (needed !== null && scatter.low < scatter.high) {
    repeatsResult.low = neededAt(scatter.low) ?? needed;
    const most = neededAt(scatter.high);
    if (most !== null) repeatsResult.high = most;
  }
  const results: Result[] = [
    repeatsResult,
    exact('repeats-planned', 'count', repeats, ''),
    exact('runs', 'count', rides.length, ''),
    exact('chance', 'percent', own.chance, ''),
    seconds('detectable-difference', own.difference),
    exact('detectable-power', 'power', own.power ?? Number.NaN, tooFew),
    seconds('detectable-difference-all', amongAll),
    seconds('least-difference', least),
    exact('repeats-for-gaps', 'count', forGaps, 'No number of runs to 60 shows every gap that you expect.'),
    withLimits(
      exact('scatter', 'percent', COVERAGE * scatter.relative, ''),
      COVERAGE * scatter.low,
      COVERAGE * scatter.high,
    ),
    withLimits(
      exact('scatter-time', 'seconds', COVERAGE * scatter.relative * secondsPerShare, ''),
      COVERAGE * scatter.low * secondsPerShare,
      COVERAGE * scatter.high * secondsPerShare,
    ),
    exact('control-time', 'duration', controls === 0 ? Number.NaN : control.time, 'There are no control runs.'),
    exact('ends-at', 'duration', schedule.end, ''),
    exact('runs-in-light', 'count', inLight, ''),
    exact('repeats-in-light', 'count', repeatsInLight, ''),
    seconds(
      'detectable-in-light',
      repeatsInLight > 0 ? finds(repeatsInLight) : null,
      repeatsInLight > 0 ? tooFew : 'There is not light enough for one run of each.',
    ),
    ...legs.results,
  ];
  bikes.forEach((bike, i) => {
    const place = ordered.findIndex((one) => one.i === i);
    const faster = ordered[place - 1];
    const { energy, full } = ridden[i] as Ridden;
    const noBattery = 'Without a motor at work nothing is drawn.';
    const gap = bike.time - (faster?.time ?? Number.NaN);
    const isFirst = 'No bike is faster.';
    results.push(
      exact('time', 'duration', bike.time, '', i + 1),
      exact('gap', 'duration', gap, isFirst, i + 1),
      exact('gap-chance', 'percent', faster ? chanceOf(test, i, faster.i, repeats, gap) : Number.NaN, isFirst, i + 1),
      exact('repeats-for-gap', 'count', nearest[i]?.repeats ?? Number.NaN, 'No number of runs to 60 shows it.', i + 1),
      exact('motor-power', 'power', bike.totalPower - bike.climb.riderPower, '', i + 1),
      exact('battery-energy', 'energy', energy > 0 ? energy : Number.NaN, noBattery, i + 1),
      exact('battery-left', 'percent', energy > 0 ? (schedule.left[i] ?? 0) / full : Number.NaN, noBattery, i + 1),
      exact('swaps', 'count', schedule.runs.filter((run) => run.bike === i && run.swapped).length, '', i + 1),
    );
  });
  return {
    results,
    notes,
    about: { bikes, slowest, scatter, needed, repeats, choices, schedule, lastLight, small, nearest, legs },
  };
}

const withLimits = (result: Result, low: number, high: number): Result =>
  low < high && Number.isFinite(high) ? { ...result, low, high } : result;

/** As many digits as sums over a distribution have: those after them differ from one machine to the next. */
const asExact = (value: number): number => Number(value.toPrecision(9));

/** Difference, s, between two bikes like that one which so many runs of each find. */
function found(test: TestPlan, bike: number, repeats: number, wanted: number): number | null {
  const difference = detectableDifference(test, bike, bike, repeats, wanted);
  return difference === null ? null : asExact(difference);
}

/** Chance to find a difference, s, between two bikes. */
function chanceOf(test: TestPlan, first: number, second: number, repeats: number, difference: number): number {
  const precision = pairPrecision(test, first, second, repeats);
  if (precision.standardError === 0) return difference > 0 ? 1 : 0.05;
  return asExact(powerOfPair(difference, precision));
}

/** What one run of a bike takes from its battery. */
function riddenOf(scenario: Scenario, { climb, time, totalPower }: Expected, bike: number): Ridden {
  const full = batteryOf(scenario, bike) ?? 0;
  const motor = Math.max(0, totalPower - climb.riderPower);
  return {
    time,
    energy: (motor * time) / numberOf(scenario, 'unit'),
    full,
    reserve: full * numberOf(scenario, 'reserve'),
  };
}

/** Whether the rider's legs last over the day, and at which power or with which rests they do. */
function legsOf(
  scenario: Scenario,
  bikes: readonly Expected[],
  control: { climb: Climb; time: number },
  rides: readonly (number | null)[],
  { wayDown, coolDown }: Pauses,
): PlanAbout['legs'] & { results: Result[] } {
  const endurance = { criticalPower: numberOf(scenario, 'endurance'), workAbove: numberOf(scenario, 'endurance-work') };
  const power = numberOf(scenario, 'power');
  const controlEffort = { power: control.climb.riderPower, time: control.time };
  /** times at another power: as the model has it, in proportion to what is expected at this one */
  const timesAt = (riderPower: number): number[] =>
    bikes.map(
      ({ climb, time }) =>
        (time * rideClimb({ ...climb, riderPower }).time) / rideClimb({ ...climb, riderPower: power }).time,
    );
  const lowestAt = (riderPower: number, rest: number): number => {
    const times = timesAt(riderPower);
    const turns = rides.map(
      (bike): Turn =>
        bike === null
          ? { ...controlEffort, rest: wayDown + rest }
          : { power: riderPower, time: times[bike] ?? 0, rest: wayDown + rest },
    );
    return lowestLeft(turns, endurance);
  };
  const lowest = lowestAt(power, coolDown);
  const { criticalPower, workAbove } = endurance;
  const lasts = (riderPower: number, rest: number): boolean => lowestAt(riderPower, rest) >= 0;
  const aloneTooMuch = !lasts(criticalPower, coolDown);
  const mostPower = aloneTooMuch
    ? Number.NaN
    : lasts(HIGHEST_POWER, coolDown)
      ? Number.NaN
      : turningPoint(HIGHEST_POWER, criticalPower, (riderPower) => lasts(riderPower, coolDown));
  const leastRest = lasts(power, 0)
    ? 0
    : lasts(power, LONGEST_REST)
      ? turningPoint(0, LONGEST_REST, (rest) => lasts(power, rest))
      : Number.NaN;
  const work = rides.reduce<number>((sum, bike) => {
    const effort = bike === null ? controlEffort : { power, time: bikes[bike]?.time ?? 0 };
    return sum + effort.power * effort.time;
  }, 0);
  return {
    lowest,
    endurance,
    aloneTooMuch,
    results: [
      exact('legs-lowest', 'percent', lowest / workAbove, ''),
      exact(
        'power-lasting',
        'power',
        mostPower,
        aloneTooMuch ? 'The control runs alone ask more than your legs have.' : 'At any power they last.',
      ),
      exact('rest-lasting', 'duration', leastRest, 'One run alone asks more than your legs have.'),
      exact('rider-work', 'work', work, ''),
    ],
  };
}

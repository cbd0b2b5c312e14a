import type { DayDoubts, ReducedBike, TestDay, TestRun } from '../model/day/day.ts';
import { COVERAGE } from '../model/day/dayErrors.ts';
import { chiSquareCdf, studentizedRangeQuantile, tQuantile } from '../model/distributions.ts';
import { assistShare } from '../model/motor.ts';
import { formatNumber, formatQuantity, type Kind } from '../quantities/index.ts';
import { kmh } from '../scenario/amounts.ts';
import { METER_SCALE, UNSURVEYED_ROLLING } from '../scenario/doubts.ts';
import type { Remark } from '../scenario/outcome.ts';
import { halfOf, partOf } from './causes.ts';
import type { DayDocument } from './document.ts';
import type { About, DayOutcome } from './outcome.ts';
import { counted, listed, plusMinus } from './phrases.ts';
import type { DayProblem } from './read.ts';
import { capital } from './words.ts';

/*
 * What is odd about a day, in words: each sentence names the run or the bike and says what to do. What contradicts itself comes first,
 * then what makes the ranges wide or the ranking doubtful, then what to know.
 */

/** Rider power farther off the target than this is more than correcting covers: how far the motor follows the rider is not known, and at 5 % that weighs as much as the instruments. Common practice, no source. */
export const OFF_TARGET = 0.05;
/** rpm; within it the runs of a bike count as ridden alike: an eighth of the power at 80 rpm, where torque is what limits. Common practice, no source. */
const SAME_CADENCE = 10;
/** m/s; more wind than this moves motors by 4 to 11 W. */
const WINDY = 1;
/** m/s below its limit: closer than this a bike is at the edge of its fade. Common practice, no source. */
const CLOSE_TO_LIMIT = kmh(3);
/** Motor work over battery energy that a healthy drive can have. Common practice, no source. */
const EFFICIENCY = { low: 0.5, high: 0.9 };
/** Effective C_rr beyond what surface and ±0.008 of back-solving explain. */
const ABSURD_ROLLING = { low: UNSURVEYED_ROLLING.low - 0.008, high: UNSURVEYED_ROLLING.high + 0.008 };
/** Chance below which something is not taken for chance. */
const UNLIKELY = 0.05;
/** One and a half times what a checked meter is good for. */
const DOUBTFUL_METER = 1.5 * METER_SCALE;

/** What a check looks at. */
interface Case extends About {
  doubts: DayDoubts;
  document: DayDocument;
  outcome: DayOutcome;
  /** a value as results are read */
  text: (si: number, kind: Kind) => string;
  /** a value as it was given */
  given: (si: number, kind: Kind) => string;
  name: (bike: number) => string;
  /** number of a run of the day in the document, from 1 */
  number: (run: number) => number;
  /** indices of runs of the day that are so */
  runsThat: (is: (run: TestRun, i: number) => boolean) => number[];
}

type Check = (about: Case) => Remark[];

const wrong = (text: string): Remark => ({ tone: 'wrong', text });
const caution = (text: string): Remark => ({ tone: 'caution', text });
const plain = (text: string): Remark => ({ tone: 'plain', text });

/** "Run 3 (Light)", "Runs 3 (Light), 5 and 8 (Mid)". */
function runsText(about: Case, runs: readonly number[]): string {
  const owner = (i: number): string => about.name(about.day.runs[i]?.bike ?? -1);
  const words = runs.map((run, k) => {
    const following = runs[k + 1];
    const last = following === undefined || owner(following) !== owner(run);
    return `${about.number(run)}${last ? ` (${owner(run)})` : ''}`;
  });
  return `${runs.length === 1 ? 'Run' : 'Runs'}\u202f${listed(words)}`;
}

const speedOf = ({ hill }: TestDay, run: TestRun): number => hill.distance / run.time;

/** Standard deviation of one run that meter and stopwatch explain, relative to total power: root mean square over these runs. */
function explainedScatter({ day, doubts, reduction }: Case, runs: readonly number[]): number {
  const squares = runs.map((i) => {
    const run = day.runs[i];
    const total = reduction.runs[i]?.totalPower ?? Number.NaN;
    if (!run || !(total > 0)) return 0;
    const meter = (doubts.meterRepeatability * run.riderPower) / total;
    return (meter ** 2 + (doubts.stopwatch / run.time) ** 2) / COVERAGE ** 2;
  });
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / Math.max(1, squares.length));
}

// ————— what contradicts itself

/** Sentences of the reader about texts; the same one about several runs is said once. */
function typedProblems(
  document: DayDocument,
  problems: readonly DayProblem[],
  nameOf: (id: string) => string,
): Remark[] {
  const groups = new Map<string, DayProblem[]>();
  for (const problem of problems) {
    const key = `${problem.name} ${problem.message}`;
    groups.set(key, [...(groups.get(key) ?? []), problem]);
  }
  return [...groups.values()].map((group): Remark => {
    const [first] = group;
    const { name = '', message = '', leavesOut } = first ?? {};
    const runs = group.flatMap(({ place }) => {
      const at = document.runs.findIndex(({ id }) => id === place);
      return at < 0 ? [] : [at + 1];
    });
    const bikes = group.flatMap(({ place }) => (document.bikes.some(({ id }) => id === place) ? [nameOf(place)] : []));
    const who = [
      ...(runs.length > 0 ? [`${runs.length === 1 ? 'run' : 'runs'}\u202f${listed(runs.map(String))}`] : []),
      ...bikes,
    ];
    const text = who.length > 0 ? `${capital(listed(who))}: ${message}` : message;
    return { tone: name === 'speed' || leavesOut ? 'wrong' : 'caution', text };
  });
}

const belowZero: Check = (about) => {
  const { reduction, text, name, day } = about;
  const bikes = reduction.bikes.flatMap(({ motorPower }, i) => (motorPower && motorPower.high < 0 ? [i] : []));
  const runs = about.runsThat(
    (run, i) => run.assisted && (reduction.runs[i]?.motorPower ?? 0) < 0 && !bikes.includes(run.bike),
  );
  return [
    ...bikes.map((i) =>
      wrong(
        `${name(i)}: its runs took longer than the rider alone would need, so its motor comes out below zero (${text(reduction.bikes[i]?.motorPower?.value ?? 0, 'power')}). Check its times and rider power, and the weights.`,
      ),
    ),
    ...runs.map((i) =>
      wrong(
        `${runsText(about, [i])}: ${text(day.runs[i]?.time ?? 0, 'duration')} is longer than the rider alone would need, so the motor comes out below zero. Check this time, its power, and whether the motor was on.`,
      ),
    ),
  ];
};

const aboveLimit: Check = (about) => {
  const { day, reduction, text, given } = about;
  return about
    .runsThat((run, i) => {
      const limit = day.bikes[run.bike]?.assistLimit ?? null;
      return run.assisted && limit !== null && speedOf(day, run) >= limit && (reduction.runs[i]?.motorPower ?? 0) > 0;
    })
    .map((i) => {
      const run = day.runs[i] as TestRun;
      const limit = day.bikes[run.bike]?.assistLimit ?? 0;
      return wrong(
        `${runsText(about, [i])} was ridden at ${text(speedOf(day, run), 'speed')}, above the assist limit of ${given(limit, 'speed')}, where a motor gives nothing. The limit or the time is another.`,
      );
    });
};

const beyondClaim: Check = ({ outcome, reduction, name, text, given }) =>
  reduction.bikes.flatMap(({ motorPower, runs }, i) => {
    const claimed = outcome.reading.claimedMotors[i];
    if (!motorPower || runs === 0 || claimed === undefined) return [];
    if (claimed === null)
      return [
        wrong(`${name(i)} is entered as a bike without a motor, but some of its runs as assisted. Change one of them.`),
      ];
    if (!(motorPower.low > claimed)) return [];
    return [
      wrong(
        `${name(i)}: these times need ${text(motorPower.value, 'power')} from a motor whose claim is ${given(claimed, 'power')}, and the range (from ${text(motorPower.low, 'power')}) does not reach down to it. Either the claim is not its peak, or a time, a weight, the rider’s power or the wind is wrong.`,
      ),
    ];
  });

const absurdRolling: Check = ({ day, reduction, text, given }) =>
  reduction.rolling.flatMap(({ estimate, runs }) => {
    const { value } = estimate;
    if (runs === 0 || (value >= ABSURD_ROLLING.low && value <= ABSURD_ROLLING.high)) return [];
    const shown = formatNumber(value, 4);
    const mass = given(day.riderMass, 'mass');
    return [
      value < 0
        ? wrong(
            `The control runs ask for a rolling resistance of ${shown}, below zero, which no tyre does. Power, time, height and mass contradict each other: check the rider’s mass (${mass} with kit) first, then the height (${text(day.hill.gain, 'height')}) and the meter.`,
          )
        : caution(
            `The control runs ask for a rolling resistance of ${shown}, outside what ordinary trails have (${UNSURVEYED_ROLLING.low} to ${UNSURVEYED_ROLLING.high}). If the surface was ordinary, check the rider’s mass (${mass} with kit) first, then the height and the meter. Motor power hardly changes with them, another hill’s times do.`,
          ),
    ];
  });

const oddEnergy: Check = ({ reduction, name, text }) =>
  reduction.bikes.flatMap(({ efficiency, batteryEnergy }, i) => {
    if (!efficiency || !batteryEnergy) return [];
    const { value, low, high } = efficiency;
    if (value >= EFFICIENCY.low && value <= EFFICIENCY.high) return [];
    const ratio = formatNumber(value, 2);
    const within =
      value > 1 ? low <= EFFICIENCY.high : value > EFFICIENCY.high ? low <= EFFICIENCY.high : high >= EFFICIENCY.low;
    const coarse = within ? ' The gauge is too coarse to be surer: several climbs in one reading would tell.' : '';
    if (value > 1)
      return [
        wrong(
          `${name(i)}: the battery gave ${text(batteryEnergy.value, 'energy')}, less than the work that its motor did (${ratio} times as much). No drive does that. Check the gauge readings, the battery’s energy, and the rider’s power, in that order.${coarse}`,
        ),
      ];
    return [
      caution(
        value > EFFICIENCY.high
          ? `${name(i)}: the drive would have an efficiency of ${ratio}, better than drives are. Check the gauge readings, the battery’s energy (label or usable), and whether the rider’s power was higher.${coarse}`
          : `${name(i)}: the drive would have an efficiency of ${ratio}, worse than drives are. Check the gauge readings (of the run alone, without the way to the start), the battery’s energy and age, and lights or charging.${coarse}`,
      ),
    ];
  });

// ————— what was ridden badly, or at another power

const offTarget: Check = (about) => {
  const { day, text } = about;
  const runs = about.runsThat(
    ({ assisted, riderPower }) => assisted && Math.abs(riderPower / day.targetPower - 1) > OFF_TARGET,
  );
  if (runs.length === 0) return [];
  return [
    caution(
      `${runsText(about, runs)}: more than 5\u202f% off the target of ${text(day.targetPower, 'power')}. Times are corrected as if the motor gave the same at the target, which nobody knows that far off. Ride ${runs.length === 1 ? 'it' : 'them'} again, or leave ${runs.length === 1 ? 'it' : 'them'} out by a rule made beforehand.`,
    ),
  ];
};

const unlikeCadence: Check = (about) => {
  const { day, outcome, given } = about;
  const { cadences } = outcome.reading;
  const stated = about.runsThat(({ assisted }, i) => assisted && cadences[i] !== undefined);
  return [...new Set(stated.map((i) => day.runs[i]?.bike ?? -1))].flatMap((bike) => {
    const own = stated.filter((i) => day.runs[i]?.bike === bike);
    const of = (i: number): number => cadences[i] ?? 0;
    const far = (i: number): number => own.filter((other) => Math.abs(of(other) - of(i)) > SAME_CADENCE).length;
    // with half of the runs or more far from it, it is not they that are odd
    const runs = own.filter((i) => 2 * far(i) >= own.length);
    if (runs.length === 0) return [];
    const all = own.map(of);
    return [
      caution(
        `${runsText(about, runs)}: more than ${given(SAME_CADENCE, 'cadence')} off other runs of its bike (${given(Math.min(...all), 'cadence')} to ${given(Math.max(...all), 'cadence')}). A motor held by its torque gives another power at another cadence, so these runs may not show the same motor. Ride each bike at one cadence, and publish which.`,
      ),
    ];
  });
};

const outlying: Check = (about) => {
  const { day, reduction } = about;
  const freedom = reduction.scatter.freedom;
  if (reduction.scatter.assumed || freedom < 2) return [];
  const sizes = new Map<string, number>();
  const group = ({ bike, assisted }: TestRun): string => (assisted ? `${bike}` : 'control');
  for (const run of day.runs) sizes.set(group(run), (sizes.get(group(run)) ?? 0) + 1);
  const limit = tQuantile(1 - UNLIKELY / (2 * day.runs.length), freedom - 1);
  const runs = about.runsThat((run, i) => {
    const size = sizes.get(group(run)) ?? 1;
    if (size < 3) return false;
    const r = (reduction.runs[i]?.residual ?? 0) / (reduction.scatter.relative * Math.sqrt(1 - 1 / size));
    // the run itself is taken out of the scatter that it is held against
    const left = freedom - r * r;
    return left <= 0 || Math.abs(r) * Math.sqrt((freedom - 1) / left) > limit;
  });
  return runs.map((i) => {
    const residual = reduction.runs[i]?.residual ?? 0;
    return caution(
      `${runsText(about, [i])} stands apart: ${formatNumber(100 * Math.abs(residual), 1)}\u202f% ${residual > 0 ? 'more' : 'less'} total power than the others of its kind, more than chance gives. Look at its note, time and power. It counts until you leave it out, and stays in what is published.`,
    );
  });
};

const wideScatter: Check = (about) => {
  const { relative, freedom, assumed } = about.reduction.scatter;
  if (assumed || freedom < 1) return [];
  const explained = explainedScatter(
    about,
    about.day.runs.map((_, i) => i),
  );
  if (!(explained > 0) || chiSquareCdf((freedom * relative ** 2) / explained ** 2, freedom) < 1 - UNLIKELY / 2)
    return [];
  return [
    caution(
      `Your repeats differ by ${formatNumber(100 * relative, 1)}\u202f% of total power from run to run; meter and stopwatch explain ${formatNumber(100 * explained, 1)}\u202f%. Something else changed between them: wind, line, pacing, tyre pressure, or the motor’s temperature. The ranges hold it.`,
    ),
  ];
};

const drift: Check = ({ reduction, day }) => {
  const found = reduction.drift;
  if (!found || found.probability >= UNLIKELY) return [];
  const whole = 100 * Math.abs(found.perRun) * (day.runs.length - 1);
  return [
    caution(
      `Total power ${found.perRun < 0 ? 'fell' : 'rose'} as the day went on, by about ${formatNumber(whole, 1)}\u202f% from the first run to the last: wind, battery, heat or the surface. An order that runs forward and back takes it out of the differences; another order does not.`,
    ),
  ];
};

// ————— calibration

const controlsOf = (about: Case): number[] => about.runsThat(({ assisted }) => !assisted);
const assistedOf = (about: Case): number[] => about.runsThat(({ assisted }) => assisted);
/** The motor whose range is widest, and its bike. */
function widest({ reduction }: Case): { bike: number; motor: NonNullable<ReducedBike['motorPower']> } | undefined {
  const all = reduction.bikes.flatMap(({ motorPower }, bike) => (motorPower ? [{ bike, motor: motorPower }] : []));
  return all.sort((a, b) => halfOf(b.motor) - halfOf(a.motor))[0];
}

const noControl: Check = (about) => {
  if (controlsOf(about).length > 0 || assistedOf(about).length === 0) return [];
  const wide = widest(about);
  if (!wide) return [];
  const { doubts, name } = about;
  const surface = partOf(wide.motor, ['rolling']);
  return [
    caution(
      `No control run, so nobody knows how this hill rolls: ordinary trails lie between ${formatNumber(doubts.rollingLow, 3)} and ${formatNumber(doubts.rollingHigh, 3)}, and all of that width is allowed for. That alone is ${plusMinus(surface, 'power', about.document.system)} of the ${plusMinus(halfOf(wide.motor), 'power', about.document.system)} around ${name(wide.bike)}’s motor; far less of it falls on the gaps between bikes. Two runs without a motor, on the same tyres, at the start and at the end, would take it out.`,
    ),
  ];
};

const fewControls: Check = (about) => {
  const controls = controlsOf(about);
  const assisted = assistedOf(about);
  const [first] = controls;
  if (first === undefined || assisted.length === 0) return [];
  if (controls.length === 1)
    return [
      caution(
        `${runsText(about, [first])} is the only control run: its error moves every motor alike, and no drift of the day can be seen. Ride another one as the last run.`,
      ),
    ];
  const before = first < (assisted[0] ?? 0);
  const after = (controls.at(-1) ?? 0) > (assisted.at(-1) ?? 0);
  if (before && after) return [];
  return [
    plain(
      `The control runs do not stand first and last, so they cannot show whether the hill changed ${before ? 'towards the end of' : after ? 'at the beginning of' : 'during'} the day.`,
    ),
  ];
};

const controlsDisagree: Check = (about) => {
  const { day, reduction, doubts } = about;
  const bySet = new Map<number, number[]>();
  for (const i of controlsOf(about)) {
    const tyres = day.bikes[day.runs[i]?.bike ?? -1]?.tyres ?? 0;
    bySet.set(tyres, [...(bySet.get(tyres) ?? []), i]);
  }
  return [...bySet.values()].flatMap((runs) => {
    if (runs.length < 2) return [];
    const residual = (i: number): number => reduction.runs[i]?.residual ?? 0;
    const sorted = [...runs].sort((a, b) => residual(a) - residual(b));
    const [low = 0, high = 0] = [sorted[0], sorted.at(-1)];
    const one = Math.hypot(explainedScatter(about, runs), doubts.scatter / COVERAGE);
    const apart = residual(high) - residual(low);
    if (!(one > 0) || apart <= one * studentizedRangeQuantile(1 - UNLIKELY, runs.length, Number.POSITIVE_INFINITY))
      return [];
    const [earlier, later] = [about.number(Math.min(low, high)), about.number(Math.max(low, high))];
    return [
      caution(
        `The control runs disagree: runs\u202f${earlier} and ${later} are ${formatNumber(100 * apart, 1)}\u202f% of power apart, more than meter, stopwatch and ordinary scatter give. Look for wind, tyre pressure, a brake that rubs, or a meter that was not set to zero; until it is found, trust the gaps more than the watts.`,
      ),
    ];
  });
};

const unlikeTyres: Check = (about) => {
  const { day, reduction, name } = about;
  const controls = controlsOf(about);
  // where tyres are what is compared, what they roll differently is the answer
  if (controls.length === 0 || day.factor === 'tyres') return [];
  const calibrated = new Set(controls.map((i) => day.bikes[day.runs[i]?.bike ?? -1]?.tyres));
  const bikes = [...new Set(assistedOf(about).map((i) => day.runs[i]?.bike ?? -1))].filter(
    (bike) => !calibrated.has(day.bikes[bike]?.tyres),
  );
  const costs = bikes.flatMap((bike) => {
    const motor = reduction.bikes[bike]?.motorPower;
    return motor ? [partOf(motor, ['tyres'])] : [];
  });
  if (bikes.length === 0 || costs.length === 0) return [];
  return [
    caution(
      `${listed(bikes.map(name))} ${bikes.length === 1 ? 'rolls' : 'roll'} on tyres that no control run was ridden on. What they roll differently goes into the motor: ${plusMinus(Math.max(...costs), 'power', about.document.system)}. Same tyres and pressure for all, or two runs with the motor off on each bike, would take it out.`,
    ),
  ];
};

const unreadPower: Check = ({ outcome, doubts, document, given, day }) =>
  outcome.reading.powerUnread
    ? [
        caution(
          `No run has a rider power, so ${given(day.targetPower, 'power')} is taken for all of them, known to ${plusMinus(doubts.meterScale, 'percent', document.system)} at best. The gaps in time stand as ridden; watts need a meter.`,
        ),
      ]
    : [];

const doubtfulMeter: Check = (about) => {
  const { doubts, name, outcome } = about;
  const { system } = about.document;
  const wide = widest(about);
  if (!wide || outcome.reading.powerUnread || doubts.meterScale <= DOUBTFUL_METER) return [];
  const part = partOf(wide.motor, ['meterScale']);
  const worth =
    controlsOf(about).length > 0
      ? ', and makes the control runs worth less, which measure the hill with this very meter'
      : '';
  return [
    caution(
      `The power meter is only known to ${plusMinus(doubts.meterScale, 'percent', system)}. That alone is ${plusMinus(part, 'power', system)} of the ${plusMinus(halfOf(wide.motor), 'power', system)} around ${name(wide.bike)}’s motor${worth}. Hang known weights on the pedals before and after the day; a checked meter is good to about ${plusMinus(METER_SCALE, 'percent', system)}.`,
    ),
  ];
};

// ————— conditions and motors

const windy: Check = (about) => {
  const { day } = about;
  const runs = about.runsThat((run) => Math.abs(run.headWind ?? day.headWind) > WINDY);
  if (runs.length === 0) return [];
  const who = runs.length === day.runs.length ? 'All runs' : runsText(about, runs);
  return [
    caution(
      `${who}: more than ${about.given(WINDY, 'wind')} of wind. It is reckoned with, but a wind that changes between runs is not, and it counts for more the faster a bike is. Still air is worth waiting for.`,
    ),
  ];
};

const closeToLimit: Check = (about) => {
  const { day, reduction, name, text, given } = about;
  return reduction.bikes.flatMap(({ insideFade, speed, motorPower }, i) => {
    const limit = day.bikes[i]?.assistLimit ?? null;
    if (limit === null || !motorPower) return [];
    const fastest = Math.max(
      ...day.runs.filter((run) => run.bike === i && run.assisted).map((run) => speedOf(day, run)),
    );
    if (insideFade || assistShare(fastest, limit) < 1)
      return [
        caution(
          `${name(i)} was ridden inside the fade before its limit of ${given(limit, 'speed')}: ${text(motorPower.value, 'power')} is what it gave on this hill, a lower bound for what it can give. A steeper hill would show more.`,
        ),
      ];
    if (Math.max(fastest, speed?.value ?? 0) < limit - CLOSE_TO_LIMIT) return [];
    return [
      caution(
        `${name(i)} comes within ${given(CLOSE_TO_LIMIT, 'speed')} of its limit of ${given(limit, 'speed')}. On any gentler stretch of the hill its motor may have faded, and its power then is a mean. A steeper hill keeps clear of it.`,
      ),
    ];
  });
};

const followsRider: Check = ({ day, reduction, name, text }) => {
  const bikes = reduction.bikes.flatMap(({ followsRider: follows }, i) => (follows ? [i] : []));
  if (bikes.length === 0) return [];
  const one = bikes.length === 1;
  return [
    caution(
      `${listed(bikes.map(name))}: at ${text(day.targetPower, 'power')} the ${one ? 'motor gives its' : 'motors give their'} support times the rider’s power, not ${one ? 'its' : 'their'} most. The result holds at this rider power only, and is corrected so. A run with a fifth more rider power shows what ${one ? 'it gives' : 'they give'} at most.`,
    ),
  ];
};

const singleRuns: Check = ({ day, reduction, name, doubts }) => {
  const bikes = reduction.bikes.flatMap(({ runs }, i) => (runs === 1 ? [i] : []));
  if (bikes.length === 0) return [];
  const assumed =
    reduction.scatter.assumed && doubts.scatter > 0
      ? ` Without any repeats the scatter of a run is assumed, ${formatNumber(100 * doubts.scatter, 1)}\u202f% either way.`
      : '';
  return [
    plain(
      `${listed(bikes.map(name))}: one run${bikes.length === 1 ? '' : ' each'}, which cannot show how far off another would be.${assumed}${day.runs.length > 1 ? ' Repeats tell, and narrow every range.' : ''}`,
    ),
  ];
};

const noTarget: Check = ({ outcome, text }) => {
  const used = outcome.reading.defaultsUsed.find(({ name }) => name === 'power');
  return used
    ? [
        plain(
          `No target power is filled in: results are compared at the mean of the runs, ${text(used.value, 'power')}.`,
        ),
      ]
    : [];
};

const notCounted: Check = ({ document }) => {
  const runs = document.runs.flatMap(({ counted: counts }, i) => (counts ? [] : [i + 1]));
  return runs.length === 0
    ? []
    : [
        plain(
          `${counted(runs.length, 'run')} (${listed(runs.map(String))}) ${runs.length === 1 ? 'is' : 'are'} kept but not counted. Publish ${runs.length === 1 ? 'it' : 'them'} with the reason.`,
        ),
      ];
};

const CHECKS: readonly Check[] = [
  beyondClaim,
  belowZero,
  aboveLimit,
  absurdRolling,
  oddEnergy,
  noControl,
  unreadPower,
  doubtfulMeter,
  unlikeTyres,
  controlsDisagree,
  outlying,
  offTarget,
  unlikeCadence,
  drift,
  closeToLimit,
  followsRider,
  windy,
  wideScatter,
  fewControls,
  singleRuns,
  noTarget,
  notCounted,
];

const TONES: Readonly<Record<Remark['tone'], number>> = { wrong: 0, caution: 1, plain: 2 };

/** Everything odd about a day, the most important first. */
export function checksOf(document: DayDocument, outcome: DayOutcome): Remark[] {
  const { reading, about } = outcome;
  const names = new Map(document.bikes.map(({ id, texts }, i) => [id, texts.name?.trim() || `Bike ${i + 1}`]));
  const typed = typedProblems(document, reading.problems, (id) => names.get(id) ?? '');
  if (!about) return typed;
  const { system } = document;
  const one: Case = {
    ...about,
    doubts: reading.doubts,
    document,
    outcome,
    text: (si, kind) => formatQuantity(si, kind, system),
    given: (si, kind) => formatQuantity(si, kind, system, { trim: true }),
    name: (bike) => reading.bikeNames[bike] ?? '',
    number: (run) => 1 + document.runs.findIndex(({ id }) => id === reading.runIds[run]),
    runsThat: (is) => about.day.runs.flatMap((run, i) => (is(run, i) ? [i] : [])),
  };
  const found = [...typed, ...CHECKS.flatMap((check) => check(one))];
  return found.sort((a, b) => TONES[a.tone] - TONES[b.tone]);
}

import type { Estimate } from '../model/day/day.ts';
import { formatQuantity, formatRange, type Kind, type System } from '../quantities/index.ts';
import type { DayDocument } from './document.ts';
import type { DayOutcome } from './outcome.ts';
import { counted, gapTexts, listed } from './phrases.ts';
import { type RankedPair, rankedPairs, rankingOf } from './verdicts.ts';

/** The answer of a day in words and one number. */
export interface Headline {
  /** what the number is */
  of: string;
  value: string;
  /** its 95 % range */
  range: string;
  /** what it means, and whether it is shown */
  words: string;
}

const given = (si: number, kind: Kind, system: System): string => formatQuantity(si, kind, system, { trim: true });
const rangeOf = ({ low, high }: Estimate, kind: Kind, system: System): string => formatRange(low, high, kind, system);

/** The hill in words: "1 mi with 550 ft of gain". */
export const hillText = ({ distance, gain }: { distance: number; gain: number }, system: System): string =>
  `${given(distance, 'distance', system)} that ${gain < 0 ? 'loses' : 'gains'} ${given(Math.abs(gain), 'height', system)}`;

const FACTORS = { tyres: 'tyres', mass: 'mass', setting: 'motor setting' } as const;

/** A difference that rounds to nothing. */
const isNothing = (text: string): boolean => !/[1-9]/.test(text);

/** The headline; undefined while there is nothing to say. */
export function headlineOf(document: DayDocument, outcome: DayOutcome): Headline | undefined {
  const { about, reading } = outcome;
  if (!about) return undefined;
  const { system } = document;
  const at = given(about.day.targetPower, 'power', system);
  const ranking = rankingOf(outcome);
  const pairs = rankedPairs(outcome);
  const name = (i: number): string => reading.bikeNames[i] ?? '';
  const factor = about.day.factor;
  if (factor !== 'bikes') {
    const effect = pairs.find(({ pair }) => pair.first === 0) ?? pairs[0];
    if (effect) return effectHeadline(effect, FACTORS[factor], at, name, system);
  }
  const first = pairs[0];
  if (first) {
    const { low, high } = turned(first);
    const gap = gapTexts(Math.abs(first.pair.time.difference.value), low, high);
    return {
      of: isNothing(gap.value)
        ? `At ${at}, ${name(first.faster)} and ${name(first.slower)} are level: between them lie`
        : `At ${at}, ${name(first.faster)} is first up, ahead of ${name(first.slower)} by`,
      ...gap,
      words: first.verdict.text,
    };
  }
  const only = ranking[0] ?? about.reduction.bikes.findIndex(({ motorPower }) => motorPower);
  const motor = about.reduction.bikes[only]?.motorPower;
  if (motor)
    return {
      of: `${name(only)}: its motor gave on average`,
      value: formatQuantity(motor.value, 'power', system),
      range: rangeOf(motor, 'power', system),
      words: 'Ride a second bike, and the two can be compared.',
    };
  const surface = about.reduction.rolling.find(({ runs }) => runs > 0);
  if (!surface) return undefined;
  return {
    of: 'Control runs only: the rolling resistance of this hill is',
    value: formatQuantity(surface.estimate.value, 'ratio', system),
    range: rangeOf(surface.estimate, 'ratio', system),
    words: 'Ride a bike with its motor, and its output is told here.',
  };
}

/** The difference of a pair as slower less faster. */
function turned({ pair, forward }: RankedPair): { low: number; high: number } {
  const { low, high } = pair.time.difference;
  return forward ? { low, high } : { low: -high, high: -low };
}

function effectHeadline(
  { pair, verdict }: RankedPair,
  factor: string,
  at: string,
  name: (i: number) => string,
  system: System,
): Headline {
  const { value, low, high } = pair.time.difference;
  const watts = pair.motorPower.difference;
  const way = value < 0 ? 'saves' : 'costs';
  const [from, to] = value < 0 ? [-high, -low] : [low, high];
  return {
    of: `The effect of the ${factor}: at ${at}, ${name(pair.second)} ${way} against ${name(pair.first)}`,
    ...gapTexts(Math.abs(value), from, to),
    words: `In watts of a motor that is as much as ${formatQuantity(watts.value, 'power', system, { sign: true })}, ${rangeOf(watts, 'power', system)}. ${verdict.text}`,
  };
}

/** The sentence that a publisher would print; empty while there is nothing to print. */
export function publishedSentence(document: DayDocument, outcome: DayOutcome): string {
  const { about, reading } = outcome;
  const ranking = rankingOf(outcome);
  if (!about || ranking.length === 0) return '';
  const { system, setup, runs } = document;
  const { day, reduction } = about;
  const date = setup.date?.trim();
  // of one bike with other tyres or more load the motor is the same: what differs is told as the effect
  const motorsDiffer = day.factor === 'bikes' || day.factor === 'setting';
  const results = ranking.flatMap((i) => {
    const { time, motorPower, runs: own } = reduction.bikes[i] ?? {};
    if (!time || !motorPower) return [];
    const mass = given(day.bikes[i]?.mass ?? Number.NaN, 'mass', system);
    return [
      `${formatQuantity(time.value, 'duration', system)} (${rangeOf(time, 'duration', system)}) on ${reading.bikeNames[i]} (${mass}, ${counted(own ?? 0, 'run')})${motorsDiffer ? `, its motor giving ${formatQuantity(motorPower.value, 'power', system)} (${rangeOf(motorPower, 'power', system)}) on average` : ''}`,
    ];
  });
  const effect = motorsDiffer ? undefined : headlineOf(document, outcome);
  const controls = day.runs.filter(({ assisted }) => !assisted).length;
  const left = runs.length - day.runs.length;
  const real = rankedPairs(outcome)
    .filter(({ neighbours }) => neighbours)
    .map(({ faster, slower, verdict }) => ({
      text: `${reading.bikeNames[faster]} before ${reading.bikeNames[slower]}`,
      verdict,
    }));
  const shown = real.filter(({ verdict }) => verdict.real).map(({ text }) => text);
  const open = real.filter(({ verdict }) => !verdict.real).map(({ text }) => text);
  return [
    `${date ? `${date}: up` : 'Up'} a hill of ${hillText(day.hill, system)}, at ${given(day.targetPower, 'power', system)}${reading.powerUnread ? ' by feel, not by a meter,' : ''} from a rider of ${given(day.riderMass, 'mass', system)} with kit, the times were ${results.join('; ')}.`,
    effect ? `${effect.of} ${effect.value} (${effect.range}).` : '',
    shown.length > 0 ? `Shown beyond doubt of measurement: ${listed(shown)}.` : '',
    open.length > 0 ? `Not shown: ${listed(open)}.` : '',
    `Ranges are 95\u202f%, from ${counted(day.runs.length, 'run')}, ${controls === 0 ? 'none of them a control run' : `${controls} of them ${controls === 1 ? 'a control run' : 'control runs'}`}${left > 0 ? `; ${counted(left, 'run')} not counted` : ''}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

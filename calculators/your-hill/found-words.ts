import type { ClimbFigures, ComparedDistances, MeanValue, Mended, Track } from '../model/index.ts';
import { formatDuration, formatNumber, formatQuantity, type System } from '../quantities/index.ts';
import type { Missing, Pause } from './interruptions.ts';
import type { Part } from './reading/recording.ts';
import { count, wayText, wholePercent } from './words.ts';

/* What was found in a recording, in sentences. */

const share = (ratio: number): string => `${formatNumber(100 * ratio, ratio < 0.1 ? 1 : 0)}\u202f%`;

/** How the way by positions and by the counter differ, and where the most. */
export function disagreementText(
  { track, distanceFrom, crept }: Part,
  compared: ComparedDistances | null,
  system: System,
): string {
  if (distanceFrom === 'counter') return 'The file has no positions: the way is the device’s own count.';
  if (!compared) return 'The file has no counter to hold the way by positions against.';
  const { positions, counter, stretches, worst } = compared;
  const difference = positions - counter;
  const larger = difference > 0 ? 'longer' : 'shorter';
  const text = (si: number): string => formatQuantity(Math.abs(si), 'distance', system);
  const whole = `By positions the way is ${text(difference)} (${share(Math.abs(difference) / counter)}) ${larger} than by the counter.`;
  const worstBy = worst.positions - worst.counter;
  const where =
    stretches.length > 1
      ? ` They differ most, by ${text(worstBy)}, between ${text(track.distance[worst.from] ?? 0)} and ${text(track.distance[worst.to] ?? 0)}.`
      : '';
  const crawl = crept >= 10 ? ` Of it ${text(crept)} were covered at a crawl, where positions wander.` : '';
  return `${whole}${where}${crawl}`;
}

const MENDED: Readonly<Record<Mended['kind'], readonly [string, string]>> = {
  zero: ['run of zeros', 'runs of zeros'],
  spike: ['spike', 'spikes'],
  hole: ['hole', 'holes'],
};

/** "2 heights mended: a spike of 80 m at 0.62 km, a zero at 1.90 km": what must be known before any gain is believed. Empty where nothing was. */
export function mendedLine(mended: readonly Mended[], { distance }: Track, system: System): string {
  if (mended.length === 0) return '';
  const one = ({ kind, from, metres }: Mended): string => {
    const place = wayText(distance[from] ?? 0, system);
    if (kind === 'zero') return `a zero at ${place}`;
    if (kind === 'hole') return `a hole of ${wayText(metres, system)} at ${place}`;
    return `a spike of ${formatQuantity(metres, 'height', system)} at ${place}`;
  };
  const worst = mended.toSorted((a, b) => b.metres - a.metres).slice(0, MOST_NAMED);
  const named = mended.filter((each) => worst.includes(each)).map(one);
  const others = mended.length - named.length;
  return `${count(mended.length, 'place', 'places')} mended in the heights: ${named.join(', ')}${others > 0 ? `, and ${formatNumber(others)} more` : ''}.`;
}

/** Places that are named in one sentence: the longest or worst ones. */
const MOST_NAMED = 3;

/** The longest of some, in their order, and "and 4 more". */
function longest<Each extends { seconds: number }>(all: readonly Each[], text: (each: Each) => string): string {
  const most = all.toSorted((a, b) => b.seconds - a.seconds).slice(0, MOST_NAMED);
  const others = all.length - most.length;
  const named = all.filter((each) => most.includes(each)).map(text);
  return `${named.join(', ')}${others > 0 ? `, and ${formatNumber(others)} more` : ''}`;
}

/** Zeros, spikes and holes that were mended: how many, how bad, where the worst is. */
export function mendedTexts(mended: readonly Mended[], { distance }: Track, system: System): string[] {
  return (['zero', 'spike', 'hole'] as const).flatMap((kind) => {
    const all = mended.filter((each) => each.kind === kind);
    const worst = all.reduce<Mended | undefined>(
      (most, each) => (each.metres > (most?.metres ?? -1) ? each : most),
      undefined,
    );
    if (!worst) return [];
    const place = wayText(distance[worst.from] ?? 0, system);
    const size =
      kind === 'hole'
        ? `the longest over ${formatQuantity(worst.metres, 'distance', system)} of road`
        : `the worst ${formatQuantity(worst.metres, 'height', system)} off`;
    return [`Heights mended: ${count(all.length, ...MENDED[kind])}, ${size}, at ${place}.`];
  });
}

/** Breaks and pauses: how many, how long and where, and that nothing was counted over them. */
export function pausesText(
  { breaks }: Track,
  { pauses, gaps, elapsed }: ClimbFigures,
  places: readonly Pause[],
  system: System,
): string {
  if (elapsed === undefined)
    return breaks.length === 0 ? '' : `The way is interrupted ${times(breaks.length)}; nothing was counted over it.`;
  if (pauses.count === 0) return 'No pause, no break.';
  const far = breaks.filter(({ apart }) => Number.isFinite(apart)).reduce((sum, { apart }) => sum + apart, 0);
  const leaps = gaps > 0 && far > 0 ? `, ${formatQuantity(far, 'distance', system)} apart as the crow flies` : '';
  const ofThem = gaps > 0 ? ` At ${count(gaps, 'of them', 'of them')} the recording goes on elsewhere${leaps}.` : '';
  const where = longest(places, ({ place, seconds }) => `${formatDuration(seconds)} at ${wayText(place, system)}`);
  return `${count(pauses.count, 'pause')}, ${formatDuration(pauses.seconds)} in all${where && `: ${where}`}.${ofThem} None was bridged: nothing is counted over them.`;
}

/** Where a sensor was silent. Empty where it was not. */
export function missingText(words: string, missing: readonly Missing[], system: System): string {
  if (missing.length === 0) return '';
  const where = longest(
    missing,
    ({ from, to, seconds }) => `from ${wayText(from, system)} to ${wayText(to, system)} (${formatDuration(seconds)})`,
  );
  return `No ${words} ${where}.`;
}

const times = (n: number): string => (n === 1 ? 'once' : `${formatNumber(n)} times`);

export const MEASURED = [
  ['power', 'power'],
  ['cadence', 'cadence'],
  ['heartRate', 'heart rate'],
] as const;

/** What was measured, and for how much of the riding time. */
export function coverageText(figures: ClimbFigures, { kind }: Part): string[] {
  if (kind === 'route') return ['A route has no times: it is a hill without a ride.'];
  const there = MEASURED.filter(([name]) => figures[name].coverage > 0);
  const absent = MEASURED.filter(([name]) => figures[name].coverage === 0).map(([, words]) => words);
  const texts = there.map(([name, words]) => `${words} for ${wholePercent(figures[name].coverage)} of the riding time`);
  return [
    ...(texts.length > 0 ? [`Measured: ${texts.join(', ')}.`] : []),
    ...(absent.length > 0 ? [`Not in the file: ${absent.join(', ')}.`] : []),
  ];
}

/** Why there is no mean of a column. */
export function meanReason(words: string, { mean, coverage }: MeanValue): string {
  if (mean !== undefined) return '';
  if (coverage === 0) return `No ${words} on this stretch.`;
  const capital = `${words[0]?.toUpperCase()}${words.slice(1)}`;
  return `${capital} for ${wholePercent(coverage)} of the riding time only: no mean is given.`;
}

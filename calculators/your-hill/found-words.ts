import type { ClimbFigures, ComparedDistances, MeanValue, Mended, Track } from '../model/index.ts';
import { formatDuration, formatNumber, formatQuantity, type System } from '../quantities/index.ts';
import type { Part } from './reading/recording.ts';
import { count } from './words.ts';

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

/** Zeros, spikes and holes that were mended: how many, how bad, where the first is. */
export function mendedTexts(mended: readonly Mended[], { distance }: Track, system: System): string[] {
  return (['zero', 'spike', 'hole'] as const).flatMap((kind) => {
    const all = mended.filter((each) => each.kind === kind);
    const worst = all.reduce<Mended | undefined>(
      (most, each) => (each.metres > (most?.metres ?? -1) ? each : most),
      undefined,
    );
    if (!worst) return [];
    const place = formatQuantity(distance[worst.from] ?? 0, 'distance', system);
    const size =
      kind === 'hole'
        ? `the longest over ${formatQuantity(worst.metres, 'distance', system)} of road`
        : `the worst ${formatQuantity(worst.metres, 'height', system)} off`;
    return [`Heights mended: ${count(all.length, ...MENDED[kind])}, ${size}, at ${place}.`];
  });
}

/** Breaks and pauses: how many, how long, and that nothing was counted over them. */
export function pausesText({ breaks }: Track, { pauses, gaps, elapsed }: ClimbFigures, system: System): string {
  if (elapsed === undefined)
    return breaks.length === 0 ? '' : `The way is interrupted ${times(breaks.length)}; nothing was counted over it.`;
  if (pauses.count === 0) return 'No pause, no break.';
  const far = breaks.filter(({ apart }) => Number.isFinite(apart)).reduce((sum, { apart }) => sum + apart, 0);
  const leaps = gaps > 0 && far > 0 ? `, ${formatQuantity(far, 'distance', system)} apart as the crow flies` : '';
  const ofThem = gaps > 0 ? ` At ${count(gaps, 'of them', 'of them')} the recording goes on elsewhere${leaps}.` : '';
  return `${count(pauses.count, 'pause')}, ${formatDuration(pauses.seconds)} in all.${ofThem} None was bridged: nothing is counted over them.`;
}

const times = (n: number): string => (n === 1 ? 'once' : `${formatNumber(n)} times`);

const MEASURED = [
  ['power', 'power'],
  ['cadence', 'cadence'],
  ['heartRate', 'heart rate'],
] as const;

/** What was measured, and for how much of the riding time. */
export function coverageText(figures: ClimbFigures, { kind }: Part): string[] {
  if (kind === 'route') return ['A route has no times: it is a hill without a ride.'];
  const there = MEASURED.filter(([name]) => figures[name].coverage > 0);
  const absent = MEASURED.filter(([name]) => figures[name].coverage === 0).map(([, words]) => words);
  const texts = there.map(([name, words]) => `${words} for ${share(figures[name].coverage)} of the riding time`);
  return [
    ...(texts.length > 0 ? [`Measured: ${texts.join(', ')}.`] : []),
    ...(absent.length > 0 ? [`Not in the file: ${absent.join(', ')}.`] : []),
  ];
}

/** Why there is no mean of a column. */
export function meanReason(words: string, { mean, coverage }: MeanValue, hasTimes: boolean): string {
  if (mean !== undefined) return '';
  if (!hasTimes) return 'A route has no times.';
  if (coverage === 0) return `No ${words} on this stretch.`;
  const capital = `${words[0]?.toUpperCase()}${words.slice(1)}`;
  // rounded down: 94.9 % must not read as enough
  return `${capital} for ${formatNumber(Math.floor(100 * coverage))}\u202f% of the time only: no mean is given.`;
}

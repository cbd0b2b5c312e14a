import type { ReducedPair, Verdict } from '../model/day/day.ts';
import { lastingCause } from './causes.ts';
import type { DayOutcome } from './outcome.ts';
import { counted } from './phrases.ts';

/** Two bikes, the slower against the faster at the target power. */
export interface RankedPair {
  /** indices into the bikes of the day */
  faster: number;
  slower: number;
  pair: ReducedPair;
  /** the pair's difference is slower less faster; false: the other way round */
  forward: boolean;
  /** next to each other in the ranking */
  neighbours: boolean;
  verdict: { real: boolean; text: string };
}

/** Bikes of the day by time at the target power, fastest first; only those with a time. */
export function rankingOf({ about }: DayOutcome): number[] {
  const bikes = about?.reduction.bikes ?? [];
  const time = (i: number): number => bikes[i]?.time?.value ?? Number.NaN;
  return bikes
    .map((_, i) => i)
    .filter((i) => Number.isFinite(time(i)))
    .sort((a, b) => time(a) - time(b));
}

/** What a verdict on a difference in time comes to, in words. `pairs` is how many the day has. */
export function verdictText(verdict: Verdict, pairs: number): string {
  if (verdict.realAmongAll)
    return pairs > 1 ? `Real, also as one of all ${pairs} pairs of the day.` : 'Real: more than its doubt explains.';
  if (verdict.realAlone)
    return `Real if these two alone were to be compared; as one of all ${pairs} pairs of the day, not shown.`;
  if (verdict.runsNeeded === null) {
    const cause = lastingCause(verdict.difference);
    const why = cause ? `. The same in every run: ${cause.words}. What helps: ${cause.remedy}` : '';
    return `Not shown, and no number of runs would show it${why}.`;
  }
  const more = `${counted(verdict.runsNeeded, 'more run', 'more runs')} of each`;
  return pairs > 1
    ? `Not shown. If these two alone were compared, a difference of this size would need ${more}.`
    : `Not shown. A difference of this size needs ${more}.`;
}

/** The verdict on the times, and that on the motors where it is another: what tyres take is in both bikes' times, but hides in the watts. */
function bothVerdicts({ time, motorPower }: ReducedPair, pairs: number): string {
  const text = verdictText(time, pairs);
  if (time.realAmongAll === motorPower.realAmongAll) return text;
  const watts = verdictText(motorPower, pairs);
  return `${text} In watts of the motor: ${watts.charAt(0).toLowerCase()}${watts.slice(1)}`;
}

/** Every two bikes with times: neighbours in the ranking first, from the fastest down. */
export function rankedPairs(outcome: DayOutcome): RankedPair[] {
  const ranking = rankingOf(outcome);
  const place = new Map(ranking.map((bike, i) => [bike, i]));
  const pairs = (outcome.about?.reduction.pairs ?? []).filter(
    ({ first, second }) => place.has(first) && place.has(second),
  );
  return pairs
    .map((pair): RankedPair => {
      const [first, second] = [place.get(pair.first) ?? 0, place.get(pair.second) ?? 0];
      const forward = first < second;
      return {
        faster: forward ? pair.first : pair.second,
        slower: forward ? pair.second : pair.first,
        pair,
        forward,
        neighbours: Math.abs(first - second) === 1,
        verdict: { real: pair.time.realAmongAll, text: bothVerdicts(pair, pairs.length) },
      };
    })
    .sort(
      (a, b) =>
        Number(b.neighbours) - Number(a.neighbours) ||
        (place.get(a.faster) ?? 0) - (place.get(b.faster) ?? 0) ||
        (place.get(a.slower) ?? 0) - (place.get(b.slower) ?? 0),
    );
}

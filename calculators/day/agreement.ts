import type { Estimate, Reduction } from '../model/day/day.ts';
import type { SampledDay, SampledRange } from '../model/day/sampleDay.ts';
import { formatNumber, formatRange, type Kind, type System } from '../quantities/index.ts';
import { halfOf } from './causes.ts';
import { gapTexts } from './phrases.ts';

/** A range reckoned twice: in proportion to each error, and by drawing. */
interface Twice {
  what: string;
  kind: Kind;
  linear: Estimate;
  drawn: SampledRange;
}

/** Ends that are farther apart than this share of the half-width are named. Chance alone makes 1 or 2 % with 20,000 trials. */
const APART = 0.1;
const MOST_NAMED = 3;

/** How far the ends of two ranges are apart, as a share of the half-width. */
const apart = ({ linear, drawn }: Twice): number =>
  Math.max(Math.abs(linear.low - drawn.low), Math.abs(linear.high - drawn.high)) / halfOf(linear);

function compared(reduction: Reduction, sampled: SampledDay, names: readonly string[]): Twice[] {
  const twice = (what: string, kind: Kind, linear?: Estimate, drawn?: SampledRange): Twice[] =>
    linear && drawn && halfOf(linear) > 0 && Number.isFinite(halfOf(linear)) ? [{ what, kind, linear, drawn }] : [];
  return [
    ...reduction.bikes.flatMap((bike, i) => {
      const own = sampled.bikes[i];
      return [
        ...twice(`the motor of ${names[i]}`, 'power', bike.motorPower, own?.motorPower),
        ...twice(`the time of ${names[i]}`, 'duration', bike.time, own?.time),
        ...twice(`the time of ${names[i]} on the other hill`, 'duration', bike.targetTime, own?.targetTime),
      ];
    }),
    ...reduction.pairs.flatMap(({ first, second, time, motorPower }) => {
      const own = sampled.pairs.find((pair) => pair.first === first && pair.second === second)?.differences;
      const who = `${names[first]} to ${names[second]}`;
      return [
        ...twice(`the time from ${who}`, 'seconds', time.difference, own?.time),
        ...twice(`the watts from ${who}`, 'power', motorPower.difference, own?.motorPower),
      ];
    }),
  ];
}

/** How far ranges by drawing agree with those of the page, in words. */
export function agreementText(
  reduction: Reduction,
  sampled: SampledDay,
  names: readonly string[],
  system: System,
): string {
  const all = compared(reduction, sampled, names).sort((a, b) => apart(b) - apart(a));
  const [worst] = all;
  if (!worst) return '';
  const days = `${formatNumber(sampled.trials)} days drawn with these doubts`;
  const percent = (share: number): string => `${formatNumber(Math.max(1, Math.ceil(100 * share)))}\u202f%`;
  const far = all.filter((one) => apart(one) > APART);
  if (far.length === 0) return `${days} give the same ranges to within ${percent(apart(worst))} of their half-width.`;
  const range = ({ kind, drawn }: Twice): string =>
    kind === 'seconds' ? gapTexts(0, drawn.low, drawn.high).range : formatRange(drawn.low, drawn.high, kind, system);
  const named = far.slice(0, MOST_NAMED).map((one) => `${one.what} (${range(one)})`);
  const others = far.length - named.length;
  return `${days} differ by more than ${percent(APART)} of the half-width for ${named.join(', ')}${others > 0 ? ` and ${others} more` : ''}. There an error does not count in proportion, and what stands above is too narrow or too wide: publish the drawn range.`;
}

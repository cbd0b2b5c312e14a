import { differenceRange, differenceText } from '../parts/differences.ts';
import { formatDuration, formatQuantity, type Kind, type System } from '../quantities/index.ts';

/* Pieces that sentences about results are made of. They load with the answer; what the page itself is called stands in `words.ts`. */

/** "A", "A and B", "A, B and C". */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** "1 run", "2 runs". */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count}\u202f${count === 1 ? one : several}`;

/** An amount after "±". */
export const plusMinus = (half: number, kind: Kind, system: System): string => `±${formatQuantity(half, kind, system)}`;

/** A time apart and its range, s, written in one manner: by the clock as soon as one of them passes a minute. */
export function gapTexts(value: number, low: number, high: number): { value: string; range: string } {
  const range = differenceRange(low, high);
  return { value: range.includes(':') ? formatDuration(value) : differenceText(value), range };
}

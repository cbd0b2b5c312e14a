import type { DayDoubts, TestDay } from '../model/day.ts';
import { randomSource } from '../model/random.ts';
import { type SampledDay, sampleDay } from '../model/sampleDay.ts';

/* Draws many days beside the page, so that the page stays quick. It is stopped from outside when the day changes. */

export interface Asked {
  day: TestDay;
  doubts: DayDoubts;
  trials: number;
}

export type Told = { trials: number; sampled?: SampledDay };

/** The same day gives the same figures each time. */
const SEED = 1;
/** Trials between two words about how far it is. */
const BATCH = 5000;

addEventListener('message', ({ data: { day, doubts, trials } }: MessageEvent<Asked>) => {
  const tell = (told: Told): void => postMessage(told);
  const sampled = sampleDay(day, doubts, trials, randomSource(SEED), (soFar) => tell({ trials: soFar.trials }), BATCH);
  tell({ trials, sampled });
});

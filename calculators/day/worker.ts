import type { DayDoubts, TestDay } from '../model/day/day.ts';
import { type SampledDay, sampleDay } from '../model/day/sampleDay.ts';
import { randomSource } from '../model/random.ts';

/* Draws many days beside the page, so that the page stays quick. Of several days that wait, only the last is drawn. */

export interface Asked {
  id: number;
  day: TestDay;
  doubts: DayDoubts;
  trials: number;
}

export type Told = { id: number; trials: number; sampled?: SampledDay };

/** The same day gives the same figures each time. */
const SEED = 1;
/** Trials between two words about how far it is. */
const BATCH = 5000;

let last = 0;

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  last = data.id;
  // those that wait behind this one are heard first
  setTimeout(() => {
    if (data.id === last) draw(data);
  });
});

function draw({ id, day, doubts, trials }: Asked): void {
  const tell = (told: Omit<Told, 'id'>): void => postMessage({ id, ...told } satisfies Told);
  const sampled = sampleDay(day, doubts, trials, randomSource(SEED), (soFar) => tell({ trials: soFar.trials }), BATCH);
  tell({ trials, sampled });
}

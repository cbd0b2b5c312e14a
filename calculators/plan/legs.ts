import { type Endurance, workBalance } from '../model/index.ts';

/** One effort and the rest after it. */
export interface Turn {
  /** W */
  power: number;
  /** s */
  time: number;
  rest: number;
}

/** Least work above the critical power, J, that is left at any time of the day: below zero where the legs do not last. */
export const lowestLeft = (turns: readonly Turn[], endurance: Endurance): number =>
  workBalance(
    turns.flatMap(({ power, time, rest }) => [
      { power, time },
      { power: 0, time: rest },
    ]),
    endurance,
  ).lowest;

/** The value between two at which something begins to work, by halving: not at `fails`, but at the value that is given back. */
export function turningPoint(fails: number, works: number, does: (value: number) => boolean): number {
  let [bad, good] = [fails, works];
  for (let i = 0; i < 40; i++) {
    const middle = (bad + good) / 2;
    if (does(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

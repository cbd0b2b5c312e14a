/** Random inputs that are the same in every run. */

/** Numbers from 0 to 1 from a seed: the mulberry32 generator (public domain). */
export function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export interface Random {
  /** evenly from low to high */
  between: (low: number, high: number) => number;
  /** a whole number from low to high, both included */
  whole: (low: number, high: number) => number;
  /** one of them */
  pick: <T>(choices: readonly T[]) => T;
  /** true with this probability */
  chance: (probability: number) => boolean;
}

export function random(seed: number): Random {
  const next = generator(seed);
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    between: (low, high) => low + next() * (high - low),
    whole,
    pick: <T>(choices: readonly T[]): T => choices[whole(0, choices.length - 1)] as T,
    chance: (probability) => next() < probability,
  };
}

/** How far two numbers are apart, relative to the larger one (absolute near zero when `floor` is given). */
export function relative(a: number, b: number, floor = 0): number {
  if (a === b) return 0;
  return Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), floor);
}

import type { DayOutcome } from './outcome.ts';

/** In words how far a simulation agrees with the ranges; empty until there is something to say. */
export function useSimulation(_: DayOutcome): string {
  return '';
}

import type { Parameter } from '../schema.ts';

/** Time of a bike up a measured hill: it says more than any figure for its motor. */
export const TIMED: readonly Parameter[] = [
  {
    name: 'time',
    group: 'bike',
    kind: 'duration',
    min: 5,
    max: 360_000,
    list: 'bike',
    label: 'Measured time',
  },
];

import type { Parameter } from '../schema.ts';

/** How long a motor holds more than it can hold for ever. */
export const HEAT: readonly Parameter[] = [
  {
    name: 'continuous',
    group: 'heat',
    kind: 'power',
    min: 20,
    max: 3000,
    list: 'bike',
    label: 'Motor holds for ever',
    hint: 'Continuous output at the crank. The legal 250 W is a rating, not always what a motor can hold.',
  },
  {
    name: 'warm-up',
    group: 'heat',
    kind: 'duration',
    min: 60,
    max: 7200,
    label: 'Time constant',
    hint: 'After this time a motor has come 63 % of the way to its final temperature.',
  },
];

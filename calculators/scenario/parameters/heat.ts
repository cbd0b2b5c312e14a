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
    name: 'continuous-cadence',
    group: 'heat',
    kind: 'cadence',
    min: 20,
    max: 160,
    label: 'At a cadence of',
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
  {
    name: 'fixed-losses',
    group: 'heat',
    kind: 'ratio',
    min: 0,
    max: 3,
    label: 'Fixed losses',
    hint: 'Losses that do not depend on torque, over the copper losses at continuous output.',
  },
  {
    name: 'warm',
    group: 'heat',
    kind: 'percent',
    min: 0,
    max: 1,
    label: 'Warm at the start',
    hint: 'Share of the permitted rise already there: 0 % from cold.',
  },
];

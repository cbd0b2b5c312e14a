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
    hinted: true,
  },
  {
    name: 'warm-up',
    group: 'heat',
    kind: 'duration',
    min: 60,
    max: 7200,
    label: 'Time constant',
    hinted: true,
  },
];

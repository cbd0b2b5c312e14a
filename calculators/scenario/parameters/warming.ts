import type { Parameter } from '../schema.ts';

/** How a motor warms up, in detail. */
export const WARMING: readonly Parameter[] = [
  {
    name: 'continuous-cadence',
    group: 'heat',
    kind: 'cadence',
    min: 20,
    max: 160,
    label: 'At a cadence of',
  },
  {
    name: 'fixed-losses',
    group: 'heat',
    kind: 'ratio',
    min: 0,
    max: 3,
    label: 'Fixed losses',
    hinted: true,
  },
  {
    name: 'warm',
    group: 'heat',
    kind: 'percent',
    min: 0,
    max: 1,
    label: 'Warm at the start',
    hinted: true,
  },
];

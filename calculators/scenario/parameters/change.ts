import type { Parameter } from '../schema.ts';

/** How much of each thing to change. */
export const CHANGE: readonly Parameter[] = [
  {
    name: 'change-mass',
    group: 'change',
    kind: 'mass',
    min: -100,
    max: 100,
    label: 'Mass',
  },
  {
    name: 'change-rolling',
    group: 'change',
    kind: 'percent',
    min: -0.9,
    max: 3,
    label: 'Rolling resistance',
    hinted: true,
  },
  {
    name: 'change-power',
    group: 'change',
    kind: 'power',
    min: -1000,
    max: 1000,
    label: 'Your power',
  },
  {
    name: 'change-motor',
    group: 'change',
    kind: 'power',
    min: -2000,
    max: 2000,
    label: 'Motor power',
  },
  {
    name: 'change-wind',
    group: 'change',
    kind: 'wind',
    min: -15,
    max: 15,
    label: 'Head wind',
  },
  {
    name: 'change-altitude',
    group: 'change',
    kind: 'height',
    min: -5000,
    max: 5000,
    label: 'Altitude',
  },
];

import { millimetres } from '../amounts.ts';
import type { Parameter } from '../schema.ts';

/** From the pedal to the ground. */
export const GEARS: readonly Parameter[] = [
  {
    name: 'ring',
    group: 'gears',
    kind: 'count',
    min: 8,
    max: 70,
    label: 'Teeth at the crank',
  },
  {
    name: 'sprocket',
    group: 'gears',
    kind: 'count',
    min: 8,
    max: 80,
    label: 'Teeth of the largest sprocket',
  },
  {
    name: 'wheel',
    group: 'gears',
    kind: 'length',
    min: millimetres(100),
    max: millimetres(500),
    label: 'Wheel radius',
    hinted: true,
  },
  {
    name: 'crank',
    group: 'gears',
    kind: 'length',
    min: millimetres(80),
    max: millimetres(220),
    label: 'Crank length',
  },
  {
    name: 'push',
    group: 'gears',
    kind: 'percent',
    min: 0,
    max: 3,
    label: 'Push on the pedal',
    hinted: true,
  },
];

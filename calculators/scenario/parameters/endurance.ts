import { kilojoules } from '../amounts.ts';
import type { Parameter } from '../schema.ts';

/** How long a rider holds a power: critical power and the work above it. */
export const ENDURANCE: readonly Parameter[] = [
  {
    name: 'endurance',
    group: 'rider',
    kind: 'power',
    min: 30,
    max: 1500,
    label: 'Power you hold for long',
    hinted: true,
  },
  {
    name: 'endurance-work',
    group: 'rider',
    kind: 'work',
    min: kilojoules(1),
    max: kilojoules(80),
    label: 'Work above it',
  },
];

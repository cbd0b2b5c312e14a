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
    hint: 'Critical power: about what you hold for 30 to 60 minutes. Empty: not considered.',
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

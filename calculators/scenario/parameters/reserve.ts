import type { Parameter } from '../schema.ts';

/** What a rider keeps of a battery. */
export const RESERVE: readonly Parameter[] = [
  {
    name: 'reserve',
    group: 'battery',
    kind: 'percent',
    min: 0,
    max: 0.9,
    label: 'Kept in reserve',
  },
];

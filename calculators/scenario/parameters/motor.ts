import type { Parameter } from '../schema.ts';

/** What bounds a motor besides its peak: torque at a cadence, and how much it adds to the rider's power. */
export const MOTOR: readonly Parameter[] = [
  {
    name: 'cadence',
    group: 'rider',
    kind: 'cadence',
    min: 20,
    max: 160,
    label: 'Cadence',
    hinted: true,
  },
  {
    name: 'torque',
    group: 'bike',
    kind: 'torque',
    min: 5,
    max: 250,
    list: 'bike',
    label: 'Motor torque',
  },
  {
    name: 'support',
    group: 'bike',
    kind: 'percent',
    min: 0,
    max: 10,
    list: 'bike',
    label: 'Support',
    hinted: true,
  },
];

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
    hint: 'Turns of the crank per minute. Professionals turned 71 on mountain passes.',
    source: 'lucia-2001',
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
    hint: 'Motor power as a share of yours: 300 % gives three watts for each of your own.',
  },
];

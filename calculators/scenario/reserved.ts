import type { Parameter } from './schema.ts';

/** Names that the vocabulary keeps for calculators to come: documented, handed on by every link, read by no calculator yet. */
export const reserved: readonly Parameter[] = [
  {
    name: 'cadence',
    group: 'rider',
    kind: 'cadence',
    min: 20,
    max: 160,
    label: 'Cadence',
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
  },
  {
    name: 'companion-rider',
    group: 'companion',
    kind: 'mass',
    min: 25,
    max: 250,
    label: 'Body and kit',
  },
  {
    name: 'companion-power',
    group: 'companion',
    kind: 'power',
    min: 0,
    max: 1500,
    label: 'Power held',
  },
  {
    name: 'companion-bike',
    group: 'companion',
    kind: 'mass',
    min: 5,
    max: 80,
    label: 'Bike mass',
  },
  {
    name: 'companion-motor',
    group: 'companion',
    kind: 'power',
    min: 0,
    max: 3000,
    allowNone: true,
    label: 'Motor gives',
  },
];

import { kmh } from '../amounts.ts';
import type { Parameter } from '../schema.ts';

/** The one to ride with. */
export const COMPANION: readonly Parameter[] = [
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
    hinted: true,
  },
  {
    name: 'companion-limit',
    group: 'companion',
    kind: 'speed',
    min: kmh(5),
    max: kmh(100),
    allowNone: true,
    label: 'Assist limit',
  },
];

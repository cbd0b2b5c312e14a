import { kmh } from '../amounts.ts';
import type { Parameter } from '../schema.ts';

/** Where no page asks for it, m/s: our assumption. */
export const TOP_SPEED = kmh(40);

/** A hill whose grade varies, piece by piece. */
export const PROFILE: readonly Parameter[] = [
  {
    name: 'profile',
    group: 'hill',
    kind: 'text',
    min: 0,
    max: 0,
    form: 'profile',
    label: 'Hill in pieces',
    hinted: true,
  },
];

/** The other hill, likewise. */
export const TARGET_PROFILE: readonly Parameter[] = [
  {
    name: 'target-profile',
    group: 'target',
    kind: 'text',
    min: 0,
    max: 0,
    form: 'profile',
    label: 'Hill in pieces',
    hinted: true,
  },
];

/** How fast a rider lets the bike go where the road falls. */
export const DOWNHILL: readonly Parameter[] = [
  {
    name: 'top-speed',
    group: 'rider',
    kind: 'speed',
    min: kmh(10),
    max: kmh(100),
    label: 'Fastest downhill',
    hinted: true,
  },
];

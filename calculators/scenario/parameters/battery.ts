import { ampereHours, wattHours } from '../amounts.ts';
import type { Parameter } from '../schema.ts';

/** What age, cold and lights leave of what a battery's label says. */
export const USABLE: readonly Parameter[] = [
  {
    name: 'health',
    group: 'battery',
    kind: 'percent',
    min: 0.3,
    max: 1,
    label: 'Left by age',
    hinted: true,
  },
  {
    name: 'cold',
    group: 'battery',
    kind: 'percent',
    min: 0.2,
    max: 1,
    label: 'Left by the cold',
    hinted: true,
  },
  {
    name: 'idle',
    group: 'battery',
    kind: 'power',
    min: 0,
    max: 100,
    label: 'Display and lights',
  },
];

/** Second battery, laps, and what the gauge showed. */
export const GAUGE: readonly Parameter[] = [
  {
    name: 'add-on',
    group: 'battery',
    kind: 'energy',
    min: 0,
    max: wattHours(5500),
    list: 'bike',
    label: 'Add-on battery',
  },
  {
    name: 'volts',
    group: 'battery',
    kind: 'voltage',
    min: 5,
    max: 150,
    label: 'Or volts',
    hinted: true,
  },
  {
    name: 'amp-hours',
    group: 'battery',
    kind: 'charge',
    min: ampereHours(0.5),
    max: ampereHours(200),
    label: 'and amp-hours',
  },
  {
    name: 'laps',
    group: 'hill',
    kind: 'count',
    min: 1,
    max: 100,
    label: 'Times up this hill',
  },
  {
    name: 'start',
    group: 'battery',
    kind: 'percent',
    min: 0,
    max: 1,
    label: 'Gauge before',
  },
  {
    name: 'end',
    group: 'battery',
    kind: 'percent',
    min: 0,
    max: 1,
    label: 'Gauge after',
  },
  {
    name: 'step',
    group: 'battery',
    kind: 'percent',
    min: 0.001,
    max: 0.5,
    label: 'Gauge moves in steps of',
    hinted: true,
  },
];

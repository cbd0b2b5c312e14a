import { moistAirDensity, standardAtmosphere } from '../../calculators/model/index.ts';
import type { Check } from './check.ts';

/** Conventional millimetre of mercury, Pa (NIST SP 811; value from memory). */
const MMHG = 133.322387415;

/* ISO 2533:1975 by geometric altitude. The table of 1976 as reproduced in the tests of the open-source library fluids. */
const printed: [number, number, number?, number?][] = [
  // m, kg/m³, Pa, K: as printed, with as many digits
  [-2000, 1.4782],
  [0, 1.225, 101_320, 288.15],
  [2000, 1.0066, 79_501, 275.15],
  [4000, 0.81935, 61_660, 262.17],
];

/* The same from the defining constants, worked out apart from this code (in Python). */
const recomputed: [number, number, number, number][] = [
  [0, 1.225, 101_325, 288.15],
  [500, 1.167273, 95_461.3, 284.9],
  [1000, 1.11166, 89_876.3, 281.651],
  [1500, 1.058104, 84_559.7, 278.402],
  [2000, 1.006554, 79_501.4, 275.154],
  [2500, 0.956954, 74_691.7, 271.906],
  [3000, 0.909254, 70_121.1, 268.659],
];

const at = (altitude: number): string => `${altitude.toLocaleString('en').replace('-', '−')} m`;

const units = { density: 'kg/m³', pressure: 'Pa', temperature: 'K' } as const;

type Quantity = keyof typeof units;

function isaRow(
  altitude: number,
  quantity: Quantity,
  expected: number | undefined,
  tolerance: number,
  from: Pick<Check, 'source' | 'status'>,
): Check[] {
  if (expected === undefined) return [];
  const computed = (): number => standardAtmosphere(altitude)[quantity];
  const unit = units[quantity];
  return [
    { quantity: `Standard atmosphere, ${quantity}`, given: at(altitude), expected, computed, unit, tolerance, ...from },
  ];
}

const TABLE = { source: 'standard atmosphere 1976, table', status: 'secondary' } as const;
const CONSTANTS = { source: 'ISO 2533 constants, worked out apart', status: 'recomputed' } as const;

const standard: Check[] = [
  ...printed.flatMap(([altitude, density, pressure, temperature]) => [
    ...isaRow(altitude, 'density', density, 5e-5, TABLE),
    ...isaRow(altitude, 'pressure', pressure, 5, TABLE),
    ...isaRow(altitude, 'temperature', temperature, 0.01, TABLE),
  ]),
  ...recomputed.flatMap(([altitude, density, pressure, temperature]) => [
    ...isaRow(altitude, 'density', density, 5e-7, CONSTANTS),
    ...isaRow(altitude, 'pressure', pressure, 0.05, CONSTANTS),
    ...isaRow(altitude, 'temperature', temperature, 5e-4, CONSTANTS),
  ]),
];

/* CIPM-2007 (Picard et al. 2008). The published rows are credited to a textbook of mass metrology in the tests of an open-source package. */
const TEXTBOOK = 'CIPM-2007 example in a textbook of mass metrology';
const OURS = 'CIPM-2007 worked out apart';
const rows: [string, number, number, number, number, number, string, Check['status']][] = [
  // °C, Pa, humidity, kg/m³, tolerance (relative)
  ['10 °C, 730 mmHg, 40 %', 10, 730 * MMHG, 0.4, 1.19569, 5e-6, TEXTBOOK, 'secondary'],
  [
    '40 °C, 760 mmHg, 40 %, outside the recommended range',
    40,
    760 * MMHG,
    0.4,
    1.11497,
    1e-4,
    `${TEXTBOOK}, outside its range`,
    'secondary',
  ],
  ['10 °C, 730 mmHg, 40 %', 10, 730 * MMHG, 0.4, 1.19569495, 6e-9, OURS, 'recomputed'],
  ['40 °C, 760 mmHg, 40 %', 40, 760 * MMHG, 0.4, 1.11503525, 6e-9, OURS, 'recomputed'],
  ['22.3 °C, 748.1 mmHg, 37 %', 22.3, 748.1 * MMHG, 0.37, 1.17199824, 6e-9, OURS, 'recomputed'],
  ['23.4 °C, 612.3 mmHg, 23 %', 23.4, 612.3 * MMHG, 0.23, 0.95630459, 6e-9, OURS, 'recomputed'],
  ['20 °C, 101,325 Pa, 50 %', 20, 101_325, 0.5, 1.1993139, 6e-9, OURS, 'recomputed'],
  ['15 °C, 101,325 Pa, dry', 15, 101_325, 0, 1.22552134, 6e-9, OURS, 'recomputed'],
  ['30 °C, 84,556 Pa, 30 %', 30, 84_556, 0.3, 0.96638828, 6e-9, OURS, 'recomputed'],
  // Older formulae agree less well, as they should.
  ['22.3 °C, 748.1 mmHg, 37 %', 22.3, 748.1 * MMHG, 0.37, 1.17194, 1e-4, 'Jones 1978, an older formula', 'secondary'],
  ['23.4 °C, 612.3 mmHg, 23 %', 23.4, 612.3 * MMHG, 0.23, 0.95632, 1e-4, 'Jones 1978, an older formula', 'secondary'],
];

const moist: Check[] = rows.map(
  ([given, celsius, pressure, humidity, expected, tolerance, source, status]): Check => ({
    quantity: 'Density of moist air',
    given,
    expected,
    computed: () => moistAirDensity(pressure, celsius, humidity),
    unit: 'kg/m³',
    tolerance,
    relative: true,
    source,
    status,
  }),
);

/** OIML R 111-1:2004, E.3-1: a simpler formula for the same, good to 2e-4 from 900 to 1,100 hPa, 10 to 30 °C, below 80 % (value from memory). */
export function oimlDensity(pressure: number, celsius: number, humidity: number): number {
  return (0.34848 * (pressure / 100) - 0.009 * 100 * humidity * Math.exp(0.061 * celsius)) / (273.15 + celsius);
}

const simpler: Check[] = [
  ...[12, 15, 20, 25, 28].flatMap((celsius) =>
    [900, 960, 1013.25, 1050].map((hectopascal): Check => {
      const humidity = ((celsius * 7 + hectopascal) % 70) / 100;
      return {
        quantity: 'Density of moist air',
        given: `${celsius} °C, ${hectopascal} hPa, ${Math.round(humidity * 100)} %`,
        expected: oimlDensity(hectopascal * 100, celsius, humidity),
        computed: () => moistAirDensity(hectopascal * 100, celsius, humidity),
        unit: 'kg/m³',
        tolerance: 2e-4,
        relative: true,
        source: 'OIML R 111-1:2004, approximation',
        status: 'memory',
      };
    }),
  ),
];

export const air: Check[] = [...standard, ...moist, ...simpler];

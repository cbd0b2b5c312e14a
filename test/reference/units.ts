import { findUnit, type Kind, toSi } from '../../calculators/quantities/index.ts';
import type { Check } from './check.ts';

/* NIST Special Publication 811 (2008), appendix B.8, and NIST Handbook 44, appendix C; values from memory, exact by definition. */
const rows: [number, string, Kind, number, string][] = [
  [1, 'in', 'distance', 0.0254, 'm'],
  [1, 'ft', 'distance', 0.3048, 'm'],
  [1, 'yd', 'distance', 0.9144, 'm'],
  [1, 'mi', 'distance', 1609.344, 'm'],
  [1, 'lb', 'mass', 0.45359237, 'kg'],
  [170, 'lb', 'mass', 77.1107029, 'kg'],
  [1, 'lb-ft', 'torque', 0.3048 * 4.4482216152605, 'N·m'],
  [1, 'hp', 'power', 550 * 0.3048 * 4.4482216152605, 'W'],
  [1, 'mph', 'speed', 0.44704, 'm/s'],
  [3.6, 'km/h', 'speed', 1, 'm/s'],
  [20, 'mph', 'speed', 32.18688 / 3.6, 'm/s'],
  [28, 'mph', 'speed', 45.061632 / 3.6, 'm/s'],
  [15.5, 'mph', 'speed', 24.944832 / 3.6, 'm/s'],
  [1, 'Wh', 'energy', 3600, 'J'],
  [-40, 'F', 'temperature', -40, '°C'],
  [212, 'F', 'temperature', 100, '°C'],
];

export const units: Check[] = rows.map(
  ([value, name, kind, expected, unit]): Check => ({
    quantity: 'Conversion of units',
    given: `${value} ${name} in ${unit}`,
    expected,
    computed: () => {
      const found = findUnit(name, kind);
      if (!found) throw new Error(`“${name}” is no unit of ${kind}.`);
      return toSi(value, found);
    },
    unit,
    tolerance: 1e-15,
    relative: true,
    source: 'NIST SP 811 and Handbook 44',
    status: 'memory',
  }),
);

import { describe, expect, test } from 'vitest';
import { findUnit, fromSi, type Kind, kinds, shownUnit, spokenUnit, toSi } from '../../calculators/quantities/index.ts';
import { numericKinds } from './help.ts';

const inSi = (value: number, name: string, kind: Kind): number => {
  const unit = findUnit(name, kind);
  if (!unit) throw new Error(`${name} is not known`);
  return toSi(value, unit);
};

/*
 * Source of this table: NIST Special Publication 811 (2008), appendix B.8, and NIST Handbook 44, appendix C.
 * Values from memory; derived digits recomputed from the exact definitions
 * (yard 0.9144 m, pound 0.45359237 kg, standard gravity 9.80665 m/s²; 1 Ah = 3600 A·s; 1 Wh/mi = 3600 J / 1609.344 m).
 */
const exact: [number, string, Kind, number][] = [
  [1, 'in', 'distance', 0.0254],
  [1, 'ft', 'height', 0.3048],
  [1, 'yd', 'distance', 0.9144],
  [1, 'mi', 'distance', 1609.344],
  [1, 'km', 'distance', 1000],
  [5280, 'ft', 'distance', 1609.344],
  [1760, 'yd', 'distance', 1609.344],
  [1, 'lb', 'mass', 0.45359237],
  [170, 'lb', 'mass', 77.1107029],
  [1, 'g', 'mass', 0.001],
  [1, 'kW', 'power', 1000],
  [1, 'hp', 'power', 745.6998715822702],
  [1, 'lb-ft', 'torque', 1.3558179483314003],
  [1, 'Wh', 'energy', 3600],
  [1, 'kWh', 'energy', 3.6e6],
  [1, 'MJ', 'energy', 1e6],
  [1, 'kJ', 'energy', 1000],
  [20, 'kJ', 'work', 20_000],
  [1, 'J', 'work', 1],
  [1, 'Wh', 'work', 3600],
  [1, 'kWh', 'work', 3.6e6],
  [350, 'mm', 'length', 0.35],
  [17.5, 'cm', 'length', 0.175],
  [1, 'm', 'length', 1],
  [1, 'in', 'length', 0.0254],
  [1, 'ft', 'length', 0.3048],
  [34, '', 'count', 34],
  [48, 'V', 'voltage', 48],
  [1, 'Ah', 'charge', 3600],
  [1000, 'mAh', 'charge', 3600],
  [5, 'Wh/km', 'energy-per-distance', 18],
  // 3600 / 1609.344 = 2.23693629205440229…, which is 3125/1397; the nearest double prints so
  [1, 'Wh/mi', 'energy-per-distance', 2.2369362920544025],
  [1397, 'Wh/mi', 'energy-per-distance', 3125],
  [1, 'J/m', 'energy-per-distance', 1],
  [1, 'N', 'force', 1],
  [1, 'lbf', 'force', 4.4482216152605],
  [1, 'mph', 'wind', 0.44704],
  [36, 'km/h', 'speed', 10],
  [1, 'ft/s', 'speed', 0.3048],
  [3600, 'm/h', 'climb-rate', 1],
  [3600, 'ft/h', 'climb-rate', 0.3048],
  [32, 'F', 'temperature', 0],
  [212, 'F', 'temperature', 100],
  [-40, 'F', 'temperature', -40],
  [1, 'ft2', 'area', 0.09290304],
  [1, 'cm2', 'area', 0.0001],
  [35, '%', 'percent', 0.35],
  [1, 'min', 'duration', 60],
  [1, 'h', 'duration', 3600],
];

describe('exact factors', () => {
  test.each(exact)('%d %s (%s) is %d in SI', (value, name, kind, expected) => {
    expect(inSi(value, name, kind)).toBe(expected);
  });

  test('lb-ft and hp agree with their definitions to the last digits', () => {
    // 1 lbf = 0.45359237 kg × 9.80665 m/s²
    const footPound = 0.3048 * 0.45359237 * 9.80665;
    expect(Math.abs(inSi(1, 'lb-ft', 'torque') / footPound - 1)).toBeLessThan(4e-16);
    expect(inSi(1, 'lbf', 'force')).toBeCloseTo(footPound / 0.3048, 14);
    expect(Math.abs(inSi(1, 'hp', 'power') / (550 * footPound) - 1)).toBeLessThan(4e-16);
  });

  test('speed limits of the law in km/h: 20, 28 and 15.5 mph', () => {
    const kmh = findUnit('km/h', 'speed');
    if (!kmh) throw new Error('km/h');
    expect(fromSi(inSi(20, 'mph', 'speed'), kmh)).toBeCloseTo(32.18688, 12);
    expect(fromSi(inSi(28, 'mph', 'speed'), kmh)).toBeCloseTo(45.061632, 12);
    expect(fromSi(inSi(15.5, 'mph', 'speed'), kmh)).toBeCloseTo(24.944832, 12);
  });

  test('a knot is 1852 m an hour', () => {
    expect(inSi(3600, 'kn', 'wind')).toBeCloseTo(1852, 10);
  });

  test('the foot is the international one, not the US survey foot', () => {
    // A survey mile is 1609.347219 m (1200/3937 m to the foot).
    expect(inSi(5280, 'ft', 'distance')).not.toBeCloseTo((5280 * 1200) / 3937, 3);
  });

  test('common feet and pounds come out without a stray last digit', () => {
    expect(inSi(550, 'ft', 'height')).toBe(167.64);
    expect(inSi(2000, 'ft', 'height')).toBe(609.6);
    expect(inSi(37, 'lb', 'mass')).toBe(16.78291769);
  });
});

describe('names', () => {
  test.each<[string, Kind, string]>([
    ['N·m', 'torque', 'Nm'],
    ['N m', 'torque', 'Nm'],
    ['N⋅m', 'torque', 'Nm'],
    ['nm', 'torque', 'Nm'],
    ['newton meter', 'torque', 'Nm'],
    ['lbf·ft', 'torque', 'lb-ft'],
    ['lb ft', 'torque', 'lb-ft'],
    ['ft-lb', 'torque', 'lb-ft'],
    ['ft-lbs', 'torque', 'lb-ft'],
    ['LBS.', 'mass', 'lb'],
    ['Pounds', 'mass', 'lb'],
    ['KW', 'power', 'kW'],
    ['kw', 'power', 'kW'],
    ['w', 'power', 'W'],
    ['WH', 'energy', 'Wh'],
    ['kwh', 'energy', 'kWh'],
    ['Kilometers', 'distance', 'km'],
    ['foot', 'height', 'ft'],
    ["'", 'height', 'ft'],
    ['mile', 'distance', 'mi'],
    ['kph', 'speed', 'km/h'],
    ['km / h', 'speed', 'km/h'],
    ['°F', 'temperature', 'F'],
    ['m^2', 'area', 'm2'],
    ['sq ft', 'area', 'ft2'],
    ['W/KG', 'specific-power', 'W/kg'],
    ['degrees', 'grade', 'deg'],
    ['RPM', 'cadence', 'rpm'],
    ['KJ', 'work', 'kJ'],
    ['kilojoules', 'work', 'kJ'],
    ['wh', 'work', 'Wh'],
    ['MM', 'length', 'mm'],
    ['millimeters', 'length', 'mm'],
    ['cm', 'length', 'cm'],
    ['inch', 'length', 'in'],
    ['"', 'length', 'in'],
    ["'", 'length', 'ft'],
    ['Volts', 'voltage', 'V'],
    ['v', 'voltage', 'V'],
    ['ah', 'charge', 'Ah'],
    ['A·h', 'charge', 'Ah'],
    ['amp-hours', 'charge', 'Ah'],
    ['wh / km', 'energy-per-distance', 'Wh/km'],
    ['watt hours per mile', 'energy-per-distance', 'Wh/mi'],
    ['newton', 'force', 'N'],
    ['pounds-force', 'force', 'lbf'],
  ])('%s is a unit of %s: %s', (name, kind, symbol) => {
    expect(findUnit(name, kind)?.symbol).toBe(symbol);
  });

  test('a unit of one kind is none of another', () => {
    expect(findUnit('kg', 'power')).toBeUndefined();
    expect(findUnit('W', 'energy')).toBeUndefined();
    expect(findUnit('Ah', 'energy')).toBeUndefined();
    expect(findUnit('km', 'length')).toBeUndefined();
    expect(findUnit('lb', 'force')).toBeUndefined();
    // Power over distance is no energy over distance.
    expect(findUnit('W/km', 'energy-per-distance')).toBeUndefined();
    expect(findUnit('', 'power')).toBeUndefined();
  });

  test.each(numericKinds)('%s: no two of its units share a spelling, and the three that matter exist', (kind) => {
    const { units, plain, metric, us } = kinds[kind];
    for (const unit of units) {
      for (const name of unit.names.split(',')) expect(findUnit(name, kind)).toBe(unit);
    }
    for (const symbol of [plain, metric, us]) expect(findUnit(symbol, kind)?.symbol).toBe(symbol);
  });

  test.each(numericKinds)('%s: to SI and back', (kind) => {
    for (const unit of kinds[kind].units) {
      expect(fromSi(toSi(12.5, unit), unit)).toBeCloseTo(12.5, 10);
    }
  });

  test('units are spoken in full', () => {
    expect(spokenUnit('speed', 'metric')).toBe('kilometres per hour');
    expect(spokenUnit('torque', 'us')).toBe('pound feet');
    expect(spokenUnit('energy-per-distance', 'us')).toBe('watt hours per mile');
    expect(spokenUnit('length', 'metric')).toBe('millimetres');
    expect(spokenUnit('force', 'us')).toBe('pounds force');
    expect(spokenUnit('ratio', 'us')).toBe('');
    expect(spokenUnit('count', 'us')).toBe('');
    expect(shownUnit('text', 'us').text).toBe('');
  });
});

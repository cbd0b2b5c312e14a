import { describe, expect, test } from 'vitest';
import {
  fieldText,
  formatDuration,
  formatNumber,
  formatQuantity,
  formatRange,
  type Kind,
  kinds,
  type System,
} from '../../calculators/quantities/index.ts';
import { field, numericKinds, randomSource, si } from './help.ts';

/** A plain space for the narrow no-break one, so that the expectations can be read. */
const plain = (text: string): string => text.replaceAll('\u202f', ' ');

test.each<[number, Kind, System, string]>([
  [442, 'duration', 'us', '7:22'],
  [3661, 'duration', 'metric', '1:01:01'],
  [1609.344, 'distance', 'metric', '1.61 km'],
  [1609.344, 'distance', 'us', '1 mi'],
  [230.4, 'distance', 'metric', '230 m'],
  [999.4, 'distance', 'metric', '999 m'],
  [999.6, 'distance', 'metric', '1 km'],
  [120, 'distance', 'us', '394 ft'],
  [9996, 'distance', 'metric', '10 km'],
  [12_345, 'distance', 'metric', '12.3 km'],
  [167.64, 'height', 'us', '550 ft'],
  [609.6, 'height', 'metric', '610 m'],
  [1430, 'height', 'metric', '1 430 m'],
  [16.78291769, 'mass', 'metric', '16.8 kg'],
  [16.78291769, 'mass', 'us', '37 lb'],
  [82, 'mass', 'metric', '82 kg'],
  [299.6, 'power', 'us', '300 W'],
  [35, 'torque', 'metric', '35 N·m'],
  [35, 'torque', 'us', '26 lb-ft'],
  [80, 'cadence', 'metric', '80 rpm'],
  [360 * 3600, 'energy', 'us', '360 Wh'],
  [3.25 * 3600, 'energy', 'metric', '3.3 Wh'],
  [20_000, 'work', 'metric', '20.0 kJ'],
  [24_740, 'work', 'us', '24.7 kJ'],
  [1_430_400, 'work', 'us', '1 430 kJ'],
  // 165 / 25.4 = 6.496, 350 / 25.4 = 13.780, 170 / 25.4 = 6.693
  [0.165, 'length', 'metric', '165 mm'],
  [0.165, 'length', 'us', '6.5 in'],
  [0.35, 'length', 'metric', '350 mm'],
  [0.35, 'length', 'us', '13.8 in'],
  [0.17, 'length', 'us', '6.7 in'],
  [0.1524, 'length', 'us', '6.0 in'],
  [34, 'count', 'metric', '34'],
  [3, 'count', 'us', '3'],
  [12_000, 'count', 'us', '12 000'],
  [5.44, 'count', 'metric', '5.4'],
  [2.5, 'count', 'us', '2.5'],
  [4.98, 'count', 'metric', '5'],
  [36, 'voltage', 'us', '36 V'],
  [51.84, 'voltage', 'metric', '51.8 V'],
  [15 * 3600, 'charge', 'metric', '15 Ah'],
  [17.5 * 3600, 'charge', 'us', '17.5 Ah'],
  // 625 Wh × 95 % over 159 km: 593.75 / 159 = 3.734 Wh/km, × 1.609344 = 6.010 Wh/mi
  [(593.75 * 3600) / 159_000, 'energy-per-distance', 'metric', '3.73 Wh/km'],
  [(593.75 * 3600) / 159_000, 'energy-per-distance', 'us', '6.01 Wh/mi'],
  [9.996 * 3.6, 'energy-per-distance', 'metric', '10.0 Wh/km'],
  [27.24 * 3.6, 'energy-per-distance', 'metric', '27.2 Wh/km'],
  [120 * 3.6, 'energy-per-distance', 'metric', '120 Wh/km'],
  [143.4, 'force', 'metric', '143 N'],
  // 350 / 4.44822 = 78.68
  [350, 'force', 'us', '79 lbf'],
  [3.6408, 'speed', 'metric', '13.1 km/h'],
  [25 / 3.6, 'speed', 'metric', '25.0 km/h'],
  [8.9408, 'speed', 'us', '20.0 mph'],
  [-2, 'wind', 'metric', '−2.0 m/s'],
  [0.4, 'climb-rate', 'metric', '1 440 m/h'],
  [0.4, 'climb-rate', 'us', '4 724 ft/h'],
  [15, 'temperature', 'us', '59 °F'],
  [0.45, 'area', 'us', '0.45 m²'],
  [0.028, 'ratio', 'metric', '0.028'],
  [0.02834, 'ratio', 'metric', '0.0283'],
  [0.96, 'percent', 'metric', '96 %'],
  [0.0342, 'percent', 'metric', '3.4 %'],
  [0.104, 'grade', 'metric', '10.4 %'],
  [0.06, 'grade', 'us', '6.0 %'],
  [2.4456, 'specific-power', 'metric', '2.45 W/kg'],
])('%d (%s, %s) reads %s', (value, kind, system, expected) => {
  expect(plain(formatQuantity(value, kind, system))).toBe(expected);
});

test('between number and unit stands a narrow no-break space', () => {
  expect(formatQuantity(1430, 'height', 'metric')).toBe('1\u202f430\u202fm');
});

describe('no value', () => {
  test.each([...numericKinds])('%s', (kind) => {
    for (const value of [Number.NaN, Infinity, -Infinity, null, undefined]) {
      expect(formatQuantity(value, kind, 'metric')).toBe('–');
    }
    expect(formatRange(Number.NaN, 1, kind, 'us')).toBe('–');
    expect(formatRange(1, Infinity, kind, 'us')).toBe('–');
    expect(fieldText(Number.NaN, kind, 'us')).toBe('');
    expect(fieldText(null, kind, 'us')).toBe('none');
  });
  test('numbers and times', () => {
    expect(formatNumber(Number.NaN)).toBe('–');
    expect(formatDuration(Infinity)).toBe('–');
  });
});

describe('times carry', () => {
  test.each<[number, number, string]>([
    [59.4, 0, '0:59'],
    [59.6, 0, '1:00'],
    [3599.5, 0, '1:00:00'],
    [59.96, 1, '1:00.0'],
    [3599.96, 1, '1:00:00.0'],
    [442.25, 2, '7:22.25'],
    [0, 0, '0:00'],
    [-0.4, 0, '0:00'],
    [-12, 0, '−0:12'],
    [4800, 0, '1:20:00'],
    [86_399.6, 0, '24:00:00'],
    [359_999, 0, '99:59:59'],
    [360_000, 0, '100:00:00'],
  ])('%d s with %d decimals', (seconds, digits, expected) => {
    expect(formatDuration(seconds, digits)).toBe(expected);
  });
});

describe('signs', () => {
  test('of a gain', () => {
    expect(formatQuantity(10, 'power', 'us', { sign: true })).toBe('+10\u202fW');
    expect(formatQuantity(-10, 'power', 'us', { sign: true })).toBe('−10\u202fW');
    expect(formatQuantity(0, 'power', 'us', { sign: true })).toBe('0\u202fW');
    expect(formatDuration(309, 0, true)).toBe('+5:09');
  });
  test('never a minus before zero', () => {
    expect(formatNumber(-0.4)).toBe('0');
    expect(formatNumber(-0)).toBe('0');
    expect(formatQuantity(-0.00001, 'grade', 'us')).toBe('0.0\u202f%');
  });
});

test('digits that are asked for stay', () => {
  expect(plain(formatQuantity(82, 'mass', 'metric', { digits: 1 }))).toBe('82.0 kg');
  expect(plain(formatQuantity(1609.344, 'distance', 'metric', { digits: 3 }))).toBe('1.609 km');
});

test('thousands', () => {
  expect(plain(formatNumber(1234567.891, 2))).toBe('1 234 567.89');
  expect(plain(formatNumber(-1000))).toBe('−1 000');
  expect(formatNumber(999)).toBe('999');
  expect(plain(formatNumber(1234.5678, 4))).toBe('1 234.5678');
});

test.each<[number, number, Kind, System, string]>([
  [566, 616, 'duration', 'metric', '9:26 to 10:16'],
  [295.2, 310.4, 'power', 'us', '295 to 310 W'],
  [0.015, 0.035, 'ratio', 'us', '0.015 to 0.035'],
  [80, 86, 'mass', 'metric', '80 to 86 kg'],
  [80, 86.5, 'mass', 'metric', '80.0 to 86.5 kg'],
  [299.8, 300.2, 'power', 'us', '300 W'],
  [-5, 30, 'power', 'us', '−5 to 30 W'],
  [-12, 30, 'duration', 'us', '−0:12 to 0:30'],
  [950, 1050, 'distance', 'metric', '0.95 to 1.05 km'],
  [3500, 3700, 'duration', 'metric', '58:20 to 1:01:40'],
  [0.92, 0.98, 'percent', 'metric', '92 to 98 %'],
  [0, 360_000, 'duration', 'metric', '0:00 to 100:00:00'],
  [19_840, 24_740, 'work', 'us', '19.8 to 24.7 kJ'],
  [48, 51.84, 'voltage', 'us', '48.0 to 51.8 V'],
  [13.4, 40, 'energy-per-distance', 'metric', '3.7 to 11.1 Wh/km'],
])('from %d to %d (%s, %s)', (low, high, kind, system, expected) => {
  expect(plain(formatRange(low, high, kind, system))).toBe(expected);
});

describe('the text of a field', () => {
  test.each<[number, Kind, System, string]>([
    [1609.344, 'distance', 'us', '1'],
    [1609.344, 'distance', 'metric', '1.60934'],
    [167.64, 'height', 'us', '550'],
    [167.64, 'height', 'metric', '167.64'],
    [-3, 'wind', 'metric', '-3'],
    [0.1, 'grade', 'metric', '10'],
    [0.96, 'percent', 'us', '96'],
    [0.165, 'length', 'metric', '165'],
    [0.165, 'length', 'us', '6.49606'],
    [0.3556, 'length', 'us', '14'],
    [34, 'count', 'us', '34'],
    [20_000, 'work', 'us', '20'],
    [54_000, 'charge', 'us', '15'],
    [360_000, 'duration', 'us', '100:00:00'],
    [0, 'duration', 'us', '0:00'],
    [442, 'duration', 'us', '7:22'],
    [442.5, 'duration', 'us', '7:22.5'],
    [0, 'height', 'us', '0'],
    [-0, 'height', 'us', '0'],
    // Three decimals would be asked about where thousands could be meant.
    [1.435, 'height', 'metric', '1.4350'],
  ])('%d (%s, %s) is %s', (value, kind, system, expected) => {
    expect(fieldText(value, kind, system)).toBe(expected);
  });

  test('is read again without a question, to six digits, in both systems', () => {
    const random = randomSource(99);
    for (const kind of numericKinds) {
      for (const system of ['metric', 'us'] as const) {
        for (let i = 0; i < 400; i++) {
          const value =
            kind === 'duration'
              ? Number((random() * 20_000).toFixed(i % 4))
              : random() * 10 ** Math.floor(random() * 7 - 2);
          const text = fieldText(value, kind, system);
          const read = field(text, kind, { unit: kinds[kind][system], min: -1e12, max: 1e12 });
          const again = si(read);
          if (typeof again !== 'number') throw new Error(`${text} (${kind}, ${system}): ${again}`);
          // A temperature in °F rounds around another zero.
          const scale = kind === 'temperature' ? Math.abs(value) + 20 : Math.abs(value);
          expect(Math.abs(again - value)).toBeLessThanOrEqual(5.1e-6 * scale);
        }
      }
    }
  });
});

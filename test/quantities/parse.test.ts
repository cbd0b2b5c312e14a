import { describe, expect, test } from 'vitest';
import { fromSi, type Kind, kinds, toSi } from '../../calculators/quantities/index.ts';
import { field, link, message, numericKinds, randomSource, si } from './help.ts';

describe('every form that a field understands', () => {
  test.each<[string, Kind, number, string]>([
    ['1mi', 'distance', 1609.344, '1mi'],
    ['1 mile', 'distance', 1609.344, '1mi'],
    ['2 miles', 'distance', 3218.688, '2mi'],
    ['1.6', 'distance', 1600, '1.6km'],
    ['1609 m', 'distance', 1609, '1609m'],
    ['550ft', 'height', 167.64, '550ft'],
    ['550 feet', 'height', 167.64, '550ft'],
    ["550'", 'height', 167.64, '550ft'],
    ['550′', 'height', 167.64, '550ft'],
    ['550’', 'height', 167.64, '550ft'],
    ['12"', 'height', 0.3048, '12in'],
    ['12″', 'height', 0.3048, '12in'],
    ["12''", 'height', 0.3048, '12in'],
    ['37 lb', 'mass', 16.78291769, '37lb'],
    ['37lbs', 'mass', 16.78291769, '37lb'],
    ['37 lbs.', 'mass', 16.78291769, '37lb'],
    ['82', 'mass', 82, '82kg'],
    ['82 KG', 'mass', 82, '82kg'],
    ['9300 g', 'mass', 9.3, '9300g'],
    ['200', 'power', 200, '200W'],
    ['0.2 kW', 'power', 200, '0.2kW'],
    ['35 N·m', 'torque', 35, '35Nm'],
    ['35Nm', 'torque', 35, '35Nm'],
    ['35 N m', 'torque', 35, '35Nm'],
    ['35\u202fN\u00a0m', 'torque', 35, '35Nm'],
    ['26 lb-ft', 'torque', 26 * 1.3558179483314003, '26lb-ft'],
    ['26 lb‑ft', 'torque', 26 * 1.3558179483314003, '26lb-ft'],
    ['26 ft-lbs', 'torque', 26 * 1.3558179483314003, '26lb-ft'],
    ['80 rpm', 'cadence', 80, '80rpm'],
    ['400', 'energy', 1_440_000, '400Wh'],
    ['0.4 kWh', 'energy', 1_440_000, '0.4kWh'],
    ['1.44 MJ', 'energy', 1_440_000, '1.44MJ'],
    ['20', 'work', 20_000, '20kJ'],
    ['20 kJ', 'work', 20_000, '20kJ'],
    ['20000 J', 'work', 20_000, '20000J'],
    ['5.5 Wh', 'work', 19_800, '5.5Wh'],
    ['0.4 kWh', 'work', 1_440_000, '0.4kWh'],
    ['165', 'length', 0.165, '165mm'],
    ['165 mm', 'length', 0.165, '165mm'],
    ['16,5 cm', 'length', 0.165, '16.5cm'],
    ['0.35 m', 'length', 0.35, '0.35m'],
    ['6.5 in', 'length', 0.1651, '6.5in'],
    ['6.5 inch', 'length', 0.1651, '6.5in'],
    ['14″', 'length', 0.3556, '14in'],
    ['1 ft', 'length', 0.3048, '1ft'],
    ['34', 'count', 34, '34'],
    ['1 200', 'count', 1200, '1200'],
    ['36 V', 'voltage', 36, '36V'],
    ['15', 'charge', 54_000, '15Ah'],
    ['17,5 Ah', 'charge', 63_000, '17.5Ah'],
    ['15000 mAh', 'charge', 54_000, '15000mAh'],
    ['5', 'energy-per-distance', 18, '5Wh/km'],
    ['5 Wh/km', 'energy-per-distance', 18, '5Wh/km'],
    ['8 Wh/mi', 'energy-per-distance', (8 * 3125) / 1397, '8Wh/mi'],
    ['350', 'force', 350, '350N'],
    ['80 lbf', 'force', 80 * 4.4482216152605, '80lbf'],
    ['25', 'speed', 25 / 3.6, '25km/h'],
    ['20 mph', 'speed', 8.9408, '20mph'],
    ['-3', 'wind', -3, '-3m/s'],
    ['−3', 'wind', -3, '-3m/s'],
    ['– 3', 'wind', -3, '-3m/s'],
    ['＋３．５', 'wind', 3.5, '3.5m/s'],
    ['15', 'temperature', 15, '15C'],
    ['15°', 'temperature', 15, '15C'],
    ['59 °F', 'temperature', 15, '59F'],
    ['-0', 'temperature', 0, '0C'],
    ['0.45', 'area', 0.45, '0.45m2'],
    ['0.45 m²', 'area', 0.45, '0.45m2'],
    ['0.45 m^2', 'area', 0.45, '0.45m2'],
    ['0.028', 'ratio', 0.028, '0.028'],
    ['3 %', 'ratio', 0.03, '3%'],
    ['96', 'percent', 0.96, '96'],
    ['96 %', 'percent', 0.96, '96'],
    ['10%', 'grade', 0.1, '10'],
    ['10', 'grade', 0.1, '10'],
    ['−10 %', 'grade', -0.1, '-10'],
    ['1 in 10', 'grade', 0.1, '1:10'],
    ['1in10', 'grade', 0.1, '1:10'],
    ['1:10', 'grade', 0.1, '1:10'],
    ['1/10', 'grade', 0.1, '1:10'],
    ['-1 in 8', 'grade', -0.125, '-1:8'],
    ['45°', 'grade', Math.tan(Math.PI / 4), '45deg'],
    ['5.7deg', 'grade', Math.tan((5.7 * Math.PI) / 180), '5.7deg'],
    ['2.4 W/kg', 'specific-power', 2.4, '2.4W/kg'],
    ['+5', 'mass', 5, '5kg'],
    ['.5', 'mass', 0.5, '0.5kg'],
    ['5.', 'mass', 5, '5kg'],
    ['007', 'mass', 7, '7kg'],
    ['1e3', 'power', 1000, '1e3W'],
    ['1E+3 W', 'power', 1000, '1e3W'],
    ['25e-3', 'ratio', 0.025, '25e-3'],
    ['\u200b82\u2060 kg\ufeff', 'mass', 82, '82kg'],
  ])('%s as %s', (text, kind, expected, canonical) => {
    expect(field(text, kind)).toMatchObject({ ok: true, si: expected, canonical });
    expect(si(link(canonical, kind))).toBe(expected);
  });

  test('1 in 10 is a tangent, and says so', () => {
    expect(field('1 in 8', 'grade')).toMatchObject({
      note: '12.5\u202f%: the rise for that length along the horizontal.',
    });
  });

  test('a plain number has the unit that the field shows', () => {
    expect(si(field('550', 'height', { unit: 'ft' }))).toBe(167.64);
    expect(si(field('1', 'distance', { unit: 'mi' }))).toBe(1609.344);
    expect(si(field('59', 'temperature', { unit: 'F' }))).toBe(15);
  });

  test('a field or a link that names a unit of another kind is our own mistake', () => {
    expect(() => field('5', 'power', { unit: 'kg' })).toThrow('kg is no unit of power');
  });

  test('none', () => {
    for (const text of ['none', 'None', 'no']) {
      expect(field(text, 'power', { allowNone: true })).toEqual({ ok: true, si: null, canonical: 'none' });
    }
    expect(si(link('none', 'speed', { allowNone: true }))).toBeNull();
    // the sign of a number that is still being typed is no answer
    expect(si(field('-', 'power', { allowNone: true }))).toBe('unreadable');
    expect(si(field('none', 'power'))).toBe('unreadable');
    expect(si(field('', 'power', { allowNone: true }))).toBe('empty');
  });

  test('nothing but spaces is empty', () => {
    expect(si(field(' \u202f ', 'mass'))).toBe('empty');
  });
});

describe('separators', () => {
  test.each<[string, number]>([
    ['1,5', 1.5],
    ['1,60', 1.6],
    ['0,125', 0.125],
    ['0.125', 0.125],
    [',125', 0.125],
    ['1.609,344', 1609.344],
    ['1,609.344', 1609.344],
    ['1,234,567', 1234567],
    ['1.234.567', 1234567],
    ['1 609', 1609],
    ['1\u202f609,5', 1609.5],
    ['1 609,344', 1609.344],
    ['1609,344', 1609.344],
    ['1609.344', 1609.344],
    ['01,609', 1.609],
    ['-1.234.567', -1234567],
  ])('%s in a field', (text, expected) => {
    expect(si(field(text, 'height'))).toBe(expected);
  });

  test.each(['1,6,9', '1.6.9', '1,60,9', '12 34', '1.609,344,5', '1.60,5', '1 60', '1,,5', '1..5', '1234,567,890'])(
    '%s is no number',
    (text) => {
      expect(si(field(text, 'height'))).toBe('unreadable');
    },
  );

  test('one comma before exactly three figures is asked about', () => {
    const range = { min: 20, max: 200_000 };
    for (const text of ['1,609', '1,609 km', '16,093 km', '160,934', '+1,609', '1,609 m']) {
      expect(si(field(text, 'distance', range))).toBe('ask');
    }
    expect(message(field('1,609', 'distance', range))).toBe(
      '“1,609”: thousands or decimals? Write 1609\u202fkm or 1.609\u202fkm.',
    );
  });

  test('the question keeps the sign', () => {
    expect(message(field('−1,430', 'height'))).toBe(
      '“-1,430”: thousands or decimals? Write −1430\u202fm or −1.43\u202fm.',
    );
  });

  test('a point is decimal, unless the thousands could be meant as well', () => {
    expect(si(field('1.609 km', 'distance', { min: 20, max: 200_000 }))).toBe(1609);
    expect(si(field('82.125', 'mass', { min: 25, max: 250 }))).toBe(82.125);
    expect(si(field('1.430 m', 'height', { min: 0, max: 9000 }))).toBe('ask');
    expect(si(field('1.250', 'energy', { min: 36_000, max: 5500 * 3600 }))).toBe('ask');
    expect(si(field('1.609 km', 'distance'))).toBe(1609);
  });

  test('what the question offers is read without another question', () => {
    const range = { min: 0, max: 9000 };
    for (const text of ['1.430 m', '1.435 m', '1,435 m']) {
      const asked = message(field(text, 'height', range));
      const [, large = '', small = ''] = /Write (.*) or (.*)\.$/.exec(asked) ?? [];
      expect(si(field(large, 'height', range))).toBe(Number(text.replace(/\D/g, '')));
      expect(si(field(small, 'height', range))).toBe(Number.parseFloat(text.replace(',', '.')));
    }
  });

  test('in a link the point is decimal and nothing else separates', () => {
    expect(si(link('1.609km', 'distance'))).toBe(1609);
    expect(si(link('1.430m', 'height', { min: 0, max: 9000 }))).toBe(1.43);
    expect(si(link('1,609', 'distance'))).toBe('unreadable');
    expect(si(link('1 609', 'distance'))).toBe('unreadable');
    expect(si(link('1.609.344', 'distance'))).toBe('unreadable');
    expect(si(link('7:22,5', 'duration'))).toBe('unreadable');
  });
});

describe('what cannot be used gets a sentence', () => {
  test.each<[string, Kind, string]>([
    ['38O', 'power', '“38O” has a letter O in it. Write 380\u202fW.'],
    ['38O W', 'power', '“38O W” has a letter O in it. Write 380\u202fW.'],
    ['2o0', 'power', '“2o0” has a letter o in it. Write 200\u202fW.'],
    ['l20', 'power', '“l20” has a letter l in it. Write 120\u202fW.'],
    ['I20 W', 'power', '“I20 W” has a letter I in it. Write 120\u202fW.'],
    ['7:2O', 'duration', '“7:2O” has a letter O in it. Write 7:20.'],
    ['5 kg', 'power', 'power: “5 kg” cannot be read. Write a number, alone or with W, kW or hp.'],
    ['heavy', 'mass', 'mass: “heavy” cannot be read. Write a number, alone or with kg, lb or g.'],
    ['ninety', 'grade', 'grade: “ninety” cannot be read. Write a number, alone or with % or °, or 1 in 10.'],
    ['fast', 'duration', 'duration: “fast” cannot be read. Write 7:22, 1:05:30 or 16 min 43 s.'],
    ['many', 'count', 'count: “many” cannot be read. Write a number.'],
    ['34 kg', 'count', 'count: “34 kg” cannot be read. Write a number.'],
    ['5 V', 'charge', 'charge: “5 V” cannot be read. Write a number, alone or with Ah or mAh.'],
    [
      '5 W/km',
      'energy-per-distance',
      'energy-per-distance: “5 W/km” cannot be read. Write a number, alone or with Wh/km, Wh/mi or J/m.',
    ],
    ['sticky', 'ratio', 'ratio: “sticky” cannot be read. Write a number, alone or with %.'],
  ])('%s as %s', (text, kind, sentence) => {
    expect(message(field(text, kind))).toBe(sentence);
  });

  test('the beginning of a unit is not taken for a slip of the keyboard', () => {
    expect(message(field('5l', 'mass'))).toContain('cannot be read');
    expect(si(field('5l', 'mass'))).toBe('unreadable');
  });

  test('a long text is cut in the sentence', () => {
    expect(message(field('x'.repeat(500), 'mass')).length).toBeLessThan(140);
  });

  test('arithmetic and unknown units may be an expression in a field, never in a link', () => {
    for (const text of ['100+30', '(100)', '2*65', '100/2', '10²', '5 furlongs', '100-30', '2 h * 3']) {
      expect(si(field(text, 'power'))).toBe('expression');
      expect(si(link(text, 'power'))).toBe('unreadable');
    }
  });

  test('neither a unit of another kind nor the beginning of a unit brings the expressions along', () => {
    for (const text of ['5 kg', '36 V', '15 Ah', '1.6 k', '5 watt', '5 wat', 'abc', `${'1'.repeat(101)}+1`]) {
      expect(si(field(text, 'power'))).not.toBe('expression');
    }
  });
});

describe('ranges', () => {
  const rider = { min: 25, max: 250, label: 'Rider weight' };
  test.each<[string, Kind, object, string]>([
    ['8', 'mass', rider, 'Rider weight: 8\u202fkg is outside 25 to 250\u202fkg.'],
    // 25 kg is 55.116 lb: the sentence rounds inwards, so that what it names is accepted.
    ['8 lb', 'mass', rider, 'Rider weight: 8\u202flb is outside 55.2 to 551\u202flb.'],
    ['1 mi', 'distance', { max: 1000 }, 'distance: 1\u202fmi is more than 0.621\u202fmi.'],
    ['-5', 'height', { min: 0 }, 'height: −5\u202fm is less than 0\u202fm.'],
    ['300', 'distance', { min: 20, max: 200_000 }, 'distance: 300\u202fkm is outside 0.02 to 200\u202fkm.'],
    [
      '900000 ft',
      'distance',
      { min: 20, max: 200_000 },
      'distance: 900000\u202fft is outside 65.7 to 656\u202f167\u202fft.',
    ],
    ['95°', 'grade', { min: -0.4, max: 0.6 }, 'grade: 95° is outside −21.8 to 30.9°.'],
    ['1 in 1', 'grade', { min: -0.4, max: 0.6 }, 'grade: 1 in 1 is outside −40 to 60\u202f%.'],
    ['1 in 0', 'grade', { min: -0.4, max: 0.6 }, 'grade: 1 in 0 is outside −40 to 60\u202f%.'],
    ['0 in 0', 'grade', { min: -0.4, max: 0.6 }, 'grade: 0 in 0 is outside −40 to 60\u202f%.'],
    ['0.96', 'percent', { min: 0.5, max: 1 }, 'percent: 0.96\u202f% is outside 50 to 100\u202f%.'],
    ['0:04', 'duration', { min: 5, max: 360_000, label: 'Time' }, 'Time: 0:04 is outside 0:05 to 100:00:00.'],
    [
      '1e99',
      'power',
      { min: 0, max: 1500 },
      'power: 1e99\u202fW is outside 0 to 1500\u202fW.'.replace('1500', '1\u202f500'),
    ],
    ['0.2', 'ratio', { min: 0, max: 0.15 }, 'ratio: 0.2 is outside 0 to 0.15.'],
  ])('%s as %s', (text, kind, options, sentence) => {
    const result = field(text, kind, options);
    expect(si(result)).toBe('range');
    expect(message(result)).toBe(sentence);
  });

  test('the ends belong to the range in every unit that a person may use', () => {
    expect(si(field('100', 'speed', { min: 5 / 3.6, max: 100 / 3.6 }))).toBeCloseTo(100 / 3.6, 12);
    expect(si(field('5', 'speed', { min: 5 / 3.6, max: 100 / 3.6 }))).toBeCloseTo(5 / 3.6, 12);
    expect(si(field('60', 'grade', { min: -0.4, max: 0.6 }))).toBe(0.6);
    expect(si(field('-40', 'grade', { min: -0.4, max: 0.6 }))).toBe(-0.4);
    expect(si(field('0', 'height', { min: 0, max: 9000 }))).toBe(0);
  });

  test('the ends that a sentence names are accepted', () => {
    for (const unit of ['kg', 'lb', 'g']) {
      const said = message(field(`1e9 ${unit}`, 'mass', rider)).replaceAll('\u202f', '');
      const [, low = '', high = ''] = /outside (.+) to ([\d.]+)/.exec(said) ?? [];
      for (const end of [low, high]) expect(si(field(`${end} ${unit}`, 'mass', rider))).toBeTypeOf('number');
    }
  });
});

describe('canonical texts', () => {
  test('random values in every unit come back to the identical SI value', () => {
    const random = randomSource(20240611);
    let checked = 0;
    for (const kind of numericKinds) {
      if (kind === 'duration') continue;
      for (const unit of kinds[kind].units) {
        for (let i = 0; i < 200; i++) {
          const size = 10 ** (random() * 8 - 3);
          const value = (random() - 0.5) * 2 * (unit.symbol === 'deg' ? 89 : size);
          const text = i % 2 ? String(value) : value.toFixed(4);
          const name = unit.names.split(',')[i % unit.names.split(',').length] ?? '';
          const typed = field(`${text.replace('.', ',')} ${name}`, kind);
          if (!typed.ok) throw new Error(`${text} ${name}: ${typed.message}`);
          // The number as typed, not a nearby one.
          expect(typed.si).toBe(toSi(Number(text), unit) + 0);
          const again = link(typed.canonical, kind);
          expect(si(again)).toBe(typed.si);
          expect(again).toMatchObject({ canonical: typed.canonical });
          expect(typed.canonical).toMatch(/^[!-~]+$/);
          checked++;
        }
      }
    }
    expect(checked).toBeGreaterThan(5000);
  });

  test('a canonical text never looks like two bikes', () => {
    expect(link('1,2', 'mass').ok).toBe(false);
    expect(field('1,25', 'mass')).toMatchObject({ canonical: '1.25kg' });
  });

  test('the digits stay as typed', () => {
    expect(field('16.70 kg', 'mass')).toMatchObject({ canonical: '16.70kg' });
    expect(field('0,4500', 'area')).toMatchObject({ canonical: '0.4500m2' });
  });

  test('degrees come back as degrees', () => {
    const unit = kinds.grade.units.find((u) => u.symbol === 'deg');
    if (!unit) throw new Error('deg');
    expect(fromSi(Math.tan(0.1), unit)).toBeCloseTo(5.729577951308232, 12);
  });
});

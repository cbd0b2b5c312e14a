import { describe, expect, test } from 'vitest';
import { evaluateExpression } from '../../calculators/quantities/expression.ts';
import { type Kind, kinds, type Parsed, type ParseOptions } from '../../calculators/quantities/index.ts';
import { link, message, si } from './help.ts';

const evaluate = (text: string, kind: Kind, options: Partial<ParseOptions> = {}): Parsed =>
  evaluateExpression(text, kind, { unit: kinds[kind].metric, where: 'field', ...options });

describe('expressions', () => {
  test.each<[string, Kind, number, string]>([
    ['100+30', 'power', 130, '130W'],
    ['0.1+0.2', 'distance', 300, '0.3km'],
    ['1,5*2', 'mass', 3, '3kg'],
    ['2 mi + 400 yd', 'distance', 3584.448, '3584.448m'],
    ['36 V * 10 Ah', 'energy', 1_296_000, '360Wh'],
    ['36V 10Ah', 'energy', 1_296_000, '360Wh'],
    ['36 V * 15 Ah', 'energy', 1_944_000, '540Wh'],
    ['36V × 15Ah', 'energy', 1_944_000, '540Wh'],
    ['36 v · 15 ah', 'energy', 1_944_000, '540Wh'],
    ['48 V * 14000 mAh', 'energy', 2_419_200, '672Wh'],
    ['540 Wh / 36 V', 'charge', 54_000, '15Ah'],
    ['10*3.6 V', 'voltage', 36, '36V'],
    ['540 Wh / 15 Ah', 'voltage', 36, '36V'],
    ['100 W * 200 s', 'work', 20_000, '20kJ'],
    ['2*10', 'work', 20_000, '20kJ'],
    ['700 mm / 2', 'length', 0.35, '350mm'],
    ['29 in / 2', 'length', 0.3683, '368.3mm'],
    ['1 ft 2 in', 'length', 0.3556, '355.6mm'],
    ['51-17', 'count', 34, '34'],
    ['6 km / 2 km', 'count', 3, '3'],
    ['600 Wh / 120 km', 'energy-per-distance', 18, '5Wh/km'],
    ['36 kJ / 10 km', 'energy-per-distance', 3.6, '1Wh/km'],
    ['50 N·m / 100 mm', 'force', 500, '500N'],
    ['80 lbf + 20 lbf', 'force', 444.82216152605, '444.82216152605N'],
    ['100 N * 170 mm', 'torque', 17, '17Nm'],
    ['5 ft 10 in', 'height', 1.778, '1.778m'],
    ['12 stone 7 lb', 'mass', 79.37866475, '79.37866475kg'],
    ['5 min + 30 s', 'duration', 330, '5:30'],
    ['2*7 min', 'duration', 840, '14:00'],
    ['200 W + 10%', 'power', 220, '220W'],
    ['2 W/kg × 80 kg', 'power', 160, '160W'],
    ['12*5 rpm', 'cadence', 60, '60rpm'],
    ['10²', 'power', 100, '100W'],
    ['-(3)', 'wind', -3, '-3m/s'],
    ['10+2', 'temperature', 12, '12C'],
    ['5+1', 'grade', 0.06, '6'],
    ['0.02+0.005', 'ratio', 0.025, '0.025'],
    ['1 mi / 10 min', 'speed', 2.68224, '9.656064km/h'],
  ])('%s as %s', (text, kind, expected, canonical) => {
    expect(evaluate(text, kind)).toMatchObject({ ok: true, si: expected, canonical });
    expect(si(link(canonical, kind))).toBe(expected);
  });

  test('35 N·m at 80 rpm is 293 W', () => {
    expect(si(evaluate('35 N·m * 80 rpm', 'power'))).toBeCloseTo((35 * 2 * Math.PI * 80) / 60, 10);
  });

  test('625 Wh, 95 % of them over 159 km, are 3.73 Wh/km', () => {
    // 593.75 / 159 = 3.7343
    const parsed = evaluate('0.95 * 625 Wh / 159 km', 'energy-per-distance');
    expect(Number(si(parsed)) / 3.6).toBeCloseTo(3.7343, 4);
    expect(parsed).toMatchObject({ note: '0.95 * 625 Wh / 159 km = 3.73428\u202fWh/km' });
  });

  test('a power per distance is refused with the units that would do', () => {
    for (const text of ['5 W/km', '250 W / 50 km']) {
      const parsed = evaluate(text, 'energy-per-distance');
      expect(si(parsed)).toBe('unreadable');
      expect(message(parsed)).toBe(
        `energy-per-distance: “${text}” cannot be read. Write a number, alone or with Wh/km, Wh/mi or J/m.`,
      );
    }
  });

  test('a time that is half written gets no reading', () => {
    for (const text of ['1 h 2', '1 h 60', '1 h 200', '90 s 30', '1 h 20.5', '1 h -20', '5 furlongs 20']) {
      expect(si(evaluate(text, 'duration'))).toBe('unreadable');
    }
    expect(si(evaluate('1 h 20', 'duration'))).toBe(4800);
  });

  test('volts alone, amp-hours alone and their sum are no energy', () => {
    for (const text of ['36 V', '15 Ah', '36 V + 15 Ah', '36 V * 15 A']) {
      expect(si(evaluate(text, 'energy'))).toBe('unreadable');
    }
  });

  test('units that cancel make a grade', () => {
    expect(si(evaluate('550 ft / 1 mi', 'grade'))).toBeCloseTo(550 / 5280, 14);
    expect(si(evaluate('550 ft / 1 mi', 'power'))).toBe('unreadable');
  });

  test('it says what it made of the text', () => {
    expect(evaluate('100+30', 'power')).toMatchObject({ note: '100+30 = 130\u202fW' });
  });

  test('what needs no arithmetic is read as ever', () => {
    expect(evaluate('200 W', 'power')).toMatchObject({ si: 200, canonical: '200W' });
    expect(si(evaluate('1,609', 'power'))).toBe('ask');
    expect(si(evaluate('', 'power'))).toBe('empty');
  });

  test('ranges and questions', () => {
    expect(message(evaluate('300+4', 'power', { max: 200 }))).toBe('power: 304\u202fW is more than 200\u202fW.');
    expect(message(evaluate('1,500*2', 'power'))).toBe('“1,500”: thousands or decimals? Write 1500 or 1.500.');
  });

  test.each([
    'import(1)',
    'createUnit(1)',
    'evaluate("1")',
    'a=3',
    'f(x)=2',
    '[1,2]+1',
    '{a:1}',
    'x.y+1',
    '1:3+1',
    '5!',
    "5'+1",
    '5 to W',
    'pi*3',
    'e*2',
    'i*2',
    'true+1',
    '"a"+1',
    '1;2+3',
    '5 == 5',
    '5 > 3',
    '5 mod 3',
    '1 ? 2 : 3',
    '5 kg + 1',
    '5 W + 5 kg',
    '1/0',
    '0/0',
    '2^9999',
    '(-8)^(1/3)',
    '2^(1 W)',
    'sqrt(4) + 1',
    '5 furlongs',
    '((((((5',
    '10 % 3',
    'version+1',
    '5 W^2',
  ])('%s is refused', (text) => {
    expect(si(evaluate(text, 'power'))).toBe('unreadable');
  });

  test('it answers soon for the worst of a hundred characters', () => {
    const started = performance.now();
    for (const text of [`${'('.repeat(99)}1`, `${'9^'.repeat(49)}9`, `${'1+'.repeat(49)}1`, `${'2 W*'.repeat(24)}1`]) {
      evaluate(text, 'power');
    }
    expect(performance.now() - started).toBeLessThan(1000);
  });
});

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

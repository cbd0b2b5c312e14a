import katex from 'katex';
import { describe, expect, test } from 'vitest';
import type { Formula } from '../../calculators/quantities/formula.ts';
import {
  dimensionsAgree,
  evaluateFormula,
  formulaProblem,
  texOf,
  valueIn,
} from '../../calculators/quantities/formula-tools.ts';

const symbol = (unit: string, tex: string) => ({ meaning: tex, unit, tex });
const gravity: Formula = {
  id: 'gravity',
  title: 'Gravity',
  result: 'F_g',
  expression: 'm * g * H / L',
  symbols: {
    F_g: symbol('N', 'F_\\mathrm{g}'),
    m: symbol('kg', 'm'),
    g: symbol('m / s^2', 'g'),
    H: symbol('m', 'H'),
    L: symbol('m', 'L'),
  },
  source: 'definition',
};
const torque: Formula = {
  id: 'torque',
  title: 'Power from torque',
  result: 'P',
  expression: '2 * pi * n * tau',
  symbols: { P: symbol('W', 'P'), n: symbol('1 / s', 'n'), tau: symbol('N m', '\\tau') },
  source: 'definition',
};

describe('TeX', () => {
  test('symbols stand in their own TeX', () => {
    expect(texOf(gravity)).toBe('F_\\mathrm{g} = \\frac{ m\\,g\\,H}{ L}');
  });
  test('a dot before a figure, a thin space elsewhere, pi as pi', () => {
    expect(texOf({ ...torque, expression: 'tau * 2 * pi * n' })).toBe('P = \\tau\\cdot2\\,\\pi\\,n');
  });
  test('is typeset without a complaint', () => {
    for (const formula of [gravity, torque]) {
      expect(katex.renderToString(texOf(formula), { throwOnError: true, strict: 'error' })).toContain('<math');
    }
  });
  test('an undeclared symbol is an error', () => {
    expect(() => texOf({ ...gravity, expression: 'm * q' })).toThrow('gravity: the symbol q is not declared');
  });
});

describe('evaluation', () => {
  test('35 N·m at 80 rpm', () => {
    const power = evaluateFormula(torque, { tau: '35 N m', n: '80 rpm' });
    expect(valueIn(power, 'W')).toBeCloseTo(293.2153143350473, 10);
    expect(valueIn(power, 'kW')).toBeCloseTo(0.2932153143350473, 12);
  });
  test('units of both systems', () => {
    const force = evaluateFormula(gravity, { m: '200 lb', g: '9.80665 m/s^2', H: '550 ft', L: '1 mi' });
    // 200 lbf × 550 / 5280
    expect(valueIn(force, 'lbf')).toBeCloseTo((200 * 550) / 5280, 10);
  });
  test('a result per time can be had in its own unit and in turns a minute', () => {
    const cadence: Formula = { ...torque, result: 'n', expression: 'P / (2 * pi * tau)' };
    const turns = evaluateFormula(cadence, { P: '600 W', tau: '85 N m' });
    // 600 ÷ 534.0708 is 1.1234466 in a second, 67.4068 in a minute
    expect(valueIn(turns, '1 / s')).toBeCloseTo(1.1234466, 6);
    expect(valueIn(turns, 'rpm')).toBeCloseTo(67.4068, 4);
  });
  test('what is missing, unknown, of another dimension or without an end is an error', () => {
    const whole = { m: '80 kg', g: '9.8 m/s^2', H: '100 m', L: '1 km' };
    expect(() => evaluateFormula(gravity, { ...whole, q: 1 })).toThrow('the symbol q is not declared');
    expect(() => evaluateFormula(gravity, { m: '80 kg' })).toThrow('gravity: no value for g, H, L');
    expect(() => evaluateFormula(gravity, { ...whole, m: '80 W' })).toThrow('m is 80 W, which is not a value in kg');
    expect(() => evaluateFormula(gravity, { ...whole, m: 80 })).toThrow('not a value in kg');
    expect(() => evaluateFormula(gravity, { ...whole, L: '0 m' })).toThrow('not finite');
    expect(() => valueIn(5, 'W')).toThrow('not a value in W');
  });
});

describe('dimensions', () => {
  test('agree', () => {
    expect(dimensionsAgree(gravity)).toBe(true);
    expect(dimensionsAgree(torque)).toBe(true);
  });
  test.each<[string, Partial<Formula>, string]>([
    ['a factor too many', { expression: 'm * g * H / L * L' }, 'no result in N'],
    ['metres plus a number', { expression: 'm * g * (H + 1) / L' }, 'no result in N'],
    ['a symbol that mathjs would read as a unit', { expression: 'kg * g * H / L * m / m' }, 'kg is not declared'],
    ['a symbol declared in vain', { expression: 'm * g' }, 'H, L is declared and not used'],
    ['no expression', { expression: 'm * * g' }, 'Value expected'],
    ['a result that is not declared', { result: 'F' }, 'F is not declared'],
  ])('disagree: %s', (_, change, sentence) => {
    expect(formulaProblem({ ...gravity, ...change })).toContain(sentence);
    expect(dimensionsAgree({ ...gravity, ...change })).toBe(false);
  });
  test('a root that has no value for some sizes still agrees', () => {
    const root: Formula = { ...gravity, expression: 'm * g * H / sqrt(L^2 - H^2)' };
    expect(formulaProblem(root)).toBeUndefined();
  });
});

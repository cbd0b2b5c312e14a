import { expect, test } from 'vitest';
import { texOf } from '../../calculators/quantities/formula-tools.ts';
import { formulas } from '../../calculators/quantities/formulas.ts';
import { evaluate, unitText } from '../../site/math/formula.ts';
import { mathml } from '../../site/math/mathml.ts';

test.each(formulas.map((formula) => [formula.id, formula] as const))('%s can be set', (_, formula) => {
  expect(mathml(texOf(formula), true)).toMatch(/^<math display="block">/);
  for (const { tex } of Object.values(formula.symbols)) expect(mathml(tex)).toMatch(/^<math>/);
});

test('unitText(unit) writes units as people read them', () => {
  const units = ['kg / m^3', 'N m', 'J / (kg K)', '1 / K^2', '1'];
  expect(units.map(unitText)).toEqual(['kg/m³', 'N·m', 'J/(kg·K)', '1/K²', '']);
});

function formula(id: string) {
  const found = formulas.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no formula ${id}`);
  return found;
}

test('evaluate: 35 N·m at 80 rpm is 293 W (by hand: 35 × 2π × 80 ÷ 60 = 293.2153)', () => {
  expect(evaluate(formula('torque-power'), { torque: '35 N m', cadence: '80 rpm' }, 'W')).toBeCloseTo(293.2153, 4);
  expect(evaluate(formula('torque-power'), { tau: '35 N m', n: '80 rpm' }, 'kW')).toBeCloseTo(0.2932153, 7);
});

test('evaluate knows standard gravity (by hand: 100 × 9.80665 × 0.1 = 98.0665)', () => {
  expect(evaluate(formula('gravity-force'), { m: '100 kg', height: '100 m', distance: '1 km' }, 'N')).toBeCloseTo(
    98.0665,
    9,
  );
});

test('evaluate says what is wrong with its inputs', () => {
  const torque = formula('torque-power');
  expect(() => evaluate(torque, { torque: '35 N m' }, 'W')).toThrow('no value for n');
  expect(() => evaluate(torque, { speed: '3 m/s' }, 'W')).toThrow('torque-power: no input is called “speed”');
  expect(() => evaluate(torque, { torque: '35 W', cadence: '80 rpm' }, 'W')).toThrow('tau is 35 W');
  expect(() => evaluate(torque, { torque: '35 N m', cadence: '80 rpm' }, 'kg')).toThrow(/[Uu]nits do not match/);
});

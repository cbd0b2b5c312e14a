import { GRAVITY } from '../../calculators/model/index.ts';
import type { Formula } from '../../calculators/quantities/formula.ts';
import { evaluateFormula, valueIn } from '../../calculators/quantities/formula-tools.ts';

/** The symbols that have one value everywhere, so that no page need give them. */
const fixed: Record<string, string> = { g: `${GRAVITY} m / s^2` };

/** A unit of the symbol table as people read it: `kg / m^3` is kg/m³, `N m` is N·m, `1` nothing. */
export function unitText(unit: string): string {
  if (unit === '1') return '';
  const raised: Record<string, string> = { '2': '²', '3': '³' };
  return unit
    .replace(/ *\/ */g, '/')
    .replace(/\^([23])/g, (_, power: string) => raised[power] ?? '')
    .replace(/ /g, '·');
}

/**
 * What a formula gives for the values that a page states, in a unit.
 * @param inputs texts with units (`35 N m`) by symbol name (`tau`) or by the beginning of the symbol's meaning (`torque`)
 * @param to the unit of the answer, as mathjs writes it; `1` for a plain number
 * @throws Error naming an input that is unknown, missing or of the wrong dimension
 */
export function evaluate(formula: Formula, inputs: Record<string, string>, to: string): number {
  const { id, result, symbols } = formula;
  const names = Object.keys(symbols).filter((name) => name !== result);
  const values: Record<string, string> = {};
  for (const name of names) if (fixed[name] !== undefined) values[name] = fixed[name];
  for (const [input, text] of Object.entries(inputs)) {
    const meant = Object.hasOwn(symbols, input)
      ? [input]
      : names.filter((name) => symbols[name]?.meaning.startsWith(input.replaceAll('-', ' ')));
    const [name] = meant;
    if (name === undefined || meant.length > 1) {
      throw new Error(`${id}: ${meant.length > 1 ? 'more than one input' : 'no input'} is called “${input}”`);
    }
    values[name] = text;
  }
  return valueIn(evaluateFormula(formula, values), to);
}

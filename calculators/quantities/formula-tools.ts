/**
 * What the build and the tests do with a formula: typeset it, evaluate it with units, check its dimensions.
 * Imports all of mathjs, so no page may import this file.
 */
import { all, create, type MathNode, type Unit } from 'mathjs';
import type { Formula } from './formula.ts';

const math = create(all ?? {});
// A cadence is a number of turns per time; the formulas write the 2π themselves.
math.createUnit('rpm', '1 / minute');

/** Names that a formula may use without declaring them. */
const CONSTANTS = ['pi'];

export type FormulaValue = Unit | number;

/** Symbols that the expression uses, without functions and constants. */
function usedSymbols(expression: string): string[] {
  const names = new Set<string>();
  math.parse(expression).traverse((node, path) => {
    if (math.isSymbolNode(node) && path !== 'fn' && !CONSTANTS.includes(node.name)) names.add(node.name);
  });
  return [...names];
}

function symbolOf(formula: Formula, name: string): Formula['symbols'][string] {
  const symbol = formula.symbols[name];
  if (!symbol) throw new Error(`${formula.id}: the symbol ${name} is not declared`);
  return symbol;
}

/**
 * The formula in TeX, `result = expression`, with each symbol's own TeX: mathjs would set m and g upright as units
 * and escape underscores. A product is a thin space, or a dot before a figure.
 * @throws Error when the expression cannot be parsed or a symbol is not declared.
 */
export function texOf(formula: Formula): string {
  const handler = (node: MathNode) =>
    math.isSymbolNode(node) && !CONSTANTS.includes(node.name) ? ` ${symbolOf(formula, node.name).tex}` : undefined;
  const tex = math.parse(formula.expression).toTex({ parenthesis: 'auto', implicit: 'hide', handler });
  return `${symbolOf(formula, formula.result).tex} = ${tex.replace(/\\cdot\s*(?=[^\s\d.])/g, '\\,').trim()}`;
}

/** A value for a symbol in its own unit's dimension. */
function valueFor(formula: Formula, name: string, given: FormulaValue | string): FormulaValue {
  const { unit } = symbolOf(formula, name);
  const value = typeof given === 'string' ? math.evaluate(given) : given;
  const fits = unit === '1' ? typeof value === 'number' : math.isUnit(value) && value.equalBase(math.unit(unit));
  if (!fits) throw new Error(`${formula.id}: ${name} is ${String(given)}, which is not a value in ${unit}`);
  return value;
}

function run(formula: Formula, values: Record<string, FormulaValue>): FormulaValue {
  const value: unknown = math.evaluate(formula.expression, { ...values });
  if (typeof value === 'number' || math.isUnit(value)) return value;
  throw new Error(`${formula.id}: the result is neither a number nor a quantity`);
}

/**
 * Evaluates a formula with units.
 * @param scope a value for every symbol but the result: a number where its unit is `1`, a mathjs unit, or a text such as `35 N m` or `80 rpm`.
 * @returns a mathjs unit, or a number where the result has none.
 * @throws Error when a symbol is missing, unknown, or has the wrong dimension, or the result is not finite.
 */
export function evaluateFormula(formula: Formula, scope: Record<string, FormulaValue | string>): FormulaValue {
  const values = Object.fromEntries(
    Object.entries(scope).map(([name, given]) => [name, valueFor(formula, name, given)]),
  );
  const missing = usedSymbols(formula.expression).filter((name) => values[name] === undefined);
  if (missing.length > 0) throw new Error(`${formula.id}: no value for ${missing.join(', ')}`);
  const result = run(formula, values);
  if (!Number.isFinite(valueIn(result, symbolOf(formula, formula.result).unit))) {
    throw new Error(`${formula.id}: the result is not finite`);
  }
  return result;
}

/**
 * A result as a plain number in a unit; `1` or nothing for a result without unit.
 * @throws Error when the dimensions differ.
 */
export function valueIn(value: FormulaValue, unit = '1'): number {
  if (typeof value === 'number') {
    if (unit !== '1') throw new Error(`A plain number is not a value in ${unit}`);
    return value;
  }
  // mathjs takes the 1 of `1 / s` for a value, and a unit to convert to may have none
  return value.toNumber(unit.replace(/^1 \/ (\w+)$/, '$1^-1'));
}

/**
 * What is wrong with a formula's symbols or dimensions, as a sentence; undefined when all is well.
 * Each symbol gets values of its unit (several, since a root or a logarithm has no value for some), and the result
 * must come out in the unit of the result's symbol.
 */
export function formulaProblem(formula: Formula): string | undefined {
  try {
    const used = usedSymbols(formula.expression);
    for (const name of used) symbolOf(formula, name);
    const { unit } = symbolOf(formula, formula.result);
    const idle = Object.keys(formula.symbols).filter((name) => name !== formula.result && !used.includes(name));
    if (idle.length > 0) return `${formula.id}: ${idle.join(', ')} is declared and not used`;
    let problem = 'no value';
    for (let attempt = 0; attempt < 12; attempt++) {
      const values = Object.fromEntries(
        used.map((name, i) => {
          const size = 0.1 + ((7 * i + 5 * attempt) % 11) / 12;
          const symbol = symbolOf(formula, name);
          return [name, symbol.unit === '1' ? size : math.unit(size, symbol.unit)];
        }),
      );
      try {
        if (Number.isFinite(valueIn(run(formula, values), unit))) return undefined;
      } catch (error) {
        problem = String(error);
      }
    }
    return `${formula.id}: no result in ${unit} (${problem})`;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** All symbols are declared and used, and the expression has the dimension of its result. */
export const dimensionsAgree = (formula: Formula): boolean => formulaProblem(formula) === undefined;

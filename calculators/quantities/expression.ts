/**
 * Arithmetic and units beyond the tables, with mathjs. Never import this file statically from a page:
 * `await import('./expression.ts')` when `parseQuantity` answers `expression`.
 */
import {
  addDependencies,
  create,
  divideDependencies,
  type MathNode,
  type Unit as MathUnit,
  multiplyDependencies,
  parseDependencies,
  powDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unitDependencies,
} from 'mathjs';
import { clockText } from './duration.ts';
import { withUnit } from './format.ts';
import { readNumber, tidy } from './number.ts';
import { type Misreading, type Parsed, type ParseOptions, parseQuantity } from './parse.ts';
import { findUnit, kinds } from './spellings.ts';
import { fromSi, type Kind } from './units.ts';

const math = create({
  ...parseDependencies,
  ...unitDependencies,
  ...addDependencies,
  ...subtractDependencies,
  ...multiplyDependencies,
  ...divideDependencies,
  ...powDependencies,
  ...unaryMinusDependencies,
});

type Value = number | MathUnit;

/** The mathjs unit of each kind's SI value; kinds without one are plain numbers. */
const siUnit: Partial<Record<Kind, string>> = {
  distance: 'm',
  height: 'm',
  length: 'm',
  mass: 'kg',
  power: 'W',
  torque: 'N m',
  energy: 'J',
  work: 'J',
  'energy-per-distance': 'J/m',
  voltage: 'V',
  charge: 'C',
  force: 'N',
  speed: 'm/s',
  wind: 'm/s',
  'climb-rate': 'm/s',
  area: 'm^2',
  cadence: 's^-1',
  duration: 's',
  'specific-power': 'W/kg',
};
/** A cadence counts as an angular speed, with the radian as 1: 35 N·m times 80 rpm is a power. */
const RPM = Math.PI / 30;

/** One of a named unit: of the kind's own table, of another kind's, or one that mathjs knows. */
function unitValue(name: string, kind: Kind): Value | undefined {
  for (const other of [kind, ...(Object.keys(siUnit) as Kind[])]) {
    const si = siUnit[other];
    const unit = si && findUnit(name, other);
    if (unit) return math.unit((unit.times / unit.over) * (other === 'cadence' ? RPM : 1), si);
  }
  return math.Unit.isValuelessUnit(name) ? math.unit(1, name) : undefined;
}

const operations: Record<string, (...values: Value[]) => unknown> = {
  add: (a, b) => math.add(a as number, b as number),
  subtract: (a, b) => math.subtract(a as number, b as number),
  multiply: (a, b) => math.multiply(a as number, b as number),
  divide: (a, b) => math.divide(a as number, b as number),
  pow: (a, b) => (typeof b === 'number' ? math.pow(a as number, b) : undefined),
  unaryMinus: (a) => math.unaryMinus(a as number),
};

/**
 * Walks the parsed tree itself, so that nothing but numbers, the operations above and units can ever run.
 * Throws for anything else.
 */
function inputOf(node: MathNode, kind: Kind, used: { unit: boolean }): Value {
  const refuse = (): never => {
    throw new Error(`${node.type} has no place here`);
  };
  if (math.isConstantNode(node)) return typeof node.value === 'number' ? node.value : refuse();
  if (math.isParenthesisNode(node)) return inputOf(node.content, kind, used);
  if (math.isSymbolNode(node)) {
    used.unit = true;
    return unitValue(node.name, kind) ?? refuse();
  }
  if (!math.isOperatorNode(node)) return refuse();
  const operation = operations[node.fn];
  if (!operation || ('isPercentage' in node && node.isPercentage && !siUnit[kind])) return refuse();
  const value = operation(...node.args.map((arg) => inputOf(arg, kind, used)));
  return typeof value === 'number' || math.isUnit(value) ? value : refuse();
}

/** The text as mathjs reads it, or what to ask about a number in it. */
function prepare(said: string, kind: Kind): string | Misreading | undefined {
  let problem: Misreading | undefined;
  const numbers = said.replace(/\d[\d.,]*|[.,]\d+/g, (digits) => {
    const read = readNumber(digits, false);
    if (!read || read.comma) {
      problem = {
        ok: false,
        reason: read ? 'ask' : 'unreadable',
        message: read
          ? `“${digits}”: thousands or decimals? Write ${read.grouped} or ${read.digits}.`
          : `“${digits}” is not a number.`,
      };
    }
    return read?.digits ?? '';
  });
  if (problem) return problem;
  return (
    numbers
      .replace(/[·⋅∙]/g, '*')
      // lb-ft is one unit; `in` would be mathjs's word for a conversion.
      .replace(/(?<=[a-z])-(?=[a-z])/gi, '')
      .replace(/(?<![a-z])in(?![a-z])/gi, 'inch')
      // 5 ft 10 in is a sum, 36 V 10 Ah a product.
      .replace(/(?<=[a-z]) (?=\d)/gi, /^(distance|height|length|mass|duration)$/.test(kind) ? ' + ' : ' * ')
  );
}

/**
 * Evaluates arithmetic and units, for a text that `parseQuantity` calls an expression: `100+30`, `2 mi + 400 yd`,
 * `36 V * 10 Ah`, `550 ft / 1 mi` (a grade). Numbers without any unit have `options.unit`. Only `+ − * / ^`, brackets,
 * numbers and units: no names, no functions. The canonical text is in the plain unit of links.
 */
export function evaluateExpression(text: string, kind: Kind, options: ParseOptions): Parsed {
  const simple = parseQuantity(text, kind, options);
  if (simple.ok || simple.reason !== 'expression') return simple;
  const misread: Misreading = { ...simple, reason: 'unreadable' };
  const prepared = prepare(tidy(text), kind);
  if (typeof prepared !== 'string') return prepared ?? misread;
  try {
    const used = { unit: false };
    const value = inputOf(math.parse(prepared), kind, used);
    const plain = findUnit(kinds[kind].plain, kind);
    let unit = findUnit(options.unit, kind);
    let number = value;
    if (typeof number !== 'number') {
      unit = plain;
      number = number.toNumber(siUnit[kind] ?? '') / (kind === 'cadence' ? RPM : 1);
      if (unit) number = fromSi(number, unit);
    } else if (used.unit) {
      // Units that cancel leave a ratio, which only a ratio, a count, a share or a grade can be.
      if (siUnit[kind] || kind === 'temperature') return misread;
      unit = plain;
      if (unit) number = fromSi(number, unit);
    }
    if (!unit || !Number.isFinite(number)) return misread;
    // Fifteen digits: 0.1 + 0.2 is 0.3 to whoever typed it.
    const rounded = Number(number.toPrecision(15));
    const canonical = kind === 'duration' ? clockText(rounded) : `${rounded}${unit.symbol}`;
    const result = parseQuantity(canonical, kind, { ...options, where: 'link' });
    if (!result.ok) return result.reason === 'range' ? result : misread;
    const shown =
      kind === 'duration' ? canonical : withUnit(String(Number(rounded.toPrecision(6))).replace('-', '−'), unit);
    return { ...result, note: `${text.trim()} = ${shown}` };
  } catch {
    return misread;
  }
}

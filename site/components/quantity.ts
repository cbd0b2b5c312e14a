import {
  findUnit,
  formatNumber,
  formatRange,
  fromSi,
  type Kind,
  parseQuantity,
  SPACE,
  type System,
  shownUnit,
  toSi,
} from '../../calculators/quantities/index.ts';
import { type CalculatorName, defaultOf, parameterOf } from '../../calculators/scenario/vocabulary.ts';

/** A quantity of the prose: typed (`of`), the default of a calculator's field (`default`), or any value of the code (`si`). */
export interface QuantityProps {
  /** As typed: "235 m", "20 mph", "30 to 50 N·m". */
  of?: string;
  /** Name of a parameter of `calculators/scenario/schema.ts`, whose default is printed: "gain". */
  default?: string;
  /** Whose default; the climb-time calculator's unless told. */
  calculator?: CalculatorName;
  /** From 1, where every bike or control run has a default of its own. */
  bike?: number;
  /** SI value; needs `kind`. */
  si?: number;
  /** Guessed from the unit or the parameter; a length in m or ft counts as a height unless told. */
  kind?: Kind;
  /** Half-width of a range, SI: "0.45 ± 0.10 m²". */
  within?: number;
  /** Exactly so many decimals, of the converted number alone where the other is typed. */
  digits?: number;
  /** Both unless told; "both" prints one where both systems use the same unit. */
  units?: System | 'both';
}

/** What a unit of the prose measures, and which readers think in it. */
const unitFacts: Readonly<Record<string, readonly [Kind, System]>> = {
  m: ['height', 'metric'],
  ft: ['height', 'us'],
  mm: ['length', 'metric'],
  in: ['length', 'us'],
  km: ['distance', 'metric'],
  mi: ['distance', 'us'],
  kg: ['mass', 'metric'],
  lb: ['mass', 'us'],
  'km/h': ['speed', 'metric'],
  'm/s': ['wind', 'metric'],
  mph: ['speed', 'us'],
  N·m: ['torque', 'metric'],
  'lb-ft': ['torque', 'us'],
  N: ['force', 'metric'],
  lbf: ['force', 'us'],
  'Wh/km': ['energy-per-distance', 'metric'],
  'Wh/mi': ['energy-per-distance', 'us'],
  '°C': ['temperature', 'metric'],
  '°F': ['temperature', 'us'],
};

/** How far a converted number may be from the exact one before it gets another decimal. */
const ROUGHLY = 0.02;
const EXACTLY = 1e-9;

/** The fewest decimals that keep every value within the tolerance; where none do, the closest. Undefined: the usual ones of the kind. */
function fewestDecimals(values: readonly number[], kind: Kind, system: System, tolerance: number): number | undefined {
  const manners = [0, 1, undefined];
  const errors = manners.map((digits) =>
    Math.max(
      ...values.map((si) => {
        const read = parseQuantity(formatRange(si, si, kind, system, { digits }), kind, {
          unit: shownUnit(kind, system).symbol,
          where: 'field',
        });
        return read.ok && read.si !== null ? Math.abs(read.si - si) / Math.abs(si || 1) : Infinity;
      }),
    ),
  );
  const enough = errors.findIndex((error) => error <= tolerance);
  return manners[enough === -1 ? errors.indexOf(Math.min(...errors)) : enough];
}

/** From a low to a high SI value in a system; the same twice for one value. */
function inSystem(
  [low, high]: readonly [number, number],
  kind: Kind,
  system: System,
  tolerance: number,
  fixed?: number,
) {
  const digits = fixed ?? fewestDecimals([low, high], kind, system, tolerance);
  return formatRange(low, high, kind, system, { digits });
}

/** A quantity as typed, its SI values, what it measures and in which system. */
function readTyped(typed: string, told?: Kind) {
  const [, from = '', to, unit = ''] = /^([−\d. ]+?)(?: to ([−\d. ]+?))? ?([^−\d. ].*)$/.exec(typed) ?? [];
  const [guess, system] = unitFacts[unit] ?? [];
  const kind = told ?? guess;
  const known = kind && findUnit(unit, kind);
  if (!known || !system) throw new Error(`“${typed}” is no quantity whose unit has a counterpart.`);
  const siOf = (number: string): number => toSi(Number(number.replaceAll(' ', '').replace('−', '-')), known);
  const low = siOf(from);
  const high = to === undefined ? low : siOf(to);
  if (!Number.isFinite(low + high)) throw new Error(`“${typed}” holds no number.`);
  const text = `${typed
    .slice(0, -unit.length)
    .trim()
    .replace(/(?<=\d) (?=\d)/g, SPACE)}${SPACE}${unit}`;
  return { text, values: [low, high] as const, kind, system };
}

/** SI value and kind of a default or of a value of the code; a string for a name or the word "none". */
function readGiven(props: QuantityProps): string | { si: number; kind: Kind } {
  const { default: name, calculator = 'climb-time', bike = 1, si, kind } = props;
  if (name !== undefined) {
    const value = defaultOf(calculator, name, bike - 1);
    if (value === undefined) throw new Error(`“${name}” of ${calculator} has no default.`);
    return typeof value === 'number' ? { si: value, kind: kind ?? parameterOf(name).kind } : (value ?? 'none');
  }
  if (si === undefined || kind === undefined) throw new Error('A quantity needs `of`, `default`, or `si` with `kind`.');
  return { si, kind };
}

/**
 * A quantity as the prose prints it, in both systems where they differ: "235 m (771 ft)", "20 mph (32 km/h)". What is typed stands
 * first and as typed; the conversion has as few decimals as keep it within 2 %, a value of the code as few as say it exactly.
 * @throws Error for a unit without a counterpart, a parameter without a default, or a quantity that is none: mistakes in our own pages
 */
export function quantityText(props: QuantityProps): string {
  const { of: typed, within, digits, units = 'both' } = props;
  const both = (first: string, second: string): string => (first === second ? first : `${first} (${second})`);
  if (typed !== undefined) {
    const { text, values, kind, system } = readTyped(typed, props.kind);
    if (units === system) return text;
    const other = system === 'metric' ? 'us' : 'metric';
    const converted = inSystem(values, kind, other, ROUGHLY, digits);
    return units === other ? converted : both(text, converted);
  }
  const given = readGiven(props);
  if (typeof given === 'string') return given;
  const { si, kind } = given;
  if (within !== undefined) {
    const unit = shownUnit(kind, 'metric');
    const [value, half] = [si, within].map((each) => formatNumber(fromSi(each, unit), digits));
    return `${value} ± ${half}${unit.text && SPACE}${unit.text}`;
  }
  if (units !== 'both') return inSystem([si, si], kind, units, EXACTLY, digits);
  return both(inSystem([si, si], kind, 'metric', EXACTLY, digits), inSystem([si, si], kind, 'us', ROUGHLY, digits));
}

import type { Kind } from '../quantities/index.ts';

/** Names a calculator, and its page: see `pathOf`. */
export type CalculatorName =
  | 'climb-time'
  | 'side-by-side'
  | 'bigger-hill'
  | 'power-to-weight'
  | 'torque-at-cadence'
  | 'gears-and-restart'
  | 'holding-peak-power'
  | 'watt-hours'
  | 'keep-up'
  | 'what-changes-it'
  | 'your-hill'
  | 'plan';

/** Address of a calculator's page on the site. Planning a test is one of the tools for testers, and stands with them. */
export const pathOf = (name: CalculatorName): string => `/${name === 'plan' ? 'test' : 'calculators'}/${name}/`;

export type Group =
  | 'hill'
  | 'rider'
  | 'bike'
  | 'conditions'
  | 'control'
  | 'target'
  | 'companion'
  | 'gears'
  | 'heat'
  | 'battery'
  | 'change'
  | 'test'
  | 'schedule';

/**
 * One input of the public vocabulary. `min` and `max` are SI (grade as tan, percent as a ratio, temperature in °C, cadence in rpm).
 * The tables in `parameters/` are the only place that knows names, units, ranges and wording: links, fields, `/reference/links/` and prose
 * read them. What the links page says of each stands in `meanings.ts`, which readers of a calculator need not load.
 */
export interface Parameter {
  name: string;
  group: Group;
  kind: Kind;
  min: number;
  max: number;
  /** a link carries one value per bike or per control run, separated by commas */
  list?: 'bike' | 'control';
  /** the word `none` is a value: no motor, no assist limit, no control run */
  allowNone?: boolean;
  /** a text must be a time of the day, several times, a hill in pieces, or one of these words */
  form?: 'clock' | 'times' | 'profile' | readonly string[];
  /** beside the field */
  label: string;
  /** a sentence stands below the field: see `hints.ts` */
  hinted?: true;
  /** values that one tap sets; without a value, the default */
  choices?: readonly { label: string; text?: string }[];
}

/** Values of one version of the vocabulary, SI. A list has one default per column, the last one serving all further columns; null is the word `none`. Absent: no default, the field starts empty. */
export type Defaults = Readonly<Record<string, number | string | null | readonly (number | string | null)[]>>;

export interface Section {
  group: Group;
  /** inputs in the order of the form */
  names: readonly string[];
  /** those under the fold */
  folded?: readonly string[];
  /** what stands over it, where that is not the group's usual name */
  legend?: string;
}

/** A way to another calculator. */
export interface Way {
  to: CalculatorName;
  words: string;
  /** as in that calculator's example */
  bikes: number;
  /** how the hill is taken there: in pieces, in pieces or whole, or in pieces as the other hill; absent: whole, by its length and height */
  hill?: 'pieces' | 'either' | 'target';
}

export interface Calculator {
  name: CalculatorName;
  title: string;
  /** tables of the vocabulary that it takes its inputs from, in the order of its links */
  parameters: readonly (readonly Parameter[])[];
  /** labels that say more here than the vocabulary's own */
  labels?: Readonly<Record<string, string>>;
  /** the form */
  sections: readonly Section[];
  /** what stands under its fold, as in "More: battery, air, drive" */
  fold: string;
  /** how many bikes it takes, and how many its example has */
  bikes: { min: number; max: number; example: number };
  /** what one of them is called where that is not a bike */
  one?: string;
  /** control runs of the example; 0 to 6 can be given where there is a control section */
  controls: number;
  /** by version of the vocabulary: a link without `v` means version 1 for ever */
  defaults: Readonly<Record<number, Defaults>>;
  /** where one goes from here with the same hill and rider */
  onward: readonly Way[];
}

export const VERSION = 1;

/*
 * A page loads the descriptions of its own calculators only, so this list fills as they are described. `vocabulary.ts` loads all.
 */
const described = new Map<CalculatorName, Calculator>();
const known = new Map<string, Parameter>();

/** Adds a calculator to those that this page knows. */
export function defineCalculator(calculator: Calculator): Calculator {
  described.set(calculator.name, calculator);
  for (const parameter of calculator.parameters.flat()) known.set(parameter.name, parameter);
  return calculator;
}

/** The description of a calculator. @throws RangeError when it was not loaded: a mistake in our own code. */
export function calculatorOf(name: CalculatorName): Calculator {
  const calculator = described.get(name);
  if (!calculator) throw new RangeError(`The calculator “${name}” is not described yet.`);
  return calculator;
}

/** The parameter of that name. @throws RangeError for a name that the vocabulary does not have: a mistake in our own code. */
export function parameterOf(name: string): Parameter {
  const parameter = known.get(name);
  if (!parameter) throw new RangeError(`The vocabulary has no parameter “${name}”.`);
  return parameter;
}

/** What a link lists of a parameter; undefined where it is one value, or where no calculator of this page reads it. */
export const listOf = (name: string): Parameter['list'] => known.get(name)?.list;

/** What stands beside a field of this calculator. */
export function labelOf(calculator: CalculatorName, name: string): string {
  return calculatorOf(calculator).labels?.[name] ?? parameterOf(name).label;
}

/** Every parameter that a calculator reads. */
export function namesOf(calculator: CalculatorName): string[] {
  return calculatorOf(calculator).sections.flatMap((section) => [...section.names, ...(section.folded ?? [])]);
}

/** Default of a parameter in a column (from 0), SI; undefined where the field starts empty. */
export function defaultOf(
  calculator: CalculatorName,
  name: string,
  column = 0,
  version = VERSION,
): number | string | null | undefined {
  const value = calculatorOf(calculator).defaults[version]?.[name];
  return Array.isArray(value) ? (value[column] ?? value.at(-1)) : (value as number | string | null | undefined);
}

import {
  clockText,
  fieldText,
  findUnit,
  formatQuantity,
  fromSi,
  kinds,
  type Parsed,
  type ParseOptions,
  parseQuantity,
  type System,
  shownUnit,
} from '../quantities/index.ts';
import {
  type CalculatorName,
  calculators,
  defaultOf,
  namesOf,
  type Parameter,
  parameterOf,
  VERSION,
} from './schema.ts';

/** A value in SI; null is the word `none`; undefined is nothing at all. */
export type Value = number | string | null | undefined;

/** One field that somebody has filled in, by hand or by link. Fields nobody touched have no cell. */
export interface Cell {
  /** as typed: never changed behind the reader's back */
  text: string;
  /** the last valid value, and the same for a link; both undefined when there was none (the default serves) */
  value?: number | string | null;
  canonical?: string;
  /** why the text cannot be used */
  problem?: string;
  note?: string;
}

/** Everything a calculator is set to. Immutable: each change makes a new one. */
export interface Scenario {
  calculator: CalculatorName;
  version: number;
  system: System;
  /** the reader used the units switch, so links carry `units` */
  systemChosen: boolean;
  bikes: number;
  controls: number;
  cells: Readonly<Record<string, Cell>>;
  /** parameters of a link that this calculator does not read; handed on unchanged */
  kept: readonly (readonly [string, string])[];
  /** sentences about the link as a whole */
  notes: readonly string[];
}

/** The calculator's own example: nothing touched. */
export function exampleOf(calculator: CalculatorName, system: System = 'metric'): Scenario {
  const { bikes, controls } = calculators[calculator];
  return {
    calculator,
    version: VERSION,
    system,
    systemChosen: false,
    bikes: bikes.example,
    controls,
    cells: {},
    kept: [],
    notes: [],
  };
}

export const MAX_BIKES = 6;
export const MAX_CONTROLS = 6;

const keyOf = (name: string, column: number): string => (parameterOf(name).list ? `${name}.${column}` : name);

export function cellOf(scenario: Scenario, name: string, column = 0): Cell | undefined {
  return scenario.cells[keyOf(name, column)];
}

/** Somebody gave this value: it was typed or linked, and could be read at least once. */
export function isGiven(scenario: Scenario, name: string, column = 0): boolean {
  return cellOf(scenario, name, column)?.value !== undefined;
}

/** The value to compute with: what was given, else the default. */
export function inputOf(scenario: Scenario, name: string, column = 0): Value {
  const given = cellOf(scenario, name, column)?.value;
  return given !== undefined ? given : defaultOf(scenario.calculator, name, column, scenario.version);
}

/** A value that always has a default and is never `none`. @throws RangeError when that is not so: a mistake in our own code. */
export function numberOf(scenario: Scenario, name: string, column = 0): number {
  const value = inputOf(scenario, name, column);
  if (typeof value !== 'number') throw new RangeError(`“${name}” has no number.`);
  return value;
}

/** Name of a bike for people. */
export function bikeName(scenario: Scenario, column: number): string {
  const name = inputOf(scenario, 'name', column);
  return typeof name === 'string' && name !== '' ? name : `Bike ${column + 1}`;
}

const TEXT_LIMIT = 40;

function parseText(text: string): Parsed {
  // control characters and half characters (of a text cut in the middle) have no place in a name and would break a link
  const clean = [...text]
    .filter((letter) => letter >= ' ' && letter !== '\u007f' && !/^[\ud800-\udfff]$/.test(letter))
    .join('')
    .trim();
  if (clean === '') return { ok: false, reason: 'empty', message: '' };
  if ([...clean].length > TEXT_LIMIT)
    return {
      ok: false,
      reason: 'range',
      message: `A name has at most ${TEXT_LIMIT} characters; this one has ${[...clean].length}.`,
    };
  return { ok: true, si: null, canonical: clean };
}

/** How a text of this parameter is to be read: a plain number has the field's shown unit, or in a link the plain one. */
export function parseOptions(parameter: Parameter, where: 'field' | 'link', system: System): ParseOptions {
  const { kind, min, max, label, allowNone } = parameter;
  return {
    unit: where === 'field' ? shownUnit(kind, system).symbol : kinds[kind].plain,
    where,
    allowNone,
    min,
    max,
    label,
  };
}

/** Reads what somebody typed into a field, or what a link holds. */
export function readText(parameter: Parameter, text: string, where: 'field' | 'link', system: System): Parsed {
  return parameter.kind === 'text'
    ? parseText(text)
    : parseQuantity(text, parameter.kind, parseOptions(parameter, where, system));
}

/** The cell after `text` was entered: a text that cannot be used keeps the last valid value. */
export function enter(before: Cell | undefined, parameter: Parameter, text: string, parsed: Parsed): Cell {
  if (parsed.ok) {
    const value = parameter.kind === 'text' ? parsed.canonical : parsed.si;
    return { text, value, canonical: parsed.canonical, ...(parsed.note ? { note: parsed.note } : {}) };
  }
  if (parsed.reason === 'empty') return { text };
  const last =
    before?.value !== undefined && before.canonical !== undefined
      ? { value: before.value, canonical: before.canonical }
      : {};
  return { text, ...last, problem: parsed.message };
}

/** The scenario after a reader typed into a field. `parsed` may come from elsewhere, such as an expression that was evaluated. */
export function edit(scenario: Scenario, name: string, column: number, text: string, parsed?: Parsed): Scenario {
  const parameter = parameterOf(name);
  const key = keyOf(name, column);
  const cell = enter(
    scenario.cells[key],
    parameter,
    text,
    parsed ?? readText(parameter, text, 'field', scenario.system),
  );
  return { ...scenario, cells: { ...scenario.cells, [key]: cell } };
}

/** The scenario after the reader used the units switch: fields are shown anew, values stay to the last digit. */
export function switchSystem(scenario: Scenario, system: System): Scenario {
  const cells = Object.fromEntries(
    Object.entries(scenario.cells).map(([key, cell]) => {
      const { kind } = parameterOf(key.replace(/\.\d+$/, ''));
      const shown =
        typeof cell.value === 'number' && !cell.problem ? { ...cell, text: shortText(cell.value, kind, system) } : cell;
      return [key, shown];
    }),
  );
  return { ...scenario, system, systemChosen: true, cells };
}

/** What a field shows. */
export interface FieldState {
  text: string;
  /** what an empty field stands for */
  placeholder: string;
  /** unit that a plain number in this field has; empty once the text names its own */
  unit: string;
  problem?: string;
  note?: string;
}

/** What a field shows: the text as typed, or the default in the reader's units. */
export function fieldOf(scenario: Scenario, name: string, column = 0): FieldState {
  const { kind } = parameterOf(name);
  const cell = cellOf(scenario, name, column);
  const value = defaultOf(scenario.calculator, name, column, scenario.version);
  const standard = textOf(value, kind, scenario.system);
  const text = cell ? cell.text : standard;
  const unit = kind === 'text' || kind === 'duration' || namesUnit(text) ? '' : shownUnit(kind, scenario.system).text;
  return {
    text,
    placeholder: standard,
    unit,
    ...(cell?.problem ? { problem: standIn(scenario, name, column, cell.problem) } : {}),
    ...(cell?.note ? { note: cell.note } : {}),
  };
}

const namesUnit = (text: string): boolean => /[a-z%°′″'"²]/i.test(text.replace(/\d[eE][+-]?\d/, ''));

/** Four figures are enough to show a value that is kept in full elsewhere; three decimals would look like thousands. */
function shortText(si: number, kind: Parameter['kind'], system: System): string {
  const text = fieldText(si, kind, system);
  if (kind === 'duration' || !text.includes('.')) return text;
  const short = Number(text).toPrecision(4);
  return String(Number(/^-?[1-9]\d*\.\d{3}$/.test(short) ? Number(text).toFixed(2) : short));
}

function textOf(value: Value, kind: Parameter['kind'], system: System): string {
  if (value === undefined) return '';
  if (value === null) return 'none';
  return typeof value === 'number' ? shortText(value, kind, system) : value;
}

/** The problem, and what is computed with meanwhile. */
function standIn(scenario: Scenario, name: string, column: number, problem: string): string {
  const value = inputOf(scenario, name, column);
  if (value === undefined) return problem;
  return `${problem} Until then the answer uses ${valueText(scenario, name, column)}.`;
}

/** A value in the reader's units, for a sentence or the list that is printed. */
export function valueText(scenario: Scenario, name: string, column = 0): string {
  const { kind } = parameterOf(name);
  const value = inputOf(scenario, name, column);
  if (value === undefined) return '–';
  if (value === null) return 'none';
  return typeof value === 'number' ? formatQuantity(value, kind, scenario.system) : value;
}

/** The fields that hold something unusable now, in the order of the form. */
export function problemsOf(scenario: Scenario): { name: string; column: number; problem: string }[] {
  return namesOf(scenario.calculator).flatMap((name) =>
    columnsOf(scenario, name).flatMap((column) => {
      const problem = cellOf(scenario, name, column)?.problem;
      return problem ? [{ name, column, problem: standIn(scenario, name, column, problem) }] : [];
    }),
  );
}

/** Columns that a parameter has now: one for a single value. */
export function columnsOf(scenario: Scenario, name: string): number[] {
  const { list } = parameterOf(name);
  const count = list === 'bike' ? scenario.bikes : list === 'control' ? scenario.controls : 1;
  return Array.from({ length: count }, (_, column) => column);
}

/** A cell that holds what the column held before, so that moving it to another column changes nothing. */
function settled(scenario: Scenario, name: string, column: number): Cell | undefined {
  const cell = cellOf(scenario, name, column);
  if (cell?.value !== undefined) return cell;
  const { kind } = parameterOf(name);
  const value = defaultOf(scenario.calculator, name, column, scenario.version);
  if (value === undefined) return cell;
  const parameter = parameterOf(name);
  const canonical = value === null ? 'none' : typeof value === 'number' ? plainText(value, kind) : value;
  return {
    ...enter(cell, parameter, canonical, readText(parameter, canonical, 'link', scenario.system)),
    text: cell?.text || textOf(value, kind, scenario.system),
    ...(cell?.problem ? { problem: cell.problem } : {}),
  };
}

/** A value in the plain unit of links, a time as m:ss. Twelve digits: what division leaves behind is not meant. */
export function plainText(si: number, kind: Parameter['kind']): string {
  if (kind === 'duration') return clockText(si);
  const { plain } = kinds[kind];
  const unit = findUnit(plain, kind);
  return `${Number((unit ? fromSi(si, unit) : si).toPrecision(12))}${plain === '%' ? '' : plain}`;
}

function withColumns(scenario: Scenario, list: 'bike' | 'control', columns: readonly number[]): Scenario {
  const cells: Record<string, Cell> = {};
  for (const [key, cell] of Object.entries(scenario.cells))
    if (parameterOf(key.replace(/\.\d+$/, '')).list !== list) cells[key] = cell;
  for (const name of namesOf(scenario.calculator)) {
    if (parameterOf(name).list !== list) continue;
    columns.forEach((from, to) => {
      const cell = from === to ? cellOf(scenario, name, from) : settled(scenario, name, from);
      if (cell) cells[`${name}.${to}`] = cell;
    });
  }
  return { ...scenario, cells, [list === 'bike' ? 'bikes' : 'controls']: columns.length };
}

/** Takes a bike or a control run away; the others keep their values. */
export function removeColumn(scenario: Scenario, list: 'bike' | 'control', column: number): Scenario {
  const count = list === 'bike' ? scenario.bikes : scenario.controls;
  return withColumns(
    scenario,
    list,
    Array.from({ length: count }, (_, i) => i).filter((i) => i !== column),
  );
}

/** Adds a bike or a control run, set to the defaults of its column. */
export function addColumn(scenario: Scenario, list: 'bike' | 'control'): Scenario {
  return list === 'bike'
    ? { ...scenario, bikes: scenario.bikes + 1 }
    : { ...scenario, controls: scenario.controls + 1 };
}

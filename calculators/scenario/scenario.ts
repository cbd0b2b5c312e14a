import { fieldText, formatQuantity, type System, shownUnit } from '../quantities/index.ts';
import { profileInWords } from './profile-words.ts';
import {
  type CalculatorName,
  calculatorOf,
  defaultOf,
  listOf,
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
export function exampleOf(calculator: CalculatorName, system: System = 'metric', version = VERSION): Scenario {
  const { bikes, controls } = calculatorOf(calculator);
  return {
    calculator,
    version,
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

/** Key of a cell. */
export const keyOf = (name: string, column: number): string => (listOf(name) ? `${name}.${column}` : name);

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

/** A number where there is one: undefined where the field is empty without a default, or says none. */
export function optionalOf(scenario: Scenario, name: string, column = 0): number | undefined {
  const value = inputOf(scenario, name, column);
  return typeof value === 'number' ? value : undefined;
}

/** Name of a bike for people. */
export function bikeName(scenario: Scenario, column: number): string {
  const name = inputOf(scenario, 'name', column);
  return typeof name === 'string' && name !== '' ? name : `Bike ${column + 1}`;
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

/** Another input was given that counts in place of this one's default. */
export function isOverruled(scenario: Scenario, name: string): boolean {
  const counts = (other: string): boolean => !isGiven(scenario, name) && typeof inputOf(scenario, other) === 'number';
  const hasProfile = (other: string): boolean => typeof inputOf(scenario, other) === 'string';
  if (name === 'distance') return !isGiven(scenario, name) && hasProfile('profile');
  if (name === 'gain') return counts('grade') || (!isGiven(scenario, name) && hasProfile('profile'));
  if (name === 'target-gain')
    return counts('target-distance') || (!isGiven(scenario, name) && hasProfile('target-profile'));
  if (name === 'battery') return ['volts', 'amp-hours'].every((each) => typeof inputOf(scenario, each) === 'number');
  if (name !== 'rolling' || scenario.calculator !== 'bigger-hill') return false;
  return columnsOf(scenario, 'control-time').some((run) => typeof inputOf(scenario, 'control-time', run) === 'number');
}

/** Inputs that say more about others, and count for nothing while these are empty. */
const SAYS_MORE_OF: Readonly<Record<string, readonly string[]>> = {
  'endurance-work': ['endurance'],
  'warm-up': ['continuous'],
  cadence: ['torque'],
  ring: ['torque', 'continuous'],
  sprocket: ['torque', 'continuous'],
  wheel: ['torque', 'continuous'],
};

/** The inputs that a hill in pieces beats, whether they are given or not. */
const BEATEN_BY_PIECES: Readonly<Record<string, string>> = {
  distance: 'profile',
  gain: 'profile',
  grade: 'profile',
  'target-distance': 'target-profile',
  'target-gain': 'target-profile',
  'target-grade': 'target-profile',
};

/** An input that the answer did not use: another one counted in its place, or it says more about one that is empty. */
export function isUnused(scenario: Scenario, name: string): boolean {
  const counts = (other: string): boolean =>
    columnsOf(scenario, other).some((column) => typeof inputOf(scenario, other, column) === 'number');
  // with a lowest gear, the cadence decides how hot a motor gets too
  const others = SAYS_MORE_OF[name === 'cadence' && namesOf(scenario.calculator).includes('ring') ? 'ring' : name];
  const pieces = BEATEN_BY_PIECES[name];
  return (
    isOverruled(scenario, name) ||
    (pieces !== undefined && typeof inputOf(scenario, pieces) === 'string') ||
    (others !== undefined && !others.some(counts))
  );
}

/** What a field shows: the text as typed, or the default in the reader's units. */
export function fieldOf(scenario: Scenario, name: string, column = 0): FieldState {
  const { kind } = parameterOf(name);
  const cell = cellOf(scenario, name, column);
  const beaten = name !== 'rolling' && isOverruled(scenario, name);
  const standard = beaten
    ? ''
    : textOf(defaultOf(scenario.calculator, name, column, scenario.version), kind, scenario.system);
  const text = cell ? cell.text : standard;
  const unit = kind === 'text' || kind === 'duration' || namesUnit(text) ? '' : shownUnit(kind, scenario.system).text;
  const placeholder = standard || textOf(inherited(scenario, name), kind, scenario.system);
  const empty = text === '' && standard !== '' ? `Left empty, ${valueText(scenario, name, column)} counts.` : undefined;
  const note = cell?.note ?? empty;
  return {
    text,
    placeholder,
    unit,
    ...(cell?.problem ? { problem: standIn(scenario, name, column, cell.problem) } : {}),
    ...(note ? { note } : {}),
  };
}

/** What an empty field of the other hill, or of a control run, stands for: the measured climb's. */
function inherited(scenario: Scenario, name: string): Value {
  const from = name.replace(/^(target|control)-/, '');
  return from !== name && ['rider', 'power', 'altitude', 'temperature', 'wind'].includes(from)
    ? inputOf(scenario, from)
    : undefined;
}

const namesUnit = (text: string): boolean => /[a-z%°′″'"²]/i.test(text.replace(/\d[eE][+-]?\d/, ''));

/** A value that is kept in full elsewhere, short enough to read: whole from a hundred on, else three figures. */
export function shortText(si: number, kind: Parameter['kind'], system: System): string {
  const text = fieldText(si, kind, system);
  if (kind === 'duration' || !text.includes('.')) return text;
  const value = Number(text);
  return String(Math.abs(value) >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}

/** A value as an untouched field shows it. */
export function textOf(value: Value, kind: Parameter['kind'], system: System): string {
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
  const { kind, form } = parameterOf(name);
  const value = inputOf(scenario, name, column);
  if (value === undefined) return '–';
  if (value === null) return 'none';
  if (typeof value === 'number') return formatQuantity(value, kind, scenario.system, { trim: true });
  return form === 'profile' ? profileInWords(value, scenario.system) : value;
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
  const list = listOf(name);
  const count = list === 'bike' ? scenario.bikes : list === 'control' ? scenario.controls : 1;
  return Array.from({ length: count }, (_, column) => column);
}

import {
  clockText,
  findUnit,
  fromSi,
  kinds,
  type Parsed,
  type ParseOptions,
  parseQuantity,
  type System,
  shownUnit,
} from '../quantities/index.ts';
import { readForm } from './forms.ts';
import { wholeOf } from './profile-words.ts';
import { type Cell, cellOf, inputOf, isGiven, keyOf, type Scenario, shortText, textOf } from './scenario.ts';
import { defaultOf, namesOf, type Parameter, parameterOf } from './schema.ts';

/*
 * Everything that makes a new scenario from what somebody typed or pressed. A page that is only read does not load it.
 */

/** What reading a text needs to know of an input. */
export type Readable = Pick<Parameter, 'kind' | 'min' | 'max' | 'label' | 'allowNone' | 'form'>;

function parseText(text: string, { label, max }: Readable): Parsed {
  // control characters and half characters (of a text cut in the middle) have no place in a name and would break a link
  const clean = [...text]
    .filter((letter) => letter >= ' ' && letter !== '\u007f' && !/^[\ud800-\udfff]$/.test(letter))
    .join('')
    .trim();
  if (clean === '') return { ok: false, reason: 'empty', message: '' };
  if ([...clean].length > max)
    return {
      ok: false,
      reason: 'range',
      message: `A ${label.toLowerCase()} has at most ${max} characters; this one has ${[...clean].length}.`,
    };
  return { ok: true, si: null, canonical: clean };
}

/** How a text of this parameter is to be read: a plain number has the field's shown unit, or in a link the plain one. */
export function parseOptions(parameter: Readable, where: 'field' | 'link', system: System): ParseOptions {
  const { kind, min, max, label, allowNone } = parameter;
  return {
    unit: where === 'field' ? shownUnit(kind, system).symbol : kinds[kind].plain,
    where,
    allowNone,
    min,
    max,
    label,
    whole: kind === 'count',
  };
}

/** Reads what somebody typed into a field, or what a link holds. */
export function readText(parameter: Readable, text: string, where: 'field' | 'link', system: System): Parsed {
  if (parameter.form) return readForm(text, parameter);
  return parameter.kind === 'text'
    ? parseText(text, parameter)
    : parseQuantity(text, parameter.kind, parseOptions(parameter, where, system));
}

/** The cell after `text` was entered: a text that cannot be used keeps the last valid value. */
export function enter(before: Cell | undefined, parameter: Parameter, text: string, parsed: Parsed): Cell {
  if (parsed.ok) {
    const value = parameter.kind === 'text' ? parsed.canonical : parsed.si;
    return { text, value, canonical: parsed.canonical, ...(parsed.note ? { note: parsed.note } : {}) };
  }
  if (parsed.reason === 'empty') return { text };
  // "1,20" on the way to "1,200" was never meant: a text that is asked about takes the value of its own beginning with it
  const isBeginning = parsed.reason === 'ask' && before !== undefined && text.startsWith(before.text.trim());
  const last =
    !isBeginning && before?.value !== undefined && before.canonical !== undefined
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

/** The scenario with a field as nobody touched it. */
export function clear(scenario: Scenario, name: string, column: number): Scenario {
  const { [keyOf(name, column)]: _, ...cells } = scenario.cells;
  return { ...scenario, cells };
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

/** What a link would say of a default; undefined where there is none. */
export function defaultText(scenario: Scenario, name: string, column: number): string | undefined {
  const value = defaultOf(scenario.calculator, name, column, scenario.version);
  if (value === null) return 'none';
  return typeof value === 'number' ? plainText(value, parameterOf(name).kind) : value;
}

/** A cell that says a value, as a link would. */
function stated(scenario: Scenario, name: string, si: number): Cell {
  const parameter = parameterOf(name);
  const canonical = plainText(si, parameter.kind);
  return {
    ...enter(undefined, parameter, canonical, readText(parameter, canonical, 'link', scenario.system)),
    text: textOf(si, parameter.kind, scenario.system),
  };
}

/** The scenario with a hill as long and as high as its pieces in their place. What was said of length, height or grade before counts again. */
export function asWhole(scenario: Scenario, pieces: 'profile' | 'target-profile'): Scenario {
  const text = inputOf(scenario, pieces);
  if (typeof text !== 'string') return scenario;
  const { distance, gain } = wholeOf(text);
  const [length, height, grade] = ['distance', 'gain', 'grade'].map((name) => pieces.replace('profile', name)) as [
    string,
    string,
    string,
  ];
  const cells = { ...clear(scenario, pieces, 0).cells };
  if (!isGiven(scenario, length)) cells[length] = stated(scenario, length, distance);
  if (!isGiven(scenario, height) && !isGiven(scenario, grade)) {
    // no field has a height below zero
    if (gain >= 0) cells[height] = stated(scenario, height, gain);
    else cells[grade] = stated(scenario, grade, gain / Math.sqrt(distance * distance - gain * gain));
  }
  return { ...scenario, cells };
}

/** A cell that holds what the column held before, so that moving it to another column changes nothing. */
function settled(scenario: Scenario, name: string, column: number): Cell | undefined {
  const cell = cellOf(scenario, name, column);
  if (cell?.value !== undefined) return cell;
  const value = defaultOf(scenario.calculator, name, column, scenario.version);
  const canonical = defaultText(scenario, name, column);
  if (canonical === undefined) return cell;
  const parameter = parameterOf(name);
  return {
    ...enter(cell, parameter, canonical, readText(parameter, canonical, 'link', scenario.system)),
    text: cell?.text || textOf(value, parameter.kind, scenario.system),
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

/** Adds a bike or a control run, set to the defaults of its column. A bike says so: nobody typed them. */
export function addColumn(scenario: Scenario, list: 'bike' | 'control'): Scenario {
  if (list === 'control') return { ...scenario, controls: scenario.controls + 1 };
  const { bikes } = scenario;
  const name = settled(scenario, 'name', bikes);
  const cells = name
    ? { ...scenario.cells, [keyOf('name', bikes)]: { ...name, note: 'Added with the example’s values.' } }
    : scenario.cells;
  return { ...scenario, cells, bikes: bikes + 1 };
}

import type { System } from '../quantities/index.ts';
import { enter, plainText, readText, switchSystem } from './editing.ts';
import {
  type Cell,
  cellOf,
  columnsOf,
  exampleOf,
  isGiven,
  MAX_BIKES,
  MAX_CONTROLS,
  type Scenario,
} from './scenario.ts';
import {
  type CalculatorName,
  calculatorOf,
  defaultOf,
  namesOf,
  type Parameter,
  parameterOf,
  VERSION,
} from './schema.ts';
import { CAME_WHOLE, cameWhole } from './unread.ts';

/** Splits a list at its commas; a backslash keeps the comma or backslash after it. */
export function splitList(text: string): string[] {
  const items: string[] = [];
  let item = '';
  for (let i = 0; i < text.length; i++) {
    if (text[i] === ',') {
      items.push(item);
      item = '';
    } else {
      if (text[i] === '\\' && i + 1 < text.length) i++;
      item += text.charAt(i);
    }
  }
  return [...items, item];
}

const escapeItem = (text: string): string => text.replace(/[\\,]/g, '\\$&');

/** Percent-encoding of the contract: `,` and `:` literal, space as `+`. */
function encode(text: string): string {
  return encodeURIComponent(text).replace(/%2C/g, ',').replace(/%3A/g, ':').replace(/%20/g, '+');
}

/**
 * Reads the query of an address. Nothing is refused: what cannot be read computes with its default and says so beside its field.
 * @param query with or without the leading question mark
 * @param remembered units that this reader chose before, used when the link has none
 */
export function readLink(calculator: CalculatorName, query: string, remembered: System = 'metric'): Scenario {
  const own = new Set(namesOf(calculator));
  const { bikes, controls } = calculatorOf(calculator);
  const notes: string[] = [];
  const kept: [string, string][] = [];
  const texts = new Map<string, string>();
  for (const [name, text] of new URLSearchParams(query)) {
    if (!own.has(name) && name !== 'units' && name !== 'v') kept.push([name, text]);
    else if (texts.has(name)) notes.push(`The link gives “${name}” twice; the first one counts.`);
    else texts.set(name, text);
  }
  const units = texts.get('units')?.toLowerCase();
  const linked: System | undefined = units === 'metric' || units === 'us' ? units : undefined;
  if (units !== undefined && !linked) notes.push('The link’s “units” is neither metric nor us.');
  const version = versionOf(calculator, texts, notes);

  const lists = new Map<string, string[]>();
  for (const name of own) {
    const text = texts.get(name);
    if (text !== undefined && parameterOf(name).list) lists.set(name, splitList(text));
  }
  const bikeCount = countBikes(lists, bikes, notes);
  const controlCount = countControls(lists, controls, notes);

  let scenario: Scenario = {
    ...exampleOf(calculator, linked ?? remembered, version),
    systemChosen: linked !== undefined,
    bikes: bikeCount,
    controls: controlCount,
  };
  const cells: Record<string, Cell> = {};
  for (const name of own) {
    const text = texts.get(name);
    if (text === undefined) continue;
    const parameter = parameterOf(name);
    if (!parameter.list) {
      cells[name] = read(parameter, text, scenario.system);
      continue;
    }
    const items = lists.get(name) ?? [];
    const columns = columnsOf(scenario, name).length;
    if (items.length > 1 && items.length < columns)
      notes.push(
        `The link gives ${items.length} values of “${name}” for ${columns} ${parameter.list === 'bike' ? 'bikes' : 'control runs'}; the rest are defaults.`,
      );
    for (let column = 0; column < columns; column++) {
      const item = items.length === 1 ? items[0] : items[column];
      if (item !== undefined && item.trim() !== '') cells[`${name}.${column}`] = read(parameter, item, scenario.system);
    }
  }
  scenario = { ...scenario, cells, kept, notes };
  if (cameWhole(scenario)) notes.push(CAME_WHOLE);
  // whoever sent units along saw every field in them
  return linked ? switchSystem(scenario, linked) : scenario;
}

/** What a page shows that came with a scenario of its own: a link that says nothing, or only units, leaves that as it is. */
export function openLink(came: Scenario, query: string, remembered: System): Scenario {
  const linked = readLink(came.calculator, query, remembered);
  const says = [...new URLSearchParams(query).keys()].some((name) => name !== 'units');
  if (says) return linked;
  return { ...switchSystem(came, linked.system), systemChosen: linked.systemChosen, notes: linked.notes };
}

function read(parameter: Parameter, text: string, system: System): Cell {
  const cell = enter(undefined, parameter, text.trim(), readText(parameter, text, 'link', system));
  // A plain number of a link has the plain unit, a plain number in a field the shown one: spell the unit out so that the field means what the link said.
  return cell.canonical !== undefined && parameter.kind !== 'text' ? { ...cell, text: spaced(cell.canonical) } : cell;
}

/** `37lb` as people write it: 37 lb. */
const spaced = (canonical: string): string => canonical.replace(/^(-?[\d.]+)([a-z])/i, '$1 $2');

/** Version of the vocabulary that a link was written in: the first where it says none, the newest where it says nothing at all. */
function versionOf(calculator: CalculatorName, texts: ReadonlyMap<string, string>, notes: string[]): number {
  const asked = texts.get('v');
  if (asked === undefined) return texts.size === 0 ? VERSION : 1;
  if (calculatorOf(calculator).defaults[Number(asked)]) return Number(asked);
  notes.push(
    `The link is of version “${asked.slice(0, 12)}”, which this page does not know; it was read as version ${VERSION}.`,
  );
  return VERSION;
}

/** The bikes of a link: as many as the longest list. A single value serves all bikes, but where one bike is enough, a single name, mass, motor or time is one bike. */
function countBikes(
  lists: ReadonlyMap<string, string[]>,
  bikes: { min: number; max: number; example: number },
  notes: string[],
): number {
  let longest = 0;
  let single = false;
  for (const [name, items] of lists) {
    if (parameterOf(name).list !== 'bike') continue;
    longest = Math.max(longest, items.length);
    if (items.length === 1 && ['name', 'bike', 'motor', 'time'].includes(name)) single = true;
  }
  if (bikes.max === 1) {
    if (longest > 1) notes.push('This calculator takes one bike: it uses the first of the link and keeps the rest.');
    return Math.max(1, Math.min(longest, MAX_BIKES));
  }
  if (longest > MAX_BIKES) notes.push(`The link has ${longest} bikes; the first ${MAX_BIKES} are used.`);
  if (longest > 1) return Math.min(longest, MAX_BIKES);
  return single && bikes.min === 1 ? 1 : bikes.example;
}

function countControls(lists: ReadonlyMap<string, string[]>, example: number, notes: string[]): number {
  let longest = 0;
  let given = false;
  for (const [name, items] of lists) {
    if (parameterOf(name).list !== 'control') continue;
    if (name === 'control-time' && items.length === 1 && items[0]?.trim().toLowerCase() === 'none') return 0;
    given = true;
    longest = Math.max(longest, items.length);
  }
  if (longest > MAX_CONTROLS) notes.push(`The link has ${longest} control runs; the first ${MAX_CONTROLS} are used.`);
  return given ? Math.min(longest, MAX_CONTROLS) : example;
}

/** Being given counts for these even where the value is the default: it beats another input, or narrows a range. */
const GIVEN_COUNTS: Readonly<Record<string, (scenario: Scenario) => boolean>> = {
  gain: (scenario) => isGiven(scenario, 'grade'),
  'target-gain': (scenario) => isGiven(scenario, 'target-distance'),
  rolling: () => true,
};

/** What a link must carry of a cell: its value where that is not the default, or where being given counts. */
function differs(scenario: Scenario, name: string, column: number): string | undefined {
  const cell = cellOf(scenario, name, column);
  if (cell?.value === undefined || cell.canonical === undefined) return undefined;
  // a calculator for one bike hands the others on: another calculator has other defaults for them
  const handedOn = parameterOf(name).list === 'bike' && isForOneBike(scenario) && scenario.bikes > 1;
  if (handedOn || GIVEN_COUNTS[name]?.(scenario)) return cell.canonical;
  return cell.value === defaultOf(scenario.calculator, name, column, scenario.version) ? undefined : cell.canonical;
}

const isForOneBike = (scenario: Scenario): boolean => calculatorOf(scenario.calculator).bikes.max === 1;

/** The query of a scenario, without the question mark; empty for the untouched example. `readLink` gives the same values back, to the last digit. */
export function writeLink(scenario: Scenario): string {
  const { calculator } = scenario;
  const own = new Set(namesOf(calculator));
  const pairs: [string, string][] = [];
  for (const { name, list } of calculatorOf(calculator).parameters.flat()) {
    if (!own.has(name)) continue;
    if (!list) {
      const text = differs(scenario, name, 0);
      if (text !== undefined) pairs.push([name, encode(text)]);
      continue;
    }
    if (name === 'control-time' && scenario.controls === 0 && calculatorOf(calculator).controls > 0) {
      pairs.push([name, 'none']);
      continue;
    }
    const items = columnsOf(scenario, name).map((column) => differs(scenario, name, column));
    const whole =
      list === 'bike'
        ? name === 'name' && scenario.bikes !== calculatorOf(calculator).bikes.example
        : name === 'control-time' && scenario.controls !== calculatorOf(calculator).controls;
    if (whole)
      pairs.push([
        name,
        columnsOf(scenario, name)
          .map((column) => listItem(scenario, name, column))
          .join(','),
      ]);
    else if (items.some((item) => item !== undefined))
      pairs.push([name, items.map((item) => encodeItem(item ?? '')).join(',')]);
  }
  for (const [name, text] of scenario.kept) pairs.push([encode(name), encode(text)]);
  if (scenario.systemChosen) pairs.push(['units', scenario.system]);
  if (scenario.version > 1) pairs.push(['v', String(scenario.version)]);
  return pairs.map(([name, text]) => `${name}=${text}`).join('&');
}

/** One item of a list, as a link holds it. */
export const encodeItem = (text: string): string => encode(escapeItem(text));

/** An item that is written even where it is the default, because the length of the list counts. */
function listItem(scenario: Scenario, name: string, column: number): string {
  const cell = scenario.cells[`${name}.${column}`];
  const standard = defaultOf(scenario.calculator, name, column, scenario.version);
  if (cell?.canonical !== undefined) return encodeItem(cell.canonical);
  return typeof standard === 'string'
    ? encodeItem(standard)
    : typeof standard === 'number'
      ? encode(plainText(standard, parameterOf(name).kind))
      : '';
}

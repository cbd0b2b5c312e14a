import Papa from 'papaparse';
import type { System } from '../quantities/index.ts';
import {
  columns as allColumns,
  type Column,
  type Heading,
  headingOf,
  inputOfTarget,
  plainUnit,
  readHeading,
  type Target,
} from './columns.ts';
import {
  type Comparing,
  type DayBike,
  type DayDocument,
  type DayRun,
  DOCUMENT_VERSION,
  type Texts,
} from './document.ts';
import { chooseSystem, MOST_BIKES, MOST_RUNS, newId } from './editing.ts';
import { readInput } from './inputs.ts';
import { bikeNamesOf, hasNoMotor } from './read.ts';

/*
 * Tables of runs, in and out: CSV (RFC 4180), cells pasted from a spreadsheet, and whatever people and programs make of these. Reading
 * changes nothing: it proposes what would be added, and names row and column of what it does not understand. Nothing here throws.
 */

// Writing

export interface TableForm {
  separator: ',' | ';' | '\t';
  /** a mark at the start by which some spreadsheets know the letters */
  mark: boolean;
}

const isYes = (value: boolean): string => (value ? 'yes' : 'no');

/** A cell that a spreadsheet would take for a formula gets an apostrophe before it, which reading takes away again. */
const guarded = (cell: string): string =>
  /^'*[=+\-@\t\r\n]/.test(cell) && !/^[-+]?\d[\d.,]*$/.test(cell) ? `'${cell}` : cell;
const unguarded = (cell: string): string => (/^'+[=+\-@\t\r\n]/.test(cell) ? cell.slice(1) : cell);

/** The whole day as one table: a row for the day, one for each bike, one for each run. `readTable` gives the same day back. */
export function tableText(document: DayDocument, form: TableForm = { separator: ',', mark: false }): string {
  const { system, comparing, setup, bikes, runs } = document;
  const names = bikeNamesOf(document);
  const numbers = new Map(bikes.map(({ id }, index) => [id, String(index + 1)]));
  type Cells = Partial<Record<Target, string>>;
  const textsOf = (place: 'setup' | 'bike' | 'run', texts: Texts): Cells =>
    Object.fromEntries(Object.entries(texts).map(([name, typed]) => [`${place}.${name}`, typed]));
  const rows: Cells[] = [
    { row: 'day', units: system, comparing, ...textsOf('setup', setup) },
    ...bikes.map(({ id, texts }) => ({ row: 'bike', number: numbers.get(id) ?? '', ...textsOf('bike', texts) })),
    ...runs.map(({ bike, assisted, counted, texts }) => ({
      row: 'run',
      number: numbers.get(bike) ?? '',
      'bike.name': names.get(bike) ?? '',
      assisted: isYes(assisted),
      counted: isYes(counted),
      ...textsOf('run', texts),
    })),
  ];
  const used = new Set(rows.flatMap((row) => Object.keys(row).filter((target) => row[target as Target] !== '')));
  const known = new Set<string>(allColumns.map(({ target }) => target));
  const columns: Column[] = [
    ...allColumns.filter(({ target }) => used.has(target) || ALWAYS.has(target)),
    ...[...used]
      .filter((target) => !known.has(target))
      .map((target) => ({ target: target as Target, title: target, also: [] })),
  ];
  const cells = [
    columns.map((column) => headingOf(column, system)),
    ...rows.map((row) => columns.map(({ target }) => guarded(row[target] ?? ''))),
  ];
  return `${form.mark ? '\ufeff' : ''}${Papa.unparse(cells, { delimiter: form.separator, newline: '\r\n' })}\r\n`;
}

/** Columns that are there also when nothing is in them: somebody may want to fill them in. */
const ALWAYS: ReadonlySet<Target> = new Set<Target>([
  'row',
  'number',
  'bike.name',
  'assisted',
  'counted',
  'run.time',
  'run.power',
  'run.note',
]);

// Reading

export interface TableColumn {
  /** from 0 */
  index: number;
  /** what stands over it, or “Column 3” */
  title: string;
  /** its first cell that holds something */
  sample: string;
  /** what it was taken for; undefined where it was not understood and is left out */
  target: Target | undefined;
}

/** What a table would add. Nothing is added until `acceptTable`. */
export interface TableProposal {
  columns: readonly TableColumn[];
  /** titles of the columns that are left out */
  ignored: readonly string[];
  /** a whole day that this site wrote; `bikes` and `runs` are its own */
  day?: DayDocument;
  /** bikes that the document does not have yet */
  bikes: readonly DayBike[];
  /** runs, in the order of the rows */
  runs: readonly DayRun[];
  /** sentences, with row and column where there is one */
  problems: readonly string[];
}

/** Longest text that is looked at: tens of thousands of rows. */
const LONGEST = 5_000_000;
/** Most sentences about cells; the rest is counted. */
const MOST_PROBLEMS = 12;

const nothing = (problem: string): TableProposal => ({
  columns: [],
  ignored: [],
  bikes: [],
  runs: [],
  problems: [problem],
});

const quoted = (text: string): string => `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;

/**
 * Reads a table. The first row names its columns in the reader's words; without such a row the columns are guessed from what is in them.
 * `assigned` says what a column holds, by its index, where the reader has said so.
 */
export function readTable(
  text: string,
  document: DayDocument,
  assigned: Readonly<Record<number, Target>> = {},
): TableProposal {
  if (text.length > LONGEST)
    return nothing('This table is too long for a test day: it holds more than 5 million characters.');
  if (text.trim() === '') return nothing('There is nothing in this table.');
  const control = [...text.slice(0, 4000)].filter((c) => (c < ' ' && !'\t\n\r'.includes(c)) || c === '\ufffd').length;
  if (control > 4)
    return nothing('This is no table of text. Save the spreadsheet as CSV, or copy its cells and paste them.');

  const { rows, problems } = rowsOf(text.replace(/^\ufeff/, ''));
  const head = headOf(rows);
  const body = rows.slice(head.at);
  for (const { line, cells } of rows.slice(0, head.above))
    problems.push(`Row ${line} stands above the headings and is not used: ${quoted(cells.filter(Boolean).join(' '))}.`);

  const width = Math.max(head.headings.length, ...body.map(({ cells }) => cells.length));
  const guesses = head.above < head.at ? [] : guessed(body, document.system);
  const taken = new Set<Target>();
  const headings: (Heading | undefined)[] = [];
  const columns: TableColumn[] = Array.from({ length: width }, (_, index) => {
    const own = assigned[index];
    let heading = own ? { target: own } : (head.headings[index] ?? guesses[index]);
    // “Motor” over watts is what the maker claims; over on and off it says which runs are control runs
    if (!own && heading?.target === 'bike.motor' && body.every(({ cells }) => isSwitch(cells[index] ?? '')))
      heading = { target: 'assisted' };
    const title = head.titles[index]?.trim() || `Column ${index + 1}`;
    if (heading && heading.target !== 'ignore' && taken.has(heading.target)) {
      problems.push(`${quoted(title)} says the same as a column before it, which counts.`);
      heading = undefined;
    }
    if (heading) taken.add(heading.target);
    headings.push(heading);
    return {
      index,
      title,
      sample: body.find(({ cells }) => cells[index]?.trim())?.cells[index]?.trim() ?? '',
      target: heading?.target === 'ignore' ? undefined : heading?.target,
    };
  });
  // an empty column is nobody's loss
  const ignored = columns.filter(({ target, sample }) => !target && sample).map(({ title }) => title);
  const limited = say(problems);
  const table: Table = { headings, columns, body, document, say: limited.say };
  const found = taken.has('row') ? wholeDay(table) : runsOnly(table, head.headings.length);
  limited.end();
  return { columns, ignored, ...found, problems };
}

/** The document with what a table proposes at its end. */
export function acceptTable(document: DayDocument, proposal: TableProposal): DayDocument {
  const { bikes, runs } = proposal.day ? chooseSystem(proposal.day, document.system) : proposal;
  return { ...document, bikes: [...document.bikes, ...bikes], runs: [...document.runs, ...runs] };
}

interface Row {
  /** as spreadsheets number it */
  line: number;
  cells: readonly string[];
}

interface Table {
  headings: readonly (Heading | undefined)[];
  columns: readonly TableColumn[];
  body: readonly Row[];
  document: DayDocument;
  say: (problem: string) => void;
}

/** Collects sentences up to a number. */
function say(problems: string[]): { say: (problem: string) => void; end: () => void } {
  let left = 0;
  return {
    say: (problem) => {
      if (problems.length < MOST_PROBLEMS) problems.push(problem);
      else left += 1;
    },
    end: () => {
      if (left > 0) problems.push(`And ${left} more of the kind.`);
    },
  };
}

/** Rows that hold something, with the separator that fits. */
function rowsOf(text: string): { rows: Row[]; problems: string[] } {
  const problems: string[] = [];
  const parse = (delimiter: string, preview = 0, quoteChar = '"') =>
    Papa.parse<string[]>(text, { delimiter, preview, quoteChar, skipEmptyLines: false });
  const separators = ['\t', ';', ','];
  const widths = separators.map((separator) =>
    parse(separator, 20)
      .data.filter((row) => row.some((cell) => cell.trim()))
      .map(({ length }) => length),
  );
  const even = widths.findIndex((of) => (of[0] ?? 0) > 1 && of.every((one) => one === of[0]));
  const widest = widths
    .map((of) => Math.max(0, ...of))
    .reduce((best, one, i, all) => (one > (all[best] ?? 0) ? i : best), 0);
  const separator = separators[even >= 0 ? even : widest] ?? ',';
  let parsed = parse(separator);
  if (parsed.errors.some(({ code }) => code === 'MissingQuotes')) {
    problems.push('A quotation mark is opened and never closed, so all quotation marks are taken as letters.');
    parsed = parse(separator, 0, '\0');
  }
  const rows = parsed.data.flatMap((cells, index) =>
    cells.some((cell) => cell.trim() !== '') ? [{ line: index + 1, cells: cells.map(unguarded) }] : [],
  );
  return { rows, problems };
}

interface Head {
  /** rows before the headings, and before the first row of values */
  above: number;
  at: number;
  titles: readonly string[];
  headings: readonly (Heading | undefined)[];
}

/** The row of headings: among the first ones that with the most that are understood, at least two or the only cell. */
function headOf(rows: readonly Row[]): Head {
  let best: Head = { above: 0, at: 0, titles: [], headings: [] };
  let most = 0;
  rows.slice(0, 10).forEach(({ cells }, index) => {
    const headings = cells.map(readHeading);
    const understood = headings.filter((heading, i) => heading && cells[i]?.trim()).length;
    const hasTime = cells.some((cell) => /^\d+:\d\d/.test(cell.trim()));
    const filled = cells.filter((cell) => cell.trim()).length;
    if (!hasTime && understood > most && (understood > 1 || filled === 1)) {
      best = { above: index, at: index + 1, titles: cells, headings };
      most = understood;
    }
  });
  return best;
}

/** What columns without headings hold, as far as their cells leave one reading: times, names, and one column of power. */
function guessed(body: readonly Row[], system: System): (Heading | undefined)[] {
  const width = Math.max(0, ...body.map(({ cells }) => cells.length));
  const time = inputOfTarget('run.time')?.input;
  const kinds = Array.from({ length: width }, (_, index) => {
    const cells = body.map((row) => row.cells[index]?.trim() ?? '').filter(Boolean);
    if (cells.length === 0) return 'empty';
    if (time && cells.every((cell) => readInput(time, cell, system).ok)) return 'time';
    const values = cells.map((cell) => Number(cell.replace(',', '.').replace(/ ?w(atts?)?$/i, '')));
    if (values.every((value) => value >= 60 && value <= 600)) return 'power';
    return values.some((value) => Number.isNaN(value)) && cells.some((cell) => /\p{L}/u.test(cell)) ? 'text' : 'number';
  });
  const targets: Partial<Record<string, Target[]>> = {
    time: ['run.time'],
    text: ['bike.name', 'run.note'],
    // two columns of such numbers could be power and anything
    power: kinds.filter((kind) => kind === 'power').length === 1 ? ['run.power'] : [],
  };
  return kinds.map((kind) => {
    const target = targets[kind]?.shift();
    return target && { target };
  });
}

/** Text of a cell for its input: a plain number gets the unit of its heading where that is not the one of the field. */
function textFor(cell: string, { target, unit }: Heading, system: System): string {
  const isNumber = /^[-+−]?\d[\d.,\s]*$/.test(cell.trim());
  if (!unit || !isNumber || unit === plainUnit(target, system)) return cell;
  return `${cell.trim()} ${unit}`;
}

/** Texts of one row for one place. */
function textsFor(table: Table, row: Row, place: string, system: System): Texts {
  const texts: [string, string][] = [];
  table.headings.forEach((heading, index) => {
    const cell = row.cells[index] ?? '';
    if (cell === '' || !heading?.target.startsWith(`${place}.`)) return;
    texts.push([heading.target.slice(place.length + 1), textFor(cell, heading, system)]);
  });
  return Object.fromEntries(texts);
}

const cellOf = (table: Table, row: Row, target: Target): string => {
  const index = table.headings.findIndex((heading) => heading?.target === target);
  return row.cells[index] ?? '';
};

const isNo = (cell: string): boolean =>
  /^(no|n|false|f|0|off|none|nein|non|control|control run|unassisted|without|without motor|motor off|void|-|–|✗|x)$/i.test(
    cell.trim(),
  );

const isYesWord = (cell: string): boolean =>
  /^(yes|y|true|t|1|on|ja|oui|si|sí|assisted|assisted run|assist|powered|motor|motor on|with|with motor|counted|valid|ok|used|✓|✔)$/i.test(
    cell.trim(),
  );

/** What a cell of yes or no says; an empty one says `otherwise`. A word that is neither is named and counts as yes. */
function saysYes(table: Table, row: Row, target: 'assisted' | 'counted', otherwise: boolean): boolean {
  const cell = cellOf(table, row, target).trim();
  if (cell === '') return otherwise;
  const no = isNo(cell);
  if (!no && !isYesWord(cell)) {
    const title = table.columns[table.headings.findIndex((heading) => heading?.target === target)]?.title ?? '';
    table.say(`Row ${row.line}, ${quoted(title)}: ${quoted(cell)} is neither yes nor no, and is taken as yes.`);
  }
  return !no;
}

const isSwitch = (cell: string): boolean => cell.trim() === '' || /^(on|off|yes|no)$/i.test(cell.trim());

/** A day that this site wrote: exactly what was typed, but for times that a spreadsheet has changed since. */
function wholeDay(table: Table): Pick<TableProposal, 'day' | 'bikes' | 'runs'> {
  const { body, document } = table;
  const of = (kind: string): Row[] => body.filter((row) => cellOf(table, row, 'row').trim().toLowerCase() === kind);
  const [day] = of('day');
  const said = day ? cellOf(table, day, 'units').trim() : '';
  const system: System = said === 'us' || said === 'metric' ? said : document.system;
  const comparing = day ? cellOf(table, day, 'comparing').trim() : '';
  const bikes: DayBike[] = of('bike').map((row) => ({ id: newId(), texts: textsFor(table, row, 'bike', system) }));
  const byNumber = new Map(of('bike').map((row, index) => [cellOf(table, row, 'number').trim(), bikes[index]?.id]));
  const clock = clockOf(of('run').map((row) => cellOf(table, row, 'run.time')));
  if (clock.note) table.say(clock.note);
  const runs: DayRun[] = of('run').map((row) => {
    const texts = timed(textsFor(table, row, 'run', system), clock.read);
    check(table, row, system, texts);
    const number = cellOf(table, row, 'number').trim();
    if (number !== '' && !byNumber.has(number))
      table.say(`Row ${row.line}: there is no bike number ${quoted(number)}. Choose the bike of this run.`);
    return {
      id: newId(),
      bike: byNumber.get(number) ?? '',
      assisted: saysYes(table, row, 'assisted', true),
      counted: saysYes(table, row, 'counted', true),
      texts,
    };
  });
  for (const row of body) {
    const kind = cellOf(table, row, 'row');
    if (!/^(day|bike|run)$/i.test(kind.trim()))
      table.say(`Row ${row.line}: ${quoted(kind)} is none of day, bike or run, so the row is left out.`);
  }
  if (bikes.length > MOST_BIKES) table.say(tooMany(bikes.length, 'bikes', MOST_BIKES));
  if (runs.length > MOST_RUNS) table.say(tooMany(runs.length, 'runs', MOST_RUNS));
  const whole: DayDocument = {
    version: DOCUMENT_VERSION,
    system,
    comparing: isComparing(comparing) ? comparing : 'bikes',
    setup: day ? textsFor(table, day, 'setup', system) : {},
    bikes: bikes.slice(0, MOST_BIKES),
    runs: runs.slice(0, MOST_RUNS),
  };
  return { day: whole, bikes: whole.bikes, runs: whole.runs };
}

const isComparing = (value: string): value is Comparing => ['bikes', 'tyres', 'mass', 'setting'].includes(value);

const tooMany = (count: number, what: 'runs' | 'bikes', most: number): string =>
  `The table has ${count} ${what}, and there is room for ${most}: the first ${most} are taken.`;

/** A table that somebody else wrote: one run a row. */
function runsOnly(table: Table, named: number): Pick<TableProposal, 'bikes' | 'runs'> {
  const { body, document, headings } = table;
  const { system } = document;
  if (!headings.some((heading) => heading?.target === 'run.time')) {
    table.say(
      named > 0
        ? 'No column of times was found. Name it “Time” in the first row.'
        : 'No column of times was found. Name the columns in the first row, for example: Bike, Time, Rider power.',
    );
    return { bikes: [], runs: [] };
  }
  if (!headings.some((heading) => heading?.target === 'bike.name'))
    table.say('No column of bikes was found: choose the bike of each run.');
  const room = MOST_RUNS - document.runs.length;
  if (body.length > room) table.say(tooMany(body.length, 'runs', room));

  const known = new Map([...bikeNamesOf(document)].map(([id, name]) => [name.toLowerCase(), id]));
  const bikes = new Map<string, DayBike>();
  const rows = body.slice(0, room).filter((row) => fits(table, row, named));
  const clock = clockOf(rows.map((row) => cellOf(table, row, 'run.time')));
  if (clock.note) table.say(clock.note);
  const runs = rows.map((row): DayRun => {
    const name = cellOf(table, row, 'bike.name').trim();
    const key = name.toLowerCase();
    const own = { ...textsFor(table, row, 'bike', system), name };
    const before = bikes.get(key);
    const id = known.get(key) ?? before?.id ?? newId();
    if (name !== '' && !known.has(key)) {
      if (!before && bikes.size + document.bikes.length >= MOST_BIKES) {
        table.say(
          `Row ${row.line}: there is room for ${MOST_BIKES} bikes, and ${quoted(name)} is one more. Its run has no bike.`,
        );
        return runOf(table, row, clock.read, '', true, system);
      }
      bikes.set(key, { id, texts: joined(table, row, before?.texts, own) });
    }
    const bike = bikes.get(key) ?? document.bikes.find((one) => one.id === id);
    // a bike that is named so in this row, though the day has a motor for it
    const isControl = hasNoMotor({ id, texts: { name } }, system) || (bike && hasNoMotor(bike, system));
    return runOf(table, row, clock.read, name === '' ? '' : id, !isControl, system);
  });
  return { bikes: [...bikes.values()], runs };
}

function runOf(
  table: Table,
  row: Row,
  clock: (time: string) => string,
  bike: string,
  isAssisted: boolean,
  system: System,
): DayRun {
  const run: DayRun = {
    id: newId(),
    bike,
    assisted: saysYes(table, row, 'assisted', isAssisted),
    counted: saysYes(table, row, 'counted', true),
    texts: trimmed(timed(textsFor(table, row, 'run', system), clock)),
  };
  check(table, row, system, run.texts);
  return run;
}

const timed = (texts: Texts, clock: (time: string) => string): Texts =>
  texts.time === undefined ? texts : { ...texts, time: clock(texts.time) };

const trimmed = (texts: Texts): Texts =>
  Object.fromEntries(Object.entries(texts).flatMap(([name, typed]) => (typed.trim() ? [[name, typed.trim()]] : [])));

/** A row with more cells than there are headings has been cut in the wrong places. */
function fits({ say }: Table, { line, cells }: Row, named: number): boolean {
  const surplus = cells.slice(named).some((cell) => cell.trim() !== '');
  if (named === 0 || !surplus) return true;
  say(
    `Row ${line} has ${cells.length} cells and the headings are ${named}, so it is left out. A decimal comma needs quotation marks around its number, or semicolons between cells.`,
  );
  return false;
}

/** What is known of a bike from an earlier row, and what this one adds. */
function joined({ say }: Table, { line }: Row, before: Texts | undefined, own: Texts): Texts {
  const texts = trimmed(own);
  for (const [name, typed] of Object.entries(before ?? {}))
    if (name !== 'name' && texts[name] !== undefined && texts[name] !== typed)
      say(
        `Row ${line} says ${quoted(texts[name])} of a bike, and an earlier row ${quoted(typed)}: the earlier counts.`,
      );
  return { ...texts, ...before };
}

/** Names the cells of a run that cannot be read; their texts are kept all the same. */
function check(table: Table, row: Row, system: System, texts: Texts): void {
  table.headings.forEach((heading, index) => {
    const found = heading?.target.startsWith('run.') ? inputOfTarget(heading.target) : undefined;
    const typed = found && texts[found.input.name];
    if (!found || !typed) return;
    const parsed = readInput(found.input, typed, system);
    if (!parsed.ok && parsed.reason !== 'empty')
      table.say(`Row ${row.line}, ${quoted(table.columns[index]?.title ?? '')}: ${parsed.message}`);
  });
}

/**
 * How the times of a column are meant. Spreadsheets take 7:22 for seven hours and write 7:22:00, and write 0:07:22 as 12:07:22 AM. Where
 * every time looks so and one of them is three hours or more, hours are minutes; with shorter ones the reader is asked.
 */
function clockOf(times: readonly string[]): { read: (time: string) => string; note?: string } {
  const midnight = (time: string): string => time.replace(/^\s*12(:\d\d:\d\d) ?AM\s*$/i, '0$1');
  const filled = times.map(midnight).filter((time) => time.trim() !== '');
  const hours = /^\s*0?([1-9]\d?)(:\d\d):00\s*$/;
  if (filled.length < 2 || !filled.every((time) => hours.test(time))) return { read: midnight };
  const [first = ''] = filled;
  const inMinutes = (time: string): string => midnight(time).replace(hours, '$1$2');
  const all = 'Every time has hours and no seconds, as when a spreadsheet takes minutes for hours:';
  return filled.some((time) => Number(hours.exec(time)?.[1]) >= 3)
    ? { read: inMinutes, note: `${all} ${quoted(first)} is read as ${inMinutes(first)}.` }
    : {
        read: midnight,
        note: `${all} if ${quoted(first)} is ${inMinutes(first)}, write the times as text there and copy them again.`,
      };
}

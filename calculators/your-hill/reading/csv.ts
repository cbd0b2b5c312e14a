import Papa from 'papaparse';
import { foot, kilometre, metre, mile, type Unit, yard } from '../../quantities/units.ts';
import { READ } from './kind.ts';
import { type Problems, quoted } from './problems.ts';
import type { ReadParts } from './readRecording.ts';
import { readDateTime, readNumber, textChunks } from './text.ts';
import { blankPoint, clearPoint, newRoom, type Point, trackBuilder } from './trackBuilder.ts';

/* Tables with named columns: what is over a column says what it holds, and in brackets or after a line what unit. */

type Target = Exclude<keyof Point, 'otherPower'> | 'date';

/** What a column may be called, in small letters and without its unit; and the units it may have, with their size in SI. */
export const TARGETS: Readonly<
  Record<Target, { names: readonly string[]; units: Readonly<Record<string, number>>; word: string }>
> = {
  time: {
    names: [
      'time',
      'timestamp',
      'date time',
      'datetime',
      'utc',
      'elapsed',
      'elapsed time',
      'time elapsed',
      'duration',
      'clock',
    ],
    units: {
      s: 1,
      sec: 1,
      secs: 1,
      second: 1,
      seconds: 1,
      ms: 0.001,
      min: 60,
      mins: 60,
      minutes: 60,
      h: 3600,
      hours: 3600,
    },
    word: 'time',
  },
  date: { names: ['date'], units: {}, word: 'date' },
  latitude: {
    names: ['lat', 'latitude', 'position lat', 'gps lat'],
    units: { deg: 1, degrees: 1, '°': 1 },
    word: 'latitude',
  },
  longitude: {
    names: ['lon', 'long', 'lng', 'longitude', 'position lon', 'position long', 'gps lon', 'gps long'],
    units: { deg: 1, degrees: 1, '°': 1 },
    word: 'longitude',
  },
  counter: {
    names: ['distance', 'dist', 'total distance', 'distance total'],
    units: lengths(),
    word: 'distance',
  },
  elevation: {
    names: ['elevation', 'elev', 'ele', 'altitude', 'alt', 'height', 'enhanced altitude', 'gps altitude'],
    units: lengths(),
    word: 'elevation',
  },
  power: {
    names: ['power', 'rider power', 'watts', 'watt', 'pwr'],
    units: { w: 1, watt: 1, watts: 1, kw: 1000 },
    word: 'power',
  },
  cadence: { names: ['cadence', 'cad', 'rpm'], units: { rpm: 1, '1 min': 1 }, word: 'cadence' },
  heartRate: {
    names: ['heart rate', 'heartrate', 'hr', 'pulse', 'bpm'],
    units: { bpm: 1, '1 min': 1 },
    word: 'heart rate',
  },
};

/** Spellings of a column's head that fields do not take: "distance_mi", "elevation feet". Sizes in m. */
function lengths(): Record<string, number> {
  const spellings: readonly [Unit, string][] = [
    [metre, 'm,metre,metres,meter,meters'],
    [kilometre, 'km,kilometres,kilometers'],
    [mile, 'mi,mile,miles'],
    [foot, 'ft,foot,feet'],
    [yard, 'yd,yards'],
  ];
  return Object.fromEntries(
    spellings.flatMap(([{ times, over }, words]) => words.split(',').map((word) => [word, times / over])),
  );
}

interface Column {
  index: number;
  title: string;
  target: Target;
  /** SI value = number × size */
  size: number;
  hasUnit: boolean;
}

interface Head {
  delimiter: string;
  /** rows down to and with the headings */
  rows: number;
  columns: Column[];
  /** titles that mean nothing here */
  ignored: string[];
  /** headings whose unit is unknown */
  unclear: string[];
  width: number;
}

/** Rows in which the headings may stand. */
const HEAD_ROWS = 40;
const DELIMITERS = [',', ';', '\t', '|'] as const;
/** Longest line that is a row of a table. */
const LONGEST_LINE = 1_000_000;

export function readCsv(bytes: Uint8Array, problems: Problems, onProgress: (share: number) => void): ReadParts {
  const nothing = (message: string): ReadParts => {
    problems.say(message);
    return { parts: [], notes: [], cutShort: false, explained: true };
  };
  let head: Head | undefined;
  const builder = trackBuilder(problems, newRoom());
  const point = blankPoint();
  const clock = newClock();
  let cutShort = false;

  for (const { rows, line, share, isLast } of tableRows(bytes)) {
    if (rows === undefined) {
      if (!head) return nothing(NO_COLUMNS);
      problems.add('', line, 'The line is too long to be the row of a table: the rest is not read.');
      break;
    }
    if (!head) {
      head = headOf(rows.join('\n'));
      if (!head) return nothing(NO_COLUMNS);
    }
    const { delimiter, columns, width } = head;
    let at = line;
    const parsed = Papa.parse<string[]>(rows.join('\n'), { delimiter, newline: '\n' }).data;
    for (const [index, cells] of parsed.entries()) {
      const from = at;
      at += 1 + lineBreaksIn(cells);
      if (from <= head.rows || cells.every((cell) => cell.trim() === '')) continue;
      if (isLast && index === parsed.length - 1 && cells.length < width) {
        cutShort = true;
        problems.say(`The file ends in line ${from}, in the middle of a row: what is whole up to there is read.`);
        continue;
      }
      if (cells.slice(width).some((cell) => cell.trim() !== '')) {
        problems.add(
          'rows with too many cells',
          from,
          `The row has ${cells.length} cells and the headings are ${width}: it is left out. A decimal comma needs semicolons between the cells.`,
        );
        continue;
      }
      clearPoint(point);
      for (const column of columns) setCell(point, column, cells, columns, clock, from, problems);
      builder.add(point, from);
    }
    onProgress(share);
  }
  if (!head) return nothing(NO_COLUMNS);
  const part = builder.part({ name: 'Table', planned: false });
  return { parts: part ? [part] : [], notes: notesOn(head, problems), cutShort };
}

const NO_COLUMNS = `This is text without columns of distances or places. Name the columns in the first row, for example: time (s), distance (m), elevation (m), power (W). ${READ}`;

function notesOn({ columns, ignored, unclear }: Head, problems: Problems): string[] {
  for (const title of unclear) problems.say(`The unit of ${quoted(title)} is not known: the column is not used.`);
  const assumed = columns.filter(({ target, hasUnit }) => (target === 'counter' || target === 'elevation') && !hasUnit);
  return [
    `Columns that are read: ${columns.map(({ title, target }) => `${quoted(title)} as ${TARGETS[target].word}`).join(', ')}.`,
    ...(ignored.length ? [`Columns that are passed over: ${ignored.slice(0, 20).map(quoted).join(', ')}.`] : []),
    ...assumed.map(({ title }) => `No unit stands over ${quoted(title)}: it is read as metres.`),
  ];
}

const lineBreaksIn = (cells: readonly string[]): number =>
  cells.reduce((sum, cell) => sum + (cell.includes('\n') ? cell.split('\n').length - 1 : 0), 0);

/** The lines of a text in pieces, with the number of the first of each. Without lines where one is too long. */
function* tableRows(
  bytes: Uint8Array,
): Generator<{ rows: string[] | undefined; line: number; share: number; isLast: boolean }> {
  let rest = '';
  let line = 1;
  for (const { text, share } of textChunks(bytes)) {
    rest += text;
    // a line break of two letters may be cut in two
    const whole = rest.endsWith('\r') && share < 1 ? rest.slice(0, -1) : rest;
    const lines = whole.replace(/\r\n?/g, '\n').split('\n');
    const held = share < 1 ? (lines.pop() ?? '') : '';
    if (share >= 1) {
      // the last line ends the file without a line break only where it was cut or never finished
      const isOpen = lines.at(-1) !== '';
      if (!isOpen) lines.pop();
      if (lines.length > 0) yield { rows: lines, line, share, isLast: isOpen };
      return;
    }
    if (lines.length > 0) yield { rows: lines, line, share, isLast: false };
    line += lines.length;
    rest = held + (whole === rest ? '' : '\r');
    if (rest.length > LONGEST_LINE) {
      yield { rows: undefined, line, share, isLast: true };
      return;
    }
  }
}

/** The headings and what stands between the cells: what makes most sense. */
function headOf(text: string): Head | undefined {
  const start = text.split('\n', HEAD_ROWS).join('\n').slice(0, 100_000);
  let best: Head | undefined;
  for (const delimiter of DELIMITERS)
    for (const [index, cells] of Papa.parse<string[]>(start, { delimiter, newline: '\n' }).data.entries()) {
      const head = readHeadings(cells, delimiter, index + 1);
      if (isEnough(head) && head.columns.length > (best?.columns.length ?? 0)) best = head;
    }
  return best;
}

const isEnough = ({ columns }: Head): boolean => {
  const targets = new Set(columns.map(({ target }) => target));
  return targets.size > 1 && (targets.has('counter') || (targets.has('latitude') && targets.has('longitude')));
};

function readHeadings(cells: readonly string[], delimiter: string, rows: number): Head {
  const head: Head = { delimiter, rows, columns: [], ignored: [], unclear: [], width: cells.length };
  const taken = new Set<Target>();
  cells.forEach((title, index) => {
    if (title.trim() === '') return;
    const heading = readHeading(title);
    if (heading === undefined || taken.has(heading.target)) head.ignored.push(title);
    else if (heading.size === undefined) head.unclear.push(title);
    else {
      taken.add(heading.target);
      head.columns.push({ index, title, target: heading.target, size: heading.size, hasUnit: heading.hasUnit });
    }
  });
  // a column of dates on its own holds the times of day as well, or is named where it does not
  if (!taken.has('time')) for (const column of head.columns) if (column.target === 'date') column.target = 'time';
  return head;
}

/** What a heading means; without a size where its unit is unknown. */
export function readHeading(title: string): { target: Target; size: number | undefined; hasUnit: boolean } | undefined {
  const small = title
    .trim()
    .slice(0, 100)
    .replace(/([a-z])([A-Z][a-z])/g, '$1 $2')
    .toLowerCase();
  const bracket = /^(.*?)\s*[([]([^()[\]]*)[)\]]$/.exec(small);
  const words = (text: string): string => text.replace(/[\s_,./:-]+/g, ' ').trim();
  const name = words(bracket?.[1] ?? small);
  const unit = bracket ? words(bracket[2] ?? '') : undefined;
  for (const target of Object.keys(TARGETS) as Target[]) {
    const { names, units } = TARGETS[target];
    if (names.includes(name)) {
      if (unit === undefined || unit === '') return { target, size: units[name] ?? 1, hasUnit: name in units };
      // a time of day has its zone in brackets
      const size = Object.hasOwn(units, unit) ? units[unit] : undefined;
      return {
        target,
        size: size ?? (target === 'time' && /^utc|^gmt|^hh?/.test(unit) ? 1 : undefined),
        hasUnit: true,
      };
    }
    const split = name.lastIndexOf(' ');
    const last = name.slice(split + 1);
    if (unit === undefined && split > 0 && names.includes(name.slice(0, split)) && Object.hasOwn(units, last))
      return { target, size: units[last], hasUnit: true };
    if (target === 'time' && unit === undefined && last === name && name.length > 2 && Object.hasOwn(units, name))
      return { target, size: units[name], hasUnit: true };
  }
  return undefined;
}

/** A number with a point or a comma; where it has both, the last is the decimal one. */
function cellNumber(text: string): number | undefined {
  const plain = text.trim().replace(/^\u2212/, '-');
  if (!plain.includes(',')) return readNumber(plain);
  const isCommaLast = plain.lastIndexOf(',') > plain.lastIndexOf('.');
  return readNumber(isCommaLast ? plain.replace(/\./g, '').replace(',', '.') : plain.replace(/,/g, ''));
}

interface Clock {
  days: number;
  last: number;
}

const newClock = (): Clock => ({ days: 0, last: Number.NaN });

/** Seconds of a time in any of the usual ways; a time of day that begins anew after midnight goes on. */
function readTime(text: string, date: string, size: number, clock: Clock): number | undefined {
  const trimmed = text.trim();
  const number = cellNumber(trimmed);
  // so large a number counts thousandths of a second since 1970
  if (number !== undefined) return size === 1 && number > 1e11 ? number / 1000 : number * size;
  const dated = readDateTime(trimmed) ?? (date ? readDateTime(`${date.trim()} ${trimmed}`) : undefined);
  if (dated !== undefined) return dated;
  const found = /^(?:(\d{1,3}):)?(\d{1,3}):(\d{1,2}(?:[.,]\d+)?)$/.exec(trimmed);
  if (!found) return undefined;
  const seconds = Number(found[1] ?? 0) * 3600 + Number(found[2]) * 60 + Number((found[3] ?? '').replace(',', '.'));
  if (clock.last - seconds > 43_200) clock.days++;
  clock.last = seconds;
  return seconds + clock.days * 86_400;
}

function setCell(
  point: Point,
  { index, target, size, title }: Column,
  cells: readonly string[],
  columns: readonly Column[],
  clock: Clock,
  line: number,
  problems: Problems,
): void {
  const text = cells[index] ?? '';
  if (text.trim() === '' || target === 'date') return;
  const date = target === 'time' ? columns.find((column) => column.target === 'date') : undefined;
  const value =
    target === 'time' ? readTime(text, date ? (cells[date.index] ?? '') : '', size, clock) : cellNumber(text);
  if (value === undefined)
    problems.add(
      `cells that hold no ${target === 'time' ? 'time' : 'number'}`,
      line,
      `${quoted(text)} under ${quoted(title)} is no ${target === 'time' ? 'time' : 'number'}: it is left out.`,
    );
  else point[target] = target === 'time' ? value : value * size;
}

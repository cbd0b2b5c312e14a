import type { Kind } from '../quantities/index.ts';
import type { DayDocument } from './document.ts';
import type { DayOutcome } from './outcome.ts';
import { bikeNamesOf } from './read.ts';

const COLUMNS = ['result', 'bike', 'name', 'against', 'against-name', 'value', 'low', 'high', 'reason', 'unit'];

/** SI units of what a day results in; what is not here is a count, a share or a ratio. */
const UNITS: Partial<Record<Kind, string>> = {
  duration: 's',
  seconds: 's',
  speed: 'm/s',
  power: 'W',
  energy: 'J',
  area: 'm2',
};

/** A cell of a table; a text that a spreadsheet would take for a formula gets an apostrophe before it. */
function cell(value: string | number | undefined): string {
  if (value === undefined) return '';
  const text = typeof value === 'number' ? String(value) : value.replace(/^[=+\-@\t\r]/, "'$&");
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** All results of a day as CSV: values in SI, unrounded, with their 95 % ranges and units. The unit stands last, so that the columns before it stay where they were. */
export function resultsCsv(document: DayDocument, outcome: DayOutcome): string {
  const names = [...bikeNamesOf(document).values()];
  const nameOf = (number: number | undefined): string | undefined =>
    number === undefined ? undefined : names[number - 1];
  const rows = outcome.results.map(({ name, kind, bike, against, si, low, high, reason }) => [
    name,
    bike,
    nameOf(bike),
    against,
    nameOf(against),
    si,
    low,
    high,
    si === undefined ? reason : undefined,
    UNITS[kind] ?? '1',
  ]);
  // the mark in front tells spreadsheets how letters are written
  return `\ufeff${[COLUMNS, ...rows].map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

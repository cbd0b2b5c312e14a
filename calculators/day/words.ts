import { formatDuration, formatQuantity } from '../quantities/index.ts';
import type { Comparing, DayDocument, DayRun, Texts } from './document.ts';
import { inputOf, type Place, readInput } from './inputs.ts';
import { bikeNamesOf, hasNoMotor } from './read.ts';

/* What the parts of a test day are called on the page. */

/** What the entries of `bikes` are called: bikes, or variants of one bike. */
export const compared = (comparing: Comparing): { one: string; several: string } =>
  comparing === 'bikes' ? { one: 'bike', several: 'bikes' } : { one: 'variant', several: 'variants' };

/** What can differ between them, in the order of the choice. */
export const DIFFERENCES: readonly { comparing: Comparing; label: string; hint: string }[] = [
  { comparing: 'bikes', label: 'Bikes', hint: 'Each bike with its own mass, motor and tyres.' },
  { comparing: 'tyres', label: 'Tyres', hint: 'One bike, other tyres or pressures. Everything else stays the same.' },
  {
    comparing: 'mass',
    label: 'Added mass',
    hint: 'One bike, with and without a load. Everything else stays the same.',
  },
  {
    comparing: 'setting',
    label: 'Motor setting',
    hint: 'One bike, other assist settings. Everything else stays the same.',
  },
];

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const count = (number: number, one: string, several = `${one}s`): string =>
  `${number === 0 ? 'no' : number} ${number === 1 ? one : several}`;

/** A text as people read it: with its unit when it can be read, as typed when not; empty when nothing stands there. */
export function shown(place: Place, texts: Texts, name: string, { system }: DayDocument): string {
  const typed = texts[name]?.trim() ?? '';
  const input = inputOf(place, name);
  if (typed === '' || !input) return '';
  const parsed = readInput(input, typed, system);
  if (!parsed.ok || input.kind === 'text') return typed;
  if (parsed.si === null) return 'none';
  return input.kind === 'duration' ? clock(parsed.si) : formatQuantity(parsed.si, input.kind, system, { trim: true });
}

/** A time with the decimals that were typed, to a tenth of a second. */
const clock = (seconds: number): string => formatDuration(seconds, Math.abs(seconds % 1) < 0.05 ? 0 : 1);

/** The bike of a run, and that its motor was off, as in “Light, motor off”. */
export function ridden(document: DayDocument, run: DayRun): string {
  const bike = document.bikes.find(({ id }) => id === run.bike);
  const name = bikeNamesOf(document).get(run.bike) ?? `no ${compared(document.comparing).one} chosen`;
  return run.assisted || (bike && hasNoMotor(bike, document.system)) ? name : `${name}, motor off`;
}

/** A run in a few words: “Light, 7:22”. */
export function runInWords(document: DayDocument, run: DayRun): string {
  return [ridden(document, run), shown('run', run.texts, 'time', document)].filter(Boolean).join(', ');
}

/** A day in a few words: “Invented hill, 8 runs”. */
export function dayInWords({ setup, runs }: DayDocument): string {
  return `${setup.title?.trim() ? `“${setup.title.trim()}”` : 'the day'} with ${count(runs.length, 'run')}`;
}

/** The set-up in one line. */
export function setupInWords(document: DayDocument): string {
  const { setup, bikes, comparing } = document;
  const value = (name: string): string => shown('setup', setup, name, document);
  const { one, several } = compared(comparing);
  return [
    value('title'),
    [value('distance'), value('gain')].filter(Boolean).join(' with '),
    value('rider') && `rider ${value('rider')}`,
    value('power') && `at ${value('power')}`,
    count(bikes.length, one, several),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** What a time without a colon may mean, to be set with one tap: 7.22 is written for 7:22 and says 7:13, 722 for 7:22 and says 12:02. */
export function timesMeant(typed: string): string[] {
  const [, digits = ''] = /^\s*(\d{1,4})\s*$/.exec(typed) ?? [];
  if (digits !== '') {
    const [, minutes, seconds] = /^(\d{1,2})([0-5]\d)$/.exec(digits) ?? [];
    const clock = digits.length < 3 ? formatDuration(60 * Number(digits)) : minutes && `${minutes}:${seconds}`;
    return [...new Set([...(clock ? [clock] : []), formatDuration(Number(digits))])];
  }
  const [, whole = '', fraction = ''] = /^\s*(\d{1,3})[.,](\d{1,2})\s*$/.exec(typed) ?? [];
  if (whole === '') return [];
  const minutes = formatDuration(Number(`${whole}.${fraction}`) * 60);
  return /^[0-5]\d$/.test(fraction) ? [...new Set([`${whole}:${fraction}`, minutes])] : [minutes];
}

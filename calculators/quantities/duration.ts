/** Times of a climb, as people type them. Seconds inside. */
import { bare, formatDuration } from './format.ts';
import { readNumber } from './number.ts';
import { findUnit } from './spellings.ts';
import { toSi } from './units.ts';

/** What a text says as a time: its canonical form, or what to tell the person (after the quoted text). */
export type DurationReading = { canonical: string } | { reason: 'ask' | 'unreadable'; say: string };

/** Seconds as m:ss or h:mm:ss in ASCII, with the decimals that they have, down to a microsecond. */
export const clockText = (seconds: number): string => bare(formatDuration(seconds, 6)).replace('−', '-');

/** Seconds of such a text. */
export const clockSeconds = (clock: string): number =>
  clock.split(':').reduce((total, part) => total * 60 + Number(part), 0);

/** `7:22`, `7:22.5`, `90:00`, `1:05:30`. */
function readClock(text: string, link: boolean): DurationReading | undefined {
  const [, hours, minutes = '', seconds = '', fraction = ''] =
    /^(?:(\d{1,4}):)?(\d{1,4}):(\d\d?)([.,]\d{1,6})?$/.exec(text) ?? [];
  if (!seconds || (link && fraction[0] === ',')) return undefined;
  const whole = (Number(hours ?? 0) * 60 + Number(minutes)) * 60 + Number(seconds);
  const canonical = formatDuration(whole) + fraction.replace(',', '.');
  const wrong = (count: string, unit: string): DurationReading => ({
    reason: 'unreadable',
    say: ` has ${count} ${unit}, and 59 is the most. Write ${canonical}.`,
  });
  if (hours && Number(minutes) > 59) return wrong(minutes, 'minutes');
  if (Number(seconds) > 59) return wrong(seconds, 'seconds');
  if (seconds.length > 1) return { canonical };
  const tens = fraction || seconds > '5' ? '' : ` or ${text}0`;
  return { reason: 'ask', say: ` has one figure for the seconds. Write ${canonical}${tens}.` };
}

/** `16 min 43 s`, `16m43s`, `1h`, `443 s`: units from large to small, each once; `1 h 20` ends in the next smaller one. */
function readUnits(text: string, link: boolean): DurationReading | undefined {
  let seconds = 0;
  let last = Infinity;
  const rest = text.replace(/([\d.,]+) ?([a-z]+|'+|") ?/gi, (part, digits: string, name: string) => {
    const number = readNumber(digits, link);
    const unit = findUnit(name, 'duration');
    if (!number || number.grouped || !unit || unit.times >= last) return part;
    last = unit.times;
    seconds += toSi(Number(number.digits), unit);
    return '';
  });
  // Two figures, as on a clock: `1 h 2` may be on its way to `1 h 20`.
  if (last > 1 && /^[0-5]\d$/.test(rest)) seconds += (Number(rest) * last) / 60;
  else if (rest) return undefined;
  return seconds < 1e8 ? { canonical: clockText(seconds) } : undefined;
}

/**
 * A time from tidied text. Seconds alone or minutes with decimals are asked about, because `7.22` is written
 * for 7:22 and means 7 minutes 13 seconds. Undefined when there is no time in it.
 */
export function readDuration(text: string, link: boolean): DurationReading | undefined {
  const [number, whole = '', fraction = ''] = /^(\d{1,6})(?:[.,](\d*))?$/.exec(text) ?? [];
  if (number === undefined) return readClock(text, link) ?? readUnits(text, link);
  const minutes = formatDuration(Number(`${whole}.${fraction}`) * 60);
  const [, clockMinutes, clockSeconds] = /^(\d{1,2})([0-5]\d)$/.exec(whole) ?? [];
  const say = !fraction
    ? clockMinutes !== undefined
      ? // a clock without its colon: 722 for 7:22, which nobody writes for minutes
        `minutes and seconds, or seconds? Write ${clockMinutes}:${clockSeconds} or ${formatDuration(Number(whole))}.`
      : `minutes or seconds? Write ${minutes} or ${formatDuration(Number(whole))}.`
    : /^[0-5]\d$/.test(fraction)
      ? `minutes and seconds, or minutes with decimals? Write ${whole}:${fraction} or ${minutes}.`
      : `minutes? Write ${minutes}.`;
  return { reason: 'ask', say: `: ${say}` };
}

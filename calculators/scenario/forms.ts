import { type Parsed, parseQuantity } from '../quantities/index.ts';
import { tidyProfile } from './profile-text.ts';
import type { Parameter } from './schema.ts';

/*
 * Texts that must have a form: one of some words, a time of the day, several times, a hill in pieces. Their value is the canonical text.
 */

type Formed = Pick<Parameter, 'form' | 'label' | 'min' | 'max'>;

const read = (canonical: string): Parsed => ({ ok: true, si: null, canonical });
const unreadable = (label: string, how: string): Parsed => ({
  ok: false,
  reason: 'unreadable',
  message: `${label}: write ${how}.`,
});

/** Reads a text of that form; for a clock, `min` and `max` are seconds after midnight, for times the ends of each. Never throws. */
export function readForm(text: string, { form, label, min, max }: Formed): Parsed {
  const said = text.trim().toLowerCase();
  if (said === '') return { ok: false, reason: 'empty', message: '' };
  if (form === 'clock') return readClock(said, label, max);
  if (form === 'times') return readTimes(said, label, min, max);
  if (form === 'profile') return readPieces(said);
  const word = said.replace(/\s+/g, '-');
  return form?.includes(word) ? read(word) : unreadable(label, form?.join(' or ') ?? '');
}

/** `9:30`, `9.30`, `17h30`, `9`, `5:30 pm`. */
function readClock(said: string, label: string, latest: number): Parsed {
  const [, hours, minutes = '00', half] = /^(\d{1,2})(?:[:.h]([0-5]\d))?\s*([ap])?(?:\.?m\.?)?$/.exec(said) ?? [];
  const hour = half ? (Number(hours) % 12) + (half === 'p' ? 12 : 0) : Number(hours);
  return (hour * 60 + Number(minutes)) * 60 <= latest && !(half && Number(hours) > 12)
    ? read(`${hour}:${minutes}`)
    : unreadable(label, 'a time of the day, such as 9:30 or 17:15');
}

/** `1:120,9.6:85,12.1`. */
function readPieces(said: string): Parsed {
  const tidied = tidyProfile(said);
  return 'problem' in tidied ? { ok: false, reason: 'unreadable', message: tidied.problem } : read(tidied.canonical);
}

/** `7:22, 7:18, 7:30`. A comma before one or two digits that no colon follows is decimal: `7:22,5; 7:18`. */
function readTimes(said: string, label: string, min: number, max: number): Parsed {
  const texts = said.split(/[;\s]+|,(?!\d{1,2}(?![\d:]))/).filter((each) => each !== '');
  const times: string[] = [];
  for (const each of texts) {
    const time = parseQuantity(each, 'duration', { unit: 's', where: 'field', min, max, label });
    if (!time.ok) return time.reason === 'expression' ? { ...time, reason: 'unreadable' } : time;
    times.push(time.canonical);
  }
  return times.length < 2 || times.length > 20
    ? unreadable(label, 'two to twenty times, such as 7:22, 7:18, 7:30')
    : read(times.join(','));
}

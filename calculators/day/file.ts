import {
  type Comparing,
  type DayBike,
  type DayDocument,
  type DayRun,
  DOCUMENT_VERSION,
  type Texts,
} from './document.ts';
import { MOST_BIKES, MOST_RUNS, newId } from './editing.ts';

/*
 * A test day as a JSON file: the document itself with a `kind` that tells it from other files. What a later version added and this one
 * does not know is kept. Nothing here throws, whatever the file holds.
 */

export const FILE_KIND = 'uphill-measured-test-day';

/** Largest file that is looked at, in characters: hundreds of times a full day. */
const LONGEST = 5_000_000;

/** A document, or the sentence that says why there is none. */
export type Opened = { ok: true; document: DayDocument } | { ok: false; message: string };

const failed = (message: string): Opened => ({ ok: false, message });

/** The text of a file. */
export const fileText = (document: DayDocument): string =>
  `${JSON.stringify({ kind: FILE_KIND, ...document }, undefined, 2)}\n`;

/** Reads such a file. */
export function readFile(text: string): Opened {
  if (text.length > LONGEST) return failed('This file is too long for a test day.');
  const clean = text.replace(/^\ufeff/, '');
  if (clean.trim() === '') return failed('This file is empty.');
  let value: unknown;
  try {
    value = JSON.parse(clean);
  } catch {
    return failed(
      clean.trimStart().startsWith('{')
        ? 'This file is damaged or cut off: it does not end as it should. Export it anew where it came from.'
        : 'This is no file of a test day: it is not in JSON. A table can be pasted or opened as CSV.',
    );
  }
  if (!isRecord(value) || value.kind !== FILE_KIND)
    return failed('This file holds something else than a test day of this site.');
  const { kind: _, ...rest } = value;
  return documentOf(rest, 'file');
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

class Damage extends Error {}

const isComparing = (value: unknown): value is Comparing =>
  value === 'bikes' || value === 'tyres' || value === 'mass' || value === 'setting';

/** A document from anything: a parsed file, an unpacked link, or what was stored. `what` is how a sentence calls it. */
export function documentOf(value: unknown, what: 'file' | 'link' | 'store'): Opened {
  const place = what === 'store' ? 'What this device kept' : `This ${what}`;
  if (!isRecord(value)) return failed(`${place} is damaged: there is no test day in it.`);
  const { version } = value;
  if (typeof version !== 'number') return failed(`${place} is damaged: its version is missing.`);
  if (version > DOCUMENT_VERSION)
    return failed(
      `${place} was written by a later version of this site (${version}; this page knows ${DOCUMENT_VERSION}). Reload the page and open it again.`,
    );
  try {
    const bikes = entries(value.bikes, 'bike', MOST_BIKES).map((bike) => bikeOf(bike));
    const runs = entries(value.runs, 'run', MOST_RUNS).map((run) => runOf(run));
    return {
      ok: true,
      document: {
        ...value,
        version: DOCUMENT_VERSION,
        system: value.system === 'us' ? 'us' : 'metric',
        comparing: isComparing(value.comparing) ? value.comparing : 'bikes',
        setup: textsOf(value.setup, 'the set-up'),
        bikes: withOwnIds(bikes),
        runs: withOwnIds(runs),
      },
    };
  } catch (error) {
    if (error instanceof Damage) return failed(`${place} is damaged: ${error.message}`);
    throw error;
  }
}

function entries(value: unknown, one: 'bike' | 'run', most: number): Record<string, unknown>[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) throw new Damage(`its list of ${one}s cannot be read.`);
  if (value.length > most) throw new Damage(`it has ${value.length} ${one}s, and a test day holds at most ${most}.`);
  return value.map((entry, index) => {
    if (!isRecord(entry)) throw new Damage(`${one} ${index + 1} cannot be read.`);
    return { ...entry, texts: textsOf(entry.texts, `${one} ${index + 1}`) };
  });
}

/** Texts by name. A number that somebody wrote into a file by hand is taken as its text. */
function textsOf(value: unknown, where: string): Texts {
  if (value === undefined) return {};
  if (!isRecord(value)) throw new Damage(`${where} cannot be read.`);
  const texts: [string, string][] = [];
  for (const [name, typed] of Object.entries(value)) {
    if (typeof typed === 'string' || typeof typed === 'number') texts.push([name, String(typed)]);
    else if (typed !== null) throw new Damage(`“${name.slice(0, 40)}” of ${where} is no text.`);
  }
  return Object.fromEntries(texts);
}

const idOf = (value: unknown): string => (typeof value === 'string' && value !== '' ? value : newId());

const bikeOf = (value: Record<string, unknown>): DayBike => ({
  ...value,
  id: idOf(value.id),
  texts: value.texts as Texts,
});

const runOf = (value: Record<string, unknown>): DayRun => ({
  ...value,
  id: idOf(value.id),
  bike: typeof value.bike === 'string' ? value.bike : '',
  assisted: value.assisted !== false,
  counted: value.counted !== false,
  texts: value.texts as Texts,
});

/** Ids tell one entry from another: a second one of the same id gets its own. */
function withOwnIds<T extends { id: string }>(list: readonly T[]): T[] {
  const seen = new Set<string>(['setup']);
  return list.map((one) => {
    const own = seen.has(one.id) ? { ...one, id: newId() } : one;
    seen.add(own.id);
    return own;
  });
}

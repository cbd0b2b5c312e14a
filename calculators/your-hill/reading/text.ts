/** Bytes that are read at once: small enough for progress to be seen, large enough to be quick. */
const CHUNK = 262_144;

/**
 * How the letters of a file are written: by its mark, by the zeros between plain letters, by what its XML declaration says, else UTF-8.
 * Unknown names count as UTF-8.
 */
export function encodingOf(bytes: Uint8Array): string {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8';
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first && second === 0 && third) return 'utf-16le';
  if (first === 0 && second && third === 0) return 'utf-16be';
  const start = String.fromCharCode(...bytes.subarray(0, 200));
  const named = /^\s*<\?xml[^>]*encoding\s*=\s*["']([\w.:-]+)["']/i.exec(start)?.[1] ?? 'utf-8';
  try {
    const { encoding } = new TextDecoder(named);
    // the declaration was read as single bytes, so it cannot be right about two
    return encoding.startsWith('utf-16') ? 'utf-8' : encoding;
  } catch {
    return 'utf-8';
  }
}

/** The text of a file piece by piece, and how much of it has been read, from 0 to 1. Bytes that are no letter become U+FFFD. */
export function* textChunks(bytes: Uint8Array): Generator<{ text: string; share: number }> {
  const decoder = new TextDecoder(encodingOf(bytes));
  for (let at = 0; at < bytes.length; at += CHUNK) {
    const end = Math.min(at + CHUNK, bytes.length);
    const text = decoder.decode(bytes.subarray(at, end), { stream: end < bytes.length });
    yield { text, share: end / bytes.length };
  }
}

/** Each digit has one way to match, so that a line of a million digits takes no time. */
const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,3})?$/;

/** A number as files write it; undefined for anything else, also for what is too large to be one. NaN where nothing is written. */
export function readNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return Number.NaN;
  if (!NUMBER.test(trimmed)) return undefined;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : undefined;
}

const DATE_TIME =
  /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d(?:[.,]\d+)?))?\s*(?:Z|([+-])(\d\d)(?::?(\d\d))?)?$/i;

/**
 * Seconds since 1970 of a date with a time (ISO 8601); undefined for anything else, NaN where nothing is written. Without a zone it counts
 * as UTC: only differences are used.
 */
export function readDateTime(text: string): number | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return Number.NaN;
  const found = DATE_TIME.exec(trimmed);
  if (!found) return undefined;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = found.slice(1, 6).map(Number);
  const second = Number((found[6] ?? '0').replace(',', '.'));
  const lastDay = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (month < 1 || month > 12 || day < 1 || day > lastDay || hour > 24 || minute > 59 || second >= 61) return undefined;
  const [, , , , , , , sign, zoneHours = '0', zoneMinutes = '0'] = found;
  const ahead = (sign === '-' ? -1 : 1) * (Number(zoneHours) * 3600 + Number(zoneMinutes) * 60);
  return Date.UTC(year, month - 1, day, hour, minute) / 1000 + second - ahead;
}

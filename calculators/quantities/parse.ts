/** What a person or a link says, as an SI value, a canonical text for links, or a sentence that says what is wrong. */
import { clockSeconds, readDuration } from './duration.ts';
import { bare, formatDuration, formatNumber, withUnit } from './format.ts';
import { readNumber, tidy } from './number.ts';
import { findUnit, kinds, unitKey } from './spellings.ts';
import { fromSi, type Kind, toSi, type Unit } from './units.ts';

export type ParseOptions = {
  /** Symbol of the unit that a plain number has: the field's shown unit, or the contract's plain unit in a link. */
  unit: string;
  where: 'field' | 'link';
  /** `none`, `no` and `-` are an answer (a bike without a motor, a motor without a limit). */
  allowNone?: boolean | undefined;
  /** Smallest and largest SI value. */
  min?: number | undefined;
  max?: number | undefined;
  /** Only whole numbers are an answer: laps, teeth. */
  whole?: boolean | undefined;
  /** What messages call the input, "Rider weight"; the name of its kind unless told. */
  label?: string | undefined;
};

export type Reading = {
  ok: true;
  /** SI value; null for `none` and for a text. */
  si: number | null;
  /** As a link writes it. Parsed again with `where: 'link'` it gives the identical SI value. */
  canonical: string;
  note?: string;
};

export type Misreading = {
  ok: false;
  /**
   * `ask`: two readings are possible. `expression`: arithmetic or a unit that only `./expression.ts` knows;
   * the message holds when that cannot read it either.
   */
  reason: 'empty' | 'ask' | 'range' | 'unreadable' | 'expression';
  message: string;
};

export type Parsed = Reading | Misreading;

/** A value before its range is looked at; `shown` is what the person wrote, set as people read it. */
type Found = { ok?: undefined; si: number; canonical: string; shown: string; unit: Unit; note?: string };

const LONGEST = 100;

const misread = (reason: Misreading['reason'], message: string): Misreading => ({ ok: false, reason, message });
const quote = (text: string): string => `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;

/** With relative room for rounding at the ends: 100 km/h is not outside 5 to 100 km/h by its last bit. */
const within = (si: number, min = -Infinity, max = Infinity): boolean =>
  Number.isFinite(si) && si - min >= -1e-12 * Math.abs(si) && max - si >= -1e-12 * Math.abs(si);

/** An end of a range in the person's unit, rounded inwards, so that what the message names is accepted. */
function endText(si: number, unit: Unit, up: boolean): string {
  if (unit.symbol === 's') return formatDuration(up ? Math.ceil(si) : Math.floor(si));
  const value = fromSi(si, unit);
  const digits = Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value) || 1))));
  const scaled = value * 10 ** digits;
  return bare(formatNumber((up ? Math.ceil(scaled - 1e-6) : Math.floor(scaled + 1e-6)) / 10 ** digits, digits));
}

function outOfRange({ shown, unit }: Found, what: string, min?: number, max?: number): Misreading {
  const low = min === undefined ? '' : endText(min, unit, true);
  const high = max === undefined ? '' : withUnit(endText(max, unit, false), unit);
  const than =
    low && high ? `outside ${low} to ${high}` : low ? `less than ${withUnit(low, unit)}` : `more than ${high}`;
  return misread('range', `${what}: ${shown} is ${than}.`);
}

/** `1 in 10`, `1in10`, `1:10`, `1/10`: rise for a length along the horizontal, so the tangent. */
function readRise(said: string, link: boolean): Found | undefined {
  const [, sign, rise = '', run = ''] = /^([-+]?) ?([\d.,]+) ?(?:in|[:/]) ?([\d.,]+)$/i.exec(said) ?? [];
  const up = readNumber(rise, link);
  const along = readNumber(run, link);
  const unit = findUnit('%', 'grade');
  if (!up || !along || up.grouped || along.grouped || !unit) return undefined;
  const minus = sign === '-' && Number(up.digits) ? '-' : '';
  const si = Number(minus + up.digits) / Number(along.digits);
  return {
    si,
    canonical: `${minus}${up.digits}:${along.digits}`,
    shown: `${minus && '−'}${up.digits} in ${along.digits}`,
    unit,
    note: `${withUnit(bare(formatNumber(si * 100, 2)), unit)}: the rise for that length along the horizontal.`,
  };
}

/** A number, alone or with a unit. */
function readPlain(said: string, kind: Kind, { unit, where, min, max }: ParseOptions): Found | Misreading | undefined {
  const own = findUnit(unit, kind);
  if (!own) throw new Error(`${unit} is no unit of ${kind}`);
  const [, sign, raw = '', power, name = ''] =
    /^([-+]?) ?(\d[\d., ]*|[.,]\d+ ?)(?:e\+?(-?\d{1,3}))?(\D.*)?$/i.exec(said) ?? [];
  const number = readNumber(raw.trim(), where === 'link');
  const used = !name || (kind === 'temperature' && /^ ?(°|deg)$/i.test(name)) ? own : findUnit(name, kind);
  if (!number || !used) return undefined;
  const minus = sign === '-' && Number(number.digits) ? '-' : '';
  const { grouped } = number;
  if (grouped && !power) {
    // A comma is always asked about. A point is decimal to whoever writes this site's own links and figures, so it
    // is asked about only where the thousands could be meant as well: 1.609 km is no walk of 1609 km.
    const thousands = max !== undefined && within(toSi(Number(minus + grouped), used), min, max);
    if (number.comma || thousands) {
      const decimal = bare(number.digits);
      const safe = thousands && /\.\d{3}$/.test(decimal) ? `${decimal}0` : decimal;
      const [large, small] = [grouped, safe].map((text) => withUnit((minus && '−') + text, used));
      return misread('ask', `${quote(said)}: thousands or decimals? Write ${large} or ${small}.`);
    }
  }
  const digits = number.digits + (power ? `e${Number(power)}` : '');
  return {
    si: toSi(Number(minus + digits), used) + 0, // no −0
    // Where percent is the plain unit, links write no sign.
    canonical: minus + digits + (used.symbol === '%' && kinds[kind].plain === '%' ? '' : used.symbol),
    shown: withUnit((minus && '−') + digits, used),
    unit: used,
  };
}

function readTime(said: string, link: boolean): Found | Misreading | undefined {
  const read = readDuration(said, link);
  if (!read) return undefined;
  if ('say' in read) return misread(read.reason, quote(said) + read.say);
  const { canonical } = read;
  return { si: clockSeconds(canonical), canonical, shown: canonical, unit: findUnit('s', 'duration') as Unit };
}

function read(said: string, kind: Kind, options: ParseOptions): Found | Misreading | undefined {
  const link = options.where === 'link';
  if (said.length > LONGEST) return undefined;
  if (kind === 'duration') return readTime(said, link);
  return (kind === 'grade' && readRise(said, link)) || readPlain(said, kind, options);
}

/** O for 0 and l or I for 1, as the person should have written it; undefined when that is not what is wrong. */
function mistyped(said: string, kind: Kind, options: ParseOptions): string | undefined {
  const start = /^[-+]?[\dOolI.,:]+/.exec(said)?.[0] ?? '';
  // A small o or l at the end may be the beginning of a unit.
  const letter = /[OI]|[ol](?=[\dOolI.,:])/.exec(start)?.[0];
  if (!letter || !/\d/.test(start)) return undefined;
  const right = read(start.replace(/o/gi, '0').replace(/[lI]/g, '1') + said.slice(start.length), kind, options);
  return right && !right.ok && 'shown' in right
    ? `${quote(said)} has a letter ${letter} in it. Write ${right.shown}.`
    : undefined;
}

/** Arithmetic, or a unit that is in no kind's table, nor the beginning of one that is being typed. */
function mayBeExpression(said: string, kind: Kind): boolean {
  const key = unitKey(/^[-+]?[\d., ]+(.*)$/.exec(said)?.[1] ?? '');
  const isUnit = Object.entries(kinds).some(([name, { units }]) =>
    units.some((u) => u.keys.some((known) => (name === kind ? known.startsWith(key) : known === key))),
  );
  return /\d/.test(said) && /^\(|.[a-z(^*/+-]/i.test(said) && said.length <= LONGEST && !(key && isUnit);
}

function howToWrite(kind: Kind, allowNone: boolean | undefined): string {
  const names = kinds[kind].units.map((u) => u.text).filter(Boolean);
  const with_ = names.length > 1 ? `${names.slice(0, -1).join(', ')} or ${names.at(-1)}` : names[0];
  const how =
    kind === 'duration' ? '7:22, 1:05:30 or 16 min 43 s' : `a number${with_ ? `, alone or with ${with_}` : ''}`;
  return `Write ${how}${kind === 'grade' ? ', or 1 in 10' : ''}${allowNone ? ', or none' : ''}.`;
}

/**
 * Reads a quantity of a kind from what a person typed in a field, or from a link.
 *
 * Understands a unit in any case and usual spelling, decimal comma (fields), thin and no-break spaces, typographic
 * minus and primes, powers of ten, `none` where allowed; for a grade also degrees and `1 in 10`; for a time `7:22`,
 * `1:05:30`, `16 min 43 s`. Never throws for what is typed, and never returns NaN; throws when `options.unit` is
 * not a unit of the kind.
 */
export function parseQuantity(text: string, kind: Kind, options: ParseOptions): Parsed {
  const { allowNone, min, max } = options;
  const said = tidy(text);
  const what = options.label ?? kind;
  if (!said) return misread('empty', `${what}: nothing is written.`);
  if (kind === 'text') return { ok: true, si: null, canonical: text.trim() };
  if (allowNone && /^(none|no)$/i.test(said)) return { ok: true, si: null, canonical: 'none' };
  const found = read(said, kind, options);
  if (found?.ok === false) return found;
  if (found && within(found.si, min, max)) {
    const { si, canonical, note } = found;
    if (options.whole && !Number.isInteger(si))
      return misread(
        'range',
        `${what}: ${quote(said)} is no whole number. Write ${Math.floor(si)} or ${Math.ceil(si)}.`,
      );
    return { ok: true, si, canonical, ...(note && { note }) };
  }
  if (found && (min ?? max) !== undefined) return outOfRange(found, what, min, max);
  const slip = mistyped(said, kind, options);
  if (slip) return misread('unreadable', slip);
  return misread(
    options.where === 'field' && mayBeExpression(said, kind) ? 'expression' : 'unreadable',
    `${what}: ${quote(text.trim())} cannot be read. ${howToWrite(kind, allowNone)}`,
  );
}

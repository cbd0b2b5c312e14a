/** The digits of a number as people type them, before any unit has a meaning. */

/** What keyboards, word processors and web pages put in place of plain ASCII, and the plain sign. */
const odd = '−‐‑‒–—’‘′”“″º×÷∶';
const anyOdd = new RegExp(`[${odd}]`, 'g');
const plain = '------\'\'\'"""°*/:';

/**
 * Text with one kind of space, of minus, of quote; full-width characters made plain, invisible ones taken out.
 * A superscript two becomes `^2`, so that `m²` is an area but `10²` never reads as 102.
 */
export const tidy = (text: string): string =>
  text
    .replace(/[\u200b-\u200f\u2060\ufeff]/g, '')
    .replace(/[！-～]/g, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
    .replace(anyOdd, (c) => plain[odd.indexOf(c)] ?? c)
    .replaceAll('²', '^2')
    .replace(/\s+/g, ' ')
    .trim();

export type NumberReading = {
  /** Digits with a point: `1609.344`. */
  digits: string;
  /** The same digits read with the separator between thousands, when that is possible too. */
  grouped?: string;
  /** That separator was a comma. */
  comma?: boolean;
};

/**
 * Reads digits with points, commas and spaces; undefined when they make no number.
 * In a link only a point is allowed, and it is decimal. In a field, of two different separators the last is decimal,
 * a repeated one stands between thousands, and a single one is decimal, with `grouped` set where it could also
 * stand between thousands: one to three digits before it, the first not 0, and exactly three after it.
 */
export function readNumber(raw: string, link: boolean): NumberReading | undefined {
  if (!/\d/.test(raw) || (link && /[, ]/.test(raw))) return undefined;
  const at = raw.search(/[.,]\d*$/);
  const mark = raw[at];
  const whole = mark ? raw.slice(0, at) : raw;
  const fraction = mark ? raw.slice(at + 1) : '';
  const integer = whole.replace(/\D/g, '').replace(/^0+(?=\d)/, '') || '0';
  const decimal = fraction ? `${integer}.${fraction}` : integer;
  if (integer.length + fraction.length > 40) return undefined;
  if (/^\d*$/.test(whole)) {
    return !link && mark && /^[1-9]\d{0,2}$/.test(whole) && fraction.length === 3
      ? { digits: decimal, grouped: integer + fraction, comma: mark === ',' }
      : { digits: decimal };
  }
  const separator = /^\d{1,3}([., ])\d{3}(\1\d{3})*$/.exec(whole)?.[1];
  if (!separator || link) return undefined;
  if (separator !== mark) return { digits: decimal };
  return fraction.length === 3 ? { digits: integer + fraction } : undefined;
}

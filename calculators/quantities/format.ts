/**
 * Numbers, units and times as people read them. English figures everywhere, whatever the browser's language:
 * a point, and a narrow no-break space between thousands, because "1,430" means two things on one planet.
 */
import { fromSi, type Kind, type System, shownUnit, type Unit } from './units.ts';

/** Narrow no-break space: between number and unit, and between thousands. */
export const SPACE = '\u202f';
/** What stands where there is no value. */
export const NO_VALUE = '–';

export type FormatOptions = {
  /** Exactly so many decimals (of a second for a time). */
  digits?: number | undefined;
  /** Write the plus sign of a positive number too. */
  sign?: boolean | undefined;
  /** Leave off trailing zeros: a given value as people write it, 25 km/h. */
  trim?: boolean | undefined;
};

/** A magnitude's sign: none when all its printed digits are zero, so that "−0" is never seen. */
const withSign = (value: number, text: string, plus: boolean | undefined): string =>
  (/[1-9]/.test(text) ? (value < 0 ? '−' : plus ? '+' : '') : '') + text;

/** A number with so many decimals, thousands set apart, U+2212 as minus; "–" when it is not finite. */
export function formatNumber(value: number, digits = 0, sign = false): string {
  if (!Number.isFinite(value)) return NO_VALUE;
  const [whole = '', fraction] = Math.abs(value).toFixed(digits).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, SPACE);
  return withSign(value, fraction ? `${grouped}.${fraction}` : grouped, sign);
}

/** Seconds as m:ss or h:mm:ss, with so many decimals; carries 59.6 s to 1:00; "–" when it is not finite. */
export function formatDuration(seconds: number, digits = 0, sign = false): string {
  if (!Number.isFinite(seconds)) return NO_VALUE;
  const scale = 10 ** digits;
  const ticks = Math.round(Math.abs(seconds) * scale);
  const whole = Math.floor(ticks / scale);
  const two = (n: number) => String(n % 60).padStart(2, '0');
  const minutes = Math.floor(whole / 60);
  const clock = minutes < 60 ? `${minutes}` : `${Math.floor(minutes / 60)}:${two(minutes)}`;
  const fraction = digits ? `.${String(ticks % scale).padStart(digits, '0')}` : '';
  return withSign(seconds, `${clock}:${two(whole)}${fraction}`, sign);
}

/** Decimals of each kind; none where it is not named. */
const decimals: Partial<Record<Kind, number>> = {
  count: 1,
  mass: 1,
  voltage: 1,
  charge: 1,
  seconds: 1,
  speed: 1,
  wind: 1,
  temperature: 1,
  area: 2,
  ratio: 4,
  grade: 1,
  'specific-power': 2,
};
/** Kinds whose trailing zeros say nothing: people write 37 lb, 0.028 and 32 teeth. */
const trimmed: Kind[] = ['distance', 'count', 'mass', 'voltage', 'charge', 'temperature', 'ratio', 'percent'];

/** Unit and decimals for a value of this size. */
function manner(si: number, kind: Kind, system: System): { unit: Unit; digits: number } {
  const unit = shownUnit(kind, system);
  const value = Math.abs(fromSi(si, unit));
  // Less than a kilometre, or than a tenth of a mile, reads better whole in metres or feet.
  if (kind === 'distance' && value < (system === 'us' ? 0.0995 : 0.9995)) {
    return { unit: shownUnit('height', system), digits: 0 };
  }
  if (kind === 'distance' || kind === 'energy-per-distance') {
    return { unit, digits: value < 9.995 ? 2 : value < 99.95 ? 1 : 0 };
  }
  if (kind === 'work') return { unit, digits: value < 99.95 ? 1 : 0 };
  if (kind === 'length') return { unit, digits: system === 'us' ? 1 : 0 };
  if (kind === 'percent' || kind === 'energy') return { unit, digits: value < 9.95 ? 1 : 0 };
  return { unit, digits: decimals[kind] ?? 0 };
}

/** A number and its unit as people read them; only the degree of an angle stands close. */
export const withUnit = (text: string, unit: Unit): string =>
  unit.text ? text + (unit.text === '°' ? '' : SPACE) + unit.text : text;
/** Without the zeros that end a decimal fraction. */
export const bare = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/**
 * A range as "9:26 to 10:16": the unit once, the same decimals on both sides, one text when both would read alike.
 * "–" when an end is not finite.
 */
export function formatRange(
  low: number,
  high: number,
  kind: Kind,
  system: System,
  { digits, sign, trim }: FormatOptions = {},
): string {
  if (!Number.isFinite(low - high)) return NO_VALUE;
  const { unit, digits: usual } = manner(Math.max(Math.abs(low), Math.abs(high)), kind, system);
  let ends = [low, high].map((si) =>
    kind === 'duration' ? formatDuration(si, digits, sign) : formatNumber(fromSi(si, unit), digits ?? usual, sign),
  );
  if (trim || (digits === undefined && trimmed.includes(kind))) {
    while (ends.every((end) => /\.\d*0$/.test(end))) ends = ends.map((end) => end.replace(/\.?0$/, ''));
  }
  const [from = '', to = ''] = ends;
  return withUnit(from === to ? from : `${from} to ${to}`, unit);
}

/**
 * An SI value as text with its unit, with as many digits as a reader of that kind can use.
 * "–" when there is no finite value. `sign` writes the plus of a gain too.
 */
export const formatQuantity = (
  si: number | null | undefined,
  kind: Kind,
  system: System,
  options?: FormatOptions,
): string => formatRange(si ?? NaN, si ?? NaN, kind, system, options);

/**
 * An SI value as the plain text of a field, in the unit that the field shows and without it: six significant digits,
 * a hyphen as minus (it is typed on), "none" for null, nothing for a value that is not finite.
 * Three decimals get a fourth, a zero: "1.609" might be asked about, because some write thousands so.
 */
export function fieldText(si: number | null, kind: Kind, system: System): string {
  if (si === null) return 'none';
  if (!Number.isFinite(si)) return '';
  if (kind === 'duration') return bare(formatDuration(si, 3)).replace('−', '-');
  const text = String(Number(fromSi(si, shownUnit(kind, system)).toPrecision(6)) + 0);
  return /^-?[1-9]\d{0,2}\.\d{3}$/.test(text) ? `${text}0` : text;
}

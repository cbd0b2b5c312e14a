import { type FormatOptions, formatQuantity, formatRange, type Kind } from '../quantities/index.ts';

/** What of a difference of times can be read: tenths of a second where it is short, a clock where it is long. */
function manner(seconds: number): { kind: Kind; digits: number } {
  const size = Math.abs(seconds);
  return { kind: size < 59.5 ? 'seconds' : 'duration', digits: size < 9.95 ? 1 : 0 };
}

/** A difference of times, s. */
export function differenceText(seconds: number, options?: FormatOptions): string {
  const { kind, digits } = manner(seconds);
  return formatQuantity(seconds, kind, 'metric', { digits, ...options });
}

/** Its range. */
export function differenceRange(low: number, high: number, options?: FormatOptions): string {
  const { kind, digits } = manner(Math.max(Math.abs(low), Math.abs(high)));
  return formatRange(low, high, kind, 'metric', { digits, ...options });
}

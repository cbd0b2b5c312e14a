import { type Kind, kinds, type Parsed, type ParseOptions, parseQuantity } from '../../calculators/quantities/index.ts';

/** As a field in metric units reads it, unless told otherwise. */
export const field = (text: string, kind: Kind, options: Partial<ParseOptions> = {}): Parsed =>
  parseQuantity(text, kind, { unit: kinds[kind].metric, where: 'field', ...options });

/** As a link reads it. */
export const link = (text: string, kind: Kind, options: Partial<ParseOptions> = {}): Parsed =>
  parseQuantity(text, kind, { unit: kinds[kind].plain, where: 'link', ...options });

/** The SI value, or why there is none: the two never compare equal. */
export const si = (parsed: Parsed): number | string | null => (parsed.ok ? parsed.si : parsed.reason);

export const message = (parsed: Parsed): string => (parsed.ok ? `read as ${parsed.canonical}` : parsed.message);

export const kindNames = Object.keys(kinds) as Kind[];
/** Kinds that hold a number. */
export const numericKinds = kindNames.filter((kind) => kind !== 'text');

/** Repeatable random numbers (mulberry32, public domain): a failure can be found again. */
export function randomSource(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

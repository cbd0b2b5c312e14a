/** Units, reading what people type, writing what they read. `./expression.ts` is not here: it brings mathjs along. */
export { clockText } from './duration.ts';
export {
  type FormatOptions,
  fieldText,
  formatDuration,
  formatNumber,
  formatQuantity,
  formatRange,
  NO_VALUE,
  SPACE,
} from './format.ts';
export { type Misreading, type Parsed, type ParseOptions, parseQuantity, type Reading } from './parse.ts';
export { findUnit, type KindFacts, kinds, type SpelledUnit, spokenUnit } from './spellings.ts';
export { fromSi, type Kind, type System, shownUnit, toSi, type Unit } from './units.ts';

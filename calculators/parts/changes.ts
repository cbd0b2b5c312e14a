/** What a calculator loads when something is changed, linked or copied, and not before. */
export * from '../scenario/editing.ts';
export * from '../scenario/link.ts';
export * from '../scenario/onward.ts';

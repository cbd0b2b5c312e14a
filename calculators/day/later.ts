/*
 * What a test day needs after its first key: the answer, the ways to pass it on, and reading a table. One file, loaded as soon as the page
 * is idle, so that it is there when the signal is not.
 */

export { dayOutcome } from './outcome.ts';
export { PassOn } from './PassOn.tsx';
export { PasteRuns } from './PasteRuns.tsx';
export { Result } from './Result.tsx';
export { readySampling } from './sampling.ts';

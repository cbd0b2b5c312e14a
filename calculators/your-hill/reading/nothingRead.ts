import type { Recording } from './recording.ts';

/** A recording that holds nothing but the reason. */
export const nothingRead = (file: string, message: string): Recording => ({
  file,
  format: undefined,
  parts: [],
  problems: [{ where: '', message }],
  notes: [],
  cutShort: false,
});

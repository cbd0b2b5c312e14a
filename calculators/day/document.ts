import type { System } from '../quantities/index.ts';

/*
 * A test day as somebody types it. Every value is the text that was typed, so that nothing is lost and nothing is rounded; `read.ts`
 * makes numbers of it. This is also what is stored, exported as JSON and packed into a link.
 */

export const DOCUMENT_VERSION = 1;

/** Texts by the name of their input; see `inputs.ts`. An absent or empty text is the default, or nothing. */
export type Texts = Readonly<Record<string, string>>;

export interface DayBike {
  id: string;
  texts: Texts;
}

export interface DayRun {
  id: string;
  /** id of its bike; empty while nobody has chosen */
  bike: string;
  assisted: boolean;
  /** false for a run that is kept but not counted; its note says why */
  counted: boolean;
  texts: Texts;
}

/** What differs between the bikes of the day; see `Factor` of the model. */
export type Comparing = 'bikes' | 'tyres' | 'mass' | 'setting';

export interface DayDocument {
  version: typeof DOCUMENT_VERSION;
  /** units that plain numbers have, and that results are shown in */
  system: System;
  comparing: Comparing;
  /** title, date, hill, conditions, rider, instruments, other hill: one text each */
  setup: Texts;
  bikes: readonly DayBike[];
  /** in the order in which they were ridden */
  runs: readonly DayRun[];
}

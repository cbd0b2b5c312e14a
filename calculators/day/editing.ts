import { rotatedOrder } from '../model/plan.ts';
import { fieldText, fromSi, type Kind, type System, shownUnit, toSi } from '../quantities/index.ts';
import {
  type Comparing,
  type DayBike,
  type DayDocument,
  type DayRun,
  DOCUMENT_VERSION,
  type Texts,
} from './document.ts';
import { inputOf, type Place, readInput } from './inputs.ts';
import { hasNoMotor } from './read.ts';

/*
 * Everything that makes a new document from what somebody typed or pressed. All functions are pure; ids are made anew where something
 * is added. An id that the document does not have changes nothing.
 */

/** Most runs and bikes that a day can hold: enough for any tester, and a table by mistake still computes. */
export const MOST_RUNS = 500;
export const MOST_BIKES = 24;

/** There is no room for another run. */
export const isFull = ({ runs }: DayDocument): boolean => runs.length >= MOST_RUNS;

/** A short id that two devices hardly make alike. */
export function newId(): string {
  // randomUUID is missing on pages that were not sent encrypted; getRandomValues is not
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((byte) => (byte % 36).toString(36)).join('');
}

export function emptyDay(system: System = 'metric'): DayDocument {
  return { version: DOCUMENT_VERSION, system, comparing: 'bikes', setup: {}, bikes: [], runs: [] };
}

/** Nothing was entered yet. */
export const isEmptyDay = ({ setup, bikes, runs }: DayDocument): boolean =>
  bikes.length === 0 && runs.length === 0 && Object.values(setup).every((typed) => typed.trim() === '');

const withText = (texts: Texts, name: string, typed: string): Texts => {
  const { [name]: _, ...others } = texts;
  return typed === '' ? others : { ...texts, [name]: typed };
};

const changed = <T extends { id: string }>(list: readonly T[], id: string, change: (one: T) => T): readonly T[] =>
  list.map((one) => (one.id === id ? change(one) : one));

/** The document after somebody typed. `place` is `setup`, or the id of a bike or a run; nothing typed is ever changed or cut. */
export function setText(document: DayDocument, place: string, name: string, typed: string): DayDocument {
  if (place === 'setup') return { ...document, setup: withText(document.setup, name, typed) };
  const change = <T extends { texts: Texts }>(one: T): T => ({ ...one, texts: withText(one.texts, name, typed) });
  return { ...document, bikes: changed(document.bikes, place, change), runs: changed(document.runs, place, change) };
}

export const setComparing = (document: DayDocument, comparing: Comparing): DayDocument => ({ ...document, comparing });

/** How a value becomes the text of a field in the second system. */
type Write = (si: number, kind: Kind, to: System, from: System) => string;

/** The shortest text that keeps the six figures which the first system shows: switched back, it is what it was. */
function sameText(si: number, kind: Kind, to: System, from: System): string {
  const unit = shownUnit(kind, to);
  const before = fieldText(si, kind, from);
  for (let digits = 1; digits <= 9; digits++) {
    const value = Number(fromSi(si, unit).toPrecision(digits));
    // three decimals would be asked about: some write thousands so
    if (fieldText(toSi(value, unit), kind, from) === before)
      return String(value).replace(/^(-?\d{1,3}\.\d{3})$/, '$10');
  }
  return fieldText(si, kind, to);
}

/** Numbers typed without a unit, in the unit that the other system shows. */
function convert(place: Place, texts: Texts, from: System, to: System, write: Write): Texts {
  return Object.fromEntries(
    Object.entries(texts).map(([name, typed]) => {
      const input = inputOf(place, name);
      if (!input || input.kind === 'text' || input.kind === 'duration') return [name, typed];
      const before = readInput(input, typed, from);
      // a text that names its unit says the same in both systems
      const after = readInput(input, typed, to);
      if (!before.ok || before.si === null || (after.ok && after.si === before.si)) return [name, typed];
      return [name, write(before.si, input.kind, to, from)];
    }),
  );
}

/**
 * The document after the units switch: what was typed with a unit stays as it is, plain numbers keep six figures, which is more than
 * anybody measures.
 */
export function chooseSystem(document: DayDocument, system: System, write: Write = sameText): DayDocument {
  if (system === document.system) return document;
  const converted = (place: Place, texts: Texts): Texts => convert(place, texts, document.system, system, write);
  return {
    ...document,
    system,
    setup: converted('setup', document.setup),
    bikes: document.bikes.map((bike) => ({ ...bike, texts: converted('bike', bike.texts) })),
    runs: document.runs.map((run) => ({ ...run, texts: converted('run', run.texts) })),
  };
}

/** Adds a bike at the end. */
export function addBike(document: DayDocument, texts: Texts = {}, id = newId()): DayDocument {
  if (document.bikes.length >= MOST_BIKES) return document;
  return { ...document, bikes: [...document.bikes, { id, texts }] };
}

/** What was taken out, and where it stood, so that `restore` can put it back. */
export interface Removed {
  bike?: { at: number; bike: DayBike };
  runs: readonly { at: number; run: DayRun }[];
}

/** Takes a bike and its runs out. */
export function removeBike(document: DayDocument, id: string): { document: DayDocument; removed: Removed } {
  const at = document.bikes.findIndex((bike) => bike.id === id);
  const bike = document.bikes[at];
  if (!bike) return { document, removed: { runs: [] } };
  const runs = document.runs.flatMap((run, index) => (run.bike === id ? [{ at: index, run }] : []));
  return {
    document: {
      ...document,
      bikes: document.bikes.filter((one) => one !== bike),
      runs: document.runs.filter((run) => run.bike !== id),
    },
    removed: { bike: { at, bike }, runs },
  };
}

/** Takes a run out. */
export function removeRun(document: DayDocument, id: string): { document: DayDocument; removed: Removed } {
  const at = document.runs.findIndex((run) => run.id === id);
  const run = document.runs[at];
  if (!run) return { document, removed: { runs: [] } };
  return {
    document: { ...document, runs: document.runs.filter((one) => one !== run) },
    removed: { runs: [{ at, run }] },
  };
}

const inserted = <T>(list: readonly T[], at: number, one: T): T[] => [...list.slice(0, at), one, ...list.slice(at)];

/** Puts back what was taken out, where it stood; what was changed since stays. */
export function restore(document: DayDocument, removed: Removed): DayDocument {
  const { bike, runs } = removed;
  const isNew = <T extends { id: string }>(list: readonly T[], { id }: T): boolean =>
    list.every((one) => one.id !== id);
  const bikes =
    bike && isNew(document.bikes, bike.bike) ? inserted(document.bikes, bike.at, bike.bike) : document.bikes;
  const put = (list: readonly DayRun[], { at, run }: { at: number; run: DayRun }): readonly DayRun[] =>
    isNew(list, run) ? inserted(list, at, run) : list;
  return { ...document, bikes, runs: runs.reduce(put, document.runs) };
}

/**
 * Bike of the next run. While the first round lasts, the next bike that has not been ridden. Who rode that round in the order of a plan that
 * rotates goes on so; else it is repeated backwards, then forwards again.
 */
export function proposedBike({ bikes, runs, system }: DayDocument): string {
  const motored = bikes.filter((bike) => !hasNoMotor(bike, system)).map(({ id }) => id);
  const ridden = runs.filter((run) => run.assisted && motored.includes(run.bike)).map((run) => run.bike);
  const first = [...new Set(ridden)];
  // one that was ridden with its motor off has had its turn; the others come before it
  const waiting = motored.filter((id) => !first.includes(id));
  const unridden = waiting.find((id) => runs.every((run) => run.bike !== id)) ?? waiting[0];
  // a day begins with a control run where there is a bike for it
  if (runs.length === 0) return bikes.find((bike) => hasNoMotor(bike, system))?.id ?? unridden ?? '';
  if (unridden !== undefined) return unridden;
  const size = first.length;
  if (size === 0) return bikes[0]?.id ?? '';
  const round = Math.floor(ridden.length / size);
  const place = ridden.length % size;
  const planned = rotatedOrder(motored.length, round + 1).map((bikes) => bikes.map((bike) => motored[bike]));
  if (size === motored.length && first.every((id, i) => id === planned[0]?.[i])) return planned[round]?.[place] ?? '';
  return first[round % 2 === 0 ? place : size - 1 - place] ?? '';
}

/** Adds a run at the end: nothing in it but its bike, and that it is assisted when that bike has a motor. */
export function addRun(document: DayDocument, bike = proposedBike(document), id = newId()): DayDocument {
  if (isFull(document)) return document;
  const owner = document.bikes.find((one) => one.id === bike);
  const assisted = owner !== undefined && !hasNoMotor(owner, document.system);
  return {
    ...document,
    runs: [
      ...document.runs,
      { id, bike: owner ? bike : '', assisted: owner ? assisted : true, counted: true, texts: {} },
    ],
  };
}

/** Moves a run up (negative) or down by so many places, as far as the list goes. */
export function moveRun(document: DayDocument, id: string, by: number): DayDocument {
  const from = document.runs.findIndex((run) => run.id === id);
  const run = document.runs[from];
  if (!run) return document;
  const others = document.runs.filter((one) => one !== run);
  const to = Math.max(0, Math.min(others.length, from + by));
  return { ...document, runs: inserted(others, to, run) };
}

/** A run on a bike without a motor is a control run. */
export function setRunBike(document: DayDocument, id: string, bike: string): DayDocument {
  const owner = document.bikes.find((one) => one.id === bike);
  const motorless = owner !== undefined && hasNoMotor(owner, document.system);
  return {
    ...document,
    runs: changed(document.runs, id, (run) => ({ ...run, bike, assisted: motorless ? false : run.assisted })),
  };
}

export const setAssisted = (document: DayDocument, id: string, assisted: boolean): DayDocument => ({
  ...document,
  runs: changed(document.runs, id, (run) => ({ ...run, assisted })),
});

export const setCounted = (document: DayDocument, id: string, counted: boolean): DayDocument => ({
  ...document,
  runs: changed(document.runs, id, (run) => ({ ...run, counted })),
});

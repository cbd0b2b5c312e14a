import { createStore, delMany, getMany, set } from 'idb-keyval';
import { TRACK_COLUMNS } from '../model/index.ts';
import type { ElevationChoice } from './analysis.ts';
import { noteKept } from './kept.ts';
import type { Recording } from './reading/recording.ts';
import type { Stretch } from './stretch.ts';

/*
 * The last recording stays on this device until the reader forgets it: its columns, which hold no position, and what was chosen of it.
 */

/** What the reader said of a ride, to calibrate with it. */
export interface OwnRide {
  /** no motor helped */
  unassisted: boolean;
  /** kg on that ride; undefined: not said */
  rider?: number | undefined;
  bike?: number | undefined;
}

/** What the reader chose of a recording. */
export interface Choice extends ElevationChoice {
  /** index of a part */
  part: number;
  /** null: the hardest climb */
  stretch: Stretch | null;
  /** absent: nothing was said */
  ride?: OwnRide;
}

/** A recording and what was chosen of it. */
export interface Held {
  recording: Recording;
  choice: Choice;
}

/** Whether it is kept, and if not, the sentence that says so. */
export type Keeping = { kept: true } | { kept: false; message: string };

/** Somewhere to keep values under a key. All of it may reject. */
export interface Shelf {
  getMany(keys: string[]): Promise<unknown[]>;
  set(key: string, value: unknown): Promise<void>;
  delMany(keys: string[]): Promise<void>;
}

/** Form of what is stored; another one is not read. */
const VERSION = 1;
const RECORDING = 'recording';
const CHOICE = 'choice';

const REFUSED =
  'This browser keeps nothing for this page, as in a private window: the recording is gone when you leave.';
const FULL = 'The storage of this device is full: the recording is gone when you leave this page.';

const refusal = (error: unknown): Keeping => ({
  kept: false,
  message: error instanceof Error && /quota/i.test(`${error.name} ${error.message}`) ? FULL : REFUSED,
});

/** What this device keeps, if anything that can be read. Never rejects. */
export async function loadKept(shelf: Shelf = database()): Promise<Held | undefined> {
  try {
    const [recording, choice] = await shelf.getMany([RECORDING, CHOICE]);
    return heldOf(recording, choice);
  } catch {
    return undefined;
  }
}

/** Keeps a recording and what was chosen of it in place of the last one. */
export async function keepRecording({ recording, choice }: Held, shelf: Shelf = database()): Promise<Keeping> {
  try {
    await shelf.set(RECORDING, { version: VERSION, recording });
    await shelf.set(CHOICE, choice);
    noteKept(true);
    return { kept: true };
  } catch (error) {
    // half of it is worse than nothing
    await forgetKept(shelf);
    return refusal(error);
  }
}

/** Keeps another choice of the recording that is kept already. */
export async function keepChoice(choice: Choice, shelf: Shelf = database()): Promise<Keeping> {
  try {
    await shelf.set(CHOICE, choice);
    return { kept: true };
  } catch (error) {
    return refusal(error);
  }
}

/** Takes it off this device. Never rejects. */
export async function forgetKept(shelf: Shelf = database()): Promise<void> {
  noteKept(false);
  try {
    await shelf.delMany([RECORDING, CHOICE]);
  } catch {
    // a device that refuses to forget had refused to keep
  }
}

/** What was stored, where it has the form that this page writes. */
function heldOf(stored: unknown, choice: unknown): Held | undefined {
  const { version, recording } = (stored ?? {}) as { version?: unknown; recording?: Recording };
  const { part, stretch, window, threshold, ride } = (choice ?? {}) as Partial<Choice>;
  const chosen = recording?.parts?.[part ?? -1];
  if (version !== VERSION || !recording || !chosen) return undefined;
  const points = chosen.track.distance.length;
  if (
    !TRACK_COLUMNS.every((name) => chosen.track[name] instanceof Float64Array && chosen.track[name].length === points)
  )
    return undefined;
  if (![window, threshold].every(Number.isFinite)) return undefined;
  const isWithin = stretch && stretch.from >= 0 && stretch.from < stretch.to && stretch.to < points;
  return {
    recording,
    choice: {
      part: part ?? 0,
      window: window ?? 0,
      threshold: threshold ?? 0,
      stretch: isWithin ? stretch : null,
      ...(ride && isRide(ride) ? { ride } : {}),
    },
  };
}

const isRide = ({ unassisted, rider, bike }: OwnRide): boolean =>
  typeof unassisted === 'boolean' && [rider, bike].every((mass) => mass === undefined || Number.isFinite(mass));

let opened: Shelf | undefined;

/** A database of its own, asked for when it is first needed. */
function database(): Shelf {
  if (opened) return opened;
  const store = createStore('uphill-measured-recording', 'recording');
  opened = {
    getMany: (keys) => getMany(keys, store),
    set: (key, value) => set(key, value, store),
    delMany: (keys) => delMany(keys, store),
  };
  return opened;
}

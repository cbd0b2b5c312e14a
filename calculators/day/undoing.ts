import type { DayDocument } from './document.ts';
import type { Removed } from './editing.ts';
import { documentOf } from './file.ts';

/*
 * What can be brought back. It outlives a reload, because a phone closes a page that nobody looks at for a while, and a day that was put
 * aside stands nowhere else.
 */

/** Part of the page where something was taken away, and where it can be brought back. */
export type Where = 'runs' | 'bikes' | 'day';

/** A whole day that another one took the place of. */
export interface Replaced {
  document: DayDocument;
  /** id of the run that was being entered */
  draft: string;
}

/** Something that can be brought back, and the sentence that names it. */
export interface Undoable {
  where: Where;
  words: string;
  /** ms since 1970 */
  at: number;
  removed?: Removed;
  replaced?: Replaced;
}

const KEY = 'uphill-measured:undo';
/** What was taken away longer ago was meant, ms. */
const MEANT = 24 * 3_600_000;
/** Enough for a slip and the tries to mend it. */
const MOST = 10;

/** What this device remembers, as far as it can be read. */
export function rememberedUndoables(now = Date.now()): readonly Undoable[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(list) ? list.filter((one) => isUndoable(one) && now - one.at < MEANT) : [];
  } catch {
    return [];
  }
}

/** Remembers the last ones; a device that refuses forgets them with the page. */
export function rememberUndoables(undoables: readonly Undoable[]): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(undoables.slice(-MOST)));
  } catch {
    // refused or full: what stands on the page can be undone all the same
  }
}

function isUndoable(value: Undoable | null): value is Undoable {
  if (typeof value?.words !== 'string' || typeof value.at !== 'number') return false;
  const { removed, replaced } = value;
  return replaced ? documentOf(replaced.document, 'store').ok : Array.isArray(removed?.runs);
}

/* Whether this device keeps a recording. Every visit asks, so this file is small; what keeps it comes on demand: `keptRecording.ts`. */

const KEY = 'uphill-measured:recording';

/** A recording may be kept here. False in a browser that stores nothing. */
export function hasKept(): boolean {
  try {
    return localStorage.getItem(KEY) === 'kept';
  } catch {
    return false;
  }
}

/** Remembers that there is one to look for, or that there is none. */
export function noteKept(kept: boolean): void {
  try {
    if (kept) localStorage.setItem(KEY, 'kept');
    else localStorage.removeItem(KEY);
  } catch {
    // a browser that refuses this keeps no recording either
  }
}

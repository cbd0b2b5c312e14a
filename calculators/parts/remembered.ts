import type { System } from '../quantities/index.ts';

/* The one thing that all tools of the site remember: the reader's units. */

const KEY = 'uphill-units';

/** The units that this reader chose last; metric in a browser that stores nothing. */
export function remembered(): System {
  try {
    return localStorage.getItem(KEY) === 'us' ? 'us' : 'metric';
  } catch {
    return 'metric';
  }
}

export function remember(system: System): void {
  try {
    localStorage.setItem(KEY, system);
  } catch {
    // a browser that stores nothing forgets the choice; the page works all the same
  }
}

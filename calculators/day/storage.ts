import { createStore, get, update } from 'idb-keyval';
import { type DayDocument, DOCUMENT_VERSION } from './document.ts';
import { newId } from './editing.ts';
import { documentOf } from './file.ts';

/*
 * Keeps the test day on this device, at every change. Each stored copy has a revision number; a tab only writes over the revision that it
 * knows, so two tabs never overwrite each other unasked.
 */

const KEY = 'test-day';

/** What is stored. */
interface Entry {
  revision: number;
  /** ms since 1970, to tell which of two stores is newer */
  saved: number;
  /** the visit of the page that wrote it */
  by: string;
  document: DayDocument;
}

/** Somewhere to keep an entry. `change` reads and writes without anybody between; both reject when the device refuses. */
export interface Shelf {
  read(): Promise<unknown>;
  change(next: (before: unknown) => unknown): Promise<void>;
}

/** Tells other tabs that something was stored. */
export interface Bell {
  ring(): void;
  onRing(listen: () => void): void;
}

/** Whether what was entered is kept, and if not, the sentence that says so and what to do. */
export type Keeping = { kept: true } | { kept: false; message: string };

export interface Surroundings {
  /** best first */
  shelves: readonly Shelf[];
  /** of this tab alone, written at once and survives a reload: it holds what the shelves have not taken yet */
  tab?: Shelf;
  bell?: Bell;
  now?: () => number;
}

export interface DayStore {
  /** What was kept, if anything. Call it once, before `save`. Never rejects. */
  load(): Promise<DayDocument | undefined>;
  /** Keeps this document; of several in quick succession the newest is sure to be kept. */
  save(document: DayDocument): void;
  /** Nothing is waiting to be written any more. */
  settled(): Promise<void>;
  /** Called when it changes; the last one is in `keeping`. */
  onKeeping(listen: (keeping: Keeping) => void): void;
  readonly keeping: Keeping;
  /** Another tab stored a document that this one does not know. Nothing of this tab is kept until `take` or `keep`. */
  onOther(listen: (other: DayDocument) => void): void;
  /** The other tab's document counts from now on; the caller shows it. */
  take(): void;
  /** This tab's document counts: the last one given to `save` is stored, or `mine`. */
  keep(mine?: DayDocument): void;
}

const REFUSED =
  'This browser keeps nothing for this page, as in a private window. Your entries last while this tab is open: export the file before you close it.';
const FULL =
  'The storage of this device is full, so the last change is not kept. Export the file, or make room and change something here.';

const LATER =
  'What this device kept was written by a later version of this site. It stays as it is, and nothing that you enter now is kept: reload the page.';
/** ms after which a database that does not answer counts as refused. */
const PATIENCE = 5000;

const isFull = (error: unknown): boolean =>
  error instanceof Error && /quota|NS_ERROR_DOM_QUOTA_REACHED/i.test(`${error.name} ${error.message}`);

function entryOf(value: unknown): Entry | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { revision, saved, by, document } = value as Partial<Record<keyof Entry, unknown>>;
  const opened = documentOf(document, 'store');
  if (typeof revision !== 'number' || !opened.ok) return undefined;
  return {
    revision,
    saved: typeof saved === 'number' ? saved : 0,
    by: typeof by === 'string' ? by : '',
    document: opened.document,
  };
}

/** A later version of the site wrote it: it must not be written over. */
const isLater = (value: unknown): boolean =>
  Number((value as { document?: { version?: unknown } } | undefined)?.document?.version) > DOCUMENT_VERSION;

/** Opens what this device keeps. */
export function openStore(surroundings: Surroundings = thisBrowser()): DayStore {
  const { shelves, tab, bell, now = Date.now } = surroundings;
  const keepingListeners: ((keeping: Keeping) => void)[] = [];
  const otherListeners: ((other: DayDocument) => void)[] = [];
  let keeping: Keeping = { kept: true };
  let shelf: Shelf | undefined = shelves[0];
  const by = newId();
  let revision = 0;
  let latest: DayDocument | undefined;
  let waiting: DayDocument | undefined;
  let writing: Promise<void> | undefined;
  let other: Entry | undefined;

  const say = (next: Keeping): void => {
    const isNew = next.kept !== keeping.kept || (!next.kept && !keeping.kept && next.message !== keeping.message);
    keeping = next;
    if (isNew) for (const listen of keepingListeners) listen(next);
  };

  /** A reload in the next moment must not lose what this tab holds. */
  const hold = (document: DayDocument): void =>
    void tab?.change(() => ({ revision, saved: now(), by, document }) satisfies Entry).catch(() => {});
  const letGo = (): void => void tab?.change(() => undefined).catch(() => {});

  const meet = (entry: Entry): void => {
    other = entry;
    if (latest) hold(latest);
    for (const listen of otherListeners) listen(entry.document);
  };

  async function write(document: DayDocument): Promise<void> {
    if (!shelf) {
      say({ kept: false, message: REFUSED });
      return;
    }
    let met: Entry | undefined;
    let later = false;
    try {
      await shelf.change((before) => {
        const stored = entryOf(before);
        later = isLater(before);
        met = stored && stored.revision !== revision ? stored : undefined;
        return met || later ? before : ({ revision: revision + 1, saved: now(), by, document } satisfies Entry);
      });
      if (later) {
        say({ kept: false, message: LATER });
        return;
      }
      if (met) {
        meet(met);
        return;
      }
      revision += 1;
      if (!waiting && !other) letGo();
      say({ kept: true });
      bell?.ring();
    } catch (error) {
      if (isFull(error)) {
        say({ kept: false, message: FULL });
        return;
      }
      // what refuses once refuses always: the next shelf, and this document again
      shelf = shelves[shelves.indexOf(shelf) + 1];
      revision = (await shelf?.read().then(entryOf, () => undefined))?.revision ?? 0;
      await write(document);
    }
  }

  const flush = (): void => {
    if (writing || !waiting || other) return;
    const document = waiting;
    waiting = undefined;
    writing = write(document).finally(() => {
      writing = undefined;
      flush();
    });
  };

  const save = (document: DayDocument): void => {
    latest = document;
    waiting = document;
    hold(document);
    flush();
  };

  async function lookAround(): Promise<void> {
    const entry = await shelf?.read().then(entryOf, () => undefined);
    if (entry && entry.revision > revision && entry.revision !== other?.revision && !writing) meet(entry);
  }
  bell?.onRing(() => void lookAround());

  return {
    async load() {
      const found: { on: Shelf; entry: Entry }[] = [];
      for (const one of shelves) {
        try {
          const value = await inTime(one.read());
          const entry = entryOf(value);
          if (entry) found.push({ on: one, entry });
          if (isLater(value)) say({ kept: false, message: LATER });
        } catch {
          if (one === shelf) shelf = shelves[shelves.indexOf(one) + 1];
        }
      }
      if (!shelf) say({ kept: false, message: REFUSED });
      found.sort((a, b) => b.entry.saved - a.entry.saved);
      const entry = found[0]?.entry;
      revision = found.find(({ on }) => on === shelf)?.entry.revision ?? 0;
      latest = entry?.document;
      const mine = entryOf(await tab?.read().catch(() => undefined));
      if (!mine) return latest;
      latest = mine.document;
      const isOurs = !entry || entry.revision === mine.revision || entry.by === mine.by;
      // what is not stored yet follows; another tab's document is met after the caller has shown this one's
      if (isOurs) save(mine.document);
      else setTimeout(() => meet(entry), 0);
      return latest;
    },
    save,
    async settled() {
      while (writing) await writing;
    },
    onKeeping: (listen) => void keepingListeners.push(listen),
    get keeping() {
      return keeping;
    },
    onOther: (listen) => void otherListeners.push(listen),
    take() {
      if (!other) return;
      revision = other.revision;
      latest = other.document;
      waiting = undefined;
      other = undefined;
      letGo();
    },
    keep(mine = latest) {
      if (!other) return;
      revision = other.revision;
      other = undefined;
      letGo();
      if (mine) save(mine);
    },
  };
}

const inTime = <T>(promise: Promise<T>): Promise<T> =>
  Promise.race([
    promise,
    new Promise<never>((_, reject) => {
      setTimeout(() => reject(new Error('The database does not answer.')), PATIENCE);
    }),
  ]);

/** The shelf of a database, which is asked for when it is first needed. */
function databaseShelf(): Shelf {
  const store = lazy(() => createStore('uphill-measured', 'days'));
  return {
    read: async () => get(KEY, store()),
    change: async (next) => update(KEY, next, store()),
  };
}

function lazy<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** The shelf of local or session storage; asking for these may already throw. */
function textShelf(storage: () => Storage): Shelf {
  const read = (): unknown => {
    const text = storage().getItem(`uphill-measured:${KEY}`);
    try {
      return text === null ? undefined : JSON.parse(text);
    } catch {
      return undefined;
    }
  };
  return {
    read: async () => read(),
    change: async (next) => {
      const value = next(read());
      if (value === undefined) storage().removeItem(`uphill-measured:${KEY}`);
      else storage().setItem(`uphill-measured:${KEY}`, JSON.stringify(value));
    },
  };
}

/** Rings over a broadcast channel, else by the event that other tabs get when something is stored. */
function browserBell(): Bell {
  if (typeof BroadcastChannel === 'function') {
    const channel = new BroadcastChannel('uphill-measured:test-day');
    return {
      ring: () => channel.postMessage('stored'),
      onRing: (listen) => channel.addEventListener('message', listen),
    };
  }
  const name = 'uphill-measured:test-day-rings';
  return {
    ring: () => {
      try {
        localStorage.setItem(name, String(Date.now()));
      } catch {
        // nobody to tell
      }
    },
    onRing: (listen) => addEventListener('storage', ({ key }) => key === name && listen()),
  };
}

function thisBrowser(): Surroundings {
  return {
    shelves: [databaseShelf(), textShelf(() => localStorage)],
    tab: textShelf(() => sessionStorage),
    bell: browserBell(),
  };
}

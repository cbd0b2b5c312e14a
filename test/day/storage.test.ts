import { describe, expect, test } from 'vitest';
import type { DayDocument } from '../../calculators/day/document.ts';
import { emptyDay } from '../../calculators/day/editing.ts';
import { type Bell, type Keeping, openStore, type Shelf, type Surroundings } from '../../calculators/day/storage.ts';

const titled = (title: string): DayDocument => ({ ...emptyDay(), setup: { title } });

interface FakeShelf extends Shelf {
  value: unknown;
  writes: number;
  /** thrown instead of writing, or reading too */
  refuses?: Error | undefined;
  isShut?: boolean;
}

/** A shelf in memory: `change` takes a turn of its own and lets nobody between, as a transaction does. */
function shelf(value?: unknown): FakeShelf {
  let queue: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => T): Promise<T> => {
    const turn = queue.then(() => new Promise<void>((resolve) => setTimeout(resolve, 1))).then(work);
    queue = turn.catch(() => {});
    return turn;
  };
  const fake: FakeShelf = {
    value,
    writes: 0,
    read: () =>
      inTurn(() => {
        if (fake.isShut) throw fake.refuses;
        return structuredClone(fake.value);
      }),
    change: (next) =>
      inTurn(() => {
        if (fake.refuses) throw fake.refuses;
        fake.value = structuredClone(next(structuredClone(fake.value)));
        fake.writes += 1;
      }),
  };
  return fake;
}

/** Bells of several tabs that hear each other. */
function bells(): () => Bell {
  const listeners = new Map<Bell, () => void>();
  return () => {
    const bell: Bell = {
      ring: () => {
        for (const [other, listen] of listeners) if (other !== bell) setTimeout(listen, 0);
      },
      onRing: (listen) => void listeners.set(bell, listen),
    };
    return bell;
  };
}

const pause = (ms = 30): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const storedTitle = ({ value }: FakeShelf): string | undefined =>
  (value as { document: DayDocument } | undefined)?.document.setup.title;

async function opened(surroundings: Surroundings, mine?: string) {
  const store = openStore(surroundings);
  const keepings: Keeping[] = [];
  const others: string[] = [];
  store.onKeeping((keeping) => keepings.push(keeping));
  store.onOther((other) => others.push(other.setup.title ?? ''));
  const loaded = await store.load();
  if (mine) store.save(titled(mine));
  await store.settled();
  return { store, keepings, others, loaded };
}

describe('what the device keeps', () => {
  test('a day is there again after a reload', async () => {
    const one = shelf();
    const { store, loaded, keepings } = await opened({ shelves: [one] });
    expect(loaded).toBeUndefined();
    store.save(titled('One hill'));
    await store.settled();
    expect((await opened({ shelves: [one] })).loaded).toEqual(titled('One hill'));
    expect(keepings).toEqual([]);
    expect(store.keeping).toEqual({ kept: true });
  });

  test('of many keystrokes the newest is kept, and not every one is written', async () => {
    const one = shelf();
    const { store } = await opened({ shelves: [one] });
    for (let i = 1; i <= 200; i++) store.save(titled(`Hill ${i}`));
    await store.settled();
    expect(storedTitle(one)).toBe('Hill 200');
    expect(one.writes).toBe(2); // the first at once, the newest of those that came meanwhile
  });

  test('a database that refuses: the next shelf, and a reload finds what it holds', async () => {
    const shut = Object.assign(shelf(), { refuses: new Error('denied'), isShut: true });
    const next = shelf();
    await opened({ shelves: [shut, next] }, 'One hill');
    expect(storedTitle(next)).toBe('One hill');
    expect((await opened({ shelves: [shut, next] })).loaded).toEqual(titled('One hill'));
  });

  test('a database that opens but does not write: the next shelf', async () => {
    const stubborn = Object.assign(shelf(), { refuses: new Error('read only') });
    const next = shelf({ revision: 7, saved: 1, document: titled('Old') });
    const { store, others } = await opened({ shelves: [stubborn, next] }, 'One hill');
    expect(storedTitle(next)).toBe('One hill');
    expect(others).toEqual([]);
    expect(store.keeping.kept).toBe(true);
  });

  test('nothing keeps anything: a sentence, and no error', async () => {
    const shut = Object.assign(shelf(), { refuses: new Error('denied'), isShut: true });
    const { keepings } = await opened({ shelves: [shut] }, 'One hill');
    expect(keepings).toHaveLength(1);
    expect(keepings[0]).toMatchObject({ kept: false, message: expect.stringContaining('private window') });
  });

  test('a full storage: a sentence, the old copy stays, and it is tried again at the next change', async () => {
    const one = shelf();
    const { store, keepings } = await opened({ shelves: [one, shelf()] }, 'One');
    one.refuses = new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    store.save(titled('Two'));
    await store.settled();
    expect(storedTitle(one)).toBe('One');
    expect(keepings.at(-1)).toMatchObject({ kept: false, message: expect.stringContaining('full') });
    one.refuses = undefined;
    store.save(titled('Three'));
    await store.settled();
    expect(storedTitle(one)).toBe('Three');
    expect(keepings.at(-1)).toEqual({ kept: true });
  });

  test('of two shelves the newer copy is loaded', async () => {
    const old = shelf({ revision: 9, saved: 1000, document: titled('Old') });
    const recent = shelf({ revision: 2, saved: 2000, document: titled('Recent') });
    const { loaded, store } = await opened({ shelves: [old, recent] });
    expect(loaded).toEqual(titled('Recent'));
    store.save(titled('Newest'));
    await store.settled();
    expect(storedTitle(old)).toBe('Newest');
  });

  test('what is damaged counts as nothing; what a later version wrote is not written over', async () => {
    const damaged = shelf({ revision: 1, saved: 1, document: { version: 1, runs: 'x' } });
    expect((await opened({ shelves: [damaged] }, 'One hill')).loaded).toBeUndefined();
    expect(storedTitle(damaged)).toBe('One hill');
    const later = shelf({ revision: 1, saved: 1, document: { version: 2, setup: { title: 'Later' } } });
    const { keepings } = await opened({ shelves: [later] }, 'One hill');
    expect(storedTitle(later)).toBe('Later');
    expect(keepings.at(-1)).toMatchObject({ kept: false, message: expect.stringContaining('later version') });
  });
});

describe('a reload before the device has written', () => {
  // the page goes away at once: what was asked of the shelf never comes to an end
  const unanswered = (value?: unknown): Shelf => ({
    read: async () => structuredClone(value),
    change: () => new Promise<void>(() => {}),
  });

  test('gives back the last key, also of a day that was never stored', async () => {
    const tab = shelf();
    const store = openStore({ shelves: [unanswered()], tab });
    await store.load();
    store.save(titled('M'));
    store.save(titled('My hill'));
    await pause();
    const one = shelf();
    const again = await opened({ shelves: [one], tab });
    await pause();
    expect(again.loaded).toEqual(titled('My hill'));
    expect(storedTitle(one)).toBe('My hill');
    expect(tab.value).toBeUndefined();
  });

  test('is told from another tab that wrote meanwhile', async () => {
    const tab = shelf();
    const one = shelf();
    await opened({ shelves: [one] }, 'Before');
    const store = openStore({ shelves: [unanswered(one.value)], tab });
    await store.load();
    store.save(titled('Mine'));
    await pause();
    await opened({ shelves: [one] }, 'Theirs');
    const again = await opened({ shelves: [one], tab });
    await pause();
    expect(again.loaded).toEqual(titled('Mine'));
    expect(again.others).toEqual(['Theirs']);
    expect(storedTitle(one)).toBe('Theirs');
  });
});

describe('two tabs', () => {
  test('the other tab is told, and writes over nothing until it has decided', async () => {
    const one = shelf();
    const bell = bells();
    const first = await opened({ shelves: [one], bell: bell() }, 'First');
    const second = await opened({ shelves: [one], bell: bell() });
    expect(second.loaded).toEqual(titled('First'));
    second.store.save(titled('Second'));
    await pause();
    expect(first.others).toEqual(['Second']);
    first.store.save(titled('First again'));
    await pause();
    expect(storedTitle(one)).toBe('Second');
    first.store.keep();
    await pause();
    expect(storedTitle(one)).toBe('First again');
    expect(second.others).toEqual(['First again']);
    second.store.take();
    second.store.save(titled('Second again'));
    await pause();
    expect(storedTitle(one)).toBe('Second again');
  });

  test('a tab that slept through the bell finds out when it writes', async () => {
    const one = shelf();
    const first = await opened({ shelves: [one] }, 'First');
    await opened({ shelves: [one] }, 'Second');
    first.store.save(titled('First again'));
    await first.store.settled();
    expect(storedTitle(one)).toBe('Second');
    expect(first.others).toEqual(['Second']);
  });

  test('a reload before the decision loses neither', async () => {
    const one = shelf();
    const tab = shelf();
    const first = await opened({ shelves: [one], tab }, 'First');
    await opened({ shelves: [one] }, 'Second');
    first.store.save(titled('First again'));
    await first.store.settled();
    await pause();
    const again = await opened({ shelves: [one], tab });
    await pause();
    expect(again.loaded).toEqual(titled('First again'));
    expect(again.others).toEqual(['Second']);
    again.store.take();
    await pause();
    expect((await opened({ shelves: [one], tab })).loaded).toEqual(titled('Second'));
  });

  test('one tab alone is never told of its own changes', async () => {
    const one = shelf();
    const bell = bells();
    const { store, others } = await opened({ shelves: [one], bell: bell() });
    for (let i = 0; i < 5; i++) {
      store.save(titled(`${i}`));
      await pause(3);
    }
    await pause();
    expect(others).toEqual([]);
  });
});

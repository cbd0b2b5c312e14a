import { describe, expect, test } from 'vitest';
import { TRACK_COLUMNS, type Track } from '../../calculators/model/index.ts';
import {
  type Choice,
  forgetKept,
  type Held,
  keepChoice,
  keepRecording,
  loadKept,
  type Shelf,
} from '../../calculators/your-hill/keptRecording.ts';

interface FakeShelf extends Shelf {
  values: Map<string, unknown>;
  refuses?: Error;
}

/** A shelf in memory that copies what it takes, as a database does. */
function shelf(): FakeShelf {
  const values = new Map<string, unknown>();
  const fake: FakeShelf = {
    values,
    getMany: async (keys) => keys.map((key) => structuredClone(values.get(key))),
    set: async (key, value) => {
      if (fake.refuses) throw fake.refuses;
      values.set(key, structuredClone(value));
    },
    delMany: async (keys) => {
      for (const key of keys) values.delete(key);
    },
  };
  return fake;
}

const track = {
  ...(Object.fromEntries(TRACK_COLUMNS.map((name) => [name, Float64Array.of(0, 10, 20)])) as Omit<Track, 'breaks'>),
  breaks: [],
};
const choice: Choice = { part: 0, window: 80, threshold: 4, stretch: { from: 0, to: 2, own: true } };
const held: Held = {
  recording: {
    file: 'hill.gpx',
    format: 'gpx',
    parts: [{ name: 'Hill', kind: 'ride', track, distanceFrom: 'positions', crept: 0, device: {} }],
    problems: [],
    notes: [],
    cutShort: false,
  },
  choice,
};

describe('a kept recording', () => {
  test('comes back as it was, with what was chosen since', async () => {
    const one = shelf();
    expect(await keepRecording(held, one)).toEqual({ kept: true });
    expect(await loadKept(one)).toEqual(held);
    const other: Choice = { ...choice, window: 50, stretch: null };
    expect(await keepChoice(other, one)).toEqual({ kept: true });
    expect((await loadKept(one))?.choice).toEqual(other);
  });

  test('comes back with what was said of the ride, unless that is no weight', async () => {
    const one = shelf();
    const said: Choice = { ...choice, ride: { unassisted: true, rider: 80 } };
    await keepRecording({ ...held, choice: said }, one);
    expect((await loadKept(one))?.choice).toEqual(said);
    one.values.set('choice', { ...choice, ride: { unassisted: true, rider: 'heavy' } });
    expect((await loadKept(one))?.choice).toEqual(choice);
  });

  test('is gone when it is forgotten', async () => {
    const one = shelf();
    await keepRecording(held, one);
    await forgetKept(one);
    expect(await loadKept(one)).toBeUndefined();
    expect(one.values.size).toBe(0);
  });

  test('a device that is full, and one that refuses, give a sentence and keep no half of it', async () => {
    for (const [error, words] of [
      [new DOMException('The quota has been exceeded.', 'QuotaExceededError'), 'full'],
      [new Error('denied'), 'private window'],
    ] as const) {
      const one = shelf();
      await keepRecording(held, one);
      one.refuses = error;
      const keeping = await keepRecording(held, one);
      expect(keeping.kept ? '' : keeping.message).toContain(words);
      expect(one.values.size).toBe(0);
    }
  });

  test.each([
    ['another version', { version: 2, recording: held.recording }, choice],
    ['a part that is not there', { version: 1, recording: held.recording }, { ...choice, part: 3 }],
    [
      'columns of unlike length',
      {
        version: 1,
        recording: {
          ...held.recording,
          parts: [{ ...held.recording.parts[0], track: { ...track, power: Float64Array.of(1) } }],
        },
      },
      choice,
    ],
    ['a window that is no number', { version: 1, recording: held.recording }, { ...choice, window: 'x' }],
    ['nothing at all', undefined, undefined],
  ])('%s is not read', async (_, recording, chosen) => {
    const one = shelf();
    one.values.set('recording', recording);
    one.values.set('choice', chosen);
    expect(await loadKept(one)).toBeUndefined();
  });

  test('a stretch that is not within its part is left out', async () => {
    const one = shelf();
    await keepRecording({ ...held, choice: { ...choice, stretch: { from: 1, to: 9, own: true } } }, one);
    expect((await loadKept(one))?.choice.stretch).toBeNull();
  });
});

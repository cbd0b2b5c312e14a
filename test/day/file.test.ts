import { describe, expect, test } from 'vitest';
import { emptyDay, setText } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { fileText, readFile } from '../../calculators/day/file.ts';
import { random } from '../random.ts';
import { randomDay } from './documents.ts';

const messageOf = (text: string): string => {
  const opened = readFile(text);
  return opened.ok ? 'read' : opened.message;
};
// a file is edited by hand, with anything
// biome-ignore lint/suspicious/noExplicitAny: as above
const edited = (change: (value: any) => void): string => {
  const value = JSON.parse(fileText(exampleDay()));
  change(value);
  return JSON.stringify(value);
};

describe('a test day as a file', () => {
  test('comes back as it went, ids included', () => {
    for (let seed = 0; seed < 300; seed++) {
      const day = randomDay(random(seed));
      expect(readFile(fileText(day)), `seed ${seed}`).toEqual({ ok: true, document: day });
    }
    expect(readFile(`\ufeff${fileText(exampleDay())}`)).toEqual({ ok: true, document: exampleDay() });
  });

  test('says what it is, and is laid out for people', () => {
    const lines = fileText(emptyDay()).split('\n');
    expect(lines.slice(0, 3)).toEqual(['{', '  "kind": "uphill-measured-test-day",', '  "version": 1,']);
  });

  test('keeps what it does not know', () => {
    const text = edited((value) => {
      value.weather = { cloud: 3 };
      value.runs[0].splits = [1, 2];
      value.setup.dog = 'Rex';
    });
    const opened = readFile(text);
    if (!opened.ok) throw new Error(opened.message);
    const after = JSON.parse(fileText(setText(opened.document, 'run-1', 'time', '15:00')));
    expect(after.weather).toEqual({ cloud: 3 });
    expect(after.runs[0]).toMatchObject({ splits: [1, 2], texts: { time: '15:00' } });
    expect(after.setup.dog).toBe('Rex');
  });

  test('a sentence for each file that is none', () => {
    const whole = fileText(exampleDay());
    expect(messageOf('')).toBe('This file is empty.');
    expect(messageOf('Bike,Time\nA,7:22')).toContain('not in JSON');
    for (let length = 1; length < whole.length - 2; length += 97)
      expect(messageOf(whole.slice(0, length)), `cut at ${length}`).toContain('damaged or cut off');
    expect(messageOf('{"kind":"other"}')).toContain('something else');
    expect(messageOf('[1]')).toContain('something else');
    expect(messageOf(edited((value) => (value.version = 2)))).toContain(
      'later version of this site (2; this page knows 1)',
    );
    expect(messageOf(edited((value) => delete value.version))).toContain('version is missing');
    expect(messageOf(edited((value) => (value.runs = 'none')))).toContain('its list of runs cannot be read');
    expect(messageOf(edited((value) => (value.bikes = [null])))).toContain('bike 1 cannot be read');
    expect(messageOf(edited((value) => (value.setup = { wind: {} })))).toContain('“wind” of the set-up is no text');
    expect(messageOf(edited((value) => (value.runs = Array(501).fill({}))))).toContain(
      'it has 501 runs, and a test day holds at most 500',
    );
    expect(messageOf(' '.repeat(6_000_000))).toContain('too long');
  });

  test('mends what can be mended: numbers, missing and equal ids, strange choices', () => {
    const opened = readFile(
      '{"kind":"uphill-measured-test-day","version":1,"system":"x","comparing":3,"setup":{"gain":150,"title":null},"bikes":[{},{"id":"a"},{"id":"a"},{"id":"setup"}],"runs":[{"bike":7,"texts":{"power":200}}]}',
    );
    if (!opened.ok) throw new Error(opened.message);
    const { document } = opened;
    expect(document).toMatchObject({ system: 'metric', comparing: 'bikes', setup: { gain: '150' } });
    expect(new Set(document.bikes.map(({ id }) => id)).size).toBe(4);
    expect(document.bikes.map(({ id }) => id)).not.toContain('setup');
    expect(document.runs[0]).toMatchObject({ bike: '', assisted: true, counted: true, texts: { power: '200' } });
  });
});

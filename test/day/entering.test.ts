import { describe, expect, test } from 'vitest';
import { emptyDay } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { readBytes, textOf } from '../../calculators/day/readBytes.ts';
import { fileName } from '../../calculators/day/saveAs.ts';
import { dayInWords, ridden, runInWords, setupInWords, timesMeant } from '../../calculators/day/words.ts';

describe('the letters of a file', () => {
  // “Höhe” by hand: ö is C3 B6 in UTF-8, F6 in Windows 1252, F6 00 in UTF-16 with its low byte first
  test.each([
    ['UTF-8', [0x48, 0xc3, 0xb6, 0x68, 0x65]],
    ['UTF-8 with its mark', [0xef, 0xbb, 0xbf, 0x48, 0xc3, 0xb6, 0x68, 0x65]],
    ['Windows 1252', [0x48, 0xf6, 0x68, 0x65]],
    ['UTF-16, low byte first', [0xff, 0xfe, 0x48, 0, 0xf6, 0, 0x68, 0, 0x65, 0]],
    ['UTF-16, high byte first', [0xfe, 0xff, 0, 0x48, 0, 0xf6, 0, 0x68, 0, 0x65]],
  ])('%s', (_, bytes) => {
    expect(textOf(new Uint8Array(bytes))).toBe('Höhe');
  });

  test('a file that is gone or too large gets a sentence', async () => {
    const gone = { size: 3, arrayBuffer: () => Promise.reject(new DOMException('gone', 'NotFoundError')) };
    expect(await readBytes(gone as unknown as Blob)).toMatchObject({ ok: false });
    expect(await readBytes({ size: 30_000_000 } as Blob)).toMatchObject({
      ok: false,
      message: expect.stringContaining('30 MB'),
    });
  });
});

test('a time without a colon may mean minutes and seconds, or minutes with decimals', () => {
  // 0.22 min is 13.2 s, 0.5 min is 30 s
  expect(timesMeant('7.22')).toEqual(['7:22', '7:13']);
  expect(timesMeant(' 7,5 ')).toEqual(['7:30']);
  // no clock has 75 seconds
  expect(timesMeant('7.75')).toEqual(['7:45']);
  // 722 s is 12 min 2 s; a clock without its colon comes first, because that is what is typed on number keys
  expect(timesMeant('722')).toEqual(['7:22', '12:02']);
  expect(timesMeant('1643 ')).toEqual(['16:43', '27:23']);
  expect(timesMeant('790')).toEqual(['13:10']);
  expect(timesMeant('7')).toEqual(['7:00', '0:07']);
  for (const text of ['7:22', '', 'quick', '72200', '7.222', '1.05.30']) expect(timesMeant(text)).toEqual([]);
});

test('a file is called after its day', () => {
  expect(fileName('Höhe & Tal, 3. May', 'json')).toBe('hohe-tal-3-may.json');
  for (const title of [undefined, '', '…', '日本']) expect(fileName(title, 'csv')).toBe('test-day.csv');
});

test('runs and days in a few words', () => {
  const day = exampleDay();
  const [control, light] = day.runs;
  if (!control || !light) throw new Error('The example has runs.');
  expect(runInWords(day, light)).toBe('Light assist, 6:48');
  // its motor is not off: it has none
  expect(ridden(day, control)).toBe('Without motor');
  expect(ridden(day, { ...light, assisted: false })).toBe('Light assist, motor off');
  expect(ridden(day, { ...light, bike: '' })).toBe('no bike chosen');
  expect(dayInWords(day)).toBe('“An invented test day” with 11 runs');
  expect(dayInWords(emptyDay())).toBe('the day with no runs');
  expect(setupInWords(day).split(' · ')).toHaveLength(5);
});

import { describe, expect, test } from 'vitest';
import { clockText } from '../../calculators/quantities/index.ts';
import { field, link, message, randomSource, si } from './help.ts';

describe('times', () => {
  test.each<[string, number, string]>([
    ['7:22', 442, '7:22'],
    ['07:22', 442, '7:22'],
    ['16:43', 1003, '16:43'],
    ['1:05:30', 3930, '1:05:30'],
    ['90:00', 5400, '1:30:00'],
    ['0:09', 9, '0:09'],
    ['7:22.5', 442.5, '7:22.5'],
    ['7:22,5', 442.5, '7:22.5'],
    ['7:22.125', 442.125, '7:22.125'],
    ['7：22', 442, '7:22'],
    ['7∶22', 442, '7:22'],
    ['16 min 43 s', 1003, '16:43'],
    ['16m43s', 1003, '16:43'],
    ['16 minutes 43 seconds', 1003, '16:43'],
    ['16′43″', 1003, '16:43'],
    ["16'43''", 1003, '16:43'],
    ['1h', 3600, '1:00:00'],
    ['1 h 5 min', 3900, '1:05:00'],
    ['1 hour 5 mins 3 secs', 3903, '1:05:03'],
    ['2 hrs', 7200, '2:00:00'],
    ['443 s', 443, '7:23'],
    ['443.5 s', 443.5, '7:23.5'],
    ['7.5 min', 450, '7:30'],
    ['7,5 min', 450, '7:30'],
    ['90 min', 5400, '1:30:00'],
    ['0.5h', 1800, '30:00'],
    ['15 min', 900, '15:00'],
    ['15min', 900, '15:00'],
    ['90 s', 90, '1:30'],
    ['1 h 20 min', 4800, '1:20:00'],
    ['1 h 20', 4800, '1:20:00'],
    ['1h20', 4800, '1:20:00'],
    ['1h05', 3900, '1:05:00'],
    ['16 min 43', 1003, '16:43'],
    ["16'43", 1003, '16:43'],
    ['1 h 20 min 30', 4830, '1:20:30'],
    ['0 s', 0, '0:00'],
    ['0:00', 0, '0:00'],
    ['100 h', 360_000, '100:00:00'],
    ['100:00:00', 360_000, '100:00:00'],
    ['6000 min', 360_000, '100:00:00'],
  ])('%s', (text, seconds, canonical) => {
    expect(field(text, 'duration')).toMatchObject({ ok: true, si: seconds, canonical });
    expect(si(link(canonical, 'duration'))).toBe(seconds);
  });

  test.each([
    ['7.22', '“7.22”: minutes and seconds, or minutes with decimals? Write 7:22 or 7:13.'],
    ['7,22', '“7,22”: minutes and seconds, or minutes with decimals? Write 7:22 or 7:13.'],
    ['7.75', '“7.75”: minutes? Write 7:45.'],
    ['7.5', '“7.5”: minutes? Write 7:30.'],
    ['443', '“443”: minutes and seconds, or seconds? Write 4:43 or 7:23.'],
    ['1643', '“1643”: minutes and seconds, or seconds? Write 16:43 or 27:23.'],
    // no clock has 90 seconds
    ['790', '“790”: minutes or seconds? Write 13:10:00 or 13:10.'],
    ['7', '“7”: minutes or seconds? Write 7:00 or 0:07.'],
    ['15', '“15”: minutes or seconds? Write 15:00 or 0:15.'],
    ['7:5', '“7:5” has one figure for the seconds. Write 7:05 or 7:50.'],
    ['7:8', '“7:8” has one figure for the seconds. Write 7:08.'],
  ])('%s is asked about', (text, sentence) => {
    const result = field(text, 'duration');
    expect(si(result)).toBe('ask');
    expect(message(result)).toBe(sentence);
  });

  test.each([
    ['7:75', '“7:75” has 75 seconds, and 59 is the most. Write 8:15.'],
    ['7:60', '“7:60” has 60 seconds, and 59 is the most. Write 8:00.'],
    ['1:75:00', '“1:75:00” has 75 minutes, and 59 is the most. Write 2:15:00.'],
  ])('%s is a slip', (text, sentence) => {
    const result = field(text, 'duration');
    expect(si(result)).toBe('unreadable');
    expect(message(result)).toBe(sentence);
  });

  test.each(['7:', ':22', '7:22:', '7::22', '1:2:3:4', '-7:22', '7:222', '1.2.3', '99999:00', '20 1 h'])(
    '%s is no time',
    (text) => {
      expect(si(field(text, 'duration'))).toBe('unreadable');
    },
  );

  test('a link that holds plain seconds is not guessed at', () => {
    expect(si(link('443', 'duration'))).toBe('ask');
  });

  test('none takes a control run away', () => {
    expect(si(link('none', 'duration', { allowNone: true }))).toBeNull();
  });

  test('seconds to text and back, identical', () => {
    const random = randomSource(7);
    for (let i = 0; i < 3000; i++) {
      const digits = i % 4;
      const seconds = Number((random() * 10 ** (1 + (i % 5))).toFixed(digits));
      const text = clockText(seconds);
      const read = field(text, 'duration');
      expect(read).toMatchObject({ ok: true, canonical: text });
      expect(si(read)).toBeCloseTo(seconds, 9);
      expect(si(link(text, 'duration'))).toBe(si(read));
    }
  });
});

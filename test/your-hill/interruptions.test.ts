import { describe, expect, test } from 'vitest';
import { TRACK_COLUMNS, type Track } from '../../calculators/model/index.ts';
import { mendedLine, missingText, pausesText } from '../../calculators/your-hill/found-words.ts';
import { missingIn, pausesOf } from '../../calculators/your-hill/interruptions.ts';

/** A ride at 5 m/s with a point each second, and 200 W. */
function ridden(seconds: number): Track {
  const column = (of: (i: number) => number): Float64Array => Float64Array.from({ length: seconds }, (_, i) => of(i));
  const empty = Object.fromEntries(TRACK_COLUMNS.map((name) => [name, column(() => Number.NaN)])) as Omit<
    Track,
    'breaks'
  >;
  return { ...empty, distance: column((i) => 5 * i), time: column((i) => i), power: column(() => 200), breaks: [] };
}

describe('where a ride stands still', () => {
  test('a stopped timer and a wait that was recorded, at their places', () => {
    const track = ridden(400);
    // 20 s at 500 m, then 90 s off at what was 1,000 m
    for (let i = 101; i < 400; i++) track.distance[i] = i <= 120 ? 500 : 5 * (i - 20);
    for (let i = 220; i < 400; i++) track.time[i] = i + 90;
    track.breaks = [{ index: 220, why: 'timer', seconds: 91, apart: 0 }];
    expect(pausesOf(track)).toEqual([
      { place: 500, seconds: 20 },
      { place: 1000, seconds: 91 },
    ]);
  });

  test('a moment at a gate is none, nor is a slow hill', () => {
    const track = ridden(100);
    for (let i = 51; i < 100; i++) track.distance[i] = i <= 58 ? 250 : 250 + 0.5 * (i - 58);
    expect(pausesOf(track)).toEqual([]);
  });

  test('a break on a route has no time', () => {
    const track = { ...ridden(20), time: new Float64Array(20).fill(Number.NaN) };
    track.breaks = [{ index: 10, why: 'file', seconds: Number.NaN, apart: 40 }];
    expect(pausesOf(track)).toEqual([]);
  });
});

describe('where a sensor was silent', () => {
  test('each hole with its ends and its time, but not a second here and there', () => {
    const track = ridden(300);
    // from the last watt before, at second 99, to second 129
    track.power.fill(Number.NaN, 100, 130);
    track.power[200] = Number.NaN;
    expect(missingIn(track, 'power')).toEqual([{ from: 495, to: 645, seconds: 30 }]);
    expect(missingText('power', missingIn(track, 'power'), 'metric')).toBe(
      'No power from 495\u202fm to 645\u202fm (0:30).',
    );
  });

  test('a column that never has a value has no holes, and a pause is none', () => {
    const track = ridden(100);
    expect(missingIn(track, 'heartRate')).toEqual([]);
    track.power.fill(Number.NaN, 50, 53);
    track.time = track.time.map((time, i) => (i >= 50 ? time + 600 : time));
    track.breaks = [{ index: 50, why: 'silence', seconds: 601, apart: 5 }];
    expect(missingIn(track, 'power')).toEqual([]);
  });
});

describe('in one line', () => {
  const track = ridden(1000);

  test('what was mended, with size and place; the worst three of many', () => {
    expect(mendedLine([], track, 'metric')).toBe('');
    expect(
      mendedLine(
        [
          { kind: 'spike', from: 124, to: 125, metres: 80 },
          { kind: 'zero', from: 380, to: 382, metres: 650 },
        ],
        track,
        'metric',
      ),
    ).toBe('2 places mended in the heights: a spike of 80\u202fm at 620\u202fm, a zero at 1.90\u202fkm.');
    const many = Array.from({ length: 9 }, (_, i) => ({ kind: 'spike' as const, from: i, to: i, metres: 10 + i }));
    expect(mendedLine(many, track, 'metric')).toMatch(/a spike of 18\u202fm at 40\u202fm, and 6 more\.$/);
    expect(mendedLine(many.slice(0, 1), track, 'metric')).toMatch(/^1 place mended in the heights: a spike of 10/);
  });

  test('of many pauses the three longest, in their order', () => {
    const pauses = [30, 20, 90, 10, 40].map((seconds, i) => ({ place: 1000 * (i + 1), seconds }));
    const figures = { pauses: { count: 5, seconds: 190 }, gaps: 0, elapsed: 1000 } as never;
    expect(pausesText(track, figures, pauses, 'metric')).toBe(
      '5 pauses, 3:10 in all: 0:30 at 1.00\u202fkm, 1:30 at 3.00\u202fkm, 0:40 at 5.00\u202fkm, and 2 more. None was bridged: nothing is counted over them.',
    );
  });
});

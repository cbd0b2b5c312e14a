import { describe, expect, test } from 'vitest';
import { type ClimbFigures, climbFigures } from '../../calculators/model/index.ts';
import { figureResults } from '../../calculators/your-hill/ClimbFigures.tsx';
import { readRecording } from '../../calculators/your-hill/reading/readRecording.ts';
import { timeText, wayText } from '../../calculators/your-hill/words.ts';
import { gpxOf, ride, THREE_HILLS } from './tour.ts';

/* Which figures of a stretch are worth a row. */

const { parts } = readRecording(new TextEncoder().encode(gpxOf(ride(THREE_HILLS), 'Ridden', 'Drawn')), 'tour.gpx');
const figuresOf = (kind: 'ride' | 'route', low: number, high: number): ClimbFigures => {
  const track = parts.find((part) => part.kind === kind)?.track;
  if (!track) throw new Error('not read');
  const at = (metres: number): number => track.distance.findIndex((each) => each >= metres);
  return climbFigures(track, track.elevation, at(low), at(high));
};
const labels = (figures: ClimbFigures): string[] => figureResults(figures, 'metric').map(([label]) => label);

describe('figures of a stretch', () => {
  test('a route has those of its road alone', () => {
    expect(labels(figuresOf('route', 3000, 4800))).toEqual([
      'Along the road',
      'Height gained, top less start',
      'Mean grade',
      'Steepest 100\u202fm, smoothed',
    ]);
  });

  test('a ride that never stood has no row for that', () => {
    expect(labels(figuresOf('ride', 3000, 4800))).not.toContain('Standing');
    const stood = { ...figuresOf('ride', 3000, 4800), pauses: { count: 1, seconds: 241 } };
    expect(labels(stood)).toContain('Standing');
  });

  test('50 m have no steepest 100 m', () => {
    expect(labels(figuresOf('ride', 3000, 3055)).join()).not.toContain('Steepest');
  });

  test('a way down gains nothing', () => {
    expect(labels(figuresOf('ride', 4900, 6200))).toContain('Height, end less start');
  });
});

test('a time says what of it was stood, because speeds leave that out', () => {
  expect(timeText({ elapsed: 1651, pauses: { count: 1, seconds: 241 } })).toBe('27:31, 4:01 of it standing');
  expect(timeText({ elapsed: 1651, pauses: { count: 0, seconds: 0 } })).toBe('27:31');
});

test('a way has two decimals wherever it is told', () => {
  expect([3000, 3010, 9415, 12_340, 640].map((metres) => wayText(metres, 'metric'))).toEqual([
    '3.00\u202fkm',
    '3.01\u202fkm',
    '9.41\u202fkm',
    '12.34\u202fkm',
    '640\u202fm',
  ]);
  expect([100, 1609.344].map((metres) => wayText(metres, 'us'))).toEqual(['328\u202fft', '1.00\u202fmi']);
});

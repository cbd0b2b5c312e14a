import { describe, expect, test } from 'vitest';
import { type Readers, unreadNote } from '../../calculators/scenario/unread.ts';
import { type CalculatorName, readLink } from '../../calculators/scenario/vocabulary.ts';
import { GET } from '../../site/pages/reference/parameters.json.ts';

/*
 * A link with a warm motor gave 47:03 in one calculator and 39:36 in another, which said nothing of what it left out.
 */
const readers = (await GET().json()) as Readers;
const note = (calculator: CalculatorName, query: string): string => unreadNote(readLink(calculator, query), readers);

describe('what a link says that only other calculators read', () => {
  test('is named with the calculator that reads it', () => {
    expect(note('climb-time', 'warm=50&fixed-losses=0.5')).toBe(
      'This page does not use what the link says of “warm” and “fixed-losses” (Holding peak power does), so its answer may be another one.',
    );
  });

  test('by the fewest calculators that read it all', () => {
    expect(note('climb-time', 'health=80&warm=50&cold=90&idle=10')).toBe(
      'This page does not use what the link says of “health”, “cold” and “idle” (Watt-hours does) and “warm” (Holding peak power does), so its answer may be another one.',
    );
  });

  test('by one that rides along the same hill, where several read as much', () => {
    expect(note('side-by-side', 'torque=60Nm')).toContain('(Climb time does)');
    // that one rides an even slope
    expect(note('side-by-side', 'profile=1:2400,235&torque=60Nm')).toContain('“torque” (Your hill does)');
  });

  test('where every calculator reads it, or none, there is nothing to say', () => {
    expect(note('climb-time', 'rider=90&utm=x&speed=3')).toBe('');
    expect(note('holding-peak-power', 'warm=50&fixed-losses=0.5')).toBe('');
  });
});

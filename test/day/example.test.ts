import { describe, expect, test } from 'vitest';
import { exampleDay } from '../../calculators/day/example.ts';
import { readDay } from '../../calculators/day/read.ts';
import { reduceDay } from '../../calculators/model/index.ts';

describe.each(['metric', 'us'] as const)('the example day in %s units', (system) => {
  const reading = readDay(exampleDay(system));
  const { day, doubts, problems } = reading;

  test('is complete, reads without a word, and says that it is invented', () => {
    expect(problems).toEqual([]);
    expect(day?.runs).toHaveLength(11);
    expect(exampleDay(system).setup.title).toContain('invented');
  });

  test('gives the motors back that its times were made with', () => {
    if (!day) throw new Error('no day');
    const { bikes, rolling } = reduceDay(day, doubts);
    // the values of the file's head: what the times were made with
    const planted = [undefined, 290, 440, 590];
    planted.forEach((watts, index) => {
      const motor = bikes[index]?.motorPower;
      if (watts === undefined) expect(motor).toBeUndefined();
      else {
        expect(motor?.low).toBeLessThan(watts);
        expect(motor?.high).toBeGreaterThan(watts);
        expect(Math.abs((motor?.value ?? 0) - watts)).toBeLessThan(15);
      }
    });
    expect(rolling[0]?.estimate.low).toBeLessThan(0.026);
    expect(rolling[0]?.estimate.high).toBeGreaterThan(0.026);
  });
});

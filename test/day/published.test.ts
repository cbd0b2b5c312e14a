/**
 * Links to test days that were passed on once: each must say for ever what it said, ranges included, whatever becomes of the form of links or
 * of what counts where nothing was typed. A row of `links.json` is never edited or taken out; a changed default needs a new version of the
 * document, and the old set beside it.
 */
import { describe, expect, test } from 'vitest';
import { readFragment } from '../../calculators/day/link.ts';
import { dayOutcome } from '../../calculators/day/outcome.ts';
import { relative } from '../random.ts';
import published from './links.json' with { type: 'json' };

describe('a link to a test day says what it said:', () => {
  for (const { what, fragment, results } of published)
    test(what, async () => {
      const opened = await readFragment(fragment);
      if (!opened?.ok) throw new Error(opened?.message ?? 'There is no day in it.');
      const now = new Map(
        dayOutcome(opened.document).results.map(({ name, bike, against, si, low, high }) => [
          [name, bike, against].filter((part) => part !== undefined).join(' '),
          [si, low, high].filter((value) => value !== undefined),
        ]),
      );
      for (const [key, values] of Object.entries(results as Record<string, number[]>)) {
        expect(now.get(key)?.length, key).toBe(values.length);
        values.forEach((value, i) => {
          expect(relative(now.get(key)?.[i] ?? Number.NaN, value), key).toBeLessThan(1e-9);
        });
      }
    });
});

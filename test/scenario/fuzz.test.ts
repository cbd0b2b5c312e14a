import { expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import {
  bikeName,
  columnsOf,
  fieldOf,
  namesOf,
  problemsOf,
  readLink,
  writeLink,
} from '../../calculators/scenario/vocabulary.ts';
import { random } from '../random.ts';
import { anyQuery, CALCULATORS } from './queries.ts';

const BROKEN = /NaN|Infinity|undefined|\[object|\bnull\b/;

test('5,000 random queries: nothing throws, no number is without end, every lack of a value has a reason', () => {
  const r = random(330);
  for (let i = 0; i < 5000; i++) {
    const calculator = r.pick(CALCULATORS);
    const query = anyQuery(r, calculator);
    const scenario = readLink(calculator, query);
    const written = writeLink(scenario);
    expect(writeLink(readLink(calculator, written)), query).toBe(written);
    const { results, remarks } = outcomeOf(calculator, query);
    for (const { name, si, low, high, text, reason } of results) {
      for (const number of [si, low, high])
        expect(number === undefined || Number.isFinite(number), `${query}: ${name}`).toBe(true);
      if (si === undefined && text === undefined) expect(reason, `${query}: ${name}`).toMatch(/\.$/);
      if (si !== undefined) {
        expect(low ?? si, `${query}: ${name}`).toBeLessThanOrEqual(si);
        expect(high ?? si, `${query}: ${name}`).toBeGreaterThanOrEqual(si);
      }
    }
    // a name may hold what a semicolon joined to it
    const names = columnsOf(scenario, 'bike').map((bike) => bikeName(scenario, bike));
    for (const { text } of remarks)
      expect(names.reduce((rest, name) => rest.replaceAll(name, ''), text)).not.toMatch(BROKEN);
    const problems = problemsOf(scenario);
    for (const { problem } of problems) expect(problem).toMatch(/Until then the answer uses |\.$/);
    if (i % 10 === 0)
      for (const name of namesOf(calculator))
        for (const column of columnsOf(scenario, name))
          expect(fieldOf(scenario, name, column).unit).not.toMatch(BROKEN);
  }
}, 60_000);

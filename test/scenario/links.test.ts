/** Links that were passed on once must give the same answers for ever. */
import { expect, test } from 'vitest';
import { type CalculatorName, calculators, readLink, writeLink } from '../../calculators/scenario/vocabulary.ts';
import { relative } from '../random.ts';
import { answersOf } from './answers.ts';
import list from './links.json' with { type: 'json' };

interface Listed {
  calculator: string;
  query: string;
  why: string;
  answers: Record<string, number | string | null>;
}

const links = list.links as unknown as Listed[];

test.each(links.map((link) => [`${link.calculator}/?${link.query} (${link.why})`, link] as const))('%s', (_, link) => {
  const calculator = link.calculator as CalculatorName;
  const answers = answersOf(calculator, link.query);
  for (const [name, listed] of Object.entries(link.answers)) {
    const now = answers[name];
    if (typeof listed !== 'number') expect(now, name).toBe(listed);
    // zero, such as the gap of the fastest, has no relative difference
    else
      expect(
        typeof now === 'number' ? relative(now, listed, 1e-6) : 1,
        `${name}: ${now}, listed ${listed}`,
      ).toBeLessThan(1e-9);
  }
  // and so does the link that the page writes into the address after opening it
  const again = answersOf(calculator, writeLink(readLink(calculator, link.query)));
  expect(again).toEqual(answers);
});

test('the list has each link once, and every calculator’s default', () => {
  const addresses = links.map(({ calculator, query }) => `${calculator}/?${query}`);
  expect(new Set(addresses).size).toBe(addresses.length);
  for (const calculator of Object.keys(calculators)) expect(addresses).toContain(`${calculator}/?`);
});

/** Named scenarios are links that are passed on: each must be read to the last value. */
import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { answerOf } from '../../calculators/outcomes.ts';
import {
  exampleOf,
  isGiven,
  openLink,
  parameterOf,
  presetOf,
  presets,
  problemsOf,
  readLink,
  writeLink,
} from '../../calculators/scenario/vocabulary.ts';

describe.each(presets)('$name', ({ name, calculator, query }) => {
  const scenario = readLink(calculator, query);

  test('says nothing that its calculator does not read', () => {
    expect(scenario.kept).toEqual([]);
    expect(scenario.notes).toEqual([]);
    expect(problemsOf(scenario)).toEqual([]);
    for (const [given] of new URLSearchParams(query)) expect(isGiven(scenario, given), given).toBe(true);
  });

  test('has an answer without a contradiction, and a page of words', () => {
    const { results, remarks } = answerOf(scenario);
    expect(results.filter(({ si }) => si !== undefined).length).toBeGreaterThan(3);
    expect(remarks.filter(({ tone }) => tone === 'wrong')).toEqual([]);
    expect(existsSync(new URL(`../../content/scenarios/${name}.mdx`, import.meta.url))).toBe(true);
  });

  test('stays what it is where the address says only units, and gives way to a link that says more', () => {
    const said = openLink(scenario, '?units=us', 'metric');
    expect(said.system).toBe('us');
    expect(readLink(calculator, writeLink(said).replace('units=us', 'units=metric')).cells).toEqual(
      readLink(calculator, `${writeLink(scenario)}&units=metric`).cells,
    );
    const more = openLink(scenario, '?rider=71kg', 'metric');
    expect(more.cells).toEqual(readLink(calculator, 'rider=71kg').cells);
    expect(Object.keys(more.cells)).toEqual(['rider']);
    expect(parameterOf('rider').name).toBe('rider');
  });
});

test('a page without a scenario of its own opens a link as it is', () => {
  expect(openLink(exampleOf('climb-time'), '?power=200W', 'us')).toEqual(readLink('climb-time', 'power=200W', 'us'));
  expect(openLink(exampleOf('climb-time'), '', 'us')).toEqual(exampleOf('climb-time', 'us'));
});

test('a name that there is not is our own mistake', () => {
  expect(() => presetOf('moon')).toThrow('There is no scenario “moon”.');
  expect(new Set(presets.map(({ name }) => name)).size).toBe(presets.length);
});

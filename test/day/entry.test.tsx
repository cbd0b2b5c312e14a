import { renderToString } from 'preact-render-to-string';
import { expect, test } from 'vitest';
import { DaySheet } from '../../calculators/day/DaySheet.tsx';
import type { DayDocument, DayRun } from '../../calculators/day/document.ts';
import { emptyDay, MOST_RUNS } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { dayOutcome } from '../../calculators/day/outcome.ts';
import { Result } from '../../calculators/day/Result.tsx';
import { RunEntry } from '../../calculators/day/RunEntry.tsx';
import { RunList } from '../../calculators/day/RunList.tsx';
import { readDay } from '../../calculators/day/read.ts';
import type { Handle } from '../../calculators/day/useDay.ts';

const runs = (count: number): DayRun[] =>
  Array.from({ length: count }, (_, i) => ({ id: `r${i}`, bike: 'a', assisted: true, counted: true, texts: {} }));

/** The entry of a run on a day of so many; `open` is one of them, or the next. */
function shown(count: number, open = 'next'): string {
  const document: DayDocument = { ...emptyDay(), bikes: [{ id: 'a', texts: { name: 'Light' } }], runs: runs(count) };
  const run = document.runs.find(({ id }) => id === open) ?? { ...runs(1)[0], id: open };
  const day = { document, open: run, isNext: open === 'next', problemOf: () => undefined, said: '', kept: true };
  return renderToString(<RunEntry day={day as unknown as Handle} />);
}

test('a run is not offered where the day has no room for it', () => {
  expect(shown(MOST_RUNS - 1)).toContain('name="time"');
  expect(shown(MOST_RUNS - 1)).toContain('Run 500');
  expect(shown(MOST_RUNS)).not.toContain('<input');
  expect(shown(MOST_RUNS)).toContain('This day holds 500 runs, the most that it can.');
  // those that it has can be changed all the same
  expect(shown(MOST_RUNS, 'r499')).toContain('Change run 500');
  expect(shown(MOST_RUNS, 'r499')).toContain('name="time"');
});

test('the list of runs says why there is no answer: after a table came in, that is where the reader is', () => {
  const listOf = (setup: DayDocument['setup']): string => {
    const document: DayDocument = {
      ...emptyDay(),
      setup,
      bikes: [{ id: 'a', texts: { name: 'Light', bike: '18' } }],
      runs: [{ id: 'r', bike: 'a', assisted: true, counted: true, texts: { time: '7:22', power: '200' } }],
    };
    const { missing } = readDay(document);
    const day = { document, listed: document.runs, missing, problemsOf: () => [] };
    return renderToString(<RunList day={day as unknown as Handle} />);
  };
  expect(listOf({})).toContain('Fill in how long the hill is and how much height it gains.');
  expect(listOf({})).toContain('Open the set-up');
  expect(listOf({ distance: '1.5', gain: '150' })).not.toContain('Open the set-up');
});

test('who rode and where are on the sheet, and nothing of it while nothing is typed', () => {
  const sheetOf = (setup: DayDocument['setup']): string =>
    renderToString(<DaySheet document={{ ...emptyDay(), setup }} heading="What was entered" />);
  const sheet = sheetOf({ place: 'Invented valley', tester: 'A. B.' });
  expect(sheet).toContain('<dt>Place</dt><dd>Invented valley</dd>');
  expect(sheet).toContain('<dt>Who rode</dt><dd>A. B.</dd>');
  expect(sheetOf({ title: 'One hill' })).not.toContain('<dt>Who rode</dt>');
});

test('a day that somebody shared asks its reader first for their own hill and weight', () => {
  const day = exampleDay();
  const outcome = dayOutcome(day);
  const shown = (how: { shared?: boolean; embedded?: boolean }): string =>
    renderToString(<Result document={day} outcome={outcome} {...how} />);
  const button = /<a class="main" href="([^"]*)"([^>]*)>My hill, my weight<\/a>/;
  for (const how of [{ shared: true }, { embedded: true }]) {
    const html = shown(how);
    // it leads to the other hill with what was measured, and comes before the answer
    expect(button.exec(html)?.[1]).toMatch(/\/calculators\/bigger-hill\/\?distance=1\.5.*name=Light.*time=/);
    expect(html.search(button)).toBeLessThan(html.indexOf('class="headline"'));
  }
  // from a frame it opens beside the page that it stands in
  expect(button.exec(shown({ embedded: true }))?.[2]).toContain('target="_blank"');
  expect(button.exec(shown({ shared: true }))?.[2]).toBe('');
  expect(shown({})).not.toMatch(button);
});

import { readFileSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import { type CalculatorName, pathOf } from '../../calculators/scenario/vocabulary.ts';
import { dist, sitePaths } from './built.ts';
import { expect, test } from './fixtures.ts';
import { changed, copyLink, enter, expected, field, ready, results, warmUp } from './tool.ts';

/* The calculators inside pages to read: they wake when they come into view, and leave the address to the page. */

const pages = sitePaths()
  .filter((path) => path.startsWith('/learn/'))
  .map((path) => ({ path, html: readFileSync(`${dist}${path}index.html`, 'utf8') }))
  .filter(({ html }) => html.includes('data-tool='));

test('every page to read has its calculator', () => {
  expect(pages.length).toBe(sitePaths().filter((path) => path.startsWith('/learn/')).length);
});

const tools = pages.flatMap(({ path, html }) =>
  [...html.matchAll(/data-tool="([^"]*)" data-query(?:="([^"]*)")?/g)].map(([, name = '', given = '']) => ({
    path,
    name: name as CalculatorName,
    query: given.replaceAll('&amp;', '&').replaceAll('&#38;', '&'),
  })),
);

/** px below the window: islands wake at 200, and what stands above them may have been shorter before its fonts came. */
const FAR = 600;

for (const { path, name, query } of tools) {
  test(`${path}: ${name} answers its own question, wakes in view and leaves the address alone`, async ({ page }) => {
    const scripts: string[] = [];
    page.on('request', (request) => {
      if (/\/(form|island|answers)\.[\w-]+\.js$/.test(request.url())) scripts.push(request.url());
    });
    await page.goto(`${path}?power=999W&units=us`, { waitUntil: 'networkidle' });
    const islands = page.locator('[data-island]');
    await expect(islands).toHaveCount(tools.filter((tool) => tool.path === path).length);
    const island = islands.and(page.locator(`[data-island="${name}"]`));
    const distance = (each: Locator) => each.evaluate((element) => element.getBoundingClientRect().top - innerHeight);
    if ((await distance(islands.first())) > FAR) expect(scripts).toEqual([]);
    if ((await distance(island)) > FAR) await expect(island).not.toHaveAttribute('data-live');
    await island.scrollIntoViewIfNeeded();
    const which = `[data-tool="${name}"]`;
    const tool = await ready(page, which);
    // the form; what answers comes when it is touched
    const kinds = scripts.map((script) => script.replace(/.*\/(\w+)\..*/, '$1'));
    expect([...new Set(kinds)].sort()).toEqual(['form', 'island']);
    // the page's address is not its own
    expect(await results(tool)).toEqual(expected(name, query));

    await warmUp(tool);
    const input = changed(name);
    const before = await field(tool, input).inputValue();
    await enter(tool, input, '91');
    await page.waitForTimeout(400);
    expect(new URL(page.url()).search).toBe('?power=999W&units=us');
    const after = await results(tool);
    expect(after).not.toEqual(expected(name, query));

    const link = await copyLink(page, tool);
    expect(new URL(link).pathname).toBe(pathOf(name));
    expect(new URL(link).searchParams.get(input)).toMatch(/^91(kg|W)$/);

    await tool.getByRole('button', { name: 'Back to the example' }).click();
    expect(await results(tool)).toEqual(expected(name, query));
    await expect(field(tool, input)).toHaveValue(before);

    await page.goto(link);
    expect(await results(await ready(page))).toEqual(after);
  });
}

import { readFileSync } from 'node:fs';
import type { CalculatorName } from '../../calculators/scenario/vocabulary.ts';
import { dist, sitePaths } from './built.ts';
import { expect, test } from './fixtures.ts';
import { copyLink, enter, expected, field, ready, results, warmUp } from './tool.ts';

/* The calculators inside pages to read: they wake when they come into view, and leave the address to the page. */

const pages = sitePaths()
  .filter((path) => path.startsWith('/learn/'))
  .map((path) => ({ path, html: readFileSync(`${dist}${path}index.html`, 'utf8') }))
  .filter(({ html }) => html.includes('data-tool='));

test('every page to read has its calculator', () => {
  expect(pages.length).toBe(sitePaths().filter((path) => path.startsWith('/learn/')).length);
});

for (const { path, html } of pages) {
  const [, name = ''] = /data-tool="([^"]*)"/.exec(html) ?? [];
  const [, given = ''] = /data-query="([^"]*)"/.exec(html) ?? [];
  const query = given.replaceAll('&amp;', '&').replaceAll('&#38;', '&');

  test(`${path}: its calculator answers its own question, wakes in view and leaves the address alone`, async ({
    page,
  }) => {
    const scripts: string[] = [];
    page.on('request', (request) => {
      if (/\/(form|island|answers)\.[\w-]+\.js$/.test(request.url())) scripts.push(request.url());
    });
    await page.goto(`${path}?power=999W&units=us`, { waitUntil: 'networkidle' });
    const island = page.locator('[data-island]');
    await expect(island).toHaveCount(1);
    const distance = await island.evaluate((element) => element.getBoundingClientRect().top - innerHeight);
    if (distance > 200) {
      expect(scripts).toEqual([]);
      await expect(island).not.toHaveAttribute('data-live');
    }
    await island.scrollIntoViewIfNeeded();
    const tool = await ready(page);
    // the form; what answers comes when it is touched
    expect(scripts.map((script) => script.replace(/.*\/(\w+)\..*/, '$1')).sort()).toEqual(['form', 'island']);
    // the page's address is not its own
    expect(await results(tool)).toEqual(expected(name as CalculatorName, query));

    await warmUp(tool);
    await enter(tool, 'rider', '91 kg');
    await page.waitForTimeout(400);
    expect(new URL(page.url()).search).toBe('?power=999W&units=us');
    const changed = await results(tool);
    expect(changed).not.toEqual(expected(name as CalculatorName, query));

    const link = await copyLink(page);
    expect(new URL(link).pathname).toBe(`/calculators/${name}/`);
    expect(new URL(link).searchParams.get('rider')).toBe('91kg');

    await tool.getByRole('button', { name: 'Back to the example' }).click();
    expect(await results(tool)).toEqual(expected(name as CalculatorName, query));
    await expect(field(tool, 'rider')).toHaveValue('82');

    await page.goto(link);
    expect(await results(await ready(page))).toEqual(changed);
  });
}

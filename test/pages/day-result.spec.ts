import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import type { DayDocument } from '../../calculators/day/document.ts';
import { HEIGHT_MESSAGE } from '../../calculators/day/embed.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { dayFragment } from '../../calculators/day/link.ts';
import { dayOutcome } from '../../calculators/day/outcome.ts';
import { resultsCsv } from '../../calculators/day/results-file.ts';
import { publishedSentence } from '../../calculators/day/sentences.ts';
import { timedDay, withBike, withSetup } from '../outcomes/timed-day.ts';
import { colourRules, findings } from './accessibility.ts';
import { expect, test } from './fixtures.ts';

/* What a test day answers, how it is passed on, and how it looks inside another page. */

test.use({ actionTimeout: 10_000 });

/** Five bikes of one run each, one on other tyres, and another hill: much to show. */
const fullDay = withSetup(
  { 'target-gain': '2000 ft', title: 'Invented hill' },
  withBike(
    'more',
    { name: 'Fourth', bike: '40', tyres: 'others', battery: '500' },
    [['6:30', '203']],
    withBike('other', { name: 'Third', bike: '38' }, [['7:05', '200']]),
  ),
);

/** Opens a linked day and waits for its answer. */
async function openResult(page: Page, document: DayDocument, query = ''): Promise<Locator> {
  await page.goto(`/test/day/${query}${await dayFragment(document)}`);
  const result = page.locator('.day-result');
  await result.waitFor();
  return result;
}

/** Every result with a value, as its element holds it. */
function expected(document: DayDocument): Record<string, string> {
  return Object.fromEntries(
    dayOutcome(document).results.flatMap(({ name, bike, against, si, low, high }) => {
      if (si === undefined) return [];
      const key = [
        name,
        ...(bike === undefined ? [] : ['of', bike]),
        ...(against === undefined ? [] : ['against', against]),
      ];
      return [[key.join(' '), low === undefined && high === undefined ? String(si) : `${si} (${low} to ${high})`]];
    }),
  );
}

const shown = async (result: Locator): Promise<Record<string, string>> =>
  Object.fromEntries(Object.entries(await allOutputs(result)).filter(([, text]) => /^-?[\d.]/.test(text)));

/** Like `results` of the calculators, with the other bike of a pair in the key. */
async function allOutputs(result: Locator): Promise<Record<string, string>> {
  const all = await result.locator('output').evaluateAll((outputs) =>
    outputs.map((output) => {
      const { name, dataset } = output as HTMLOutputElement;
      const { bike, against, si, low, high } = dataset;
      const key = [name, ...(bike ? ['of', bike] : []), ...(against ? ['against', against] : [])].join(' ');
      return [
        key,
        si === undefined ? 'none' : low === undefined && high === undefined ? si : `${si} (${low} to ${high})`,
      ] as const;
    }),
  );
  expect(new Set(all.map(([key]) => key)).size, 'a result stands there twice').toBe(all.length);
  return Object.fromEntries(all);
}

for (const [name, document] of Object.entries({ example: exampleDay(), full: fullDay }))
  test(`every result of the ${name} day stands in the page once, as it was computed`, async ({ page }) => {
    const result = await openResult(page, document);
    expect(await shown(result)).toEqual(expected(document));
  });

test('in both themes and at 320 px nothing is hard to read or sticks out', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 800 });
  for (const [i, colorScheme] of (['light', 'dark'] as const).entries()) {
    await page.emulateMedia({ colorScheme });
    const result = await openResult(page, fullDay);
    await result.locator('summary').first().click();
    expect(await findings(page, i === 0 ? undefined : colourRules), colorScheme).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  }
});

test('20,000 days are drawn beside the page, and one sentence says how far they agree', async ({ page }) => {
  const result = await openResult(page, timedDay);
  await expect(result.locator('.simulated')).toContainText(
    /20\u202f000 days drawn with these doubts give the same ranges/,
    {
      timeout: 30_000,
    },
  );
});

test('without workers nothing is said of drawing, and the rest is there', async ({ page }) => {
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'Worker'));
  const result = await openResult(page, timedDay);
  await page.waitForTimeout(1500);
  await expect(result.locator('.simulated')).toHaveCount(0);
  expect(await shown(result)).toEqual(expected(timedDay));
});

test.describe('passed on', () => {
  test('the copied link opens the same day; copied sentence and code hold what they should', async ({
    page,
    context,
    baseURL,
  }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    const result = await openResult(page, timedDay);
    const clipboard = (): Promise<string> => page.evaluate(() => navigator.clipboard.readText());
    const passOn = page.locator('.pass-on');

    await passOn.getByRole('button', { name: 'Copy the link' }).click();
    await expect(passOn.getByRole('status')).toContainText('Link copied.');
    const link = await clipboard();
    expect(link.startsWith(`${baseURL}/test/day/#day=1.`)).toBe(true);

    await result.getByRole('button', { name: 'Copy the sentence' }).click();
    await expect(result.getByText('Copied.')).toBeVisible();
    expect(await clipboard()).toBe(publishedSentence(timedDay, dayOutcome(timedDay)));

    await passOn.getByRole('button', { name: 'Copy code to embed' }).click();
    await expect(passOn.getByRole('status')).toContainText('Code copied.');
    const code = await clipboard();
    expect(code).toContain(`<iframe src="${link.replace('/test/day/', '/test/day/?view=embed')}"`);
    expect(code).toContain(HEIGHT_MESSAGE);

    await page.goto('about:blank');
    await page.goto(link);
    await expect(page.locator('.day-result output').first()).toBeAttached();
    expect(await shown(page.locator('.day-result'))).toEqual(expected(timedDay));
  });

  test('without a clipboard the link stands there to be copied by hand', async ({ page }) => {
    await page.addInitScript(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
    await openResult(page, timedDay);
    await page.getByRole('button', { name: 'Copy the link' }).click();
    await expect(page.getByLabel('To be copied by hand')).toHaveValue(/\/test\/day\/#day=1\./);
  });

  test('results and runs are saved as tables', async ({ page }) => {
    await openResult(page, fullDay);
    const save = async (name: string): Promise<{ file: string; text: string }> => {
      const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
      return { file: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
    };
    const table = await save('Results as a table (CSV)');
    expect(table).toEqual({ file: 'invented-hill.results.csv', text: resultsCsv(fullDay, dayOutcome(fullDay)) });
    expect((await save('Runs as a table (CSV)')).text).toContain('16:43');
    expect(JSON.parse((await save('The day as a file (JSON)')).text).runs).toHaveLength(fullDay.runs.length);
  });
});

test.describe('printed', () => {
  test.skip(({ hasTouch }) => Boolean(hasTouch), 'a sheet does not depend on the window');

  for (const format of ['A4', 'Letter'])
    test(`a usual day fits one sheet of ${format}: answer, doubts, sentence, and everything that was entered`, async ({
      page,
    }) => {
      const result = await openResult(page, exampleDay());
      const margin = '10mm';
      const sheet = await page.pdf({ format, margin: { top: margin, right: margin, bottom: margin, left: margin } });
      expect(sheet.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1);
      await page.emulateMedia({ media: 'print' });
      for (const part of ['.day-answer', '.day-charts', '.bikes', '.pairs', '.day-doubts', 'blockquote'])
        await expect(result.locator(part)).toBeVisible();
      await expect(page.locator('.day-sheet:visible tbody tr')).toHaveCount(4 + 11);
      for (const part of ['.pass-on', '.header', 'h1']) await expect(page.locator(part).first()).toBeHidden();
    });
});

test.describe('inside another page', () => {
  /** A page of a publisher on the same server, with the day in a frame, and the heights that it is told. */
  async function embed(
    page: Page,
    address: string,
  ): Promise<{ frame: ReturnType<Page['frameLocator']>; heights: () => Promise<unknown[]> }> {
    await page.route('**/publisher', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: '<!doctype html><title>Publisher</title><meta name="viewport" content="width=device-width"><iframe style="width:100%;height:300px;border:0"></iframe>',
      }),
    );
    await page.goto('/publisher');
    await page.evaluate((src) => {
      const told: unknown[] = [];
      Object.assign(window, { told });
      addEventListener('message', ({ data }) => told.push(data));
      document.querySelector('iframe')?.setAttribute('src', src);
    }, address);
    return {
      frame: page.frameLocator('iframe'),
      heights: () => page.evaluate(() => (window as unknown as { told: unknown[] }).told),
    };
  }

  test('there is the result and nothing else, as wide as the frame, and its height is told', async ({ page }) => {
    const { frame, heights } = await embed(page, `/test/day/?view=embed${await dayFragment(fullDay)}`);
    const result = frame.locator('.day-result');
    await result.waitFor();
    // the last sentence to come, after which nothing grows
    await expect(result.locator('.simulated')).toContainText('days drawn with', { timeout: 30_000 });
    expect(await shown(result)).toEqual(expected(fullDay));
    for (const gone of ['header.header', 'nav', 'footer', 'h1', '.pass-on', '.set-up', '.run-entry', 'aside'])
      for (const each of await frame.locator(gone).all()) await expect(each, gone).toBeHidden();
    const { width, height, scrolls } = await frame.locator('.tool').evaluate((tool) => ({
      width: tool.getBoundingClientRect().width,
      height: tool.getBoundingClientRect().bottom + scrollY,
      scrolls: document.documentElement.scrollWidth > innerWidth,
    }));
    expect(scrolls).toBe(false);
    expect(width).toBeGreaterThan(
      0.95 * (await page.evaluate(() => document.querySelector('iframe')?.clientWidth ?? 0)),
    );
    await expect
      .poll(async () => (await heights()).at(-1))
      .toEqual({ type: HEIGHT_MESSAGE, height: Math.ceil(height) });
    // with that height nothing in the frame scrolls
    await page
      .locator('iframe')
      .evaluate((element, px) => element.style.setProperty('height', `${px}px`), Math.ceil(height));
    expect(await frame.locator('html').evaluate((html) => html.scrollHeight - html.clientHeight)).toBeLessThanOrEqual(
      0,
    );
  });

  test('it keeps nothing on the device, and leads to the whole day', async ({ page, context }) => {
    const { frame } = await embed(page, `/test/day/?view=embed${await dayFragment(timedDay)}`);
    await frame.locator('.day-result').waitFor();
    const [whole] = await Promise.all([
      context.waitForEvent('page'),
      frame.getByRole('link', { name: /All runs/ }).click(),
    ]);
    await expect(whole.locator('.day-result')).toBeVisible();
    await expect(whole.locator('.day-sheet:visible')).toContainText('16:43');
    expect(new URL(whole.url()).search).toBe('');
    await page.goto('/test/day/');
    await page.locator('.day[data-ready]').waitFor();
    await expect(page.locator('.run')).toHaveCount(0);
  });

  for (const [what, change, sentence] of [
    ['cut in half', (link: string) => link.slice(0, link.length / 2), /cut|damaged/i],
    ['of a later version', (link: string) => link.replace('day=1.', 'day=9.'), /later version|newer/i],
    ['of nonsense', () => '#day=1.nonsense', /damaged|cut/i],
    ['with no day', () => '', /There is no test day in this address/],
  ] as const)
    test(`a link ${what} says so in a sentence`, async ({ page }) => {
      await page.goto(`/test/day/?view=embed${change(await dayFragment(timedDay))}`);
      await expect(page.locator('.notice')).toHaveText(sentence);
      await expect(page.locator('.day-result')).toHaveCount(0);
    });
});

import type { Page } from '@playwright/test';
import {
  columnsOf,
  exampleOf,
  inputOf,
  labelOf,
  namesOf,
  readLink,
  valueText,
} from '../../calculators/scenario/vocabulary.ts';
import { expect, test } from './fixtures.ts';
import { enter, expected, names, open, ready, results, timedHill } from './tool.ts';

/* The printed page is what a reader keeps: inputs and results, black on white, on two sheets at most. */

/** Text that is printed in another colour than black or a dark grey, or on another ground than white. */
const colouredText = (page: Page): Promise<string[]> =>
  page.locator('main').evaluate((main) => {
    const channels = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const odd: string[] = [];
    for (const element of main.querySelectorAll<HTMLElement>('*')) {
      const ownText = [...element.childNodes].some((node) => node.nodeType === 3 && node.nodeValue?.trim());
      if (!ownText || !element.checkVisibility({ visibilityProperty: true }) || element.closest('.sr-only')) continue;
      const style = getComputedStyle(element);
      const [red = 0, green = 0, blue = 0] = channels(element.closest('svg') ? style.fill : style.color);
      if (Math.max(red, green, blue) > 0x55 || Math.max(red, green, blue) - Math.min(red, green, blue) > 16)
        odd.push(`${element.outerHTML.slice(0, 80)}: text ${style.color}`);
    }
    for (const element of [document.documentElement, document.body, ...main.querySelectorAll('*')]) {
      const [red = 0, green = 0, blue = 0, alpha = 1] = channels(getComputedStyle(element).backgroundColor);
      const isBar = element.closest('.share-bar, svg') !== null;
      if (alpha > 0 && !isBar && Math.min(red, green, blue) < 0xff)
        odd.push(`${element.outerHTML.slice(0, 80)}: ground ${red} ${green} ${blue}`);
    }
    return odd;
  });

/** How many sheets of A4 the page takes. */
async function sheetsOf(page: Page): Promise<number | undefined> {
  const margin = '12mm';
  const paper = await page.pdf({ format: 'A4', margin: { top: margin, right: margin, bottom: margin, left: margin } });
  return paper.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length;
}

for (const name of names) {
  test(`${name} prints its inputs and results in black on white, from light and dark, on two sheets`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme: 'light' });
    const tool = await open(page, name);
    for (const theme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: theme, media: 'print' });
      await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
      expect(await colouredText(page), theme).toEqual([]);
    }

    for (const chrome of ['header.header', 'nav.sidebar', '.pagination-links', '.tool-form', '.share'])
      for (const each of await page.locator(chrome).all()) await expect(each).toBeHidden();
    expect(await results(tool)).toEqual(expected(name));
    // what has no value may be left out, nothing else
    for (const output of await tool.locator('output:not([hidden] *)').all()) await expect(output).toBeVisible();
    await expect(tool.locator('[hidden] output[data-si]')).toHaveCount(0);

    const example = exampleOf(name);
    // with a control run the surface is found, not put in
    const used = namesOf(name).filter(
      (each) =>
        inputOf(example, each) !== undefined &&
        !(each === 'rolling' && name === 'bigger-hill') &&
        // these say more about another input, which the example leaves empty
        !(each === 'endurance-work' && inputOf(example, 'endurance') === undefined) &&
        !(each === 'warm-up' && inputOf(example, 'continuous') === undefined) &&
        !(each === 'cadence' && inputOf(example, 'torque') === undefined) &&
        !(
          name === 'your-hill' &&
          ['ring', 'sprocket', 'wheel'].includes(each) &&
          ['torque', 'continuous'].every((other) => inputOf(example, other) === undefined)
        ),
    );
    expect(used.length).toBeGreaterThan(5);
    const lines = await tool.locator('.inputs-used:visible div').allTextContents();
    for (const each of used) {
      const values = columnsOf(example, each).map((column) => valueText(example, each, column));
      expect(
        lines.some(
          (line) => line.includes(labelOf(name, each).toLowerCase().slice(1)) && line.endsWith(values.join(' · ')),
        ),
        each,
      ).toBe(true);
    }
    expect(lines.length).toBe(used.length);

    await page.emulateMedia({ colorScheme: 'light', media: null });
    expect(await sheetsOf(page)).toBeLessThanOrEqual(2);
  });
}

test('bigger-hill with cautions fits on two sheets', async ({ page }) => {
  await open(page, 'bigger-hill', `${timedHill}&target-grade=6`);
  expect(await sheetsOf(page)).toBeLessThanOrEqual(2);
});

for (const name of ['side-by-side', 'bigger-hill'] as const) {
  test(`${name}: six bikes with long names are printed whole`, async ({ page }) => {
    // the width of A4 without its margins
    await page.setViewportSize({ width: 703, height: 1032 });
    const six = [
      'x'.repeat(40),
      'W'.repeat(40),
      'A+name+of+words+that+takes+forty+letters',
      'Four',
      'Five',
      'Six',
    ].join(',');
    const tool = await open(
      page,
      name,
      `name=${six}&bike=20,20,20,20,20,20&time=1:31:44,1:09:35,1:07:58,2:10:00,59:00,58:00`,
    );
    await page.emulateMedia({ media: 'print' });
    const out = await tool
      .locator('.tool-head *, .tool-rest :not(svg *), .inputs-used *')
      .evaluateAll((all) =>
        all
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > 704)
          .map((each) => each.outerHTML.slice(0, 80)),
      );
    expect(out).toEqual([]);
  });
}

test('what is printed is what was entered; nonsense is not printed as if it had counted', async ({ page }) => {
  const query = `${timedHill}&target-grade=6`;
  const tool = await open(page, 'bigger-hill', query);
  await enter(tool, 'rider', 'heavy');
  await page.emulateMedia({ media: 'print' });
  const printed = tool.locator('.inputs-used');
  await expect(printed).toBeVisible();
  await expect(printed).not.toContainText('heavy');
  const scenario = readLink('bigger-hill', query);
  const lines = await printed.locator('div').allTextContents();
  for (const name of ['distance', 'gain', 'rider', 'bike', 'time', 'control-time', 'target-gain', 'target-grade']) {
    const values = columnsOf(scenario, name).map((column) => valueText(scenario, name, column));
    expect(
      lines.some((line) => line.endsWith(values.join(' · '))),
      name,
    ).toBe(true);
  }
  expect(lines).toContain('Measured time7:22 · 5:57 · 4:56');
});

test('what is folded on the home page is printed open', async ({ page }) => {
  await page.goto('/');
  const tool = await ready(page);
  await expect(tool.locator('details.figures')).not.toHaveAttribute('open');
  await page.emulateMedia({ media: 'print' });
  const unseen = await tool
    .locator('output:not([hidden] *)')
    .evaluateAll((all) =>
      all
        .filter(
          (each) => !each.checkVisibility({ contentVisibilityAuto: true }) || each.getBoundingClientRect().height === 0,
        )
        .map((each) => each.outerHTML),
    );
  expect(unseen).toEqual([]);
});

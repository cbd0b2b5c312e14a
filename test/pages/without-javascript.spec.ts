import { outcomeOf } from '../../calculators/outcomes.ts';
import { formatQuantity } from '../../calculators/quantities/index.ts';
import { pathOf, resultOf } from '../../calculators/scenario/vocabulary.ts';
import { expect, test } from './fixtures.ts';
import { expected, mainResult, names, results, timedHill } from './tool.ts';

test.use({ javaScriptEnabled: false });

for (const name of names) {
  test(`${name}: the page holds the example’s answer and chart`, async ({ page }) => {
    await page.goto(pathOf(name));
    const tool = page.locator('.tool');
    expect(await results(tool)).toEqual(expected(name));
    for (const output of await tool.locator('output:not([hidden] *)').all()) await expect(output).toBeVisible();
    await expect(tool.locator('[hidden] output[data-si]')).toHaveCount(0);
    const chart = tool.locator('figure:visible svg[role="img"]').first();
    await expect(chart).toBeVisible();
    // the chart draws the same example: its description says the first number of the answer
    const { si, kind } = resultOf(outcomeOf(name, ''), mainResult(name));
    await expect(chart).toHaveAttribute('aria-label', new RegExp(formatQuantity(si, kind, 'metric')));
    await expect(tool.locator('.remarks li')).toHaveText(outcomeOf(name, '').remarks.map(({ text }) => text));
    // the text inside <noscript> is in no text search
    await expect(page.locator('noscript p')).toBeVisible();
    // it stood below the tool, after everything that it warns of
    const [note, answer] = await Promise.all([page.locator('noscript p').boundingBox(), tool.boundingBox()]);
    expect(note?.y).toBeLessThan(answer?.y ?? 0);
  });
}

test('a linked page shows the example and says that it is one', async ({ page }) => {
  await page.goto(`/calculators/bigger-hill/?${timedHill}`);
  expect(await results(page.locator('.tool'))).toEqual(expected('bigger-hill'));
  await expect(page.locator('output[name="time"]').first()).toBeVisible();
  await expect(page.locator('noscript p')).toHaveText(/^This is the worked example.*what a link says is not shown\.$/);
  // what would do nothing is not offered
  for (const button of await page.locator('.tool button').all()) await expect(button).toBeHidden();
  await expect(page.locator('.tool .units')).toBeHidden();
});

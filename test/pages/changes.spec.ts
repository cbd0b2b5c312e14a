import type { Locator } from '@playwright/test';
import { pathOf } from '../../calculators/scenario/vocabulary.ts';
import { expect, test } from './fixtures.ts';
import { answerFile, changed, enter, expected, field, mainResult, names, open, ready, results } from './tool.ts';

/* What follows a change beside the numbers: the way back, the chart, the ways onward. */

test('“Back to the example” can be taken back, until something else is changed', async ({ page }) => {
  const tool = await open(page, 'climb-time', 'rider=90kg');
  const back = tool.getByRole('button', { name: 'Back to the example' });
  const undo = tool.getByRole('button', { name: 'Undo' });
  await expect(undo).toHaveCount(0);
  await back.click();
  expect(await results(tool)).toEqual(expected('climb-time'));
  await undo.press('Enter');
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=90kg'));
  await expect(undo).toHaveCount(0);
  await expect(back).toBeFocused();
  await back.click();
  await enter(tool, 'rider', '100');
  await expect(undo).toHaveCount(0);
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=100kg'));
});

for (const name of names) {
  test(`${name}: answer and chart follow, and are hidden until they can`, async ({ page }) => {
    let release = (): void => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route(answerFile(name), async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(pathOf(name));
    const tool = await ready(page);
    const chart = tool.locator('figure svg[role="img"]').first();
    const before = await chart.getAttribute('aria-label');
    await expect(chart).toBeVisible();
    await enter(tool, changed(name), '100');
    await expect(chart).toBeHidden();
    await expect(tool.locator('.tool-head output').first()).toBeHidden();
    release();
    await expect(chart).toBeVisible();
    const after = await chart.getAttribute('aria-label');
    expect(after).not.toBe(before);
    expect(after).toContain(
      await tool
        .locator(`output[name="${mainResult(name)}"]`)
        .first()
        .textContent(),
    );
    await expect(tool.getByRole('img', { name: String(before) })).toHaveCount(0);
  });
}

test('who keeps up already is told so in words, not with a dash', async ({ page }) => {
  const tool = await open(page, 'keep-up', 'companion-motor=none&companion-power=100W');
  await expect(tool.locator('.headline .middle').first()).toHaveText(
    'Turning the pedals is enough: your motor is faster.',
  );
  await expect(tool.locator('.headline output').first()).toBeHidden();
});

test('a motor that gives nothing has no limit to name', async ({ page }) => {
  const tool = await open(page, 'torque-at-cadence', 'motor=none,600W');
  await expect(tool.locator('.standings .behind')).toHaveCount(2);
  await expect(tool.locator('.standings .behind').nth(0)).toBeHidden();
  await expect(tool.locator('.standings .behind').nth(1)).toHaveText('limit: peak');
});

test('ways onward take hill, rider and bike along, those of the untouched example too', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  const onward = tool.getByRole('link', { name: 'Compare bikes on this hill' });
  // it opened three other bikes, none of them this one
  const untouched = 'name=Bike,,&bike=20kg,,&motor=380W,,&battery=540Wh,,';
  await expect(onward).toHaveAttribute('href', `/calculators/side-by-side/?${untouched}`);
  await enter(tool, 'gain', '900 ft');
  await enter(tool, 'rider', '90');
  await enter(tool, 'bike', '37 lb');
  await onward.click();
  await page.waitForURL('**/side-by-side/**');
  const typed = `gain=900ft&rider=90kg&${untouched.replace('20kg', '37lb')}`;
  await expect.poll(async () => results(await ready(page))).toEqual(expected('side-by-side', typed));
  await expect(page.getByRole('link', { name: 'One bike in detail' })).toHaveAttribute(
    'href',
    '/calculators/climb-time/?gain=900ft&rider=90kg&bike=37lb&motor=380W&battery=540Wh',
  );
});

for (const query of [
  '',
  'gain=150m&companion-motor=500W&companion-limit=20mph&motor=600W',
  'distance=1.5mi&gain=900ft&rider=190lb&bike=52lb&companion-bike=45lb&units=us',
]) {
  for (const way of ['power', 'motor']) {
    test(`keep-up/?${query}: the climb with that ${way} takes the companion’s time`, async ({ page }) => {
      // the example's answer stays in the page, hidden, until the link's is there
      const shown = async (tool: Locator, name: string): Promise<number> =>
        Number(await tool.locator(`.region:not(.outdated) output[name="${name}"]`).getAttribute('data-si'));
      const tool = await open(page, 'keep-up', query);
      const companion = await shown(tool, 'companion-time');
      await tool.getByRole('link', { name: `Your climb with that ${way}` }).click();
      await page.waitForURL('**/climb-time/**');
      const time = await shown(await ready(page), 'time');
      expect(Math.abs(time - companion)).toBeLessThan(0.001);
    });
  }
}

test('a scenario’s page says that its text stays with the example', async ({ page }) => {
  await page.goto('/scenarios/long-pass/');
  await expect(page.getByText('The text on this page tells of this example')).toBeVisible();
  await page.goto('/calculators/climb-time/');
  await expect(page.getByText('The text on this page tells of this example')).toHaveCount(0);
});

test('a grade that counts leaves no other height in sight', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await enter(tool, 'grade', '10 %');
  expect(await results(tool)).toEqual(expected('climb-time', 'grade=10'));
  expect(await field(tool, 'gain').inputValue()).not.toBe('235');
  await enter(tool, 'gain', '');
  await expect(tool.locator('.tool-form')).not.toContainText('235');
  await page.emulateMedia({ media: 'print' });
  await expect(tool.locator('.inputs-used')).not.toContainText('235');
});

test('a hill in pieces becomes a plain one by one tap, and the keyboard goes on at its length', async ({ page }) => {
  const tool = await open(page, 'keep-up', 'profile=1:500,45:300,9');
  await expect(tool.locator('[name="distance"]')).toHaveValue('');
  await expect(tool.locator('small.note', { hasText: 'The hill in pieces counts' })).toBeVisible();
  await tool.getByRole('button', { name: 'Use plain distance and height instead' }).click();
  await expect(tool.locator('[name="distance"]')).toBeFocused();
  await expect.poll(async () => results(tool)).toEqual(expected('keep-up', 'distance=800m&gain=54m'));
});

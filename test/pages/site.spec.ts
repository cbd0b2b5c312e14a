import { colourRules, findings } from './accessibility.ts';
import { sitePaths } from './built.ts';
import { expect, test } from './fixtures.ts';

/** One page of each kind stands for all of it in a wide window: there the frame around the words is another, the words are the same. */
const kinds = ['/', '/learn/torque/', '/calculators/bigger-hill/', '/scenarios/', '/reference/links/'];

for (const path of sitePaths()) {
  const tag = kinds.includes(path) ? [] : '@phone';
  test(`${path} answers, has one main heading, is accessible in light and dark, and fits a narrow window`, {
    tag,
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'light' });
    const answer = await page.goto(path);
    expect(answer?.status()).toBe(200);
    await expect(page.locator('h1')).toHaveCount(1);
    await expect(page.locator('h1')).toBeVisible();
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
    expect(await findings(page), 'in light').toEqual([]);

    await page.emulateMedia({ colorScheme: 'dark' });
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
    expect(await findings(page, colourRules), 'in dark').toEqual([]);

    if ((page.viewportSize()?.width ?? 0) < 500) {
      await page.setViewportSize({ width: 320, height: 640 });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide, 'no sideways scrolling at 320').toBeLessThanOrEqual(320);
      // Where a table or a formula begins to scroll, it must be reached by keyboard.
      expect(await findings(page, ['scrollable-region-focusable', 'target-size']), 'at 320').toEqual([]);
    }
  });
}

test('the pages that stand for their kind exist', () => {
  expect(sitePaths()).toEqual(expect.arrayContaining(kinds));
});

test('an unknown address answers 404 with a page that leads on', async ({ page }) => {
  const answer = await page.request.get('/nowhere/');
  expect(answer.status()).toBe(404);
  await page.goto('/404.html');
  await expect(page.locator('h1')).toHaveText('There is no page here');
  expect(await findings(page)).toEqual([]);
  await page.getByRole('link', { name: 'at the beginning' }).click();
  await expect(page).toHaveURL('/');
});

for (const theme of ['light', 'dark'] as const) {
  test(`search opens by keyboard, finds a page and leads there, in ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await page.goto('/');
    const requests: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    await page.keyboard.press('Control+k');
    const dialog = page.getByRole('dialog', { name: 'Search' });
    await expect(dialog).toBeVisible();
    await expect(dialog.getByRole('textbox')).toBeFocused();
    expect(requests.some((url) => url.includes('/pagefind/'))).toBe(true);
    await page.keyboard.type('torque');
    const result = dialog.getByRole('link', { name: 'Torque', exact: true });
    await expect(result).toBeVisible();
    expect(await findings(page)).toEqual([]);
    await result.focus();
    await page.keyboard.press('Enter');
    await expect(page.locator('h1')).toHaveText('Torque');
  });
}

test('search opens by its button, closes by Escape, and gives the focus back', async ({ page }) => {
  await page.goto('/learn/torque/');
  const button = page.getByRole('button', { name: 'Search', exact: true });
  await button.click();
  const dialog = page.getByRole('dialog', { name: 'Search' });
  await expect(dialog.getByRole('textbox')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(button).toBeFocused();
});

test('a page asks for nothing of search before it is opened', async ({ page }) => {
  const requests: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  await page.goto('/learn/torque/', { waitUntil: 'networkidle' });
  expect(requests.filter((url) => url.includes('pagefind'))).toEqual([]);
});

// on a phone the choice sits in the menu
test('the theme can be chosen and stays', { tag: '@desktop' }, async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.goto('/learn/torque/');
  await page.getByRole('banner').getByLabel('Theme').selectOption('dark');
  await page.goto('/learn/watt-hours/');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
});

test('the contents mark where the reader is', async ({ page }) => {
  const isPhone = (page.viewportSize()?.width ?? 0) < 500;
  await page.goto('/learn/torque/');
  const contents = page.getByRole('navigation', { name: 'On this page' });
  if (isPhone) await contents.locator('summary').click();
  await expect(contents.locator('[aria-current]')).toHaveText('Overview');
  const last = contents.getByRole('link').last();
  const title = await last.textContent();
  await last.click();
  if (isPhone) {
    await expect(contents.locator('details')).not.toHaveAttribute('open');
    await expect(contents.locator('.now')).not.toHaveText('Overview');
  } else await expect(contents.locator('[aria-current]')).not.toHaveText('Overview');
  await expect(page.locator('main').getByRole('heading', { name: title ?? '' })).toBeInViewport();
});

for (const theme of ['light', 'dark'] as const) {
  test(`prints in black on white without the frame, also from ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await page.goto('/learn/torque/');
    await page.emulateMedia({ colorScheme: theme, media: 'print' });
    const colours = await page.evaluate(() => {
      const text = document.querySelector('main h1');
      return [document.body, document.documentElement]
        .map((element) => getComputedStyle(element).backgroundColor)
        .concat(text === null ? [] : getComputedStyle(text).color);
    });
    expect(colours).toEqual(['rgb(255, 255, 255)', 'rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
    await expect(page.locator('h1')).toBeVisible();
    for (const chrome of ['header', 'nav.sidebar', '.pagination-links', 'site-search']) {
      for (const each of await page.locator(chrome).all()) await expect(each).toBeHidden();
    }
  });
}

test('folds are open in print', async ({ page }) => {
  await page.goto('/learn/torque/');
  await page.evaluate(() => {
    document
      .querySelector('.sl-markdown-content')
      ?.insertAdjacentHTML('beforeend', '<details><summary>More</summary><p id="folded">Folded</p></details>');
  });
  const folded = page.locator('#folded');
  const shown = () =>
    folded.evaluate(
      (element) =>
        element.checkVisibility({ contentVisibilityAuto: true }) && element.getBoundingClientRect().height > 0,
    );
  expect(await shown()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await shown()).toBe(true);
});

test.describe('without JavaScript', () => {
  test.use({ javaScriptEnabled: false });
  test('pages can be read and walked through', async ({ page }) => {
    await page.goto('/learn/torque/');
    await expect(page.locator('h1')).toHaveText('Torque');
    await page.locator('a[rel="next"]').click();
    await expect(page.locator('h1')).toHaveText('Peak and rated power');
    await expect(page.locator('main p').first()).toBeVisible();
  });
});

test.describe('a link with a scenario', () => {
  // The tests below keep the scripts away, and the browser complains.
  test.use({ allowed: [/ERR_FAILED/] });
  test('marks the page before its first paint; a page that reads no address is not marked', async ({ page }) => {
    // Only the script in the head counts: whatever removes the mark comes in a file.
    await page.route('**/*.js', (route) => route.abort());
    await page.goto('/calculators/climb-time/?power=200W', { waitUntil: 'commit' }).catch(() => undefined);
    await page.waitForLoadState('domcontentloaded');
    await expect(page.locator('html')).toHaveAttribute('data-linked', '');
    await page.goto('/calculators/climb-time/');
    await expect(page.locator('html')).not.toHaveAttribute('data-linked');
    await page.goto('/learn/torque/?power=200W');
    await expect(page.locator('html')).not.toHaveAttribute('data-linked');
  });
});

import { colourRules, findings } from './accessibility.ts';
import { expect, test } from './fixtures.ts';
import { enter, expected, field, names, open, results, taken, unfold } from './tool.ts';

/* How a calculator stands on the page when it is full of bikes, long names and errors. */

const long = [
  'x'.repeat(40),
  'W'.repeat(40),
  'A name of words that takes forty letters',
  'i'.repeat(40),
  'Six',
  'ÄÖÜ'.repeat(13),
];
const sixBikes = `name=${long.map((name) => name.replace(/ /g, '+')).join(',')}&bike=17,21,24,20,20,20&motor=280,400,560,300,300,300&time=11:44,9:35,7:58,10:00,1:10:00,10:00`;

/** What cannot be used, or contradicts something else. */
const wrong: [string, string][] = [
  ['gain', '2400'],
  ['rider', 'heavy'],
  ['bike', '<b>'],
  ['torque', 'lots'],
  ['cadence', '1,609'],
  ['wind', '1,609'],
];

for (const name of names) {
  // the one with the most inputs stands for all in a wide window
  const tag = name === 'bigger-hill' ? [] : '@phone';
  test(`${name} is accessible with errors showing, in light and dark`, { tag }, async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'light' });
    const tool = await open(page, name, 'power=200W&power=300W&v=3&limit=10km/h');
    await unfold(tool);
    const own = wrong.filter(([input]) => taken(name, input).length > 0);
    for (const [input, text] of own) await enter(tool, input, text);
    for (const input of taken(name, 'grade')) await enter(tool, input, '1 in 10');
    expect(own.length).toBeGreaterThan(1);
    await expect(tool.locator('[aria-invalid="true"]')).toHaveCount(own.length);
    expect(await findings(page), 'in light').toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
    expect(await findings(page, colourRules), 'in dark').toEqual([]);
  });
}

for (const [name, system] of [
  ['side-by-side', 'us'],
  ['bigger-hill', 'metric'],
] as const) {
  test(`${name}: six bikes with names of forty letters fit any window, in ${system} units`, async ({ page }) => {
    const narrow = (page.viewportSize()?.width ?? 0) < 500;
    if (narrow) await page.setViewportSize({ width: 320, height: 640 });
    const tool = await open(page, name, `${sixBikes}&units=${system}`);
    await unfold(tool);
    await enter(tool, 'rider', 'x'.repeat(200));
    await enter(tool, 'gain', '1 in 10');
    await expect(tool.locator('.standings .who')).toHaveText(long);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(narrow ? 320 : 1280);
    // nothing but what scrolls by itself reaches out of its box
    const frame = await tool.boundingBox();
    const out = await tool
      .locator('.tool-head *, .tool-form *, .tool-rest > *')
      .evaluateAll(
        (all, right) =>
          all
            .filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > right + 1)
            .map((each) => each.outerHTML.slice(0, 80)),
        (frame?.x ?? 0) + (frame?.width ?? 0),
      );
    expect(out).toEqual([]);
  });
}

for (const name of names) {
  test(`${name}: on a phone the answer stays in view down to the last field, and never lies on it`, {
    tag: '@phone',
  }, async ({ page }) => {
    const tool = await open(page, name);
    await unfold(tool);
    const head = tool.locator('.tool-head');
    for (const last of await tool
      .locator('input[data-column]')
      .all()
      .then((all) => all.slice(-2))) {
      await last.focus();
      await page.keyboard.press('End');
      // a digit more may be out of range
      await page.keyboard.type(' ');
      const answer = await head.boundingBox();
      const input = await last.boundingBox();
      const bar = await page.locator('header.header').boundingBox();
      expect(answer?.y).toBeGreaterThanOrEqual((bar?.y ?? 0) + (bar?.height ?? 0) - 1);
      expect((answer?.y ?? 0) + (answer?.height ?? 0)).toBeLessThanOrEqual(input?.y ?? 0);
      expect((input?.y ?? 0) + (input?.height ?? 0)).toBeLessThanOrEqual(844);
    }
    await expect(head.locator('output').first()).toBeInViewport({ ratio: 1 });
  });
}

test('with six bikes the answer leaves most of a phone to the fields', { tag: '@phone' }, async ({ page }) => {
  const tool = await open(page, 'bigger-hill', sixBikes);
  await enter(tool, 'rider', 'heavy');
  await field(tool, 'target-gain').focus();
  const head = await tool.locator('.tool-head').boundingBox();
  const input = await field(tool, 'target-gain').boundingBox();
  const end = Math.max(0, (head?.y ?? 0) + (head?.height ?? 0));
  // a keyboard takes the lower half
  expect(end).toBeLessThan(844 * 0.4);
  expect(input?.y).toBeGreaterThan(end);
});

test('what a finger must hit is large enough, and no text is smaller than 12 px', async ({ page }) => {
  const tool = await open(page, 'bigger-hill');
  await unfold(tool);
  const small = await tool
    .locator('input[data-column], button, summary, .units label')
    .evaluateAll((all) => all.filter((each) => each.getBoundingClientRect().height < 24).map((each) => each.outerHTML));
  expect(small).toEqual([]);
  const fields = await tool
    .locator('.entry, .share button, .units label')
    .evaluateAll((all) => all.filter((each) => each.getBoundingClientRect().height < 44).map((each) => each.outerHTML));
  expect(fields).toEqual([]);
  const tiny = await tool
    .locator('*')
    .evaluateAll((all) =>
      all
        .filter((each) => each.childNodes.length > 0 && Number.parseFloat(getComputedStyle(each).fontSize) < 12)
        .map((each) => each.outerHTML.slice(0, 80)),
    );
  expect(tiny).toEqual([]);
});

test('labels in a chart do not lie on each other or leave it', async ({ page }) => {
  const tool = await open(page, 'bigger-hill', sixBikes.replace(/time=.*/, 'time=9:00,9:01,9:02,9:03,9:04,9:05'));
  const chart = tool.getByRole('img').first();
  const labels = chart.locator('text.key');
  // the chart of a linked scenario is drawn as soon as its code is there
  await expect(labels).toHaveCount(6);
  const boxes = await labels.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON()));
  const sorted = boxes.toSorted((a, b) => a.y - b.y);
  for (const [i, box] of sorted.entries()) if (i > 0) expect(box.y - sorted[i - 1].y).toBeGreaterThanOrEqual(12);
  const frame = await tool.boundingBox();
  const times = await chart
    .locator('.value')
    .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().right));
  for (const right of times) expect(right).toBeLessThanOrEqual((frame?.x ?? 0) + (frame?.width ?? 0));
});

for (const cadence of [20, 118, 155]) {
  test(`six motors alike at ${cadence} rpm: no label of the chart lies on another`, async ({ page }) => {
    if ((page.viewportSize()?.width ?? 0) < 500) await page.setViewportSize({ width: 320, height: 640 });
    const query = `cadence=${cadence}&motor=500,500,500,500,500,500&torque=70,75,80,85,90,95`;
    const tool = await open(page, 'torque-at-cadence', query);
    const labels = tool.getByRole('img').first().locator('text.key');
    await expect(labels).toHaveCount(7);
    const boxes = await labels.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON()));
    for (const [i, one] of boxes.entries())
      for (const other of boxes.slice(i + 1))
        expect(one.right <= other.left || other.right <= one.left || Math.abs(one.y - other.y) >= 12).toBe(true);
  });
}

test('forced colours keep what marks an error and the chart', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  const tool = await open(page, 'side-by-side');
  await enter(tool, 'rider', 'heavy');
  await expect(tool.locator('.problem')).toBeVisible();
  await expect(tool.getByRole('img').first()).toBeVisible();
  expect(await results(tool)).toEqual(expected('side-by-side'));
});

test('the name of the site is whole in the narrowest window', { tag: '@phone' }, async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await page.goto('/calculators/your-hill/');
  const title = page.locator('.site-title');
  // “Uphill, Meas” stood there
  const cut = await title.evaluate((link) =>
    [link, ...link.querySelectorAll('span')].some(
      (each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0,
    ),
  );
  expect(cut).toBe(false);
  const [box, header] = await Promise.all([title.boundingBox(), page.locator('header').first().boundingBox()]);
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual((header?.y ?? 0) + (header?.height ?? 0));
});

import { writeFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { gpxOf, ride, THREE_HILLS } from '../your-hill/tour.ts';
import { findings } from './accessibility.ts';
import { expect, test } from './fixtures.ts';
import { copyLink, expected, ready, results } from './tool.ts';

// a locator that finds nothing says so soon
test.use({ actionTimeout: 10_000 });

/* From a file to a link: what a browser does with a recording. What is found in it is tested in test/your-hill, without one. */

const ADDRESS = '/calculators/your-hill/';
const points = ride(THREE_HILLS);
const tour = (): { name: string; mimeType: string; buffer: Buffer } => file('tour.gpx', gpxOf(points));
const file = (name: string, text: string): { name: string; mimeType: string; buffer: Buffer } => ({
  name,
  mimeType: 'application/gpx+xml',
  buffer: Buffer.from(text),
});

const panel = (page: Page): Locator => page.locator('.recording');
const chooser = (page: Page): Locator => page.getByLabel('Choose a recording');
const climb = (page: Page, name: RegExp): Locator => panel(page).getByRole('radio', { name });
const slider = (page: Page, end: 'Start' | 'Top'): Locator => page.getByRole('slider', { name: `${end} of the climb` });
const si = async (page: Page, name: string): Promise<number> =>
  Number(await panel(page).locator(`output[name="${name}"]`).getAttribute('data-si'));
const fold = (page: Page, words: RegExp): Locator => panel(page).locator('summary', { hasText: words });
const CALIBRATION = /How well this surface rolls/;
/** The hill that the address holds. */
const hillOf = (page: Page): string | null => new URL(page.url()).searchParams.get('profile');

async function openPage(page: Page, query = ''): Promise<Locator> {
  await page.goto(`${ADDRESS}${query}`);
  return ready(page);
}

/** Gives the page a file and waits until its climb is the hill below. */
async function give(page: Page, given = tour()): Promise<void> {
  await chooser(page).setInputFiles(given);
  await expect(panel(page).locator('.below strong')).toHaveText('This climb is the hill below', {
    timeout: 20_000,
  });
  await expect.poll(() => hillOf(page)).not.toBeNull();
}

test('a dropped file becomes the hill: the keyboard picks a climb, moves its end, and the answer follows', async ({
  page,
}) => {
  const tool = await openPage(page);
  const before = await results(tool.locator('.tool-head'));
  // dropped anywhere on the panel
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'tour.gpx'));
    return transfer;
  }, gpxOf(points));
  for (const type of ['dragover', 'drop']) await panel(page).locator('h2').dispatchEvent(type, { dataTransfer: data });
  await expect(panel(page).locator('> .recording-panel > [role="status"]')).toHaveText(
    'Read 1\u202f687 points, 3 climbs found.',
  );
  await expect(panel(page).locator('.below strong')).toBeVisible();
  await expect.poll(() => hillOf(page)).not.toBeNull();
  const hardest = hillOf(page);
  expect(await results(tool.locator('.tool-head'))).not.toEqual(before);

  // by keyboard alone, from the field of the file on
  await chooser(page).focus();
  for (
    let i = 0;
    i < 20 && !(await climb(page, /the hardest/).evaluate((each) => each === document.activeElement));
    i++
  )
    await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowUp');
  await expect(climb(page, /^1 58 m up/)).toBeChecked();
  await expect.poll(() => hillOf(page)).not.toBe(hardest);
  const first = hillOf(page);
  expect(await si(page, 'recorded-gain')).toBeGreaterThan(57);
  expect(await si(page, 'recorded-gain')).toBeLessThan(62);

  for (let i = 0; i < 5 && !(await slider(page, 'Start').evaluate((each) => each === document.activeElement)); i++)
    await page.keyboard.press('Tab');
  const start = async (): Promise<number> => Number(await slider(page, 'Start').getAttribute('aria-valuenow'));
  const came = await start();
  await expect(slider(page, 'Start')).toHaveAttribute('aria-valuetext', /^Start, 597\sm, 12\d\sm above sea$/);
  await page.keyboard.press('ArrowLeft');
  expect(came - (await start())).toBeGreaterThan(0);
  expect(came - (await start())).toBeLessThan(20);
  await page.keyboard.press('PageUp');
  expect((await start()) - came).toBeGreaterThan(70);
  await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('Home');
  expect(await start()).toBe(0);
  await expect(climb(page, /My own stretch/)).toBeChecked();
  // 600 m at 0.003 more
  await expect.poll(() => si(page, 'recorded-distance')).toBeGreaterThan(1550);
  await expect.poll(() => hillOf(page)).not.toBe(first);

  // what stands below is what the address says
  expect(await results(page.locator('.tool-frame'))).toEqual(
    expected('your-hill', new URL(page.url()).search.slice(1)),
  );
});

test('the link is short, names no place, and gives the same answer on a phone @desktop', async ({
  page,
  browser,
  watch,
}) => {
  await openPage(page);
  await give(page);
  const here = await results(page.locator('.tool-frame'));
  const link = await copyLink(page);
  expect(link.length).toBeLessThanOrEqual(1500);
  // the tour lies at 48.9° south, 123.4° west
  expect(link).not.toMatch(/48\.\d{2}|123\.4|-48|-123/);
  const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  watch(phone);
  const there = await phone.newPage();
  await there.goto(link);
  await ready(there);
  expect(await results(there.locator('.tool-frame'))).toEqual(here);
  // a hill that came with a link has no recording here
  await expect(panel(there).locator('.recording-panel')).toHaveCount(0);
  await phone.close();
});

test('an end is dragged with mouse or finger, and written into its field', async ({ page, hasTouch }) => {
  await openPage(page);
  await give(page);
  const before = hillOf(page);
  await slider(page, 'Top').scrollIntoViewIfNeeded();
  const box = await slider(page, 'Top').boundingBox();
  if (!box) throw new Error('no handle');
  expect(box.width).toBeGreaterThanOrEqual(44);
  expect(box.height).toBeGreaterThanOrEqual(44);
  const came = await si(page, 'recorded-distance');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  if (hasTouch) {
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dx: number): Promise<unknown> =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: x + dx, y }] });
    await touch('touchStart', 0);
    for (const dx of [-10, -20, -40]) await touch('touchMove', dx);
    await touch('touchEnd', -40);
  } else {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 40, y, { steps: 4 });
    await page.mouse.up();
  }
  await expect(climb(page, /My own stretch/)).toBeChecked();
  await expect.poll(async () => came - (await si(page, 'recorded-distance'))).toBeGreaterThan(50);
  await expect.poll(() => hillOf(page)).not.toBe(before);

  // the same without dragging (WCAG 2.2, 2.5.7)
  const field = panel(page).getByLabel('Top, along the way');
  await field.fill('4,5');
  await field.blur();
  await expect(slider(page, 'Top')).toHaveAttribute('aria-valuetext', /^Top, 4\.50\skm/);
  await field.fill('nowhere');
  await field.blur();
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(field).toHaveValue('nowhere');
  await expect(slider(page, 'Top')).toHaveAttribute('aria-valuetext', /^Top, 4\.50\skm/);
});

test('a wrong file says what is wrong, and what was there stays', async ({ page }) => {
  await openPage(page);
  await give(page);
  const before = hillOf(page);
  await chooser(page).setInputFiles(file('picture.gpx', 'not a recording at all'));
  await expect(panel(page).getByRole('alert')).toContainText('What was here before stays.');
  await expect(climb(page, /the hardest/)).toBeChecked();
  expect(hillOf(page)).toBe(before);
  // a file that ends in its middle gives what is whole
  const text = gpxOf(points);
  await chooser(page).setInputFiles(file('cut.gpx', text.slice(0, Math.floor(0.8 * text.length))));
  await expect(panel(page).locator('.caution')).toContainText('cut short');
  await expect(panel(page).locator('.recording-file')).toContainText('cut.gpx');
  // and what it replaced can be brought back
  await panel(page).getByRole('button', { name: 'Undo' }).click();
  await expect(panel(page).locator('.recording-file')).toContainText('tour.gpx');
});

test('of two parts the ride comes first, and the route is a hill without a ride', async ({ page }) => {
  await openPage(page);
  await give(page, file('two.gpx', gpxOf(points, 'Ridden', 'Drawn')));
  await expect(panel(page).getByRole('radio', { name: /^Ridden: ride/ })).toBeChecked();
  const ridden = hillOf(page);
  await panel(page)
    .getByRole('radio', { name: /^Drawn: route/ })
    .check();
  await expect.poll(() => hillOf(page)).not.toBe(ridden);
  // what it has no value of is one sentence, and not a row of dashes
  await expect(panel(page).locator('output[name="recorded-time"]')).toHaveCount(0);
  await expect(panel(page).locator('.stretch-figures')).toContainText('A route has no times: no speed, no power.');
  await expect(panel(page).locator('.calibration')).toHaveCount(0);
});

test('reading can be given up', async ({ page }, info) => {
  await openPage(page);
  // long enough to be stopped
  const long = ride({ ...THREE_HILLS, road: Array.from({ length: 40 }, () => THREE_HILLS.road).flat() });
  const path = info.outputPath('long.gpx');
  await writeFile(path, gpxOf(long));
  await chooser(page).setInputFiles(path);
  await expect(panel(page).getByRole('progressbar')).toBeVisible();
  await panel(page).getByRole('button', { name: 'Cancel' }).click();
  await expect(panel(page).getByRole('progressbar')).toHaveCount(0);
  await expect(chooser(page)).toBeFocused();
  await expect(panel(page).getByText('Reading long.gpx was cancelled.')).toBeVisible();
  await expect(panel(page).locator('.picked-climb')).toHaveCount(0);
  expect(hillOf(page)).toBeNull();
});

test('a recording comes back at the next visit, beside the hill of a link, until it is forgotten', async ({ page }) => {
  await openPage(page);
  await give(page);
  await climb(page, /^3 /).check();
  await expect.poll(() => hillOf(page)).toMatch(/^1:/);
  const third = await si(page, 'recorded-distance');
  // what was chosen is written a moment later
  await page.waitForTimeout(1200);
  const chosen = hillOf(page);
  await page.reload();
  await expect(climb(page, /^3 /)).toBeChecked();
  expect(await si(page, 'recorded-distance')).toBe(third);
  expect(hillOf(page)).toBe(chosen);

  // without a hill in the address, the kept one is ridden
  await openPage(page);
  await expect.poll(() => hillOf(page)).toBe(chosen);

  // the hill of a link stays, and comes first: what is kept waits until it is opened
  await openPage(page, '?profile=1:1000,50');
  await expect(panel(page).locator('.recording-folded')).toContainText(
    'The hill below came with the link. Your recording tour.gpx is kept on this device.',
  );
  await expect(panel(page).locator('.climbs')).toHaveCount(0);
  expect(hillOf(page)).toBe('1:1000,50');
  await panel(page).getByRole('button', { name: 'Open it' }).click();
  await expect(panel(page).locator('.below')).toContainText('The hill below is another one.');
  expect(hillOf(page)).toBe('1:1000,50');
  await panel(page).getByRole('button', { name: 'Make this climb the hill below' }).click();
  await expect.poll(() => hillOf(page)).toBe(chosen);

  await panel(page).getByRole('button', { name: 'Forget it' }).click();
  await expect(panel(page).locator('.recording-undo')).toContainText('Forgotten: tour.gpx');
  await panel(page).getByRole('button', { name: 'Undo' }).click();
  await expect(climb(page, /^3 /)).toBeChecked();
  await panel(page).getByRole('button', { name: 'Forget it' }).click();
  await page.reload();
  await ready(page);
  await expect(panel(page).locator('.recording-panel')).toHaveCount(0);
});

test('smoothing and threshold are changed, and the figures follow', async ({ page }) => {
  await openPage(page);
  await give(page);
  await panel(page).getByText('The whole way: height gained').click();
  const smoothed = await si(page, 'file-gain-smoothed');
  await panel(page).getByLabel('Smoothed over').fill('400');
  await expect.poll(() => si(page, 'file-gain-smoothed')).toBeLessThan(smoothed - 2);
  await panel(page).getByLabel('Least rise that counts').fill('50');
  // of 61, 130 and 38 m the last is too low
  await expect.poll(() => si(page, 'file-gain-threshold')).toBeLessThan(200);
  await panel(page).getByLabel('Smoothed over').fill('5 apples');
  await panel(page).getByLabel('Smoothed over').blur();
  await expect(panel(page).getByLabel('Smoothed over')).toHaveAttribute('aria-invalid', 'true');
});

test('a ride without a motor calibrates the surface once its weights are given, and the scenario takes it', async ({
  page,
}) => {
  await openPage(page);
  await give(page);
  await fold(page, CALIBRATION).click();
  await panel(page).getByLabel('This was ridden without a motor’s help').check();
  const [rider, bike] = [
    panel(page).getByLabel('Rider and kit on that ride'),
    panel(page).getByLabel('Bike on that ride'),
  ];
  const figure = panel(page).locator('output[name="calibrated-rolling"]');
  // the weights of the calculator are not those of that day: fields that look filled in were taken for it
  await expect(rider).toHaveValue('');
  await rider.fill('80');
  await expect(panel(page).getByText('Both weights are needed')).toBeVisible();
  await expect(figure).toHaveCount(0);
  await bike.fill('12');
  await expect.poll(() => si(page, 'calibrated-rolling')).toBeGreaterThan(0.01);
  expect(await si(page, 'calibrated-rolling')).toBeLessThan(0.015);
  // a weight that is refused takes the figure of the last one away
  await rider.fill('900');
  await rider.blur();
  await expect(rider).toHaveAttribute('aria-invalid', 'true');
  await expect(figure).toHaveCount(0);
  await rider.fill('80');
  const told = (await figure.textContent()) ?? '';
  // what was said of the ride is there at the next visit
  await page.waitForTimeout(1200);
  await page.reload();
  await expect(rider).toHaveValue('80');
  await expect(figure).toHaveText(told);
  await panel(page).getByRole('button', { name: 'Use this rolling resistance below' }).click();
  await expect(page.locator('input[name="rolling"]')).toHaveValue(told);
  await expect.poll(() => new URL(page.url()).searchParams.get('rolling')).toBe(told);
});

test('the answer is one tap away, and the keyboard goes along', async ({ page }) => {
  await openPage(page);
  await give(page);
  await panel(page).getByRole('button', { name: 'To the answer' }).click();
  await expect(page.locator('.tool-head')).toBeInViewport();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('.tool-frame') !== null)).toBe(true);
});

test('what is written for an end is taken, and the other end moves along and says so', async ({ page }) => {
  await openPage(page);
  await give(page);
  const [start, top] = [panel(page).getByLabel('Start, along'), panel(page).getByLabel('Top, along')];
  // the middle hill ends at 4.8 km
  await start.fill('6.5');
  await expect(panel(page).locator('.ends [role="status"]')).toContainText('The top moved along, to 8.2');
  await start.blur();
  await expect(start).toHaveValue('6.5');
  // "7" on the way to "7.9" must not push the start for good
  await top.focus();
  await top.fill('');
  await top.pressSequentially('7.9', { delay: 20 });
  await top.blur();
  await expect(top).toHaveValue('7.9');
  await expect(start).toHaveValue('6.5');
  // what a field shows can be written there
  await slider(page, 'Top').focus();
  await page.keyboard.press('End');
  const last = await top.inputValue();
  await top.fill('7');
  await top.fill(last);
  await top.blur();
  await expect(top).not.toHaveAttribute('aria-invalid', 'true');
  await expect(top).toHaveValue(last);
});

test('a handle at the edge of the close-up opens it, and Escape takes a drag back @desktop', async ({ page }) => {
  await openPage(page);
  await give(page);
  const top = slider(page, 'Top');
  await top.scrollIntoViewIfNeeded();
  const place = async (): Promise<number> => Number(await top.getAttribute('aria-valuenow'));
  const came = await place();
  const grip = async (): Promise<void> => {
    const box = await top.boundingBox();
    if (!box) throw new Error('no handle');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
  };
  const frame = await panel(page).locator('.close-up').boundingBox();
  if (!frame) throw new Error('no chart');
  await grip();
  await page.mouse.move(frame.x + frame.width - 2, frame.y + 40, { steps: 4 });
  // what was shown ended 0.3 of 1.8 km after the top
  await expect.poll(place).toBeGreaterThan(came + 800);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect.poll(place).toBe(came);
  await expect(climb(page, /the hardest/)).toBeChecked();
});

test('another tab that keeps another recording is told of @desktop', async ({ page, context }) => {
  await openPage(page);
  await give(page);
  const other = await context.newPage();
  await openPage(other);
  await expect(climb(other, /the hardest/)).toBeChecked();
  await other.getByLabel('Choose a recording').setInputFiles(file('other.gpx', gpxOf(points, 'Other')));
  await expect(panel(page).locator('.caution')).toContainText('Another tab keeps another recording now');
  await panel(other).getByRole('button', { name: 'Forget it' }).click();
  await expect(panel(page).locator('.caution')).toContainText('forgotten in another tab');
  await other.close();
});

test('the picked stretch is printed with its figures, what is pressed is not @desktop', async ({ page }) => {
  await openPage(page);
  await give(page);
  await page.emulateMedia({ media: 'print' });
  for (const each of ['.close-up', 'output[name="recorded-gain"]', '.steepness'])
    await expect(panel(page).locator(each)).toBeVisible();
  for (const each of ['.choose', '.climbs', '.ends', '.calibration', '.grip', 'button'])
    for (const one of await panel(page).locator(each).all()) await expect(one).toBeHidden();
});

test('axe finds nothing, in either theme', async ({ page }) => {
  await openPage(page);
  await give(page);
  await panel(page).getByText('The whole way: height gained').click();
  await fold(page, CALIBRATION).click();
  await panel(page).getByLabel('This was ridden without a motor’s help').check();
  await panel(page).getByLabel('Rider and kit on that ride').fill('80');
  await panel(page).getByLabel('Bike on that ride').fill('12');
  await expect(panel(page).locator('output[name="calibrated-rolling"]')).toBeVisible();
  await panel(page).getByLabel('Smoothed over').fill('x');
  await panel(page).getByLabel('Smoothed over').blur();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await findings(page), colorScheme).toEqual([]);
  }
});

test('at 320 px nothing is wider than the screen @phone', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await openPage(page);
  await give(page);
  await panel(page).getByText('The whole way: height gained').click();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
});

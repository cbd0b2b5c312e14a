import { gpxOf, ride, THREE_HILLS } from '../your-hill/tour.ts';
import { expect, test } from './fixtures.ts';
import { open } from './tool.ts';

/* What a hill in pieces looks like where everything happens on it: an invented road up, down and up, small batteries, a weak rider. */

const ROAD = '1:300,60:400,-70:500,80:300,1:400,60:300,-60';
const everything =
  'power=260W&endurance=200W&endurance-work=6kJ&continuous=200W&warm-up=3:00&battery=40Wh,540Wh,720Wh&torque=40Nm&support=150' +
  `&name=A+long+name+of+words,Mid,Full&profile=${ROAD}`;

test('words and bars of what holds a bike back stand apart and within the chart, on the narrowest phone', {
  tag: '@phone',
}, async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  const tool = await open(page, 'your-hill', everything);
  const chart = tool.getByRole('img', { name: /^What holds each bike back/ });
  for (const words of ['torque', 'support', 'motor heat', 'empty battery', 'tired legs', 'brakes', 'assist limit'])
    await expect(chart.locator('text', { hasText: words }).first()).toBeVisible();
  const box = await chart.boundingBox();
  if (!box) throw new Error('The chart has no box.');
  const shapes = await chart.locator('text, .bar').evaluateAll((all) =>
    all.map((each) => {
      const { left, right, top, bottom } = each.getBoundingClientRect();
      return { left, right, top, bottom, isText: each.tagName === 'text', size: getComputedStyle(each).fontSize };
    }),
  );
  expect(shapes.length).toBeGreaterThan(20);
  for (const shape of shapes) {
    expect(shape.left).toBeGreaterThanOrEqual(box.x - 0.5);
    expect(shape.right).toBeLessThanOrEqual(box.x + box.width + 0.5);
    if (shape.isText) expect(Number.parseFloat(shape.size)).toBeGreaterThanOrEqual(12);
  }
  const texts = shapes.filter(({ isText }) => isText);
  for (const text of texts)
    for (const other of shapes)
      if (other !== text) {
        const apart =
          other.top >= text.bottom - 2 ||
          other.bottom <= text.top + 2 ||
          other.left >= text.right ||
          other.right <= text.left;
        expect(apart, JSON.stringify([text, other])).toBe(true);
      }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
});

test('a bar stands below the part of the profile that it is about', async ({ page }) => {
  const tool = await open(page, 'your-hill', everything);
  const profile = tool.getByRole('img', { name: /Height above the bottom/ });
  const tick = (text: string) => profile.locator('text', { hasText: new RegExp(`^${text}$`) }).boundingBox();
  const centre = ({ x, width }: { x: number; width: number }): number => x + width / 2;
  const [at0, at1] = [await tick('0.5'), await tick('1')];
  if (!at0 || !at1) throw new Error('The axis has no marks at 0.5 and 1 km.');
  // the rider brakes from the top of the first ramp on: the profile falls from 300 to 700 m
  const brakes = await tool.locator('.chart g:has(> text:has-text("brakes")) .bar').first().boundingBox();
  if (!brakes) throw new Error('Nothing brakes.');
  const metres = (x: number): number => 500 + (500 * (x - centre(at0))) / (centre(at1) - centre(at0));
  expect(metres(brakes.x)).toBeGreaterThan(300);
  expect(metres(brakes.x)).toBeLessThan(420);
  expect(Math.abs(metres(brakes.x + brakes.width) - 700)).toBeLessThan(8);
});

test('forced colours keep bars and lines apart from their ground', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  const tool = await open(page, 'your-hill', everything);
  const ground = await tool.evaluate((element) => getComputedStyle(element).backgroundColor);
  const inks = await tool
    .locator('.bar, figure .curve')
    .evaluateAll((all) => all.map((each) => getComputedStyle(each)[each.matches('.bar') ? 'fill' : 'stroke']));
  expect(inks.length).toBeGreaterThan(10);
  for (const ink of inks) expect(ink).not.toBe(ground);
});

test('the tables behind the charts have a row for each bar, and the gaps up to the top', async ({ page }) => {
  const tool = await open(page, 'your-hill', everything);
  await tool.getByText('The same as tables').click();
  const held = tool.getByRole('table', { name: 'Where something holds a bike back' });
  await expect(held.getByRole('row')).not.toHaveCount(1);
  const bars = await tool.locator('.chart .bar').count();
  // one row for each bar, and the head
  await expect(held.getByRole('row')).toHaveCount(bars + 1);
  await expect(
    tool
      .getByRole('table', { name: /^Time behind/ })
      .getByRole('row')
      .last(),
  ).toContainText('2.2\u202fkm');
});

test('gaps stand below the places of the hill where they arise, as wide as it is', async ({ page }) => {
  const tool = await open(page, 'your-hill', everything);
  const [hill, gaps] = await Promise.all(
    [/Height above the bottom/, /^Time behind/].map((name) =>
      tool.getByRole('img', { name }).locator('text', { hasText: /^1$/ }).first().boundingBox(),
    ),
  );
  if (!hill || !gaps) throw new Error('An axis has no mark at 1 km.');
  expect(Math.abs(hill.x - gaps.x)).toBeLessThan(1);
});

test('with a recording the answer is printed first, on three sheets at most @desktop', async ({ page }) => {
  const tool = await open(page, 'your-hill');
  const buffer = Buffer.from(gpxOf(ride(THREE_HILLS)));
  await page
    .getByLabel('Choose a recording')
    .setInputFiles({ name: 'tour.gpx', mimeType: 'application/gpx+xml', buffer });
  await expect(tool.locator('.picked-climb .below')).toBeVisible({ timeout: 20_000 });
  await page.emulateMedia({ media: 'print' });
  const [times, recorded] = await Promise.all([
    tool.locator('.standings').boundingBox(),
    tool.locator('.picked-climb').boundingBox(),
  ]);
  expect(times?.y).toBeLessThan(recorded?.y ?? 0);
  const margin = '12mm';
  const paper = await page.pdf({ format: 'A4', margin: { top: margin, right: margin, bottom: margin, left: margin } });
  expect(paper.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBeLessThanOrEqual(3);
});

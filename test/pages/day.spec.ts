import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';

// a locator that finds nothing says so soon
test.use({ actionTimeout: 10_000 });

/* Entering a test day: on a phone at the trailhead, alone, in gloves, without a signal. Nothing that was typed is lost. */

/** Opens the page and waits until what is kept on the device is shown. */
async function openDay(page: Page, hash = ''): Promise<Locator> {
  await page.goto(`/test/day/${hash}`);
  const day = page.locator('.day[data-ready]');
  await day.waitFor();
  return day;
}

const typeInto = async (day: Locator, label: string | RegExp, text: string, at = 0): Promise<void> => {
  await day
    .getByLabel(label, { exact: typeof label === 'string' })
    .nth(at)
    .fill(text);
};

/** A hill and two bikes: 1,500 m and 150 m, as somebody types them. */
async function setUp(day: Locator): Promise<void> {
  await typeInto(day, 'Title', 'My hill');
  await typeInto(day, 'Along the road', '1,5 km');
  await typeInto(day, 'Height gained', '150');
  await typeInto(day, 'Body and kit', '82');
  for (const [i, [name, mass]] of [
    ['Old', '18.6'],
    ['New', '22,9'],
  ].entries()) {
    await day.getByRole('button', { name: 'Add a bike' }).click();
    await typeInto(day, 'Name', name ?? '', i);
    await typeInto(day, 'Bike mass', mass ?? '', i);
  }
}

/** What the live region says. */
const said = (day: Locator): Locator => day.locator('> [role="status"]');
const runs = (day: Locator): Locator => day.locator('.run > summary');
const entry = (day: Locator): Locator => day.locator('.run-entry');

async function enterRun(day: Locator, bike: string, time: string, power: string): Promise<void> {
  await entry(day).getByRole('radio', { name: bike, exact: true }).check();
  await typeInto(entry(day), 'Time', time);
  await typeInto(entry(day), 'Rider power', power);
  await entry(day).getByRole('button', { name: 'Save and next run' }).click();
}

test('three runs are entered by touch, one at a time, in the order that is proposed', async ({ page, hasTouch }) => {
  test.skip(!hasTouch, 'for the phone');
  const day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Enter runs' }).tap();
  await expect(day.locator('.set-up')).not.toHaveAttribute('open');
  await expect(entry(day).getByRole('heading', { name: 'Run 1' })).toBeFocused();
  // forward and back: Old, New, New
  for (const [bike, minutes, seconds] of [
    ['Old', '6', '48'],
    ['New', '5', '31'],
    ['New', '5', '29'],
  ] as const) {
    await expect(entry(day).getByRole('radio', { name: bike })).toBeChecked();
    const time = entry(day).getByLabel('Time');
    await time.tap();
    await page.keyboard.type(minutes);
    // the number keys of a phone have no colon
    await entry(day).getByRole('button', { name: 'Put a colon' }).tap();
    await expect(time).toBeFocused();
    await page.keyboard.type(seconds);
    await entry(day).getByLabel('Rider power').fill('200');
    await entry(day).getByRole('button', { name: 'Save and next run' }).tap();
    await expect(said(day)).toContainText(`Saved: ${bike}, ${minutes}:${seconds}.`);
    await expect(entry(day).getByLabel('Time')).toHaveValue('');
  }
  await expect(runs(day)).toHaveText([/1Old6:48 at 200\sW/, /2New5:31 at 200\sW/, /3New5:29 at 200\sW/]);
  const small = await day
    .locator('.entry, button:not(.quiet), .pick, summary')
    .evaluateAll((all) =>
      all
        .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 48)
        .map((each) => each.outerHTML.slice(0, 120)),
    );
  expect(small, 'large enough for a glove').toEqual([]);
});

test('a reload in mid-entry gives back everything, the half-typed run too', async ({ page }) => {
  let day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Enter runs' }).click();
  await enterRun(day, 'Old', '6:48', '201');
  await entry(day).getByRole('radio', { name: 'New' }).check();
  await entry(day).getByRole('radio', { name: 'Off: control run' }).check();
  await typeInto(entry(day), 'Time', '15:');
  await typeInto(entry(day), 'Note', 'gust at the gate');
  await page.reload();
  day = page.locator('.day[data-ready]');
  await day.waitFor();
  await expect(entry(day).getByRole('heading')).toHaveText('Run 2');
  await expect(entry(day).getByLabel('Time')).toHaveValue('15:');
  await expect(entry(day).getByLabel('Note')).toHaveValue('gust at the gate');
  await expect(entry(day).getByRole('radio', { name: 'New' })).toBeChecked();
  await expect(entry(day).getByRole('radio', { name: 'Off: control run' })).toBeChecked();
  await expect(runs(day)).toHaveCount(1);
  await day.locator('#set-up').click();
  await expect(day.locator('#setup-distance')).toHaveValue('1,5 km');
});

test('a time without a colon is asked about, and one tap answers', async ({ page }) => {
  const day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Enter runs' }).click();
  await typeInto(entry(day), 'Time', '7.22');
  await entry(day).getByLabel('Rider power').focus();
  await expect(entry(day).locator('.problem')).toContainText('minutes and seconds, or minutes with decimals?');
  await entry(day).getByRole('button', { name: '7:22', exact: true }).click();
  await expect(entry(day).getByLabel('Time')).toHaveValue('7:22');
  await expect(entry(day).locator('.problem')).toHaveCount(0);
});

test('what cannot be used holds a run once; saved again it is kept as it is', async ({ page }) => {
  const day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Enter runs' }).click();
  await enterRun(day, 'Old', 'quick', '200');
  await expect(runs(day)).toHaveCount(0);
  await expect(entry(day).getByLabel('Time')).toBeFocused();
  await expect(entry(day).locator('.problem')).toContainText('“quick” cannot be read');
  await entry(day).getByRole('button', { name: 'Save and next run' }).click();
  await expect(runs(day)).toHaveText(/1Old\s*quick at 200\sW\s*cannot count yet/);
});

test.describe('a browser that stores nothing', () => {
  test('says so calmly, works all the same, and gives the day as a file', async ({ page }) => {
    await page.addInitScript(() => {
      const refuse = (): never => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      };
      Object.defineProperty(window, 'indexedDB', { get: refuse });
      Object.defineProperty(window, 'localStorage', { get: refuse });
    });
    const day = await openDay(page);
    await setUp(day);
    await expect(day.locator('.notice')).toContainText('keeps nothing');
    await day.getByRole('button', { name: 'Enter runs' }).click();
    await enterRun(day, 'Old', '6:48', '200');
    await expect(runs(day)).toHaveCount(1);
    const download = page.waitForEvent('download');
    await day.locator('.notice').getByRole('button', { name: 'Save as a file' }).click();
    expect((await download).suggestedFilename()).toMatch(/\.json$/);
  });
});

test('a full storage says so and loses nothing that stands on the page', async ({ page }) => {
  await page.addInitScript(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    };
    Storage.prototype.setItem = () => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    };
  });
  const day = await openDay(page);
  await setUp(day);
  await expect(day.locator('.notice')).toContainText('full');
  await expect(day.locator('.notice').getByRole('button', { name: 'Save as a file' })).toBeVisible();
  await day.getByRole('button', { name: 'Enter runs' }).click();
  await enterRun(day, 'Old', '6:48', '200');
  await expect(runs(day)).toHaveCount(1);
});

test('two tabs: the other one is told, and neither is overwritten in silence', async ({ page, context }) => {
  const first = await openDay(page);
  await setUp(first);
  await first.getByRole('button', { name: 'Enter runs' }).click();
  await enterRun(first, 'Old', '6:48', '200');
  const other = await context.newPage();
  const second = await openDay(other);
  await expect(runs(second)).toHaveCount(1);
  await enterRun(second, 'New', '5:31', '200');
  await expect(first.locator('.notice')).toContainText('another tab');
  // typed here meanwhile: not lost, and not written over the other's
  await typeInto(entry(first), 'Note', 'typed in the first');
  await other.reload();
  await second.waitFor();
  await expect(runs(second)).toHaveCount(2);
  await first.getByRole('button', { name: 'Go on with the other tab’s' }).click();
  await expect(runs(first)).toHaveCount(2);
  await first.getByRole('button', { name: 'Undo' }).click();
  await expect(entry(first).getByLabel('Note')).toHaveValue('typed in the first');
});

test('without a signal, once loaded, runs are entered and the answer is read', async ({ page, context }) => {
  const day = await openDay(page);
  await page.waitForLoadState('networkidle');
  await context.setOffline(true);
  await setUp(day);
  await day.getByRole('button', { name: 'Enter runs' }).click();
  for (const [bike, time] of [
    ['Old', '6:48'],
    ['New', '5:31'],
    ['New', '5:29'],
    ['Old', '6:50'],
  ] as const)
    await enterRun(day, bike, time, '200');
  await expect(day.locator('output[name="motor-power"][data-bike="1"]').first()).toHaveAttribute('data-si', /^\d/);
  // the worker that draws days came too, and so did what reads a table
  await expect(day.locator('.simulated')).toContainText('days', { timeout: 20_000 });
  await day.getByRole('button', { name: 'Paste a table or open a file' }).click();
  await expect(day.getByRole('textbox', { name: /^Paste a table/ })).toBeVisible();
  await context.setOffline(false);
});

test('what is removed is named and comes back where it stood', async ({ page }) => {
  const day = await openDay(page);
  await day.getByRole('button', { name: 'Look at an invented example' }).click();
  const before = await runs(day).allTextContents();
  await runs(day).nth(2).click();
  await day.getByRole('button', { name: 'Remove run 3' }).click();
  await expect(day.locator('.undo')).toContainText('Removed: run 3, Mid assist, 5:31.');
  await expect(day.getByRole('button', { name: 'Undo' })).toBeFocused();
  await expect(runs(day)).toHaveCount(before.length - 1);
  await runs(day).nth(0).click();
  await day.getByRole('button', { name: 'Remove run 1' }).click();
  await day.getByRole('button', { name: 'Undo' }).click();
  await day.getByRole('button', { name: 'Undo' }).click();
  await expect(runs(day)).toHaveText(before);

  await day.locator('#set-up').click();
  await day.locator('.set-up summary', { hasText: 'of Light assist' }).click();
  await day.getByRole('button', { name: 'Remove Light assist' }).click();
  await expect(day.locator('.undo')).toContainText('Removed: Light assist and its 3 runs.');
  await day.getByRole('button', { name: 'Undo' }).click();
  await expect(runs(day)).toHaveText(before);

  await day.getByRole('button', { name: 'Start a new day' }).click();
  await expect(runs(day)).toHaveCount(0);
  await expect(day.locator('.undo')).toContainText('Put aside: “An invented test day” with 11 runs.');
  // a phone may close the page meanwhile
  await page.reload();
  await day.waitFor();
  await day.getByRole('button', { name: 'Undo' }).click();
  await expect(runs(day)).toHaveText(before);
});

test('a run is not counted, with its reason, and moved', async ({ page }) => {
  const day = await openDay(page);
  await day.getByRole('button', { name: 'Look at an invented example' }).click();
  await runs(day).nth(1).click();
  await day.getByRole('button', { name: 'Do not count run 2' }).click();
  const reason = day.getByLabel('Why it is not counted');
  await expect(reason).toBeFocused();
  await page.keyboard.type('A horse on the trail');
  await expect(runs(day).nth(1)).toContainText('not counted');
  await day.getByRole('button', { name: 'Move run 2 later' }).click();
  await expect(day.getByRole('button', { name: 'Move run 3 later' })).toBeFocused();
  await expect(runs(day).nth(2)).toContainText('Light assist');
  await day.getByRole('button', { name: 'Change run 3' }).click();
  await expect(entry(day).getByRole('heading', { name: 'Change run 3' })).toBeFocused();
  await expect(entry(day).getByLabel('Note')).toHaveValue('A horse on the trail');
  await entry(day).getByRole('button', { name: 'Done' }).click();
  await expect(runs(day).nth(2)).toBeFocused();
});

test('by keyboard alone: set up, enter, remove, bring back', async ({ page, hasTouch }) => {
  test.skip(hasTouch, 'for the desk');
  const day = await openDay(page);
  await day.getByLabel('Title').focus();
  await page.keyboard.type('By keys');
  // Enter leads on, as Tab does
  await page.keyboard.press('Enter');
  await expect(day.getByLabel('Date')).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.type('1500 m');
  await page.keyboard.press('Tab');
  await page.keyboard.type('150');
  await day.getByRole('button', { name: 'Add a bike' }).focus();
  await page.keyboard.press('Enter');
  await expect(day.getByLabel('Name')).toBeFocused();
  await page.keyboard.type('Old');
  await page.keyboard.press('Tab');
  await page.keyboard.type('18.6');
  await day.getByRole('button', { name: 'Enter runs' }).focus();
  await page.keyboard.press('Enter');
  await expect(entry(day).getByRole('heading', { name: 'Run 1' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(entry(day).getByRole('radio', { name: 'Old' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(entry(day).getByRole('radio', { name: 'On', exact: true })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.type('6:48');
  await page.keyboard.press('Tab');
  await expect(entry(day).getByLabel('Rider power')).toBeFocused();
  await page.keyboard.type('200');
  await page.keyboard.press('Enter');
  await expect(entry(day).getByRole('heading', { name: 'Run 2' })).toBeFocused();
  await runs(day).first().focus();
  await page.keyboard.press('Enter');
  await day.getByRole('button', { name: 'Remove run 1' }).focus();
  await page.keyboard.press('Enter');
  await expect(day.getByRole('button', { name: 'Undo' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(runs(day)).toHaveCount(1);
  await expect(runs(day).first()).toBeFocused();
});

test('a table with decimal commas is shown as understood before it is taken in', async ({ page }) => {
  const day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Paste a table or open a file' }).click();
  await day
    .getByRole('textbox', { name: /^Paste a table/ })
    .fill('bike;time;power;note\nOld;6:48,5;201,5;first\nThird;5:31;199;\n');
  const preview = day.locator('.pasting table');
  await expect(preview).toContainText('6:48.5');
  await expect(runs(day)).toHaveCount(0);
  await day.getByRole('button', { name: /^Take in/ }).click();
  await expect(runs(day)).toHaveText([/1Old6:48\.5 at 20[12]\sW/, /2Third5:31 at 199\sW/]);
  await day.getByRole('button', { name: 'Undo' }).click();
  await expect(runs(day)).toHaveCount(0);
});

test('a table without a hill: what is missing is said where the table came in, and leads to the field', async ({
  page,
}) => {
  const day = await openDay(page);
  await day.getByRole('button', { name: 'Paste a table or open a file' }).click();
  await day.getByRole('textbox', { name: /^Paste a table/ }).fill('bike;mass;time;power\nOld;18;6:48;201\n');
  await day.getByRole('button', { name: /^Take in/ }).click();
  const missing = day.locator('.run-list .notice');
  await expect(missing).toContainText('Fill in how long the hill is');
  await expect(missing).toBeInViewport();
  await missing.getByRole('button', { name: 'Open the set-up' }).click();
  await expect(day.locator('#setup-distance')).toBeFocused();
  await day.locator('#setup-distance').fill('1.5');
  await day.locator('#setup-gain').fill('150');
  await expect(missing).toHaveCount(0);
});

test('nonsense in the paste gets a sentence, and nothing else changes', async ({ page }) => {
  const day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Paste a table or open a file' }).click();
  await day.getByRole('textbox', { name: /^Paste a table/ }).fill('%PDF-1.4 \u0000\u0001 nothing here');
  await expect(day.locator('.pasting .problem, .pasting .wrong').first()).toBeVisible();
  await expect(day.getByRole('button', { name: /^Take in/ })).toHaveCount(0);
  await expect(day.getByLabel('Title')).toHaveValue('My hill');
});

test('the example is called invented, and one’s own day comes back', async ({ page }) => {
  const day = await openDay(page);
  await setUp(day);
  await day.getByRole('button', { name: 'Load the example' }).click();
  await expect(day.getByRole('heading', { name: 'An invented test day' })).toBeVisible();
  await day.getByRole('button', { name: 'Undo' }).click();
  await expect(day.getByRole('heading', { name: 'My hill' })).toBeVisible();
});

test('units switch, are remembered, and change no value', async ({ page }) => {
  const day = await openDay(page);
  await day.getByRole('button', { name: 'Look at an invented example' }).click();
  await day.locator('#set-up').click();
  await day.getByRole('radio', { name: 'US' }).check();
  // 82 kg and 150 m by hand: 82 ÷ 0.45359237, 150 ÷ 0.3048
  await expect(day.locator('#setup-rider')).toHaveValue(/^180\.779/);
  await expect(day.locator('#setup-gain')).toHaveValue(/^492\.1/);
  await day.getByRole('radio', { name: 'Metric' }).check();
  await expect(day.locator('#setup-rider')).toHaveValue('82');
  expect(await page.evaluate(() => localStorage.getItem('uphill-units'))).toBe('metric');
});

test('what differs renames what is compared', async ({ page }) => {
  const day = await openDay(page);
  await day.getByRole('radio', { name: 'Tyres', exact: true }).check();
  await expect(day.getByRole('button', { name: 'Add a variant' })).toBeVisible();
  await day.getByRole('button', { name: 'Add a variant' }).click();
  await typeInto(day, 'Name', 'Slick');
  await typeInto(day, 'Bike mass', '20');
  await day.getByRole('button', { name: 'Enter runs' }).click();
  await expect(entry(day).getByRole('group', { name: 'Variant' })).toBeVisible();
});

test('a linked day is shown without touching one’s own, until the reader says so', async ({ page, context }) => {
  const { dayFragment } = await import('../../calculators/day/link.ts');
  const { exampleDay } = await import('../../calculators/day/example.ts');
  const hash = await dayFragment(exampleDay());
  const day = await openDay(page);
  await setUp(day);
  await expect(day.locator('.set-up')).toBeVisible();
  const other = await context.newPage();
  const visit = await openDay(other, hash);
  await expect(visit.locator('.notice')).toContainText('This day came with a link. Your own, “My hill” with no runs');
  await expect(visit.locator('output[name="motor-power"]').first()).toBeAttached();
  await visit.getByRole('button', { name: 'Back to my own' }).click();
  await expect(visit.getByRole('heading', { name: 'My hill' })).toBeVisible();
  expect(other.url()).not.toContain('#');
  await other.goto(`/test/day/${hash}`);
  await visit.getByRole('button', { name: 'Put mine aside and work on this one' }).click();
  await expect(runs(visit)).toHaveCount(11);
  await visit.getByRole('button', { name: 'Undo' }).click();
  await expect(visit.getByRole('heading', { name: 'My hill' })).toBeVisible();
});

test('a link cut in half gets a sentence, and one’s own day stays', async ({ page }) => {
  const { dayFragment } = await import('../../calculators/day/link.ts');
  const { exampleDay } = await import('../../calculators/day/example.ts');
  const hash = await dayFragment(exampleDay());
  const day = await openDay(page, hash.slice(0, hash.length / 2));
  await expect(day.locator('.notice')).toContainText('incomplete or damaged');
  await expect(day.getByRole('heading', { name: 'A new test day' })).toBeVisible();
});

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

for (const theme of ['light', 'dark'] as const) {
  test(`a day in full is accessible in ${theme}, and fits 320 px`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    const day = await openDay(page);
    await day.getByRole('button', { name: 'Look at an invented example' }).click();
    await day.locator('#set-up').click();
    for (const fold of await day.locator('.set-up .fold > summary').all()) await fold.click();
    await runs(day).nth(1).click();
    await day.getByRole('button', { name: 'Paste a table or open a file' }).click();
    await expect(day.locator('output').first()).toBeAttached();
    const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
    expect(violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`))).toEqual([]);
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  });
}

test.describe('without JavaScript', () => {
  test.use({ javaScriptEnabled: false });
  test('the invented day stands there with its result', async ({ page }) => {
    await page.goto('/test/day/');
    await expect(page.locator('.without-script')).toContainText('Entering runs needs JavaScript');
    await expect(page.getByRole('table', { name: 'Runs, in the order in which they were ridden' })).toContainText(
      '6:48',
    );
    await expect(page.locator('output[name="motor-power"]').first()).toBeVisible();
    await expect(page.getByText('Opening the test day')).toBeHidden();
  });
});

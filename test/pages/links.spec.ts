import { expect, test } from './fixtures.ts';
import { answerFile, complaint, copyLink, enter, expected, field, open, ready, results, timedHill } from './tool.ts';

/* The address says all of a scenario, and nothing else: what a link gives here it gives everywhere, to the last digit. */

for (const [what, clipboard] of [
  ['has no clipboard', 'undefined'],
  ['refuses the clipboard', '{ writeText: () => Promise.reject(new Error("no")) }'],
] as const) {
  test(`a browser that ${what} is shown the address`, async ({ page }) => {
    await page.addInitScript(`Object.defineProperty(navigator, 'clipboard', { value: ${clipboard} })`);
    const tool = await open(page, 'climb-time');
    await enter(tool, 'rider', '90');
    await tool.getByRole('button', { name: 'Copy link' }).click();
    await expect(tool.getByRole('status').filter({ hasText: '/calculators/climb-time/?rider=90kg' })).toBeVisible();
  });
}

test('where the browser can share, the link is shared; closing its sheet is no error', async ({ page }) => {
  await page.addInitScript(() => {
    const shared: unknown[] = [];
    Object.assign(window, { shared });
    Object.defineProperty(navigator, 'share', {
      value: (what: unknown) => {
        shared.push(what);
        return Promise.reject(new DOMException('closed', 'AbortError'));
      },
    });
  });
  const tool = await open(page, 'climb-time', 'rider=90kg');
  await tool.getByRole('button', { name: 'Share…' }).click();
  const shared = await page.evaluate(() => (window as unknown as { shared: { url: string }[] }).shared);
  expect(shared.map(({ url }) => new URL(url).search)).toEqual(['?rider=90kg']);
});

test('“Link copied” does not outlive the scenario that was copied', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await copyLink(page);
  await enter(tool, 'rider', '90');
  await expect(tool.locator('.copied')).toBeEmpty();
});

test('the address follows the inputs, a few times at most, and is empty for the example', async ({ page }) => {
  await page.addInitScript(() => {
    const written: string[] = [];
    Object.assign(window, { written });
    const replace = history.replaceState.bind(history);
    history.replaceState = (data, unused, url) => {
      written.push(String(url));
      replace(data, unused, url);
    };
  });
  const tool = await open(page, 'climb-time');
  const written = () => page.evaluate(() => (window as unknown as { written: string[] }).written);
  await page.waitForTimeout(400);
  expect(await written()).toEqual([]);
  await expect(page).toHaveURL('/calculators/climb-time/');

  await field(tool, 'rider').fill('');
  await field(tool, 'rider').pressSequentially('91.2345 kg');
  await expect(page).toHaveURL('/calculators/climb-time/?rider=91.2345kg');
  const count = (await written()).length;
  expect(count).toBeGreaterThan(0);
  expect(count).toBeLessThan(5);

  await enter(tool, 'rider', '82');
  await expect(page).toHaveURL('/calculators/climb-time/');
  // a value that cannot be used is not handed on
  await enter(tool, 'power', 'lots');
  await enter(tool, 'bike', '21');
  await expect(page).toHaveURL('/calculators/climb-time/?bike=21kg');
});

test('a browser that refuses the address is no obstacle', async ({ page }) => {
  await page.addInitScript(() => {
    history.replaceState = () => {
      throw new DOMException('too often', 'SecurityError');
    };
  });
  const tool = await open(page, 'climb-time');
  await enter(tool, 'rider', '90');
  await page.waitForTimeout(400);
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=90kg'));
});

test('reload and Back bring the state back', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await enter(tool, 'rider', '90');
  await enter(tool, 'motor', 'none');
  await expect(page).toHaveURL(/\?rider=90kg&motor=none$/);
  await page.reload();
  await ready(page);
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=90kg&motor=none'));
  await page.goto('/learn/torque/');
  await page.goBack();
  await ready(page);
  await expect(page).toHaveURL(/\?rider=90kg&motor=none$/);
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=90kg&motor=none'));
  await expect(field(tool, 'rider')).toHaveValue(/^90( kg)?$/);
});

test('what a link says that this calculator does not read is kept and handed on', async ({ page }) => {
  const tool = await open(page, 'climb-time', 'torque=85Nm&target-gain=2000ft&utm=a%20b&power=200W');
  await enter(tool, 'rider', '90');
  await expect(page).toHaveURL('/calculators/climb-time/?rider=90kg&power=200W&torque=85Nm&target-gain=2000ft&utm=a+b');
});

test('what only another calculator reads is named, until the example is back', async ({ page }) => {
  const tool = await open(page, 'climb-time', 'continuous=320W&warm=50&utm=a');
  const note = tool.getByText('does not use what the link says of “warm” (Holding peak power does)');
  await expect(note).toBeVisible();
  await tool.getByRole('button', { name: 'Back to the example' }).click();
  await expect(note).toHaveCount(0);
});

test('the place on the page stays in the address', async ({ page }) => {
  await page.goto('/calculators/climb-time/?power=200W#_top');
  const tool = await ready(page);
  await enter(tool, 'rider', '90');
  await expect(page).toHaveURL('/calculators/climb-time/?rider=90kg&power=200W#_top');
});

for (const [what, query, sentence] of [
  ['nine bikes', 'bike=10,11,12,13,14,15,16,17,18', 'The link has 9 bikes; the first 6 are used.'],
  ['a list with gaps', 'bike=20,,25&motor=,300,', ''],
  [
    'a shorter list',
    'bike=20,21,22&motor=300,400',
    'The link gives 2 values of “motor” for 3 bikes; the rest are defaults.',
  ],
  ['a parameter twice', 'power=200W&power=300W', 'The link gives “power” twice; the first one counts.'],
  [
    'another version',
    'v=2&power=200W',
    'The link is of version “2”, which this page does not know; it was read as version 1.',
  ],
  ['unknown units', 'units=imperial&power=200W', 'The link’s “units” is neither metric nor us.'],
  ['control runs for nobody', 'control-time=none', ''],
] as const) {
  test(`a link with ${what}`, async ({ page }) => {
    const name = what.startsWith('control') ? 'bigger-hill' : 'side-by-side';
    const tool = await open(page, name, query);
    expect(await results(tool)).toEqual(expected(name, query));
    if (sentence !== '') await expect(tool.locator('.remarks').first()).toContainText(sentence);
    const bikes = await tool.locator('input[name="bike"]').count();
    expect(bikes).toBe(what === 'nine bikes' ? 6 : 3);
  });
}

test('a link with nonsense says so beside the field and computes with the default', async ({ page }) => {
  const tool = await open(page, 'bigger-hill', 'rider=heavy&power=200W&bike=37lb,none,2000kg&distance=1%2C609');
  expect(await results(tool)).toEqual(expected('bigger-hill', 'power=200W&bike=37lb,,'));
  await expect(field(tool, 'rider')).toHaveValue('heavy');
  expect(await complaint(field(tool, 'rider'))).toContain('Until then the answer uses 82\u202fkg.');
  expect(await complaint(field(tool, 'bike', 1))).toContain('cannot be read');
  expect(await complaint(field(tool, 'bike', 2))).toContain('outside 5 to 80');
  expect(await complaint(field(tool, 'distance'))).not.toBe('');
  await expect(tool.locator('.stand-in')).toContainText('4 fields cannot be used');
});

test('units of choice are remembered from page to page, and a link’s own units win', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await tool.getByRole('radio', { name: 'US' }).check();
  await expect(page).toHaveURL('/calculators/climb-time/?units=us');
  await open(page, 'side-by-side');
  await expect(tool.getByRole('radio', { name: 'US' })).toBeChecked();
  await expect(field(tool, 'gain')).toHaveValue('771');
  expect(await results(tool)).toEqual(expected('side-by-side'));
  await expect(page).toHaveURL('/calculators/side-by-side/');
  // a link means the same to everybody: a plain number has the plain unit
  await open(page, 'side-by-side', 'units=metric&rider=90');
  await expect(tool.getByRole('radio', { name: 'Metric' })).toBeChecked();
  await open(page, 'side-by-side', 'rider=90');
  await expect(tool.getByRole('radio', { name: 'US' })).toBeChecked();
  expect(await results(tool)).toEqual(expected('side-by-side', 'rider=90kg'));
  // and a number typed now is in the unit that stands beside it
  await enter(tool, 'rider', '200');
  expect(await results(tool)).toEqual(expected('side-by-side', 'rider=200lb'));
  await page.goto('/learn/watt-hours/');
  const island = page.locator('.tool').first();
  await island.scrollIntoViewIfNeeded();
  await expect(island.getByRole('radio', { name: 'US' })).toBeChecked();
});

test('a browser that stores nothing changes units all the same', async ({ page }) => {
  await page.addInitScript(() => {
    const { getItem, setItem } = Storage.prototype;
    const refuse = (key: string): void => {
      // only our own key: the theme's script does not expect a refusal
      if (key.startsWith('uphill')) throw new DOMException('no', 'SecurityError');
    };
    Storage.prototype.getItem = function (key) {
      refuse(key);
      return getItem.call(this, key);
    };
    Storage.prototype.setItem = function (key, value) {
      refuse(key);
      setItem.call(this, key, value);
    };
  });
  const tool = await open(page, 'climb-time');
  await tool.getByRole('radio', { name: 'US' }).check();
  await expect(field(tool, 'distance')).toHaveValue('1.49');
});

test('a linked page with a slow script shows no number that is not the link’s', async ({ page }) => {
  let release = (): void => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(/\/island\./, async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(`/calculators/bigger-hill/?${timedHill}`, { waitUntil: 'commit' });
  const tool = page.locator('.tool');
  // nothing is painted before the styles are there
  await tool.locator('.inputs-used').waitFor({ state: 'attached' });
  await expect(tool.locator('.inputs-used')).toBeHidden();
  // Every figure in the tool that can be seen: text, drawn text, and what stands in the fields.
  const seen = () =>
    tool.evaluate((element) =>
      [...element.querySelectorAll('*')]
        .filter((each) => each.closest('.hint') === null)
        .filter((each) => each.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
        .filter((each) => getComputedStyle(each).color !== 'rgba(0, 0, 0, 0)')
        .flatMap((each) =>
          each instanceof HTMLInputElement
            ? each.value
            : [...each.childNodes]
                .filter((node) => node.nodeType === Node.TEXT_NODE)
                .map((node) => node.nodeValue ?? ''),
        )
        .filter((text) => /\d/.test(text) && !/control run \d$/i.test(text)),
    );
  expect(await seen()).toEqual([]);
  // the place is kept: nothing moves when the numbers come
  const height = await tool.evaluate((element) => element.getBoundingClientRect().height);
  expect(height).toBeGreaterThan(600);
  release();
  await ready(page);
  expect(await results(tool)).toEqual(expected('bigger-hill', timedHill));
  expect(await seen()).toContain('26:47');
});

test.describe('when the script never comes', () => {
  test.use({ allowed: [/ERR_FAILED|Failed to fetch|Failed to load|error loading/i] });
  test('a linked page shows the example in the end, and says that it is one', async ({ page }) => {
    await page.clock.install();
    await page.route(/\/island\./, (route) => route.abort());
    await page.goto('/calculators/climb-time/?power=200W');
    await page.clock.fastForward(11_000);
    await expect(page.locator('output[name="time"]')).toBeVisible();
  });

  test('nor what answers: the page says so and shows no number that is not the link’s', async ({ page }) => {
    await page.route(answerFile('climb-time'), (route) => route.abort());
    await page.goto('/calculators/climb-time/?power=200W');
    const tool = page.locator('[data-live] .tool');
    await expect(tool.getByRole('alert')).toContainText('lost its connection');
    await expect(field(tool, 'power')).toHaveValue('200 W');
    for (const output of await tool.locator('output').all()) await expect(output).toBeHidden();
  });
});

test('the home page reads and writes its address too', async ({ page }) => {
  await page.goto('/?rider=90kg');
  const tool = await ready(page);
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=90kg'));
  await enter(tool, 'power', '200');
  await expect(page).toHaveURL('/?rider=90kg&power=200W');
  expect(new URL(await copyLink(page)).search).toBe('?rider=90kg&power=200W');
});

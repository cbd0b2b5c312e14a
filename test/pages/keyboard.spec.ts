import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { expected, field, names, open, results, taken } from './tool.ts';

/* Everything without a mouse: reached by Tab, seen when reached, never lost. */

/** What in this calculator holds the focus, told by name, and whether that can be seen; nothing while the focus is elsewhere. */
const focused = (tool: Locator): Promise<{ what: string; seen: boolean; hidden: string } | null> =>
  tool.evaluate((frame) => {
    const element = document.activeElement as HTMLElement;
    if (!frame.contains(element)) return null;
    const { name, type, dataset } = element as HTMLInputElement;
    const what =
      type === 'text'
        ? `${name}.${dataset.column}`
        : type === 'radio'
          ? 'units'
          : type === 'file'
            ? 'file'
            : (element.getAttribute('aria-label') ?? (element.textContent || element.tagName));
    const drawn = element.closest('.entry, .choose') ?? element;
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(drawn);
    const seen = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && outlineColor !== 'rgba(0, 0, 0, 0)';
    // what a person sees there: the element itself, not something lying on it; of a tall one any part will do
    const box = element.getBoundingClientRect();
    const x = box.x + Math.min(box.width, innerWidth) / 2;
    const on = [0.5, ...(box.height > 100 ? [0.1, 0.9] : [])].map((part) =>
      document.elementFromPoint(x, box.y + part * box.height),
    );
    const covered = !on.some((top) => top !== null && (drawn.contains(top) || top.contains(element)));
    return { what, seen, hidden: covered ? `${what} lies under ${on[0]?.outerHTML.slice(0, 80)}` : '' };
  });

/** Walks through the calculator by Tab from before it, or by Shift and Tab from behind it, and tells every stop. */
async function walk(page: Page, tool: Locator, key: 'Tab' | 'Shift+Tab'): Promise<string[]> {
  const stops: string[] = [];
  await page.locator(key === 'Tab' ? 'h1' : 'footer').evaluate((start) => {
    start.tabIndex = -1;
    start.focus();
  });
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press(key);
    const stop = await focused(tool);
    if (stop === null) {
      if (stops.length > 0) break;
      continue;
    }
    const { what, seen, hidden } = stop;
    expect(seen, `${what} shows that it has the focus`).toBe(true);
    expect(hidden).toBe('');
    stops.push(what);
  }
  return stops;
}

for (const name of names) {
  test(`${name}: Tab reaches everything, in the order of the page`, async ({ page }) => {
    const tool = await open(page, name);
    await tool.locator('.fold summary').focus();
    await page.keyboard.press('Enter');
    await expect(tool.locator('.fold')).toHaveAttribute('open', '');
    const stops = await walk(page, tool, 'Tab');
    expect(await walk(page, tool, 'Shift+Tab')).toEqual(stops.toReversed());

    // One group of radio buttons is one stop; links and inputs, buttons and regions are one each.
    const all = await tool
      .locator(
        'input[data-column], button, summary, a, [tabindex="0"], input[type="radio"]:checked, input[type="file"]',
      )
      .evaluateAll((elements) =>
        // a fold that is closed is one stop
        elements
          .filter((element) => element.checkVisibility())
          .map((element) => {
            const { name: input, type, dataset, textContent } = element as HTMLInputElement;
            if (type === 'text') return `${input}.${dataset.column}`;
            if (type === 'file') return 'file';
            return type === 'radio' ? 'units' : (element.getAttribute('aria-label') ?? textContent);
          }),
      );
    expect(stops).toEqual(all);
    for (const input of taken(name, 'rider', 'power', 'drag')) expect(stops).toContain(`${input}.0`);
    for (const each of ['Copy link', 'Back to the example', 'units']) expect(stops).toContain(each);
    if (name === 'side-by-side' || name === 'bigger-hill')
      for (const each of ['Add a bike', 'Remove Light', 'bike.2']) expect(stops).toContain(each);
  });
}

test('a scenario is set up, read and started again without a mouse', async ({ page }) => {
  const tool = await open(page, 'side-by-side');
  await field(tool, 'rider').focus();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('90');
  await page.keyboard.press('Tab');
  await expect(field(tool, 'power')).toBeFocused();
  // Enter in a field sends nothing away
  await page.keyboard.press('Enter');
  await expect(field(tool, 'power')).toBeFocused();
  expect(await results(tool)).toEqual(expected('side-by-side', 'rider=90kg'));

  const metric = tool.getByRole('radio', { name: 'Metric' });
  await metric.focus();
  await page.keyboard.press('ArrowRight');
  await expect(tool.getByRole('radio', { name: 'US' })).toBeFocused();
  await expect(tool.getByRole('radio', { name: 'US' })).toBeChecked();
  await expect(field(tool, 'rider')).toHaveValue(/^198/);

  const reset = tool.getByRole('button', { name: 'Back to the example' });
  await reset.focus();
  await page.keyboard.press('Space');
  await expect(field(tool, 'rider')).toHaveValue(/^181|^180\.8/);
  await expect(reset).toBeFocused();
});

// in a wide window it is wide enough
test('a table that scrolls sideways does so by keyboard', { tag: '@phone' }, async ({ page }) => {
  const tool = await open(page, 'side-by-side', 'bike=17,21,24,20,20,20&motor=280,400,560,300,300,300');
  const table = tool.getByRole('region', { name: 'Bike by bike' });
  await table.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => table.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
});

const inTool = (tool: Locator): Promise<string> =>
  tool.evaluate((element) =>
    element.contains(document.activeElement)
      ? document.activeElement?.textContent || document.activeElement?.getAttribute('name') || ''
      : `outside: ${document.activeElement?.tagName}`,
  );

test('adding and removing bikes keeps the focus where one goes on', async ({ page }) => {
  const tool = await open(page, 'side-by-side');
  const add = tool.getByRole('button', { name: 'Add a bike' });
  await add.focus();
  for (const count of [4, 5, 6]) {
    await page.keyboard.press('Enter');
    await expect(tool.locator('input[name="name"]')).toHaveCount(count);
    // the new bike's first field: what one fills in next
    await expect(field(tool, 'name', count - 1)).toBeFocused();
    if (count < 6) await add.focus();
  }
  await expect(add).toHaveCount(0);

  for (const [count, bike] of [
    [5, 'Bike 6'],
    [4, 'Light'],
    [3, 'Bike 4'],
    [2, 'Mid'],
  ] as const) {
    await tool.getByRole('button', { name: `Remove ${bike}`, exact: true }).focus();
    await page.keyboard.press('Enter');
    await expect(tool.locator('input[name="name"]')).toHaveCount(count);
    await expect.poll(() => inTool(tool)).toBe('Add a bike');
  }
  await expect(tool.getByRole('button', { name: /^Remove/ })).toHaveCount(0);
  await expect(tool.locator('.standings .who')).toHaveText(['Full', 'Bike 5']);
});

test('so do control runs, down to none', async ({ page }) => {
  const tool = await open(page, 'bigger-hill');
  await tool.getByRole('button', { name: 'Add a control run' }).press('Enter');
  await expect(field(tool, 'control-time', 1)).toBeFocused();
  for (const run of [2, 1]) {
    await tool.getByRole('button', { name: `Remove control run ${run}` }).press('Enter');
    await expect(field(tool, 'control-time', run - 1)).toHaveCount(0);
    await expect.poll(() => inTool(tool)).toBe('Add a control run');
  }
  expect(await results(tool)).toEqual(expected('bigger-hill', 'control-time=none'));
});

test('a change is spoken once, after a pause; the numbers themselves are silent', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await page.clock.install({ time: 0 });
  await page.clock.pauseAt(60_000);
  const spoken = tool.locator('p.sr-only[role="status"]');
  await expect(spoken).toBeEmpty();
  for (const text of ['1', '15', '150']) {
    await field(tool, 'power').fill(text);
    await page.clock.runFor(500);
    await expect(spoken).toBeEmpty();
  }
  await page.clock.runFor(500);
  await expect(spoken).toHaveText(/^Climb time \d+:\d\d, .*\d+:\d\d to \d+:\d\d$/);
  for (const output of await tool.locator('output').all()) await expect(output).toHaveAttribute('aria-live', 'off');
});

import type { Locator, Page } from '@playwright/test';
import { type CalculatorName, columnsOf, exampleOf, namesOf } from '../../calculators/scenario/vocabulary.ts';
import { expect, test } from './fixtures.ts';
import { changed, complaint, enter, expected, field, names, open, ready, results, unfold } from './tool.ts';

/* What people type into the fields: everything a person means is understood, everything else is kept and answered. */

const nonsense = [
  'abc',
  '9'.repeat(200),
  '1e300',
  '-99999',
  '38O',
  '🚲🚲',
  'x'.repeat(200),
  'NaN',
  '-Infinity',
  '<b>bold</b>',
];

/** Where a field is read as it was before, these two stand for all: no number, and one that is out of any range. */
const someNonsense = nonsense.slice(0, 2);

/** The calculator and column where an input is met first. What reads it there reads it everywhere. */
const isFirst = (name: CalculatorName, parameter: string, column: number): boolean =>
  column === 0 && names.find((each) => namesOf(each).includes(parameter)) === name;

/** All that a calculator shows which is no number; what a sentence quotes is the reader's own. */
const badNumbers = (tool: Locator): Promise<string[]> =>
  tool.evaluate(
    (element) => element.outerHTML.replace(/“[^”]*”/g, '').match(/(?:NaN|Infinity|undefined|∞).{0,40}/g) ?? [],
  );

interface Answer {
  sentence: string;
  kept: string;
  marked: number;
  standIn: string;
  results: string;
  bad: string[];
}

/**
 * What the calculator says to each text in a field, one after the other and left each time. One visit to the page for
 * all: a thousand single ones would take minutes.
 */
const answersTo = (input: Locator, texts: string[]): Promise<Answer[]> =>
  input.evaluate(async (element: HTMLInputElement, all) => {
    const tool = element.closest('.tool');
    const answers: Answer[] = [];
    for (const text of all) {
      element.focus();
      element.value = text;
      element.dispatchEvent(new InputEvent('input', { bubbles: true }));
      element.blur();
      await new Promise((resolve) => setTimeout(resolve));
      const described = (element.getAttribute('aria-describedby') ?? '').split(' ');
      const sentence = described
        .map((id) => document.getElementById(id))
        .find((each) => each?.classList.contains('problem'));
      const outputs = [...(tool?.querySelectorAll('output') ?? [])];
      answers.push({
        sentence: element.getAttribute('aria-invalid') === 'true' ? (sentence?.textContent ?? '') : '',
        kept: element.value,
        marked: tool?.querySelectorAll('[aria-invalid]').length ?? 0,
        standIn: tool?.querySelector('.tool-head.stale .stand-in')?.textContent ?? '',
        results: outputs.map(({ name, dataset }) => `${name} ${JSON.stringify(dataset)}`).join('\n'),
        bad: tool?.outerHTML.replace(/“[^”]*”/g, '').match(/(?:NaN|Infinity|undefined|∞).{0,40}/g) ?? [],
      });
    }
    return answers;
  }, texts);

for (const name of names) {
  test(`${name}: nonsense in any field gets its sentence and loses nothing`, async ({ page }) => {
    const tool = await open(page, name);
    await unfold(tool);
    const touched = field(tool, changed(name));
    const [example] = await answersTo(touched, [await touched.inputValue()]);
    // names are text: see below
    for (const parameter of namesOf(name).filter((each) => each !== 'name')) {
      for (const column of columnsOf(exampleOf(name), parameter)) {
        const texts = isFirst(name, parameter, column) ? nonsense : someNonsense;
        const answers = await answersTo(field(tool, parameter, column), [...texts, '']);
        const cleared = answers.pop();
        for (const [i, answer] of answers.entries()) {
          const where = `“${texts[i]}” in ${parameter} ${column}`;
          expect(answer.sentence, where).toMatch(/^.{10,}[.?]/);
          expect(answer.standIn, where).toMatch(/^One field cannot be used\. (.+ )?The answer takes .+\.$/);
          expect(answer, where).toMatchObject({ kept: texts[i], marked: 1, results: example?.results, bad: [] });
        }
        expect(cleared, `${parameter} ${column} cleared`).toEqual({ ...example, kept: '' });
      }
    }
    expect(await results(tool)).toEqual(expected(name));
    expect(await tool.locator('b').count()).toBe(0);
  });
}

test('a name may be anything that fits', async ({ page }) => {
  const tool = await open(page, 'side-by-side');
  const input = field(tool, 'name', 1);
  for (const text of ['abc', '🚲🚲', '-99999', '<b>bold</b>', 'Größe, ü & "x" \\ y', 'x'.repeat(40)]) {
    await enter(tool, 'name', text, 1);
    expect(await complaint(input)).toBe('');
    await expect(tool.locator('.standings .who').nth(1)).toHaveText(text);
    await expect(tool.getByRole('columnheader').nth(1)).toHaveText(text);
    await expect(tool.getByRole('button', { name: `Remove ${text}`, exact: true })).toHaveCount(1);
    expect(await results(tool)).toEqual(expected('side-by-side'));
  }
  await enter(tool, 'name', 'x'.repeat(200), 1);
  expect(await complaint(input)).toContain('A name has at most 40 characters; this one has 200.');
  await enter(tool, 'name', '', 1);
  await expect(tool.locator('.standings .who').nth(1)).toHaveText('Mid');
  await expect(tool.locator('b')).toHaveCount(0);
});

test('the last valid value serves while nonsense stands in its field, and both come back', async ({ page }) => {
  const tool = await open(page, 'climb-time', 'rider=90kg&motor=none');
  const linked = expected('climb-time', 'rider=90kg&motor=none');
  await enter(tool, 'rider', '38O');
  await enter(tool, 'motor', 'lots');
  expect(await results(tool)).toEqual(linked);
  expect(await complaint(field(tool, 'rider'))).toContain('Until then the answer uses 90\u202fkg.');
  await expect(tool.locator('.stand-in')).toHaveText(
    '2 fields cannot be used. The answer takes “Body and kit” as 90\u202fkg, “Motor gives” as none.',
  );
  await enter(tool, 'rider', '91');
  expect(await complaint(field(tool, 'rider'))).toBe('');
  await enter(tool, 'motor', '');
  expect(await results(tool)).toEqual(expected('climb-time', 'rider=91kg'));
});

test('nobody is told off while typing; the sentence comes after a pause', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await page.clock.install({ time: 0 });
  await page.clock.pauseAt(60_000);
  const input = field(tool, 'power');
  await input.fill('2x');
  await page.clock.runFor(700);
  expect(await complaint(input)).toBe('');
  await page.clock.runFor(200);
  expect(await complaint(input)).not.toBe('');
  await expect(input).toBeFocused();
});

test('two inputs that contradict each other are named beside their field', async ({ page }) => {
  const tool = await open(page, 'climb-time');
  await enter(tool, 'gain', '2400');
  expect(await complaint(field(tool, 'gain'))).toContain('the height must be smaller than the distance');
  await expect(tool.locator('output[name="time"]')).toHaveText('–');
  await expect(tool.locator('output[data-si]')).toHaveCount(0);
  expect(await badNumbers(tool)).toEqual([]);
  await enter(tool, 'gain', '235');
  expect(await results(tool)).toEqual(expected('climb-time'));
});

/** What people type, the same as a link; the field of a link's parameter is meant. */
const typed: [CalculatorName, string, string, string][] = [
  ['climb-time', 'distance', '3,2', 'distance=3.2km'],
  ['climb-time', 'distance', '3\u2009200\u202fm', 'distance=3200m'],
  ['climb-time', 'distance', '1.609 km', 'distance=1.609km'],
  ['climb-time', 'gain', "900'", 'gain=900ft'],
  ['climb-time', 'gain', '200,5', 'gain=200.5m'],
  ['climb-time', 'grade', '1 in 10', 'grade=1:10'],
  ['climb-time', 'grade', '5.7°', 'grade=5.7deg'],
  ['climb-time', 'grade', '5,7 °', 'grade=5.7deg'],
  ['climb-time', 'grade', '10 %', 'grade=10'],
  ['climb-time', 'bike', '37 lb', 'bike=37lb'],
  ['climb-time', 'bike', '16,8\u00a0KG', 'bike=16.8kg'],
  ['climb-time', 'power', '0,2 kW', 'power=0.2kW'],
  ['climb-time', 'motor', 'None', 'motor=none'],
  ['climb-time', 'altitude', '−120', 'altitude=-120m'],
  ['climb-time', 'temperature', '−5', 'temperature=-5C'],
  ['climb-time', 'temperature', '70 °F', 'temperature=70F'],
  ['climb-time', 'wind', '−2,5', 'wind=-2.5m/s'],
  ['climb-time', 'limit', '10 mph', 'limit=10mph'],
  ['bigger-hill', 'time', "9'", 'time=9:00,,'],
  ['bigger-hill', 'time', '9:10,5', 'time=9:10.5,,'],
  ['bigger-hill', 'control-time', '26 min 43 s', 'control-time=26:43'],
  ['bigger-hill', 'control-time', '0:26:43', 'control-time=26:43'],
];

for (const locale of ['de-DE', 'en-US']) {
  test.describe(locale, () => {
    test.use({ locale });
    for (const name of ['climb-time', 'bigger-hill'] as const) {
      test(`${name} understands what people type`, async ({ page }) => {
        const tool = await open(page, name);
        await unfold(tool);
        for (const [, parameter, text, query] of typed.filter(([calculator]) => calculator === name)) {
          await test.step(text, async () => {
            await enter(tool, parameter, text);
            expect(await complaint(field(tool, parameter))).toBe('');
            expect(await field(tool, parameter).inputValue()).toBe(text);
            const shown = await results(tool);
            expect(shown).toEqual(expected(name, query));
            expect(shown).not.toEqual(expected(name));
            await enter(tool, parameter, '');
          });
        }
      });
    }
  });
}

test('what can be read in two ways is asked about', async ({ page }) => {
  const tool = await open(page, 'bigger-hill');
  for (const [parameter, text, question] of [
    ['distance', '1,609', '“1,609”: thousands or decimals? Write 1609\u202fkm or 1.609\u202fkm.'],
    ['gain', '1.234', '“1.234”: thousands or decimals? Write 1234\u202fm or 1.2340\u202fm.'],
    ['time', '7.22', '“7.22”: minutes and seconds, or minutes with decimals? Write 7:22 or 7:13.'],
    ['time', '722', '“722”: minutes and seconds, or seconds? Write 7:22 or 12:02.'],
  ] as const) {
    await enter(tool, parameter, text);
    expect(await complaint(field(tool, parameter))).toContain(question);
    expect(await field(tool, parameter).inputValue()).toBe(text);
    expect(await results(tool)).toEqual(expected('bigger-hill'));
    await enter(tool, parameter, '');
  }
});

test.describe('sums', () => {
  test('are worked out by a library that is asked for then, not before', async ({ page }) => {
    const asked: string[] = [];
    page.on('request', (request) => {
      if (/expression/.test(request.url())) asked.push(request.url());
    });
    const tool = await open(page, 'climb-time');
    await unfold(tool);
    await enter(tool, 'distance', '3.2 km');
    await enter(tool, 'rider', 'nonsense');
    await enter(tool, 'rider', '82');
    await page.waitForLoadState('networkidle');
    expect(asked).toEqual([]);

    await enter(tool, 'distance', '2*1.2 km + 100 m');
    await expect(tool.getByText('2*1.2 km + 100 m = 2500\u202fm')).toBeVisible();
    expect(asked.length).toBe(1);
    expect(await field(tool, 'distance').inputValue()).toBe('2*1.2 km + 100 m');
    expect(await results(tool)).toEqual(expected('climb-time', 'distance=2.5km'));
    await enter(tool, 'battery', '36 V * 10 Ah');
    await expect(tool.getByText('36 V * 10 Ah = 360\u202fWh')).toBeVisible();
    expect(await results(tool)).toEqual(expected('climb-time', 'distance=2.5km&battery=360Wh'));
    expect(asked.length).toBe(1);
  });

  test.describe('without a connection', () => {
    test.use({ allowed: [/ERR_FAILED|Failed to fetch|Failed to load/] });
    test('keep the sentence of the plain reader', async ({ page }) => {
      await page.route(/expression/, (route) => route.abort());
      const tool = await open(page, 'climb-time');
      await enter(tool, 'distance', '2*1.2 km');
      await expect(field(tool, 'distance')).toHaveAttribute('aria-invalid', 'true');
      expect(await complaint(field(tool, 'distance'))).toContain('cannot be read');
      expect(await results(tool)).toEqual(expected('climb-time'));
    });
  });
});

/** What answers comes in a file of its own, before or after the one that reads the fields: waits until both have done their part. */
const shows = (tool: Locator, answer: ReturnType<typeof expected>): Promise<void> =>
  expect.poll(() => results(tool)).toEqual(answer);

/** Keeps a script away until the test lets it go. */
async function hold(page: Page, script: RegExp): Promise<() => void> {
  let release = (): void => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(script, async (route) => {
    await held;
    await route.continue();
  });
  return release;
}

test('what was typed before the script came is kept and counts', async ({ page }) => {
  const release = await hold(page, /\/island\./);
  await page.goto('/calculators/climb-time/', { waitUntil: 'commit' });
  const tool = page.locator('.tool');
  await field(tool, 'rider').fill('95');
  await field(tool, 'bike').fill('not yet');
  await expect(page.locator('[data-live]')).toHaveCount(0);
  release();
  await expect(field(tool, 'bike')).toHaveAttribute('aria-invalid', 'true');
  expect(await field(tool, 'rider').inputValue()).toBe('95');
  expect(await field(tool, 'bike').inputValue()).toBe('not yet');
  await shows(tool, expected('climb-time', 'rider=95kg'));
});

test('what was typed into a linked page before its script came wins over the link', async ({ page }) => {
  const release = await hold(page, /\/island\./);
  await page.goto('/calculators/climb-time/?rider=90kg&power=200W', { waitUntil: 'commit' });
  await field(page.locator('.tool'), 'rider').fill('95');
  release();
  const tool = await ready(page);
  await shows(tool, expected('climb-time', 'rider=95kg&power=200W'));
  expect(await field(tool, 'rider').inputValue()).toBe('95');
});

test('what is typed while the rest of the script is on its way is kept and counts', async ({ page }) => {
  const release = await hold(page, /changes/);
  await page.goto('/calculators/climb-time/');
  const tool = await ready(page);
  await field(tool, 'rider').fill('');
  await field(tool, 'rider').pressSequentially('95.5');
  await field(tool, 'bike').fill('not yet');
  await tool.getByRole('radio', { name: 'US' }).check();
  expect(await results(tool)).toEqual(expected('climb-time'));
  release();
  await expect(field(tool, 'distance')).toHaveValue('1.49');
  await shows(tool, expected('climb-time', 'rider=95.5kg'));
  expect(await field(tool, 'bike').inputValue()).toBe('not yet');
  await expect(tool.getByRole('radio', { name: 'US' })).toBeChecked();
});

test.describe('when the connection is gone', () => {
  test.use({ allowed: [/ERR_FAILED|Failed to fetch|Failed to load/] });
  test('a change that cannot be worked out is said to be so, and the text stays', async ({ page }) => {
    await page.route(/changes/, (route) => route.abort());
    await page.goto('/calculators/climb-time/');
    const tool = await ready(page);
    await field(tool, 'rider').fill('95');
    await expect(tool.getByRole('alert')).toContainText('lost its connection');
    expect(await field(tool, 'rider').inputValue()).toBe('95');
    expect(await results(tool)).toEqual(expected('climb-time'));
  });
});

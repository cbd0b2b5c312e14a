import { outcomeOf } from '../../calculators/outcomes.ts';
import { calculators, namesOf, pathOf } from '../../calculators/scenario/vocabulary.ts';
import { expect, test } from './fixtures.ts';
import { copyLink, enter, expected, field, names, open, ready, results, taken, timedHill, unfold } from './tool.ts';

/*
 * What a calculator answers in the browser is what `outcomeOf` answers here: the same numbers to the last digit.
 * The timed hill is common practice, no source.
 */

const byHand: [string, string[]][] = [
  ['distance', ['1 mi']],
  ['gain', ['550 ft']],
  ['rider', ['80']],
  ['power', ['200']],
  ['name', ['A', 'B', 'C']],
  ['bike', ['37 lb', '45 lb', '52 lb']],
  ['time', ['7:22', '5:57', '4:56']],
  ['control-time', ['16:43']],
  ['control-power', ['200']],
  ['control-bike', ['23 lb']],
  ['target-gain', ['2000 ft']],
];

test('a timed hill, typed by hand, is carried to another hill', async ({ page }) => {
  const tool = await open(page, 'bigger-hill');
  for (const [name, texts] of byHand) {
    for (const [column, text] of texts.entries()) {
      const input = field(tool, name, column);
      await input.click();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
      await expect(input).toHaveValue(text);
    }
  }
  const times = tool.locator('output[name="time"]');
  await expect(times).toHaveText(['26:47', '21:38', '17:56']);
  await expect(tool.locator('output[name="time-proportional"]')).toHaveText(['26:47', '21:38', '17:56']);
  await expect(tool.locator('output[name="gap"]')).toHaveText(['8:51', '3:42', 'first up']);
  await expect(tool.locator('output[name="binds"]')).toHaveText(['none', 'none', 'none']);
  expect(await results(tool)).toEqual(expected('bigger-hill', timedHill));
  await expect(page).toHaveURL(`/calculators/bigger-hill/?${timedHill}`);

  await field(tool, 'target-grade').click();
  await page.keyboard.type('6');
  await expect(tool.locator('output[name="binds"]')).toHaveText(['grade', 'grade', 'assist-limit']);
  await expect(tool.locator('.remarks .caution')).toContainText([
    /C is held back by the assist limit of 25(\.0)?\u202fkm\/h on the other hill/,
    /too different for multiplying/,
  ]);
  expect(await results(tool)).toEqual(expected('bigger-hill', `${timedHill}&target-grade=6&limit=25km/h`));
  await expect(page).toHaveURL(`/calculators/bigger-hill/?${timedHill}&target-grade=6`);
});

const inGermanManner: [string, string, string][] = [
  ['distance', '1,61 km', '1.61km'],
  ['temperature', '−2,5', '-2.5C'],
  ['rider', '171,3 lb', '171.3lb'],
  ['power', '0,2015 kW', '0.2015kW'],
];

for (const name of names) {
  test(`${name}: a copied link gives the same numbers in any language`, async ({ browser, watch }) => {
    const inGerman = await browser.newContext({ locale: 'de-DE' });
    watch(inGerman);
    const page = await inGerman.newPage();
    const tool = await open(page, name);
    const { bikes, one = 'bike' } = calculators[name];
    const own = inGermanManner.filter(([input]) => taken(name, input).length > 0);
    await unfold(tool);
    for (const [input, text] of own) await enter(tool, input, text);
    for (const input of taken(name, 'bike')) await enter(tool, input, '16,85');
    for (const input of taken(name, 'limit')) await enter(tool, input, '18 mph');
    if (bikes.max > 1) {
      await tool.getByRole('button', { name: `Add a ${one}` }).click();
      await enter(tool, 'name', 'Größe, ü & "x" \\ + #', bikes.example);
      for (const input of taken(name, 'bike')) await enter(tool, input, '52 lb', bikes.example);
      for (const input of taken(name, 'torque')) await enter(tool, input, '52 lb-ft', bikes.example);
    }
    if (name === 'bigger-hill') {
      await enter(tool, 'time', "9'", 3);
      await enter(tool, 'target-grade', '1 in 12');
    }
    const typed = await results(tool);
    expect(typed).not.toEqual(expected(name));
    const link = await copyLink(page);
    const query = new URL(link).search;
    expect(typed).toEqual(expected(name, query));
    expect(query).toContain(own.map(([input, , link]) => `${input}=${link}`).join('&'));
    await inGerman.close();

    const elsewhere = await browser.newContext({ locale: 'en-US' });
    watch(elsewhere);
    const there = await elsewhere.newPage();
    await there.goto(link);
    const opened = await ready(there);
    await expect.poll(() => results(opened)).toEqual(typed);
    if (bikes.max > 1)
      await expect(opened.locator('.standings .who').nth(bikes.example)).toHaveText('Größe, ü & "x" \\ + #');
    await elsewhere.close();
  });
}

test('the page names the rider’s mass when the surface looks absurd', async ({ page }) => {
  const tool = await open(page, 'bigger-hill', timedHill);
  await enter(tool, 'rider', '65');
  await expect(tool.locator('.remarks .wrong')).toContainText('most often the rider’s mass (65\u202fkg with kit)');
});

for (const name of names) {
  test(`${name}: the example, units to and fro without moving a digit, and the example again`, async ({ page }) => {
    const tool = await open(page, name);
    expect(await results(tool)).toEqual(expected(name));
    const remarks = outcomeOf(name, '').remarks.map(({ text }) => text);
    await expect(tool.locator('.remarks li')).toHaveText(remarks);
    await expect(tool.getByRole('img').first()).toBeVisible();

    const inputs = () =>
      tool.locator('input[data-column]').evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));
    await unfold(tool);
    const untouched = await inputs();
    for (const input of taken(name, 'distance')) await enter(tool, input, '1609.344 m');
    for (const input of taken(name, 'rider')) await enter(tool, input, '77.7 kg');
    for (const input of taken(name, 'torque')) await enter(tool, input, '66.6');
    await enter(tool, 'power', '201.5');
    const before = await results(tool);
    expect(before).not.toEqual(expected(name));
    const metric = await tool.textContent();

    await tool.getByRole('radio', { name: 'US' }).check();
    for (const input of taken(name, 'distance')) await expect(field(tool, input)).toHaveValue('1');
    for (const input of taken(name, 'rider')) await expect(field(tool, input)).toHaveValue(/^171/);
    for (const input of taken(name, 'torque')) await expect(field(tool, input)).toHaveValue(/^49\.1/);
    expect(await results(tool)).toEqual(before);
    expect(await tool.textContent()).not.toBe(metric);
    await tool.getByRole('radio', { name: 'Metric' }).check();
    expect(await results(tool)).toEqual(before);

    await enter(tool, namesOf(name).at(-1) ?? '', 'nonsense');
    await tool.getByRole('button', { name: 'Back to the example' }).click();
    expect(await inputs()).toEqual(untouched);
    expect(await results(tool)).toEqual(expected(name));
    await expect(tool.locator('[aria-invalid], .problem, .stand-in')).toHaveCount(0);
    // the units stay as chosen, and nothing else is left in the address
    await expect(page).toHaveURL(`${pathOf(name)}?units=metric`);
  });
}

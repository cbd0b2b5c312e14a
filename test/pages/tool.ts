import { expect, type Locator, type Page } from '@playwright/test';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { NO_VALUE } from '../../calculators/quantities/index.ts';
import { resultNames } from '../../calculators/scenario/results.ts';
import {
  type CalculatorName,
  calculators,
  namesOf,
  type Outcome,
  pathOf,
} from '../../calculators/scenario/vocabulary.ts';

/** The calculators by name, in the order of the site. */
export const names = Object.keys(calculators) as CalculatorName[];

/** Those of these inputs that a calculator takes. */
export const taken = (calculator: CalculatorName, ...inputs: string[]): string[] =>
  inputs.filter((input) => namesOf(calculator).includes(input));

/** An input that any test may change to 80 to 100 of its unit: the rider's mass, else the rider's power. */
export const changed = (calculator: CalculatorName): string => taken(calculator, 'rider', 'power')[0] ?? '';

/** The result that a calculator's chart and headline are about. */
export const mainResult = (calculator: CalculatorName): string => resultNames[calculator][0]?.name ?? '';

/** A hill and times of common practice, no source: typed by hand here, and linked. */
export const timedHill =
  'distance=1mi&gain=550ft&rider=80kg&power=200W&name=A,B,C&bike=37lb,45lb,52lb&time=7:22,5:57,4:56' +
  '&control-time=16:43&control-power=200W&control-bike=23lb&target-gain=2000ft';

/** Opens a calculator at a link, all its scripts at work. */
export async function open(page: Page, calculator: CalculatorName, query = ''): Promise<Locator> {
  await page.goto(`${pathOf(calculator)}${query && `?${query}`}`);
  const tool = await ready(page);
  await warmUp(tool);
  return tool;
}

/**
 * Waits for what a calculator loads when somebody is about to change something, so that a test can read what follows a change at once:
 * what reads the fields, what answers, and the sentences.
 */
export async function warmUp(tool: Locator): Promise<void> {
  await tool.locator('.tool-form').dispatchEvent('pointerenter');
  const name = (await tool.getAttribute('data-tool')) ?? '';
  const needed = [/\/changes\.[\w-]+\.js$/, answerFile(name), /\/Behind\.[\w-]+\.js$/].map(({ source }) => source);
  const scripts = await tool.page().waitForFunction((sources) => {
    const loaded = performance.getEntriesByType('resource').map((each) => each.name);
    const found = sources.map((source) => loaded.find((each) => new RegExp(source).test(each)));
    return found.every((each) => each !== undefined) ? found : null;
  }, needed);
  // a file that has come may still have to be run
  const files = (await scripts.jsonValue()) ?? [];
  await tool.page().evaluate((all) => Promise.all(all.map((file) => import(file as string))), files);
}

/** A calculator of a page, mostly the only one, once its script is at work and its link applied. */
export async function ready(page: Page, which = '.tool'): Promise<Locator> {
  await page.locator(`html:not([data-linked]) [data-live] ${which}:not(:has(.outdated))`).waitFor();
  return page.locator(which);
}

/** An input of a calculator. */
export function field(tool: Locator, name: string, column = 0): Locator {
  return tool.locator(`input[name="${name}"][data-column="${column}"]`);
}

/** Puts a text into a field and leaves it, as somebody does who pastes. */
export async function enter(tool: Locator, name: string, text: string, column = 0): Promise<void> {
  await field(tool, name, column).fill(text);
  await field(tool, name, column).blur();
}

/** Opens the fold with the less common inputs, which come then. */
export async function unfold(tool: Locator): Promise<void> {
  await tool.locator('.tool-form .fold summary').click();
  await tool.locator('.tool-form .fold input').first().waitFor();
}

/** A result as its element holds it: "si", "si (low to high)", or the text of one without a number. */
type Results = Record<string, string>;

const written = (si: string, low: string | undefined, high: string | undefined): string =>
  low === undefined && high === undefined ? si : `${si} (${low} to ${high})`;

/** Every result that a calculator shows, by name and bike. A result that stands there twice fails. */
export async function results(tool: Locator): Promise<Results> {
  const all = await tool.locator('output').evaluateAll((outputs) =>
    outputs.map((output) => {
      const { name, dataset, textContent } = output as HTMLOutputElement;
      const { bike, si, low, high, text = textContent } = dataset;
      return { key: bike === undefined ? name : `${name} of ${bike}`, si, low, high, text };
    }),
  );
  const shown: Results = {};
  for (const { key, si, low, high, text } of all) {
    if (key in shown) throw new Error(`The result “${key}” stands on the page twice.`);
    shown[key] = si === undefined ? text : written(si, low, high);
  }
  return shown;
}

/** What a calculator must show for a link, worked out here, without a browser. */
export function expected(calculator: CalculatorName, query = ''): Results {
  return resultsOf(outcomeOf(calculator, query));
}

function resultsOf(outcome: Outcome): Results {
  const text = (value: number | undefined): string | undefined => (value === undefined ? undefined : String(value));
  return Object.fromEntries(
    outcome.results.map((result) => [
      result.bike === undefined ? result.name : `${result.name} of ${result.bike}`,
      result.si === undefined
        ? (result.text ?? NO_VALUE)
        : written(String(result.si), text(result.low), text(result.high)),
    ]),
  );
}

/** The sentence beside a field, read the way a screen reader finds it; empty when the field is not marked as wrong. */
export async function complaint(input: Locator): Promise<string> {
  return input.evaluate((element) => {
    if (element.getAttribute('aria-invalid') !== 'true') return '';
    const ids = (element.getAttribute('aria-describedby') ?? '').split(' ');
    const parts = ids.map((id) => document.getElementById(id));
    if (parts.includes(null)) return `aria-describedby leads nowhere: ${ids.join(' ')}`;
    return parts.find((part) => part?.classList.contains('problem'))?.textContent ?? 'no sentence';
  });
}

/** Copies the link as a reader does and gives it back. */
export async function copyLink(page: Page, tool = page.locator('.tool')): Promise<string> {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await tool.getByRole('button', { name: 'Copy link' }).click();
  await expect(tool.locator('.copied')).toHaveText('Link copied.');
  return page.evaluate(() => navigator.clipboard.readText());
}

/** The file that answers a calculator, as in “side-by-side” and SideBySide. */
export const answerFile = (name: string): RegExp =>
  new RegExp(`/${name.replace(/(?:^|-)([a-z])/g, (_, letter: string) => letter.toUpperCase())}\\.[\\w-]+\\.js$`);

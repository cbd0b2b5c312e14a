import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Browser } from '@playwright/test';
import { expect, test } from '@playwright/test';
import { type CalculatorName, calculators } from '../../calculators/scenario/vocabulary.ts';
import { serve } from '../setup/serve.mjs';
import { dist, sitePaths } from './built.ts';

/*
 * What a page weighs: the bytes of all its files on the way (gzip, headers included), until it is idle and was scrolled
 * to its end, so that every calculator on it is loaded. Beside it stands an empty Starlight page with default settings,
 * built and measured in the same run. Budgets in bytes: the design's, in kB of 1,000 bytes.
 */
const reading = 24_000;
const calculator = 42_000;
const severalBikes = 46_000;
const formulas = 9_000;
/** The test day loads everything by itself, its answer, tables, links and worker too: on the hill there may be no signal to ask for more. */
const wholeTool = 110_000;

type Kind = 'document' | 'stylesheet' | 'script' | 'font' | 'other';
interface Weight {
  path: string;
  total: number;
  parts: Record<Kind, number>;
  /** Names of the calculators on it. */
  tools: string[];
  hasFormulas: boolean;
}

async function weigh(browser: Browser, address: string, path: string): Promise<Weight> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  const parts: Record<Kind, number> = { document: 0, stylesheet: 0, script: 0, font: 0, other: 0 };
  const session = await context.newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.setCacheDisabled', { cacheDisabled: false });
  const kinds = new Map<string, Kind>();
  session.on('Network.responseReceived', ({ requestId, type }) => {
    const kind = type.toLowerCase();
    kinds.set(requestId, kind in parts ? (kind as Kind) : 'other');
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    parts[kinds.get(requestId) ?? 'other'] += encodedDataLength;
  });
  await page.goto(address + path, { waitUntil: 'networkidle' });
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  for (let y = 0; y < height; y += 700) await page.evaluate((top) => scrollTo(0, top), y);
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(300);
  const tools = await page
    .locator('[data-tool]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('data-tool') ?? ''));
  const hasFormulas = (await page.locator('math').count()) > 0;
  await context.close();
  const total = Object.values(parts).reduce((sum, part) => sum + part, 0);
  return { path, total, parts, tools, hasFormulas };
}

const AT_A_TIME = 4;

/** The budget of a page; nothing for the reference lists, which are as long as what they list. */
function budget({ path, tools, hasFormulas }: Weight): number | undefined {
  if (path.startsWith('/reference/')) return undefined;
  if (path === '/test/day/') return wholeTool;
  const several = tools.some((name) => calculators[name as CalculatorName].bikes.max > 1);
  const base = several ? severalBikes : tools.length > 0 ? calculator : reading;
  return base + (hasFormulas ? formulas : 0);
}

function table(rows: (Weight & { budget?: number | undefined })[]): string {
  const kilo = (bytes: number | undefined) => (bytes === undefined ? '–' : (bytes / 1000).toFixed(1)).padStart(7);
  const width = Math.max(...rows.map((row) => row.path.length));
  const head = `${'kB, gzip'.padEnd(width)}${['total', 'budget', 'html', 'css', 'js', 'font', 'other'].map((each) => each.padStart(7)).join('')}`;
  return [
    head,
    ...rows.map(({ path, total, budget: most, parts }) =>
      [
        path.padEnd(width),
        ...[total, most, parts.document, parts.stylesheet, parts.script, parts.font, parts.other].map(kilo),
      ].join(''),
    ),
  ].join('\n');
}

test('no page is heavier than its budget', async ({ browser }) => {
  test.setTimeout(180_000);
  const folder = mkdtempSync(join(tmpdir(), 'bare-'));
  const build = fileURLToPath(new URL('../setup/build.mjs', import.meta.url));
  try {
    // most of weighing is waiting for a page to be idle: several wait at a time, and the bare page is built meanwhile
    const built = promisify(execFile)(process.execPath, [build, 'bare', folder]);
    const ours = await serve(dist);
    const paths = sitePaths();
    const weights: Weight[] = [];
    for (let i = 0; i < paths.length; i += AT_A_TIME) {
      const some = paths.slice(i, i + AT_A_TIME);
      weights.push(...(await Promise.all(some.map((path) => weigh(browser, ours.address, path)))));
    }
    await built;
    const theirs = await serve(folder);
    const bare = { ...(await weigh(browser, theirs.address, '/')), path: 'empty Starlight page' };
    await Promise.all([ours.close(), theirs.close()]);

    const rows = weights.map((weight) => ({ ...weight, budget: budget(weight) }));
    const text = table([...rows, bare]);
    console.log(`\n${text}\n`);
    const results = fileURLToPath(new URL('../../test-results', import.meta.url));
    mkdirSync(results, { recursive: true });
    writeFileSync(`${results}/bytes.txt`, `${text}\n`);

    // Were the bare page measured wrongly, the comparison would say nothing: it weighed 50.1 kB when the budgets were set.
    expect(bare.total).toBeGreaterThan(40_000);
    const heavy = rows.filter(({ total, budget: most }) => most !== undefined && total > most);
    expect(heavy.map(({ path, total, budget: most }) => `${path}: ${total} bytes, budget ${most}`)).toEqual([]);
  } finally {
    for (const each of [folder, `${folder}.cache`]) rmSync(each, { recursive: true, force: true });
  }
});

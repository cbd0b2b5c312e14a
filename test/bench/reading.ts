/*
 * How long a page is held up while it reads a recording of 20 MB, finds its climbs and rides along one: the longest task on its main
 * thread. A busy machine stretches it by the clock, hardly on the processor. Figures to read, not a test. Needs a built site: `npm run build`, then `npm run bench:reading`.
 */
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { chromiumArguments } from '../setup/chromium.mjs';
import { serve } from '../setup/serve.mjs';
import { gpxOf, ride, THREE_HILLS } from '../your-hill/tour.ts';

const BYTES = 20e6;
const ROUNDS = 3;

/** An event of the browser's own record; times in µs, `tdur` without what other processes took of the processor. */
interface Traced {
  name: string;
  pid: number;
  tid: number;
  dur?: number;
  tdur?: number;
  args: { name?: string };
}

/** The longest task on the main thread of a page, ms: of the processor, and by the clock. */
function longestTask(trace: Buffer): { processor: number; clock: number } {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: Traced[] };
  const place = ({ pid, tid }: Traced): string => `${pid}:${tid}`;
  const main = new Set(
    traceEvents.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain').map(place),
  );
  const tasks = traceEvents.filter((event) => event.name.endsWith('RunTask') && main.has(place(event)));
  const longest = (of: 'dur' | 'tdur'): number => Math.max(...tasks.map((task) => task[of] ?? 0)) / 1000;
  return { processor: longest('tdur'), clock: longest('dur') };
}

const times = Math.ceil(BYTES / gpxOf(ride(THREE_HILLS)).length);
const points = ride({ ...THREE_HILLS, road: Array.from({ length: times }, () => THREE_HILLS.road).flat() });
const text = gpxOf(points);
const path = join(tmpdir(), 'invented-tour.gpx');
await writeFile(path, text);
console.log(`A GPX file of ${(text.length / 1e6).toFixed(1)} MB with ${points.length} points (goal: no task of 50 ms)`);

const site = await serve(fileURLToPath(new URL('../../dist', import.meta.url)));
const { CHROMIUM_PATH } = process.env;
const browser = await chromium.launch({
  args: chromiumArguments,
  ...(CHROMIUM_PATH === undefined ? {} : { executablePath: CHROMIUM_PATH }),
});
for (let round = 0; round < ROUNDS; round++) {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(`${site.address}/calculators/your-hill/`);
  await page.locator('[data-live] .recording').waitFor();
  await browser.startTracing(page, { categories: ['toplevel'] });
  const start = performance.now();
  await page.getByLabel('Choose a recording').setInputFiles(path);
  await page.locator('.recording output[name="simplified-time"]').waitFor({ state: 'attached', timeout: 60_000 });
  const seconds = (performance.now() - start) / 1000;
  const { processor, clock } = longestTask(await browser.stopTracing());
  console.log(
    `  read in ${seconds.toFixed(1)} s; longest task ${processor.toFixed(0)} ms of the processor, ${clock.toFixed(0)} ms by the clock`,
  );
  await context.close();
}
await browser.close();
await site.close();

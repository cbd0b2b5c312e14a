/*
 * How long a page is held up while it reads a recording of 20 MB, finds its climbs and rides along one: the longest task on its main
 * thread. Figures to read, not a test. Needs a built site: `npm run build`, then `npm run bench:reading`.
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

declare global {
  interface Window {
    /** ms: tasks of 50 ms or more, and the longest time in which a timer could not run */
    held: { tasks: number[]; gap: number };
  }
}

const times = Math.ceil(BYTES / gpxOf(ride(THREE_HILLS)).length);
const points = ride({ ...THREE_HILLS, road: Array.from({ length: times }, () => THREE_HILLS.road).flat() });
const text = gpxOf(points);
const path = join(tmpdir(), 'invented-tour.gpx');
await writeFile(path, text);
console.log(
  `A GPX file of ${(text.length / 1e6).toFixed(1)} MB with ${points.length} points (goal: no task of 50 ms or more)`,
);

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
  await page.evaluate(() => {
    const held: Window['held'] = { tasks: [], gap: 0 };
    window.held = held;
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) held.tasks.push(duration);
    }).observe({ type: 'longtask' });
    let last = performance.now();
    setInterval(() => {
      const now = performance.now();
      held.gap = Math.max(held.gap, now - last);
      last = now;
    }, 4);
  });
  const start = performance.now();
  await page.getByLabel('Choose a recording').setInputFiles(path);
  await page.locator('.recording .below output[name="simplified-time"]').waitFor({ timeout: 120_000 });
  const seconds = (performance.now() - start) / 1000;
  const { tasks, gap } = await page.evaluate(() => window.held);
  const longest =
    tasks.length === 0 ? 'none of 50 ms or more' : `${tasks.map((task) => task.toFixed(0)).join(', ')} ms`;
  console.log(
    `  read in ${seconds.toFixed(1)} s; long tasks: ${longest}; longest wait of a timer ${gap.toFixed(0)} ms`,
  );
  await context.close();
}
await browser.close();
await site.close();

import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { chromiumArguments } from './setup/chromium.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const port = Number(process.env.PAGES_PORT ?? 4331);

/** The built site in Chromium; run `npm run build` first. */
export default defineConfig({
  testDir: './pages',
  outputDir: '../test-results',
  fullyParallel: true,
  workers: 2,
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  reporter: [['list', { printSteps: false }]],
  timeout: 60_000,
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    locale: 'en-GB',
    launchOptions: {
      ...(process.env.CHROMIUM_PATH === undefined ? {} : { executablePath: process.env.CHROMIUM_PATH }),
      args: chromiumArguments,
    },
  },
  projects: [
    // What reads files, counts bytes, prints, or asks what a text, a change or a link means does not depend on the window: once is enough.
    // A single test that is for one of the two, or needs only one, has the tag @phone or @desktop.
    {
      name: 'phone',
      testIgnore: /\/(site-files|budgets|print|fields|links|changes|calculators)\.spec/,
      grepInvert: /@desktop/,
      use: { viewport: { width: 390, height: 844 }, hasTouch: true },
    },
    {
      name: 'desktop',
      testIgnore: /\/(explainers|without-javascript)\.spec/,
      grepInvert: /@phone/,
      use: { viewport: { width: 1280, height: 800 } },
    },
  ],
  webServer: {
    command: `astro preview --host 127.0.0.1 --port ${port}`,
    cwd: root,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: process.env.CI === undefined,
  },
});

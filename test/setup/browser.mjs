/*
 * Finds a Chromium that starts, installs one if there is none, then runs the command it was given with the browser's
 * path in CHROMIUM_PATH:  node test/setup/browser.mjs playwright test …
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from '@playwright/test';
import { chromiumArguments } from './chromium.mjs';

const path = (await firstThatStarts(known())) ?? (await downloaded()) ?? (await fromDebian());
if (path === undefined) {
  console.error('No browser to test with: run “npx playwright install --with-deps chromium”, or set CHROMIUM_PATH.');
  process.exit(1);
}
const [command, ...args] = process.argv.slice(2);
const { status } = spawnSync(command, args, {
  stdio: 'inherit',
  env: { ...process.env, CHROMIUM_PATH: path },
  shell: process.platform === 'win32',
});
process.exit(status ?? 1);

/** The browsers this machine may have, the one that was asked for first. */
function known() {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const names = ['chromium', 'chromium-browser', 'google-chrome'];
  return [process.env.CHROMIUM_PATH, ...names.flatMap((name) => folders.map((folder) => join(folder, name)))].filter(
    (each) => each !== undefined && each !== '' && isProgram(each),
  );
}

async function downloaded() {
  const own = chromium.executablePath();
  if (isProgram(own) && (await starts(own))) return own;
  console.log('No browser found: asking Playwright for one.');
  run('playwright', ['install', 'chromium'], { PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT: '10000' });
  return firstThatStarts([chromium.executablePath()]);
}

async function fromDebian() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return undefined;
  console.log('None that starts: asking Debian for one.');
  run('apt-get', ['update', '-q']);
  run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'], { DEBIAN_FRONTEND: 'noninteractive' });
  return firstThatStarts(known());
}

function run(program, args, env = {}) {
  spawnSync(program, args, { stdio: 'inherit', env: { ...process.env, ...env }, timeout: 300_000 });
}

async function firstThatStarts(paths) {
  for (const each of paths) if (await starts(each)) return each;
  return undefined;
}

/** Having a file is not enough: its libraries may be missing, or it may be a stand-in that only prints a hint. */
async function starts(executablePath) {
  try {
    const browser = await chromium.launch({ executablePath, args: chromiumArguments, timeout: 30_000 });
    await browser.close();
    return true;
  } catch {
    return false;
  }
}

function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

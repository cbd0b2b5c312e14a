/*
 * Installs what package-lock.json names, unless it is installed already, and sees to it that a Node new enough for the
 * build is there. It runs before anything is installed: Node 20 or newer, no packages.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = join(root, 'node_modules/node/bin', process.platform === 'win32' ? 'node.exe' : 'node');

if (isOutdated(join(root, 'node_modules/.package-lock.json'), join(root, 'package-lock.json'))) {
  npm('ci', '--no-audit', '--no-fund', '--loglevel=error');
}
if (!isNewEnough(process.version) && !runs(own)) {
  // The package "node" brings its program by an install script, which some settings of npm skip.
  npm('rebuild', 'node', '--ignore-scripts=false', '--loglevel=error');
  if (!runs(own))
    stop(`This needs Node 22.18 or newer, found ${process.version}. Install a newer Node, then start again.`);
}

/** True when `made` is missing or older than `from`. */
function isOutdated(made, from) {
  return !existsSync(made) || statSync(made).mtimeMs < statSync(from).mtimeMs;
}

/** The build needs what Node can do since 22.18: reading TypeScript as it is. */
function isNewEnough(version) {
  const [major = 0, minor = 0] = version.slice(1).split('.').map(Number);
  return major > 22 || (major === 22 && minor >= 18);
}

function runs(program) {
  try {
    return isNewEnough(execFileSync(program, ['--version'], { encoding: 'utf8' }).trim());
  } catch {
    return false;
  }
}

/** Runs npm with the Node that npm itself was started with: the one in node_modules is replaced meanwhile. */
function npm(...args) {
  const cli = process.env.npm_execpath;
  const options = { cwd: root, stdio: 'inherit' };
  const { status } = cli?.endsWith('.js')
    ? spawnSync(process.env.npm_node_execpath ?? process.execPath, [cli, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  if (status !== 0) stop(`“npm ${args[0]}” failed; what it says stands above.`);
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

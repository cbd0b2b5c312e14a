/*
 * Builds a site beside the real one, for tests that compare:
 *   node test/setup/build.mjs bare OUT     an empty Starlight page with default settings
 *   node test/setup/build.mjs base OUT     this site under the base path /sub/
 */
import { fileURLToPath } from 'node:url';
import starlight from '@astrojs/starlight';
import { build } from 'astro';

const [what, outDir] = process.argv.slice(2);
const common = { outDir, cacheDir: `${outDir}.cache`, logLevel: 'error' };
if (what === 'bare') {
  const root = fileURLToPath(new URL('./bare-starlight', import.meta.url));
  await build({ ...common, root, configFile: false, integrations: [starlight({ title: 'Bare' })] });
} else {
  process.env.BASE_PATH = '/sub/';
  await build({ ...common, root: fileURLToPath(new URL('../..', import.meta.url)) });
}

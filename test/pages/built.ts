import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The folder of the built site. */
export const dist = fileURLToPath(new URL('../../dist', import.meta.url));

/** The paths of all pages, from the site map: '/', '/learn/torque/', … */
export function sitePaths(): string[] {
  const file = `${dist}/sitemap-0.xml`;
  if (!existsSync(file)) throw new Error('There is no built site: run “npm run build” first.');
  const paths = [...readFileSync(file, 'utf8').matchAll(/<loc>([^<]*)<\/loc>/g)].map(
    ([, url = '']) => new URL(url).pathname,
  );
  if (paths.length === 0) throw new Error('The site map lists no page.');
  return paths.sort();
}

/** Every HTML file under a folder: its path inside the folder and its text. */
export function htmlFiles(folder: string): { name: string; html: string }[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .sort()
    .map((name) => ({ name, html: readFileSync(`${folder}/${name}`, 'utf8') }));
}

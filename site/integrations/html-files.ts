import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Rewrites every HTML file under a folder with `change`; a page that comes back unchanged is not written. */
export async function changeHtmlFiles(folder: string, change: (html: string) => string | Promise<string>) {
  const names = await readdir(folder, { recursive: true });
  for (const name of names.filter((each) => each.endsWith('.html')).sort()) {
    const path = join(folder, name);
    const html = await readFile(path, 'utf8');
    const changed = await change(html);
    if (changed !== html) await writeFile(path, changed);
  }
}

import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

/** Takes out of the built pages the scripts of elements that the page does not have: Starlight adds those of parts that we replaced. */
export function unusedScripts(): AstroIntegration {
  return {
    name: 'unused-scripts',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const folder = fileURLToPath(dir);
        for (const name of await readdir(folder, { recursive: true })) {
          if (!name.endsWith('.html')) continue;
          const page = await readFile(join(folder, name), 'utf8');
          const kept = usedScripts(page);
          if (kept !== page) await writeFile(join(folder, name), kept);
        }
      },
    },
  };
}

/** A page without the inline scripts that define elements of which it has none. */
export function usedScripts(page: string): string {
  return page.replace(/<script type="module">.*?<\/script>/gs, (script) => {
    const defined = [...script.matchAll(/customElements\.define\(\s*[`'"]([\w-]+)/g)].map(([, name]) => name);
    return defined.length > 0 && defined.every((name) => !page.includes(`<${name}`)) ? '' : script;
  });
}

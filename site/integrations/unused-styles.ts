import { createHash } from 'node:crypto';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { type CssNode, generate, parse, type Selector, walk } from 'css-tree';

/** Pages of one kind share a style sheet: those to read, to compute, to look up, and the rest. */
const kindOf = (page: string): string => (/[\\/]/.test(page) ? (page.split(/[\\/]/)[0] ?? '') : '');

/**
 * Takes out of the built style sheets what no page of a kind can use: a third of the bytes that a page carries, mostly Starlight's
 * styles for parts that the site does not have, and ours for pages of another kind. A style stays when its names occur in the marks of
 * those pages or anywhere in the scripts.
 */
export function unusedStyles(): AstroIntegration {
  return {
    name: 'unused-styles',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const folder = fileURLToPath(dir);
        const names = (await readdir(folder, { recursive: true })).filter((name) => !name.startsWith('pagefind'));
        const texts = new Map<string, string>();
        for (const name of names.filter((each) => /\.(html|js)$/.test(each))) {
          texts.set(name, await readFile(join(folder, name), 'utf8'));
        }
        // The search's own files come later, on demand, and read colours of ours.
        const search = await readFile(join(folder, 'pagefind/pagefind-ui.css'), 'utf8').catch(() => '');
        const code = [...texts].filter(([name]) => name.endsWith('.js')).map(([, text]) => text);
        await joinPrint(folder, names, texts);
        const pages = [...texts.keys()].filter((name) => name.endsWith('.html'));
        for (const name of names.filter((each) => each.endsWith('.css'))) {
          const css = await readFile(join(folder, name), 'utf8');
          const file = name.split(/[\\/]/).at(-1) ?? name;
          for (const kind of new Set(pages.map(kindOf))) {
            const readers = pages.filter((page) => kindOf(page) === kind && texts.get(page)?.includes(file));
            if (readers.length === 0) continue;
            const found = readers.map((page) => texts.get(page) ?? '');
            const words = wordsOf([...found.map(marksOf), ...code, search]);
            const prose = wordsOf([...found.map((text) => marksOf(text.replace(ISLAND, ''))), 'not-content']);
            const kept = usedStyles(css, words, prose);
            // Another content under the old name would be taken from the reader's cache.
            const digest = createHash('sha256').update(kept).digest('hex').slice(0, 8);
            const renamed = name.replace(/\.[\w-]+\.css$/, `.${digest}.css`);
            await writeFile(join(folder, renamed), kept);
            for (const page of readers) {
              texts.set(page, (texts.get(page) ?? '').replaceAll(file, renamed.split(/[\\/]/).at(-1) ?? renamed));
              await writeFile(join(folder, page), texts.get(page) ?? '');
            }
          }
          if (!code.some((text) => text.includes(file))) await rm(join(folder, name), { force: true });
        }
      },
    },
  };
}

/**
 * Starlight keeps its few rules for print in a file of their own, which browsers fetch with every page. Put before the site's style
 * sheet they cost less than the request.
 */
async function joinPrint(folder: string, names: string[], texts: Map<string, string>): Promise<void> {
  const print = names.find((name) => /[\\/]print\.[\w-]+\.css$/.test(name));
  const main = names.find((name) => /[\\/]middleware\.[\w-]+\.css$/.test(name));
  if (print === undefined || main === undefined) return;
  const rules = await readFile(join(folder, print), 'utf8');
  if (!rules.startsWith('@media print')) return;
  await writeFile(join(folder, main), rules + (await readFile(join(folder, main), 'utf8')));
  await rm(join(folder, print));
  names.splice(names.indexOf(print), 1);
  for (const [file, text] of texts) {
    const without = text.replace(/<link rel="stylesheet" href="[^"]*\/print\.[\w-]+\.css" media="print">/, '');
    if (without === text) continue;
    texts.set(file, without);
    await writeFile(join(folder, file), without);
  }
}

/** Everything in these texts that could be the name of a class, an id, an element, an attribute or a custom property. */
export function wordsOf(texts: string[]): Set<string> {
  return new Set(texts.flatMap((text) => text.match(/[A-Za-z_][\w-]*/g) ?? []));
}

/** A calculator in a page, up to what follows every one. */
const ISLAND = /<section class="tool .*?(?=<noscript>)/gs;

/** How those styles say so. */
const PROSE = ':not(:where(.not-content *))';

/** The tags of a page, without its text. */
const marksOf = (page: string): string => page.match(/<[^>]*>/g)?.join() ?? '';

/**
 * A style sheet without the selectors whose names are not among `words`, and without custom properties that nothing reads.
 * Starlight's styles for prose leave out what lies within `.not-content`, so their names must be among those of the `prose` around it.
 */
export function usedStyles(css: string, words: ReadonlySet<string>, prose = words): string {
  const tree = parse(css);
  walk(tree, {
    visit: 'Rule',
    leave(rule, item, list) {
      if (rule.prelude.type !== 'SelectorList') return;
      const selectors = rule.prelude.children;
      selectors.forEach((selector, at) => {
        if (selector.type !== 'Selector') return;
        if (!isUsed(selector, generate(selector).includes(PROSE) ? prose : words)) selectors.remove(at);
      });
      if (selectors.isEmpty) list?.remove(item);
    },
  });
  // A property may be read only by another that goes, so look again until none goes.
  for (let count = -1; count !== 0; ) {
    count = 0;
    const read = new Set([...generate(tree).matchAll(/var\(\s*--([\w-]+)/g)].map(([, name]) => name));
    walk(tree, {
      visit: 'Declaration',
      leave({ property }, item, list) {
        const name = property.slice(2);
        if (!property.startsWith('--') || read.has(name) || words.has(name)) return;
        list?.remove(item);
        count += 1;
      },
    });
  }
  walk(tree, {
    visit: 'Rule',
    leave(rule, item, list) {
      if (rule.block.children.isEmpty) list?.remove(item);
    },
  });
  return generate(tree);
}

/** Whether all the names of a selector occur; of `:is`, `:where` and `:has` one of the alternatives is enough. */
function isUsed(selector: Selector, words: ReadonlySet<string>): boolean {
  return selector.children.toArray().every((part) => {
    if (part.type === 'ClassSelector' || part.type === 'IdSelector' || part.type === 'TypeSelector') {
      // A name with other signs, such as `md\:sl-hidden`, is not looked for.
      return !/^[A-Za-z_][\w-]*$/.test(part.name) || words.has(part.name);
    }
    if (part.type === 'AttributeSelector') return words.has(part.name.name);
    if (part.type === 'PseudoClassSelector' && ['is', 'where', 'has'].includes(part.name)) {
      const list: CssNode | null | undefined = part.children?.first;
      return (
        list?.type !== 'SelectorList' || list.children.some((each) => each.type === 'Selector' && isUsed(each, words))
      );
    }
    return true;
  });
}

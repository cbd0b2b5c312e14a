import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { dist, htmlFiles } from './built.ts';

/** Every link and file of every page in a folder that leads nowhere, as "page → target". */
function brokenLinks(folder: string, base: string): string[] {
  const pages = new Map(htmlFiles(folder).map(({ name, html }) => [name, html]));
  const broken: string[] = [];
  for (const [name, html] of pages) {
    const address = new URL(`${base}${name.replace(/index\.html$/, '')}`, 'http://site');
    for (const [, raw = ''] of html.matchAll(
      /<(?:a|link|script|img|use|astro-island)\b[^>]*?\s(?:href|src|component-url|renderer-url)="([^"]*)"/g,
    )) {
      const target = new URL(raw.replaceAll('&amp;', '&'), address);
      if (target.host !== 'site') continue;
      const path = decodeURIComponent(target.pathname);
      if (!path.startsWith(base)) {
        broken.push(`${name} → ${raw} (outside ${base})`);
        continue;
      }
      const file = path.slice(base.length).replace(/(^|\/)$/, '$1index.html');
      if (!existsSync(join(folder, file))) broken.push(`${name} → ${raw}`);
      else if (target.hash !== '' && !hasAnchor(pages.get(file) ?? '', decodeURIComponent(target.hash.slice(1)))) {
        broken.push(`${name} → ${raw} (no such place on that page)`);
      }
    }
  }
  return broken;
}

function hasAnchor(html: string, id: string): boolean {
  return html.includes(` id="${id}"`);
}

test('every link, anchor and file that a page names exists', () => {
  expect(brokenLinks(dist, '/')).toEqual([]);
});

test('under a base path too, and outside links stay as they are', () => {
  test.setTimeout(120_000);
  const folder = mkdtempSync(join(tmpdir(), 'base-'));
  try {
    execFileSync(process.execPath, [fileURLToPath(new URL('../setup/build.mjs', import.meta.url)), 'base', folder]);
    expect(htmlFiles(folder).length).toBe(htmlFiles(dist).length);
    expect(brokenLinks(folder, '/sub/')).toEqual([]);
  } finally {
    for (const each of [folder, `${folder}.cache`]) rmSync(each, { recursive: true, force: true });
  }
});

test('every page has a strict policy, before anything that it must cover', () => {
  for (const { name, html } of htmlFiles(dist)) {
    const [, policy = ''] =
      /<head><meta charset="utf-8"\/?><meta http-equiv="content-security-policy" content="([^"]*)">/.exec(html) ?? [];
    expect(policy, name).not.toBe('');
    const directives = new Map(policy.split('; ').map((part) => [part.split(' ')[0], part]));
    expect(directives.get('default-src'), name).toBe("default-src 'self'");
    for (const directive of ['script-src', 'style-src']) {
      expect(directives.get(directive), name).not.toMatch(
        /unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')|https?:|\*/,
      );
    }
    expect(html.match(/<[^>]*\son[a-z]+=/g) ?? [], `${name}: handlers in attributes`).toEqual([]);
  }
});

test('the print style is in the build', () => {
  const styles = readdirSync(`${dist}/_astro`).filter((name) => name.endsWith('.css'));
  const print = styles
    .map((name) => readFileSync(`${dist}/_astro/${name}`, 'utf8'))
    .filter((css) => css.includes('@media print'));
  // Starlight's rules, which put the page's frame aside, and ours
  expect(print.join('')).toContain('orphans:2');
  expect(print.join('')).toMatch(/\.inputs-used\{[^}]*display:block/);
  for (const { name, html } of htmlFiles(dist)) expect(html, name).not.toMatch(/href="[^"]*\/print\./);
});

test('formulas come with a font cut to their page, and other pages with none', () => {
  for (const { name, html } of htmlFiles(dist)) {
    const hasFormula = /<math[\s>]/.test(html);
    const fonts = [...html.matchAll(/url\("\/(_astro\/math\.[0-9a-f]+\.woff2)"\)/g)].map(([, file = '']) => file);
    expect(fonts.length, name).toBe(hasFormula ? 1 : 0);
    for (const file of fonts) expect(existsSync(join(dist, file)), name).toBe(true);
    expect(html, name).not.toContain('<annotation');
  }
});

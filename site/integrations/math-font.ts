import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import subsetFont from 'subset-font';
import { basePrefix } from './base-links.ts';
import { changeHtmlFiles } from './html-files.ts';

const wholeFont = createRequire(import.meta.url).resolve(
  '@fontsource/noto-sans-math/files/noto-sans-math-latin-400-normal.woff2',
);

/**
 * The math font cut to some characters. The MATH table, from which a browser takes the layout of formulas, and the
 * small forms used in scripts stay; hints and kerning go.
 */
export async function cutFont(characters: string, targetFormat: 'woff2' | 'sfnt'): Promise<Uint8Array> {
  return subsetFont(await readFile(wholeFont), characters, { targetFormat, noHinting: true, keepFeatures: ['ssty'] });
}

/**
 * Gives every page that has formulas a math font cut to the characters of that page, and other pages nothing.
 * Pages that need the same characters share a file.
 */
export function mathFont(): AstroIntegration {
  let base = '/';
  let assets = '_astro';
  return {
    name: 'math-font',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base;
        assets = config.build.assets;
      },
      'astro:build:done': async ({ dir }) => {
        const folder = fileURLToPath(dir);
        const files = new Map<string, string>();
        await changeHtmlFiles(folder, async (html) => {
          const characters = mathCharacters(html);
          if (characters === '') return html;
          let file = files.get(characters);
          if (file === undefined) {
            const font = await cutFont(characters, 'woff2');
            file = `${assets}/math.${createHash('sha256').update(font).digest('hex').slice(0, 8)}.woff2`;
            await writeFile(folder + file, font);
            files.set(characters, file);
          }
          const face = `@font-face{font-family:"Uphill Math";src:url("${basePrefix(base)}/${file}")format("woff2");font-display:swap}`;
          return html.replace('</head>', `<style>${face}</style></head>`);
        });
      },
    },
  };
}

/**
 * The characters that the formulas of a page need, sorted, each once; '' when it has none.
 * A single letter in `mi` is shown as its mathematical italic, which is another character of the font.
 */
export function mathCharacters(html: string): string {
  const found = new Set<string>();
  for (const [formula] of html.matchAll(/<math[\s>][\s\S]*?<\/math>/g)) {
    for (const [, attributes = '', text = ''] of formula.matchAll(/<m(?:i|o|n|text)\b([^>]*)>([^<]*)</g)) {
      const letters = [...decoded(text)];
      for (const letter of letters) found.add(letter);
      const only = letters.length === 1 ? letters[0] : undefined;
      if (only !== undefined && !attributes.includes('mathvariant')) found.add(italic(only));
    }
    for (const [, text = ''] of formula.matchAll(/\b(?:open|close|separators)="([^"]*)"/g)) {
      for (const letter of decoded(text)) found.add(letter);
    }
    // The root sign is drawn, not written.
    if (/<m(?:sqrt|root)\b/.test(formula)) found.add('√');
  }
  return [...found].sort().join('');
}

function decoded(text: string): string {
  return text
    .replace(/&#x([0-9a-f]+);/gi, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)))
    .replace(/&#(\d+);/g, (_, decimal: string) => String.fromCodePoint(Number(decimal)))
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&nbsp;/g, '\u00a0')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&');
}

/** The mathematical italic of a letter (Unicode, Mathematical Alphanumeric Symbols); other characters as they are. */
export function italic(letter: string): string {
  const special: Record<string, string> = {
    h: 'ℎ',
    ı: '𝚤',
    ȷ: '𝚥',
    ϴ: '𝛳',
    '∇': '𝛻',
    '∂': '𝜕',
    ϵ: '𝜖',
    ϑ: '𝜗',
    ϰ: '𝜘',
    ϕ: '𝜙',
    ϱ: '𝜚',
    ϖ: '𝜛',
  };
  const known = special[letter];
  if (known !== undefined) return known;
  const code = letter.codePointAt(0) ?? 0;
  const ranges: [first: number, last: number, italicFirst: number][] = [
    [0x41, 0x5a, 0x1d434], // A to Z
    [0x61, 0x7a, 0x1d44e], // a to z
    [0x391, 0x3a9, 0x1d6e2], // Alpha to Omega
    [0x3b1, 0x3c9, 0x1d6fc], // alpha to omega
  ];
  const range = ranges.find(([first, last]) => code >= first && code <= last);
  return range === undefined ? letter : String.fromCodePoint(range[2] + code - range[0]);
}

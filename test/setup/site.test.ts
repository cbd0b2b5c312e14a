import { expect, test } from 'vitest';
import { secured } from '../../site/integrations/content-security.ts';
import { cutFont, italic, mathCharacters } from '../../site/integrations/math-font.ts';
import { usedScripts } from '../../site/integrations/unused-scripts.ts';
import { usedStyles, wordsOf } from '../../site/integrations/unused-styles.ts';
import { mathHtml, mathml } from '../../site/math/mathml.ts';

test('mathml(tex) sets a formula without the TeX source and without a namespace', () => {
  const html = mathml('\\frac{P}{v}');
  expect(html).toBe('<math><mrow><mfrac><mi>P</mi><mi>v</mi></mfrac></mrow></math>');
});

test('mathml(tex) refuses a formula that cannot be read', () => {
  expect(() => mathml('\\frac{P}')).toThrow(/KaTeX parse error/);
  expect(() => mathml('\\speed')).toThrow(/Undefined control sequence/);
});

test('mathHtml(tex, true) is a block of its own, out of reach of the prose spacing', () => {
  expect(mathHtml('P', true)).toMatch(/^<div class="math-block not-content"><math display="block">/);
});

test('mathCharacters(html) has the italics of single letters, and nothing from outside formulas', () => {
  const html = `<p>Zebra</p><math><mi>h</mi><mo>=</mo><mi mathvariant="normal">W</mi><mi>sin</mi><mo>&lt;</mo></math>`;
  expect([...mathCharacters(html)].sort()).toEqual([...'h=Wsin<ℎ'].sort());
  expect(mathCharacters('<p>Zebra</p>')).toBe('');
});

test('italic(letter) follows the mathematical alphabets of Unicode', () => {
  // Unicode 16, block Mathematical Alphanumeric Symbols: U+1D434 A, U+1D44E a, U+1D6FC alpha; h stands at U+210E.
  expect(['A', 'z', 'h', 'α', 'Ω', '3'].map(italic)).toEqual(['𝐴', '𝑧', 'ℎ', '𝛼', '𝛺', '3']);
});

test('cutFont(characters) keeps the MATH table, without which brackets and roots do not grow', async () => {
  const font = Buffer.from(await cutFont('P=(√𝑃', 'sfnt'));
  const tables = Array.from({ length: font.readUInt16BE(4) }, (_, i) =>
    font.toString('latin1', 12 + 16 * i, 16 + 16 * i),
  );
  expect(tables).toContain('MATH');
  expect(tables).toContain('cmap');
});

test('secured(html) hashes inline scripts and styles and puts the policy first', () => {
  const html =
    '<html><head><meta charset="utf-8"><script>a()</script><style>b{}</style>' +
    `<meta http-equiv="content-security-policy" content="script-src 'self' 'sha256-old='; style-src 'self'; style-src-attr 'unsafe-inline'">` +
    '</head></html>';
  // printf 'a()' | openssl dgst -sha256 -binary | base64, and the same for b{}
  expect(secured(html)).toBe(
    '<html><head><meta charset="utf-8">' +
      `<meta http-equiv="content-security-policy" content="script-src 'self' 'sha256-qVpDBgj7bpq5hMAcGp3AOc79J3Y1Z4HvySTwKrWDoy4='; style-src 'self' 'sha256-7yqHVAesot11p6HczDsgKRipvI5UPgs97z80zNXlans='; style-src-attr 'unsafe-inline'">` +
      '<script>a()</script><style>b{}</style></head></html>',
  );
});

test('secured(html) refuses a page without a policy', () => {
  expect(() => secured('<html><head><meta charset="utf-8"></head></html>')).toThrow(/no content security policy/);
});

test('usedStyles(css, words) drops what no page names and keeps the rest', () => {
  const words = wordsOf(['<p class="note md:wide">', 'element.classList.add("open")']);
  const css =
    '@layer a{:root{--seen:1;--unseen:2;--chain:var(--unseen)}.note{color:var(--seen)}.badge,.open{top:0}.badge .note{top:0}' +
    'p:is(.badge,.note){top:0}p:not(.badge){top:0}.md\\:wide{top:0}blockquote{top:0}[data-x]{top:0}}@media print{.badge{top:0}}';
  expect(usedStyles(css, words)).toBe(
    '@layer a{:root{--seen:1}.note{color:var(--seen)}.open{top:0}p:is(.badge,.note){top:0}p:not(.badge){top:0}.md\\:wide{top:0}}@media print{}',
  );
});

test('usedScripts(page) drops the scripts of elements that the page does not have, and no others', () => {
  const defining = (name: string) =>
    `<script type="module">customElements.define(\`${name}\`,class extends HTMLElement{});</script>`;
  const plain = '<script type="module">document.title</script>';
  const outside = '<script type="module" src="/a.js"></script>';
  const page = `<site-search></site-search>${defining('site-search')}${defining('site-select')}${plain}${outside}`;
  expect(usedScripts(page)).toBe(`<site-search></site-search>${defining('site-search')}${plain}${outside}`);
});

test('usedStyles(css, words, prose) keeps a style for prose only where prose has the element', () => {
  const css = '.prose summary:not(:where(.not-content *)){color:red}.tool summary{color:green}';
  const words = wordsOf(['<p class="prose"><summary class="tool">']);
  expect(usedStyles(css, words)).toBe(css);
  expect(usedStyles(css, words, wordsOf(['<p class="prose not-content">']))).toBe('.tool summary{color:green}');
});

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const css = readFileSync(new URL('../../site/styles/tokens.css', import.meta.url), 'utf8');

/** The colours of one theme, by name. */
function colours(selector: string): Map<string, string> {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf('}', start));
  return new Map(
    [...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name = '', value = '']) => [name, value]),
  );
}

/** Contrast ratio of two colours, WCAG 2.2, section "contrast ratio". */
function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

test('contrast of black on white is 21 (WCAG 2.2)', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
});

const grounds = ['paper', 'sheet', 'wash'];
const text = ['ink', 'pencil', 'accent', 'doubt'];
const marks = ['rule', 'one', 'two', 'three', 'four', 'five', 'six'];

for (const [theme, selector] of [
  ['light', ':root[data-theme]'],
  ['dark', ':root[data-theme="dark"]'],
] as const) {
  const named = colours(selector);
  for (const ground of grounds) {
    test.each(text)(`text %s on ${ground}, ${theme}, reaches 4.5:1`, (name) => {
      expect(contrast(named.get(name) ?? '', named.get(ground) ?? '')).toBeGreaterThanOrEqual(4.5);
    });
    test.each(marks)(`marks %s on ${ground}, ${theme}, reach 3:1`, (name) => {
      expect(contrast(named.get(name) ?? '', named.get(ground) ?? '')).toBeGreaterThanOrEqual(3);
    });
  }
  test(`doubt on its own wash, ${theme}, reaches 4.5:1`, () => {
    expect(contrast(named.get('doubt') ?? '', named.get('doubt-wash') ?? '')).toBeGreaterThanOrEqual(4.5);
    expect(contrast(named.get('ink') ?? '', named.get('doubt-wash') ?? '')).toBeGreaterThanOrEqual(4.5);
  });
}

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withAccuracy } from './accuracy.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

test('the readme’s table of accuracy is what the checks say now; if not, run: npm run accuracy', {
  timeout: 60_000,
}, () => {
  expect(readme).toBe(withAccuracy(readme));
});

test('withAccuracy(readme) refuses a readme without its markers', () => {
  expect(() => withAccuracy('# A readme')).toThrow('README.md has lost its markers');
});

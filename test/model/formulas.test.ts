/**
 * Every relation of `calculators/quantities/formulas.ts`: its dimensions agree, KaTeX sets it, and what the site computes with
 * says the same to 1e-12 on random inputs (`test/reference/counterparts.ts`).
 */
import katex from 'katex';
import { describe, expect, test } from 'vitest';
import { formulaProblem, texOf } from '../../calculators/quantities/formula-tools.ts';
import { formulas } from '../../calculators/quantities/formulas.ts';
import { random, relative } from '../random.ts';
import { counterparts } from '../reference/counterparts.ts';

test('every formula has a counterpart, and every counterpart a formula', () => {
  const ids = formulas.map(({ id }) => id);
  expect(Object.keys(counterparts).sort()).toEqual([...ids].sort());
  expect(new Set(ids).size).toBe(ids.length);
});

describe.each(formulas.map((formula) => [formula.id, formula] as const))('%s', (id, formula) => {
  test('the dimensions agree', () => {
    expect(formulaProblem(formula)).toBeUndefined();
  });

  test('KaTeX sets the formula and each of its symbols without a complaint', () => {
    for (const tex of [texOf(formula), ...Object.values(formula.symbols).map((symbol) => symbol.tex)])
      expect(katex.renderToString(tex, { throwOnError: true, strict: 'error', trust: false })).toContain('<math');
  });

  test('says what the code says, to 1e-12 on 200 random inputs', () => {
    const r = random(200);
    const pair = counterparts[id];
    if (!pair) throw new Error(`“${id}” has no counterpart: add one to test/reference/counterparts.ts.`);
    for (let i = 0; i < 200; i++) {
      const [theirs, ours] = pair(r);
      expect(Number.isFinite(theirs)).toBe(true);
      expect(relative(theirs, ours)).toBeLessThanOrEqual(1e-12);
    }
  });

  test('a title, a source, and meanings that read on', () => {
    expect(formula.title).toMatch(/^[A-Z]/);
    expect(formula.source).toMatch(/^[a-z0-9-]+$/);
    for (const { meaning } of Object.values(formula.symbols)) expect(meaning.trim()).not.toBe('');
  });
});

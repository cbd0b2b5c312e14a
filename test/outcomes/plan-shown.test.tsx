import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { planAnswer } from '../../calculators/plan/Plan.tsx';
import { readLink } from '../../calculators/scenario/vocabulary.ts';
import { answer } from './outcome.ts';

/* What the plan of a test shows where it is not the figure itself. */

const shown = (query: string): string =>
  renderToString(<div>{planAnswer(readLink('plan', query), false).details}</div>);
const outputOf = (html: string, name: string): string | undefined =>
  new RegExp(`<output name="${name}"[^>]*>([^<]*)</output>`).exec(html)?.[1];

test('the chart marks the runs of each that are planned; one run of each is not in it', () => {
  const labels = (query: string): (string | undefined)[] =>
    [...shown(query).matchAll(/<text class="key"[^>]*>(\d+ runs? of each)</g)].map(([, label]) => label);
  expect(labels('repeats=6')).toEqual(['6 runs of each']);
  expect(labels('repeats=1')).toEqual([]);
  expect(shown('repeats=1')).toContain('class="curve"');
});

describe('what the legs hold is not rounded to what they do not hold', () => {
  test('the power: 223.99 W is 223 W, because 224 W is too much', () => {
    expect(answer('plan', 'power=224W').si('legs-lowest')).toBeLessThan(0);
    expect(answer('plan', 'power=223W').si('legs-lowest')).toBeGreaterThan(0);
    expect(outputOf(shown(''), 'power-lasting')).toBe('223\u202fW');
  });

  test('the rest: the next full second', () => {
    for (const power of [221, 222, 223]) {
      const query = `power=${power}W&way-down=0:00&cool-down=0:00`;
      const clock = outputOf(shown(query), 'rest-lasting') ?? '';
      expect(clock).toMatch(/^\d+:\d\d$/);
      const at = (cool: string): number =>
        answer('plan', query.replace('cool-down=0:00', `cool-down=${cool}`)).si('legs-lowest');
      expect(at(clock), `${query}: ${clock}`).toBeGreaterThanOrEqual(0);
    }
  });
});

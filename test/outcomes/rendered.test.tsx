import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import type { Answering } from '../../calculators/parts/answer.ts';
import * as parts from '../../calculators/parts/Behind.tsx';
import { Island } from '../../calculators/parts/Island.tsx';
import { NO_VALUE } from '../../calculators/quantities/index.ts';
import { type CalculatorName, calculators, readLink } from '../../calculators/scenario/vocabulary.ts';
import { random } from '../random.ts';
import { anyGoodQuery } from '../scenario/queries.ts';

/*
 * What a calculator shows is what `outcomeOf` answers, at the ends of the world too. Rendered as the site is built; that the browser
 * shows the same after a change or for a link is seen in test/pages.
 */

const views = import.meta.glob<Record<string, Answering>>('../../calculators/*/*.tsx', { eager: true });

/** The function of a calculator's view: `climbTimeAnswer` of `climb-time/ClimbTime.tsx`. */
function answeringOf(calculator: CalculatorName): Answering {
  const exported = Object.entries(views)
    .filter(([file]) => file.includes(`/${calculator}/`))
    .flatMap(([, view]) => Object.entries(view));
  const [, answering] = exported.find(([name]) => name.endsWith('Answer')) ?? [];
  if (!answering) throw new Error(`calculators/${calculator} has no view.`);
  return answering;
}

function rendered(calculator: CalculatorName, query: string): string {
  const answering = answeringOf(calculator);
  const props = { definition: calculators[calculator], start: readLink(calculator, query), query };
  return renderToString(<Island {...props} load={async () => answering} server={{ answering, ...parts }} />);
}

/** Every `<output>`: "time of 2: 1234.5 (1200 to 1300)", its name, bike, value and range, or its text where it has no value. */
function shown(html: string): string[] {
  return [...html.matchAll(/<output ([^>]*)>([^<]*)<\/output>/g)].map(([, attributes = '', text = '']) => {
    const of = (name: string): string | undefined => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
    return line(
      of('name'),
      of('data-bike'),
      of('data-against'),
      of('data-si') ?? of('data-text') ?? text,
      of('data-low'),
      of('data-high'),
    );
  });
}

const line = (...[name, bike, against, value, low, high]: unknown[]): string =>
  `${name} of ${bike ?? 'all'} against ${against ?? 'none'}: ${value} (${low} to ${high})`;

const ENDS = [
  '',
  'power=0W',
  'grade=-30&wind=-20m/s&motor=none',
  'distance=20m&gain=19.999m&power=1W&motor=none&rider=250kg',
  'distance=200000m&gain=9000m&power=1W&motor=none',
  'altitude=6000m&rolling=0&drag=0.1m2&drive=100',
  'limit=5km/h',
];

/** What people read: without tags, thin spaces plain. */
const words = (html: string): string =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u202f]+/g, ' ')
    .replaceAll(' ,', ',');

describe('what a reader is told', () => {
  const headOf = (html: string): string => words(html.split('tool-form')[0] ?? '');

  test('a limit by its public name', () => {
    const html = rendered('your-hill', '');
    expect(html).toMatch(/<output name="binds"[^>]* data-bike="1"[^>]* data-text="assist-limit"[^>]*>assist-limit</);
  });

  test.each(['your-hill', 'side-by-side'] as const)(
    '%s: why there is no time, where the time would stand',
    (calculator) => {
      expect(headOf(rendered(calculator, 'power=0'))).toContain('This power does not move the bike on this hill.');
      // once for all bikes
      expect(headOf(rendered(calculator, 'power=0')).match(/does not move/g)).toHaveLength(1);
      expect(headOf(rendered(calculator, ''))).not.toContain('does not move');
    },
  );

  test('what is wrong with a hill in pieces, and which hill is ridden instead', () => {
    const wrong = 'Piece 1 rises 20 m on 10 m of road: the height must be smaller.';
    expect(headOf(rendered('your-hill', 'profile=1:10,20'))).toContain(
      `One field cannot be used. ${wrong} The answer takes “Hill in pieces” as 3.04 km, 260 m up, in 17 pieces.`,
    );
    expect(headOf(rendered('side-by-side', 'profile=1:10,20'))).toContain(
      `${wrong} The answer takes “Hill in pieces” as empty, so 2.4 km and 235 m count.`,
    );
  });

  test('whose value serves meanwhile', () => {
    expect(headOf(rendered('your-hill', 'motor=,lots&name=,Trail'))).toContain(
      'The answer takes “Motor gives” of Trail as 400 W.',
    );
  });

  test('a share and what it is of, apart', () => {
    expect(rendered('your-hill', '').replace(/<[^>]*>/g, '')).toMatch(/\d\u202f% of 360\u202fWh/);
  });
});

describe.each(Object.keys(calculators) as CalculatorName[])('%s', (calculator) => {
  const r = random(calculator.length);
  const queries = [...ENDS, ...Array.from({ length: 30 }, () => anyGoodQuery(r, calculator))];

  test.each(queries)('?%s', (query) => {
    const html = rendered(calculator, query);
    const answers = outcomeOf(calculator, query).results.map(({ name, bike, against, si, text, low, high }) =>
      line(name, bike, against, si ?? text ?? NO_VALUE, low, high),
    );
    expect(shown(html).sort()).toEqual(answers.sort());
    // what a sentence quotes is the reader's own
    expect(html.replace(/“[^”]*”/g, '').match(/(?:NaN|Infinity|undefined|∞).{0,40}/g) ?? []).toEqual([]);
  });
});

import type { DayDocument, Texts } from '../../calculators/day/document.ts';
import { bikeInputs, type DayInput, runInputs, setupInputs } from '../../calculators/day/inputs.ts';
import type { Random } from '../random.ts';

/** What somebody may type where it does not belong, and what tables, files and links stumble over. */
const HOSTILE = [
  '=1+1',
  "'=1",
  "''@x",
  '-2+3',
  '+cmd',
  '@sum',
  'a,b',
  'a;b',
  'a\tb',
  '"',
  'say "hi", twice',
  'two\nlines',
  'two\r\nlines',
  ' space before',
  'space after ',
  '１２,５',
  '1,609',
  'none',
  '\ufeffmark',
  '😀 é ß 漢',
  '\t',
  '0',
  '-',
  'NaN',
  'Infinity',
  '__proto__',
];
const SENSIBLE = ['7:22', '203', '203,5', '37 lb', '1.5 km', '-3', '−3', '+4', '98 %', '1 in 10', 'Knobbly 2.4'];

const NAMES = ['comes-later', '__proto__', 'constructor'];

function texts(random: Random, inputs: readonly DayInput[]): Texts {
  const names = [...inputs.map(({ name }) => name), ...(random.chance(0.1) ? NAMES : [])];
  return Object.fromEntries(
    names.filter(() => random.chance(0.5)).map((name) => [name, random.pick(random.chance(0.3) ? HOSTILE : SENSIBLE)]),
  );
}

/** Any document that can be typed, made from a seed. */
export function randomDay(random: Random): DayDocument {
  const bikes = Array.from({ length: random.whole(0, 5) }, (_, i) => ({
    id: `b${i}`,
    texts: texts(random, bikeInputs),
  }));
  return {
    version: 1,
    system: random.pick(['metric', 'us']),
    comparing: random.pick(['bikes', 'tyres', 'mass', 'setting']),
    setup: texts(random, setupInputs),
    bikes,
    runs: Array.from({ length: random.whole(0, 12) }, (_, i) => ({
      id: `r${i}`,
      bike: random.chance(0.1) || bikes.length === 0 ? '' : random.pick(bikes).id,
      assisted: random.chance(0.7),
      counted: random.chance(0.8),
      texts: texts(random, runInputs),
    })),
  };
}

/** The document with ids in the order of its bikes and runs, because links and tables carry none. */
export function withPlainIds(document: DayDocument): DayDocument {
  const ids = new Map(document.bikes.map(({ id }, index) => [id, `b${index}`]));
  return {
    ...document,
    bikes: document.bikes.map((bike) => ({ ...bike, id: ids.get(bike.id) ?? '' })),
    runs: document.runs.map((run, index) => ({ ...run, id: `r${index}`, bike: ids.get(run.bike) ?? '' })),
  };
}

import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { differingFrom } from '../../calculators/scenario/differing.ts';
import {
  bikeName,
  columnsOf,
  hillOf,
  inputOf,
  isUnused,
  type Scenario,
  targetHillOf,
} from '../../calculators/scenario/index.ts';
import { onwardQuery, onwardWords } from '../../calculators/scenario/onward.ts';
import {
  type CalculatorName,
  calculators,
  namesOf,
  readLink,
  writeLink,
} from '../../calculators/scenario/vocabulary.ts';
import { random } from '../random.ts';
import { anyGoodQuery } from './queries.ts';

/** The scenario that a way onward opens. */
function opened(scenario: Scenario, to: CalculatorName): Scenario {
  const way = calculators[scenario.calculator].onward.find((each) => each.to === to);
  if (!way) throw new Error(`No way from ${scenario.calculator} to ${to}.`);
  return readLink(to, onwardQuery(scenario, way, differingFrom(scenario.calculator)[to]));
}

const ways = Object.values(calculators).flatMap(({ name, onward }) =>
  onward.map(({ to, hill }) => ({ from: name, to, way: hill })),
);
const readsHill = (name: CalculatorName): boolean =>
  ['distance', 'gain', 'grade'].every((one) => namesOf(name).includes(one)) || namesOf(name).includes('profile');
/** Of these the other hill has its own where a measured climb is carried to it; the measured bikes are others. */
const ALONG_TO_TARGET = ['rolling', 'rider', 'power', 'altitude', 'wind'];
const isForSeveral = (name: CalculatorName): boolean => calculators[name].bikes.max > 1;
const ALONG = [
  'name',
  'distance',
  'rolling',
  'rider',
  'power',
  'altitude',
  'wind',
  'limit',
  'bike',
  'motor',
  'torque',
  'support',
  'battery',
  'continuous',
  'reserve',
];

describe.each(ways)('$from to $to', ({ from, to, way }) => {
  // the untouched example opened the other calculator's example: another hill, another bike
  const r = random(from.length * 31 + to.length);
  const queries = ['', ...Array.from({ length: 20 }, () => anyGoodQuery(r, from))];

  test('opens with the same hill, rider and bikes: the first where one of the two takes no more', () => {
    for (const query of queries) {
      const scenario = readLink(from, query);
      const there = opened(scenario, to);
      const toTarget = way === 'target';
      const bothSeveral = isForSeveral(from) && isForSeveral(to);
      // elsewhere a time is of something else: of a battery between two readings
      const along = toTarget ? ALONG_TO_TARGET : bothSeveral ? [...ALONG, 'time'] : ALONG;
      for (const name of along) {
        if (!namesOf(from).includes(name) || !namesOf(to).includes(name) || isUnused(scenario, name)) continue;
        for (const bike of bothSeveral ? columnsOf(scenario, name) : [0]) {
          const here = inputOf(scenario, name, bike);
          const now = (toTarget ? inputOf(there, `target-${name}`) : undefined) ?? inputOf(there, name, bike);
          if (here !== undefined) expect(now, `${name} ${bike} of ?${query}`).toBe(here);
        }
      }
      if (bothSeveral && !toTarget) expect(there.bikes, query).toBe(scenario.bikes);
      if (![from, to].every(readsHill)) continue;
      const [hill, measured] = [hillOf(scenario), hillOf(there)];
      const same = toTarget && measured.ok ? targetHillOf(there, measured.value) : measured;
      if (!hill.ok || !same.ok) continue;
      // a whole hill made into one piece is written to 0.1 m
      const off = way === 'pieces' && !hill.value.profile ? 0.05 + 1e-9 : 1e-6;
      expect(Math.abs(same.value.distance - hill.value.distance), query).toBeLessThan(off);
      expect(Math.abs(same.value.gain - hill.value.gain), query).toBeLessThan(off);
      if (way && hill.value.profile) expect(same.value.profile, query).toEqual(hill.value.profile);
    }
  });
});

test('what is the same there by itself is not in the link', () => {
  expect(onwardQuery(readLink('climb-time', ''), { bikes: 1 }, differingFrom('climb-time')['power-to-weight'])).toBe(
    '',
  );
  expect(onwardQuery(readLink('watt-hours', ''), { bikes: 1 }, differingFrom('watt-hours')['climb-time'])).toBe(
    '?reserve=10',
  );
});

// "The bikes side by side" opened Trail's mass without its name, and two bikes of the example
describe('two bikes of one’s own', () => {
  const OWN = 'name=Trail,Big\\,%20blue&bike=21,25&motor=420,600&torque=,85&battery=500,&limit=32,25';
  const scenario = readLink('your-hill', OWN);

  test('go along with their names, as many as they are, those with a comma too', () => {
    const there = opened(scenario, 'side-by-side');
    expect(there.bikes).toBe(2);
    expect([0, 1].map((bike) => bikeName(there, bike))).toEqual(['Trail', 'Big, blue']);
    expect([0, 1].map((bike) => inputOf(there, 'bike', bike))).toEqual([21, 25]);
    expect([0, 1].map((bike) => inputOf(there, 'motor', bike))).toEqual([420, 600]);
    // 32 and 25 km/h; the second battery is the example's there as here
    expect([0, 1].map((bike) => inputOf(there, 'limit', bike))).toEqual([32 / 3.6, 25 / 3.6]);
    expect([0, 1].map((bike) => inputOf(there, 'battery', bike))).toEqual([500 * 3600, 540 * 3600]);
    expect(opened(there, 'your-hill')).toMatchObject({ bikes: 2, notes: [] });
  });

  test('to a calculator for one bike goes the first, and the words say so', () => {
    const there = opened(scenario, 'keep-up');
    expect(there).toMatchObject({ bikes: 1, notes: [] });
    expect(inputOf(there, 'bike')).toBe(21);
    expect(there.kept.map(([name]) => name)).not.toContain('name');
    const wordsTo = (bikes: number): string => onwardWords(scenario, { words: 'Keep up', bikes });
    expect([1, 3].map(wordsTo)).toEqual(['Keep up, with Trail', 'Keep up']);
  });

  test('one bike of several calculators goes beside those of the example', () => {
    const there = opened(readLink('your-hill', 'name=Trail&bike=21'), 'side-by-side');
    expect([0, 1, 2].map((bike) => bikeName(there, bike))).toEqual(['Trail', 'Mid', 'Full']);
    expect([0, 1, 2].map((bike) => inputOf(there, 'bike', bike))).toEqual([21, 21, 24]);
  });
});

test('measured times go along with their bikes', () => {
  const there = opened(readLink('bigger-hill', 'name=A,B&time=12:00,10:00'), 'side-by-side');
  expect([0, 1].map((bike) => inputOf(there, 'time', bike))).toEqual([720, 600]);
});

// the page that opened showed another time than the one before, and did not say why
test('a hill in pieces that goes along whole is said to, and is handed on', () => {
  const there = opened(readLink('keep-up', 'profile=1:100,20:100,0'), 'climb-time');
  expect(there.notes).toEqual([
    'The hill came along as its length and its mean grade: this calculator rides it as one even slope, not piece by piece.',
  ]);
  expect(there.kept).toEqual([['profile', '1:100,20:100,0']]);
  expect([inputOf(there, 'distance'), inputOf(there, 'gain')]).toEqual([200, 20]);
});

// a tenth was kept on one page and nothing on the other, so the same battery lasted here and not there
test('what is kept of a battery goes along from and to a hill in pieces', () => {
  const from = readLink('your-hill', 'battery=100,100,100');
  const there = opened(from, 'watt-hours');
  expect(inputOf(there, 'reserve')).toBe(0);
  const share = (calculator: CalculatorName, query: string): number | undefined =>
    outcomeOf(calculator, query).results.find(({ name }) => name === 'battery-share')?.si;
  const onward = writeLink(there);
  expect(share('watt-hours', `${onward}&idle=0`)).toBeCloseTo(share('your-hill', writeLink(from)) ?? 0, 9);
  expect(inputOf(opened(readLink('watt-hours', ''), 'your-hill'), 'reserve')).toBe(0.1);
});

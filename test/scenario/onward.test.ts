import { describe, expect, test } from 'vitest';
import { differingFrom } from '../../calculators/scenario/differing.ts';
import { hillOf, inputOf, isUnused, type Scenario, targetHillOf } from '../../calculators/scenario/index.ts';
import { onwardQuery } from '../../calculators/scenario/onward.ts';
import { type CalculatorName, calculators, namesOf, readLink } from '../../calculators/scenario/vocabulary.ts';
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
const ALONG = [
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
  'battery',
];

describe.each(ways)('$from to $to', ({ from, to, way }) => {
  // the untouched example opened the other calculator's example: another hill, another bike
  const r = random(from.length * 31 + to.length);
  const queries = ['', ...Array.from({ length: 20 }, () => anyGoodQuery(r, from))];

  test('opens with the same hill, rider and first bike', () => {
    for (const query of queries) {
      const scenario = readLink(from, query);
      const there = opened(scenario, to);
      const toTarget = way === 'target';
      for (const name of toTarget ? ALONG_TO_TARGET : ALONG) {
        if (!namesOf(from).includes(name) || !namesOf(to).includes(name) || isUnused(scenario, name)) continue;
        const here = inputOf(scenario, name);
        const now = (toTarget ? inputOf(there, `target-${name}`) : undefined) ?? inputOf(there, name);
        if (here !== undefined) expect(now, `${name} of ?${query}`).toBe(here);
      }
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

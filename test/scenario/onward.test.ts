import { describe, expect, test } from 'vitest';
import { differingFrom } from '../../calculators/scenario/differing.ts';
import { hillOf, inputOf, type Scenario } from '../../calculators/scenario/index.ts';
import { onwardQuery } from '../../calculators/scenario/onward.ts';
import { type CalculatorName, calculators, namesOf, readLink } from '../../calculators/scenario/vocabulary.ts';
import { random } from '../random.ts';
import { anyGoodQuery } from './queries.ts';

/** The scenario that a way onward opens. */
function opened(scenario: Scenario, to: CalculatorName): Scenario {
  const way = calculators[scenario.calculator].onward.find((each) => each.to === to);
  if (!way) throw new Error(`No way from ${scenario.calculator} to ${to}.`);
  return readLink(to, onwardQuery(scenario, way.bikes, differingFrom(scenario.calculator)[to]));
}

const ways = Object.values(calculators).flatMap(({ name, onward }) => onward.map(({ to }) => ({ from: name, to })));
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

describe.each(ways)('$from to $to', ({ from, to }) => {
  // the untouched example opened the other calculator's example: another hill, another bike
  const r = random(from.length * 31 + to.length);
  const queries = ['', ...Array.from({ length: 20 }, () => anyGoodQuery(r, from))];

  test('opens with the same hill, rider and first bike', () => {
    for (const query of queries) {
      const scenario = readLink(from, query);
      const there = opened(scenario, to);
      for (const name of ALONG) {
        if (!namesOf(from).includes(name) || !namesOf(to).includes(name)) continue;
        const here = inputOf(scenario, name);
        if (here !== undefined) expect(inputOf(there, name), `${name} of ?${query}`).toBe(here);
      }
      if (!['distance', 'gain', 'grade'].every((name) => [from, to].every((one) => namesOf(one).includes(name))))
        continue;
      const [hill, same] = [hillOf(scenario), hillOf(there)];
      if (hill.ok && same.ok) expect(same.value.gain).toBeCloseTo(hill.value.gain, 9);
    }
  });
});

test('what is the same there by itself is not in the link', () => {
  expect(onwardQuery(readLink('climb-time', ''), 1, differingFrom('climb-time')['power-to-weight'])).toBe('');
  expect(onwardQuery(readLink('watt-hours', ''), 1, differingFrom('watt-hours')['climb-time'])).toBe('?reserve=10');
});

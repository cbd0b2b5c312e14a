import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import {
  addColumn,
  edit,
  exampleOf,
  fieldOf,
  inputOf,
  problemsOf,
  readLink,
  removeColumn,
  resultOf,
  type Scenario,
  writeLink,
} from '../../calculators/scenario/vocabulary.ts';
import { random } from '../random.ts';
import { inputsOf } from './inputs.ts';
import { anyGoodQuery } from './queries.ts';

const BIKES = 'name=A,B,C&bike=15,20,25&motor=300,400,500&battery=300,400,500';
const column = (scenario: Scenario, bike: number): unknown[] =>
  ['name', 'bike', 'motor', 'battery', 'limit'].map((name) => inputOf(scenario, name, bike));

describe('removeColumn', () => {
  test('takes one bike away; the others keep what they had, also where that was the default of their column', () => {
    const before = readLink('side-by-side', 'bike=15,,&name=A,,');
    const after = removeColumn(before, 'bike', 0);
    expect(after.bikes).toBe(2);
    expect(column(after, 0)).toEqual(column(before, 1));
    expect(column(after, 1)).toEqual(column(before, 2));
    expect(inputsOf(readLink('side-by-side', writeLink(after)))).toEqual(inputsOf(after));
  });

  test('in the middle and at the end', () => {
    const before = readLink('side-by-side', BIKES);
    expect(column(removeColumn(before, 'bike', 1), 1)).toEqual(column(before, 2));
    expect(column(removeColumn(before, 'bike', 2), 1)).toEqual(column(before, 1));
  });

  test('the times of those who stay do not change', () => {
    const before = outcomeOf('side-by-side', BIKES);
    const link = writeLink(removeColumn(readLink('side-by-side', BIKES), 'bike', 1));
    expect(resultOf(outcomeOf('side-by-side', link), 'time', 2).si).toBe(resultOf(before, 'time', 3).si);
  });

  test('of the last control run is control-time=none', () => {
    const scenario = removeColumn(exampleOf('bigger-hill'), 'control', 0);
    expect(scenario.controls).toBe(0);
    expect(writeLink(scenario)).toBe('control-time=none');
  });

  test('a text that cannot be read moves along with its sentence', () => {
    const typed = edit(edit(exampleOf('side-by-side'), 'bike', 2, 'heavy'), 'name', 1, 'B');
    const after = removeColumn(typed, 'bike', 0);
    expect(fieldOf(after, 'bike', 1).text).toBe('heavy');
    expect(problemsOf(after)).toHaveLength(1);
    expect(inputOf(after, 'bike', 1)).toBe(24);
  });

  test('leaves bikes alone when a control run goes, and control runs when a bike goes', () => {
    const before = readLink('bigger-hill', 'name=A,B,C&bike=15,16,17&control-time=28:00,22:00&control-power=175,225');
    const without = removeColumn(before, 'control', 0);
    expect([0, 1, 2].map((bike) => column(without, bike))).toEqual([0, 1, 2].map((bike) => column(before, bike)));
    expect(inputOf(without, 'control-time')).toBe(1320);
    expect(inputOf(removeColumn(before, 'bike', 0), 'control-power', 1)).toBe(225);
  });
});

describe('addColumn', () => {
  test('adds a bike with the defaults of its column; the others keep theirs', () => {
    const before = readLink('side-by-side', BIKES);
    const after = addColumn(before, 'bike');
    expect(after.bikes).toBe(4);
    expect([0, 1, 2].map((bike) => column(after, bike))).toEqual([0, 1, 2].map((bike) => column(before, bike)));
    expect(column(after, 3)).toEqual(['Bike 4', 22, 400, 540 * 3600, 25 / 3.6]);
    expect(inputsOf(readLink('side-by-side', writeLink(after)))).toEqual(inputsOf(after));
  });

  // a shopper's answer had a battery that nobody had typed
  test('says whose values a new bike has, until it gets a name', () => {
    const after = addColumn(readLink('side-by-side', BIKES), 'bike');
    expect(fieldOf(after, 'name', 3)).toMatchObject({ text: 'Bike 4', note: 'Added with the example’s values.' });
    expect(fieldOf(edit(after, 'name', 3, 'Trail'), 'name', 3).note).toBeUndefined();
    expect(fieldOf(after, 'name', 2).note).toBeUndefined();
  });

  test('adds a control run', () => {
    const after = addColumn(exampleOf('bigger-hill'), 'control');
    expect(after.controls).toBe(2);
    expect(inputsOf(readLink('bigger-hill', writeLink(after)))).toEqual(inputsOf(after));
  });

  test('brings back nothing of a bike that was taken away before', () => {
    const scenario = addColumn(removeColumn(readLink('side-by-side', BIKES), 'bike', 2), 'bike');
    expect(inputOf(scenario, 'name', 2)).toBe('Full');
    expect(inputOf(scenario, 'bike', 2)).toBe(24);
  });
});

test.each([320, 321, 322, 323, 324, 325])(
  'adding and removing at random never loses a value, and the link always says the same (%i)',
  (seed) => {
    const r = random(seed);
    for (let i = 0; i < 200; i++) {
      let scenario = readLink('bigger-hill', anyGoodQuery(r, 'bigger-hill'));
      for (let step = 0; step < 4; step++) {
        const list = r.pick(['bike', 'control'] as const);
        const count = list === 'bike' ? scenario.bikes : scenario.controls;
        scenario =
          count < 6 && (r.chance(0.5) || count <= 1)
            ? addColumn(scenario, list)
            : removeColumn(scenario, list, r.whole(0, count - 1));
        // a single run without a time is no run: a link says so by control-time=none, and its power is nobody's
        const noRun = scenario.controls === 1 && inputOf(scenario, 'control-time') === null;
        if (!noRun) expect(inputsOf(readLink('bigger-hill', writeLink(scenario)))).toEqual(inputsOf(scenario));
      }
    }
  },
  60_000,
);

test('what is asked about does not leave its own beginning as the value: 1,200 typed key by key', () => {
  let scenario = exampleOf('climb-time');
  for (const text of ['', '1', '1,', '1,2', '1,20', '1,200']) scenario = edit(scenario, 'gain', 0, text);
  expect(inputsOf(scenario)).toEqual(inputsOf(exampleOf('climb-time')));
  expect(writeLink(scenario)).toBe('');
  // nonsense behind a value that was meant leaves it
  let other = edit(exampleOf('climb-time'), 'gain', 0, '300');
  other = edit(other, 'gain', 0, '300 x');
  expect(writeLink(other)).toBe('gain=300m');
});

import { describe, expect, test } from 'vitest';
import type { DayDocument } from '../../calculators/day/document.ts';
import {
  addBike,
  addRun,
  chooseSystem,
  emptyDay,
  isEmptyDay,
  MOST_RUNS,
  moveRun,
  newId,
  proposedBike,
  removeBike,
  removeRun,
  restore,
  setAssisted,
  setCounted,
  setRunBike,
  setText,
} from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { readDay } from '../../calculators/day/read.ts';
import { random } from '../random.ts';
import { randomDay } from './documents.ts';

const ids = (document: DayDocument): string[] => document.runs.map(({ id }) => id);

/** Bikes in the order in which runs are proposed, one after the other. */
function proposals(document: DayDocument, count: number): string {
  let day = document;
  for (let i = 0; i < count; i++) day = addRun(day);
  return day.runs.map(({ bike }) => bike).join('');
}

const withBikes = (names: string, motorless = ''): DayDocument =>
  [...names].reduce(
    (day, id) => addBike(day, { name: id, ...(motorless.includes(id) ? { motor: 'none' } : {}) }, id),
    emptyDay(),
  );

describe('editing a day', () => {
  test('a text is kept as typed, an emptied one is gone, and nothing else changes', () => {
    const before = exampleDay();
    const after = setText(before, 'run-2', 'time', '6:4');
    expect(after.runs[1]?.texts.time).toBe('6:4');
    expect({ ...after, runs: before.runs }).toEqual(before);
    expect(setText(after, 'run-2', 'time', '').runs[1]?.texts).not.toHaveProperty('time');
    expect(setText(before, 'setup', 'title', ' x ').setup.title).toBe(' x ');
    expect(setText(before, 'mid', 'name', 'M').bikes[2]?.texts.name).toBe('M');
    expect(setText(before, 'nobody', 'name', 'M')).toEqual(before);
  });

  test('runs are proposed forward and back, a control run first where there is a bike for it', () => {
    expect(proposals(withBikes('abc'), 9)).toBe('abccbaabc');
    expect(proposals(withBikes('xabc', 'x'), 10)).toBe('xabccbaabc');
    expect(proposals(withBikes('a'), 3)).toBe('aaa');
    // the order of the first round counts, not that of the list
    let day = withBikes('abc');
    for (const bike of 'cab') day = addRun(day, bike);
    expect(proposals(day, 3)).toBe('cabbac');
    // a first round in the order of a plan that rotates (Williams: 0 2 1, then each one further back) goes on in it
    day = withBikes('abc');
    for (const bike of 'acb') day = addRun(day, bike);
    expect(proposals(day, 6)).toBe('acbcbabac');
    // a control run in between changes nothing
    day = addRun(withBikes('xab', 'x'), 'a');
    expect(proposedBike(addRun(day, 'x'))).toBe('b');
    expect(proposedBike(emptyDay())).toBe('');
    // nor is a bike whose motor was off next again before the others
    day = setAssisted(addRun(withBikes('abc'), 'a', 'r'), 'r', false);
    expect(proposedBike(day)).toBe('b');
    expect(addRun(emptyDay()).runs[0]).toMatchObject({ bike: '', assisted: true, texts: {} });
  });

  test('a bike that is named as a control bike has no motor unless one is given', () => {
    const named = addBike(addBike(emptyDay(), { name: 'Control' }, 'c'), { name: 'Light' }, 'l');
    const day = addRun(named);
    expect(day.runs[0]).toMatchObject({ bike: 'c', assisted: false });
    expect(addRun(day).runs[1]).toMatchObject({ bike: 'l', assisted: true });
    expect(addRun(setText(named, 'c', 'motor', '300')).runs[0]).toMatchObject({ assisted: true });
  });

  test('a new run holds its bike only, and is assisted when that has a motor', () => {
    const day = addRun(withBikes('xa', 'x'));
    expect(day.runs[0]).toMatchObject({ bike: 'x', assisted: false, counted: true, texts: {} });
    expect(addRun(day).runs[1]).toMatchObject({ bike: 'a', assisted: true });
    expect(setRunBike(addRun(day, 'a', 'r'), 'r', 'x').runs[1]).toMatchObject({ bike: 'x', assisted: false });
    expect(setAssisted(day, day.runs[0]?.id ?? '', true).runs[0]?.assisted).toBe(true);
    expect(setCounted(day, day.runs[0]?.id ?? '', false).runs[0]?.counted).toBe(false);
  });

  test('what was taken out comes back where it stood, beside what was changed since', () => {
    for (let seed = 0; seed < 200; seed++) {
      const next = random(seed);
      const day = randomDay(next);
      const run = day.runs.length > 0 ? next.pick(day.runs).id : 'none';
      const bike = day.bikes.length > 0 ? next.pick(day.bikes).id : 'none';
      for (const taken of [removeRun(day, run), removeBike(day, bike)]) {
        expect(restore(taken.document, taken.removed)).toEqual(day);
        expect(restore(day, taken.removed)).toEqual(day);
      }
    }
    const day = exampleDay();
    const { document, removed } = removeBike(day, 'mid');
    expect(document.runs).toHaveLength(8);
    const since = setText(document, 'setup', 'title', 'Changed');
    expect(restore(since, removed)).toEqual(setText(day, 'setup', 'title', 'Changed'));
  });

  test('a run moves as far as the list goes', () => {
    const day = exampleDay();
    expect(ids(moveRun(day, 'run-3', -1)).slice(0, 3)).toEqual(['run-1', 'run-3', 'run-2']);
    expect(ids(moveRun(day, 'run-3', 1)).slice(2, 4)).toEqual(['run-4', 'run-3']);
    expect(ids(moveRun(day, 'run-3', -99))[0]).toBe('run-3');
    expect(ids(moveRun(day, 'run-3', 99)).at(-1)).toBe('run-3');
    expect(moveRun(day, 'nobody', 1)).toEqual(day);
  });

  test('the units switch keeps values to six figures and back to the letter, and what names its unit as it is', () => {
    const day = setText(exampleDay(), 'mid', 'bike', '50.5 lb');
    const us = chooseSystem(day, 'us');
    expect(us.setup).toMatchObject({
      distance: '0.932057',
      rider: '180.7790',
      temperature: '64.4',
      title: day.setup.title,
    });
    expect(us.bikes[2]?.texts.bike).toBe('50.5 lb');
    expect(us.runs).toEqual(day.runs); // watts, times and shares are the same everywhere
    expect(chooseSystem(us, 'metric')).toEqual(day);
    const [before, after] = [readDay(day).day, readDay(us).day];
    expect(after?.riderMass).toBeCloseTo(before?.riderMass ?? 0, 3);
    expect(after?.hill.distance).toBeCloseTo(before?.hill.distance ?? 0, 2);
    // what cannot be read, and what is asked about, stays
    const odd = setText(setText(emptyDay(), 'setup', 'gain', 'high'), 'setup', 'distance', '1,609');
    expect(chooseSystem(odd, 'us').setup).toEqual(odd.setup);
  });

  test('no more runs than a day can hold', () => {
    const full = {
      ...emptyDay(),
      runs: Array.from({ length: MOST_RUNS }, () => ({
        id: newId(),
        bike: '',
        assisted: true,
        counted: true,
        texts: {},
      })),
    };
    expect(addRun(full)).toBe(full);
  });

  test('ids are short and not alike', () => {
    const made = Array.from({ length: 2000 }, newId);
    expect(new Set(made).size).toBe(2000);
    for (const id of made) expect(id).toMatch(/^[0-9a-z]{8}$/);
  });

  test('an empty day', () => {
    expect(isEmptyDay(emptyDay())).toBe(true);
    expect(isEmptyDay(setText(emptyDay(), 'setup', 'gain', '1'))).toBe(false);
  });
});

import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { formulas } from '../../calculators/quantities/formulas.ts';
import { findUnit, kinds, toSi } from '../../calculators/quantities/index.ts';
import { meanings } from '../../calculators/scenario/meanings.ts';
import { resultNames } from '../../calculators/scenario/results.ts';
import {
  allHints,
  calculators,
  columnsOf,
  defaultOf,
  doubtOf,
  doubts,
  exampleOf,
  hintOf,
  namesOf,
  parameterOf,
  parameters,
  VERSION,
} from '../../calculators/scenario/vocabulary.ts';
import { sources } from '../../content/sources.ts';
import published from './defaults-1.json' with { type: 'json' };
import { CALCULATORS } from './queries.ts';

/*
 * Version 1 of the public vocabulary, as it was published: name, plain unit of a link, least and greatest value in it, list.
 * A link is for ever, so a line here is never changed and never removed. New parameters are added at the end.
 */
const VERSION_1: [string, string, number, number, string?][] = [
  ['distance', 'm', 20, 200_000],
  ['gain', 'm', 0, 9000],
  ['altitude', 'm', -430, 6000],
  ['grade', '%', -40, 60],
  ['temperature', 'C', -40, 50],
  ['wind', 'm/s', -20, 20],
  ['rolling', '', 0, 0.15],
  ['drag', 'm2', 0.1, 1.2],
  ['drive', '%', 50, 100],
  ['unit', '%', 50, 100],
  ['rider', 'kg', 25, 250],
  ['power', 'W', 0, 1500],
  ['cadence', 'rpm', 20, 160],
  ['bike', 'kg', 5, 80, 'bike'],
  ['motor', 'W', 0, 3000, 'bike'],
  ['torque', 'Nm', 5, 250, 'bike'],
  ['support', '%', 0, 1000, 'bike'],
  ['battery', 'Wh', 10, 5500, 'bike'],
  ['limit', 'km/h', 5, 100, 'bike'],
  ['control-power', 'W', 1, 1500, 'control'],
  ['control-bike', 'kg', 5, 80, 'control'],
  ['control-rider', 'kg', 25, 250, 'control'],
  ['target-distance', 'm', 20, 200_000],
  ['target-gain', 'm', 0, 9000],
  ['target-grade', '%', -40, 60],
  ['target-altitude', 'm', -430, 6000],
  ['target-temperature', 'C', -40, 50],
  ['target-wind', 'm/s', -20, 20],
  ['target-rolling', '', 0, 0.15],
  ['target-rider', 'kg', 25, 250],
  ['target-power', 'W', 0, 1500],
  ['companion-rider', 'kg', 25, 250],
  ['companion-power', 'W', 0, 1500],
  ['companion-bike', 'kg', 5, 80],
  ['companion-motor', 'W', 0, 3000],
  ['companion-limit', 'km/h', 5, 100],
  ['endurance', 'W', 30, 1500],
  ['endurance-work', 'kJ', 1, 80],
  ['continuous', 'W', 20, 3000, 'bike'],
  ['continuous-cadence', 'rpm', 20, 160],
  ['fixed-losses', '', 0, 3],
  ['warm', '%', 0, 100],
  ['reserve', '%', 0, 90],
  ['health', '%', 30, 100],
  ['cold', '%', 20, 100],
  ['idle', 'W', 0, 100],
  ['add-on', 'Wh', 0, 5500, 'bike'],
  ['volts', 'V', 5, 150],
  ['amp-hours', 'Ah', 0.5, 200],
  ['laps', '', 1, 100],
  ['start', '%', 0, 100],
  ['end', '%', 0, 100],
  ['step', '%', 0.1, 50],
  ['ring', '', 8, 70],
  ['sprocket', '', 8, 80],
  ['wheel', 'mm', 100, 500],
  ['crank', 'mm', 80, 220],
  ['push', '%', 0, 300],
  ['change-mass', 'kg', -100, 100],
  ['change-rolling', '%', -90, 300],
  ['change-power', 'W', -1000, 1000],
  ['change-motor', 'W', -2000, 2000],
  ['change-wind', 'm/s', -15, 15],
  ['change-altitude', 'm', -5000, 5000],
  ['difference', 's', 0, 3600],
  ['chance', '%', 50, 99],
  ['scatter', '%', 0, 50],
  ['repeats', '', 1, 30],
  ['meter-repeat', '%', 0, 30],
  ['watch', 's', 0, 60],
  ['between', '%', 0, 30],
  ['top-speed', 'km/h', 10, 100],
];

test.each(VERSION_1)('%s, plain unit %s, %d to %d', (name, plain, min, max, list) => {
  const parameter = parameters.find((one) => one.name === name) ?? parameterOf(name);
  expect(kinds[parameter.kind].plain).toBe(plain);
  const unit = findUnit(plain, parameter.kind);
  const si = (value: number): number => (unit ? toSi(value, unit) : value);
  expect(parameter.min).toBeCloseTo(si(min), 9);
  expect(parameter.max).toBeCloseTo(si(max), 9);
  expect(parameter.list).toBe(list);
});

test('texts and times: name to 40 characters, times in m:ss', () => {
  expect(parameterOf('name')).toMatchObject({ kind: 'text', max: 40, list: 'bike' });
  expect(parameterOf('time')).toMatchObject({ kind: 'duration', list: 'bike' });
  expect(parameterOf('control-time')).toMatchObject({ kind: 'duration', list: 'control', allowNone: true });
  expect(parameterOf('warm-up')).toMatchObject({ kind: 'duration', min: 60, max: 7200 });
  for (const [name, max] of [
    ['way-down', 10_800],
    ['cool-down', 10_800],
    ['swap', 36_000],
  ] as const)
    expect(parameterOf(name)).toMatchObject({ kind: 'duration', min: 0, max });
  for (const [name, form] of [
    ['own-times', 'times'],
    ['same-tyres', ['yes', 'no']],
    ['order', ['rotated', 'forward-and-back']],
    ['first-start', 'clock'],
    ['last-light', 'clock'],
    ['profile', 'profile'],
    ['target-profile', 'profile'],
  ] as const)
    expect(parameterOf(name)).toMatchObject({ kind: 'text', form });
  expect(VERSION_1.length + 4 + 3 + 7).toBe(parameters.length);
});

test('none is a word for a motor, a limit and a control run only', () => {
  expect(parameters.filter((one) => one.allowNone).map((one) => one.name)).toEqual([
    'motor',
    'limit',
    'control-time',
    'companion-motor',
    'companion-limit',
  ]);
});

test('parameterOf(name) of a name that there is not is our own mistake', () => {
  expect(() => parameterOf('speed')).toThrow('The vocabulary has no parameter “speed”.');
});

test('no parameter has two entries', () => {
  expect(new Set(parameters.map(({ name }) => name)).size).toBe(parameters.length);
});

describe.each(CALCULATORS)('%s', (calculator) => {
  test('version 1 of its defaults, as published', () => {
    expect(calculators[calculator].defaults[1]).toEqual((published.defaults as Record<string, unknown>)[calculator]);
    expect(VERSION).toBe(1);
  });

  test('reads only parameters of the vocabulary, each once', () => {
    const names = namesOf(calculator);
    for (const name of names) expect(() => parameterOf(name)).not.toThrow();
    expect(new Set(names).size).toBe(names.length);
  });

  test('has defaults within their ranges', () => {
    for (const name of namesOf(calculator)) {
      const { min, max, allowNone, kind } = parameterOf(name);
      for (let column = 0; column < 6; column++) {
        const value = defaultOf(calculator, name, column);
        if (typeof value === 'number') {
          expect(value).toBeGreaterThanOrEqual(min * (1 - 1e-12));
          expect(value).toBeLessThanOrEqual(max * (1 + 1e-12));
        } else if (value === null) expect(allowNone).toBe(true);
        else expect(value === undefined || kind === 'text').toBe(true);
      }
    }
  });

  test('gives exactly the results of the public vocabulary, per bike where it says so', () => {
    const scenario = exampleOf(calculator);
    const bikes = columnsOf(scenario, 'bike').map((column) => column + 1);
    const expected = resultNames[calculator].flatMap(({ name, kind, perBike }) =>
      (perBike ? bikes : [0]).map((bike) => `${name} ${kind} ${bike}`),
    );
    const given = outcomeOf(calculator, '').results.map(({ name, kind, bike }) => `${name} ${kind} ${bike ?? 0}`);
    expect(given.sort()).toEqual(expected.sort());
  });
});

test('the example rider and the physical defaults are those of the published contract', () => {
  const common = {
    altitude: 500,
    temperature: 15,
    wind: 0,
    rolling: 0.028,
    drag: 0.45,
    drive: 0.96,
    unit: 0.8,
    rider: 82,
    power: 170,
  };
  for (const calculator of CALCULATORS)
    for (const [name, value] of Object.entries(common))
      if (namesOf(calculator).includes(name)) expect(defaultOf(calculator, name), calculator).toBe(value);
});

test('every parameter has its sentence for the links page, and no sentence is left over', () => {
  expect(Object.keys(meanings).sort()).toEqual(parameters.map(({ name }) => name).sort());
  for (const meaning of Object.values(meanings)) expect(meaning).toMatch(/^[A-Z].*\.$/);
});

test('the sources of doubts and formulas are in the bibliography', () => {
  const ids = new Set(sources.map(({ id }) => id));
  for (const { source } of [...Object.values(doubts), ...formulas, ...allHints])
    if (source) expect(ids.has(source), source).toBe(true);
});

test('a field has room for a hint exactly where there is one', () => {
  for (const calculator of CALCULATORS)
    for (const name of namesOf(calculator))
      expect(hintOf(calculator, name) !== undefined, `${calculator} ${name}`).toBe(parameterOf(name).hinted === true);
});

test('every doubt has a cause that reads on from “Most of the doubt is”, a range and a source', () => {
  for (const doubt of Object.values(doubts)) {
    expect(doubt.cause).toMatch(/^(the|how) /);
    expect(doubt.range).toMatch(/±|to/);
    expect(doubt.source).toMatch(/^[a-z0-9-]+$/);
  }
  expect(doubtOf('steady:2')).toBe(doubts.steady);
  expect(doubtOf('luck')).toBeUndefined();
});

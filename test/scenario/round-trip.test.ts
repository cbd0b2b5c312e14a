import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { fromSi, kinds, type System, toSi } from '../../calculators/quantities/index.ts';
import {
  edit,
  exampleOf,
  inputOf,
  namesOf,
  parameterOf,
  readLink,
  type Scenario,
  switchSystem,
  writeLink,
} from '../../calculators/scenario/vocabulary.ts';
import { random } from '../random.ts';
import { inputsOf } from './inputs.ts';
import { anyGoodQuery, CALCULATORS } from './queries.ts';

const reread = (scenario: Scenario): Scenario => readLink(scenario.calculator, writeLink(scenario));

const cases = CALCULATORS.flatMap((calculator) =>
  namesOf(calculator).flatMap((name) => {
    const parameter = parameterOf(name);
    return parameter.kind === 'text' || parameter.kind === 'duration'
      ? []
      : kinds[parameter.kind].units.map((unit) => ({ calculator, name, unit, label: unit.symbol || 'plain' }));
  }),
);

describe.each(cases)('$calculator: $name in $label', ({ calculator, name, unit }) => {
  const parameter = parameterOf(name);
  const r = random(name.length * 1000 + unit.symbol.length);
  const { kind, min, max } = parameter;
  // 17 digits are all that a double has; what is counted is whole
  const texts = Array.from({ length: 40 }, () =>
    kind === 'count'
      ? String(r.whole(min, max))
      : String(Number(fromSi(r.between(min, max), unit).toPrecision(r.whole(1, 17)))),
  ).filter((text) => {
    const si = toSi(Number(text), unit);
    return si >= parameter.min && si <= parameter.max && !text.includes('e-');
  });

  test('a link and the link written from it give the identical SI value', () => {
    expect(texts.length).toBeGreaterThan(5);
    for (const text of texts) {
      const scenario = readLink(calculator, `${name}=${encodeURIComponent(text + unit.symbol)}`);
      const value = inputOf(scenario, name);
      expect(value).toBe(toSi(Number(text), unit));
      expect(inputOf(reread(scenario), name)).toBe(value);
      expect(writeLink(reread(scenario))).toBe(writeLink(scenario));
    }
  });

  test.each<System>(['metric', 'us'])('typed in a field, %s, the link gives the identical SI value', (system) => {
    for (const text of texts) {
      // three decimals may be asked about; a zero more is the same number
      const typed = /^-?[1-9]\d{0,2}\.\d{3}$/.test(text) ? `${text}0` : text;
      for (const said of [`${typed} ${unit.symbol}`, `${typed.replace('.', ',')} ${unit.text}`.replace('-', '−')]) {
        const scenario = edit(exampleOf(calculator, system), name, 0, said);
        expect(inputOf(scenario, name)).toBe(toSi(Number(text), unit));
        expect(inputOf(reread(scenario), name)).toBe(inputOf(scenario, name));
      }
    }
  });
});

test('times with and without hours, and with decimals', () => {
  for (const time of ['0:05', '7:22', '59:59', '1:00:00', '99:59:59', '7:22.5', '0:05.123456']) {
    const scenario = readLink('bigger-hill', `time=${time},5:57,4:56`);
    expect(inputOf(reread(scenario), 'time')).toBe(inputOf(scenario, 'time'));
    expect(writeLink(scenario)).toBe(`time=${time},5:57,4:56`);
  }
});

test('whole scenarios: every input of 1,000 random links, and their outcomes, come back from the written link', () => {
  const r = random(310);
  for (let i = 0; i < 1000; i++) {
    const calculator = r.pick(CALCULATORS);
    const query = anyGoodQuery(r, calculator);
    const scenario = readLink(calculator, query);
    const written = writeLink(scenario);
    const again = readLink(calculator, written);
    expect(inputsOf(again)).toEqual(inputsOf(scenario));
    expect(writeLink(again)).toBe(written);
    if (i % 5 === 0) expect(outcomeOf(calculator, written).results).toEqual(outcomeOf(calculator, query).results);
  }
}, 60_000);

test('the units switch, back and forth, leaves every input as it is, and so does the link written after it', () => {
  const r = random(311);
  for (let i = 0; i < 300; i++) {
    const calculator = r.pick(CALCULATORS);
    const scenario = readLink(calculator, anyGoodQuery(r, calculator));
    const us = switchSystem(scenario, 'us');
    const back = switchSystem(us, 'metric');
    for (const one of [us, back, reread(us), reread(back)]) expect(inputsOf(one)).toEqual(inputsOf(scenario));
    expect(reread(us).system).toBe('us');
  }
}, 60_000);

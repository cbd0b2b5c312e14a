/** What the links page promises, sentence by sentence. */
import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { evaluateText } from '../../calculators/parts/changes.ts';
import {
  type CalculatorName,
  cellOf,
  defaultOf,
  edit,
  exampleOf,
  fieldOf,
  inputOf,
  parameterOf,
  problemsOf,
  readLink,
  resultOf,
  type Scenario,
  splitList,
  switchSystem,
  writeLink,
} from '../../calculators/scenario/vocabulary.ts';

const rewritten = (calculator: CalculatorName, query: string): string => writeLink(readLink(calculator, query));
const read = (query: string, calculator: CalculatorName = 'climb-time'): Scenario => readLink(calculator, query);
const names = (scenario: Scenario): unknown[] =>
  Array.from({ length: scenario.bikes }, (_, column) => inputOf(scenario, 'name', column));

describe('the query of an address', () => {
  test('is read with or without its question mark, and empty it is the example', () => {
    expect(inputOf(read('?rider=70'), 'rider')).toBe(70);
    expect(inputOf(read('rider=70'), 'rider')).toBe(70);
    expect(read('')).toEqual(exampleOf('climb-time'));
    expect(read('?')).toEqual(exampleOf('climb-time'));
  });

  test('is written percent-encoded, with comma and colon literal and + for a space', () => {
    const scenario = read('name=Rot+%26+Blau,%C3%84hre,%E5%B1%B1&time=7:22,5:57,4:56', 'bigger-hill');
    expect(names(scenario)).toEqual(['Rot & Blau', 'Ähre', '山']);
    expect(writeLink(scenario)).toBe('name=Rot+%26+Blau,%C3%84hre,%E5%B1%B1&time=7:22,5:57,4:56');
  });

  test('is read however it was encoded: mail programs escape commas and colons', () => {
    const plain = read('bike=37lb,45lb,52lb&time=7:22,5:57,4:56', 'bigger-hill');
    expect(read('bike=37lb%2C45lb%2C52lb&time=7%3A22%2C5%3A57%2C4%3A56', 'bigger-hill')).toEqual(plain);
  });

  test('has units in ASCII, and no sign where percent is the plain unit', () => {
    const texts: [string, string, string][] = [
      ['drag', '0,5 m²', 'drag=0.5m2'],
      ['temperature', '−5 °C', 'temperature=-5C'],
      ['grade', '10 %', 'grade=10'],
      ['drive', '95 %', 'drive=95'],
      ['grade', '5.7°', 'grade=5.7deg'],
      ['rider', '181 lbs', 'rider=181lb'],
      ['gain', '550 ′', 'gain=550ft'],
      ['wind', '3 m/s', 'wind=3m%2Fs'],
    ];
    for (const [name, typed, link] of texts)
      expect(writeLink(edit(exampleOf('climb-time'), name, 0, typed))).toBe(link);
  });

  test('has names that care about case, and units that do not', () => {
    const scenario = read('Rider=70&bike=37LB&distance=1MI&limit=20MPH');
    expect(inputOf(scenario, 'rider')).toBe(82);
    expect(scenario.kept).toEqual([['Rider', '70']]);
    expect(inputOf(scenario, 'bike')).toBe(37 * 0.45359237);
    expect(inputOf(scenario, 'distance')).toBe(1609.344);
    expect(inputOf(scenario, 'limit')).toBeCloseTo(20 * 0.44704, 15);
  });

  test('may repeat a parameter: the first one counts, with a sentence', () => {
    const scenario = read('rider=70&rider=90&rider=110');
    expect(inputOf(scenario, 'rider')).toBe(70);
    expect(scenario.notes).toContain('The link gives “rider” twice; the first one counts.');
    expect(writeLink(scenario)).toBe('rider=70kg');
  });

  test('keeps what nobody knows and what other calculators know, to the letter', () => {
    const scenario = read('utm=a%26b&rider=70&target-gain=900m&utm=2&name=A,B&control-time=none');
    expect(scenario.kept).toEqual([
      ['utm', 'a&b'],
      ['target-gain', '900m'],
      ['utm', '2'],
      ['name', 'A,B'],
      ['control-time', 'none'],
    ]);
    expect(writeLink(scenario)).toBe('rider=70kg&utm=a%26b&target-gain=900m&utm=2&name=A,B&control-time=none');
  });

  test('passed from calculator to calculator loses nothing', () => {
    const query = 'gain=300m&rider=70kg&name=A,B,C&bike=15kg,20kg,25kg&time=9:00,8:00,7:00&target-gain=900m';
    const passed = (['climb-time', 'power-to-weight', 'side-by-side', 'bigger-hill'] as const).reduce(
      (text, calculator) => rewritten(calculator, text),
      query,
    );
    expect(outcomeOf('bigger-hill', passed)).toEqual(outcomeOf('bigger-hill', query));
  });
});

describe('a value', () => {
  test.each([
    ['wind', '3', 3],
    ['limit', '25', 25 / 3.6],
    ['drive', '95', 0.95],
    ['rolling', '0.02', 0.02],
    ['temperature', '-5', -5],
    ['battery', '500', 1_800_000],
    ['altitude', '1500', 1500],
    ['bike', '18', 18],
    ['power', '200', 200],
  ])('%s=%s has the plain unit', (name, text, si) => {
    expect(inputOf(read(`${name}=${text}`), name)).toBeCloseTo(si, 12);
  });

  test.each(['10', '10%25', '10+%25', '1:10', '1in10', '1+in+10', '0.1e2'])('grade=%s is 0.1, the tangent', (text) => {
    expect(inputOf(read(`grade=${text}`), 'grade')).toBeCloseTo(0.1, 15);
  });

  test('grade=45deg is out of range, grade=30deg is tan 30°', () => {
    expect(inputOf(read('grade=30deg'), 'grade')).toBeCloseTo(Math.tan(Math.PI / 6), 15);
    expect(problemsOf(read('grade=45deg'))).toHaveLength(1);
  });

  test('a grade given is the grade that comes out', () => {
    expect(resultOf(outcomeOf('climb-time', 'grade=12.5'), 'grade').si).toBeCloseTo(0.125, 14);
  });

  test('a point is decimal in a link, and a comma is not', () => {
    expect(inputOf(read('distance=1.609km'), 'distance')).toBe(1609);
    expect(inputOf(read('rider=1,609'), 'rider')).toBe(82);
    expect(problemsOf(read('rider=1,609'))).toHaveLength(1);
  });

  test('a time is m:ss or h:mm:ss; a decimal one is asked about', () => {
    const time = (text: string): unknown => inputOf(read(`time=${text}`, 'bigger-hill'), 'time');
    expect(time('7:22')).toBe(442);
    expect(time('1:05:30')).toBe(3930);
    expect(time('7.22')).toBe(704);
    const [problem] = problemsOf(read('time=7.22', 'bigger-hill'));
    expect(problem?.problem).toContain('Write 7:22 or 7:13.');
  });

  test('in a field the comma may be decimal, one separator and three digits are asked about, unless the whole part is 0', () => {
    const typed = (name: string, text: string): Scenario => edit(exampleOf('climb-time'), name, 0, text);
    expect(inputOf(typed('rider', '82,5'), 'rider')).toBe(82.5);
    expect(inputOf(typed('rolling', '0,028'), 'rolling')).toBe(0.028);
    expect(inputOf(typed('drag', '0,360 m²'), 'drag')).toBe(0.36);
    expect(problemsOf(typed('distance', '1,609 m'))[0]?.problem).toContain('thousands or decimals?');
    expect(inputOf(typed('distance', '1.609,5 m'), 'distance')).toBe(1609.5);
  });

  test('in a field a plain number has the unit that the field shows', () => {
    const us = switchSystem(exampleOf('climb-time'), 'us');
    expect(fieldOf(us, 'bike').unit).toBe('lb');
    expect(inputOf(edit(us, 'bike', 0, '37'), 'bike')).toBe(37 * 0.45359237);
    expect(inputOf(edit(us, 'bike', 0, '37 kg'), 'bike')).toBe(37);
    expect(fieldOf(edit(us, 'bike', 0, '37 kg'), 'bike').unit).toBe('');
    // the link then spells it out, so that it does not depend on who opens it
    expect(writeLink(edit(us, 'bike', 0, '37'))).toBe('bike=37lb&units=us');
    expect(inputOf(readLink('climb-time', 'bike=37', 'us'), 'bike')).toBe(37);
  });
});

describe('only what differs from the default is written', () => {
  test.each([
    ['climb-time', 'distance=2.4km&gain=235m&rider=82kg&power=170&motor=380W&battery=540Wh&limit=25km/h&altitude=500'],
    ['climb-time', 'rider=82000g&battery=1944kJ&temperature=15C&drive=96&unit=80%25&drag=4500cm2'],
    ['side-by-side', 'name=Light,Mid,Full&bike=17,21kg,24000g&motor=280,400,560W&limit=25'],
    ['bigger-hill', 'time=11:44,9:35,7:58&control-time=28:40&control-power=170&control-bike=13&target-gain=0.6km'],
    ['power-to-weight', 'motor=0.38kW&bike=20'],
  ] as const)('%s: the example spelt out is an empty link (%s)', (calculator, query) => {
    expect(rewritten(calculator, query)).toBe('');
  });

  test('in a list, the default’s place stays empty', () => {
    expect(rewritten('side-by-side', 'bike=17kg,45lb,24kg')).toBe('bike=,45lb,');
    expect(inputOf(read('bike=,45lb,', 'side-by-side'), 'bike', 2)).toBe(24);
  });

  test('the last bit counts: a value next to the default is another value', () => {
    expect(rewritten('climb-time', 'rider=82.00000000000001')).toBe('rider=82.00000000000001kg');
  });
});

describe('written although it is the default', () => {
  test('a figure for rolling resistance of the reader’s own, because it has a narrower range', () => {
    const query = 'rolling=0.028';
    expect(rewritten('climb-time', query)).toBe(query);
    const [own, trail] = [outcomeOf('climb-time', query), outcomeOf('climb-time', '')].map((one) =>
      resultOf(one, 'time'),
    );
    expect(own?.si).toBe(trail?.si);
    expect((own?.high ?? 0) - (own?.low ?? 0)).toBeLessThan((trail?.high ?? 0) - (trail?.low ?? 0));
  });
});

describe('versions', () => {
  test('a link without v and one with v=1 are the same', () => {
    expect(outcomeOf('climb-time', 'rider=70&v=1')).toEqual(outcomeOf('climb-time', 'rider=70'));
    expect(rewritten('climb-time', 'rider=70&v=1')).toBe('rider=70kg');
  });

  test('a version from the future is read as version 1, with a sentence', () => {
    const scenario = read('rider=70&v=2');
    expect(inputOf(scenario, 'rider')).toBe(70);
    expect(scenario.notes[0]).toContain('version “2”');
  });
});

describe('what cannot be used', () => {
  test.each([
    ['rider=heavy', 'heavy', '82'],
    ['rider=800kg', '800kg', '82'],
    ['power=-5', '-5', '170'],
    ['distance=3m', '3m', '2.4'],
    ['limit=fast', 'fast', '25'],
  ])('%s computes with the default, keeps the text, and names the stand-in', (query, text, standIn) => {
    const scenario = read(query);
    const name = query.replace(/=.*/, '');
    expect(inputOf(scenario, name)).toBe(inputOf(exampleOf('climb-time'), name));
    expect(fieldOf(scenario, name).text).toBe(text);
    expect(fieldOf(scenario, name).problem).toMatch(new RegExp(`Until then the answer uses ${standIn}`));
    expect(outcomeOf('climb-time', query).results).toEqual(outcomeOf('climb-time', '').results);
  });

  test('a range is told in the words and units of the reader', () => {
    expect(problemsOf(read('rider=800kg'))[0]?.problem).toContain(
      'Body and kit: 800\u202fkg is outside 25 to 250\u202fkg.',
    );
  });

  test('while nonsense is typed the last valid value stays', () => {
    let scenario = exampleOf('climb-time');
    const typed = ['70', '70x', '7', ''].map((text) => {
      scenario = edit(scenario, 'rider', 0, text);
      return scenario;
    });
    expect(typed.map((one) => inputOf(one, 'rider'))).toEqual([70, 70, 70, 82]);
    expect(typed.map((one) => fieldOf(one, 'rider').problem !== undefined)).toEqual([false, true, true, false]);
    expect(typed.map(writeLink)).toEqual(['rider=70kg', 'rider=70kg', 'rider=70kg', '']);
  });

  test('an emptied field is the default, which its placeholder shows', () => {
    expect(fieldOf(edit(exampleOf('climb-time'), 'rider', 0, ''), 'rider')).toMatchObject({
      text: '',
      placeholder: '82',
    });
  });

  test('a name of more than 40 characters, and one of control characters', () => {
    expect(names(read(`name=${'x'.repeat(40)},B,C`, 'side-by-side'))[0]).toBe('x'.repeat(40));
    const long = read(`name=${'x'.repeat(41)},B,C`, 'side-by-side');
    expect(names(long)).toEqual(['Light', 'B', 'C']);
    expect(problemsOf(long)[0]?.problem).toContain('at most 40 characters');
    expect(names(read('name=a%00b%07,%0A,C', 'side-by-side'))).toEqual(['ab', 'Mid', 'C']);
  });

  test('half a character, as a cut text leaves behind, neither throws nor reaches a link', () => {
    const cut = edit(exampleOf('side-by-side'), 'name', 0, 'bike \ud83d');
    expect(writeLink(cut)).toBe('name=bike,,');
  });
});

describe('too many givens', () => {
  test('gain beats grade, with a sentence', () => {
    const both = outcomeOf('climb-time', 'gain=200m&grade=15');
    expect(resultOf(both, 'grade').si).toBe(resultOf(outcomeOf('climb-time', 'gain=200m'), 'grade').si);
    expect(both.remarks.map(({ text }) => text)).toContain(
      'Height and grade are both given: the height counts. Empty it to use the grade.',
    );
  });

  test('gain beats grade even where it is the example’s, and the link that is written says so too', () => {
    const query = 'gain=235m&grade=15';
    expect(resultOf(outcomeOf('climb-time', query), 'grade').si).toBeCloseTo(0.0984, 4);
    const again = rewritten('climb-time', query);
    expect(outcomeOf('climb-time', again)).toEqual(outcomeOf('climb-time', query));
    expect(again).toBe('gain=235m&grade=15');
  });

  test('target-gain beats target-grade when the distance is given too, in the written link as well', () => {
    for (const query of [
      'target-distance=9km&target-gain=600m',
      'target-distance=9km&target-gain=600m&target-grade=9',
    ]) {
      expect(resultOf(outcomeOf('bigger-hill', query), 'target-grade').si).toBeCloseTo(0.06682, 5);
      expect(outcomeOf('bigger-hill', rewritten('bigger-hill', query))).toEqual(outcomeOf('bigger-hill', query));
    }
    expect(outcomeOf('bigger-hill', 'target-distance=9km&target-gain=600m&target-grade=9').remarks[0]?.text).toContain(
      'all given: distance and height count',
    );
  });

  test('time beats motor of the same bike, with a sentence', () => {
    const outcome = outcomeOf('side-by-side', 'motor=300,400,500&time=12:00,,');
    expect(resultOf(outcome, 'time', 1).si).toBe(720);
    expect(resultOf(outcome, 'motor-power', 1).si).not.toBeCloseTo(300, 0);
    expect(resultOf(outcome, 'motor-power', 2).si).toBeCloseTo(400, 9);
    expect(outcome.remarks.map(({ text }) => text)).toContain(
      'Light has a measured time, which beats its motor figure.',
    );
  });

  test('a control run beats rolling, with a sentence', () => {
    const outcome = outcomeOf('bigger-hill', 'rolling=0.01');
    expect(outcome.results).toEqual(outcomeOf('bigger-hill', '').results);
    expect(outcome.remarks.map(({ text }) => text).join(' ')).toContain('your own figure is not used');
    expect(resultOf(outcomeOf('bigger-hill', 'rolling=0.01&control-time=none'), 'rolling').si).toBe(0.01);
  });
});

describe('lists', () => {
  test('splitList(text): a backslash keeps the comma or backslash after it', () => {
    expect(splitList('a,b,c')).toEqual(['a', 'b', 'c']);
    expect(splitList('a\\,b,c')).toEqual(['a,b', 'c']);
    expect(splitList('a\\\\,b')).toEqual(['a\\', 'b']);
    expect(splitList('')).toEqual(['']);
    expect(splitList(',')).toEqual(['', '']);
    expect(splitList('a\\')).toEqual(['a\\']);
  });

  test('names with commas and backslashes come through', () => {
    const typed = ['A, the first', 'back\\slash', '\\,,\\'].reduce(
      (scenario, name, column) => edit(scenario, 'name', column, name),
      exampleOf('side-by-side'),
    );
    const link = writeLink(typed);
    expect(link).toBe('name=A%5C,+the+first,back%5C%5Cslash,%5C%5C%5C,%5C,%5C%5C');
    expect(names(read(link, 'side-by-side'))).toEqual(['A, the first', 'back\\slash', '\\,,\\']);
  });

  test('the longest one counts the bikes: 2 to 6 side by side, 1 to 6 on a bigger hill', () => {
    expect(read('name=A,B,C,D,E', 'side-by-side').bikes).toBe(5);
    expect(read('bike=20,21&motor=300,400,500,600', 'side-by-side').bikes).toBe(4);
    expect(read('name=A,B', 'side-by-side').bikes).toBe(2);
    expect(read('name=A', 'side-by-side').bikes).toBe(3);
    expect(read('name=A&bike=20&time=9:00', 'bigger-hill').bikes).toBe(1);
    expect(read('', 'bigger-hill').bikes).toBe(3);
  });

  test('of more than six the first six are used, with a sentence', () => {
    const scenario = read('name=A,B,C,D,E,F,G,H', 'bigger-hill');
    expect(scenario.bikes).toBe(6);
    expect(names(scenario)).toEqual(['A', 'B', 'C', 'D', 'E', 'F']);
    expect(scenario.notes).toContain('The link has 8 bikes; the first 6 are used.');
  });

  test('one value serves all bikes', () => {
    const scenario = read('limit=20mph&bike=20,21,22,23', 'side-by-side');
    for (let column = 0; column < 4; column++) expect(inputOf(scenario, 'limit', column)).toBeCloseTo(8.9408, 12);
    expect(scenario.notes).toEqual([]);
  });

  test('a shorter list leaves defaults, with a sentence', () => {
    const scenario = read('bike=30,31&motor=300,400,500', 'side-by-side');
    expect([0, 1, 2].map((column) => inputOf(scenario, 'bike', column))).toEqual([30, 31, 24]);
    expect(scenario.notes).toEqual(['The link gives 2 values of “bike” for 3 bikes; the rest are defaults.']);
  });

  test('an empty item is the default of its column', () => {
    const scenario = read('bike=,,30&name=A,,', 'side-by-side');
    expect([0, 1, 2].map((column) => inputOf(scenario, 'bike', column))).toEqual([17, 21, 30]);
    expect(names(scenario)).toEqual(['A', 'Mid', 'Full']);
    expect(scenario.notes).toEqual([]);
  });

  test('name is written when the number differs from the example', () => {
    expect(rewritten('side-by-side', 'bike=17,21')).toBe('name=Light,Mid');
    expect(rewritten('side-by-side', 'bike=17,21,24,22')).toBe('name=Light,Mid,Full,Bike+4');
    expect(rewritten('bigger-hill', 'time=9:00')).toBe('name=Light&time=9:00');
    expect(rewritten('side-by-side', 'bike=17,21,24')).toBe('');
  });

  test('none is a motor and a limit', () => {
    const scenario = read('motor=none,400,none&limit=none', 'side-by-side');
    expect([0, 1, 2].map((column) => inputOf(scenario, 'motor', column))).toEqual([null, 400, null]);
    expect(inputOf(scenario, 'limit', 1)).toBeNull();
    expect(writeLink(scenario)).toBe('motor=none,,none&limit=none,none,none');
  });

  test('a calculator for one bike takes the first column, says so, and keeps the rest', () => {
    const query = 'bike=15kg,45lb,25kg&motor=300W,,500W';
    const scenario = read(query);
    expect(resultOf(outcomeOf('climb-time', query), 'time')).toEqual(
      resultOf(outcomeOf('climb-time', 'bike=15kg&motor=300W'), 'time'),
    );
    expect(scenario.notes).toEqual([
      'This calculator takes one bike: it uses the first of the link and keeps the rest.',
    ]);
    expect(read(writeLink(scenario), 'side-by-side').cells).toEqual(read(query, 'side-by-side').cells);
  });
});

describe('control runs', () => {
  test('control-time=none removes the example’s', () => {
    const scenario = read('control-time=none', 'bigger-hill');
    expect(scenario.controls).toBe(0);
    expect(writeLink(scenario)).toBe('control-time=none');
    expect(resultOf(outcomeOf('bigger-hill', 'control-time=none'), 'rolling').si).toBe(0.028);
    expect(read('control-power=200&control-time=NONE', 'bigger-hill').controls).toBe(0);
  });

  test('up to six, of more the first six with a sentence', () => {
    expect(read('control-time=16:43,11:18', 'bigger-hill').controls).toBe(2);
    const many = read('control-time=10:00,11:00,12:00,13:00,14:00,15:00,16:00', 'bigger-hill');
    expect(many.controls).toBe(6);
    expect(many.notes).toContain('The link has 7 control runs; the first 6 are used.');
  });

  test('a list that is written whole has times as times', () => {
    expect(rewritten('bigger-hill', 'control-power=200W,250W')).toBe(
      'control-time=28:40,22:40&control-power=200W,250W',
    );
  });

  test('none among several takes that run out, in a link and in a field', () => {
    const one = outcomeOf('bigger-hill', 'control-time=28:00&control-power=175&control-bike=13');
    const query = 'control-time=28:00,none&control-power=175,220&control-bike=13';
    expect(outcomeOf('bigger-hill', query).results).toEqual(one.results);
    expect(outcomeOf('bigger-hill', 'control-time=none,none').results).toEqual(
      outcomeOf('bigger-hill', 'control-time=none').results,
    );
    expect(rewritten('bigger-hill', query)).toContain('control-time=28:00,none');
  });

  test('control-rider is the rider where it is absent', () => {
    const query = 'rider=70kg&control-time=28:00&control-power=150';
    expect(outcomeOf('bigger-hill', `${query}&control-rider=70kg`).results).toEqual(
      outcomeOf('bigger-hill', query).results,
    );
    expect(resultOf(outcomeOf('bigger-hill', `${query}&control-rider=90kg`), 'rolling').si).not.toBe(
      resultOf(outcomeOf('bigger-hill', query), 'rolling').si,
    );
  });
});

describe('the other hill', () => {
  test('is as the measured one in everything that is not said', () => {
    const measured = 'altitude=1200&temperature=25&wind=1.5&rider=75kg&power=190W';
    const target = 'target-altitude=1200&target-temperature=25&target-wind=1.5&target-rider=75kg';
    expect(outcomeOf('bigger-hill', `${measured}&${target}`).results).toEqual(
      outcomeOf('bigger-hill', measured).results,
    );
    // a power of its own is taken as true, no reading of the same meter: the same value, another range
    const values = (query: string) =>
      outcomeOf('bigger-hill', query).results.map(({ name, bike, si }) => ({ name, bike, si }));
    expect(values(`${measured}&target-power=190W`)).toEqual(values(measured));
    const { si } = resultOf(outcomeOf('bigger-hill', measured), 'grade');
    expect(resultOf(outcomeOf('bigger-hill', measured), 'target-grade').si).toBeCloseTo(si ?? 0, 13);
  });

  test('each of its inputs changes the answer', () => {
    const before = resultOf(outcomeOf('bigger-hill', ''), 'time', 1).si;
    for (const change of [
      'target-altitude=2500',
      'target-temperature=35',
      'target-wind=3',
      'target-rider=90',
      'target-power=200',
      'target-rolling=0.05',
      'target-grade=7',
      'target-gain=700',
      'target-distance=9km',
    ])
      expect(resultOf(outcomeOf('bigger-hill', change), 'time', 1).si).not.toBe(before);
  });
});

describe('units', () => {
  test('are written only after this reader used the switch', () => {
    expect(writeLink(exampleOf('climb-time', 'us'))).toBe('');
    expect(writeLink(switchSystem(exampleOf('climb-time'), 'us'))).toBe('units=us');
    expect(writeLink(switchSystem(exampleOf('climb-time', 'us'), 'metric'))).toBe('units=metric');
    expect(rewritten('climb-time', 'units=us&rider=70')).toBe('rider=70kg&units=us');
  });

  test('go by the link, else by what was remembered, else metric', () => {
    expect(readLink('climb-time', 'units=us', 'metric').system).toBe('us');
    expect(readLink('climb-time', 'units=METRIC', 'us').system).toBe('metric');
    expect(readLink('climb-time', '', 'us').system).toBe('us');
    expect(readLink('climb-time', '').system).toBe('metric');
  });

  test('that are neither get a sentence', () => {
    const scenario = read('units=imperial');
    expect(scenario.system).toBe('metric');
    expect(scenario.notes).toEqual(['The link’s “units” is neither metric nor us.']);
  });
});

describe('versions to come', () => {
  test('a link of the first version says none; a later one is written and read with its own', () => {
    expect(readLink('climb-time', 'power=200W').version).toBe(1);
    const later = { ...readLink('climb-time', 'power=200W'), version: 2 };
    expect(writeLink(later)).toContain('v=2');
    expect(writeLink(readLink('climb-time', 'power=200W&v=1'))).toBe('power=200W');
  });
});

describe('what is counted is whole', () => {
  // “2.5 climbs” was worked out as if there were half a hill
  test.each([
    ['watt-hours', 'laps', '2.5', 'Times up this hill: “2.5” is no whole number. Write 2 or 3.'],
    ['gears-and-restart', 'ring', '32.4', 'Teeth at the crank: “32.4” is no whole number. Write 32 or 33.'],
  ] as const)('%s: %s=%s', (calculator, name, text, sentence) => {
    const linked = readLink(calculator, `${name}=${text}`);
    const typed = edit(exampleOf(calculator), name, 0, text);
    for (const scenario of [linked, typed]) {
      expect(cellOf(scenario, name)?.problem).toBe(sentence);
      expect(inputOf(scenario, name)).toBe(defaultOf(calculator, name));
    }
  });

  test('a sum that comes out whole is taken, another is not', async () => {
    expect(await evaluateText(parameterOf('laps'), '10/4', 'metric')).toMatchObject({ ok: false, reason: 'range' });
    expect(await evaluateText(parameterOf('laps'), '10/5', 'metric')).toMatchObject({ ok: true, si: 2 });
  });
});

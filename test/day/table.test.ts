import { describe, expect, test } from 'vitest';
import { columns, headingOf, readHeading } from '../../calculators/day/columns.ts';
import type { DayDocument } from '../../calculators/day/document.ts';
import { addBike, addRun, emptyDay, setText } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { readDay } from '../../calculators/day/read.ts';
import { acceptTable, readTable, type TableForm, type TableProposal, tableText } from '../../calculators/day/table.ts';
import { random } from '../random.ts';
import { randomDay, withPlainIds } from './documents.ts';

const read = (text: string, document: DayDocument = emptyDay()): TableProposal => readTable(text, document);

/** Bike name, whether assisted, and texts of each proposed run. */
function told({ runs, bikes }: TableProposal): unknown[] {
  const names = new Map(bikes.map(({ id, texts }) => [id, texts.name]));
  return runs.map(({ bike, assisted, texts }) => [names.get(bike) ?? '', assisted, texts]);
}

describe('a table out and in', () => {
  test('gives the same day, whatever was typed and however cells are separated', () => {
    for (let seed = 0; seed < 150; seed++) {
      const day = randomDay(random(seed));
      const form: TableForm = random(seed + 7).pick([
        { separator: ',', mark: false },
        { separator: ';', mark: true },
        { separator: '\t', mark: false },
      ]);
      const proposal = read(tableText(day, form));
      expect(proposal.day && withPlainIds(proposal.day), `seed ${seed}`).toEqual(withPlainIds(day));
    }
  });

  test('has a row for the day, each bike and each run, as RFC 4180 says, and no formulas', () => {
    let day = setText(addBike(emptyDay(), {}, 'a'), 'a', 'name', '=HYPERLINK("x"), "A"');
    day = setText(addRun(day, 'a', 'r'), 'r', 'wind', '-1.5');
    day = setText(day, 'r', 'note', '-2 "wet"\nroad');
    const lines = tableText(day, { separator: ',', mark: true }).split('\r\n');
    expect(lines).toEqual([
      '\ufeffRow,Bike no.,Bike,Assisted,Counted,Time,Rider power (W),Head wind (m/s),Note,Units,Comparing',
      'day,,,,,,,,,metric,bikes',
      `bike,1,"'=HYPERLINK(""x""), ""A""",,,,,,,,`,
      `run,1,"'=HYPERLINK(""x""), ""A""",yes,yes,,,-1.5,"'-2 ""wet""\nroad",,`,
      '',
    ]);
  });

  test('who rode and where stand in the row of the day, and nobody else’s column is taken for them', () => {
    const day = setText(setText(emptyDay(), 'setup', 'tester', 'A. B.'), 'setup', 'place', 'Invented valley');
    const text = tableText(day);
    expect(text.split('\r\n')[0]).toContain(',Day: Place,Day: Who rode');
    expect(read(text).day?.setup).toEqual({ tester: 'A. B.', place: 'Invented valley' });
    for (const heading of ['Rider', 'Rider power', 'Start', 'Name', 'Bike'])
      expect(readHeading(heading)?.target ?? '').not.toMatch(/^setup/);
  });

  test('every heading is understood again, in both systems, and no two are alike', () => {
    for (const system of ['metric', 'us'] as const) {
      for (const column of columns) expect(readHeading(headingOf(column, system))?.target).toBe(column.target);
      expect(new Set(columns.map((column) => headingOf(column, system))).size).toBe(columns.length);
    }
  });

  test('a whole day added to another one keeps its values in the other’s units', () => {
    const proposal = read(tableText(exampleDay()), emptyDay('us'));
    const both = acceptTable(emptyDay('us'), proposal);
    expect(both.runs).toHaveLength(11);
    // 24.7 kg is 54.4542 lb
    expect(both.bikes[3]?.texts.bike).toBe('54.4542');
  });
});

describe('tables of others', () => {
  test('headings in the reader’s words, with units, decimal commas and semicolons', () => {
    const proposal = read(
      '\ufeffBike;TIME;Watts;Battery before %;battery_after_%;Bike weight (lb);Comment;Tyre colour\r\nA;7:22;203,5;98;91;37;"dry; fast";red\r\nB;5:57;199;90 %;;45;;\r\n',
    );
    expect(proposal.problems).toEqual([]);
    expect(proposal.ignored).toEqual(['Tyre colour']);
    expect(proposal.bikes.map(({ texts }) => texts)).toEqual([
      { name: 'A', bike: '37 lb' },
      { name: 'B', bike: '45 lb' },
    ]);
    expect(told(proposal)).toEqual([
      ['A', true, { time: '7:22', power: '203,5', start: '98', end: '91', note: 'dry; fast' }],
      ['B', true, { time: '5:57', power: '199', start: '90 %' }],
    ]);
  });

  test('cells pasted from a spreadsheet, rows of others above the headings', () => {
    const proposal = read('Our hill\t\t\r\n\r\nRun #\tBike\tTime (s)\r\n1\tControl\t1003\r\n2\tA\t442\r\n');
    expect(proposal.problems).toEqual(['Row 1 stands above the headings and is not used: “Our hill”.']);
    expect(told(proposal)).toEqual([
      ['Control', false, { time: '1003 s' }],
      ['A', true, { time: '442 s' }],
    ]);
    expect(proposal.ignored).toEqual(['Run #']);
  });

  test('bikes that the day has are met again, whatever their case; others are proposed', () => {
    const day = addBike(emptyDay(), { name: 'Light' }, 'a');
    const proposal = read('bike,time\nLIGHT ,7:22\nMid,5:57\n', day);
    expect(proposal.runs[0]?.bike).toBe('a');
    expect(proposal.bikes.map(({ texts }) => texts.name)).toEqual(['Mid']);
    const both = acceptTable(day, proposal);
    expect(both.bikes).toHaveLength(2);
    expect(both.runs.map(({ bike }) => bike)).toEqual(['a', both.bikes[1]?.id]);
  });

  test('control runs by their column, by their name, or by a bike without a motor', () => {
    const proposal = read(
      'Bike,Assisted,Motor,Time\nA,no,300,16:43\nA,yes,300,7:22\nB (motor off),,,16:00\nC,,none,15:00\nD,,450 W,5:57\n',
    );
    expect(proposal.runs.map(({ assisted }) => assisted)).toEqual([false, true, false, false, true]);
  });

  test('a word that is neither yes nor no is named, and counts as yes', () => {
    const proposal = read('Bike,Assisted,Counted,Time\nA,maybe,ok,7:22\nA,No,,16:43\nA,on,half,7:25\nA,,,7:20\n');
    expect(proposal.problems).toEqual([
      'Row 2, “Assisted”: “maybe” is neither yes nor no, and is taken as yes.',
      'Row 4, “Counted”: “half” is neither yes nor no, and is taken as yes.',
    ]);
    expect(proposal.runs.map(({ assisted, counted }) => [assisted, counted])).toEqual([
      [true, true],
      [false, true],
      [true, true],
      [true, true],
    ]);
  });

  test('a heading that is a unit gives it to its plain numbers', () => {
    expect(read('Bike,Time,mph\nA,7:05,10\n').runs[0]?.texts.speed).toBe('10 mph');
  });

  test('“Motor” over on and off says which runs are control runs; over watts, what the maker claims', () => {
    const switched = read('bike,motor,time\nOld,off,16:43\nA,on,7:22\nB,,5:57\n');
    expect(switched.runs.map(({ assisted }) => assisted)).toEqual([false, true, true]);
    expect(switched.bikes.map(({ texts }) => texts)).toEqual([{ name: 'Old' }, { name: 'A' }, { name: 'B' }]);
    const claimed = read('bike,motor,time\nA,300,7:22\n');
    expect(claimed.bikes.map(({ texts }) => texts.motor)).toEqual(['300']);
  });

  test('without headings: times, names and one column of power are known by what is in them', () => {
    const proposal = read('A,7:22,203,dry\nB,5:57,199,\n');
    expect(told(proposal)).toEqual([
      ['A', true, { time: '7:22', power: '203', note: 'dry' }],
      ['B', true, { time: '5:57', power: '199' }],
    ]);
    const unclear = read('A,7:22,203,80\nB,5:57,199,82\n');
    expect(unclear.columns.map(({ target }) => target)).toEqual(['bike.name', 'run.time', undefined, undefined]);
    expect(unclear.ignored).toEqual(['Column 3', 'Column 4']);
    const assigned = readTable('A,7:22,203,80\nB,5:57,199,82\n', emptyDay(), { 2: 'run.power', 3: 'run.cadence' });
    expect(told(assigned)[0]).toEqual(['A', true, { time: '7:22', power: '203', cadence: '80' }]);
  });

  test('minutes that a spreadsheet took for hours', () => {
    const hours = read('Bike,Time\nA,07:22:00\nB,2:57:00\n');
    expect(hours.runs.map(({ texts }) => texts.time)).toEqual(['7:22', '2:57']);
    expect(hours.problems[0]).toContain('“07:22:00” is read as 7:22');
    // a long climb timed to the minute is left as it is, with a question
    const long = read('Bike,Time\nA,1:05:00\nB,1:07:00\n');
    expect(long.runs.map(({ texts }) => texts.time)).toEqual(['1:05:00', '1:07:00']);
    expect(long.problems[0]).toContain('if “1:05:00” is 1:05, write the times as text');
    // a table of this site that went through a spreadsheet
    const saved = tableText(exampleDay()).replace(/,(\d+:\d\d),/g, ',$1:00,');
    expect(read(saved).day?.runs.map(({ texts }) => texts.time)).toEqual(
      exampleDay().runs.map(({ texts }) => texts.time),
    );
    // one with seconds shows that hours are meant
    expect(read('Bike,Time\nA,1:22:00\nB,1:57:12\n').runs[0]?.texts.time).toBe('1:22:00');
    expect(read('Bike,Time\nA,12:07:22 AM\n').runs[0]?.texts.time).toBe('0:07:22');
  });

  test('what cannot be read is named by row and column, and kept', () => {
    const proposal = read('Bike,Time,Power\nA,7.22,203\nB,soon,9000\n');
    expect(proposal.problems).toEqual([
      'Row 2, “Time”: “7.22”: minutes and seconds, or minutes with decimals? Write 7:22 or 7:13.',
      'Row 3, “Time”: Time: “soon” cannot be read. Write 7:22, 1:05:30 or 16 min 43 s.',
      expect.stringContaining('Row 3, “Power”: Rider power: 9000\u202fW is outside'),
    ]);
    expect(told(proposal)[1]).toEqual(['B', true, { time: 'soon', power: '9000' }]);
  });

  test('a decimal comma among commas leaves the row out, and says so', () => {
    const proposal = read('Bike,Time,Power\nA,7:22,203,5\nB,5:57,199\n');
    expect(proposal.runs).toHaveLength(1);
    expect(proposal.problems[0]).toContain('Row 2 has 4 cells and the headings are 3');
  });

  test('a bike that is said twice to be different', () => {
    const proposal = read('Bike,Mass,Time\nA,17 kg,7:22\nA,18 kg,7:20\n');
    expect(proposal.bikes[0]?.texts).toEqual({ name: 'A', bike: '17 kg' });
    expect(proposal.problems).toEqual([
      'Row 3 says “18 kg” of a bike, and an earlier row “17 kg”: the earlier counts.',
    ]);
  });

  test('a mark that is opened and never closed does not swallow the rest', () => {
    const proposal = read('Bike,Time,Note\nA,7:22,"wet\nB,5:57,dry\n');
    expect(proposal.runs).toHaveLength(2);
    expect(proposal.problems[0]).toContain('never closed');
  });

  test('10,000 rows: as many as there is room for, and a sentence', () => {
    const rows = Array.from({ length: 10_000 }, (_, i) => `Bike ${i % 5},${5 + (i % 3)}:2${i % 10},20${i % 10}`);
    const proposal = read(`Bike,Time,Power\n${rows.join('\n')}\n`);
    expect(proposal.runs).toHaveLength(500);
    expect(proposal.problems).toEqual([
      'The table has 10000 runs, and there is room for 500: the first 500 are taken.',
    ]);
    expect(acceptTable(emptyDay(), proposal).bikes).toHaveLength(5);
  });

  test('nonsense gets a sentence and adds nothing', () => {
    const messages = [
      '',
      ' \n ',
      'hello',
      'a,b\nc,d',
      '<html><body>',
      '{"a":1}',
      '\0\x01\x02\x03\x04\x05PK',
      ',,,\n,,,',
      '"',
    ];
    for (const text of messages) {
      const proposal = read(text);
      expect(proposal.runs, text).toEqual([]);
      expect(proposal.problems.length, text).toBeGreaterThan(0);
    }
    const next = random(5);
    for (let i = 0; i < 300; i++) {
      const letters = Array.from({ length: next.whole(1, 60) }, () =>
        next.pick([...',;\t\n\r"\'=:0123456789 aTime%\u00e9\ufeff']),
      );
      const proposal = read(letters.join(''));
      const document = acceptTable(emptyDay(), proposal);
      expect(() => readDay(document)).not.toThrow();
    }
    expect(read('x'.repeat(6_000_000)).problems[0]).toContain('too long');
  });

  test('many unreadable cells are counted, not listed', () => {
    const rows = Array.from({ length: 40 }, () => 'A,soon');
    const { problems } = read(`Bike,Time\n${rows.join('\n')}`);
    expect(problems).toHaveLength(13);
    expect(problems.at(-1)).toBe('And 28 more of the kind.');
  });
});

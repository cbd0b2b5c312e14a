import { describe, expect, test } from 'vitest';
import {
  asWhole,
  edit,
  exampleOf,
  fieldOf,
  inputOf,
  isUnused,
  problemsOf,
  readLink,
  switchSystem,
  valueText,
  writeLink,
} from '../../calculators/scenario/index.ts';
import { profileFromText, tidyProfile, writeProfile } from '../../calculators/scenario/profile-text.ts';
import '../../calculators/scenario/vocabulary.ts';
import { hillOf, targetHillOf } from '../../calculators/scenario/setting.ts';
import { random } from '../random.ts';
import { anyPieces } from './queries.ts';

const problem = (text: string): string => {
  const tidied = tidyProfile(text);
  return 'problem' in tidied ? tidied.problem.replaceAll('\u202f', ' ') : 'none';
};
const canonical = (text: string): string => {
  const tidied = tidyProfile(text);
  return 'canonical' in tidied ? tidied.canonical : tidied.problem;
};

describe('a hill in pieces', () => {
  test('is the length and rise of each piece, added up from the bottom', () => {
    // 120 + 85 = 205, + 60.5 = 265.5; 9.6 + 12.1 = 21.7, − 1.2 = 20.5
    expect(profileFromText('1:120,9.6:85,12.1:60.5,-1.2')).toEqual({
      distance: Float64Array.of(0, 120, 205, 265.5),
      height: Float64Array.of(0, 9.6, 21.7, 20.5),
    });
  });

  test('may be written with spaces, signs and zeros; the canonical text is the shortest', () => {
    expect(canonical(' 1 : 120.0, +9.60 : 085,−3.0 :')).toBe('1:120,9.6:85,-3');
    expect(canonical('1:120,-0:85.,.5')).toBe('1:120,0:85,0.5');
    // what is finer than 0.1 m does not count
    expect(canonical('1:120.04,9.56')).toBe('1:120,9.6');
  });

  test('that was read and written is as it was, to the last digit', () => {
    const r = random(51);
    for (let i = 0; i < 500; i++) {
      const text = canonical(anyPieces(r));
      expect(writeProfile(profileFromText(text))).toBe(text);
      expect(canonical(text)).toBe(text);
    }
  });

  test('of any road keeps every point to 0.05 m, however many there are', () => {
    const r = random(52);
    const distance = new Float64Array(61);
    const height = new Float64Array(61);
    for (let i = 1; i <= 60; i++) {
      distance[i] = (distance[i - 1] ?? 0) + r.between(20, 300);
      height[i] = (height[i - 1] ?? 0) + r.between(-2, 9);
    }
    const again = profileFromText(writeProfile({ distance, height }));
    for (const [column, back] of [
      [distance, again.distance],
      [height, again.height],
    ] as const) {
      expect(back).toHaveLength(61);
      for (const [i, value] of column.entries()) expect(Math.abs((back[i] ?? 0) - value)).toBeLessThan(0.05 + 1e-9);
    }
  });

  test('a road of a thousand points on 0.05 m each leaves out what is too short to write', () => {
    const distance = Float64Array.from({ length: 1001 }, (_, i) => 0.05 * i);
    const height = distance.map((along) => 0.1 * along);
    const { distance: along, height: up } = profileFromText(writeProfile({ distance, height }));
    expect([along.at(-1), up.at(-1)]).toEqual([50, 5]);
    expect(along.every((each, i) => i === 0 || each > (along[i - 1] ?? 0))).toBe(true);
  });

  test.each([
    ['abc', 'A hill in pieces is written 1:120,9.6:85,12.1 (1, then length and rise of each piece in metres).'],
    ['7:120,9.6', 'This page reads version 1 of a hill in pieces, not “7”.'],
    ['1:120,9.6:85', 'Piece 2 is “85”: write its length and its rise in metres, such as 120,9.6.'],
    ['1:120,9.6:85,steep', 'Piece 2 is “85,steep”: write its length and its rise in metres, such as 120,9.6.'],
    ['1:1,2,3', 'Piece 1 is “1,2,3”: write its length and its rise in metres, such as 120,9.6.'],
    ['1:1e3,5', 'Piece 1 is “1e3,5”: write its length and its rise in metres, such as 120,9.6.'],
    ['1:99999999,5', 'Piece 1 is “99999999,5”: write its length and its rise in metres, such as 120,9.6.'],
    ['1:0,0', 'Piece 1 is 0 m long: a piece needs a length above zero.'],
    ['1:100,5:-20,1', 'Piece 2 is −20 m long: a piece needs a length above zero.'],
    ['1:100,5:50,50', 'Piece 2 rises 50 m on 50 m of road: the height must be smaller.'],
    // 60 % is 0.5145 m up for each metre of road: sin(atan 0.6)
    ['1:100,51.5', 'Piece 1 rises 51.5 m on 100 m of road: that is steeper than 60 %.'],
    ['1:100,51.4', 'none'],
    ['1:100,-51.5', 'Piece 1 falls 51.5 m on 100 m of road: that is steeper than 60 %.'],
    ['1:10,1:9.9,0', 'All pieces together are 19.9 m long: a hill needs at least 20 m.'],
    ['1:10,1:10,0', 'none'],
    ['1:200000,1', 'none'],
    ['1:200000,1:0.1,0', 'All pieces together are 200 000.1 m long: at most 200 000 m can be used.'],
    ['1:30000,9000', 'none'],
    ['1:30000,9000.1', 'Piece 1 ends 9 000.1 m above the bottom: at most 9 000 m can be used.'],
    ['1:30000,-9000.1', 'Piece 1 ends 9 000.1 m below the bottom: at most 9 000 m can be used.'],
    [`1${':20,1'.repeat(60)}`, 'none'],
    [`1${':20,1'.repeat(61)}`, 'A hill in pieces has at most 60 of them; this one has 61.'],
  ])('%s: %s', (text, sentence) => {
    expect(problem(text)).toBe(sentence);
  });
});

describe('as an input', () => {
  const HILL = '1:120,9.6:85,12.1';

  test('it stands in the link as it is, and is read however a mail program escapes it', () => {
    const scenario = edit(exampleOf('side-by-side'), 'profile', 0, ' 1:120,9.6 : 85,12.10');
    expect(writeLink(scenario)).toBe(`profile=${HILL}`);
    expect(inputOf(readLink('side-by-side', `profile=${encodeURIComponent(HILL)}`), 'profile')).toBe(HILL);
  });

  test('it counts in place of distance, height and grade, whose fields are empty, and says so to whoever gave them', () => {
    const alone = readLink('side-by-side', `profile=${HILL}`);
    const hill = hillOf(alone);
    expect(hill).toMatchObject({ ok: true, value: { distance: 205, gain: 21.7 } });
    // a field left empty looked as if the answer were for no hill
    expect(hill.notes).toMatchObject([{ tone: 'plain', field: 'distance', pieces: 'profile' }]);
    expect(hill.notes[0]?.text).toContain('counts: 205\u202fm, 22\u202fm up, in 2 pieces.');
    for (const name of ['distance', 'gain']) expect(fieldOf(alone, name).text).toBe('');
    for (const name of ['distance', 'gain', 'grade']) expect(isUnused(alone, name)).toBe(true);
    const both = readLink('side-by-side', `profile=${HILL}&gain=300m`);
    expect(hillOf(both)).toMatchObject({ ok: true, value: { gain: 21.7 }, notes: [{ field: 'gain' }] });
    expect(fieldOf(both, 'gain').text).toBe('300 m');
    expect(isUnused(both, 'gain')).toBe(true);
    expect(isUnused(readLink('side-by-side', ''), 'gain')).toBe(false);
  });

  test('of the other hill it does the same for the other hill', () => {
    const scenario = readLink('bigger-hill', `target-profile=${HILL}`);
    const measured = hillOf(scenario);
    if (!measured.ok) throw new Error(measured.problem);
    expect(measured.value.distance).toBe(2400);
    expect(targetHillOf(scenario, measured.value)).toMatchObject({ ok: true, value: { distance: 205, gain: 21.7 } });
    expect(fieldOf(scenario, 'target-gain').text).toBe('');
    expect(isUnused(scenario, 'target-gain')).toBe(true);
  });

  test('is in metres whatever the units, and in words has those of the reader', () => {
    const us = switchSystem(readLink('side-by-side', `profile=${HILL}`), 'us');
    expect(writeLink(us)).toBe(`profile=${HILL}&units=us`);
    expect(valueText(us, 'profile').replaceAll('\u202f', ' ')).toBe('0.13 mi, 71 ft up, in 2 pieces');
    const down = readLink('side-by-side', 'profile=1:3210,-264');
    expect(valueText(down, 'profile').replaceAll('\u202f', ' ')).toBe('3.21 km, 264 m down, in one piece');
  });

  test('that cannot be read keeps its text and says which piece', () => {
    const scenario = readLink('your-hill', 'profile=1:120,9.6:85,abc');
    expect(fieldOf(scenario, 'profile').text).toBe('1:120,9.6:85,abc');
    expect(problemsOf(scenario)[0]?.problem.replaceAll('\u202f', ' ')).toBe(
      'Piece 2 is “85,abc”: write its length and its rise in metres, such as 120,9.6. Until then the answer uses 3.04 km, 260 m up, in 17 pieces.',
    );
    expect(problemsOf(readLink('side-by-side', 'profile=abc'))[0]?.problem).not.toContain('Until then');
  });

  test('40 pieces and six bikes with long names stay below 1,500 characters', () => {
    const pieces = Array.from({ length: 40 }, (_, i) => `${(123.4 + i).toFixed(1)},${(12.3 + i / 10).toFixed(1)}`);
    const name = (i: number): string => `Bike number ${i}, a long name of 40 letters ${i}`.slice(0, 40);
    const list = (of: (i: number) => string | number): string =>
      encodeURIComponent([1, 2, 3, 4, 5, 6].map((i) => String(of(i)).replace(',', '\\,')).join(','));
    const query = [
      `profile=1:${pieces.join(':')}`,
      'rider=81.5kg&power=215W&endurance=240W&endurance-work=18kJ&cadence=72rpm&top-speed=35km/h',
      `name=${list(name)}&bike=${list((i) => `${17 + i / 10}kg`)}&motor=${list((i) => `${300 + i}W`)}`,
      `torque=${list((i) => `${60 + i}Nm`)}&support=${list((i) => 300 + i)}&battery=${list((i) => `${500 + i}Wh`)}`,
      `continuous=${list((i) => `${250 + i}W`)}&limit=${list(() => '25.5km/h')}`,
      'ring=34&sprocket=51&wheel=355mm&warm-up=12:30&reserve=15&rolling=0.0255&drag=0.41m2&drive=95.5&unit=79',
      'altitude=1234m&temperature=22.5C&wind=1.5m/s&units=metric',
    ].join('&');
    const scenario = readLink('your-hill', query);
    expect(problemsOf(scenario)).toEqual([]);
    const link = writeLink(scenario);
    expect(`https://example.org/uphill-measured/calculators/your-hill/?${link}`.length).toBeLessThan(1500);
    expect(writeLink(readLink('your-hill', link))).toBe(link);
  });
});

describe('asWhole', () => {
  test('puts length and height of the pieces in their place', () => {
    const whole = asWhole(readLink('keep-up', 'profile=1:120,9.6:85,12.1&rider=90kg'), 'profile');
    expect(writeLink(whole)).toBe('distance=205m&gain=21.7m&rider=90kg');
    expect(['distance', 'gain'].map((name) => fieldOf(whole, name).text)).toEqual(['0.205', '21.7']);
  });

  test('a hill that falls, by its grade', () => {
    const whole = asWhole(readLink('side-by-side', 'profile=1:500,-30'), 'profile');
    // 30 m down on 500 m: √(500² − 30²) = 499.09…
    expect(inputOf(whole, 'grade')).toBeCloseTo(-30 / 499.0991885386, 10);
    expect(hillOf(whole)).toMatchObject({ ok: true, value: { distance: 500 }, notes: [] });
  });

  test('keeps what was said before, and knows the other hill', () => {
    const whole = asWhole(readLink('keep-up', 'profile=1:120,9.6&gain=5m'), 'profile');
    expect(writeLink(whole)).toBe('distance=120m&gain=5m');
    const other = asWhole(readLink('bigger-hill', 'target-profile=1:120,9.6'), 'target-profile');
    expect(writeLink(other)).toBe('target-distance=120m&target-gain=9.6m');
    const plain = readLink('keep-up', '');
    expect(asWhole(plain, 'profile')).toBe(plain);
  });
});

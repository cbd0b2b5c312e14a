import { globSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FADE_WIDTH } from '../../calculators/model/index.ts';
import { defaultOf } from '../../calculators/scenario/vocabulary.ts';
import { type QuantityProps, quantityText } from '../../site/components/quantity.ts';

const folder = new URL('../../content/', import.meta.url);
const pages = globSync('**/*.mdx', { cwd: folder.pathname }).map((path) => ({
  path,
  text: readFileSync(new URL(path, folder), 'utf8'),
}));
const plain = (text: string): string => text.replaceAll('\u202f', ' ');

/** What a writer typed as prose: without imports, comments, code, formulas, components and expressions. */
function proseOf(page: string): string {
  return page
    .replace(/^(?:import|export)\b[\s\S]*?;$/gm, '')
    .replace(/\{\/\*[\s\S]*?\*\/\}/g, '')
    .replace(/`[^`\n]*`|\$[^$\n]+\$/g, ' ')
    .replace(/<\/?[A-Za-z](?:"[^"]*"|\{(?:[^{}]|\{[^{}]*\})*\}|[^>"{])*>/g, ' ')
    .replace(/\{(?:[^{}]|\{[^{}]*\})*\}/g, ' ');
}

const number = String.raw`[−-]?\d[\d .]*`;
const unit = 'ft|mi|mph|lb-ft|lbf|lb|Wh/km|Wh/mi|km/h|km|m/s|mm|m|in|kg|N·m|N|°C|°F';
/** A quantity, then in brackets the same in another unit: "235 m (771 ft)", "3 m/s (about 7 mph)", "20 or 28 mph (32 or 45 km/h)". */
const conversion = new RegExp(
  String.raw`\d\s?(?:${unit}) \((?:(?:about|some|or) )?${number}(?:(?: to | or )${number})?\s?(?:${unit})\)`,
  'g',
);
/** A number and its unit with an ordinary space between them, where a line could break. */
const breakable =
  /\d (?:N·m|lb-ft|lbf|km\/h|km|kg|m\/s|mph|mAh|Ah|Wh\/km|Wh\/mi|Wh|kJ|W|V|mm|rpm|hPa|m²|%|°C|°F|ft|mi|lb|m|s|N)(?![\w·/])/g;

describe('no conversion is typed', () => {
  test('the search for one finds what writers type', () => {
    const typed =
      '235 m (771 ft), 25 km/h (15.5 mph), 1 000 m (3 281 ft), 3 m/s (about 7 mph), ±0.3 kg (0.7 lb), 30 to 50 N·m (22 to 37 lb-ft), ' +
      '20 or 28 mph (32 or 45 km/h), −5 000 to 11 000 m (−16 000 to 36 000 ft), 600 m (about 1 970 ft), 32 °C (90 °F), ' +
      '165 mm (6.5 in), 350 N (79 lbf), 3.73 Wh/km (6.01 Wh/mi)';
    expect(typed.match(conversion)).toHaveLength(13);
    expect('<Quantity of="235 m (771 ft)" /> of `1 km (0.6 mi)` in 2.4 km (invented), 400 W (384 to 413 W)').toSatisfy(
      (text: string) => proseOf(text).match(conversion) === null,
    );
  });

  // No page is excepted: <Quantity of="…" digits={…} /> prints any rounding that a page may want.
  test.each(pages)('$path', ({ text }) => {
    expect(plain(proseOf(text)).match(conversion) ?? []).toEqual([]);
  });
});

test.each(pages)('$path keeps each number and its unit on one line', ({ text }) => {
  expect(proseOf(text).match(breakable) ?? []).toEqual([]);
});

describe('<Quantity>', () => {
  // Conversions by the factors of NIST SP 811 (0.3048 m, 0.45359237 kg, 1609.344 m, 1.3558179483 N·m), rounded by hand.
  test.each<[QuantityProps, string]>([
    [{ of: '235 m' }, '235 m (771 ft)'], // 771.0
    [{ of: '20 m', kind: 'distance' }, '20 m (66 ft)'], // 65.6
    [{ of: '1 000 m' }, '1 000 m (3 281 ft)'], // 3280.8
    [{ of: '2.4 km' }, '2.4 km (1.5 mi)'], // 1.491
    [{ of: '1 km' }, '1 km (0.62 mi)'], // 0.6214
    [{ of: '82 kg' }, '82 kg (181 lb)'], // 180.8
    [{ of: '1 kg' }, '1 kg (2.2 lb)'], // 2.205
    [{ of: '0.3 kg' }, '0.3 kg (0.7 lb)'], // 0.661
    [{ of: '25 km/h' }, '25 km/h (15.5 mph)'], // 15.53
    [{ of: '15.5 mph' }, '15.5 mph (25 km/h)'], // 24.94
    [{ of: '20 mph' }, '20 mph (32 km/h)'], // 32.19
    [{ of: '170 lb' }, '170 lb (77 kg)'], // 77.11
    [{ of: '1 m/s' }, '1 m/s (2.2 mph)'], // 2.237
    [{ of: '35 N·m' }, '35 N·m (26 lb-ft)'], // 25.8
    [{ of: '30 to 50 N·m' }, '30 to 50 N·m (22 to 37 lb-ft)'], // 22.1, 36.9
    [{ of: '165 mm' }, '165 mm (6.5 in)'], // 6.496
    [{ of: '27.5 in' }, '27.5 in (699 mm)'], // 698.5
    [{ of: '350 N' }, '350 N (79 lbf)'], // 78.68
    [{ of: '20 Wh/mi' }, '20 Wh/mi (12.4 Wh/km)'], // 12.43
    [{ of: '5 Wh/km' }, '5 Wh/km (8 Wh/mi)'], // 8.047
    [{ of: '7 to 11 m/s', digits: 0 }, '7 to 11 m/s (16 to 25 mph)'], // 15.7, 24.6
    [{ of: '−5 000 to 11 000 m' }, '−5 000 to 11 000 m (−16 404 to 36 089 ft)'], // 16404.2, 36089.2
    [{ of: '2 °C', digits: 0 }, '2 °C (36 °F)'], // 35.6
    [{ of: '1 lb-ft', units: 'metric', digits: 2 }, '1.36 N·m'],
    [{ si: FADE_WIDTH, kind: 'speed' }, '2 km/h (1.2 mph)'], // 1.243
    [{ si: 0.02, kind: 'percent' }, '2 %'],
    [{ default: 'drag', within: 0.1, digits: 2 }, '0.45 ± 0.10 m²'],
    [{ default: 'control-time', calculator: 'bigger-hill' }, '28:40'],
    [{ default: 'name', calculator: 'bigger-hill', bike: 2 }, 'Mid'],
  ])('%o is “%s”', (props, text) => {
    expect(plain(quantityText(props))).toBe(text);
  });

  test('a default is the schema’s', () => {
    expect(plain(quantityText({ default: 'rider' }))).toBe(`${defaultOf('climb-time', 'rider')} kg (181 lb)`);
  });

  test('number and unit stay on one line', () => {
    expect(quantityText({ of: '1 000 m' })).toBe('1\u202f000\u202fm (3\u202f281\u202fft)');
  });

  test.each<[QuantityProps, RegExp]>([
    [{ of: '5 furlongs' }, /no quantity whose unit/],
    [{ of: 'm' }, /no quantity whose unit|holds no number/],
    [{ of: '170 W' }, /no quantity whose unit has a counterpart/],
    [{ default: 'target-grade', calculator: 'bigger-hill' }, /has no default/],
    [{ si: 1 }, /needs `of`/],
  ])('%o stops the build', (props, message) => {
    expect(() => quantityText(props)).toThrow(message);
  });
});

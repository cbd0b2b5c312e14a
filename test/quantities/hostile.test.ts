import { expect, test } from 'vitest';
import { evaluateExpression } from '../../calculators/quantities/expression.ts';
import { kinds, type Parsed, parseQuantity } from '../../calculators/quantities/index.ts';
import { field, numericKinds, randomSource } from './help.ts';

const pieces = [
  ...'0123456789.,:;+-*/^()[]{}%°\'"eEOolIxX=!?&|<>~#$@_\\ \t\n',
  ...'−–—′″’“²³½٣७Ⅷ①∞π€√×÷·⋅∙º\u00a0\u202f\u200b\u2060\ufeff\u0000\ud800',
  ...[
    'km',
    'mi',
    'ft',
    'kg',
    'lb',
    'lb-ft',
    'N·m',
    'W',
    'Wh',
    'kJ',
    'mm',
    'V',
    'Ah',
    'lbf',
    'Wh/km',
    'in',
    'none',
    'NaN',
    'Infinity',
    '-Infinity',
    'null',
  ],
  ...[
    'undefined',
    '1e999',
    '1e-999',
    '0x1F',
    '1_000',
    'constructor',
    '__proto__',
    'toString',
    '😀',
    'é',
    'min',
    'h',
    's',
  ],
];

/** What must hold of any answer to any text. */
function sound(text: string, parsed: Parsed): void {
  if (parsed.ok) {
    if (parsed.si !== null && !Number.isFinite(parsed.si)) throw new Error(`${JSON.stringify(text)} gave ${parsed.si}`);
    if (Object.is(parsed.si, -0)) throw new Error(`${JSON.stringify(text)} gave −0`);
    if (/NaN|Infinity|undefined/.test(parsed.canonical)) throw new Error(`${text}: ${parsed.canonical}`);
  } else if (!/^.+[.]$/s.test(parsed.message)) throw new Error(`${JSON.stringify(text)} has no sentence`);
}

test('20,000 hostile texts, read as every kind in fields and links, give a finite value or a sentence', () => {
  const random = randomSource(1);
  let read = 0;
  for (let i = 0; i < 20_000; i++) {
    let text = '';
    for (let n = 1 + Math.floor(random() * 7); n > 0; n--) text += pieces[Math.floor(random() * pieces.length)];
    if (i % 3 === 0) text = `${Math.floor(random() * 300)}${text}`;
    for (const kind of numericKinds) {
      const where = i % 2 ? 'link' : 'field';
      const parsed = parseQuantity(text, kind, {
        unit: kinds[kind].us,
        where,
        allowNone: i % 5 === 0,
        ...(i % 7 ? {} : { min: -5, max: 5000 }),
      });
      sound(text, parsed);
      if (parsed.ok) {
        read++;
        const again = parseQuantity(parsed.canonical, kind, {
          unit: kinds[kind].plain,
          where: 'link',
          allowNone: true,
        });
        if (!again.ok || again.si !== parsed.si) {
          throw new Error(
            `${JSON.stringify(text)} is ${parsed.canonical} as ${kind}, which reads ${JSON.stringify(again)}`,
          );
        }
      }
    }
  }
  // The mill must grind corn too: texts that can be read are among them.
  expect(read).toBeGreaterThan(5000);
}, 60_000);

test('expressions: the same for 4,000 texts', () => {
  const random = randomSource(2);
  for (let i = 0; i < 4000; i++) {
    let text = `${Math.floor(random() * 30)}`;
    for (let n = 1 + Math.floor(random() * 7); n > 0; n--) text += pieces[Math.floor(random() * pieces.length)];
    const kind = numericKinds[i % numericKinds.length] ?? 'mass';
    sound(text, evaluateExpression(text, kind, { unit: kinds[kind].metric, where: 'field' }));
  }
}, 60_000);

test.each([
  'NaN',
  'Infinity',
  '-Infinity',
  '1e999',
  '٣',
  '½',
  '5½',
  '1²',
  'Ⅷ',
  '0x10',
  '1_000',
  'null',
  '__proto__',
  'constructor',
  '5 constructor',
  '--5',
  '+-5',
  '5-',
  '5 5 5',
  '1e',
  'e5',
  '%',
  '.',
  ',',
  '-.',
  '=5',
  '5=',
  '<b>5</b>',
  '5\u0000',
  '😀',
])('nonsense: %s is no weight', (text) => {
  const parsed = field(text, 'mass');
  expect(parsed.ok).toBe(false);
  if (!parsed.ok) expect(parsed.message).toMatch(/\.$/);
});

test('a very long text costs nothing', () => {
  const started = performance.now();
  for (const text of ['1'.repeat(1e5), '1,'.repeat(1e5), ' '.repeat(1e5), `${'1 '.repeat(1e5)}kg`, 'a'.repeat(1e5)]) {
    for (const kind of numericKinds) sound(text, field(text, kind, { min: 0, max: 1 }));
  }
  expect(performance.now() - started).toBeLessThan(2000);
});

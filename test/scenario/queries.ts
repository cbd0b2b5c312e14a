import { fromSi, kinds } from '../../calculators/quantities/index.ts';
import {
  type CalculatorName,
  calculators,
  namesOf,
  type Parameter,
  parameterOf,
  parameters,
} from '../../calculators/scenario/vocabulary.ts';
import type { Random } from '../random.ts';

/** What a link may hold for a parameter, with any unit of its kind and within its range. */
export function anyText(r: Random, parameter: Parameter): string {
  const { kind, min, max, allowNone, form } = parameter;
  if (form === 'profile') return anyPieces(r);
  if (kind === 'text')
    return r.pick(['A', 'Mid bike', 'ä, ö & ü', 'back\\slash', '山道', '50 % = half', 'a+b', '#1?', '🚲']);
  if (allowNone && r.chance(0.15)) return 'none';
  // mostly the sizes that people mean, sometimes the whole range
  const top = r.chance(0.8) ? Math.min(max, Math.max(10 * Math.abs(min), max / 100)) : max;
  const si = kind === 'count' ? r.whole(Math.ceil(min), Math.floor(top)) : r.between(min, top);
  if (kind === 'duration') {
    const seconds = Math.max(5, Math.round(si % 20_000));
    return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  }
  const unit = r.pick(kinds[kind].units);
  const value = fromSi(si, unit);
  return `${Number(value.toPrecision(r.whole(2, 17)))}${r.chance(0.2) && unit.symbol === plainOf(parameter) ? '' : unit.symbol}`;
}

/** A hill in pieces: mostly a climb, in pieces of any length, some of them falling. */
export function anyPieces(r: Random): string {
  // a long hill takes long to ride for six bikes: it is seldom one
  const pieces = Array.from({ length: r.whole(1, r.chance(0.15) ? 60 : 8) }, () => {
    const length = r.chance(0.9) ? r.whole(20, 400) : Number(r.between(0.1, 3000).toFixed(1));
    const grade = r.chance(0.8) ? r.between(0, 0.15) : r.between(-0.3, 0.5);
    return `${length},${Number((grade * length).toFixed(r.whole(0, 1)))}`;
  });
  return ['1', '20,1', ...pieces.slice(1)].join(':');
}

const plainOf = ({ kind }: Parameter): string => kinds[kind].plain;

const NONSENSE = [
  '',
  ' ',
  ',',
  ',,,,,,,',
  'abc',
  'NaN',
  'Infinity',
  '-Infinity',
  '1e999',
  '-1e-999',
  '1e308W',
  '0',
  '-0',
  '-1',
  '7.22',
  '1,609',
  '1.609.344',
  '٣٤',
  '１２３',
  '12 parsecs',
  'none',
  'NONE',
  'none,none',
  'null',
  'undefined',
  '[object Object]',
  '<script>alert(1)</script>',
  '"\'`',
  '\\',
  '\\,',
  '\u0000\u0007',
  '\ud800',
  '%',
  '%%',
  '++',
  '=&=',
  '1:2:3:4',
  ':',
  '0:00',
  '99999999999999999999',
  '1:10',
  '1in10',
  '90deg',
  '89.99deg',
  '1in0',
  '0:0',
  '5 ft 10 in',
  '36V*10Ah',
  '__proto__',
  'constructor',
  'x'.repeat(5000),
  '1,2,3,4,5,6,7,8,9',
  '1:',
  '1:100',
  '2:100,5',
  '1:100,5:',
  '1:100,100',
  '1:0,0',
  '1:100,5:abc,1',
  '1:1e3,5',
  '1:9999999,1',
  `1${':20,1'.repeat(61)}`,
];

export const CALCULATORS = Object.keys(calculators) as CalculatorName[];

/** A query that somebody's mail program, typing or malice may have made: some of it sense, some not, any of it escaped or not. */
export function anyQuery(r: Random, calculator: CalculatorName): string {
  const own = namesOf(calculator);
  const pairs = Array.from({ length: r.whole(0, 10) }, () => {
    const name = r.chance(0.85)
      ? r.pick(own)
      : r.pick([...parameters.map((one) => one.name), 'utm_source', '', '__proto__', 'units', 'v', 'Distance']);
    const parameter = parameters.find((one) => one.name === name);
    // a name may say anything at all, also words that the test looks for: it gets only sense
    const sense = name === 'name' ? 1 : 0.75;
    const item = (): string => (parameter && r.chance(sense) ? anyText(r, parameter) : r.pick(NONSENSE));
    const text = parameter?.list ? Array.from({ length: r.whole(1, 8) }, item).join(',') : item();
    const escaped = r.chance(0.7) ? encodeURIComponent(text.toWellFormed()) : text;
    return `${name}=${escaped}`;
  });
  return r.pick(['', '?']) + pairs.join(r.pick(['&', '&', '&', '&&', ';']));
}

/** A query that is all sense: every parameter at most once, each list as long as the others. */
export function anyGoodQuery(r: Random, calculator: CalculatorName): string {
  const bikes = calculators[calculator].bikes.max === 1 ? 1 : r.whole(2, 6);
  const controls = r.whole(1, 6);
  return namesOf(calculator)
    .filter(() => r.chance(0.4))
    .map((name) => {
      const parameter = parameterOf(name);
      const count = parameter.list === 'bike' ? bikes : parameter.list === 'control' ? controls : 1;
      const items = Array.from({ length: count }, () => anyText(r, parameter));
      const text = parameter.list ? items.map((item) => item.replace(/[\\,]/g, '\\$&')).join(',') : (items[0] ?? '');
      return `${name}=${encodeURIComponent(text)}`;
    })
    .join('&');
}

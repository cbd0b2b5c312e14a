import { random, relative } from '../random.ts';
import { counterparts } from './counterparts.ts';
import { type Check, checks, comparisons, deviationOf, statusWords } from './index.ts';
import { cases, fastRunError, motorError } from './timed-hill.ts';

/** A row of the table "How sure the numbers are". */
export interface Accuracy {
  quantity: string;
  against: string;
  cases: number;
  largest: string;
  allowed: string;
}

const raised = (exponent: number): string =>
  String(exponent).replace(/[-\d]/g, (sign) => '⁻⁰¹²³⁴⁵⁶⁷⁸⁹'['-0123456789'.indexOf(sign)] ?? '');

/** A number with its unit: 0.05 Pa, 5 × 10⁻⁷ kg/m³, 10⁻⁹. */
function figure(value: number, unit: string): string {
  const [digits = '', power = ''] = value.toExponential().split('e');
  const exponent = Number(power);
  const text = exponent > -4 ? String(value) : `${digits === '1' ? '' : `${digits} × `}10${raised(exponent)}`;
  return `${text}${unit && ` ${unit}`}`;
}

/** A difference, two digits rounded up; tiny ones as the power of ten above them, since their last digits differ between machines. */
function size(value: number, unit: string): string {
  if (value === 0) return 'none';
  const exponent = Math.floor(Math.log10(value));
  if (exponent < -9) return `under 10${raised(Math.max(-12, exponent + 1))}`;
  const up = Math.ceil(value / 10 ** (exponent - 1) - 1e-9);
  return figure(Number(`${up}e${exponent - 1}`), unit);
}

function fromChecks(): Accuracy[] {
  const groups = new Map<string, Check[]>();
  for (const check of checks) {
    const key = [check.quantity, check.source, check.status, check.relative || check.unit, check.tolerance].join('|');
    groups.set(key, [...(groups.get(key) ?? []), check]);
  }
  return [...groups.values()].flatMap((group): Accuracy[] => {
    const [first] = group;
    if (!first) return [];
    const unit = first.relative ? '' : first.unit;
    return [
      {
        quantity: first.quantity,
        against: first.status === 'recomputed' ? first.source : `${first.source}; ${statusWords[first.status]}`,
        cases: group.length,
        largest: size(Math.max(...group.map(deviationOf)), unit),
        allowed: figure(first.tolerance, unit),
      },
    ];
  });
}

/** Largest relative difference between a formula and the code, over all formulas and 200 inputs each. */
function formulaDifference(): number {
  let largest = 0;
  for (const pair of Object.values(counterparts)) {
    const r = random(200);
    for (let i = 0; i < 200; i++) largest = Math.max(largest, relative(...pair(r)));
  }
  return largest;
}

const percent = (share: number): string => `${(Math.ceil(share * 1000 - 1e-9) / 10).toFixed(1)} %`;

/** The whole table, computed now. */
export function accuracy(): Accuracy[] {
  return [
    ...fromChecks(),
    ...comparisons.map(
      ({ quantity, against, cases: count, largest, tolerance }): Accuracy => ({
        quantity,
        against,
        cases: count,
        largest: size(largest(), ''),
        allowed: figure(tolerance, ''),
      }),
    ),
    {
      quantity: 'Every formula of the reference page',
      against: 'the code that computes with it, 200 inputs each',
      cases: 200 * Object.keys(counterparts).length,
      largest: size(formulaDifference(), ''),
      allowed: figure(1e-12, ''),
    },
    {
      quantity: 'A 300 W run predicted from a 200 W run',
      against: 'a timed hill; common practice, no source',
      cases: cases.length,
      largest: percent(fastRunError()),
      allowed: '1.5 %',
    },
    {
      quantity: 'Motors read back from times',
      against: 'the same hill, “about” 300, 450 and 620 W; common practice, no source',
      cases: 3 * cases.length,
      largest: percent(motorError()),
      allowed: '5.0 %',
    },
  ];
}

const START = '<!-- accuracy: written by `npm run accuracy` -->';
const END = '<!-- accuracy: end -->';

/** Markdown of the table. */
export function accuracyTable(): string {
  const rows = accuracy().map(
    ({ quantity, against, cases: count, largest, allowed }) =>
      `| ${quantity} | ${against} | ${count.toLocaleString('en')} | ${largest} | ${allowed} |`,
  );
  return ['| what | against | cases | largest difference | allowed |', '|---|---|---:|---:|---:|', ...rows].join('\n');
}

/** The readme with its table written anew. @throws Error when the markers are gone */
export function withAccuracy(readme: string): string {
  const [start, end] = [readme.indexOf(START), readme.indexOf(END)];
  if (start < 0 || end < start) throw new Error(`README.md has lost its markers ${START} and ${END}.`);
  return `${readme.slice(0, start)}${START}\n\n${accuracyTable()}\n\n${readme.slice(end)}`;
}

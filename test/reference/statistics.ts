import { autocorrelation1, fitLine, meanOf, oneWayAnova, standardDeviation } from '../../calculators/model/index.ts';
import type { Check } from './check.ts';
import { atmWtAg, michelso, norris, siRstv } from './strd.ts';

const line = fitLine(norris.x, norris.y);
const silicon = oneWayAnova(siRstv);
const silver = oneWayAnova(atmWtAg);

type Row = [string, () => number, number];

const certified = (set: string, rows: readonly Row[]): Check[] =>
  rows.map(([given, computed, expected]) => ({
    quantity: `NIST reference data, ${set}`,
    given,
    expected,
    computed,
    unit: '',
    // nine digits, as many as the last of the sets leaves of the values themselves
    tolerance: 1e-9,
    relative: true,
    source: 'NIST StRD, certified values',
    status: 'secondary',
  }));

const analysis = (found: ReturnType<typeof oneWayAnova>, values: readonly number[]): Row[] => {
  const computed: [string, number][] = [
    ['squares between', found.between.squares],
    ['squares within', found.within.squares],
    ['mean square within', found.within.squares / found.within.freedom],
    ['F', found.ratio],
    ['R²', found.between.squares / (found.between.squares + found.within.squares)],
    ['residual deviation', found.residualDeviation],
  ];
  return computed.map(([given, value], i): Row => [given, () => value, values[i] ?? Number.NaN]);
};

export const statistics: Check[] = [
  ...certified('straight line (Norris)', [
    ['intercept', () => line.intercept, -0.262323073774029],
    ['its standard error', () => line.interceptError, 0.232818234301152],
    ['slope', () => line.slope, 1.00211681802045],
    ['its standard error', () => line.slopeError, 0.429796848199937e-3],
    ['residual deviation', () => line.residualDeviation, 0.884796396144373],
    ['R²', () => line.explained / (line.explained + line.squares), 0.999993745883712],
    ['F', () => (line.explained / line.squares) * line.freedom, 5436385.54079785],
    ['squares of the line', () => line.explained, 4255954.13232369],
    ['squares about it', () => line.squares, 26.6173985294224],
  ]),
  ...certified('mean and scatter (Michelso)', [
    ['mean', () => meanOf(michelso), 299.8524],
    ['standard deviation', () => standardDeviation(michelso), 0.0790105478190518],
    ['autocorrelation', () => autocorrelation1(michelso), 0.535199668621283],
  ]),
  ...certified(
    'analysis of variance (SiRstv)',
    analysis(
      silicon,
      [5.11462616e-2, 2.1663656e-1, 1.0831828e-2, 1.18046237440255, 0.190999039051129, 0.104076068334656],
    ),
  ),
  ...certified(
    'analysis of variance (AtmWtAg)',
    analysis(
      silver,
      [
        3.638341875e-9, 1.04951729166667e-8, 2.28155932971014e-10, 15.946733567793, 0.257426544538321,
        1.5104831444641e-5,
      ],
    ),
  ),
];

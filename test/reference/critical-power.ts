import { fitInverseTime, fitThree, fitTime, fitWork } from '../../calculators/model/index.ts';
import type { Check } from './check.ts';

/** Five efforts of the demonstration data, W and s, in the manual of a statistics package (seen there). */
export const efforts = [
  { power: 446, time: 100 },
  { power: 385, time: 172 },
  { power: 324, time: 434 },
  { power: 290, time: 857 },
  { power: 280, time: 1361 },
];

const byTime = fitTime(efforts);
const byWork = fitWork(efforts);
const byInverse = fitInverseTime(efforts);
const three = fitThree(efforts);

// what, computed, unit, as printed in the manual, worked out apart (the fits in time with 50 digits)
type Row = [string, () => number, string, number | null, number];
const values: Row[] = [
  ['t = W′/(P − CP): CP', () => byTime.criticalPower, 'W', 262, 262.2050766],
  ['t = W′/(P − CP): W′', () => byTime.workAbove, 'J', 24174, 24174.5204],
  ['t = W′/(P − CP): squares left', () => byTime.squares, 's²', null, 3612.637],
  ['three parameters: CP', () => three.criticalPower, 'W', 260, 260.2670472],
  ['three parameters: W′', () => three.workAbove, 'J', 27410, 27409.9277],
  ['three parameters: largest power', () => three.peakPower, 'W', 1004, 1003.83164],
  ['three parameters: squares left', () => three.squares, 's²', null, 2759.18056],
  ['P t = W′ + CP t: CP', () => byWork.criticalPower, 'W', 266, 265.4720968],
  ['P t = W′ + CP t: W′', () => byWork.workAbove, 'J', 20961, 20961.1178],
  ['P = CP + W′/t: CP', () => byInverse.criticalPower, 'W', 274, 273.7943094],
  ['P = CP + W′/t: W′', () => byInverse.workAbove, 'J', 17784, 17783.8913],
];
const errors: Row[] = [
  ['t = W′/(P − CP): error of CP', () => byTime.criticalPowerError, 'W', 1.6, 1.58278],
  ['t = W′/(P − CP): error of W′', () => byTime.workAboveError, 'J', 1889, 1888.859],
  ['P t = W′ + CP t: error of CP', () => byWork.criticalPowerError, 'W', 3, 2.99606],
  ['P t = W′ + CP t: error of W′', () => byWork.workAboveError, 'J', 2248, 2247.93],
  ['P = CP + W′/t: error of CP', () => byInverse.criticalPowerError, 'W', 6.2, 6.16027],
  ['P = CP + W′/t: error of W′', () => byInverse.workAboveError, 'J', 1160, 1159.994],
];

/**
 * The printed values to one unit of their last digit: 265.47 stands there as 266 and 24 174.52 as 24 174. Those worked out apart to
 * the digits that they are given with, `relative`.
 */
const both = (quantity: string, rows: readonly Row[], watts: number, relative: number): Check[] => [
  ...rows.flatMap(([given, computed, unit, printed]): Check[] =>
    printed === null
      ? []
      : [
          {
            quantity,
            given,
            expected: printed,
            computed,
            unit,
            tolerance: unit === 'W' ? watts : 1,
            source: 'manual of a statistics package',
            status: 'secondary',
          },
        ],
  ),
  ...rows.map(
    ([given, computed, unit, , expected]): Check => ({
      quantity,
      given,
      expected,
      computed,
      unit,
      tolerance: relative,
      relative: true,
      source: 'the same efforts, fitted apart',
      status: 'recomputed',
    }),
  ),
];

export const criticalPower: Check[] = [
  ...both('Critical power from five efforts', values, 1, 1e-8),
  ...both('Critical power from five efforts, standard errors', errors, 0.1, 5e-6),
];

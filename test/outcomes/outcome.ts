import { outcomeOf } from '../../calculators/outcomes.ts';
import { type CalculatorName, type Result, resultOf } from '../../calculators/scenario/vocabulary.ts';

/** What a link answers, in the shape that tests ask in. */
export function answer(calculator: CalculatorName, query = '') {
  const outcome = outcomeOf(calculator, query);
  const result = (name: string, bike?: number): Result => resultOf(outcome, name, bike);
  const si = (name: string, bike?: number): number => {
    const value = result(name, bike).si;
    if (value === undefined) throw new Error(`${calculator}/?${query} has no ${name}.`);
    return value;
  };
  /** half of a 95 % range */
  const half = (name: string, bike?: number): number => {
    const { low, high } = result(name, bike);
    if (low === undefined || high === undefined) throw new Error(`${calculator}/?${query} has no range for ${name}.`);
    return (high - low) / 2;
  };
  const remarks = outcome.remarks.map(({ text }) => text);
  const tones = outcome.remarks.map(({ tone }) => tone);
  return { outcome, result, si, half, remarks, tones, said: remarks.join(' ') };
}

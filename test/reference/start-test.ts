import { evaluateFormula, valueIn } from '../../calculators/quantities/formula-tools.ts';
import { formulas } from '../../calculators/quantities/formulas.ts';
import type { Check } from './check.ts';

/*
 * EN 15194:2009, Annex D: a start from rest over 20 m on level ground. For 150 kg the time must be at least 7.83 s so that the mean
 * power at the wheel stays below 250 W (seen in a secondary copy; the fourth decimal recomputed).
 */
function startPower(mass: number, seconds: number): number {
  const formula = formulas.find(({ id }) => id === 'start-test-power');
  if (!formula) throw new Error('There is no formula “start-test-power”.');
  return valueIn(evaluateFormula(formula, { m: `${mass} kg`, D: '20 m', t: `${seconds} s` }), 'W');
}

export const startTest: Check[] = [
  [150, 7.83, 0.1, 'EN 15194:2009, Annex D', 'secondary'] as const,
  [150, 7.8297, 5e-3, 'worked out from its formula', 'recomputed'] as const,
  [100, 6.8399, 5e-3, 'worked out from its formula', 'recomputed'] as const,
].map(
  ([mass, seconds, tolerance, source, status]): Check => ({
    quantity: 'Mean power of a start from rest',
    given: `${mass} kg, 20 m in ${seconds} s`,
    expected: 250,
    computed: () => startPower(mass, seconds),
    unit: 'W',
    tolerance,
    source,
    status,
  }),
);

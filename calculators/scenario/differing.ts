import { FIRST_BIKE, HILL_AND_RIDER } from './onward.ts';
import { type CalculatorName, calculatorOf, defaultOf, namesOf } from './schema.ts';

/** Of what goes along from one calculator to another: the inputs that both have and whose defaults differ. Knows both, so the site works it out when it is built. */
function differingBetween(from: CalculatorName, to: CalculatorName): string[] {
  const read = namesOf(to);
  return [...HILL_AND_RIDER, ...FIRST_BIKE].filter((name) => {
    const here = defaultOf(from, name);
    return here !== undefined && read.includes(name) && here !== defaultOf(to, name);
  });
}

/** The same for all ways onward from a calculator; those without any are left out. */
export function differingFrom(from: CalculatorName): Partial<Record<CalculatorName, string[]>> {
  const ways = calculatorOf(from).onward.map(({ to }) => [to, differingBetween(from, to)] as const);
  return Object.fromEntries(ways.filter(([, names]) => names.length > 0));
}

import { FOR_ALL, PER_BIKE, PER_MEASURED_BIKE } from './onward.ts';
import { MAX_BIKES } from './scenario.ts';
import { type CalculatorName, calculatorOf, defaultOf, namesOf } from './schema.ts';

/** Of what goes along from one calculator to another: the inputs that both have and whose defaults differ. Knows both, so the site works it out when it is built. */
function differingBetween(from: CalculatorName, to: CalculatorName): string[] {
  const read = namesOf(to);
  const several = [from, to].every((name) => calculatorOf(name).bikes.max > 1);
  const columns = Array.from({ length: several ? MAX_BIKES : 1 }, (_, column) => column);
  return [...FOR_ALL, ...(several ? PER_MEASURED_BIKE : PER_BIKE)].filter((name) =>
    columns.some((column) => {
      const here = defaultOf(from, name, column);
      return here !== undefined && read.includes(name) && here !== defaultOf(to, name, column);
    }),
  );
}

/** The same for all ways onward from a calculator; those without any are left out. */
export function differingFrom(from: CalculatorName): Partial<Record<CalculatorName, string[]>> {
  const ways = calculatorOf(from).onward.map(({ to }) => [to, differingBetween(from, to)] as const);
  return Object.fromEntries(ways.filter(([, names]) => names.length > 0));
}

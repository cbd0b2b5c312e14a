import { outcomeOf } from '../../calculators/outcomes.ts';
import type { CalculatorName } from '../../calculators/scenario/vocabulary.ts';

/** Every result of a link as `links.json` keeps it: `time`, or `time.2` for the second bike; the SI value, the text, or null where there is none. */
export function answersOf(calculator: CalculatorName, query: string): Record<string, number | string | null> {
  return Object.fromEntries(
    outcomeOf(calculator, query).results.map(({ name, bike, si, text }) => [
      bike === undefined ? name : `${name}.${bike}`,
      si ?? text ?? null,
    ]),
  );
}

/** Every calculator's outcome by name: for prose, tables and preview cards at build, and for tests. A view imports only its own. */
import { biggerHill } from './bigger-hill/outcome.ts';
import { climbTime } from './climb-time/outcome.ts';
import { powerToWeight } from './power-to-weight/outcome.ts';
import { type CalculatorName, type Outcome, readLink, type Scenario } from './scenario/index.ts';
import { sideBySide } from './side-by-side/outcome.ts';

const outcomes: Readonly<Record<CalculatorName, (scenario: Scenario) => Outcome>> = {
  'climb-time': climbTime,
  'side-by-side': sideBySide,
  'bigger-hill': biggerHill,
  'power-to-weight': powerToWeight,
};

/** What a calculator answers when it is opened with this query (`distance=1mi&gain=550ft`). */
export function outcomeOf(calculator: CalculatorName, query: string): Outcome {
  return outcomes[calculator](readLink(calculator, query));
}

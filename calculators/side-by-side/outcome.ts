import { type ComparisonOutcome, compareBikes, RESULT_COLUMNS, withoutHill } from '../scenario/comparison.ts';
import { enduranceOf, enduranceResult, hillOf, none, type Scenario } from '../scenario/index.ts';

const RESULTS = Object.values(RESULT_COLUMNS);

export type SideBySideOutcome = Omit<ComparisonOutcome, 'first'>;

/** Two to six bikes with one rider up one hill. */
export function sideBySide(scenario: Scenario): SideBySideOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok) {
    const results = withoutHill(scenario, RESULTS, setting.problem);
    return {
      results: [...results, none('endurance-time', 'duration', setting.problem)],
      notes: setting.notes,
      bikes: [],
      endures: undefined,
    };
  }
  const endures = enduranceOf(scenario);
  const { results, bikes } = compareBikes(scenario, setting.value, RESULTS, endures);
  return { results: [...results, enduranceResult(endures)], notes: setting.notes, bikes, endures };
}

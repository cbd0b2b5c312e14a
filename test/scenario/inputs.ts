import { columnsOf, inputOf, namesOf, type Scenario } from '../../calculators/scenario/vocabulary.ts';

/** Every input of a scenario, in every column. */
export function inputsOf(scenario: Scenario): Record<string, unknown> {
  return Object.fromEntries(
    namesOf(scenario.calculator).flatMap((name) =>
      columnsOf(scenario, name).map((column) => [`${name}.${column}`, inputOf(scenario, name, column)]),
    ),
  );
}

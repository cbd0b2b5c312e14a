import {
  type Climb,
  powerToWeight as powerToWeightOf,
  propagate,
  timePerKilogram,
  type UncertainResult,
} from '../model/index.ts';
import {
  climbDoubts,
  climbOf,
  exact,
  hillOf,
  none,
  numberOf,
  type Outcome,
  type Remark,
  type Result,
  ranged,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';

const NAMES: [string, Result['kind']][] = [
  ['watts-per-kilogram', 'specific-power'],
  ['watts-per-kilogram-assisted', 'specific-power'],
  ['watts-per-kilogram-system', 'specific-power'],
  ['watts-per-kilogram-unassisted-equivalent', 'specific-power'],
  ['time-per-kilogram', 'seconds'],
];

export interface PowerToWeightOutcome extends Outcome {
  /** absent where there is no hill */
  climb?: Climb;
  /** sentences about what was entered */
  notes: Remark[];
}

/** W/kg with and without the motor, and what one more kilogram costs on this hill. */
export function powerToWeight(scenario: Scenario): PowerToWeightOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok)
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      notes: setting.notes,
    };
  const climb = climbOf(scenario, setting.value, 0);
  const rider = numberOf(scenario, 'rider');
  const ratios = powerToWeightOf(climb, rider);
  const { inputs, at } = climbDoubts(scenario);
  const [equivalent, perKilogram] = propagate(inputs, (values) => {
    const there = at(climb, values);
    return [powerToWeightOf(there, rider).unassistedEquivalent, timePerKilogram(there)];
  }) as [UncertainResult, UncertainResult];

  const results: Result[] = [
    exact('watts-per-kilogram', 'specific-power', ratios.rider, ''),
    exact('watts-per-kilogram-assisted', 'specific-power', ratios.assisted, ''),
    exact('watts-per-kilogram-system', 'specific-power', ratios.system, ''),
    ranged(
      'watts-per-kilogram-unassisted-equivalent',
      'specific-power',
      equivalent,
      STANDS_STILL,
      undefined,
      ratios.rider,
    ),
    ranged('time-per-kilogram', 'seconds', perKilogram, STANDS_STILL),
  ];
  return { results, climb, notes: setting.notes };
}

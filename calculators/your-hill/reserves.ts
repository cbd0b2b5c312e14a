import type { Reserves } from '../model/index.ts';
import { numberOf, optionalOf, reservesOf, type Scenario } from '../scenario/index.ts';

/** What a bike can use up, and its rider too: the ride goes on at the critical power once W′ is used up. */
export function reservesWithRider(scenario: Scenario, bike: number): Reserves {
  const criticalPower = optionalOf(scenario, 'endurance');
  const reserves = reservesOf(scenario, bike);
  if (criticalPower === undefined) return reserves;
  return { ...reserves, endurance: { criticalPower, workAbove: numberOf(scenario, 'endurance-work') } };
}

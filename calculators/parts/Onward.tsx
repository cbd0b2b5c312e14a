import { calculatorOf, pathOf, type Scenario } from '../scenario/index.ts';
import { onwardQuery, onwardWords } from '../scenario/onward.ts';
import { addressUnderBase } from './address.ts';
import type { IslandProps } from './useScenario.ts';

interface Props {
  scenario: Scenario;
  differing: IslandProps['differing'];
}

/** Links to other calculators that take hill, rider and bikes along. */
export function Onward({ scenario, differing = {} }: Props) {
  return (
    <p class="onward">
      {calculatorOf(scenario.calculator).onward.map((way) => (
        <a key={way.to} href={addressUnderBase(`${pathOf(way.to)}${onwardQuery(scenario, way, differing[way.to])}`)}>
          {onwardWords(scenario, way)}
        </a>
      ))}
    </p>
  );
}

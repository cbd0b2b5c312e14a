import { calculatorOf, pathOf, type Scenario } from '../scenario/index.ts';
import { addressUnderBase } from './address.ts';
import { loadedChanges } from './useScenario.ts';

/** Links to other calculators that take hill and rider along: as soon as anything was said, what reads and writes links is there. */
export function Onward({ scenario }: { scenario: Scenario }) {
  return (
    <p class="onward">
      {calculatorOf(scenario.calculator).onward.map(({ to, words, bikes }) => (
        <a
          key={to}
          href={addressUnderBase(`${pathOf(to)}${loadedChanges()?.onwardQuery(scenario, bikes) ?? ''}`)}
        >
          {words}
        </a>
      ))}
    </p>
  );
}

import { calculatorOf, pathOf, type Scenario } from '../scenario/index.ts';
import { onwardQuery } from '../scenario/onward.ts';
import { addressUnderBase } from './address.ts';
import { type IslandProps, loadedChanges } from './useScenario.ts';

interface Props {
  scenario: Scenario;
  differing: IslandProps['differing'];
}

/** Links to other calculators that take hill, rider and bike along. What writes them is there when the page is built, and again as soon as anything was said. */
export function Onward({ scenario, differing = {} }: Props) {
  const write = import.meta.env.SSR ? onwardQuery : loadedChanges()?.onwardQuery;
  return (
    <p class="onward">
      {calculatorOf(scenario.calculator).onward.map((way) => (
        <a key={way.to} href={addressUnderBase(`${pathOf(way.to)}${write?.(scenario, way, differing[way.to]) ?? ''}`)}>
          {way.words}
        </a>
      ))}
    </p>
  );
}

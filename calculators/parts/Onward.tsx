import { calculatorOf, pathOf, type Scenario } from '../scenario/index.ts';
import type { onwardQuery } from '../scenario/onward.ts';
import { addressUnderBase } from './address.ts';
import { type IslandProps, loadedChanges } from './useScenario.ts';

interface Props {
  scenario: Scenario;
  differing: IslandProps['differing'];
  /** writes the links while the page is built: what does it in the browser comes with the first change */
  write?: typeof onwardQuery | undefined;
}

/** Links to other calculators that take hill, rider and bike along. What writes them is there when the page is built, and again as soon as anything was said. */
export function Onward({ scenario, differing = {}, write = loadedChanges()?.onwardQuery }: Props) {
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

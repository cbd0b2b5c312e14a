import type { CalculatorName, Scenario } from '../scenario/index.ts';
import { loadedChanges } from './useScenario.ts';

/** Where one goes from here with the same hill and rider. */
const ONWARD: Record<CalculatorName, readonly (readonly [CalculatorName, string])[]> = {
  'climb-time': [
    ['side-by-side', 'Compare bikes on this hill'],
    ['power-to-weight', 'Power to weight of this rider'],
  ],
  'side-by-side': [['climb-time', 'One bike in detail']],
  'bigger-hill': [['side-by-side', 'Other bikes on the measured hill']],
  'power-to-weight': [['climb-time', 'This climb in detail']],
};

/** Links to other calculators that take hill and rider along: as soon as anything was said, what reads and writes links is there. */
export function Onward({ scenario }: { scenario: Scenario }) {
  const base = import.meta.env.BASE_URL.replace(/\/$/, '');
  return (
    <p class="onward">
      {ONWARD[scenario.calculator].map(([to, words]) => (
        <a key={to} href={`${base}/calculators/${to}/${loadedChanges()?.onwardQuery(scenario, to) ?? ''}`}>
          {words}
        </a>
      ))}
    </p>
  );
}

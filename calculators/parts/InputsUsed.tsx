import { useEffect, useState } from 'preact/hooks';
import {
  type CalculatorName,
  columnsOf,
  type Group,
  inputOf,
  isUnused,
  labelOf,
  namesOf,
  parameterOf,
  type Scenario,
  valueText,
} from '../scenario/index.ts';

/** Every input that was used, for the printed page: a printed form would hide what is folded and cut what is long. */
export function InputsUsed({ scenario }: { scenario: Scenario }) {
  // the sheet must say where it came from; what the address says is known only when it is printed
  const [address, setAddress] = useState('');
  useEffect(() => {
    const note = (): void => setAddress(location.href);
    note();
    addEventListener('beforeprint', note);
    return () => removeEventListener('beforeprint', note);
  }, [scenario]);
  return (
    <div class="inputs-used">
      <h2>Inputs</h2>
      <dl>
        {namesOf(scenario.calculator)
          .filter((name) => !isUnused(scenario, name))
          .filter((name) => columnsOf(scenario, name).some((column) => inputOf(scenario, name, column) !== undefined))
          .map((name) => (
            <div key={name}>
              <dt>{labelInPrint(scenario.calculator, name)}</dt>
              <dd>
                {columnsOf(scenario, name)
                  .map((column) => valueText(scenario, name, column))
                  .join(' · ')}
              </dd>
            </div>
          ))}
      </dl>
      <p>Uphill, Measured. {address}</p>
    </div>
  );
}

const IN_PRINT: Partial<Record<Group, string>> = {
  control: 'Control run',
  target: 'Other hill',
  companion: 'Companion',
  change: 'Change',
};

/** A label that stands without its section. */
function labelInPrint(calculator: CalculatorName, name: string): string {
  const label = labelOf(calculator, name);
  const section = IN_PRINT[parameterOf(name).group];
  return section ? `${section}: ${label.toLowerCase()}` : label;
}

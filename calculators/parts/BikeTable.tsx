import type { System } from '../quantities/index.ts';
import { bikeName, columnsOf, type Outcome, resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { Output, rangeText } from './Output.tsx';

interface Props {
  caption: string;
  scenario: Scenario;
  outcome: Outcome;
  /** name of the result, what people call it, and whether its range is shown, or alone the range of what stands in the head; or an input's name */
  rows: readonly (readonly [string, string, (boolean | 'alone' | 'input')?])[];
  system: System;
}

/** Results of several bikes, a column each. It scrolls sideways by itself when it must, so it can be reached by keyboard. */
export function BikeTable({ caption, scenario, outcome, rows, system }: Props) {
  const bikes = columnsOf(scenario, 'bike');
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scrolls" aria-label={caption} tabIndex={0}>
      <table class="bikes">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <td />
            {bikes.map((bike) => (
              <th scope="col" key={bike}>
                {bikeName(scenario, bike)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, label, range = false]) => (
            <tr key={name} hidden={isBare(outcome, name, range)}>
              <th scope="row">{label}</th>
              {bikes.map((bike) => (
                <td key={bike}>
                  {range === 'input' ? (
                    valueText(scenario, name, bike)
                  ) : range === 'alone' ? (
                    rangeText(resultOf(outcome, name, bike + 1), system) || '–'
                  ) : (
                    <Output outcome={outcome} name={name} bike={bike + 1} system={system} range={range} />
                  )}
                  {name === 'battery-share' && <span class="range"> of {valueText(scenario, 'battery', bike)}</span>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A row in which no bike has a value says nothing. */
function isBare(outcome: Outcome, name: string, range: boolean | 'alone' | 'input'): boolean {
  return (
    range !== 'input' &&
    outcome.results.every((result) => result.name !== name || (result.si === undefined && result.text === undefined))
  );
}

import type { Answer } from '../parts/answer.ts';
import { BarChart } from '../parts/BarChart.tsx';
import { Folded } from '../parts/Folded.tsx';
import { Output, resultText } from '../parts/Output.tsx';
import { formatQuantity } from '../quantities/index.ts';
import { motorOf, resultOf, type Scenario } from '../scenario/index.ts';
import { powerToWeight } from './outcome.ts';
import { powerToWeightRemarks } from './remarks.ts';

const ROWS: [string, string][] = [
  ['watts-per-kilogram', 'You alone'],
  ['watts-per-kilogram-system', 'You and the whole motor, over all that moves'],
  ['watts-per-kilogram-assisted', 'You and the whole motor, over your weight'],
  ['watts-per-kilogram-unassisted-equivalent', 'Same speed without the motor'],
];

/** Watts per kilogram with and without the motor. */
export function powerToWeightAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = powerToWeight(scenario);
  const output = { outcome, system };
  const equivalent = resultOf(outcome, 'watts-per-kilogram-unassisted-equivalent');
  const bars = ROWS.flatMap(([name, label]) => {
    const { si, low, high } = resultOf(outcome, name);
    return si === undefined ? [] : [{ label, text: resultText(resultOf(outcome, name), system), value: si, low, high }];
  });

  return {
    spoken: `With the motor you climb like a rider of ${resultText(equivalent, system)} without one.`,
    remarks: powerToWeightRemarks(scenario, outcome),
    head: (
      <p class="headline">
        {motorOf(scenario, 0) > 0
          ? 'With the motor you climb like a rider on the same bike without one, of '
          : 'You climb with '}
        <Output {...output} name="watts-per-kilogram-unassisted-equivalent" class="big" range="named" />
      </p>
    ),
    details: (
      <>
        <figure>
          <figcaption>Power to weight. Weight means body and kit.</figcaption>
          <BarChart
            {...{ description: `Power to weight: ${bars.map((bar) => `${bar.label} ${bar.text}`).join('; ')}.`, bars }}
          />
        </figure>
        <Folded small={small} words="In figures">
          <table>
            <caption>In figures, with kit</caption>
            <tbody>
              {ROWS.slice(0, 3).map(([name, label]) => (
                <tr key={name}>
                  <th scope="row">{label}</th>
                  <td>
                    <Output {...output} name={name} />
                  </td>
                </tr>
              ))}
              <tr>
                <th scope="row">
                  One more kilogram{system === 'us' && ` (${formatQuantity(1, 'mass', system)})`} costs on this hill
                </th>
                <td>
                  <Output {...output} name="time-per-kilogram" range />
                </td>
              </tr>
            </tbody>
          </table>
        </Folded>
      </>
    ),
  };
}

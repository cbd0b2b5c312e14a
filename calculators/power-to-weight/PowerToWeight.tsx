import { useMemo } from 'preact/hooks';
import { BarChart } from '../parts/BarChart.tsx';
import { mountOf } from '../parts/mount.ts';
import { Output, resultText } from '../parts/Output.tsx';
import { Tool } from '../parts/Tool.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { resultOf } from '../scenario/index.ts';
import { powerToWeight } from './outcome.ts';

const ROWS: [string, string][] = [
  ['watts-per-kilogram', 'You alone'],
  ['watts-per-kilogram-system', 'You and motor, over all that moves'],
  ['watts-per-kilogram-assisted', 'You and motor, over your weight'],
  ['watts-per-kilogram-unassisted-equivalent', 'Same speed without the motor'],
];

/** Watts per kilogram with and without the motor. */
export default function PowerToWeight(props: IslandProps) {
  const tool = useScenario('power-to-weight', props);
  const { scenario } = tool;
  const { system } = scenario;
  const outcome = useMemo(() => powerToWeight(scenario), [scenario]);
  const output = { outcome, system };
  const equivalent = resultOf(outcome, 'watts-per-kilogram-unassisted-equivalent');
  const bars = ROWS.flatMap(([name, label]) => {
    const { si, low, high } = resultOf(outcome, name);
    return si === undefined ? [] : [{ label, text: resultText(resultOf(outcome, name), system), value: si, low, high }];
  });

  return (
    <Tool
      tool={tool}
      outcome={outcome}
      spoken={`With the motor you climb like a rider of ${resultText(equivalent, system)} without one.`}
      head={
        <p class="headline">
          With the motor you climb like a rider of{' '}
          <Output {...output} name="watts-per-kilogram-unassisted-equivalent" class="big" range="named" />
        </p>
      }
    >
      <figure>
        <figcaption>Power to weight. Weight means body and kit.</figcaption>
        <BarChart
          description={`Power to weight: ${bars.map((bar) => `${bar.label} ${bar.text}`).join('; ')}.`}
          bars={bars}
        />
      </figure>
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
            <th scope="row">One more kilogram costs on this hill</th>
            <td>
              <Output {...output} name="time-per-kilogram" range />
            </td>
          </tr>
        </tbody>
      </table>
    </Tool>
  );
}

export const mount = mountOf(PowerToWeight);

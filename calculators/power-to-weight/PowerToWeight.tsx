import { useMemo } from 'preact/hooks';
import type { BarChartProps } from '../parts/BarChart.tsx';
import { Drawn } from '../parts/Drawn.tsx';
import { Folded } from '../parts/Folded.tsx';
import { mountOf } from '../parts/mount.ts';
import { Output, resultText } from '../parts/Output.tsx';
import { Tool } from '../parts/Tool.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { formatQuantity } from '../quantities/index.ts';
import { powerToWeight as definition } from '../scenario/definitions/power-to-weight.ts';
import { motorOf, resultOf } from '../scenario/index.ts';
import { type PowerToWeightOutcome, powerToWeight } from './outcome.ts';

const ROWS: [string, string][] = [
  ['watts-per-kilogram', 'You alone'],
  ['watts-per-kilogram-system', 'You and the whole motor, over all that moves'],
  ['watts-per-kilogram-assisted', 'You and the whole motor, over your weight'],
  ['watts-per-kilogram-unassisted-equivalent', 'Same speed without the motor'],
];

const loadRemarks = async () => (await import('./remarks.ts')).powerToWeightRemarks;
const loadChart = async () => (await import('../parts/BarChart.tsx')).BarChart;

/** Watts per kilogram with and without the motor. */
export default function PowerToWeight(props: IslandProps<BarChartProps, PowerToWeightOutcome>) {
  const tool = useScenario(definition, props);
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
      remarks={props.remarks}
      loadRemarks={loadRemarks}
      inputs={props.inputs}
      spoken={`With the motor you climb like a rider of ${resultText(equivalent, system)} without one.`}
      head={
        <p class="headline">
          {motorOf(scenario, 0) > 0
            ? 'With the motor you climb like a rider on the same bike without one, of '
            : 'You climb with '}
          <Output {...output} name="watts-per-kilogram-unassisted-equivalent" class="big" range="named" />
        </p>
      }
    >
      <figure>
        <figcaption>Power to weight. Weight means body and kit.</figcaption>
        <Drawn<BarChartProps>
          tool={tool}
          server={props.chart}
          load={loadChart}
          chart={{ description: `Power to weight: ${bars.map((bar) => `${bar.label} ${bar.text}`).join('; ')}.`, bars }}
        />
      </figure>
      <Folded small={props.small} words="In figures">
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
    </Tool>
  );
}

export const mount = mountOf(PowerToWeight);

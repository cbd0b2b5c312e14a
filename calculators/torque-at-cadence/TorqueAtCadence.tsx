import { useMemo } from 'preact/hooks';
import { BikeTable } from '../parts/BikeTable.tsx';
import { Drawn } from '../parts/Drawn.tsx';
import { Folded } from '../parts/Folded.tsx';
import type { LinesChartProps } from '../parts/LinesChart.tsx';
import { mountOf } from '../parts/mount.ts';
import { Output, resultText } from '../parts/Output.tsx';
import { Tool } from '../parts/Tool.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { formatQuantity } from '../quantities/index.ts';
import { torqueAtCadence as definition } from '../scenario/definitions/torque-at-cadence.ts';
import { bikeName, numberOf, resultOf, valueText } from '../scenario/index.ts';
import { type TorqueAtCadenceOutcome, torqueAtCadence } from './outcome.ts';

const loadRemarks = async () => (await import('./remarks.ts')).torqueAtCadenceRemarks;
const loadChart = async () => (await import('../parts/LinesChart.tsx')).LinesChart;

/** What each motor gives at one cadence and one rider power. */
export default function TorqueAtCadence(props: IslandProps<LinesChartProps, TorqueAtCadenceOutcome>) {
  const tool = useScenario(definition, props);
  const { scenario } = tool;
  const { system } = scenario;
  const outcome = useMemo(() => torqueAtCadence(scenario), [scenario]);
  const cadence = numberOf(scenario, 'cadence');
  const here = `at ${valueText(scenario, 'cadence')}`;
  const rider = valueText(scenario, 'power');
  const each = outcome.motors.map(({ curve, power }, i) => ({
    label: bikeName(scenario, i),
    text: resultText(resultOf(outcome, 'motor-power', i + 1), system),
    limit: resultText(resultOf(outcome, 'binds', i + 1), system),
    points: curve.map((point) => ({ x: point.cadence, y: point.power })),
    here: power,
  }));

  return (
    <Tool
      tool={tool}
      outcome={outcome}
      remarks={props.remarks}
      loadRemarks={loadRemarks}
      inputs={props.inputs}
      spoken={`${here}: ${each.map(({ label, text, limit }) => `${label} ${text}, limit ${limit}`).join('; ')}`}
      head={
        <>
          <p class="headline-of">
            What the motor adds {here} to {rider} of yours, and its limit there
          </p>
          <ul class="standings">
            {each.map(({ label }, i) => (
              <li key={i}>
                <span class="who">{label}</span>{' '}
                <Output outcome={outcome} name="motor-power" bike={i + 1} system={system} class="middle" />
                <span class="behind">
                  limit: <Output outcome={outcome} name="binds" bike={i + 1} system={system} />
                </span>
              </li>
            ))}
          </ul>
        </>
      }
    >
      <figure>
        <figcaption>Output against cadence with {rider} from the rider.</figcaption>
        <Drawn<LinesChartProps>
          tool={tool}
          server={props.chart}
          load={loadChart}
          chart={{
            description: `Output against cadence. ${each
              .map(
                ({ label, text, points }) =>
                  `${label}: ${text} ${here}; ${points
                    .map(
                      ({ x, y }) => `${formatQuantity(y, 'power', system)} at ${formatQuantity(x, 'cadence', system)}`,
                    )
                    .join(', ')}.`,
              )
              .join(' ')}`,
            lines: each,
            xKind: 'cadence',
            yKind: 'power',
            here: { x: cadence, label: here },
            system,
          }}
        />
      </figure>
      <Folded small={props.small} words="Motor by motor">
        <BikeTable
          caption="Motor by motor"
          scenario={scenario}
          outcome={outcome}
          system={system}
          rows={[
            ['torque-limit', `Its torque allows ${here}`],
            ['support-limit', `Its support allows with ${rider}`],
            ['motor', 'Its peak', 'input'],
            ['torque-cadence', 'Torque no longer limits from'],
            ['rider-for-peak', 'Your power for its peak'],
          ]}
        />
      </Folded>
    </Tool>
  );
}

export const mount = mountOf(TorqueAtCadence);

import { useMemo } from 'preact/hooks';
import type { BarChartProps } from '../parts/BarChart.tsx';
import { BikeTable } from '../parts/BikeTable.tsx';
import { Drawn } from '../parts/Drawn.tsx';
import { Folded } from '../parts/Folded.tsx';
import { mountOf } from '../parts/mount.ts';
import { Output, resultText } from '../parts/Output.tsx';
import { Standings, standingsText } from '../parts/Standings.tsx';
import { Tool } from '../parts/Tool.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { sideBySide as definition } from '../scenario/definitions/side-by-side.ts';
import { bikeName, columnsOf, resultOf } from '../scenario/index.ts';
import { type SideBySideOutcome, sideBySide } from './outcome.ts';

const loadRemarks = async () => (await import('./remarks.ts')).sideBySideRemarks;
const loadChart = async () => (await import('../parts/BarChart.tsx')).BarChart;

/** Several bikes with one rider up one hill. */
export default function SideBySide(props: IslandProps<BarChartProps, SideBySideOutcome>) {
  const tool = useScenario(definition, props);
  const { scenario } = tool;
  const { system } = scenario;
  const outcome = useMemo(() => sideBySide(scenario), [scenario]);
  const bars = columnsOf(scenario, 'bike').flatMap((bike) => {
    const time = resultOf(outcome, 'time', bike + 1);
    return time.si === undefined
      ? []
      : [
          {
            label: bikeName(scenario, bike),
            text: resultText(time, system),
            value: time.si,
            low: time.low,
            high: time.high,
          },
        ];
  });

  return (
    <Tool
      tool={tool}
      outcome={outcome}
      remarks={props.remarks}
      loadRemarks={loadRemarks}
      inputs={props.inputs}
      spoken={standingsText({ scenario, outcome, system })}
      head={
        <>
          <p class="headline-of">Time to the top, its 95 % range, and the gap</p>
          <Standings scenario={scenario} outcome={outcome} system={system} />
        </>
      }
    >
      {bars.length > 0 && (
        <figure>
          <figcaption>
            Time to the top. The thin line is the 95 % range of each; most of it is common to all.
          </figcaption>
          <Drawn<BarChartProps>
            tool={tool}
            server={props.chart}
            load={loadChart}
            chart={{ series: true, description: `Climb times: ${standingsText({ scenario, outcome, system })}.`, bars }}
          />
        </figure>
      )}
      <Folded small={props.small} words="Bike by bike">
        <BikeTable
          caption="Bike by bike"
          scenario={scenario}
          outcome={outcome}
          system={system}
          rows={[
            ['gap', '95 % range of that gap', 'alone'],
            ['distance-behind', 'Still to ride when the first is up'],
            ['height-behind', 'Height left then'],
            ['speed', 'Speed'],
            ['motor-power', 'Motor gives'],
            ['battery-energy', 'From the battery', true],
            ['battery-share', 'Share of the battery'],
            ['binds', 'Limit that binds'],
            ['binds-after', 'It binds after'],
            ['binds-height', 'From a height of'],
            ['time-lost', 'It costs'],
          ]}
        />
        <dl class="facts" hidden={resultOf(outcome, 'endurance-time').si === undefined}>
          <div>
            <dt>You hold this power for</dt>
            <dd>
              <Output outcome={outcome} system={system} name="endurance-time" />
            </dd>
          </div>
        </dl>
      </Folded>
    </Tool>
  );
}

export const mount = mountOf(SideBySide);

import { useMemo } from 'preact/hooks';
import { BarChart } from '../parts/BarChart.tsx';
import { BikeTable } from '../parts/BikeTable.tsx';
import { mountOf } from '../parts/mount.ts';
import { resultText } from '../parts/Output.tsx';
import { Standings, standingsText } from '../parts/Standings.tsx';
import { Tool } from '../parts/Tool.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { bikeName, columnsOf, resultOf } from '../scenario/index.ts';
import { sideBySide } from './outcome.ts';

/** Several bikes with one rider up one hill. */
export default function SideBySide(props: IslandProps) {
  const tool = useScenario('side-by-side', props);
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
      spoken={standingsText({ scenario, outcome, system })}
      head={
        <>
          <p class="headline-of">Time to the top, with its 95 % range</p>
          <Standings scenario={scenario} outcome={outcome} system={system} />
        </>
      }
    >
      {bars.length > 0 && (
        <figure>
          <figcaption>
            Time to the top. The thin line is the 95 % range of each; most of it is common to all.
          </figcaption>
          <BarChart series description={`Climb times: ${standingsText({ scenario, outcome, system })}.`} bars={bars} />
        </figure>
      )}
      <BikeTable
        caption="Bike by bike"
        scenario={scenario}
        outcome={outcome}
        system={system}
        rows={[
          ['gap', 'Behind the first', true],
          ['distance-behind', 'Still to ride when the first is up'],
          ['height-behind', 'Still to climb then'],
          ['speed', 'Speed'],
          ['motor-power', 'Motor gives'],
          ['battery-energy', 'From the battery', true],
          ['battery-share', 'Share of the battery'],
          ['binds', 'Limit that binds'],
        ]}
      />
    </Tool>
  );
}

export const mount = mountOf(SideBySide);

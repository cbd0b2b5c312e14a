import { useMemo } from 'preact/hooks';
import { BikeTable } from '../parts/BikeTable.tsx';
import { Drawn } from '../parts/Drawn.tsx';
import { Folded } from '../parts/Folded.tsx';
import { mountOf } from '../parts/mount.ts';
import { Output, resultText } from '../parts/Output.tsx';
import { Standings, standingsText } from '../parts/Standings.tsx';
import { Tool } from '../parts/Tool.tsx';
import type { TrackChartProps } from '../parts/TrackChart.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { biggerHill as definition } from '../scenario/definitions/bigger-hill.ts';
import { bikeName, columnsOf, isGiven, resultOf, valueText } from '../scenario/index.ts';
import { type BiggerHillOutcome, biggerHill } from './outcome.ts';

const loadRemarks = async () => (await import('./remarks.ts')).biggerHillRemarks;
const loadChart = async () => (await import('../parts/TrackChart.tsx')).TrackChart;

/** A measured climb carried to another hill. */
export default function BiggerHill(props: IslandProps<TrackChartProps, BiggerHillOutcome>) {
  const tool = useScenario(definition, props);
  const { scenario } = tool;
  const { system } = scenario;
  const outcome = useMemo(() => biggerHill(scenario), [scenario]);
  const tracks = columnsOf(scenario, 'bike').flatMap((bike) => {
    const time = resultOf(outcome, 'time', bike + 1);
    if (time.si === undefined) return [];
    return [
      {
        label: bikeName(scenario, bike),
        text: resultText(time, system),
        time: time.si,
        low: time.low ?? time.si,
        high: time.high ?? time.si,
        proportional: resultOf(outcome, 'time-proportional', bike + 1).si,
      },
    ];
  });
  const output = { outcome, system };

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
          <p class="headline-of">
            Up the other hill with {valueText(scenario, isGiven(scenario, 'target-rider') ? 'target-rider' : 'rider')}{' '}
            and {valueText(scenario, isGiven(scenario, 'target-power') ? 'target-power' : 'power')}: time, its 95 %
            range, and the gap
          </p>
          <Standings scenario={scenario} outcome={outcome} system={system} />
        </>
      }
    >
      {tracks.length > 0 && outcome.targetGain > 0 && (
        <figure>
          <figcaption>
            Time against height on the other hill. Solid is the model with its range at the top, dashed is the measured
            time multiplied by height.
          </figcaption>
          <Drawn<TrackChartProps>
            tool={tool}
            server={props.chart}
            load={loadChart}
            chart={{
              description: `Time to the top of the other hill: ${standingsText({ scenario, outcome, system })}.`,
              tracks,
              height: outcome.targetGain,
              system,
            }}
          />
        </figure>
      )}
      <Folded small={props.small} words="Bike by bike, and what was read back">
        <BikeTable
          caption="On the other hill"
          scenario={scenario}
          outcome={outcome}
          system={system}
          rows={[
            ['gap', '95 % range of the gap', 'alone'],
            ['speed', 'Speed'],
            ['battery-energy', 'From the battery', true],
            ['battery-share', 'Share of the battery'],
            ['binds', 'Limit that binds'],
            ['binds-after', 'It binds after'],
            ['binds-height', 'From a height of'],
            ['time-lost', 'It costs'],
            ['time-proportional', 'Time by multiplying height'],
          ]}
        />
        <BikeTable
          caption="Read back from the measured hill"
          scenario={scenario}
          outcome={outcome}
          system={system}
          rows={[
            ['motor-power', 'Motor gave on average', true],
            ['motor-held', 'Motor holds below the limit', true],
          ]}
        />
        <dl class="facts">
          <div>
            <dt>Rolling resistance, measured hill</dt>
            <dd>
              <Output {...output} name="rolling" range />
            </dd>
          </div>
          <div>
            <dt>Grade, measured hill</dt>
            <dd>
              <Output {...output} name="grade" />
            </dd>
          </div>
          <div>
            <dt>Grade, other hill</dt>
            <dd>
              <Output {...output} name="target-grade" />
            </dd>
          </div>
          <div hidden={resultOf(outcome, 'endurance-time').si === undefined}>
            <dt>You hold this power for</dt>
            <dd>
              <Output {...output} name="endurance-time" />
            </dd>
          </div>
        </dl>
      </Folded>
    </Tool>
  );
}

export const mount = mountOf(BiggerHill);

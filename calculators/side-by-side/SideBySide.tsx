import type { Answer } from '../parts/answer.ts';
import { BarChart } from '../parts/BarChart.tsx';
import { BikeTable } from '../parts/BikeTable.tsx';
import { ENDURANCE, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { resultText } from '../parts/Output.tsx';
import { alongProfile, ProfileFigure } from '../parts/ProfileChart.tsx';
import { Standings, standingsText } from '../parts/Standings.tsx';
import { bikeName, columnsOf, resultOf, type Scenario } from '../scenario/index.ts';
import { sideBySide } from './outcome.ts';
import { sideBySideRemarks } from './remarks.ts';

/** Several bikes with one rider up one hill. */
export function sideBySideAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = sideBySide(scenario);
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

  const { profile } = outcome.bikes[0]?.climb.hill ?? {};

  return {
    spoken: standingsText({ scenario, outcome, system }),
    remarks: sideBySideRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline-of">Time to the top, its 95 % range, and the gap</p>
        <Standings scenario={scenario} outcome={outcome} system={system} />
      </>
    ),
    details: (
      <>
        {bars.length > 0 && (
          <figure>
            <figcaption>
              Time to the top. The thin line is the 95 % range of each; most of it is common to all.
            </figcaption>
            <BarChart
              {...{ series: true, description: `Climb times: ${standingsText({ scenario, outcome, system })}.`, bars }}
            />
          </figure>
        )}
        {profile && (
          <ProfileFigure
            profile={profile}
            bikes={outcome.bikes.map(({ ride }, bike) => ({
              label: bikeName(scenario, bike),
              spans: alongProfile(ride)?.spans,
            }))}
            system={system}
          />
        )}
        <Folded small={small} words="Bike by bike">
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
              ['binds', 'Limit that costs most'],
              ['binds-after', 'Met first after', true],
              ['binds-height', 'Met first at a height of', true],
              ['time-lost', 'Time that it costs', true],
            ]}
          />
          <dl class="facts" hidden={resultOf(outcome, 'endurance-time').si === undefined}>
            <Facts outcome={outcome} system={system} facts={ENDURANCE} />
          </dl>
        </Folded>
      </>
    ),
  };
}

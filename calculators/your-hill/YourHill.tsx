import type { Answer } from '../parts/answer.ts';
import { BikeTable } from '../parts/BikeTable.tsx';
import { ENDURANCE, type Fact, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { alongProfile } from '../parts/ProfileChart.tsx';
import { Standings, standingsText } from '../parts/Standings.tsx';
import { bikeName, type Scenario } from '../scenario/index.ts';
import { WITHOUT_PLACE } from '../scenario/profile-text.ts';
import { HillCharts } from './HillCharts.tsx';
import { yourHill } from './outcome.ts';
import { yourHillRemarks } from './remarks.ts';

const HILL: readonly Fact[] = [
  ['distance', 'Along the road'],
  ['gain', 'Top above bottom'],
  ['grade', 'Mean grade'],
  ['steepest', 'Steepest 100\u202fm'],
];

/** Several bikes with one rider along a hill as it is. */
export function yourHillAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = yourHill(scenario);
  const output = { outcome, system };

  return {
    spoken: standingsText({ scenario, outcome, system }),
    remarks: yourHillRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline-of">Time along this hill, its 95 % range, and the gap</p>
        <Standings scenario={scenario} outcome={outcome} system={system} />
      </>
    ),
    details: (
      <>
        {outcome.profile && (
          <HillCharts
            profile={outcome.profile}
            bikes={outcome.bikes.map(({ ride }, bike) => ({
              label: bikeName(scenario, bike),
              ride: alongProfile(ride),
            }))}
            first={outcome.first}
            system={system}
            answer={standingsText({ scenario, outcome, system })}
          />
        )}
        <dl class="facts">
          <Facts {...output} facts={HILL} />
          <Facts {...output} facts={ENDURANCE} ifKnown />
        </dl>
        <Folded small={small} words="Bike by bike">
          <BikeTable
            caption="Bike by bike"
            scenario={scenario}
            outcome={outcome}
            system={system}
            rows={[
              ['gap', '95 % range of the gap', 'alone'],
              ['time-mean-grade', 'Time at the mean grade', true],
              ['time-bias', 'More than at the mean grade', true],
              ['speed', 'Mean speed'],
              ['motor-power', 'Motor power on average', true],
              ['battery-energy', 'From the battery', true],
              ['battery-share', 'Share of the battery'],
              ['binds', 'Limit that costs most'],
              ['binds-after', 'Met first after', true],
              ['binds-height', 'Met first at a height of', true],
              ['time-lost', 'Time that it costs', true],
            ]}
          />
        </Folded>
        <p class="behind">{WITHOUT_PLACE}</p>
      </>
    ),
  };
}

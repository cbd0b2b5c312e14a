import type { Answer } from '../parts/answer.ts';
import { BikeTable } from '../parts/BikeTable.tsx';
import { ENDURANCE, type Fact, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { resultText } from '../parts/Output.tsx';
import { alongProfile, ProfileFigure } from '../parts/ProfileChart.tsx';
import { Standings, standingsText } from '../parts/Standings.tsx';
import { TrackChart } from '../parts/TrackChart.tsx';
import { bikeName, columnsOf, isGiven, resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { biggerHill } from './outcome.ts';
import { biggerHillRemarks } from './remarks.ts';

const HILLS: Fact[] = [
  ['rolling', 'Rolling resistance, measured hill', true],
  ['grade', 'Grade, measured hill'],
  ['target-grade', 'Grade, other hill'],
];

/** A measured climb carried to another hill. */
export function biggerHillAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = biggerHill(scenario);
  const carried = outcome.about?.centre.bikes ?? [];
  const { profile } = carried[0]?.climb.hill ?? {};
  const tracks = columnsOf(scenario, 'bike').flatMap((bike) => {
    const time = resultOf(outcome, 'time', bike + 1);
    if (time.si === undefined) return [];
    const points = alongProfile(carried[bike]?.ride)?.points;
    return [
      {
        label: bikeName(scenario, bike),
        text: resultText(time, system),
        time: time.si,
        low: time.low ?? time.si,
        high: time.high ?? time.si,
        proportional: resultOf(outcome, 'time-proportional', bike + 1).si,
        points: points && Array.from(points.distance, (x, i) => ({ x, time: points.time[i] ?? 0 })),
      },
    ];
  });
  const output = { outcome, system };

  return {
    spoken: standingsText({ scenario, outcome, system }),
    remarks: biggerHillRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline-of">
          Up the other hill with {valueText(scenario, isGiven(scenario, 'target-rider') ? 'target-rider' : 'rider')} and{' '}
          {valueText(scenario, isGiven(scenario, 'target-power') ? 'target-power' : 'power')}: time, its 95 % range, and
          the gap
        </p>
        <Standings scenario={scenario} outcome={outcome} system={system} />
      </>
    ),
    details: (
      <>
        {tracks.length > 0 && (profile || outcome.targetGain > 0) && (
          <figure>
            <figcaption>
              Time against {profile ? 'distance' : 'height'} on the other hill. Solid is the model with its range at the
              top, dashed {profile ? 'ends at' : 'is'} the measured time multiplied by height.
            </figcaption>
            <TrackChart
              {...{
                description: `Time to the top of the other hill: ${standingsText({ scenario, outcome, system })}.`,
                tracks,
                xKind: profile ? 'distance' : 'height',
                length: profile?.distance.at(-1) ?? outcome.targetGain,
                system,
              }}
            />
          </figure>
        )}
        {profile && (
          <ProfileFigure
            profile={profile}
            bikes={carried.map(({ ride }, bike) => ({
              label: bikeName(scenario, bike),
              spans: alongProfile(ride)?.spans,
            }))}
            system={system}
          />
        )}
        <Folded small={small} words="Bike by bike, and what was read back">
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
              ['binds', 'Limit that costs most'],
              ['binds-after', 'Met first after', true],
              ['binds-height', 'Met first at a height of', true],
              ['time-lost', 'Time that it costs', true],
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
            <Facts {...output} facts={HILLS} />
            <Facts {...output} facts={ENDURANCE} ifKnown />
          </dl>
        </Folded>
      </>
    ),
  };
}

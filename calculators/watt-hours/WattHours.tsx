import type { Answer } from '../parts/answer.ts';
import { BarChart } from '../parts/BarChart.tsx';
import { type Fact, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { ProfileFigure } from '../parts/ProfileChart.tsx';
import { numberOf, resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { wattHours } from './outcome.ts';
import { wattHoursRemarks } from './remarks.ts';

const FACTS: Fact[] = [
  ['needed-energy', 'Help all the way takes', true],
  ['usable-energy', 'You can use', true],
  ['nominal-energy', 'On the label'],
  ['battery-left', 'Left at the top', true],
  ['time', 'Time', true],
  ['climbs', 'Climbs on one charge', true],
  ['binds', 'Limit that binds'],
];
const END: Fact[] = [
  ['empty-at', 'Empty after a height of', true],
  ['empty-distance', 'Empty after', true],
  ['empty-lap', 'That is on climb'],
  ['time-without-help', 'The rest, without help', true],
  ['watts-per-kilogram-unassisted-equivalent', 'Same pace without help', true],
  ['watts-per-kilogram', 'You hold'],
];
const USE: Fact[] = [
  ['energy-per-climb', 'One climb takes', true],
  ['lift-energy', 'Lifting alone, all the way'],
  ['rider-share', 'Your share of the work', true],
  ['energy-per-distance', 'Over the distance', true],
  ['battery-energy', 'Drawn from the battery', true],
  ['battery-share', 'Share of the label', true],
];
const GAUGE: Fact[] = [
  ['gauge-energy', 'Taken', true],
  ['gauge-energy-per-distance', 'Over the distance', true],
  ['implied-efficiency', 'Turned into work at the crank', true],
];

/** What climbs take from a battery, and whether it gets you up. */
export function wattHoursAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = wattHours(scenario);
  const output = { outcome, system };
  const text = (name: string): string => resultText(resultOf(outcome, name), system);
  const several = numberOf(scenario, 'laps') !== 1;
  const climbs = several ? `${valueText(scenario, 'laps')} climbs take` : 'This climb takes';

  const { empty = false, read, climb } = outcome.about ?? {};
  const { profile } = climb?.hill ?? {};
  // where it ends, by height or on a flat road by distance; else how often it goes up
  const main = !empty ? 'climbs' : resultOf(outcome, 'empty-at').si === undefined ? 'empty-distance' : 'empty-at';
  const { reason, ...answer } = resultOf(outcome, main);
  const range = rangeText(answer, system);
  const inHead = empty && several ? [main, 'empty-lap'] : [main];
  const behind = (rows: Fact[]): Fact[] => rows.filter(([name]) => !inHead.includes(name));
  const bars = [
    ['nominal-energy', 'On the label'],
    ['usable-energy', 'Of that you can use'],
    ['needed-energy', climbs],
  ].flatMap(([name = '', label = '']) => {
    const { si, low, high } = resultOf(outcome, name);
    return si === undefined ? [] : [{ label, text: text(name), value: si, low, high }];
  });
  const tables: [caption: string, rows: Fact[]][] = [
    [empty ? 'Where it ends' : 'Where it ends: it lasts to the top', END],
    ['What it takes', USE],
    [`By the gauge: ${read?.energy ? 'limits, not 95\u202f%' : 'fill in its readings before and after'}`, GAUGE],
  ];
  const said = empty
    ? `Empty after ${text(main)}${several ? `, on climb ${text('empty-lap')}` : ''}`
    : `One charge: ${text(main)} climbs`;

  return {
    spoken: reason ?? `${said}${range && `, ${range}`}`,
    remarks: wattHoursRemarks(scenario, outcome),
    head: (
      <p class="headline">
        {empty ? 'Empty after ' : 'One charge: '}
        <Output {...output} name={main} class="big" />
        {empty && several && (
          <>
            , on climb <Output {...output} name="empty-lap" class="big" />
          </>
        )}
        {!empty && !reason && ' climbs'}
        <span class="range">
          {' '}
          {reason}
          {range && `95\u202f% range ${range}`}
        </span>
      </p>
    ),
    details: (
      <>
        <dl class="facts">
          <Facts {...output} facts={behind(FACTS)} />
        </dl>
        {bars.length > 0 && (
          <figure>
            <figcaption>Energy in the battery and energy for the way up, with 95 % ranges.</figcaption>
            <BarChart
              description={`Energy. ${bars.map((bar) => `${bar.label}: ${bar.text}`).join('. ')}. Climbs on one charge: ${text('climbs')}.`}
              bars={bars}
            />
          </figure>
        )}
        {profile && <ProfileFigure profile={profile} system={system} />}
        <Folded small={small} words="Where it ends, what it takes, and what a gauge says">
          {tables.map(([caption, rows]) => (
            <table key={caption} class="bikes">
              <caption>{caption}</caption>
              <tbody>
                {behind(rows).map(([name, label, withRange]) => (
                  <tr key={name} hidden={resultOf(outcome, name).si === undefined}>
                    <th scope="row">{label}</th>
                    <td>
                      <Output {...output} name={name} range={withRange ?? false} />
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          ))}
        </Folded>
      </>
    ),
  };
}

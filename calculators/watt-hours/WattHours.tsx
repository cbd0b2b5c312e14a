import { useMemo } from 'preact/hooks';
import type { BarChartProps } from '../parts/BarChart.tsx';
import { Drawn } from '../parts/Drawn.tsx';
import { Folded } from '../parts/Folded.tsx';
import { mountOf } from '../parts/mount.ts';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { Tool } from '../parts/Tool.tsx';
import { type IslandProps, useScenario } from '../parts/useScenario.ts';
import { wattHours as definition } from '../scenario/definitions/watt-hours.ts';
import { numberOf, resultOf, valueText } from '../scenario/index.ts';
import { type WattHoursOutcome, wattHours } from './outcome.ts';

type Row = [name: string, label: string, range?: boolean];

const END: Row[] = [
  ['empty-at', 'Empty after a height of', true],
  ['empty-distance', 'Empty after', true],
  ['empty-lap', 'That is on climb'],
  ['time-without-help', 'The rest, without help', true],
  ['watts-per-kilogram-unassisted-equivalent', 'Same pace without help', true],
  ['watts-per-kilogram', 'You hold'],
];
const USE: Row[] = [
  ['lift-energy', 'Lifting you and the bike'],
  ['rider-share', 'Your share of the work', true],
  ['energy-per-distance', 'From the battery, over the distance', true],
  ['battery-share', 'Share of the label', true],
];
const GAUGE: Row[] = [
  ['gauge-energy', 'Taken', true],
  ['gauge-energy-per-distance', 'Over the distance', true],
  ['implied-efficiency', 'Turned into work at the crank', true],
];

const loadRemarks = async () => (await import('./remarks.ts')).wattHoursRemarks;
const loadChart = async () => (await import('../parts/BarChart.tsx')).BarChart;

/** What climbs take from a battery, and whether it gets you up. */
export default function WattHours(props: IslandProps<BarChartProps, WattHoursOutcome>) {
  const tool = useScenario(definition, props);
  const { scenario } = tool;
  const { system } = scenario;
  const outcome = useMemo(() => wattHours(scenario), [scenario]);
  const output = { outcome, system };
  const text = (name: string): string => resultText(resultOf(outcome, name), system);
  const several = numberOf(scenario, 'laps') !== 1;
  const all = several ? `All ${valueText(scenario, 'laps')} climbs take` : 'This climb takes';

  const empty = outcome.about?.empty ?? false;
  // where it ends, by height or on a flat road by distance; else how often it goes up
  const main = !empty ? 'climbs' : resultOf(outcome, 'empty-at').si === undefined ? 'empty-distance' : 'empty-at';
  const answer = resultOf(outcome, main);
  const range = rangeText(answer, system);
  const inHead = empty && several ? [main, 'empty-lap'] : [main];
  const behind = (rows: Row[]): Row[] => rows.filter(([name]) => !inHead.includes(name));
  const facts: Row[] = [
    ['energy-per-climb', 'One climb takes', true],
    ...(several ? ([['battery-energy', all, true]] as Row[]) : []),
    ['usable-energy', 'You can use', true],
    ['nominal-energy', 'On the label'],
    ['battery-left', 'Left at the top', true],
    ['time', several ? 'Time of all climbs' : 'Time', true],
    ['climbs', 'Climbs on one charge', true],
    ['binds', 'Limit that binds'],
  ];
  const bars = (
    [
      ['nominal-energy', 'On the label'],
      ['usable-energy', 'Of that you can use'],
      ['battery-energy', all],
    ] as const
  ).flatMap(([name, label]) => {
    const { si, low, high } = resultOf(outcome, name);
    return si === undefined ? [] : [{ label, text: text(name), value: si, low, high }];
  });
  const read = outcome.about?.read;
  const tables: [caption: string, rows: Row[]][] = [
    [empty ? 'Where it ends' : 'Where it ends: it lasts to the top', END],
    ['What it goes into', several ? USE : [['battery-energy', all, true], ...USE]],
    [
      read?.ok
        ? 'By the gauge, with limits: worst cases, not 95\u202f%'
        : 'By the gauge: fill in its readings before and after, under “More”',
      GAUGE,
    ],
  ];
  const lap = several ? `, on climb ${text('empty-lap')}` : '';
  const said = empty ? `Empty after ${text(main)}${lap}` : `One charge: ${text(main)} climbs`;

  return (
    <Tool
      tool={tool}
      outcome={outcome}
      remarks={props.remarks}
      loadRemarks={loadRemarks}
      spoken={answer.si === undefined ? (answer.reason ?? '') : `${said}${range && `, ${range}`}`}
      head={
        <p class="headline">
          {empty ? 'Empty after ' : 'One charge: '}
          <Output {...output} name={main} class="big" />
          {empty && several && (
            <>
              , on climb <Output {...output} name="empty-lap" class="big" />
            </>
          )}
          {!empty && answer.si !== undefined && ' climbs'}
          <span class="range">
            {' '}
            {answer.reason}
            {range && `95\u202f% range ${range}`}
          </span>
        </p>
      }
    >
      <dl class="facts">
        {behind(facts).map(([name, label, withRange]) => (
          <div key={name}>
            <dt>{label}</dt>
            <dd>
              <Output {...output} name={name} range={withRange ?? false} />
            </dd>
          </div>
        ))}
      </dl>
      {bars.length > 0 && (
        <figure>
          <figcaption>Energy in the battery and energy for the way up, with 95 % ranges.</figcaption>
          <Drawn<BarChartProps>
            tool={tool}
            server={props.chart}
            load={loadChart}
            chart={{
              description: `Energy. ${bars.map((bar) => `${bar.label}: ${bar.text}`).join('. ')}. Climbs on one charge: ${text('climbs')}.`,
              bars,
            }}
          />
        </figure>
      )}
      <Folded small={props.small} words="Where it ends, what it goes into, and what a gauge says">
        {tables.map(([caption, rows]) => (
          <table key={caption} class="bikes">
            <caption>{caption}</caption>
            <tbody>
              {behind(rows).map(([name, label, withRange]) => (
                <tr key={name}>
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
    </Tool>
  );
}

export const mount = mountOf(WattHours);

import type { Answer } from '../parts/answer.ts';
import { BikeTable } from '../parts/BikeTable.tsx';
import { Folded } from '../parts/Folded.tsx';
import { LinesChart } from '../parts/LinesChart.tsx';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { formatQuantity, NO_VALUE, type System } from '../quantities/index.ts';
import {
  bikeName,
  columnsOf,
  isGiven,
  numberOf,
  type Result,
  resultOf,
  type Scenario,
  valueText,
} from '../scenario/index.ts';
import { clockText } from './clock.ts';
import { type PlanAbout, plan } from './outcome.ts';
import { RunSheet } from './RunSheet.tsx';
import { planRemarks } from './remarks.ts';

type Row = [name: string, label: string, range?: boolean];

const FINDS: Row[] = [
  ['repeats', 'Runs of each that it takes', true],
  ['repeats-planned', 'Runs of each in this plan'],
  ['runs', 'Runs in all'],
  ['chance', 'Chance to find what matters'],
  ['detectable-difference', 'Difference that it finds'],
  ['detectable-power', 'The same in power'],
  ['detectable-difference-all', 'Judging all pairs at once'],
  ['least-difference', 'No number of runs finds less than'],
  ['repeats-for-gaps', 'Runs of each for the gaps you expect'],
  ['scatter', 'Scatter of one run, ±', true],
  ['scatter-time', 'The same in time, ±', true],
];
const DAY: Row[] = [
  ['ends-at', 'Last run is back'],
  ['runs-in-light', 'Runs before last light'],
  ['repeats-in-light', 'Runs of each before it'],
  ['detectable-in-light', 'Difference that those find'],
  ['control-time', 'A control run takes'],
  ['rider-work', 'Your work on all runs'],
  ['legs-lowest', 'Work left above what you hold, at least'],
  ['power-lasting', 'Legs last to a target power of'],
  ['rest-lasting', 'Cool-down that your legs need'],
];

/** How many runs of each bike, in which order, on which day. */
export function planAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = plan(scenario);
  const { about } = outcome;
  const output = { outcome, system };
  const of = (name: string): Result => resultOf(outcome, name);
  const said = (name: string): string => resultText(of(name), system);
  const main = about && (isGiven(scenario, 'repeats') || about.needed === null) ? 'repeats-planned' : 'repeats';
  const { reason } = of('repeats');
  const range = rangeText(of(main), system);
  const found =
    of('detectable-difference').si === undefined ? '' : `find a difference of ${said('detectable-difference')}`;
  const words = `${said(main)} ${of(main).si === 1 ? 'run' : 'runs'} of each bike`;
  const table = (caption: string, rows: Row[]) => (
    <table class="bikes" key={caption}>
      <caption>{caption}</caption>
      <tbody>
        {rows
          .filter(([name]) => name !== main)
          .map(([name, label, withRange = false]) => (
            <tr key={name} hidden={of(name).si === undefined}>
              <th scope="row">{label}</th>
              <td>
                <Output {...output} name={name} range={withRange} words={wordsOf(of(name), system)} />
              </td>
            </tr>
          ))}
      </tbody>
    </table>
  );

  const tables = [table('What it finds', FINDS), table('The day', DAY)];

  return {
    spoken: about ? `${words}${found && `, ${found}`}, back at ${clockText(about.schedule.end)}` : (reason ?? ''),
    remarks: planRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline">
          <Output {...output} name={main} class="big" />
          {about && (of(main).si === 1 ? ' run of each bike' : ' runs of each bike')}
          <span class="range">
            {' '}
            {(about === undefined || about.needed === null) && reason}
            {range}
          </span>
        </p>
        {about && (
          <p class="headline-of">
            {found ? `They ${found}` : 'They show nothing'}.{' '}
            {scenario.controls > 0 &&
              `With ${scenario.controls} control ${scenario.controls === 1 ? 'run' : 'runs'} the`}
            {scenario.controls === 0 && 'The'} last is back at {clockText(about.schedule.end)}.
          </p>
        )}
      </>
    ),
    details: (
      <>
        <ul class="standings">
          {columnsOf(scenario, 'bike').map((bike) => (
            <li key={bike}>
              <span class="who">{bikeName(scenario, bike)}</span>{' '}
              <Output {...output} name="time" bike={bike + 1} class="middle" />
              <span class="behind">expected</span>
            </li>
          ))}
        </ul>
        {about && <Choices scenario={scenario} about={about} said={said('repeats')} />}
        <Folded small={small} words="What it finds, the day, and bike by bike">
          {small ? tables : <div class="beside">{tables}</div>}
          <BikeTable
            caption="Bike by bike"
            scenario={scenario}
            outcome={outcome}
            system={system}
            rows={[
              ['gap', 'Expected gap to the next faster'],
              ['gap-chance', 'Chance that it shows'],
              ['repeats-for-gap', 'Runs of each that show its nearest gap'],
              ['motor-power', 'Motor gives'],
              ['battery-energy', 'One run takes'],
              ['battery-left', 'Battery at the end'],
              ['swaps', 'Full batteries on the way'],
            ]}
          />
        </Folded>
      </>
    ),
    sheet: about && !small && <RunSheet scenario={scenario} about={about} />,
  };
}

/** Results that are not rounded to the nearest: the end of the day is a time by the clock, and nothing is promised that the legs do not hold. */
function wordsOf({ name, kind, si }: Result, system: System): string | undefined {
  if (si === undefined) return undefined;
  if (name === 'ends-at') return clockText(si);
  if (name === 'power-lasting') return formatQuantity(Math.floor(si), kind, system);
  return name === 'rest-lasting' ? formatQuantity(Math.ceil(si), kind, system) : undefined;
}

/** What each number of runs finds: as a chart and as a table. */
function Choices({ scenario, about, said }: { scenario: Scenario; about: PlanAbout; said: string }) {
  const { system } = scenario;
  const wanted = valueText(scenario, 'chance');
  const matters = numberOf(scenario, 'difference');
  const text = (si: number | null, kind: Result['kind']): string =>
    si === null ? NO_VALUE : formatQuantity(si, kind, system);
  const points = about.choices.flatMap(({ repeats, difference }) =>
    difference === null ? [] : [{ x: repeats, y: difference }],
  );
  // one run of each finds nothing and has no place among them
  const here = points.find(({ x }) => x === about.repeats);
  const [first, last] = [points[0], points.at(-1)];
  const caption = 'What other numbers of runs find';
  return (
    <>
      {first && last && (
        <figure class="alternatives">
          <figcaption>
            Smallest difference that is found with a chance of {wanted}, against the runs of each bike.
          </figcaption>
          <LinesChart
            {...{
              description: `Runs of each bike needed: ${said}. Difference found with a chance of ${wanted}: ${points
                .map(({ x, y }) => `${text(y, 'seconds')} with ${x} runs of each`)
                .join(', ')}.`,
              lines: [
                { label: 'found', points, here: here?.y ?? first.y },
                {
                  label: 'matters',
                  points: [first, last].map(({ x }) => ({ x, y: matters })),
                  here: matters,
                },
              ],
              xKind: 'count',
              yKind: 'seconds',
              here: here && { x: here.x, label: `${here.x} runs of each` },
              system,
            }}
          />
        </figure>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="scrolls alternatives" aria-label={caption} tabIndex={0}>
        <table>
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Runs of each</th>
              <th scope="col">In all</th>
              <th scope="col">Find</th>
              <th scope="col">That is</th>
              <th scope="col">Chance for {valueText(scenario, 'difference')}</th>
            </tr>
          </thead>
          <tbody>
            {about.choices.map((choice) => (
              <tr key={choice.repeats} class={choice.repeats === about.repeats ? 'chosen' : undefined}>
                <th scope="row">{choice.repeats}</th>
                <td>{choice.runs}</td>
                <td>{text(choice.difference, 'seconds')}</td>
                <td>{text(choice.power, 'power')}</td>
                <td>{text(choice.chance, 'percent')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

import { bikeName, type Scenario, valueText } from '../scenario/index.ts';
import { clockText } from './clock.ts';
import type { PlanAbout } from './outcome.ts';

/** What the method asks: short enough to be read at the foot of the hill. */
const KEEP = [
  'The same tyres and pressure on every bike; log the pressure.',
  'The same power, cadence and seat, full assist, the same setting.',
  'Zero the meter at every change of bike, and set that bike’s crank length.',
  'Roll through the start line at climbing speed, ride the same line.',
  'Read mean power over exactly the timed stretch, zeros included.',
  'Weigh yourself with bottle, and every bike to 0.1 kg.',
  'Wind below 1 m/s; write it down. Start with cool motors.',
  'Decide beforehand what voids a run; keep every run.',
  'Others use the trail: give way, and stop when you feel unwell.',
];

/** Runs that fit one sheet with room for a pencil. */
const MOST_ROWS = 40;

/** The day on one sheet, to be filled in with a pencil; on a screen, its order and its times. */
export function RunSheet({ scenario, about }: { scenario: Scenario; about: PlanAbout }) {
  const { runs: all } = about.schedule;
  const runs = all.slice(0, MOST_ROWS);
  const caption = 'Runs in their order';
  return (
    <div class="run-sheet" style={{ '--runs': String(runs.length) }}>
      <h2>Run sheet</h2>
      <p class="pencil">
        <span>Date</span>
        <span>Tyres, pressure</span>
        <span>Wind</span>
        <span>Rider, weighed</span>
      </p>
      <p>
        {valueText(scenario, 'distance')}, target {valueText(scenario, 'power')}. Starts are by the clock if all goes
        well; the order counts, not the clock.
        {all.length > MOST_ROWS && ` These are the first ${MOST_ROWS} of ${all.length}.`}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="scrolls" aria-label={caption} tabIndex={0}>
        <table>
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Run</th>
              <th scope="col">Start</th>
              <th scope="col">Bike</th>
              {['Time', 'Power', 'Gauge before', 'after', 'Note'].map((blank) => (
                <th scope="col" class="blank" key={blank}>
                  {blank}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {runs.map(({ bike, start, swapped }, i) => (
              <tr key={i}>
                <th scope="row">{i + 1}</th>
                <td>
                  <data value={String(start)}>{clockText(start)}</data>
                </td>
                <td class="who">
                  {bike === null ? 'Control, no assistance' : bikeName(scenario, bike)}
                  {swapped && ', full battery'}
                </td>
                <td class="blank" />
                <td class="blank" />
                <td class="blank" />
                <td class="blank" />
                <td class="blank" />
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <h3>Keep the same</h3>
      <ul>
        {KEEP.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </div>
  );
}

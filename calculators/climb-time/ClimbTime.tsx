import type { Answer } from '../parts/answer.ts';
import { CurveChart } from '../parts/CurveChart.tsx';
import { differenceText } from '../parts/differences.ts';
import { type Fact, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { formatDuration, formatQuantity } from '../quantities/index.ts';
import { motorOf, resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { climbTime } from './outcome.ts';
import { climbTimeRemarks } from './remarks.ts';

const FACTS: [string, string][] = [
  ['speed', 'Speed'],
  ['vertical-speed', 'Height per hour'],
  ['grade', 'Grade'],
  ['watts-per-kilogram', 'Your power to weight'],
  ['rider-energy', 'Work of your legs'],
  ['battery-energy', 'From the battery'],
  ['battery-share', 'Share of the battery'],
  ['motor-power', 'Motor power on average'],
  ['binds', 'Limit that costs most'],
];

/** Shown only where they have a value. */
const IF_BOUND: Fact[] = [
  ['binds-after', 'Met first after', true],
  ['binds-height', 'Met first at a height of', true],
  ['time-lost', 'Time that it costs', true],
  ['limit-power', 'Motor that reaches the assist limit', true],
  ['endurance-time', 'You hold this power for', true],
];

const SPLIT: [string, string][] = [
  ['power-gravity', 'Lifting you and the bike'],
  ['power-rolling', 'Tyres and bearings'],
  ['power-air', 'Pushing the air'],
  ['power-drive', 'Lost in the drive'],
];

/** How long one bike takes up one hill, where its power goes, and what would change the time. */
export function climbTimeAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = climbTime(scenario);
  const time = resultOf(outcome, 'time');
  const crank = resultOf(outcome, 'crank-power').si ?? 0;
  const answer = resultText(time, system);
  const range = rangeText(time, system);
  const motor = motorOf(scenario, 0);
  const output = { outcome, system };

  return {
    spoken: time.si === undefined ? (time.reason ?? '') : `Climb time ${answer}${range && `, ${range}`}`,
    remarks: climbTimeRemarks(scenario, outcome),
    head: (
      <p class="headline">
        <Output {...output} name="time" class="big" range="named" />
      </p>
    ),
    details: (
      <>
        <dl class="facts">
          {FACTS.map(([name, label]) => (
            <div key={name}>
              <dt>{label}</dt>
              <dd>
                <Output {...output} name={name} range={name === 'battery-energy'} />
                {name === 'battery-share' && <span class="range"> of {valueText(scenario, 'battery')}</span>}
              </dd>
            </div>
          ))}
          <Facts {...output} facts={IF_BOUND} ifKnown />
        </dl>
        {time.si !== undefined && outcome.curve.length > 0 && (
          <figure>
            <figcaption>Time against motor power on this hill with this rider. The band is the 95 % range.</figcaption>
            <CurveChart
              {...{
                description: `Climb time against motor power: ${outcome.curve
                  .filter((_, i) => i % 4 === 0)
                  .map((point) => `${formatDuration(point.time)} at ${formatQuantity(point.motor, 'power', system)}`)
                  .join(', ')}. This bike takes ${answer}.`,
                points: outcome.curve.map((point) => ({ ...point, x: point.motor, value: point.time })),
                xKind: 'power',
                here: {
                  x: motor,
                  value: time.si,
                  low: time.low ?? time.si,
                  high: time.high ?? time.si,
                  label: `this bike, ${answer}`,
                },
                system,
              }}
            />
          </figure>
        )}
        <Folded small={small} words="Where the power goes, and what would change the time">
          <table>
            <caption>Where the power goes</caption>
            <tbody>
              {SPLIT.map(([name, label]) => (
                <tr key={name}>
                  <th scope="row">{label}</th>
                  <td>
                    <Output {...output} name={name} />
                  </td>
                  <td class="share-bar" aria-hidden="true">
                    <span
                      style={{
                        width: `${Math.max(0, Math.min(100, (100 * (resultOf(outcome, name).si ?? 0)) / (crank || 1)))}%`,
                      }}
                    />
                  </td>
                </tr>
              ))}
              <tr class="total">
                <th scope="row">At the crank</th>
                <td>
                  <Output {...output} name="crank-power" />
                </td>
                <td />
              </tr>
            </tbody>
          </table>
          {outcome.effects.length > 0 && (
            <table>
              <caption>What would change the time</caption>
              <thead>
                <tr>
                  <th scope="col">Change</th>
                  <th scope="col">More</th>
                  <th scope="col">Less</th>
                </tr>
              </thead>
              <tbody>
                {outcome.effects.map(({ change, more, less }) => (
                  <tr key={change}>
                    <th scope="row">{change}</th>
                    <td>{differenceText(more, { sign: true })}</td>
                    <td>{differenceText(less, { sign: true })}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </Folded>
      </>
    ),
  };
}

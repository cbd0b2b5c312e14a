import type { Answer } from '../parts/answer.ts';
import { BikeTable } from '../parts/BikeTable.tsx';
import { Folded } from '../parts/Folded.tsx';
import { LinesChart } from '../parts/LinesChart.tsx';
import { Output, resultText } from '../parts/Output.tsx';
import { formatQuantity } from '../quantities/index.ts';
import { bikeName, numberOf, resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { torqueAtCadence } from './outcome.ts';
import { torqueAtCadenceRemarks } from './remarks.ts';

/** What each motor gives at one cadence and one rider power. */
export function torqueAtCadenceAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = torqueAtCadence(scenario);
  const cadence = numberOf(scenario, 'cadence');
  const here = `at ${valueText(scenario, 'cadence')}`;
  const rider = valueText(scenario, 'power');
  const each = outcome.motors.map(({ curve, power, peak }, i) => ({
    label: bikeName(scenario, i),
    text: resultText(resultOf(outcome, 'motor-power', i + 1), system),
    limit: resultText(resultOf(outcome, 'binds', i + 1), system),
    points: curve.map((point) => ({ x: point.cadence, y: point.power })),
    here: power,
    // of a motor that is not there, or that waits for somebody to pedal, no limit is worth a word
    limited: peak > 0 && numberOf(scenario, 'power') > 0,
  }));

  return {
    spoken: `${here}: ${each.map(({ label, text, limit, limited }) => `${label} ${text}${limited ? `, limit ${limit}` : ''}`).join('; ')}`,
    remarks: torqueAtCadenceRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline-of">
          What the motor adds {here} to {rider} of yours, and its limit there
        </p>
        <ul class="standings">
          {each.map(({ label, limited }, i) => (
            <li key={i}>
              <span class="who">{label}</span>{' '}
              <Output outcome={outcome} name="motor-power" bike={i + 1} system={system} class="middle" />
              <span class="behind" hidden={!limited}>
                limit: <Output outcome={outcome} name="binds" bike={i + 1} system={system} />
              </span>
            </li>
          ))}
        </ul>
      </>
    ),
    details: (
      <>
        <figure>
          <figcaption>Output against cadence with {rider} from the rider.</figcaption>
          <LinesChart
            {...{
              description: `Output against cadence. ${each
                .map(
                  ({ label, text, points }) =>
                    `${label}: ${text} ${here}; ${points
                      .map(
                        ({ x, y }) =>
                          `${formatQuantity(y, 'power', system)} at ${formatQuantity(x, 'cadence', system)}`,
                      )
                      .join(', ')}.`,
                )
                .join(' ')}`,
              lines: each,
              xKind: 'cadence',
              yKind: 'power',
              here: { x: cadence, label: here },
              system,
            }}
          />
        </figure>
        <Folded small={small} words="Motor by motor">
          <BikeTable
            caption="Motor by motor"
            scenario={scenario}
            outcome={outcome}
            system={system}
            rows={[
              ['torque-limit', `Its torque allows ${here}`],
              ['support-limit', `Its support allows with ${rider}`],
              ['motor', 'Its peak', 'input'],
              ['torque-cadence', 'Torque no longer limits from'],
              ['rider-for-peak', 'Your power for its peak'],
            ]}
          />
        </Folded>
      </>
    ),
  };
}

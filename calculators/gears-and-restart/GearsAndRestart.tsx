import type { Answer } from '../parts/answer.ts';
import { BarChart } from '../parts/BarChart.tsx';
import { type Fact, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { gearsAndRestart, type Verdict } from './outcome.ts';
import { gearsAndRestartRemarks } from './remarks.ts';

const WORDS: Record<Verdict, (ramp: string) => string> = {
  'holds-and-restarts': (ramp) => `By force alone you can keep going on ${ramp}, and start again on it`,
  holds: (ramp) => `By force alone you can keep going on ${ramp}, but not start again on it`,
  'too-steep': (ramp) => `${ramp} is too steep to keep going`,
};

const STEEPEST: [string, string][] = [
  ['rider-alone', 'You without the motor'],
  ['steepest-motor', 'Motor at the crank, alone'],
  ['steepest-held', 'Motor at the crank, and you'],
  ['steepest-restart', 'Motor at the crank, first push'],
  ['steepest-hub', 'Same torque in a hub, alone'],
  ['steepest-hub-held', 'Same torque in a hub, and you'],
  ['steepest-hub-restart', 'Same torque in a hub, first push'],
];
/** Those that stand in the head. */
const ANSWERS: [string, string][] = [
  ['steepest-held', 'Keep going up to'],
  ['steepest-restart', 'Start again up to'],
];

/** The steepest ramp on which a bike keeps going, and starts again, in its lowest gear. */
export function gearsAndRestartAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = gearsAndRestart(scenario);
  const output = { outcome, system };
  const ramp = valueText(scenario, 'grade');
  const words = WORDS[outcome.verdict](ramp);
  const bars = STEEPEST.flatMap(([name, label]) => {
    const result = resultOf(outcome, name);
    const { si, low, high } = result;
    return si === undefined ? [] : [{ label, text: resultText(result, system), value: si, low, high }];
  });
  const facts: Fact[] = [
    ['force-needed', `Force that ${ramp} takes`, true],
    ['wheel-force', 'Force of you and the motor', true],
    ['wheel-torque', 'Motor’s torque at the wheel'],
    ['speed', `Speed at ${valueText(scenario, 'cadence')}`],
    ['verdict', 'In one word'],
  ];

  return {
    spoken: `${words}. ${ANSWERS.map(([name, label]) => `${label} ${resultText(resultOf(outcome, name), system)}`).join('. ')}`,
    remarks: gearsAndRestartRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline-of">{words}</p>
        <ul class="standings">
          {ANSWERS.map(([name, label]) => (
            <li key={name}>
              <span class="who">{label}</span> <Output {...output} name={name} class="middle" range />
            </li>
          ))}
        </ul>
      </>
    ),
    details: (
      <>
        <dl class="facts">
          <Facts {...output} facts={facts} />
        </dl>
        {bars.length > 0 && (
          <figure>
            <figcaption>The steepest ramp in the lowest gear. The thin lines are 95 % ranges.</figcaption>
            <BarChart
              {...{
                description: `Steepest ramp: ${bars.map((bar) => `${bar.label} ${bar.text}`).join('; ')}. The ramp has ${ramp}.`,
                bars,
                line: { value: outcome.grade, label: `this ramp, ${ramp}` },
              }}
            />
          </figure>
        )}
        <Folded small={small} words="In figures">
          <table>
            <caption>The steepest ramp, and its 95 % range</caption>
            <tbody>
              {STEEPEST.map(([name, label]) => {
                const inHead = ANSWERS.some(([answer]) => answer === name);
                const result = resultOf(outcome, name);
                return (
                  <tr key={name}>
                    <th scope="row">{label}</th>
                    <td>{inHead ? resultText(result, system) : <Output {...output} name={name} />}</td>
                    <td class="range">{rangeText(result, system)}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </Folded>
      </>
    ),
  };
}

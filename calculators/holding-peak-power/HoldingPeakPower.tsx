import type { Answer } from '../parts/answer.ts';
import { type Fact, Facts } from '../parts/Facts.tsx';
import { Folded } from '../parts/Folded.tsx';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { formatDuration, formatQuantity, type System } from '../quantities/index.ts';
import { resultOf, type Scenario, valueText } from '../scenario/index.ts';
import { type HoldingPeakPowerOutcome, holdingPeakPower } from './outcome.ts';
import { PowerChart, type PowerChartProps } from './PowerChart.tsx';
import { holdingPeakPowerRemarks } from './remarks.ts';

const FACTS: Fact[] = [
  ['held-power', 'It gives for ever'],
  ['limit-height', 'Heat limits it from a height of', true],
  ['mean-power', 'Mean over this climb', true],
  ['time', 'Time to the top', true],
  ['time-lost', 'Lost to heat', true],
  ['binds', 'Limit that binds'],
];
const HEATING: Fact[] = [
  ['torque-ratio', 'Torque, of what it holds for ever'],
  ['final-rise', 'Warming it would come to, of what is permitted', true],
  ['hold-time-lower-gear', 'A gear lower it holds', true],
  ['limit-time', 'Heat limits it here after', true],
  ['limit-distance', 'That is after', true],
  ['time-cold', 'Time if heat never did', true],
];

/** How long a motor holds its peak, and what that does to a climb. */
export function holdingPeakPowerAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = holdingPeakPower(scenario);
  const output = { outcome, system };
  const { about, stages } = outcome;
  const hold = resultOf(outcome, 'hold-time');
  const range = rangeText(hold, system);
  const peak = valueText(scenario, 'motor');
  const forEver = about !== undefined && about.climb.motorPower > 0 && hold.si === undefined;
  const reason = forEver ? undefined : hold.reason;
  const said = forEver ? 'for ever' : `for ${resultText(hold, system)}`;
  const chart = chartOf(outcome, system);
  const rows = (all: Fact[]) =>
    all.map(([name, label, withRange]) => (
      <tr key={name}>
        <th scope="row">{label}</th>
        <td>
          <Output {...output} name={name} range={withRange ?? false} />
        </td>
      </tr>
    ));

  return {
    spoken: reason ?? `It holds ${peak} ${said}${range && `, ${range}`}`,
    remarks: holdingPeakPowerRemarks(scenario, outcome),
    head: (
      <p class="headline">
        {forEver ? (
          <>
            It holds {peak}{' '}
            <strong class="big" style={{ fontFamily: 'var(--prose)' }}>
              for ever
            </strong>
          </>
        ) : (
          <>
            {!reason && `It holds ${peak} for `}
            <Output {...output} name="hold-time" class="big" range="named" />
            {reason && <span class="range"> {reason}</span>}
          </>
        )}
      </p>
    ),
    details: (
      <>
        <dl class="facts">
          <Facts {...output} facts={FACTS} />
        </dl>
        {about && stages.length > 0 && about.climb.motorPower > 0 && (
          <figure>
            <figcaption>
              What the motor gives on the way up.
              {chart.between && ' The band is from when to when it may come down, at 95 %.'}
            </figcaption>
            <PowerChart {...chart} />
          </figure>
        )}
        <Folded small={small} words="How it heats">
          <table class="bikes">
            <caption>How it heats</caption>
            <tbody>
              {forEver && rows([['hold-time', `It holds ${peak}`]])}
              {rows(HEATING)}
            </tbody>
          </table>
        </Folded>
      </>
    ),
  };
}

function chartOf(outcome: HoldingPeakPowerOutcome, system: System): PowerChartProps {
  const { about, stages } = outcome;
  const text = (si: number): string => formatQuantity(si, 'power', system);
  const steps = stages.map(({ from, motorPower, time }, i) => ({
    from: from.time,
    power: motorPower,
    label: i < stages.length - 1 ? `${text(motorPower)} for ${formatDuration(time)}` : text(motorPower),
  }));
  const end = resultOf(outcome, 'time').si ?? 0;
  const { low, high } = about?.limitTime ?? { low: end, high: end };
  return {
    description: `Motor power: ${steps.map(({ label }) => label).join(', then ')}, to the top at ${formatDuration(end)}. The peak holds for ${resultText(resultOf(outcome, 'hold-time'), system)}.`,
    steps,
    end,
    between:
      low < end
        ? { low: Math.max(0, low), high: Math.min(end, high), power: resultOf(outcome, 'held-power').si ?? 0 }
        : undefined,
    system,
  };
}

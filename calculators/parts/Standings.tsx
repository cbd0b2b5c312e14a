import type { System } from '../quantities/index.ts';
import { bikeName, columnsOf, type Outcome, resultOf, type Scenario } from '../scenario/index.ts';
import { Output, rangeText, resultText } from './Output.tsx';

interface Props {
  scenario: Scenario;
  outcome: Outcome;
  system: System;
}

/** The times of several bikes as the answer of the page: short enough to stay in view on a phone. */
export function Standings({ scenario, outcome, system }: Props) {
  return (
    <>
      <ul class="standings">
        {columnsOf(scenario, 'bike').map((bike) => (
          <li key={bike}>
            <span class="who">{bikeName(scenario, bike)}</span>{' '}
            <Output outcome={outcome} name="time" bike={bike + 1} system={system} class="middle" range />
            <span class="behind">
              <Behind scenario={scenario} outcome={outcome} system={system} bike={bike + 1} />
            </span>
          </li>
        ))}
      </ul>
      <Reasons outcome={outcome} />
    </>
  );
}

/** Why a bike has no time, once for all that have the same reason. */
function Reasons({ outcome }: { outcome: Outcome }) {
  const reasons = outcome.results.flatMap(({ name, si, reason }) =>
    name === 'time' && si === undefined && reason ? [reason] : [],
  );
  return [...new Set(reasons)].map((reason) => (
    <p key={reason} class="problem">
      {reason}
    </p>
  ));
}

function Behind({ outcome, system, bike }: Props & { bike: number }) {
  const gap = resultOf(outcome, 'gap', bike);
  if (gap.si === undefined) return <Output outcome={outcome} name="gap" bike={bike} system={system} />;
  return (
    <>
      <Output outcome={outcome} name="gap" bike={bike} system={system} words={gap.si === 0 ? 'first up' : undefined} />
      {gap.si !== 0 && ' behind'}
    </>
  );
}

/** The same in words. */
export function standingsText({ scenario, outcome, system }: Props): string {
  return columnsOf(scenario, 'bike')
    .map((bike) => {
      const time = resultOf(outcome, 'time', bike + 1);
      const range = rangeText(time, system);
      return `${bikeName(scenario, bike)} ${resultText(time, system)}${range && `, ${range}`}`;
    })
    .join('; ');
}

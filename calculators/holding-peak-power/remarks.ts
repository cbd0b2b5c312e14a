import { formatQuantity } from '../quantities/index.ts';
import {
  mainCause,
  NOBODY_PEDALS,
  type Remark,
  ROLLS_BY_ITSELF,
  resultOf,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';
import { wayOf } from '../scenario/limit-remarks.ts';
import type { HoldingPeakPowerOutcome } from './outcome.ts';

type About = NonNullable<HoldingPeakPowerOutcome['about']>;

/** What the reader should know about the answer, in sentences. */
export function holdingPeakPowerRemarks(scenario: Scenario, outcome: HoldingPeakPowerOutcome): Remark[] {
  const { notes, about } = outcome;
  if (!about) return notes;
  const { climb, heat, hold, limitTime, ratio, lower, hot, unsure, faded } = about;
  const remarks: Remark[] = [...notes];
  const say = (tone: Remark['tone'], sentence: string): void => {
    remarks.push({ tone, text: sentence });
  };
  const text = (name: string): string => {
    const { si, kind } = resultOf(outcome, name);
    return formatQuantity(si, kind, scenario.system);
  };
  const peak = formatQuantity(climb.motorPower, 'power', scenario.system);

  if (climb.motorPower === 0) {
    say('plain', 'Without a motor there is nothing to get hot.');
    return remarks;
  }
  if (resultOf(outcome, 'time').si === undefined) say('wrong', climb.riderPower === 0 ? NOBODY_PEDALS : STANDS_STILL);
  else if (climb.riderPower === 0) say('caution', ROLLS_BY_ITSELF);
  else if (hot) say('caution', whatHeatDoes(outcome, about, text));
  else if (ratio > 1) {
    const heats = limitTime.value < Number.POSITIVE_INFINITY ? 'would limit it only later' : 'never limits that';
    say('plain', `On this hill it gives all it can to the top${faded ? '' : `, ${peak}`}: heat ${heats}.`);
    if (unsure) say('caution', 'It may not: at the worse end of what is not known, heat limits it on the way.');
  }
  if (heat.rise >= 1 && ratio > 1)
    say('plain', 'It starts as hot as it may get, so it has no peak to give until it has cooled down.');
  if (ratio <= 1) say('plain', `${peak} at this cadence is no more torque than it holds for ever.`);
  else if (heat.rise < 1) say('plain', inLowerGear(scenario, outcome, lower));
  if (faded && ratio > 1)
    say('plain', 'The assist limit takes part of its output on this hill, so here it lasts longer than at its peak.');
  const cause = ratio > 1 && heat.rise < 1 && mainCause(hold);
  if (cause) say('plain', `Most of the doubt about how long it lasts is ${cause.cause}.`);
  if (ratio > 1) say('plain', 'Real motors come down gradually and by rules of their own; here it is one step.');
  return remarks;
}

/** Where heat limits the motor, and what it costs. */
function whatHeatDoes(
  outcome: HoldingPeakPowerOutcome,
  { climb: { hill }, unsure }: About,
  text: (name: string) => string,
): string {
  const from = resultOf(outcome, 'limit-distance').si === 0;
  const where =
    resultOf(outcome, 'limit-height').si === undefined ? text('limit-distance') : `${text('limit-height')} of climbing`;
  const perhaps = unsure ? ' It may hold to the top all the same: that lies within what is not known.' : '';
  return `Heat limits the motor ${from ? 'from the start' : `after ${where}`}: from there it gives ${text('held-power')}. On this ${wayOf(hill)} that costs ${text('time-lost')}.${perhaps}`;
}

/** What a quicker cadence would do: copper losses go with the square of the torque. */
function inLowerGear(scenario: Scenario, outcome: HoldingPeakPowerOutcome, lower: About['lower']): string {
  const turns = formatQuantity(lower.cadence, 'cadence', scenario.system);
  const { si } = resultOf(outcome, 'hold-time-lower-gear');
  const lasts = si === undefined ? 'for ever' : formatQuantity(si, 'duration', scenario.system);
  return `In a lower gear, at ${turns}, the same power takes less torque, heats the copper less and would last ${lasts}.`;
}

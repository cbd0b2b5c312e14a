import { formatQuantity } from '../quantities/index.ts';
import {
  mainCause,
  NOBODY_PEDALS,
  numberOf,
  type Remark,
  type Result,
  resultOf,
  type Scenario,
  valueText,
} from '../scenario/index.ts';
import type { GearsAndRestartOutcome } from './outcome.ts';

/** Speed, m/s, below which a bike hardly keeps its balance: an assumption. */
const WOBBLE = 0.8;

/** What the reader should know about the answer, in sentences. */
export function gearsAndRestartRemarks(scenario: Scenario, outcome: GearsAndRestartOutcome): Remark[] {
  const { grade, verdict, held, turns, speed, helped } = outcome;
  const text = (si: number | undefined, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  const result = (name: string): string => {
    const { si, kind } = resultOf(outcome, name);
    return text(si, kind);
  };
  const ramp = valueText(scenario, 'grade');
  const remarks: Remark[] = [];
  const say = (tone: Remark['tone'], words: string): void => {
    remarks.push({ tone, text: words });
  };

  say(
    'caution',
    'This is force alone. Whether the tyre grips and the front wheel stays down is not worked out here, and on a steep ramp it often decides first.',
  );
  if (numberOf(scenario, 'power') === 0) say('wrong', NOBODY_PEDALS);
  const needed = resultOf(outcome, 'force-needed').si ?? 0;
  if (needed > 0)
    say(
      verdict === 'too-steep' ? 'caution' : 'plain',
      `A ramp of ${ramp} takes ${result('force-needed')} at the ground; you ${helped ? 'and the motor ' : ''}have ${result('wheel-force')} in the lowest gear.`,
    );
  else say('plain', `On a slope of ${ramp} the bike rolls by itself.`);
  if (held.low < grade && grade < held.high)
    say('caution', `${ramp} lies inside the range of what you can keep going on: it may go, or not.`);
  if (verdict === 'holds')
    say(
      'caution',
      'Rolling, you get up; if you stop, there is no starting again. Keep going, or walk to where it is flatter.',
    );
  if (verdict === 'too-steep' && (resultOf(outcome, 'steepest-restart').si ?? Number.POSITIVE_INFINITY) >= grade)
    say(
      'caution',
      'The first push would go, but at this power and cadence you would not keep going. The same power at a slower cadence pushes harder, as far as balance allows.',
    );
  const cause = mainCause(held);
  if (cause && held.value > 0 && Number.isFinite(cause.high))
    say(
      'plain',
      `Most of the doubt is ${cause.cause}: that alone puts the steepest ramp that you can keep going on anywhere from ${text(cause.low, 'grade')} to ${text(cause.high, 'grade')}.`,
    );
  if (resultOf(outcome, 'wheel-torque').si !== 0) {
    const torque = valueText(scenario, 'torque');
    const hub = resultOf(outcome, 'steepest-hub').si;
    const crank = resultOf(outcome, 'steepest-motor').si;
    const alone =
      hub === undefined || crank === undefined
        ? ''
        : ` By itself it holds ${text(hub, 'grade')}, where the motor at the crank holds ${text(crank, 'grade')}.`;
    say(
      'plain',
      turns < 1
        ? `In this gear the motor’s ${torque} at the crank are ${result('wheel-torque')} at the wheel. In a hub ${torque} stay ${torque} in every gear.${alone}`
        : `In this gear the wheel turns as fast as the crank or faster, so the motor at the crank gains nothing over a hub of ${torque}.${alone}`,
    );
    say(
      'plain',
      'A motor that waits for the pedals gives nothing before your first push, so the first push decides. Practise it on a short ramp with room to roll back, a foot ready and a hand on each brake.',
    );
  }
  say(
    speed < WOBBLE ? 'caution' : 'plain',
    `At ${valueText(scenario, 'cadence')} the lowest gear goes ${text(speed, 'speed')}${speed < WOBBLE ? ', too slow for most people to keep their balance' : ''}. Slower than that the cadence falls with the speed.`,
  );
  return remarks;
}

import { formatQuantity } from '../quantities/index.ts';
import {
  mainCause,
  NOBODY_PEDALS,
  numberOf,
  type Remark,
  resultOf,
  type Scenario,
  STANDS_STILL,
  waitsForPedals,
} from '../scenario/index.ts';
import type { WhatChangesItOutcome } from './outcome.ts';

/** Share of the time that is hardly any of it. */
const HARDLY = 0.02;

/** What the reader should know about the answer, in sentences. */
export function whatChangesItRemarks(scenario: Scenario, outcome: WhatChangesItOutcome): Remark[] {
  const { notes, ranked, about } = outcome;
  if (!about) return notes;
  const { climb, largest, limited, limitedThen } = about;
  const remarks: Remark[] = [...notes];
  const say = (tone: Remark['tone'], text: string): void => {
    remarks.push({ tone, text });
  };
  if (waitsForPedals(climb)) say('wrong', NOBODY_PEDALS);
  else if (ranked.length === 0) say('wrong', STANDS_STILL);
  if (ranked.length === 0) return remarks;

  if (climb.assistLimit !== null && (limited || limitedThen)) {
    const limit = formatQuantity(climb.assistLimit, 'speed', scenario.system, { trim: true });
    const hardly = largest && Math.abs(largest.value) < HARDLY * (resultOf(outcome, 'time').si ?? 0);
    if (limited)
      say(
        'caution',
        `The assist limit of ${limit} holds this bike back: whatever would make it faster makes its motor give less${hardly ? ', so hardly anything changes the time' : ''}.`,
      );
    else
      say(
        'caution',
        `A change here brings the bike up to its assist limit of ${limit}, where its motor fades: it saves less than it would without a limit.`,
      );
  }
  const cause = largest && mainCause(largest);
  if (cause)
    say(
      'plain',
      `Most of the doubt about the largest change is ${cause.cause}. It is the same before and after, so a difference is surer than a time.`,
    );
  if (ranked.length > 1)
    say(
      'plain',
      'Each is worked out by itself. All at once is not exactly their sum: each then meets a climb that the others have changed.',
    );
  if (numberOf(scenario, 'change-altitude') > 0 && ranked.includes('altitude'))
    say(
      'plain',
      'Higher up, thinner air holds you back less. It also costs you power, which is not in that bar: enter what you lose under “Your power”.',
    );
  return remarks;
}

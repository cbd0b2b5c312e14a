import { mainCause, type Remark, type Scenario } from '../scenario/index.ts';
import type { YourHillOutcome } from './outcome.ts';

/** What the reader should know about the answer, in sentences. */
export function yourHillRemarks(_scenario: Scenario, { bikes, notes }: YourHillOutcome): Remark[] {
  const remarks: Remark[] = [...notes];
  const [bike] = bikes;
  const cause = bike && mainCause(bike.time);
  if (cause) remarks.unshift({ tone: 'plain', text: `Most of the doubt is ${cause.cause}.` });
  return remarks;
}

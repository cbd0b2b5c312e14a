import type { ComponentChildren } from 'preact';
import type { Remark, Scenario } from '../scenario/index.ts';

/** What a calculator answers, ready to be shown. */
export interface Answer {
  /** the answer itself: stays in view on a phone */
  head: ComponentChildren;
  /** what stands behind it: figures, charts, tables */
  details: ComponentChildren;
  /** printed on a sheet of its own; on a screen it stands below everything else */
  sheet?: ComponentChildren;
  /** the answer in one sentence, spoken once after a change */
  spoken: string;
  remarks: readonly Remark[];
}

/** Answers a scenario; `small` folds the tables away. */
export type Answering = (scenario: Scenario, small: boolean) => Answer;

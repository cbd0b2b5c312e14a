/**
 * A value from outside this project beside the one computed here. Every row names its source and how far we have seen it:
 * - `seen` in the primary text or its abstract
 * - `secondary` in a copy, review, library manual or test file
 * - `memory` value from memory, the source not seen
 * - `recomputed` by hand or elsewhere from the stated inputs, which says nothing about a citation
 * - `practice` common practice, no source
 */
export type Status = 'seen' | 'secondary' | 'memory' | 'recomputed' | 'practice';

export const statusWords: Readonly<Record<Status, string>> = {
  seen: 'seen',
  secondary: 'seen in a secondary copy',
  memory: 'value from memory',
  recomputed: 'recomputed',
  practice: 'common practice, no source',
};

export interface Check {
  /** what is checked, a row of the accuracy table together with `source` */
  quantity: string;
  /** under which conditions */
  given: string;
  expected: number;
  /** what our functions say */
  computed: () => number;
  unit: string;
  /** largest difference allowed: in `unit`, or as a share of the expected value when `relative` */
  tolerance: number;
  relative?: boolean;
  source: string;
  status: Status;
}

/** How far a check is off, in the terms of its tolerance. */
export function deviationOf(check: Check): number {
  const difference = Math.abs(check.computed() - check.expected);
  return check.relative ? difference / Math.abs(check.expected) : difference;
}

import type { System } from '../quantities/index.ts';
import { type Outcome, resultOf } from '../scenario/index.ts';
import { Output } from './Output.tsx';

/** A result, what stands before it, and whether its range stands behind. */
export type Fact = readonly [name: string, label: string, range?: boolean];

export const ENDURANCE: readonly Fact[] = [['endurance-time', 'You hold this power for']];

interface Props {
  facts: readonly Fact[];
  outcome: Outcome;
  system: System;
  /** those without a value are hidden, not shown as none */
  ifKnown?: boolean;
}

/** Results under their labels, in a `<dl class="facts">`. */
export function Facts({ facts, outcome, system, ifKnown = false }: Props) {
  return facts.map(([name, label, range = false]) => (
    <div key={name} hidden={ifKnown && resultOf(outcome, name).si === undefined}>
      <dt>{label}</dt>
      <dd>
        <Output outcome={outcome} system={system} name={name} range={range} />
      </dd>
    </div>
  ));
}

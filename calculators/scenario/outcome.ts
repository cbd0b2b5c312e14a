import type { UncertainResult } from '../model/index.ts';
import type { Kind } from '../quantities/index.ts';
import type { Scenario } from './scenario.ts';

/** One computed result under its public name. SI; absent `si` means no value, and `reason` says why. A text result has `text`. */
export interface Result {
  name: string;
  kind: Kind;
  /** from 1 on every per-bike result, absent elsewhere */
  bike?: number;
  /** of a difference: the bike that it is held against */
  against?: number;
  si?: number;
  /** 95 % range */
  low?: number;
  high?: number;
  text?: string;
  reason?: string;
}

/** A sentence beside the answer. `caution` is a limit the reader should know, `wrong` names inputs that contradict each other. */
export interface Remark {
  tone: 'plain' | 'caution' | 'wrong';
  text: string;
  /** input beside whose field the sentence stands too: `plain`, as a note */
  field?: string;
  /** the hill in pieces that counts there, where one tap may make it a whole one */
  pieces?: 'profile' | 'target-profile';
}

/** What every calculator gives. */
export interface Outcome {
  results: Result[];
}

/** What writes the sentences beside an answer. */
export type Remarks<O extends Outcome> = (scenario: Scenario, outcome: O) => Remark[];

/** Why a bike has no time. */
export const STANDS_STILL = 'This power does not move the bike on this hill.';
export const NOBODY_PEDALS = 'Nobody pedals: a motor that assists gives nothing then.';
/** The same of a bike that moves. */
export const ROLLS_BY_ITSELF =
  'Nobody pedals: a motor that assists gives nothing then, so this is the bike rolling by itself.';

/** There is a motor, and nobody pedals for it. Powers in W. */
export const waitsForPedals = ({ riderPower, motorPower }: { riderPower: number; motorPower: number }): boolean =>
  riderPower === 0 && motorPower > 0;

/** A result without a value. */
export function none(name: string, kind: Kind, reason: string, bike?: number): Result {
  return { name, kind, reason, ...(bike === undefined ? {} : { bike }) };
}

/** A result from a number; without a value when it is not finite, for the given reason. */
export function exact(name: string, kind: Kind, si: number, reason: string, bike?: number): Result {
  return Number.isFinite(si)
    ? { name, kind, si, ...(bike === undefined ? {} : { bike }) }
    : none(name, kind, reason, bike);
}

/**
 * A result with its range. A side that nothing bounds is left out, and so is the range of a value that no doubt moves.
 * @param floor what the result cannot be below; adding in squares does not know it
 * @param ceiling nor above
 */
export function ranged(
  name: string,
  kind: Kind,
  result: UncertainResult,
  reason: string,
  bike?: number,
  floor = Number.NEGATIVE_INFINITY,
  ceiling = Number.POSITIVE_INFINITY,
): Result {
  const plain = exact(name, kind, result.value, reason, bike);
  if (plain.si === undefined) return plain;
  // what rounding leaves is no doubt
  if (!(result.high - result.low > 1e-9 * Math.abs(result.value))) return plain;
  if (Number.isFinite(result.low)) plain.low = Math.max(result.low, Math.min(floor, result.value));
  if (Number.isFinite(result.high)) plain.high = Math.min(result.high, Math.max(ceiling, result.value));
  return plain;
}

/** The result of that name, of bike `bike` (from 1) where there are several. @throws RangeError when there is none: a mistake in our own code. */
export function resultOf(outcome: Outcome, name: string, bike?: number): Result {
  const result = outcome.results.find((one) => one.name === name && (bike === undefined || one.bike === bike));
  if (!result) throw new RangeError(`There is no result “${name}”${bike === undefined ? '' : ` of bike ${bike}`}.`);
  return result;
}

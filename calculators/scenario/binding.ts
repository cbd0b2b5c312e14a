import {
  type Climb,
  costOfLimit,
  distanceAfter,
  type Hill,
  heightAt,
  isAlongProfile,
  type Limit,
  type Reserves,
  type Span,
  type StagedClimb,
  type UncertainResult,
} from '../model/index.ts';
import { exact, none, type Result } from './outcome.ts';
import type { Riding } from './rides.ts';

/** What holds a climb back most. */
export type Binds = Limit['limit'] | 'none';

/** From when and where on it does, and what it costs: s, m and s. Not a number where nothing binds. */
export interface Binding {
  after: number;
  height: number;
  /** not a number for the rider's endurance, which is told and not computed away */
  lost: number;
}

const NOWHERE: Binding = { after: Number.NaN, height: Number.NaN, lost: Number.NaN };

/**
 * The costliest of the limits; where none binds, the rider's endurance if it ends before the top.
 * @param endures s for which the rider lasts, undefined where nothing is said of it
 */
export function bindsOf(limits: readonly Limit[], endures: number | undefined, time: number): Binds {
  const [first] = limits;
  if (first) return first.limit;
  return endures !== undefined && endures < time ? 'endurance' : 'none';
}

/** A stretch of the way, m from the bottom. */
export interface Stretch {
  from: number;
  to: number;
}

/** Where one limit binds, by rising start; stretches that touch are one. */
export function joinedSpans(spans: readonly Span[], limit: Binds): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { limit: by, from, to } of spans) {
    if (by !== limit) continue;
    const last = stretches.at(-1);
    if (last && from.distance <= last.to + 1e-6) last.to = Math.max(last.to, to.distance);
    else stretches.push({ from: from.distance, to: to.distance });
  }
  return stretches;
}

/** Metres of some stretches together. */
export const lengthOf = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, { from, to }) => sum + to - from, 0);

/** The parts of a hill in pieces on which something binds; none where the hill is whole. */
export const stretchesBound = (ride: StagedClimb, limit: Binds): Stretch[] =>
  isAlongProfile(ride) ? joinedSpans(ride.spans, limit) : [];

/** What binds where the road lets it, and so may bind first on quite another stretch when a bike is a little faster. */
const BY_PLACE: readonly Binds[] = ['assist-limit', 'torque', 'support', 'brakes'];

/**
 * Where something first binds, without a range along a hill in pieces where that jumps from one stretch to another: adding in squares
 * would spread it over all that lies between them.
 */
export const placeOfBinding = (place: UncertainResult, binds: Binds, { profile }: Hill): UncertainResult =>
  profile && profile.distance.length > 2 && BY_PLACE.includes(binds)
    ? { ...place, low: place.value, high: place.value }
    : place;

/** From when on the same thing binds on a climb that may be a little other, and for how much: from the top on, for nothing, where it does not. */
export function bindingOf(
  binds: Binds,
  climb: Climb,
  reserves: Reserves,
  ride: StagedClimb,
  endures: number | undefined,
  riding?: Riding,
): Binding {
  if (binds === 'none') return NOWHERE;
  const { hill } = climb;
  // told, unless the ride is one that tires the rider
  if (binds === 'endurance' && !reserves.endurance) {
    const after = Math.min(endures ?? 0, ride.time);
    return { after, height: heightAt(hill, distanceAfter(ride, after)), lost: Number.NaN };
  }
  const same = costOfLimit(climb, reserves, ride, binds, riding);
  return same
    ? { after: same.from.time, height: heightAt(hill, same.from.distance), lost: same.lost }
    : { after: ride.time, height: hill.gain, lost: 0 };
}

/** Why there is no time or height from which on something binds, or no cost. */
export const bindingReason = (binds: Binds): string =>
  binds === 'endurance'
    ? 'How much slower a tired rider is, the model does not say.'
    : 'Nothing holds it back on this climb.';

/** How long the rider lasts, as a result. */
export function enduranceResult(endures: number | undefined): Result {
  if (endures === undefined) return none('endurance-time', 'duration', 'Say what you hold for long to see this.');
  return exact('endurance-time', 'duration', endures, 'That is no more than what you hold for long.');
}

import type { ProfileRide } from '../model/index.ts';

/** Time behind, s, after so many metres of the way. */
export interface GapAlong {
  distance: number;
  gap: number;
}

/**
 * Time behind the bike that is first at the top, at each point of the hill: below zero where a bike is ahead of it for a while.
 * A bike that does not get up has no points.
 */
export function gapsAlong(rides: readonly (ProfileRide | undefined)[], first: number): GapAlong[][] {
  const leader = rides[first];
  return rides.map((ride) => {
    if (!ride || !leader) return [];
    return [...ride.points.distance].map((distance, i) => ({
      distance,
      gap: (ride.points.time[i] ?? Number.NaN) - (leader.points.time[i] ?? Number.NaN),
    }));
  });
}

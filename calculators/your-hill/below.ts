import {
  cutProfile,
  FARTHEST_HEIGHT,
  LONGEST_ROAD,
  type Profile,
  profileError,
  SHORTEST_ROAD,
  simplifyProfile,
  type Track,
} from '../model/index.ts';
import { profileFromText, tidyProfile, writeProfile } from '../scenario/profile-text.ts';

/** Pieces of the hill that a recording gives. A link takes 60; fewer keep it short, and 40 are closer than heights are known. */
export const MOST_PIECES = 40;

/** A stretch of a recording as the hill of the calculator. */
export interface HillBelow {
  /** as a link writes it */
  text: string;
  /** every point that was recorded, and the few that the calculator rides along */
  full: Profile;
  simple: Profile;
  /** m, the most that a height of `simple` is off */
  largestError: number;
}

/** Why a stretch cannot be the hill: there is no road that is less steep than `STEEPEST_GRADE`, or it is beyond another limit of a road. */
export interface NoHill {
  problem: 'none' | 'short' | 'long' | 'far';
}

/** The hill of a stretch, such as a link takes, or why there is none. */
export function hillBelow(
  { distance, breaks }: Track,
  height: Float64Array,
  { from, to }: { from: number; to: number },
): HillBelow | NoHill {
  let full: Profile;
  try {
    full = cutProfile(distance, height, breaks, from, to);
  } catch {
    return { problem: 'none' };
  }
  const text = writeProfile(simplifyProfile(full, MOST_PIECES));
  if ('problem' in tidyProfile(text)) return { problem: problemOf(full) };
  // what is ridden is what the text says, to the decimetre
  const simple = profileFromText(text);
  return { text, full, simple, largestError: profileError(full, simple).largest };
}

function problemOf({ distance, height }: Profile): NoHill['problem'] {
  const length = distance.at(-1) ?? 0;
  if (length < SHORTEST_ROAD) return 'short';
  if (length > LONGEST_ROAD) return 'long';
  return height.some((each) => Math.abs(each) > FARTHEST_HEIGHT) ? 'far' : 'none';
}

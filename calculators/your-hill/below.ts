import { cutProfile, type Profile, profileError, simplifyProfile, type Track } from '../model/index.ts';
import { profileOf, writeProfile } from '../scenario/profile-text.ts';

/** Pieces of the hill that a recording gives. A link takes 60; fewer keep it short, and 40 are closer than heights are known. */
export const PIECES = 40;

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

/** The hill of a stretch, or undefined where there is no road between its ends. */
export function hillBelow(
  { distance, breaks }: Track,
  height: Float64Array,
  { from, to }: { from: number; to: number },
): HillBelow | undefined {
  try {
    const full = cutProfile(distance, height, breaks, from, to);
    const text = writeProfile(simplifyProfile(full, PIECES));
    // what is ridden is what the text says, to the decimetre
    const simple = profileOf(text);
    return { text, full, simple, largestError: profileError(full, simple).largest };
  } catch {
    return undefined;
  }
}

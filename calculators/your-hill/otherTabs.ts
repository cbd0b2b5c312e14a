import type { Recording } from './reading/recording.ts';

/*
 * This device keeps one recording, and the page may be open in several tabs: each tells the others what it kept or forgot.
 */

const CHANNEL = 'uphill-measured:recording';

/** What another tab did: `kept` names the recording, `null` was forgotten. */
type Told = { kept: string | null };

/** Words that a recording is known by: two files of one name seldom have as many points. */
const nameOf = ({ file, parts }: Recording): string =>
  `${file} ${parts.map(({ track }) => track.distance.length).join(' ')}`;

export interface OtherTabs {
  /** Tells what this tab keeps now. */
  tell: (kept: Recording | null) => void;
  close: () => void;
}

/**
 * Joins the tabs of this browser.
 * @param hear is given whether a recording is the one that another tab has just kept, or `forgotten`
 */
export function joinTabs(hear: (what: 'forgotten' | ((recording: Recording) => boolean)) => void): OtherTabs {
  // without it, tabs do not know of each other
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, close: () => {} };
  const channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = ({ data: { kept } }: MessageEvent<Told>): void =>
    hear(kept === null ? 'forgotten' : (recording) => nameOf(recording) === kept);
  return {
    tell: (recording) => channel.postMessage({ kept: recording && nameOf(recording) } satisfies Told),
    close: () => channel.close(),
  };
}

import type { Track } from '../model/index.ts';
import { type Analysis, analyse, type ElevationChoice } from './analysis.ts';

/* Works out what is in a recording beside the page, so that a long one does not hold it up. It keeps the last track that it was given. */

export interface Asked {
  id: number;
  /** only where it is another one than last time */
  track?: Track;
  choice: ElevationChoice;
}

export interface Told {
  id: number;
  analysis: Analysis;
}

let track: Track | undefined;
let last = 0;

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  last = data.id;
  track = data.track ?? track;
  // of several that wait only the last is worked out
  setTimeout(() => {
    if (data.id !== last || !track) return;
    const analysis = analyse(track, data.choice);
    postMessage({ id: data.id, analysis } satisfies Told, { transfer: [analysis.height.buffer] });
  });
});

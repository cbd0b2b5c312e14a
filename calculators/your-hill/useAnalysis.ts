import { useEffect, useRef, useState } from 'preact/hooks';
import type { Track } from '../model/index.ts';
import { type Analysis, analyse, type ElevationChoice } from './analysis.ts';
import type { Asked, Told } from './analysis-worker.ts';

/** An analysis, and the track it is of: a new one is on its way where that is another track. */
interface Analysed {
  track: Track;
  analysis: Analysis;
}

/**
 * What is found in a track, worked out in a worker; undefined until the first answer for this track. While another choice is worked out,
 * the last answer stays. Without workers it is worked out here.
 */
export function useAnalysis(track: Track | undefined, { window, threshold }: ElevationChoice): Analysis | undefined {
  const [analysed, setAnalysed] = useState<Analysed | null>(null);
  const worker = useRef<{ worker: Worker; track: Track | undefined; id: number } | undefined>(undefined);

  useEffect(
    () => () => {
      worker.current?.worker.terminate();
      worker.current = undefined;
    },
    [],
  );

  useEffect(() => {
    if (!track) return;
    const choice = { window, threshold };
    const here = (): void => setAnalysed({ track, analysis: analyse(track, choice) });
    worker.current ??= startWorker();
    const own = worker.current;
    if (!own) {
      here();
      return;
    }
    const id = ++own.id;
    own.worker.onmessage = ({ data }: MessageEvent<Told>): void => {
      if (data.id === own.id) setAnalysed({ track, analysis: data.analysis });
    };
    own.worker.onerror = (event): void => {
      event.preventDefault();
      // its file did not come: what is on this page can do the same
      own.worker.terminate();
      worker.current = undefined;
      here();
    };
    own.worker.postMessage({ id, choice, ...(own.track === track ? {} : { track }) } satisfies Asked);
    own.track = track;
  }, [track, window, threshold]);

  return analysed?.track === track ? analysed?.analysis : undefined;
}

function startWorker(): { worker: Worker; track: Track | undefined; id: number } | undefined {
  try {
    const worker = new Worker(new URL('./analysis-worker.ts', import.meta.url), { type: 'module' });
    return { worker, track: undefined, id: 0 };
  } catch {
    return undefined;
  }
}

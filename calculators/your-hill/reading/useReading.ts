import { useEffect, useRef, useState } from 'preact/hooks';
import { nothingRead } from './nothingRead.ts';
import type { Recording } from './recording.ts';
import type { Told } from './worker.ts';

/** What is being read, and how it ended. */
export type ReadingState =
  | { is: 'idle' }
  | { is: 'reading'; file: string; progress: number }
  /** also where nothing could be read: then it has no parts, and its problems say why */
  | { is: 'read'; recording: Recording };

export interface Reading {
  state: ReadingState;
  /** Reads a file in a worker; one that is still being read is given up. */
  start: (file: File) => void;
  /** Gives up the file that is being read, and forgets one that was. */
  cancel: () => void;
}

/**
 * Reads one file at a time in a worker of its own, which is ended when the file is read, given up or the page goes: so a file that takes
 * long can always be stopped.
 */
export function useReading(): Reading {
  const [state, setState] = useState<ReadingState>({ is: 'idle' });
  const worker = useRef<Worker | undefined>(undefined);

  const end = (): void => {
    worker.current?.terminate();
    worker.current = undefined;
  };
  useEffect(() => end, []);

  const cancel = (): void => {
    end();
    setState({ is: 'idle' });
  };

  const start = (file: File): void => {
    end();
    const done = (recording: Recording): void => {
      end();
      setState({ is: 'read', recording });
    };
    try {
      worker.current = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    } catch {
      done(nothingRead(file.name, NO_WORKER));
      return;
    }
    const own = worker.current;
    own.onmessage = ({ data }: MessageEvent<Told>): void => {
      if (worker.current !== own) return;
      if ('recording' in data) done(data.recording);
      else setState({ is: 'reading', file: file.name, progress: data.progress });
    };
    own.onerror = (event): void => {
      event.preventDefault();
      if (worker.current === own) done(nothingRead(file.name, NO_ANSWER));
    };
    setState({ is: 'reading', file: file.name, progress: 0 });
    own.postMessage(file);
  };

  return { state, start, cancel };
}

const NO_WORKER = 'This browser cannot read recordings: it has no workers, or something forbids them on this page.';
const NO_ANSWER =
  'Reading stopped: the part of the site that reads files did not come, or the file needs more memory than there is. Try again with a signal.';

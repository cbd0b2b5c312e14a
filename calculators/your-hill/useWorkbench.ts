import { useEffect, useRef } from 'preact/hooks';
import { openWorkbench, type Results, type Task } from './workbench.ts';
import type { Asked, Told } from './workbench-worker.ts';

export type Ask = <Kind extends Task['is']>(
  task: Extract<Task, { is: Kind }>,
  tell: (result: Results[Kind]) => void,
) => () => void;

/**
 * Has tasks worked off in a worker, in their order; of several of one kind that wait, only the last. What comes back is told unless the
 * function that `ask` returns was called meanwhile. Without workers, or where its file does not come, it is worked out here.
 */
export function useWorkbench(): Ask {
  const bench = useRef<{ ask: Ask; close: () => void } | undefined>(undefined);
  useEffect(
    () => () => {
      bench.current?.close();
      bench.current = undefined;
    },
    [],
  );
  return (task, tell) => {
    bench.current ??= besideThePage() ?? onThePage();
    return bench.current.ask(task, tell);
  };
}

type TrackTask = Extract<Task, { is: 'track' }>;

function onThePage(): { ask: Ask; close: () => void } {
  const work = openWorkbench();
  return {
    ask: (task, tell) => {
      const timer = setTimeout(() => tell(work(task) as never));
      return () => clearTimeout(timer);
    },
    close: () => {},
  };
}

function besideThePage(): { ask: Ask; close: () => void } | undefined {
  let worker: Worker;
  try {
    worker = new Worker(new URL('./workbench-worker.ts', import.meta.url), { type: 'module' });
  } catch {
    return undefined;
  }
  const waiting = new Map<number, { task: Task; tell: (result: never) => void }>();
  let ids = 0;
  let track: TrackTask | undefined;
  let instead: ReturnType<typeof onThePage> | undefined;
  worker.onmessage = ({ data: { id, result } }: MessageEvent<Told>): void => {
    waiting.get(id)?.tell(result as never);
    waiting.delete(id);
  };
  worker.onerror = (event): void => {
    event.preventDefault();
    worker.terminate();
    instead = onThePage();
    if (track) instead.ask(track, () => {});
    for (const { task, tell } of waiting.values()) instead.ask(task, tell as never);
    waiting.clear();
  };
  return {
    ask: (task, tell) => {
      if (task.is === 'track') track = task as TrackTask;
      if (instead) return instead.ask(task, tell);
      const id = ++ids;
      waiting.set(id, { task, tell });
      worker.postMessage({ id, task } satisfies Asked);
      return () => waiting.delete(id);
    },
    close: () => worker.terminate(),
  };
}

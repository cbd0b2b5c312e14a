import { openWorkbench, type Task } from './workbench.ts';

/* The workbench beside the page, so that a long recording does not hold the page up. */

export interface Asked {
  id: number;
  task: Task;
}

export interface Told {
  id: number;
  result: unknown;
}

const work = openWorkbench();
/** the last task of each kind: one that waits behind a newer one of its kind is not worked off */
const last: Partial<Record<Task['is'], number>> = {};

addEventListener('message', ({ data: { id, task } }: MessageEvent<Asked>) => {
  last[task.is] = id;
  // those that wait behind this one are heard first
  setTimeout(() => {
    if (last[task.is] === id) postMessage({ id, result: work(task) } satisfies Told);
  });
});

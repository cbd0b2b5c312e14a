import { readFile } from './readFile.ts';
import type { Recording } from './recording.ts';

/* Reads a file beside the page: the page never holds it, and stays quick. One file, then the page ends the worker. */

export type Told = { progress: number } | { recording: Recording };

/** No oftener than this the page hears how far it is, in ms. */
const PAUSE = 50;
let told = 0;

function tell(progress: number): void {
  const now = performance.now();
  if (now - told < PAUSE) return;
  told = now;
  postMessage({ progress } satisfies Told);
}

addEventListener('message', async ({ data: file }: MessageEvent<File>) => {
  const recording = await readFile(file, tell);
  const buffers = recording.parts.flatMap(({ track }) =>
    Object.values(track).flatMap((column) => (column instanceof Float64Array ? [column.buffer] : [])),
  );
  postMessage({ recording } satisfies Told, { transfer: buffers });
});

import { nothingRead } from './nothingRead.ts';
import { LARGEST, readRecording, tooLarge } from './readRecording.ts';
import type { Recording } from './recording.ts';

/* Reads a file beside the page: the page never holds it, and stays quick. One file, then the worker is done. */

export type Told = { progress: number } | { recording: Recording };

/** Share of the progress that reading the bytes takes; the rest is understanding them. */
const BYTES_SHARE = 0.1;
/** No oftener than this the page hears how far it is, in ms. */
const PAUSE = 50;

addEventListener('message', ({ data: file }: MessageEvent<File>) => {
  read(file).then(
    (recording) => {
      const buffers = recording.parts.flatMap(({ track }) =>
        Object.values(track).flatMap((column) => (column instanceof Float64Array ? [column.buffer] : [])),
      );
      postMessage({ recording } satisfies Told, { transfer: buffers });
    },
    () =>
      postMessage({
        recording: nothingRead(file.name, 'This file could not be read. Is it still where it was?'),
      } satisfies Told),
  );
});

let told = 0;
function tell(progress: number): void {
  const now = performance.now();
  if (now - told < PAUSE) return;
  told = now;
  postMessage({ progress } satisfies Told);
}

async function read(file: File): Promise<Recording> {
  if (file.size > LARGEST) return nothingRead(file.name, tooLarge(file.size));
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  const isPacked = first === 0x1f && second === 0x8b;
  const stream = isPacked ? file.stream().pipeThrough(new DecompressionStream('gzip')) : file.stream();
  let bytes = new Uint8Array(isPacked ? file.size * 4 : file.size);
  let length = 0;
  try {
    for (const reader = stream.getReader(); ; ) {
      const { done, value } = await reader.read();
      if (done) break;
      // a small file can be unpacked to a very large one
      if (length + value.length > LARGEST) {
        await reader.cancel();
        return nothingRead(file.name, `Unpacked, this file is too large. Files of up to ${LARGEST / 1e6} MB are read.`);
      }
      if (length + value.length > bytes.length) {
        const larger = new Uint8Array(Math.min(LARGEST, (length + value.length) * 2));
        larger.set(bytes.subarray(0, length));
        bytes = larger;
      }
      bytes.set(value, length);
      length += value.length;
      tell(isPacked ? 0 : (BYTES_SHARE * length) / file.size);
    }
  } catch (error) {
    // what was unpacked before the damage is whole
    if (!isPacked || length === 0) throw error;
  }
  return readRecording(bytes.subarray(0, length), file.name, (share) => tell(BYTES_SHARE + (1 - BYTES_SHARE) * share));
}

import { nothingRead } from './nothingRead.ts';
import { readRecording, tooLarge } from './readRecording.ts';
import { LARGEST, type Recording } from './recording.ts';

/** Share of the progress that reading the bytes takes; the rest is understanding them. */
const BYTES_SHARE = 0.1;

/** Reads a file, also one that is packed with gzip, as it comes. Never rejects. */
export async function readFile(file: File, onProgress: (share: number) => void): Promise<Recording> {
  try {
    if (file.size > LARGEST) return nothingRead(file.name, tooLarge(file.size));
    const bytes = await bytesOf(file, (share) => onProgress(BYTES_SHARE * share));
    if (!bytes)
      return nothingRead(file.name, `Unpacked, this file is too large. Files of up to ${LARGEST / 1e6} MB are read.`);
    return readRecording(bytes, file.name, (share) => onProgress(BYTES_SHARE + (1 - BYTES_SHARE) * share));
  } catch {
    return nothingRead(file.name, 'This file could not be read. Is it still where it was?');
  }
}

/** The bytes of a file, unpacked; undefined where they are more than are read. */
async function bytesOf(file: File, onProgress: (share: number) => void): Promise<Uint8Array | undefined> {
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  const isPacked = first === 0x1f && second === 0x8b;
  const stream = isPacked ? file.stream().pipeThrough(new DecompressionStream('gzip')) : file.stream();
  let bytes = new Uint8Array(file.size);
  let length = 0;
  try {
    for (const reader = stream.getReader(); ; ) {
      const { done, value } = await reader.read();
      if (done) break;
      // a small file can be unpacked to a very large one
      if (length + value.length > LARGEST) {
        await reader.cancel();
        return undefined;
      }
      if (length + value.length > bytes.length) {
        const larger = new Uint8Array(Math.min(LARGEST, (length + value.length) * 2));
        larger.set(bytes.subarray(0, length));
        bytes = larger;
      }
      bytes.set(value, length);
      length += value.length;
      if (!isPacked) onProgress(length / file.size);
    }
  } catch (error) {
    // what was unpacked before the damage is whole
    if (!isPacked || length === 0) throw error;
  }
  return bytes.subarray(0, length);
}

/** Largest file that is looked at, in bytes. */
const LARGEST = 20_000_000;

export type ReadText = { ok: true; text: string } | { ok: false; message: string };

/** The text of a file, whichever of the usual ways its letters are written: UTF-8, UTF-16 with its mark, else Windows 1252. Never rejects. */
export async function readBytes(file: Blob): Promise<ReadText> {
  if (file.size > LARGEST)
    return { ok: false, message: `This file has ${Math.round(file.size / 1e6)} MB: too much for a test day.` };
  try {
    return { ok: true, text: textOf(new Uint8Array(await file.arrayBuffer())) };
  } catch {
    return { ok: false, message: 'This file could not be read. Is it still where it was?' };
  }
}

/** Text of bytes; the mark at its start is taken off. */
export function textOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

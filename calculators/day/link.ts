import { type DayDocument, DOCUMENT_VERSION, type Texts } from './document.ts';
import { documentOf, type Opened } from './file.ts';

/*
 * A test day as a link: `#day=1.` and, in base64url, four bytes of check (CRC-32, ISO 3309) before the document's JSON in raw deflate
 * (RFC 1951). The fragment of an address never leaves the browser that opens it. Ids and empty texts are left out.
 */

const PREFIX = 'day=';
/** Longest link that is read, and longest document that one is unpacked to: both far beyond a full day. */
const LONGEST_LINK = 500_000;
const LONGEST_TEXT = 5_000_000;
/** What some programs cut links at. */
export const CAREFUL_LENGTH = 2000;

/** The document without what a link can do without: a run names its bike by number. */
interface Packed {
  /** system, where it is not metric */
  u?: 'us';
  /** what is compared, where it is not bikes */
  c?: string;
  s: Texts;
  b: Texts[];
  /** number of the bike from 0, −1 for none; 1 assisted + 2 left out; texts */
  r: [number, number, Texts][];
}

const filled = (texts: Texts): Texts => Object.fromEntries(Object.entries(texts).filter(([, typed]) => typed !== ''));

function pack({ system, comparing, setup, bikes, runs }: DayDocument): Packed {
  const index = new Map(bikes.map(({ id }, i) => [id, i]));
  return {
    ...(system === 'us' ? { u: system } : {}),
    ...(comparing === 'bikes' ? {} : { c: comparing }),
    s: filled(setup),
    b: bikes.map(({ texts }) => filled(texts)),
    r: runs.map((run) => [
      index.get(run.bike) ?? -1,
      (run.assisted ? 1 : 0) + (run.counted ? 0 : 2),
      filled(run.texts),
    ]),
  };
}

function unpack(packed: Partial<Packed>): unknown {
  const { u, c, s, b, r } = packed;
  if (!s || !b || !r) throw new TypeError('Something else was packed.');
  return {
    version: DOCUMENT_VERSION,
    system: u,
    comparing: c,
    setup: s,
    bikes: b.map((texts, index) => ({ id: `bike-${index + 1}`, texts })),
    runs: r.map(([bike, flags, texts], index) => ({
      id: `run-${index + 1}`,
      bike: bike >= 0 && bike < b.length ? `bike-${bike + 1}` : '',
      assisted: (flags & 1) === 1,
      counted: (flags & 2) === 0,
      texts,
    })),
  };
}

/** The fragment of a link to this day, from `#` on. Rejects where the browser cannot compress. */
export async function dayFragment(document: DayDocument): Promise<string> {
  const bytes = await transformed(
    new TextEncoder().encode(JSON.stringify(pack(document))),
    new CompressionStream('deflate-raw'),
  );
  const checked = new Uint8Array(4 + bytes.length);
  new DataView(checked.buffer).setUint32(0, checksum(bytes));
  checked.set(bytes, 4);
  return `#${PREFIX}${DOCUMENT_VERSION}.${toBase64(checked)}`;
}

/** A sentence about a link that some programs cut; undefined for a short one. */
export function lengthNote(link: string): string | undefined {
  return link.length > CAREFUL_LENGTH
    ? `This link has ${link.length} characters, and some programs cut long links. Where it arrives cut, pass on the file instead.`
    : undefined;
}

/** The day that a fragment holds; undefined when it holds none. Never rejects. */
export async function readFragment(fragment: string): Promise<Opened | undefined> {
  const said = fragment.replace(/^#/, '');
  if (!said.startsWith(PREFIX)) return undefined;
  const failed = (message: string): Opened => ({ ok: false, message });
  if (said.length > LONGEST_LINK) return failed('This link is too long for a test day.');
  // line breaks come from mail, and marks after it from the sentence that it stood in
  const body = said.slice(PREFIX.length).replace(/%20|%0[ad]|\s/gi, '');
  const [, version, code] = /^(\d{1,6})\.([\w-]*)[^\w-]{0,3}$/.exec(body) ?? [];
  if (version === undefined || code === undefined)
    return failed('This link to a test day is damaged: it holds characters that do not belong in it. Copy it anew.');
  if (Number(version) > DOCUMENT_VERSION)
    return failed(
      `This link was written by a later version of this site (${version}; this page knows ${DOCUMENT_VERSION}). Reload the page and open it again.`,
    );
  const cut = failed('This link to a test day is incomplete or damaged: a part was lost on the way. Copy it anew.');
  const checked = fromBase64(code);
  if (!checked || checked.length <= 4) return cut;
  const bytes = checked.slice(4);
  if (new DataView(checked.buffer).getUint32(0) !== checksum(bytes)) return cut;
  try {
    const text = new TextDecoder().decode(
      await transformed(bytes, new DecompressionStream('deflate-raw'), LONGEST_TEXT),
    );
    return documentOf(unpack(JSON.parse(text) as Partial<Packed>), 'link');
  } catch {
    return cut;
  }
}

/** What comes out of a stream that these bytes go into. @throws RangeError beyond `most` bytes */
async function transformed(
  bytes: Uint8Array<ArrayBuffer>,
  through: CompressionStream | DecompressionStream,
  most = Number.POSITIVE_INFINITY,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough(through).getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    parts.push(part.value);
    length += part.value.length;
    if (length > most) {
      await reader.cancel();
      throw new RangeError('The link unpacks to too much.');
    }
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/** CRC-32 with the polynomial of ISO 3309, reversed: 0xcbf43926 for the text 123456789. */
export function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/** RFC 4648, the alphabet for addresses, without padding. */
function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromBase64(code: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    return Uint8Array.from(atob(code.replace(/-/g, '+').replace(/_/g, '/')), (letter) => letter.charCodeAt(0));
  } catch {
    return undefined;
  }
}

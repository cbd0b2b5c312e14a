import { type FitRawMessage, getFitBaseTypeId, readFitMessages } from 'fit-file-parser/raw';

/*
 * Messages of a FIT file, some thousand at a time. The library's strict reader takes whole files only, wants every check sum right, and
 * makes an object of every field: a ride of a day would need gigabytes. So the file is cut here, between messages, into small whole files of
 * the messages and fields that are of use, and the reader reads those. A file that is cut short, damaged at its end, chained to another or
 * written by a device that numbered its time in five bits then reads like any other. The library's full parser copes with some of this, but
 * is fifteen times as large, and cannot tell a field of an app from one of the device that has the same name; tests hold this against it.
 */

/** A message with its number among the messages of the file, from 1. */
export interface FitMessage extends FitRawMessage {
  at: number;
}

export interface FitEnd {
  /** where in the bytes this file of the chain ends */
  end: number;
  /** messages read so far, over the chain */
  at: number;
  cutShort: boolean;
  /** why the rest could not be followed */
  lost?: string;
  /** the check sum fits; undefined where there is none */
  intact: boolean | undefined;
}

/** Messages of one piece: more of them take no less time, and twice the memory. */
const PIECE = 500;
const HEADER = 14;
const TIMESTAMP = 253;
const UINT32 = 0x86;
const NONE = 0xff_ff_ff_ff;
/** Widths of the base types by their number; a text has any width. */
const WIDTHS = [1, 1, 1, 2, 2, 4, 4, 1, 4, 8, 1, 2, 4, 1, 8, 8, 8];

interface Slice {
  offset: number;
  size: number;
}

interface Definition {
  littleEndian: boolean;
  /** bytes of data of a message */
  size: number;
  timestamp: Slice | undefined;
  /** where the first field is the time, a header with the time in it stands in for it */
  leadsWithTime: boolean;
  /** what is kept of a message, and its definition; undefined where the message is of no use here */
  kept: { slices: Slice[]; bytes: Uint8Array } | undefined;
}

/** Check sum of FIT: CRC-16 with the polynomial x¹⁶ + x¹⁵ + x² + 1, bits reversed. */
const SUMS = Uint16Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xa001 : sum >>> 1;
  return sum;
});

export function checkSum(bytes: Uint8Array): number {
  let sum = 0;
  for (const byte of bytes) sum = (sum >>> 8) ^ (SUMS[(sum ^ byte) & 255] as number);
  return sum;
}

export const isFitAt = (bytes: Uint8Array, at: number): boolean =>
  bytes.length >= at + 12 && String.fromCharCode(...bytes.subarray(at + 8, at + 12)) === '.FIT';

/**
 * The messages of the file that begins at `start`, piece by piece, and how far in the bytes each piece goes. `wanted` lists the fields
 * that are of use by the number of their message; `before` is how many messages the chain had before this file.
 */
export function* fitMessages(
  bytes: Uint8Array,
  start: number,
  before: number,
  wanted: Readonly<Record<number, readonly number[]>>,
): Generator<{ messages: FitMessage[]; to: number }, FitEnd> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const headerSize = Math.max(12, bytes[start] as number);
  const size = view.getUint32(start + 4, true);
  // a device that dies while it writes leaves the size blank
  const isBlank = size === 0 || size === NONE;
  const written = isBlank ? bytes.length : start + headerSize + size;
  const end = Math.min(written, bytes.length);
  const intact =
    !isBlank && written + 2 <= bytes.length
      ? checkSum(bytes.subarray(start, written)) === view.getUint16(written, true)
      : undefined;

  const definitions: (Definition | undefined)[] = [];
  const piece = pieces();
  let at = before;
  let cursor = start + headerSize;
  let lastTime = NONE;
  let lost: string | undefined;
  let cutShort = intact === undefined;

  while (cursor < end) {
    const header = bytes[cursor] as number;
    const isCompressed = (header & 0x80) !== 0;
    if (!isCompressed && header & 0x40) {
      const next = definitionEnd(bytes, cursor, end);
      if (next === undefined) {
        cutShort = true;
        break;
      }
      definitions[header & 15] = readDefinition(bytes, cursor, wanted);
      cursor = next;
      continue;
    }
    const definition = definitions[isCompressed ? (header >> 5) & 3 : header & 15];
    if (!definition) {
      lost = 'This message is not described before it comes: the rest of the file cannot be followed.';
      break;
    }
    // with the time in the header the field of the time is not written
    const shift = isCompressed && definition.leadsWithTime ? 4 : 0;
    const data = cursor + 1 - shift;
    const next = data + definition.size;
    if (next > end) {
      cutShort = true;
      break;
    }
    at++;
    let time = NONE;
    if (isCompressed) {
      if (lastTime !== NONE) time = lastTime + (((header & 31) - (lastTime & 31) + 32) & 31);
    } else if (definition.timestamp) time = view.getUint32(data + definition.timestamp.offset, definition.littleEndian);
    if (time !== NONE) lastTime = time;
    if (definition.kept && piece.add(definition, bytes, data, time, at) === PIECE)
      yield { messages: piece.take(), to: next };
    cursor = next;
  }
  if (piece.size() > 0) yield { messages: piece.take(), to: cursor };
  return { end: Math.min(bytes.length, end + 2), at: lost ? at + 1 : at, cutShort, intact, ...(lost ? { lost } : {}) };
}

/** Where a definition ends; undefined where the file ends before. */
function definitionEnd(bytes: Uint8Array, cursor: number, end: number): number | undefined {
  if (cursor + 6 > end) return undefined;
  let next = cursor + 6 + 3 * (bytes[cursor + 5] as number);
  if ((bytes[cursor] as number) & 0x20) {
    if (next >= end) return undefined;
    next += 1 + 3 * (bytes[next] as number);
  }
  return next > end ? undefined : next;
}

/** What a definition says, and what is written of it into a piece: the time first, then the fields that are wanted and sound. */
function readDefinition(
  bytes: Uint8Array,
  cursor: number,
  wanted: Readonly<Record<number, readonly number[]>>,
): Definition {
  const littleEndian = bytes[cursor + 2] === 0;
  const [low, high] = littleEndian ? [3, 4] : [4, 3];
  const number = (bytes[cursor + low] as number) | ((bytes[cursor + high] as number) << 8);
  const fields = bytes[cursor + 5] as number;
  const useful = wanted[number];
  const slices: Slice[] = [];
  const native: number[] = [];
  const fromApps: number[] = [];
  let offset = 0;
  let timestamp: Slice | undefined;
  let leadsWithTime = false;
  const seen = new Set<number>();
  for (let i = 0; i < fields; i++) {
    const [field = 0, size = 0, type = 0] = bytes.subarray(cursor + 6 + 3 * i, cursor + 9 + 3 * i);
    const id = getFitBaseTypeId(type);
    if (field === TIMESTAMP && size === 4 && id === 6) {
      timestamp ??= { offset, size };
      leadsWithTime ||= i === 0;
    } else if (
      useful?.includes(field) &&
      !seen.has(field) &&
      size > 0 &&
      id !== null &&
      size % (WIDTHS[id] ?? 1) === 0
    ) {
      seen.add(field);
      slices.push({ offset, size });
      native.push(field, size, type);
    }
    offset += size;
  }
  if ((bytes[cursor] as number) & 0x20) {
    const first = cursor + 6 + 3 * fields;
    const keys = new Set<number>();
    for (let i = 0; i < (bytes[first] as number); i++) {
      const [field = 0, size = 0, app = 0] = bytes.subarray(first + 1 + 3 * i, first + 4 + 3 * i);
      if (useful && size > 0 && !keys.has(app * 256 + field)) {
        keys.add(app * 256 + field);
        slices.push({ offset, size });
        fromApps.push(field, size, app);
      }
      offset += size;
    }
  }
  const head = [0x60, 0, littleEndian ? 0 : 1, bytes[cursor + 3] as number, bytes[cursor + 4] as number];
  const definition = [
    ...head,
    native.length / 3 + 1,
    TIMESTAMP,
    4,
    UINT32,
    ...native,
    fromApps.length / 3,
    ...fromApps,
  ];
  return {
    littleEndian,
    size: offset,
    timestamp,
    leadsWithTime,
    // 255 fields and a time of their own are more than a definition can say
    kept: useful && native.length < 3 * 255 ? { slices, bytes: Uint8Array.from(definition) } : undefined,
  };
}

/** Collects messages into a small whole file, and has it read. */
function pieces() {
  let bytes = new Uint8Array(65_536);
  let length = HEADER;
  let current: Definition | undefined;
  let numbers: number[] = [];

  const reserve = (more: number): void => {
    if (length + more <= bytes.length) return;
    const larger = new Uint8Array((length + more) * 2);
    larger.set(bytes);
    bytes = larger;
  };
  const write = (part: Uint8Array): void => {
    reserve(part.length);
    bytes.set(part, length);
    length += part.length;
  };

  return {
    size: () => numbers.length,
    add(definition: Definition, from: Uint8Array, data: number, time: number, at: number): number {
      const { kept, littleEndian } = definition;
      if (!kept) return numbers.length;
      if (current !== definition) write(kept.bytes);
      current = definition;
      reserve(5);
      bytes[length] = 0;
      new DataView(bytes.buffer).setUint32(length + 1, time, littleEndian);
      length += 5;
      for (const { offset, size } of kept.slices) write(from.subarray(data + offset, data + offset + size));
      numbers.push(at);
      return numbers.length;
    },
    take(): FitMessage[] {
      const view = new DataView(bytes.buffer);
      bytes.set([HEADER, 0x20, 0, 0, 0, 0, 0, 0, 0x2e, 0x46, 0x49, 0x54, 0, 0]);
      view.setUint32(4, length - HEADER, true);
      reserve(2);
      new DataView(bytes.buffer).setUint16(length, checkSum(bytes.subarray(0, length)), true);
      const { messages } = readFitMessages(bytes.subarray(0, length + 2));
      const numbered = messages.map((message, index) => Object.assign(message, { at: numbers[index] as number }));
      length = HEADER;
      current = undefined;
      numbers = [];
      return numbered;
    },
  };
}

/** How numbers of each base type are written, and which of them means that there is none. */
const NUMBERS: Readonly<
  Record<number, { width: number; read: (view: DataView, little: boolean) => number; none: number }>
> = {
  0: { width: 1, read: (view) => view.getUint8(0), none: 0xff },
  1: { width: 1, read: (view) => view.getInt8(0), none: 0x7f },
  2: { width: 1, read: (view) => view.getUint8(0), none: 0xff },
  3: { width: 2, read: (view, little) => view.getInt16(0, little), none: 0x7f_ff },
  4: { width: 2, read: (view, little) => view.getUint16(0, little), none: 0xff_ff },
  5: { width: 4, read: (view, little) => view.getInt32(0, little), none: 0x7f_ff_ff_ff },
  6: { width: 4, read: (view, little) => view.getUint32(0, little), none: NONE },
  8: { width: 4, read: (view, little) => view.getFloat32(0, little), none: Number.NaN },
  9: { width: 8, read: (view, little) => view.getFloat64(0, little), none: Number.NaN },
  10: { width: 1, read: (view) => view.getUint8(0), none: 0 },
  11: { width: 2, read: (view, little) => view.getUint16(0, little), none: 0 },
  12: { width: 4, read: (view, little) => view.getUint32(0, little), none: 0 },
  13: { width: 1, read: (view) => view.getUint8(0), none: 0xff },
};

/** The (first) number of a field; NaN where it is marked as none, or is no number. */
export function fitNumber(bytes: Uint8Array, baseType: number, littleEndian: boolean): number {
  const type = NUMBERS[getFitBaseTypeId(baseType) ?? -1];
  if (!type || bytes.length < type.width) return Number.NaN;
  const value = type.read(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength), littleEndian);
  return value === type.none || !Number.isFinite(value) ? Number.NaN : value;
}

/** The text of a field, as far as its first blank byte. */
export function fitText(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  return new TextDecoder().decode(end < 0 ? bytes : bytes.subarray(0, end)).trim();
}

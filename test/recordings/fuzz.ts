import { readRecording } from '../../calculators/your-hill/reading/readRecording.ts';
import type { Format, Recording } from '../../calculators/your-hill/reading/recording.ts';
import { type Random, random } from '../random.ts';
import { csvText, fitBytes, gpxText, inventRide, oldGpxText, routeText, tcxText } from './make.ts';

/*
 * Spoils recordings and reads them: nothing may throw, take long, or give columns that make no sense.
 * `npx node test/recordings/fuzz.ts 20000` spoils so many files of each format and tells what it found; a second number is the seed.
 */

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const SOUND: Readonly<Record<Format, readonly Uint8Array[]>> = {
  gpx: [gpxText(inventRide(60)), oldGpxText(inventRide(30, 2)), routeText(inventRide(30, 3))].map(bytesOf),
  tcx: [bytesOf(tcxText(inventRide(50)))],
  fit: [fitBytes(inventRide(80)), Uint8Array.from([...fitBytes(inventRide(20)), ...fitBytes(inventRide(20, 2))])],
  csv: [
    bytesOf(csvText(inventRide(60))),
    bytesOf(csvText(inventRide(30, 2)).replaceAll(',', ';').replaceAll('.', ',')),
  ],
};

const STRANGE = [
  'NaN',
  'Infinity',
  '-Infinity',
  '1e308',
  '-1e308',
  '1e999',
  '99999999999999999999',
  '0x10',
  '',
  ' ',
  '-',
  '.',
  '1,5',
  '1.2.3',
  '٣',
  'null',
  '2026-02-30T10:00:00Z',
  '2026-05-01T25:00:00Z',
  '9999-12-31T23:59:59Z',
  '0001-01-01T00:00:00Z',
  '00:00:00',
  '-1',
  '0',
  '1e-320',
  '"',
  "'",
  '&',
  '&amp;',
  '&bomb;',
  '&#0;',
  '&#xFFFFFFFF;',
  ']]>',
  '<',
  '>',
  '<!--',
  '-->',
  '<![CDATA[',
  '<?',
  '</',
  '/>',
  '\u0000',
  '\u202e',
  '\ufeff',
  ';',
  ',',
  '\t',
  '\n',
  '\r',
];
const TAGS = [
  'trk',
  'trkseg',
  'trkpt',
  'rte',
  'rtept',
  'gpx',
  'ele',
  'time',
  'extensions',
  'Activity',
  'Lap',
  'Track',
  'Trackpoint',
  'Position',
  'Time',
  'Course',
  'name',
  'power',
];
const BOMB = `<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 20 }, (_, i) => `<!ENTITY a${i} "${'&a'.concat(i ? String(i - 1) : '', ';').repeat(10)}">`).join('')}]>`;

// one letter for each byte, which a decoder of the web does not give: its latin1 is Windows 1252
const fromLatin = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));
const joined = (...parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));

/** One way to spoil a file. */
function spoil(bytes: Uint8Array, by: Random): Uint8Array {
  const { whole, pick, chance } = by;
  const at = (): number => whole(0, Math.max(0, bytes.length - 1));
  const part = (): [number, number] => {
    const from = at();
    return [from, Math.min(bytes.length, from + whole(1, chance(0.5) ? 40 : 2000))];
  };
  const text = (change: (text: string) => string): Uint8Array =>
    fromLatin(change(Buffer.from(bytes).toString('latin1')));
  const insert = (what: string): Uint8Array => {
    const place = at();
    return text((all) => all.slice(0, place) + what + all.slice(place));
  };
  switch (whole(0, 12)) {
    case 0: {
      const spoilt = bytes.slice();
      for (let i = whole(1, 20); i > 0; i--) spoilt[at()] = whole(0, 255);
      return spoilt;
    }
    case 1: {
      const spoilt = bytes.slice();
      const place = at();
      spoilt[place] = (spoilt[place] as number) ^ (1 << whole(0, 7));
      return spoilt;
    }
    case 2:
      return bytes.slice(0, at());
    case 3: {
      const [from, to] = part();
      return joined(bytes.subarray(0, from), bytes.subarray(to));
    }
    case 4: {
      const [from, to] = part();
      const place = at();
      return joined(bytes.subarray(0, place), bytes.subarray(from, to), bytes.subarray(place));
    }
    case 5:
      return insert(pick(STRANGE));
    case 6: {
      // a number is replaced
      let nth = whole(0, 200);
      const by = pick(STRANGE);
      return text((all) => all.replace(/-?\d+(?:\.\d+)?/g, (number) => (nth-- === 0 ? by : number)));
    }
    case 7: {
      const [one, other] = [pick(TAGS), pick(TAGS)];
      let nth = whole(0, 30);
      return text((all) =>
        all.replaceAll(new RegExp(`(</?)${one}\\b`, 'g'), (tag, start) =>
          nth-- === 0 || nth < -60 ? `${start}${other}` : tag,
        ),
      );
    }
    case 8:
      return insert(`<${pick(TAGS)}>`.repeat(whole(1, 400)));
    case 9:
      return text((all) => all.replace(/(<\?xml[^>]*\?>)/, `$1${BOMB}`).replace(/<ele>/, '<ele>&a19;'));
    case 10:
      return insert(pick(STRANGE).repeat(whole(1, 5000)));
    case 11: {
      const [from, to] = part();
      const spoilt = bytes.slice();
      spoilt.fill(pick([0, 255, 60, 34]), from, to);
      return spoilt;
    }
    default: {
      // two files in one, or the end before the start
      const place = at();
      return joined(bytes.subarray(place), bytes.subarray(0, place));
    }
  }
}

/** What is wrong with a recording that was read, whatever it was read from. */
export function faultOf({ parts, problems, notes }: Recording): string | undefined {
  for (const { message } of problems) {
    if (/NaN|undefined|not foreseen/.test(message.replace(/“[^”]*”/g, ''))) return `a problem says ${message}`;
    if (message.length > 600) return 'a problem is too long';
  }
  if (problems.length > 120) return `${problems.length} problems`;
  if (notes.some((note) => /NaN|undefined/.test(note.replace(/“[^”]*”/g, '')))) return 'a note';
  if (parts.length === 0 && problems.length === 0) return 'nothing read and nothing said';
  for (const { track, kind, device, crept, name } of parts) {
    const { distance, time, breaks, ...others } = track;
    if (name === '') return 'a part without a name';
    if (distance.length < 2) return 'a part of one point';
    for (const [column, values] of Object.entries({ time, ...others }))
      if (values.length !== distance.length) return `${column} has ${values.length} rows, distance ${distance.length}`;
    if (distance[0] !== 0) return 'distance begins elsewhere than at 0';
    for (const [column, values] of Object.entries(others))
      if (values.some((value) => Math.abs(value) > 1e9)) return `${column} is endless`;
    let last = Number.NEGATIVE_INFINITY;
    let clock = Number.NEGATIVE_INFINITY;
    for (const [index, value] of distance.entries()) {
      if (!(value >= last) || value > 1e10) return `distance is ${value} after ${last}`;
      last = value;
      const now = time[index] as number;
      if (kind === 'route' ? !Number.isNaN(now) : now <= clock || Math.abs(now) > 1e12)
        return `time is ${now} after ${clock}`;
      if (!Number.isNaN(now)) clock = now;
    }
    let before = 0;
    for (const { index, seconds, apart } of breaks) {
      if (!(index > before && index < distance.length)) return `a break at ${index}`;
      if (distance[index] !== distance[index - 1]) return `distance is counted over a break at ${index}`;
      if (kind === 'ride' && seconds <= 0) return `a break of ${seconds} s`;
      if (apart < 0 || apart > 2.1e7) return `a break of ${apart} m`;
      before = index;
    }
    if (!(crept >= 0) || Object.values(device).some((total) => !Number.isFinite(total))) return 'totals';
  }
  return undefined;
}

export interface Fuzzed {
  files: number;
  /** files of which something was read */
  read: number;
  slowest: number;
  faults: { seed: number; fault: string }[];
}

/** Spoils and reads so many files of a format. */
export function fuzz(format: Format, files: number, seed = 1): Fuzzed {
  const result: Fuzzed = { files, read: 0, slowest: 0, faults: [] };
  for (let i = 0; i < files; i++) {
    const bytes = spoilt(format, seed + i);
    let recording: Recording | undefined;
    const read = (): number => {
      const begun = performance.now();
      recording = readRecording(bytes, 'spoilt');
      return performance.now() - begun;
    };
    try {
      let time = read();
      // what else the machine does must not count
      if (time > 200) time = Math.min(time, read(), read());
      result.slowest = Math.max(result.slowest, time);
    } catch (error) {
      result.faults.push({ seed: seed + i, fault: String(error) });
    }
    if (!recording) continue;
    if (recording.parts.length > 0) result.read++;
    const fault = faultOf(recording);
    if (fault) result.faults.push({ seed: seed + i, fault });
  }
  return result;
}

/** The file that a seed makes. */
export function spoilt(format: Format, seed: number): Uint8Array {
  const by = random(seed * 7919);
  let bytes = by.pick(SOUND[format]);
  for (let i = by.whole(1, 3); i > 0; i--) bytes = spoil(bytes, by);
  return bytes;
}

if (process.argv[1] === import.meta.filename) {
  const [files = 20_000, seed = 1] = process.argv.slice(2).map(Number);
  let isSound = true;
  for (const format of ['gpx', 'tcx', 'fit', 'csv'] as const) {
    const { read, slowest, faults } = fuzz(format, files, seed);
    console.log(
      `${format}: ${files} spoilt files, ${read} gave parts, slowest ${slowest.toFixed(0)} ms, ${faults.length} faults`,
    );
    for (const { seed: of, fault } of faults.slice(0, 5)) console.log(`  seed ${of}: ${fault}`);
    isSound &&= faults.length === 0 && slowest < 1000;
  }
  process.exitCode = isSound ? 0 : 1;
}

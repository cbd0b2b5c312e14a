import FitParser from 'fit-file-parser';
import { describe, expect, it } from 'vitest';
import { checkSum } from '../../calculators/your-hill/reading/fitMessages.ts';
import { fitBytes, fitFile, inventRide, START } from './make.ts';
import { onlyPart, read, rises, said } from './reading.ts';

const orNone = (value: number | undefined): number => value ?? Number.NaN;

// Parts of a file written byte by byte: a definition is 0x40 + local number (0x20 more where apps add fields), 0, order of bytes (0 the
// small end first), message, count of fields, and of each its number, size and base type
const TIME = [253, 4, 0x86];
const DISTANCE = [5, 4, 0x86];
const POWER = [7, 2, 0x84];
const RECORD = [0x40, 0, 0, 20, 0];
const little = (value: number, size = 4): number[] =>
  Array.from({ length: size }, (_, place) => Math.floor(value / 256 ** place) & 255);
const big = (value: number, size = 4): number[] => little(value, size).reverse();
const text = (letters: string): number[] => [...new TextEncoder().encode(letters), 0];

describe('FIT', () => {
  it('gives every value that was written, and none where the file marks it as none', () => {
    const ride = inventRide(400);
    const { track, kind, name, device } = onlyPart(read(fitBytes(ride, { gain: 77 })));
    expect([kind, name]).toEqual(['ride', 'Cycling']);
    expect([...track.power]).toEqual(ride.points.map(({ power }) => orNone(power)));
    expect([...track.cadence]).toEqual(ride.points.map(({ cadence }) => orNone(cadence)));
    expect([...track.heartRate]).toEqual(ride.points.map(({ heartRate }) => orNone(heartRate)));
    expect([...track.time]).toEqual(ride.points.map(({ time }) => time - START));
    ride.points.forEach(({ elevation, counter }, index) => {
      // heights are kept to a fifth of a metre, distances to a hundredth
      expect(Math.abs((track.elevation[index] ?? 0) - elevation)).toBeLessThan(0.1001);
      expect(track.counter[index]).toBeCloseTo(counter, 6);
    });
    const total = ride.points.at(-1)?.counter ?? 0;
    expect(device).toEqual({ elapsed: 459, moving: 399, distance: Math.round(total * 100) / 100, gain: 77 });
    expect(track.breaks).toMatchObject([{ index: 200, why: 'timer', seconds: 61 }]);
  });

  it('agrees with the full parser of the library in count, heights, gain and duration', async () => {
    const bytes = fitBytes(inventRide(500, 4));
    const { track } = onlyPart(read(bytes));
    const other = await new FitParser({ force: false }).parseAsync(bytes.slice().buffer);
    const records = (other.records ?? []) as { timestamp: string | Date; enhanced_altitude?: number; power?: number }[];
    expect(track.distance).toHaveLength(records.length);
    expect([...track.elevation]).toEqual(records.map(({ enhanced_altitude }) => orNone(enhanced_altitude)));
    expect([...track.power]).toEqual(records.map(({ power }) => orNone(power)));
    expect(rises(track.elevation)).toBeCloseTo(
      rises(records.map(({ enhanced_altitude = Number.NaN }) => enhanced_altitude)),
      9,
    );
    const [first, last] = [records[0], records.at(-1)].map((record) => new Date(record?.timestamp ?? 0).getTime());
    expect(track.time.at(-1)).toBe(((last ?? 0) - (first ?? 0)) / 1000);
  });

  it('covers the distance that the positions cover', () => {
    const ride = inventRide(300, 6);
    const { track, distanceFrom } = onlyPart(read(fitBytes(ride)));
    expect(distanceFrom).toBe('positions');
    // the counter of the invented ride runs 0.4 % long on a degree of 111.2 km; the pause of a second is in neither, nor are windings
    const counted = ride.points.reduce(
      (sum, { counter }, index) =>
        index > 0 && index !== ride.pauses[0] ? sum + counter - (ride.points[index - 1]?.counter ?? 0) : sum,
      0,
    );
    expect(Math.abs((track.distance.at(-1) ?? 0) / (counted / 1.004) - 1)).toBeLessThan(0.003);
  });

  it('reads the check sum as the encoder writes it', () => {
    const bytes = fitBytes(inventRide(10));
    expect(checkSum(bytes)).toBe(0); // the sum over data and their sum is nothing
    // the check value of CRC-16/ARC for the digits 1 to 9, as catalogues of check sums print it: value from memory
    expect(checkSum(new TextEncoder().encode('123456789'))).toBe(0xbb3d);
  });

  it('gives what is whole of a file that is cut short, wherever that is', () => {
    const bytes = fitBytes(inventRide(300));
    let before = 300;
    for (let cut = bytes.length - 1; cut > 500; cut -= 97) {
      const recording = read(bytes.slice(0, cut));
      expect(recording.cutShort).toBe(true);
      expect(said(recording)).toMatch(/The file ends too early, after record \d+: what is whole up to there is read\./);
      const { length } = onlyPart(recording).track.distance;
      expect(length).toBeLessThanOrEqual(before);
      // a record takes 25 bytes, with its header 26
      expect(before - length).toBeLessThanOrEqual(Math.ceil(97 / 26));
      before = length;
    }
    const blank = bytes.slice();
    blank.fill(0, 4, 8);
    expect(onlyPart(read(blank)).track.distance).toHaveLength(300);
  });

  it('reads a file whose check sum does not fit, and says so', () => {
    const bytes = fitBytes(inventRide(100));
    bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
    const recording = read(bytes);
    expect(said(recording)).toContain('The check sum of the file does not fit');
    expect(onlyPart(recording).track.distance).toHaveLength(100);
  });

  it('reads files that are chained, one after the other', () => {
    const chained = Uint8Array.from([...fitBytes(inventRide(100)), ...fitBytes(inventRide(50, 2))]);
    expect(read(chained).parts.map(({ track }) => track.distance.length)).toEqual([100, 50]);
  });

  it('parts a file by its sessions', () => {
    const session = (start: number, sport: number): number[] => [
      ...[0x41, 0, 0, 18, 0, 4, ...TIME, 2, 4, 0x86, 5, 1, 0, 9, 4, 0x86],
      ...[1, ...little(start + 9), ...little(start), sport, ...little(4500)],
    ];
    const records = Array.from({ length: 20 }, (_, at) => [0, ...little(1000 + at), ...little(at * 500)]).flat();
    const { parts } = read(
      fitFile([...RECORD, 2, ...TIME, ...DISTANCE, ...records], session(1010, 2), session(1000, 1)),
    );
    expect(
      parts.map(({ name, track, device }) => [name, track.distance.length, track.distance.at(-1), device.distance]),
    ).toEqual([
      ['Running', 10, 45, 45],
      ['Cycling', 10, 45, 45],
    ]);
  });

  it('reads both orders of bytes, and altitude without its finer form', () => {
    const record = (at: number) => [
      0,
      ...big(1000 + at),
      ...big(at * 500),
      ...big(at === 1 ? 0xffff : (240 + 500) * 5, 2),
    ];
    const bytes = fitFile([0x40, 0, 1, 0, 20, 3, ...TIME, ...DISTANCE, 2, 2, 0x84], record(0), record(1), record(2));
    const { track } = onlyPart(read(bytes));
    expect([...track.distance]).toEqual([0, 5, 10]);
    expect([...track.elevation]).toEqual([240, Number.NaN, 240]);
  });

  it.each([
    ['a time in the definition that is not written', [2, ...TIME, ...DISTANCE]],
    ['no time in the definition', [1, ...DISTANCE]],
  ])('reads times of five bits in the header, with %s', (_, fields) => {
    const definition = [0x41, 0, 0, 20, 0, ...fields];
    const compressed = (time: number, metres: number) => [0x80 | (1 << 5) | (time & 31), ...little(metres * 100)];
    const first = [...RECORD, 2, ...TIME, ...DISTANCE, 0, ...little(1000), ...little(0)];
    const bytes = fitFile(first, definition, compressed(1001, 5), compressed(1030, 10), compressed(1040, 15));
    expect([...onlyPart(read(bytes)).track.time]).toEqual([0, 1, 30, 40]);
  });

  describe('fields that apps add', () => {
    const described = (name: string, native?: number): number[] => [
      ...[0x42, 0, 0, 206, 0, 5, 0, 1, 2, 1, 1, 2, 2, 1, 2, 3, name.length + 1, 7, 15, 1, 2],
      ...[2, 0, 9, 0x88, ...text(name), native ?? 255],
    ];
    const float = (value: number): number[] => [...new Uint8Array(Float32Array.of(value).buffer)];
    const file = (name: string, native: number | undefined, own?: number): Uint8Array =>
      fitFile(
        described(name, native),
        [0x60, 0, 0, 20, 0, 3, ...TIME, ...DISTANCE, ...POWER, 1, 9, 4, 0],
        ...[0, 1, 2].map((at) => [
          0,
          ...little(1000 + at),
          ...little(at * 500),
          ...little(own ?? 0xffff, 2),
          ...float(200 + at),
        ]),
      );

    it('are the power where the device wrote none', () => {
      for (const recording of [read(file('Power', undefined)), read(file('Watt', 7))]) {
        expect([...onlyPart(recording).track.power]).toEqual([200, 201, 202]);
        expect(said(recording)).toContain('The power is that of an app’s own field');
      }
    });

    it('give way to the power of the device', () => {
      const recording = read(file('Power', undefined, 150));
      expect([...onlyPart(recording).track.power]).toEqual([150, 150, 150]);
      expect(said(recording)).toContain('the device’s is used');
    });

    it('are passed over where they are something else, or described nowhere', () => {
      expect(onlyPart(read(file('Form', undefined))).track.power.every(Number.isNaN)).toBe(true);
      const undescribed = fitFile(
        [0x60, 0, 0, 20, 0, 2, ...TIME, ...DISTANCE, 1, 9, 4, 0],
        ...[0, 1].map((at) => [0, ...little(1000 + at), ...little(at * 500), ...float(1)]),
      );
      expect(onlyPart(read(undescribed)).track.distance).toHaveLength(2);
    });
  });

  it('joins two records of the same second that complete each other', () => {
    const bytes = fitFile(
      [...RECORD, 2, ...TIME, ...DISTANCE],
      [0x41, 0, 0, 20, 0, 2, ...TIME, ...POWER],
      ...[0, 1, 2].flatMap((at) => [
        [0, ...little(1000 + at), ...little(at * 500)],
        [1, ...little(1000 + at), ...little(200 + at, 2)],
      ]),
    );
    const recording = read(bytes);
    expect([...onlyPart(recording).track.power]).toEqual([200, 201, 202]);
    expect(recording.problems).toEqual([]);
  });

  it('says which record cannot be followed, and keeps those before it', () => {
    const record = (at: number) => [0, ...little(1000 + at), ...little(at * 500)];
    const recording = read(fitFile([...RECORD, 2, ...TIME, ...DISTANCE], record(0), record(1), [7], record(2)));
    expect(onlyPart(recording).track.distance).toHaveLength(2);
    expect(said(recording)).toContain('Record 3: This message is not described before it comes');
  });

  it('takes a course for a route, and passes over definitions that make no sense', () => {
    expect(onlyPart(read(fitBytes(inventRide(30), { file: 6 }))).kind).toBe('route');
    const odd = [0x40, 0, 0, 20, 0, 5, ...TIME, ...DISTANCE, 7, 3, 0x84, 4, 1, 0x60, 4, 1, 2];
    const record = (at: number) => [0, ...little(1000 + at), ...little(at * 500), 1, 2, 3, 4, 80];
    expect([...onlyPart(read(fitFile(odd, record(0), record(1)))).track.cadence]).toEqual([80, 80]);
  });
});

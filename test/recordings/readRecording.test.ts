import { gzipSync } from 'node:zlib';
import { describe, expect, it, test } from 'vitest';
import { collectProblems } from '../../calculators/your-hill/reading/problems.ts';
import { readFile } from '../../calculators/your-hill/reading/readFile.ts';
import { readRecording } from '../../calculators/your-hill/reading/readRecording.ts';
import { LARGEST } from '../../calculators/your-hill/reading/recording.ts';
import { blankPoint, newRoom, trackBuilder } from '../../calculators/your-hill/reading/trackBuilder.ts';
import { faultOf, fuzz } from './fuzz.ts';
import { csvText, fitBytes, gpxText, inventRide, tcxText } from './make.ts';
import { gpxOf, onlyPart, pointAt, read, said, seconds } from './reading.ts';

const ride = inventRide(50);

describe('what a file is', () => {
  it('is told by its content, whatever its name', () => {
    expect(read(gpxText(ride), 'ride.fit').format).toBe('gpx');
    expect(read(tcxText(ride), 'ride.csv').format).toBe('tcx');
    expect(read(fitBytes(ride), 'ride.gpx').format).toBe('fit');
    expect(read(csvText(ride), 'ride').format).toBe('csv');
    // its start is lost
    expect(read(gpxText(ride).slice(600)).format).toBe('gpx');
    expect(read(`<x:gpx xmlns:x="urn:x">${gpxText(ride).split('<trk>')[1]}`).format).toBe('gpx');
  });

  it.each([
    ['', 'This file is empty.'],
    [' \n ', 'There is nothing in this file.'],
    ['%PDF-1.7', 'This is a PDF: GPX, TCX, FIT and CSV can be read.'],
    ['\u0089PNG\r\n', 'This is a picture: GPX, TCX, FIT and CSV can be read.'],
    ['\u00ff\u00d8\u00ff\u00e0', 'This is a picture: GPX, TCX, FIT and CSV can be read.'],
    ['PK\u0003\u0004', 'This is a zip archive: unpack it first, and choose the recording in it.'],
    ['<!DOCTYPE html><html>', 'This is a web page'],
    ['<kml xmlns="x">', 'This is a KML file'],
    ['<other/>', 'This is XML of another kind'],
    ['{"a": 1}', 'This looks like JSON'],
    ['\u0000\u0001\u0002\u0003'.repeat(100), 'This is not a recording that can be read'],
  ])('says of %j what it is', (letters, words) => {
    const recording = read(Uint8Array.from(letters, (letter) => letter.charCodeAt(0)));
    expect(recording.parts).toEqual([]);
    expect(recording.format).toBeUndefined();
    expect(said(recording)).toContain(words);
  });

  it('says that a packed file is packed; the worker unpacks it', () => {
    expect(said(read(gzipSync(gpxText(ride))))).toBe('This file is packed (gzip): unpack it first.');
  });

  it('says that a file is too large, and does not read it', () => {
    expect(said(read(new Uint8Array(LARGEST + 1)))).toBe('This file has 60 MB. Files of up to 60 MB are read.');
  });

  it('says that there is no track in a file without one', () => {
    for (const text of ['<gpx/>', gpxOf(pointAt(0)), '<TrainingCenterDatabase/>'])
      expect(said(read(text))).toContain('There is no track or route in this file');
  });
});

describe('reading', () => {
  it('tells how far it is, from 0 to 1, never back', () => {
    for (const bytes of [new TextEncoder().encode(gpxText(inventRide(8000))), fitBytes(inventRide(8000))]) {
      const shares: number[] = [];
      readRecording(bytes, 'file', (share) => shares.push(share));
      expect(shares.length).toBeGreaterThan(3);
      expect(shares.at(-1)).toBe(1);
      shares.forEach((share, index) => {
        expect(share).toBeGreaterThanOrEqual(shares[index - 1] ?? 0);
        expect(share).toBeLessThanOrEqual(1);
      });
    }
  });

  it('tells how much of the distance was crept while the bike stood', () => {
    // 30 s of riding north at 5.56 m/s, then a minute on the spot, 0.11 m to the one side and back each second
    const wander = (second: number): string =>
      pointAt(second).replace(/lat="[^"]*"/, `lat="${second % 2 ? -48.8985 : -48.898499}"`);
    const part = onlyPart(
      read(gpxOf(...seconds(31).map((at) => pointAt(at)), ...seconds(60).map((at) => wander(31 + at)))),
    );
    // 10⁻⁶ of a degree is 0.1112 m, 59 times, and 0 or one more on the way to the first
    expect(part.crept).toBeGreaterThan(59 * 0.111);
    expect(part.crept).toBeLessThan(61 * 0.112);
    expect(part.track.distance.at(-1)).toBeCloseTo(30 * 5e-5 * 111_209 + part.crept, 0);
  });

  it('takes no more points than there is room for', () => {
    expect(newRoom().left).toBe(1_000_000);
    const problems = collectProblems('line');
    const builder = trackBuilder(problems, { left: 3, isFull: false });
    for (const at of seconds(6)) builder.add({ ...blankPoint(), time: at, counter: at * 5 }, at + 1);
    expect(builder.part({ name: 'Full', planned: false })?.track.distance).toHaveLength(3);
    expect(problems.list()).toEqual([
      { where: 'line 4', message: 'The file has more than a million points: those from here on are not read.' },
    ]);
  });
});

test('of one kind of mistakes three are named and the others counted, also where it is one', () => {
  const problems = collectProblems('line');
  const last = (): string | undefined => problems.list().at(-1)?.message;
  for (const at of [1, 2, 3, 4]) problems.add('points that are nowhere', at, 'This point is nowhere.');
  expect(problems.list()).toHaveLength(4);
  expect(last()).toBe('And one more of the last kind.');
  problems.add('points that are nowhere', 5, 'This point is nowhere.');
  expect(last()).toBe('And 2 more points that are nowhere.');
});

describe('a file from a disk', () => {
  const bytes = new TextEncoder().encode(gpxText(inventRide(3000)));

  it('is read as it comes, with its progress', async () => {
    const shares: number[] = [];
    const recording = await readFile(new File([bytes], 'ride.gpx'), (share) => shares.push(share));
    expect(recording).toEqual(read(bytes, 'ride.gpx'));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('is unpacked where it is packed, as far as it is whole', async () => {
    const packed = gzipSync(bytes);
    const whole = await readFile(new File([packed], 'ride.gpx.gz'), () => {});
    expect(onlyPart(whole).track.distance).toHaveLength(3000);
    const half = await readFile(new File([packed.subarray(0, packed.length / 2)], 'ride.gpx.gz'), () => {});
    expect(half.cutShort).toBe(true);
    expect(onlyPart(half).track.distance.length).toBeGreaterThan(1000);
    const large = await readFile(new File([gzipSync(new Uint8Array(LARGEST + 1))], 'bomb.gz'), () => {});
    expect(said(large)).toBe('Unpacked, this file is too large. Files of up to 60 MB are read.');
    const none = await readFile(new File([packed.subarray(0, 5)], 'ride.gpx.gz'), () => {});
    expect(said(none)).toBe('This file could not be read. Is it still where it was?');
  });
});

describe('spoilt files', () => {
  it.each(['gpx', 'tcx', 'fit', 'csv'] as const)('never bring anything down: %s', (format) => {
    const { faults, read: some } = fuzz(format, 400, 1_000_000);
    expect(faults).toEqual([]);
    // most still give what is whole
    expect(some).toBeGreaterThan(250);
  });

  it('would be noticed', () => {
    const recording = read(gpxText(ride));
    expect(faultOf(recording)).toBeUndefined();
    onlyPart(recording).track.distance[5] = Number.NaN;
    expect(faultOf(recording)).toContain('distance is NaN');
  });
});

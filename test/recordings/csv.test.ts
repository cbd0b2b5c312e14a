import { describe, expect, it } from 'vitest';
import { readHeading } from '../../calculators/your-hill/reading/csv.ts';
import { csvText, inventRide, START } from './make.ts';
import { onlyPart, read, rises, said } from './reading.ts';

const orNone = (value: number | undefined): number => value ?? Number.NaN;

describe('CSV', () => {
  it('gives every value that was written, with its distance, gain and duration', () => {
    const ride = inventRide(400);
    const recording = read(csvText(ride));
    const { track, kind, distanceFrom } = onlyPart(recording);
    expect([kind, distanceFrom]).toEqual(['ride', 'counter']);
    expect([...track.elevation]).toEqual(ride.points.map(({ elevation }) => elevation));
    expect([...track.power]).toEqual(ride.points.map(({ power }) => orNone(power)));
    expect([...track.cadence]).toEqual(ride.points.map(({ cadence }) => orNone(cadence)));
    expect([...track.heartRate]).toEqual(ride.points.map(({ heartRate }) => orNone(heartRate)));
    expect([...track.time]).toEqual(ride.points.map(({ time }) => time - START));
    const [pause = 0] = ride.pauses;
    const bridged = (ride.points[pause]?.counter ?? 0) - (ride.points[pause - 1]?.counter ?? 0);
    expect(track.distance.at(-1)).toBeCloseTo((ride.points.at(-1)?.counter ?? 0) - bridged, 6);
    expect(track.breaks).toMatchObject([{ index: pause, why: 'silence', seconds: 61 }]);
    expect(rises(track.elevation)).toBeCloseTo(rises(ride.points.map(({ elevation }) => elevation)), 9);
    expect(recording.problems).toEqual([]);
  });

  it.each([
    ['distance,elevation\n0,10\n1000,50\n', 1000, 10],
    ['Distance (km);Elevation (m)\n0;10\n1,5;50\n', 1500, 10],
    ['distance_km\televation_ft\n0\t100\n1.5\t200\n', 1500, 30.48],
    ['"Distance [mi]","Altitude [ft]"\n0,100\n"1,5",200\n', 2414.016, 30.48],
    ['dist(ft),height/m\n0,1\n1000,2\n', 304.8, 1],
    ['Distance, m;ele\n0;1\n1.234,5;2\n', 1234.5, 1],
    ['\ufeffDistance (m)|Alt (m)\r\n0|1\r\n10|2\r\n', 10, 1],
    ['An invented hill\nby nobody\n\ndistance (m),elevation (m)\n0,1\n10,2', 10, 1],
  ])('reads %j', (text, distance, elevation) => {
    const { track, kind } = onlyPart(read(text));
    expect(kind).toBe('route');
    expect(track.distance.at(-1)).toBeCloseTo(distance, 9);
    expect(track.elevation[0]).toBeCloseTo(elevation, 9);
  });

  it.each([
    ['time', '0', '90', 90],
    ['time (min)', '0', '1.5', 90],
    ['seconds', '0', '90', 90],
    ['Time (h:mm:ss)', '0:00:00', '0:01:30', 90],
    ['elapsed', '00:10', '01:40', 90],
    ['timestamp', '2026-05-01T10:00:00Z', '2026-05-01T10:01:30Z', 90],
    ['timestamp', '2026-05-01 10:00:00', '2026-05-01 10:01:30.5', 90.5],
    ['timestamp', '1777629600000', '1777629690000', 90],
    ['time (UTC)', '23:59:30', '0:01:00', 90],
  ])('reads the time %s from %s to %s', (heading, first, second, seconds) => {
    const { track } = onlyPart(read(`${heading};distance (m)\n${first};0\n${second};10\n`));
    expect(track.time[1]).toBeCloseTo(seconds, 6);
  });

  it('reads a date and a time of day in columns of their own', () => {
    const { track } = onlyPart(read('date,time,lat,lon\n2026-05-01,23:59:59,1,2\n2026-05-02,00:00:01,1.0001,2\n'));
    expect([...track.time]).toEqual([0, 2]);
  });

  it('says which columns it reads and passes over, and what it assumes', () => {
    const recording = read(
      'Time (s),Distance,Speed (km/h),Gear,Power (hp),Altitude (m),Height (m)\n0,0,1,2,3,4,5\n1,5,1,2,3,4,5\n',
    );
    const words = said(recording);
    expect(words).toContain(
      'Columns that are read: “Time (s)” as time, “Distance” as distance, “Altitude (m)” as elevation.',
    );
    expect(words).toContain('Columns that are passed over: “Speed (km/h)”, “Gear”, “Height (m)”.');
    expect(words).toContain('The unit of “Power (hp)” is not known: the column is not used.');
    expect(words).toContain('No unit stands over “Distance”: it is read as metres.');
  });

  it.each([
    ['Heart Rate (bpm)', 'heartRate', 1],
    ['heart_rate', 'heartRate', 1],
    ['heartRate', 'heartRate', 1],
    ['watts', 'power', 1],
    ['Power [kW]', 'power', 1000],
    ['Cadence/rpm', 'cadence', 1],
    ['ELEVATION', 'elevation', 1],
    ['Longitude (°)', 'longitude', 1],
    ['distance_miles', 'counter', 1609.344],
  ] as const)('understands the heading %s', (title, target, size) => {
    expect(readHeading(title)).toMatchObject({ target, size });
  });

  it.each(['speed', 'distance to go', 'left power', 'm', 'elevation gain', '__proto__', 'constructor'])(
    'does not take the heading %s for anything',
    (title) => {
      expect(readHeading(title)).toBeUndefined();
    },
  );

  it('names cells and rows that cannot be read, with their lines', () => {
    const recording = read('time (s),distance (m),power (W)\n0,0,100\n1,x,100\n2,10,\n3,15,0\n\n4,20,NaN,5\n5,25,-3\n');
    const { track } = onlyPart(recording);
    expect([...track.time]).toEqual([0, 1, 2, 3, 5]);
    expect([...track.power]).toEqual([100, 100, Number.NaN, 0, Number.NaN]);
    // halfway in time between 0 and 10 m
    expect([...track.distance]).toEqual([0, 5, 10, 15, 25]);
    expect(said(recording)).toContain('Line 3: “x” under “distance (m)” is no number: it is left out.');
    expect(said(recording)).toContain('Line 7: The row has 4 cells and the headings are 3: it is left out.');
    expect(said(recording)).toContain('Line 8: The power cannot be -3');
  });

  it('leaves out the last row of a file that is cut short', () => {
    const recording = read('time (s),distance (m),power (W)\n0,0,100\n1,5,100\n2,1');
    expect(recording.cutShort).toBe(true);
    expect(onlyPart(recording).track.distance).toHaveLength(2);
    expect(said(recording)).toContain('The file ends in line 4, in the middle of a row');
    expect(read('time (s),distance (m)\n0,0\n1,5').cutShort).toBe(false);
  });

  it('carries a distance on that starts anew, and leaves out one that does not fit', () => {
    const rows = (...metres: number[]): string =>
      `time (s),distance (m)\n${metres.map((value, at) => `${at},${value}`).join('\n')}\n`;
    const anew = read(rows(0, 5, 10, 15, 20, 0, 5, 10, 15));
    expect([...onlyPart(anew).track.distance]).toEqual([0, 5, 10, 15, 20, 20, 25, 30, 35]);
    expect(said(anew)).toContain('Line 7: The distance starts anew');
    const wrong = read(rows(0, 5, 10, 9000, 20, 25, 30, 2, 40));
    expect([...onlyPart(wrong).track.distance]).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40]);
    expect(said(wrong)).toContain('Line 5: Its distance does not fit');
  });

  it('counts lines right over pieces of the file, whatever ends a line', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const rows = Array.from({ length: 40_000 }, (_, at) => `${at},${at * 5}`);
      rows[35_000] = '35000,x';
      const recording = read(`time (s),distance (m)${end}${rows.join(end)}${end}`);
      expect(said(recording)).toContain('Line 35002: “x” under');
      expect(onlyPart(recording).track.distance).toHaveLength(40_000);
    }
  });

  it.each(['Dear reader,\nthis is a letter.\n', 'a,b\n1,2\n', 'power,cadence\n1,2\n', 'x'.repeat(3_000_000)])(
    'says of text without such columns what is missing',
    (text) => {
      const recording = read(text);
      expect(recording.parts).toEqual([]);
      expect(recording.problems).toHaveLength(1);
      expect(said(recording)).toContain('This is text without columns of distances or places.');
    },
  );

  it('stops at an opened quotation mark no longer than a piece', () => {
    const rows = Array.from({ length: 60_000 }, (_, at) => `${at},${at * 5}`);
    rows[10] = `"${rows[10]}`;
    const recording = read(`time (s),distance (m)\n${rows.join('\n')}\n`);
    expect(onlyPart(recording).track.distance.length).toBeGreaterThan(25_000);
  });
});

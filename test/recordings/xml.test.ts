import { gpx, tcx } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { gpxText, inventRide, oldGpxText, routeText, tcxText } from './make.ts';
import { gpxOf, onlyPart, pointAt, read, rises, said, seconds, timeAt } from './reading.ts';
import { vincenty } from './vincenty.ts';

/** What is used of a feature of GeoJSON. */
interface Feature {
  geometry?: { type: string; coordinates?: unknown } | null;
  properties?: Record<string, unknown> | null;
}

interface Other {
  count: number;
  distance: number;
  gain: number;
  duration: number;
  heartRates: number[];
}

/** Counts, distance, gain and duration by general libraries: togeojson on a document of xmldom, and Vincenty's formulas. */
function otherwise(text: string, reader: typeof gpx): Other {
  const document = new DOMParser().parseFromString(text, 'text/xml');
  const features = reader(document).features.filter(({ geometry }: Feature) => geometry?.type !== 'Point');
  const lines: number[][][] = features.flatMap(({ geometry }: Feature) =>
    geometry?.type === 'MultiLineString'
      ? geometry.coordinates
      : geometry?.type === 'LineString'
        ? [geometry.coordinates]
        : [],
  );
  const properties = (features[0]?.properties?.coordinateProperties ?? {}) as Record<string, unknown[]>;
  const times = (properties.times ?? []).flat().map((time) => Date.parse(String(time)) / 1000);
  const points = lines.flat();
  let distance = 0;
  for (const line of lines)
    for (let i = 1; i < line.length; i++) {
      const [lon = 0, lat = 0] = line[i - 1] ?? [];
      const [lon2 = 0, lat2 = 0] = line[i] ?? [];
      distance += vincenty(lat, lon, lat2, lon2);
    }
  return {
    count: points.length,
    distance,
    gain: rises(points.map(([, , elevation = Number.NaN]) => elevation)),
    duration: times.length ? (times.at(-1) ?? 0) - (times[0] ?? 0) : Number.NaN,
    heartRates: ((properties.heart ?? properties.heartRates ?? []) as unknown[]).flat().map(Number),
  };
}

/** m to a point of the invented ride of 400 from the one before it. */
function stepTo(index: number): number {
  const [one, other] = [inventRide(400).points[index - 1], inventRide(400).points[index]];
  return vincenty(one?.latitude ?? 0, one?.longitude ?? 0, other?.latitude ?? 0, other?.longitude ?? 0);
}

describe('GPX and TCX beside a general-purpose reader', () => {
  const files: [string, string, typeof gpx][] = [
    ['GPX 1.1 with segments and extensions', gpxText(inventRide(400)), gpx],
    ['GPX 1.1, another ride', gpxText(inventRide(777, 5)), gpx],
    ['GPX 1.0', oldGpxText(inventRide(50, 2)), gpx],
    ['a route', routeText(inventRide(120, 3)), gpx],
    ['TCX of two laps', tcxText(inventRide(400)), tcx],
  ];
  it.each(files)('%s: the same count, distance, gain and duration', (_, text, reader) => {
    const other = otherwise(text, reader);
    const { track } = onlyPart(read(text));
    expect(track.distance).toHaveLength(other.count);
    const distance = track.distance.at(-1) ?? 0;
    const apart = (why: string): number =>
      track.breaks.filter((one) => one.why === why).reduce((sum, one) => sum + one.apart, 0);
    // the library keeps every track apart, also where only a lap ends
    const betweenLaps = reader === tcx ? stepTo(133) : 0;
    // it bridges what was not recorded; Vincenty is good to some micrometres between two points
    expect(Math.abs(distance + apart('silence') - betweenLaps - other.distance)).toBeLessThan(1e-5 * other.count);
    expect(rises(track.elevation)).toBeCloseTo(other.gain, 6);
    // its first feature of a TCX file is its first lap
    if (reader === gpx && !Number.isNaN(other.duration)) expect(track.time.at(-1)).toBeCloseTo(other.duration, 6);
  });

  it.each([
    ['gpx', gpxText],
    ['tcx', tcxText],
  ] as const)('%s: every value of every point is what was written, and nothing where nothing was', (_, text) => {
    const ride = inventRide(400);
    const { track, kind } = onlyPart(read(text(ride)));
    expect(kind).toBe('ride');
    const orNone = (value: number | undefined): number => value ?? Number.NaN;
    expect([...track.power]).toEqual(ride.points.map(({ power }) => orNone(power)));
    expect([...track.cadence]).toEqual(ride.points.map(({ cadence }) => orNone(cadence)));
    expect([...track.heartRate]).toEqual(ride.points.map(({ heartRate }) => orNone(heartRate)));
    expect([...track.elevation]).toEqual(ride.points.map(({ elevation }) => elevation));
    expect([...track.time]).toEqual(ride.points.map(({ time }) => time - (ride.points[0]?.time ?? 0)));
    // the fixture has both: coasting at no watts, and a meter that dropped out
    expect(track.power.filter((value) => value === 0).length).toBeGreaterThan(5);
    expect(track.power.filter(Number.isNaN).length).toBeGreaterThan(20);
  });
});

describe('GPX', () => {
  const nested = `<extensions><a:b xmlns:a="urn:x"><a:c><a:hr>131</a:hr><q:cad>77</q:cad></a:c></a:b><PowerInWatts>211</PowerInWatts></extensions>`;
  it('finds power, cadence and heart rate in any namespace, undeclared ones too, however deep', () => {
    const { track } = onlyPart(read(gpxOf(pointAt(0, nested), pointAt(1), pointAt(2))));
    expect([track.power[0], track.cadence[0], track.heartRate[0]]).toEqual([211, 77, 131]);
    expect([track.power[1], track.cadence[1], track.heartRate[1]]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  it('keeps 0 as 0 and leaves what is empty empty', () => {
    const zero = '<ele>0</ele><extensions><power>0</power><cad>0</cad></extensions>';
    const empty = '<ele/><extensions><power></power><cad> </cad></extensions>';
    const { track } = onlyPart(read(gpxOf(pointAt(0, zero), pointAt(1, empty), pointAt(2))));
    expect([track.elevation[0], track.power[0], track.cadence[0]]).toEqual([0, 0, 0]);
    expect([track.elevation[1], track.power[1], track.cadence[1]]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  it('counts nothing across segments, however far apart they are', () => {
    const text = gpxOf(pointAt(0), pointAt(1), '</trkseg><trkseg>', pointAt(1000), pointAt(1001));
    const { track } = onlyPart(read(text));
    expect(track.breaks).toHaveLength(1);
    expect(track.breaks[0]).toMatchObject({ index: 2, why: 'file', seconds: 999 });
    // 999 × 5 × 10⁻⁵ degrees of latitude at 48.9° south: 111.2 km a degree
    expect(track.breaks[0]?.apart).toBeCloseTo(999 * 5e-5 * 111_209, -1);
    expect(track.distance[2]).toBe(track.distance[1]);
    expect(track.distance.at(-1)).toBeCloseTo(2 * 5e-5 * 111_209, 1);
  });

  it('takes a long silence for a break: 15 s, or five times the usual interval', () => {
    const quick = onlyPart(read(gpxOf(...[0, 1, 2, 3, 18, 19, 36, 37].map((at) => pointAt(at)))));
    expect(quick.track.breaks.map(({ index, why, seconds }) => ({ index, why, seconds }))).toEqual([
      { index: 6, why: 'silence', seconds: 17 },
    ]);
    const slow = onlyPart(read(gpxOf(...[0, 10, 20, 30, 80, 90, 141].map((at) => pointAt(at)))));
    expect(slow.track.breaks.map(({ index }) => index)).toEqual([6]);
  });

  it('keeps several tracks and routes apart, passes over waypoints and what is no track', () => {
    const text = `<gpx><wpt lat="1" lon="2"/><wpt lat="1" lon="2"/>
<trk><name>One</name><trkseg>${pointAt(0)}${pointAt(1)}</trkseg></trk>
<trk><trkseg>${pointAt(0)}</trkseg></trk>
<trk><trkseg>${pointAt(0)}${pointAt(1)}${pointAt(2)}</trkseg></trk>
<rte><name>Plan</name><rtept lat="1" lon="2"><time>2026-05-01T10:00:00Z</time></rtept><rtept lat="1.1" lon="2"><time>2026-05-01T10:00:09Z</time></rtept></rte></gpx>`;
    const recording = read(text);
    expect(recording.parts.map(({ name, kind, track }) => [name, kind, track.distance.length])).toEqual([
      ['One', 'ride', 2],
      ['Track 3', 'ride', 3],
      ['Plan', 'route', 2],
    ]);
    expect(recording.parts[2]?.track.time.every(Number.isNaN)).toBe(true);
    expect(said(recording)).toContain('2 waypoints are passed over.');
  });

  it('is a route without times, and a hill without heights still a part', () => {
    const part = onlyPart(read(gpxOf('<trkpt lat="1" lon="2"/>', '<trkpt lat="1.001" lon="2"/>')));
    expect(part.kind).toBe('route');
    expect(part.track.elevation.every(Number.isNaN)).toBe(true);
  });

  it('uses a distance beside the points as the counter, and where there are no positions as the distance', () => {
    const counted = (metres: number) => `<extensions><distance>${metres}</distance></extensions>`;
    const { track, distanceFrom } = onlyPart(read(gpxOf(...[0, 1, 2].map((at) => pointAt(at, counted(at * 6))))));
    expect([...track.counter]).toEqual([0, 6, 12]);
    expect(distanceFrom).toBe('positions');
    const often = read(gpxOf(...seconds(30).map((at) => pointAt(at, counted(5 + (at % 2))))));
    expect(said(often)).toContain('fall too often');
    expect(onlyPart(often).track.counter.every(Number.isNaN)).toBe(true);
  });

  it('reads UTF-8 with its mark, UTF-16 in both orders, and what its declaration names', () => {
    const named = (name: string) => gpxOf(pointAt(0), pointAt(1)).replace('<trk>', `<trk><name>${name}</name>`);
    const text = named('Käthe–Weg');
    const sixteen = (isLittle: boolean, marked = true): Uint8Array => {
      const letters = marked ? `\ufeff${text}` : text;
      const view = new DataView(new ArrayBuffer(letters.length * 2));
      for (let i = 0; i < letters.length; i++) view.setUint16(i * 2, letters.charCodeAt(i), isLittle);
      return new Uint8Array(view.buffer);
    };
    for (const bytes of [`\ufeff${text}`, sixteen(true), sixteen(false), sixteen(true, false), sixteen(false, false)])
      expect(onlyPart(read(bytes)).name).toBe('Käthe–Weg');
    const latin = `<?xml version="1.0" encoding="ISO-8859-1"?>${named('Käthe')}`;
    expect(onlyPart(read(Uint8Array.from(latin, (letter) => letter.charCodeAt(0)))).name).toBe('Käthe');
    expect(onlyPart(read(`\n\n <?xml version="1.0" encoding="martian"?>\n${text}`)).name).toBe('Käthe–Weg');
  });
});

describe('what is wrong in a file', () => {
  const spoilt = (...inner: readonly string[]): string => gpxOf(...seconds(3).map((at) => pointAt(at)), ...inner);

  it('leaves out points that are nowhere, and says in which line', () => {
    const recording = read(
      spoilt(
        '<trkpt lat="95.2" lon="7"/>',
        '<trkpt lat="1" lon="200"/>',
        '<trkpt lat="0" lon="0"/>',
        '<trkpt lat="1"/>',
        '<trkpt/>',
        '<trkpt lat="x" lon="1"/>',
      ),
    );
    expect(onlyPart(recording).track.distance).toHaveLength(3);
    expect(said(recording)).toContain(
      'Line 6: No place has the latitude 95.2 and the longitude 7: the point is left out.',
    );
    expect(said(recording)).toContain('Line 8: Latitude and longitude are both 0');
    expect(said(recording)).toContain('Line 10: The point has no latitude and longitude: it is left out.');
    expect(said(recording)).toContain('Line 11: The latitude “x” is no number: it is left out.');
  });

  it('names three of a kind and counts the others', () => {
    const recording = read(spoilt(...seconds(43).map(() => '<trkpt lat="95" lon="7"/>')));
    expect(recording.problems).toHaveLength(4);
    expect(recording.problems.at(-1)).toEqual({ where: '', message: 'And 40 more points that are nowhere on Earth.' });
  });

  it.each(['NaN', 'Infinity', '1e999', '0x10', '12,5', 'twelve', '--1'])('leaves out the elevation %s', (text) => {
    const recording = read(spoilt(pointAt(3, `<ele>${text}</ele>`)));
    expect(onlyPart(recording).track.elevation[3]).toBeNaN();
    expect(said(recording)).toContain(`Line 6: The elevation “${text}” is no number: it is left out.`);
  });

  it('leaves out values that no device can mean', () => {
    const recording = read(
      spoilt(pointAt(3, '<ele>65535</ele><extensions><power>65535</power><hr>0</hr><cad>-1</cad></extensions>')),
    );
    const { track } = onlyPart(recording);
    for (const column of [track.elevation, track.power, track.heartRate, track.cadence]) expect(column[3]).toBeNaN();
    expect(said(recording)).toContain('Line 6: The power cannot be 65535: the value is left out.');
    expect(said(recording)).not.toContain('heart');
  });

  it.each(['2026-02-30T10:00:00Z', '2026-13-01T10:00:00Z', 'noon', '2026-05-01T25:00:00Z', '2026-05-01'])(
    'does not take %s for a time',
    (text) => {
      const recording = read(spoilt(pointAt(3).replace(/<time>.*?<\/time>/, `<time>${text}</time>`)));
      expect(onlyPart(recording).track.time[3]).toBeNaN();
      expect(said(recording)).toContain(`The time “${text}” is no time`);
    },
  );

  it('reads times with a zone, with parts of a second, and without a zone', () => {
    const withTime = (text: string) => pointAt(3).replace(/<time>.*?<\/time>/, `<time>${text}</time>`);
    for (const text of [
      '2026-05-01T12:00:03+02:00',
      '2026-05-01T10:00:03',
      '2026-05-01T05:30:03-0430',
      '2026-05-01t10:00:03z',
    ])
      expect(onlyPart(read(spoilt(withTime(text)))).track.time[3]).toBe(3);
    expect(onlyPart(read(spoilt(withTime('2026-05-01T10:00:03.25Z')))).track.time[3]).toBe(3.25);
  });

  it('leaves out the fewest points so that time rises, whichever way a clock is wrong', () => {
    const back = read(gpxOf(...[0, 1, 2, 0.5, 3, 4].map((at) => pointAt(at))));
    expect([...onlyPart(back).track.time]).toEqual([0, 1, 2, 3, 4]);
    expect(said(back)).toContain(
      'Line 6: Its time does not lie between those before and after: the point is left out.',
    );
    const ahead = read(gpxOf(...[0, 1, 9_999_999, 3, 4, 5].map((at) => pointAt(at))));
    expect([...onlyPart(ahead).track.time]).toEqual([0, 1, 3, 4, 5]);
    expect(said(ahead)).toContain('Line 5:');
    const twice = read(gpxOf(...[0, 1, 1, 2, 3].map((at) => pointAt(at))));
    expect([...onlyPart(twice).track.time]).toEqual([0, 1, 2, 3]);
    expect(said(twice)).toContain('Line 5: A second point of the same time: it is left out.');
  });

  it('leaves out a position that leaps away, and interrupts a track that goes on elsewhere', () => {
    const leap = read(
      gpxOf(pointAt(0), pointAt(1), `<trkpt lat="-40" lon="-123.4">${timeAt(2)}</trkpt>`, pointAt(3), pointAt(4)),
    );
    const { distance } = onlyPart(leap).track;
    // 4 s of 5 × 10⁻⁵ degrees at 111.2 km a degree, the leap in the middle of a second each way
    expect(distance.at(-1)).toBeCloseTo(4 * 5e-5 * 111_209, 1);
    expect(distance[2]).toBeCloseTo(2 * 5e-5 * 111_209, 1);
    expect(said(leap)).toContain('Line 5: Its position leaps away and back again');
    const away = read(gpxOf(pointAt(0), pointAt(1), ...[2, 3, 4].map((at) => pointAt(at).replace('-123.4', '-100'))));
    const { track } = onlyPart(away);
    expect(track.breaks.map(({ index }) => index)).toEqual([2]);
    expect(track.distance[2]).toBe(track.distance[1]);
  });

  it('gives what is whole of a file that is cut short, and says where it ends', () => {
    const text = gpxText(inventRide(30));
    for (const [cut, words] of [
      [text.indexOf('<ele>', text.length / 2), 'in the middle of a point'],
      [text.lastIndexOf('</trkseg>'), 'before its last tag is closed'],
      [text.length - 3, 'before its last tag is closed'],
    ] as const) {
      const recording = read(text.slice(0, cut));
      const line = text.slice(0, cut).split('\n').length;
      expect(recording.cutShort).toBe(true);
      expect(said(recording)).toContain(`The file ends in line ${line}, ${words}`);
      const whole = (text.slice(0, cut).match(/<\/trkpt>/g) ?? []).length;
      expect(onlyPart(recording).track.distance).toHaveLength(whole);
    }
    expect(read(text).cutShort).toBe(false);
  });

  it('leaves an & in peace where it may stand, and puts it right where pieces of the file meet', () => {
    const named = (name: string) => gpxOf(pointAt(0), pointAt(1)).replace('<trk>', `<trk><name>${name}</name>`);
    expect(onlyPart(read(named('<![CDATA[Up & down]]>'))).name).toBe('Up & down');
    expect(read(named('<!-- this & that --><![CDATA[a]]>')).problems).toEqual([]);
    expect(onlyPart(read(named('&lt;Up&gt; &#38; &#x26;'))).name).toBe('<Up> & &');
    // the file is read in pieces of 262,144 bytes
    for (let before = 262_144 - 90; before < 262_144 + 30; before++) {
      const [start, name] = ['<gpx version="1.1">', '\n<trk><name>'];
      const comment = `<!--${'.'.repeat(before - start.length - name.length - 7)}-->`;
      const filled = named('a & b &amp; c').replace(start, start + comment);
      const recording = read(filled);
      expect(onlyPart(recording).name).toBe('a & b & c');
      expect(recording.problems).toHaveLength(1);
    }
  });

  it('reads on past mistakes of form', () => {
    const ampersand = read(gpxOf(pointAt(0), pointAt(1), pointAt(2)).replace('<trk>', '<trk><name>Up & down</name>'));
    expect(onlyPart(ampersand).name).toBe('Up & down');
    expect(said(ampersand)).toContain('Line 2: The XML is not well formed here');
    const stray = read(gpxOf(pointAt(0), pointAt(1), '</nothing>', pointAt(2), pointAt(3)));
    expect(onlyPart(stray).track.distance).toHaveLength(4);
    const unclosed = read(gpxOf(pointAt(0), pointAt(1).replace('</trkpt>', ''), pointAt(2), pointAt(3)));
    expect(onlyPart(unclosed).track.distance).toHaveLength(3);
    expect(said(unclosed)).toContain('Line 4: The point has no end before the next begins: it is left out.');
  });

  it('expands no entities, and stops at nesting that no recording has', () => {
    const bomb = `<!DOCTYPE gpx [<!ENTITY a "1"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>${spoilt(pointAt(3, '<ele>&b;&b;&b;</ele>'))}`;
    expect(onlyPart(read(bomb)).track.elevation[3]).toBeNaN();
    const deep = read(spoilt('<a>'.repeat(500_000)));
    expect(said(deep)).toContain('nested too deep');
    expect(onlyPart(deep).track.distance).toHaveLength(3);
    const broken = read(spoilt('&'.repeat(100_000)));
    expect(said(broken)).toContain('too many mistakes in its form');
  });
});

describe('TCX', () => {
  it('takes tracks of a lap for breaks and laps for none, and sums up what the laps say', () => {
    const ride = inventRide(400);
    const part = onlyPart(read(tcxText(ride)));
    expect(part.name).toBe('Activity 1 (Biking)');
    expect(part.track.breaks.map(({ index, why, seconds }) => ({ index, why, seconds }))).toEqual([
      { index: 200, why: 'file', seconds: 61 },
    ]);
    // laps end at their last point, so the step from the first lap to the second is in neither
    const [last, before, after] = [399, 132, 133].map((index) => ride.points[index]?.counter ?? 0) as [
      number,
      number,
      number,
    ];
    expect(part.device.distance).toBeCloseTo(last - (after - before), 6);
    expect(part.device.moving).toBe(400);
    expect(part.track.counter.at(-1)).toBe(last);
    // the average of a lap is not the heart rate of a point
    expect([...part.track.heartRate]).not.toContain(99);
  });

  it('counts by the counter where there are no positions', () => {
    const ride = inventRide(100);
    const indoors = tcxText(ride).replace(/<Position>.*?<\/Position>/g, '');
    const part = onlyPart(read(indoors));
    expect(part.distanceFrom).toBe('counter');
    const { points } = ride;
    const step = (points[50]?.counter ?? 0) - (points[49]?.counter ?? 0);
    expect(part.track.distance.at(-1)).toBeCloseTo((points[99]?.counter ?? 0) - step, 6);
    expect(part.track.breaks[0]?.apart).toBeNaN();
  });

  it('takes a course for a route', () => {
    const course = tcxText(inventRide(50))
      .replace(/<Activities><Activity[^>]*><Id>.*?<\/Id>/, '<Courses><Course><Name>Planned</Name>')
      .replace('</Activity></Activities>', '</Course></Courses>');
    const recording = read(course);
    const part = onlyPart(recording);
    expect([part.name, part.kind]).toEqual(['Planned', 'route']);
    expect(part.track.time.every(Number.isNaN)).toBe(true);
    expect(said(recording)).toContain('A course is a plan: its times are not used.');
    // also behind an activity without a point, which is no part
    const empty = '<Activities><Activity Sport="Biking"></Activity></Activities>';
    const both = read(course.replace('<Courses>', `${empty}<Courses>`));
    expect(onlyPart(both).name).toBe('Planned');
    expect(said(both)).toContain('A course is a plan: its times are not used.');
    // and not where the course is empty
    const ridden = read(
      tcxText(inventRide(50)).replace('<Activities>', '<Courses><Course></Course></Courses><Activities>'),
    );
    expect(onlyPart(ridden).kind).toBe('ride');
    expect(said(ridden)).not.toContain('A course is a plan');
  });

  it('puts points without a position between their neighbours', () => {
    const ride = inventRide(60);
    let nth = 0;
    const tunnel = tcxText(ride).replace(/<Position>.*?<\/Position>/g, (found) =>
      ++nth > 10 && nth <= 20 ? '' : found,
    );
    const whole = onlyPart(read(tcxText(ride))).track.distance;
    const part = onlyPart(read(tunnel));
    expect(part.distanceFrom).toBe('positions');
    for (let i = 0; i < whole.length; i++)
      expect(Math.abs((part.track.distance[i] ?? 0) - (whole[i] ?? 0))).toBeLessThan(0.5);
  });
});

import { FitBaseType, FitEncoder, type FitEncoderField } from 'fit-file-parser/encoder';
import { generator } from '../random.ts';

/*
 * Invents a ride up a hill that is nowhere (its coordinates lie in the open ocean) and writes it in every format that the site reads.
 * The same seed gives the same bytes.
 */

export interface InventedPoint {
  /** s since 1970 */
  time: number;
  latitude: number;
  longitude: number;
  elevation: number;
  /** undefined: the meter gave none */
  power: number | undefined;
  cadence: number | undefined;
  heartRate: number | undefined;
  /** m by the device's counter, which runs a little long */
  counter: number;
}

export interface InventedRide {
  points: InventedPoint[];
  /** indices of the first point after a pause of a minute */
  pauses: number[];
}

/** 1 May 2026, 10:00 UTC */
export const START = 1_777_629_600;
const round = (value: number, digits: number): number => Number(value.toFixed(digits));

/** A ride with a point each second: rolling, then a climb, with a pause in the middle of it. Rounded as files are. */
export function inventRide(count: number, seed = 1): InventedRide {
  const next = generator(seed);
  const points: InventedPoint[] = [];
  const pause = Math.floor(count / 2);
  let [latitude, longitude, elevation, heading, counter, time] = [-48.9, -123.4, 240, 0.6, 0, START];
  for (let i = 0; i < count; i++) {
    const share = i / count;
    const grade = share < 0.2 ? 0.02 * Math.sin(i / 20) : 0.06 + 0.04 * Math.sin(i / 60);
    const power = Math.max(0, Math.round(230 + 40 * Math.sin(i / 30) + 30 * (next() - 0.5)));
    const speed = Math.min(12, power / (15 + 850 * Math.max(0, grade)));
    points.push({
      time,
      latitude: round(latitude, 7),
      longitude: round(longitude, 7),
      elevation: round(elevation + 0.3 * (next() - 0.5), 1),
      // the meter drops out for a while, and now and then the rider coasts
      power: i % 200 > 180 ? undefined : i % 50 === 7 ? 0 : power,
      cadence: i % 50 === 7 ? 0 : 70 + Math.round(10 * next()),
      heartRate: i < 10 ? undefined : 120 + Math.round(30 * share),
      counter: round(counter, 2),
    });
    heading += 0.05 * (next() - 0.5);
    latitude += (speed * Math.cos(heading)) / 111_200;
    longitude += (speed * Math.sin(heading)) / (111_200 * Math.cos((latitude * Math.PI) / 180));
    elevation += speed * grade;
    counter += speed * 1.004;
    time += i + 1 === pause ? 61 : 1;
  }
  return { points, pauses: pause > 0 && pause < count ? [pause] : [] };
}

const isoTime = (seconds: number): string => new Date(seconds * 1000).toISOString().replace('.000Z', 'Z');
const element = (name: string, value: number | string | undefined): string =>
  value === undefined ? '' : `<${name}>${value}</${name}>`;

/** GPX 1.1, a new segment after each pause, extensions in namespaces. */
export function gpxText({ points, pauses }: InventedRide): string {
  const lines = points.map((point, index) => {
    const inner = `${element('p:hr', point.heartRate)}${element('p:cad', point.cadence)}`;
    const extensions = `${element('power', point.power)}${inner && `<p:PointExtension>${inner}</p:PointExtension>`}`;
    return `${pauses.includes(index) ? '</trkseg>\n<trkseg>\n' : ''}<trkpt lat="${point.latitude}" lon="${point.longitude}"><ele>${point.elevation}</ele><time>${isoTime(point.time)}</time>${extensions && `<extensions>${extensions}</extensions>`}</trkpt>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1" xmlns:p="urn:invented:point">
<metadata><name>An invented file</name></metadata>
<wpt lat="-48.9" lon="-123.4"><name>Start</name></wpt>
<trk><name>Invented hill</name>
<trkseg>
${lines.join('\n')}
</trkseg>
</trk>
</gpx>
`;
}

/** GPX 1.0, one segment, with speed and course, which are not used. */
export function oldGpxText({ points }: InventedRide): string {
  return `<?xml version="1.0"?>
<gpx version="1.0" creator="test" xmlns="http://www.topografix.com/GPX/1/0">
<trk><name>Old</name><trkseg>
${points.map((point) => `<trkpt lat="${point.latitude}" lon="${point.longitude}"><ele>${point.elevation}</ele><time>${isoTime(point.time)}</time><course>12.5</course><speed>4.2</speed></trkpt>`).join('\n')}
</trkseg></trk>
</gpx>
`;
}

/** A route without times. */
export function routeText({ points }: InventedRide): string {
  return `<?xml version="1.0"?>
<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">
<rte><name>Drawn</name>
${points.map((point) => `<rtept lat="${point.latitude}" lon="${point.longitude}"><ele>${point.elevation}</ele></rtept>`).join('\n')}
</rte>
</gpx>
`;
}

/** TCX of two laps; after a pause a new track of the same lap. */
export function tcxText({ points, pauses }: InventedRide): string {
  const half = Math.floor(points.length / 3);
  const text = (point: InventedPoint, index: number): string =>
    `${pauses.includes(index) ? '</Track>\n<Track>\n' : ''}<Trackpoint><Time>${isoTime(point.time)}</Time><Position><LatitudeDegrees>${point.latitude}</LatitudeDegrees><LongitudeDegrees>${point.longitude}</LongitudeDegrees></Position><AltitudeMeters>${point.elevation}</AltitudeMeters><DistanceMeters>${point.counter}</DistanceMeters>${point.heartRate === undefined ? '' : `<HeartRateBpm><Value>${point.heartRate}</Value></HeartRateBpm>`}${element('Cadence', point.cadence)}${point.power === undefined ? '' : `<Extensions><x:TPX><x:Watts>${point.power}</x:Watts></x:TPX></Extensions>`}</Trackpoint>`;
  const all = points.map(text);
  const lap = (from: number, to: number, seconds: number): string =>
    `<Lap StartTime="${isoTime(points[from]?.time ?? START)}"><TotalTimeSeconds>${seconds}</TotalTimeSeconds><DistanceMeters>${round((points[to - 1]?.counter ?? 0) - (points[from]?.counter ?? 0), 2)}</DistanceMeters><AverageHeartRateBpm><Value>99</Value></AverageHeartRateBpm>
<Track>
${all.slice(from, to).join('\n')}
</Track>
</Lap>`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<TrainingCenterDatabase xmlns="urn:invented:training" xmlns:x="urn:invented:extension">
<Activities><Activity Sport="Biking"><Id>${isoTime(START)}</Id>
${lap(0, half, half)}
${lap(half, points.length, points.length - half)}
</Activity></Activities>
</TrainingCenterDatabase>
`;
}

export function csvText({ points }: InventedRide): string {
  const rows = points.map(({ time, counter, elevation, power, cadence, heartRate }) =>
    [time - START, counter, elevation, power ?? '', cadence ?? '', heartRate ?? ''].join(','),
  );
  return `time (s),distance (m),elevation (m),power (W),cadence (rpm),heart rate (bpm)\n${rows.join('\n')}\n`;
}

const FIT_EPOCH = 631_065_600;
const SEMICIRCLES = 2 ** 31 / 180;
type Kind = FitBaseType;
const SIZES: Partial<Record<Kind, number>> = {
  [FitBaseType.Enum]: 1,
  [FitBaseType.Uint8]: 1,
  [FitBaseType.Uint16]: 2,
  [FitBaseType.Sint32]: 4,
  [FitBaseType.Uint32]: 4,
};

const field = (number: number, baseType: Kind, value: number): FitEncoderField => ({
  number,
  size: SIZES[baseType] as number,
  baseType,
  value,
});

export interface FitOptions {
  /** totals in its session */
  gain?: number;
  /** 4 an activity, 6 a course */
  file?: number;
}

/** FIT with a session and the events of its timer. What was not measured is marked as none. */
export function fitBytes({ points, pauses }: InventedRide, { gain = 123, file = 4 }: FitOptions = {}): Uint8Array {
  const { Enum, Uint8, Uint16, Sint32, Uint32 } = FitBaseType;
  const encoder = new FitEncoder({ protocolVersion: 0x20 });
  const event = (time: number, kind: number): void => {
    encoder.writeMessage(21, [field(253, Uint32, time - FIT_EPOCH), field(0, Enum, 0), field(1, Enum, kind)], 2);
  };
  encoder.writeMessage(0, [field(0, Enum, file)], 0);
  event(START, 0);
  points.forEach((point, index) => {
    if (pauses.includes(index)) {
      event(points[index - 1]?.time ?? 0, 4);
      event(point.time, 0);
    }
    encoder.writeMessage(
      20,
      [
        field(253, Uint32, point.time - FIT_EPOCH),
        field(0, Sint32, Math.round(point.latitude * SEMICIRCLES)),
        field(1, Sint32, Math.round(point.longitude * SEMICIRCLES)),
        field(2, Uint16, 0xffff),
        field(78, Uint32, Math.round((point.elevation + 500) * 5)),
        field(5, Uint32, Math.round(point.counter * 100)),
        field(7, Uint16, point.power ?? 0xffff),
        field(4, Uint8, point.cadence ?? 0xff),
        field(3, Uint8, point.heartRate ?? 0xff),
      ],
      1,
    );
  });
  const last = points.at(-1);
  const elapsed = (last?.time ?? START) - START;
  event(START + elapsed, 4);
  encoder.writeMessage(
    18,
    [
      field(253, Uint32, START + elapsed - FIT_EPOCH),
      field(2, Uint32, START - FIT_EPOCH),
      field(5, Enum, 2),
      field(7, Uint32, elapsed * 1000),
      field(8, Uint32, (elapsed - 60 * pauses.length) * 1000),
      field(9, Uint32, Math.round((last?.counter ?? 0) * 100)),
      field(22, Uint16, gain),
    ],
    3,
  );
  return encoder.close();
}

/** A message of a FIT file written by hand, for what the encoder cannot: fields of apps, the other byte order, times in the header. */
export function fitFile(...records: readonly (readonly number[])[]): Uint8Array {
  const data = records.flat();
  const header = [
    14,
    0x20,
    0,
    0,
    data.length & 255,
    (data.length >> 8) & 255,
    (data.length >> 16) & 255,
    0,
    46,
    70,
    73,
    84,
    0,
    0,
  ];
  const sum = FitEncoder.calculateCRC([...header, ...data]);
  return Uint8Array.from([...header, ...data, sum & 255, sum >> 8]);
}

import type { Problems } from './problems.ts';
import type { ReadParts } from './readRecording.ts';
import type { DeviceTotals } from './recording.ts';
import { blankPoint, clearPoint, newRoom, type Point, type TrackBuilder, trackBuilder } from './trackBuilder.ts';
import { cutShortText, readXml, setValue } from './xml.ts';

/* TCX: activities of laps of tracks, and courses. */

/** Elements within a point, by what they hold; those of extensions whatever their namespace. */
const VALUES: Readonly<Record<string, keyof Point>> = {
  Time: 'time',
  LatitudeDegrees: 'latitude',
  LongitudeDegrees: 'longitude',
  AltitudeMeters: 'elevation',
  DistanceMeters: 'counter',
  Cadence: 'cadence',
  RunCadence: 'cadence',
  Watts: 'power',
};

interface Open {
  builder: TrackBuilder;
  planned: boolean;
  name: string;
  laps: number;
  /** sums over the laps, and of how many laps they are */
  moving: number;
  timed: number;
  distance: number;
  measured: number;
}

export function readTcx(bytes: Uint8Array, problems: Problems, onProgress: (share: number) => void): ReadParts {
  const room = newRoom();
  const found: Open[] = [];
  let current: Open | undefined;
  let tracksOfLap = 0;
  let lapDepth = 0;
  let isHeartRate = false;
  const point = blankPoint();
  let pointDepth = 0;
  let pointLine = 0;

  const begin = (planned: boolean, sport: string): Open => {
    const number = found.filter((one) => one.planned === planned).length + 1;
    const opened: Open = {
      builder: trackBuilder(problems, room),
      planned,
      name: `${planned ? 'Course' : 'Activity'} ${number}${sport ? ` (${sport})` : ''}`,
      laps: 0,
      moving: 0,
      timed: 0,
      distance: 0,
      measured: 0,
    };
    found.push(opened);
    return opened;
  };

  const end = readXml(
    bytes,
    {
      open(name, attributes, line, depth) {
        if (name === 'Activity' || name === 'Course') current = begin(name === 'Course', attributes.Sport ?? '');
        else if (name === 'Lap') {
          if (current) current.laps++;
          tracksOfLap = 0;
          lapDepth = depth;
        } else if (name === 'Track') {
          // a lap begins a track without a stop; a second track within a lap comes after a pause
          if (tracksOfLap > 0) current?.builder.breakHere();
          tracksOfLap++;
        } else if (name === 'Trackpoint') {
          if (pointDepth > 0)
            problems.add(
              'points without an end',
              pointLine,
              'The point has no end before the next begins: it is left out.',
            );
          current ??= begin(false, '');
          clearPoint(point);
          pointDepth = depth;
          pointLine = line;
          isHeartRate = false;
        } else if (name === 'HeartRateBpm') isHeartRate = true;
      },
      close(name, text, line, depth) {
        if (pointDepth > 0 && depth > pointDepth) {
          const column = name === 'Value' && isHeartRate ? 'heartRate' : VALUES[name];
          if (column) setValue(point, column, text, line, problems);
          if (name === 'HeartRateBpm') isHeartRate = false;
        } else if (depth === pointDepth) {
          pointDepth = 0;
          current?.builder.add(point, pointLine);
        } else if (current && depth === lapDepth + 1 && (name === 'TotalTimeSeconds' || name === 'DistanceMeters')) {
          const value = Number.parseFloat(text);
          if (!(value >= 0 && value < 1e9)) return;
          if (name === 'TotalTimeSeconds') {
            current.moving += value;
            current.timed++;
          } else {
            current.distance += value;
            current.measured++;
          }
        } else if (name === 'Name' && current?.planned && current.builder.size === 0 && text.trim() !== '')
          current.name = text.trim().slice(0, 100);
        else if (name === 'Lap') lapDepth = 0;
      },
    },
    problems,
    onProgress,
  );

  if (end.cutShort) problems.say(cutShortText(end.line, end.open.includes('Trackpoint')));
  // what has too few points is no part
  const made = found.flatMap(({ builder, planned, name, ...laps }) => {
    const part = builder.part({ name, planned, device: totalsOf(laps) });
    return part ? [{ part, planned }] : [];
  });
  const parts = made.map(({ part }) => part);
  const notes = made.some(({ planned }) => planned) ? ['A course is a plan: its times are not used.'] : [];
  return { parts, notes, cutShort: end.cutShort };
}

/** Totals of the device, where every lap has them. */
function totalsOf({
  laps,
  moving,
  timed,
  distance,
  measured,
}: Omit<Open, 'builder' | 'planned' | 'name'>): DeviceTotals {
  return {
    ...(laps > 0 && timed === laps ? { moving } : {}),
    ...(laps > 0 && measured === laps ? { distance } : {}),
  };
}

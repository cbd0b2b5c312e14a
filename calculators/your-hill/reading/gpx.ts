import type { Problems } from './problems.ts';
import type { ReadParts } from './readRecording.ts';
import { blankPoint, clearPoint, newRoom, type Point, type TrackBuilder, trackBuilder } from './trackBuilder.ts';
import { cutShortText, readXml, setValue } from './xml.ts';

/* GPX 1.0 and 1.1 (schema http://www.topografix.com/GPX/1/1): tracks with their segments, routes, and what extensions add to a point. */

/** What extensions call the values of a point, in small letters, whatever their namespace. */
export const EXTENSIONS: Readonly<Record<string, keyof Point>> = {
  power: 'power',
  watts: 'power',
  powerinwatts: 'power',
  cad: 'cadence',
  cadence: 'cadence',
  hr: 'heartRate',
  heartrate: 'heartRate',
  distance: 'counter',
};

interface Open {
  builder: TrackBuilder;
  kind: 'track' | 'route';
  name: string;
}

export function readGpx(bytes: Uint8Array, problems: Problems, onProgress: (share: number) => void): ReadParts {
  const room = newRoom();
  const found: Open[] = [];
  const counts = { track: 0, route: 0, waypoints: 0 };
  let current: Open | undefined;
  const point = blankPoint();
  let pointDepth = 0;
  let pointLine = 0;

  const begin = (kind: Open['kind']): Open => {
    counts[kind]++;
    const opened: Open = {
      builder: trackBuilder(problems, room),
      kind,
      name: `${kind === 'track' ? 'Track' : 'Route'} ${counts[kind]}`,
    };
    found.push(opened);
    return opened;
  };

  const end = readXml(
    bytes,
    {
      open(name, attributes, line, depth) {
        if (name === 'trk' || name === 'rte') current = begin(name === 'trk' ? 'track' : 'route');
        else if (name === 'trkseg') current?.builder.breakHere();
        else if (name === 'wpt') counts.waypoints++;
        else if (name === 'trkpt' || name === 'rtept') {
          if (pointDepth > 0)
            problems.add(
              'points without an end',
              pointLine,
              'The point has no end before the next begins: it is left out.',
            );
          // a stray closing tag can end a track too early: its points still belong to it
          current ??= begin(name === 'trkpt' ? 'track' : 'route');
          clearPoint(point);
          pointDepth = depth;
          pointLine = line;
          setValue(point, 'latitude', attributes.lat ?? '', line, problems);
          setValue(point, 'longitude', attributes.lon ?? '', line, problems);
        }
      },
      close(name, text, line, depth) {
        if (pointDepth > 0 && depth > pointDepth) {
          const isOwn = depth === pointDepth + 1;
          if (isOwn && name === 'ele') setValue(point, 'elevation', text, line, problems);
          else if (isOwn && name === 'time') setValue(point, 'time', text, line, problems);
          else {
            const column = EXTENSIONS[name.toLowerCase()];
            if (column && text.trim() !== '') setValue(point, column, text, line, problems);
          }
        } else if (depth === pointDepth) {
          pointDepth = 0;
          if (Number.isNaN(point.latitude) && Number.isNaN(point.longitude))
            problems.add(
              'points without a place',
              pointLine,
              'The point has no latitude and longitude: it is left out.',
            );
          else current?.builder.add(point, pointLine);
        } else if (name === 'name' && current && pointDepth === 0 && current.builder.size === 0 && text.trim() !== '')
          current.name = text.trim().slice(0, 100);
      },
    },
    problems,
    onProgress,
  );

  const notes: string[] = [];
  if (counts.waypoints > 0)
    notes.push(
      counts.waypoints === 1 ? 'One waypoint is passed over.' : `${counts.waypoints} waypoints are passed over.`,
    );
  if (end.cutShort)
    problems.say(
      cutShortText(
        end.line,
        end.open.some((name) => name === 'trkpt' || name === 'rtept'),
      ),
    );
  const parts = found.flatMap(({ builder, kind, name }) => builder.part({ name, planned: kind === 'route' }) ?? []);
  return { parts, notes, cutShort: end.cutShort };
}

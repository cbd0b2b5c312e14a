import { type FitMessage, fitMessages, fitNumber, fitText, isFitAt } from './fitMessages.ts';
import type { Problems } from './problems.ts';
import type { ReadParts } from './readRecording.ts';
import type { DeviceTotals, Part } from './recording.ts';
import {
  blankPoint,
  clearPoint,
  newRoom,
  type PartOptions,
  type Point,
  type TrackBuilder,
  trackBuilder,
} from './trackBuilder.ts';

/* FIT: the binary format of many devices. Numbers and scales of the fields are those of its public profile, as in the library's tables. */

const FILE = 0;
const SESSION = 18;
const RECORD = 20;
const EVENT = 21;
const COURSE = 31;
const FIELD_OF_APP = 206;

const DEGREES = 2 ** 31 / 180;
/** Fields of a record: column, and value = number ÷ scale − offset. */
const FIELDS: Readonly<Record<number, { column: keyof Point; scale: number; offset: number }>> = {
  0: { column: 'latitude', scale: DEGREES, offset: 0 },
  1: { column: 'longitude', scale: DEGREES, offset: 0 },
  3: { column: 'heartRate', scale: 1, offset: 0 },
  4: { column: 'cadence', scale: 1, offset: 0 },
  5: { column: 'counter', scale: 100, offset: 0 },
  7: { column: 'power', scale: 1, offset: 0 },
  // the finer altitude, which counts where a record has both
  78: { column: 'elevation', scale: 5, offset: 500 },
  2: { column: 'elevation', scale: 5, offset: 500 },
};
const POWER = 7;

const WANTED: Readonly<Record<number, readonly number[]>> = {
  [FILE]: [0],
  [SESSION]: [2, 5, 7, 8, 9, 22, 110],
  [RECORD]: Object.keys(FIELDS).map(Number),
  [EVENT]: [0, 1],
  [COURSE]: [5],
  [FIELD_OF_APP]: [0, 1, 2, 3, 6, 7, 14, 15],
};

/** The sports that people mix with riding in one file. */
const SPORTS: Readonly<Record<number, string>> = {
  1: 'Running',
  2: 'Cycling',
  3: 'Transition',
  5: 'Swimming',
  11: 'Walking',
  17: 'Hiking',
  21: 'E-biking',
};
const IS_COURSE = 6;
/** kinds of an event at the timer: stop, stop all, and both with an end */
const STOPS: ReadonlySet<number> = new Set([1, 4, 8, 9]);

interface Session {
  start: number;
  name: string;
  device: DeviceTotals;
}

export function readFit(bytes: Uint8Array, problems: Problems, onProgress: (share: number) => void): ReadParts {
  const room = newRoom();
  const parts: Part[] = [];
  const notes: string[] = [];
  let cutShort = false;
  let at = 0;
  let rides = 0;
  for (let start = 0; isFitAt(bytes, start); ) {
    const builder = trackBuilder(problems, room);
    const sessions: Session[] = [];
    const stops: number[] = [];
    const apps = new Map<number, PowerOfApp>();
    const point = blankPoint();
    let planned = false;
    let courseName = '';

    const take = (message: FitMessage): void => {
      const numberOf = (field: number): number => numberIn(message, field);
      switch (message.globalMessageNumber) {
        case RECORD:
          clearPoint(point);
          readRecord(message, point, apps);
          builder.add(point, message.at);
          break;
        case SESSION:
          sessions.push(sessionOf(message));
          break;
        case EVENT:
          if (numberOf(0) === 0 && STOPS.has(numberOf(1)) && message.timestamp !== undefined)
            stops.push(message.timestamp);
          break;
        case FILE:
          planned = numberOf(0) === IS_COURSE;
          break;
        case COURSE:
          courseName = textIn(message, 5);
          break;
        case FIELD_OF_APP: {
          const key = numberOf(0) * 256 + numberOf(1);
          const app = powerOfApp(message);
          if (app) apps.set(key, app);
          else apps.delete(key);
        }
      }
    };

    const messages = fitMessages(bytes, start, at, WANTED);
    let next = messages.next();
    for (; !next.done; next = messages.next()) {
      for (const message of next.value.messages) take(message);
      onProgress(next.value.to / bytes.length);
    }
    const { end, lost, intact, ...rest } = next.value;
    at = rest.at;
    if (lost) problems.add('', at, lost);
    if (rest.cutShort) {
      cutShort = true;
      problems.say(`The file ends too early, after record ${at}: what is whole up to there is read.`);
    } else if (intact === false && !lost)
      problems.say(
        'The check sum of the file does not fit: something in it was changed or damaged, and its values may be wrong.',
      );

    const options = { planned, stops };
    const nameOf = (name: string): string => name || `${planned ? 'Course' : 'Ride'} ${++rides}`;
    parts.push(...partsOf(builder, sessions, { ...options, courseName, nameOf }));
    if (builder.count('otherPower') > 0)
      problems.say(
        builder.count('power') > 0
          ? 'An app wrote a power of its own beside that of the device: the device’s is used.'
          : 'The power is that of an app’s own field: the device wrote none.',
      );
    start = end;
  }
  return { parts, notes, cutShort };
}

const fieldIn = ({ fields }: FitMessage, number: number) => fields.find(({ fieldNumber }) => fieldNumber === number);

function numberIn(message: FitMessage, number: number): number {
  const field = fieldIn(message, number);
  return field ? fitNumber(field.bytes, field.baseType, message.littleEndian) : Number.NaN;
}

function textIn(message: FitMessage, number: number): string {
  const field = fieldIn(message, number);
  return field ? fitText(field.bytes) : '';
}

function readRecord(message: FitMessage, point: Point, apps: ReadonlyMap<number, PowerOfApp>): void {
  if (message.timestamp !== undefined) point.time = message.timestamp;
  let coarse = Number.NaN;
  for (const { fieldNumber, bytes, baseType } of message.fields) {
    const field = FIELDS[fieldNumber];
    if (!field) continue;
    const value = fitNumber(bytes, baseType, message.littleEndian) / field.scale - field.offset;
    if (fieldNumber === 2) coarse = value;
    else point[field.column] = value;
  }
  if (Number.isNaN(point.elevation)) point.elevation = coarse;
  for (const { fieldNumber, developerDataIndex, bytes } of message.developerFields) {
    const app = apps.get(developerDataIndex * 256 + fieldNumber);
    if (app) point.otherPower = fitNumber(bytes, app.baseType, message.littleEndian) / app.scale - app.offset;
  }
}

/** How an app writes a power. */
interface PowerOfApp {
  baseType: number;
  scale: number;
  offset: number;
}

/** What an app says of a field of its own, where that is the power of the rider. */
function powerOfApp(message: FitMessage): PowerOfApp | undefined {
  const standsFor = numberIn(message, 15);
  const inMessage = numberIn(message, 14);
  const isPower =
    /^power$/i.test(textIn(message, 3)) || (standsFor === POWER && (inMessage === RECORD || Number.isNaN(inMessage)));
  if (!isPower) return undefined;
  const orElse = (value: number, otherwise: number): number => (Number.isNaN(value) ? otherwise : value);
  return {
    baseType: orElse(numberIn(message, 2), -1),
    scale: orElse(numberIn(message, 6), 1) || 1,
    offset: orElse(numberIn(message, 7), 0),
  };
}

function sessionOf(message: FitMessage): Session {
  const device: DeviceTotals = {};
  const take = (name: keyof DeviceTotals, field: number, scale: number): void => {
    const value = numberIn(message, field) / scale;
    if (!Number.isNaN(value)) device[name] = value;
  };
  take('elapsed', 7, 1000);
  take('moving', 8, 1000);
  take('distance', 9, 100);
  take('gain', 22, 1);
  return { start: numberIn(message, 2), name: textIn(message, 110) || (SPORTS[numberIn(message, 5)] ?? ''), device };
}

/** One part for each session, by when it started; without sessions, as in a file that is cut short, one of all. */
function partsOf(
  builder: TrackBuilder,
  sessions: readonly Session[],
  options: Pick<PartOptions, 'planned' | 'stops'> & { courseName: string; nameOf: (name: string) => string },
): Part[] {
  const { courseName, nameOf, ...rest } = options;
  const known = sessions.filter(({ start }) => !Number.isNaN(start)).sort((a, b) => a.start - b.start);
  if (known.length < 2) {
    const [only] = sessions;
    const part = builder.part({ ...rest, name: nameOf(courseName || (only?.name ?? '')), device: only?.device ?? {} });
    return part ? [part] : [];
  }
  return known.flatMap(({ start, name, device }, index) => {
    const next = known[index + 1];
    const from = index === 0 ? 0 : builder.firstFrom(start);
    const to = next ? builder.firstFrom(next.start) : builder.size;
    return builder.part({ ...rest, name: nameOf(name), device, from, to }) ?? [];
  });
}

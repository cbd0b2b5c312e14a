import { STANDING_SPEED, STANDING_TIME, type Track } from '../model/index.ts';
import { at } from '../model/track/columns.ts';

/*
 * Where a recording stands still and where it holds nothing. How long in all, the model says: `climbFigures`.
 */

/** A wait, or what nobody recorded: m along the way, and s. */
export interface Pause {
  place: number;
  seconds: number;
}

/** Breaks with a time and times of standing, in their order. */
export function pausesOf({ distance, time, breaks }: Track): Pause[] {
  const broken = new Map(breaks.map(({ index, seconds }) => [index, seconds]));
  const pauses: Pause[] = [];
  let last = -1;
  let standing: Pause = { place: 0, seconds: 0 };
  const settle = (): void => {
    if (standing.seconds >= STANDING_TIME) pauses.push(standing);
    standing = { place: 0, seconds: 0 };
  };
  for (let i = 0; i < distance.length; i++) {
    const place = at(distance, i);
    const silence = broken.get(i);
    if (silence !== undefined) {
      settle();
      if (silence > 0) pauses.push({ place, seconds: silence });
    }
    if (!Number.isFinite(at(time, i))) continue;
    if (last >= 0 && silence === undefined) {
      const seconds = Math.max(0, at(time, i) - at(time, last));
      if (place - at(distance, last) < STANDING_SPEED * seconds)
        standing = { place: standing.seconds > 0 ? standing.place : place, seconds: standing.seconds + seconds };
      else settle();
    }
    last = i;
  }
  settle();
  return pauses;
}

/** A stretch on which a column has no value while the recording goes on: m along the way, and s. */
export interface Missing {
  from: number;
  to: number;
  seconds: number;
}

/** s: a sensor that is silent for less is no hole. Ours. */
const LEAST_SILENCE = 5;

/** Where a column has no value for a while, in their order. Empty where it never has one: that is not a hole. */
export function missingIn(
  { distance, time, breaks, ...columns }: Track,
  name: 'power' | 'cadence' | 'heartRate',
): Missing[] {
  const column = columns[name];
  if (!column.some(Number.isFinite)) return [];
  const starts = new Set(breaks.map(({ index }) => index));
  const missing: Missing[] = [];
  let run: Missing | undefined;
  const settle = (): void => {
    if (run && run.seconds >= LEAST_SILENCE) missing.push(run);
    run = undefined;
  };
  let last = -1;
  for (let i = 0; i < distance.length; i++) {
    if (starts.has(i)) {
      settle();
      last = -1;
    }
    if (!Number.isFinite(at(time, i))) continue;
    if (Number.isFinite(at(column, i))) settle();
    else if (last >= 0) {
      run ??= { from: at(distance, last), to: 0, seconds: 0 };
      run.to = at(distance, i);
      run.seconds += Math.max(0, at(time, i) - at(time, last));
    }
    last = i;
  }
  settle();
  return missing;
}

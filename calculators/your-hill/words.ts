import { type ClimbFigures, FARTHEST_HEIGHT, LONGEST_ROAD, SHORTEST_ROAD, STEEPEST_GRADE } from '../model/index.ts';
import { formatDuration, formatNumber, formatQuantity, type System } from '../quantities/index.ts';
import type { Analysis } from './analysis.ts';
import type { NoHill } from './below.ts';
import type { Part, Recording } from './reading/recording.ts';

export const count = (n: number, one: string, several = `${one}s`): string =>
  `${n === 0 ? 'no' : formatNumber(n)} ${n === 1 ? one : several}`;

/** A share in whole percent, rounded down: 94.9 % must not read as enough for what needs 95. */
export const wholePercent = (share: number): string => `${formatNumber(Math.floor(100 * share + 1e-9))}\u202f%`;

/** A place or a length along the way, beyond a kilometre always with two decimals: 3 km beside 3.01 km looks like less care. */
export const wayText = (metres: number, system: System): string => {
  const text = formatQuantity(metres, 'distance', system);
  const isShort = text.endsWith('\u202fm') || text.endsWith('\u202fft');
  return isShort ? text : formatQuantity(metres, 'distance', system, { digits: 2 });
};

/** "27:31, 4:01 of it standing": a time with what speeds leave out. */
export function timeText({ elapsed, pauses }: Pick<ClimbFigures, 'elapsed' | 'pauses'>): string {
  const whole = formatDuration(elapsed ?? Number.NaN);
  return pauses.seconds >= 0.5 ? `${whole}, ${formatDuration(pauses.seconds)} of it standing` : whole;
}

/** Said once after reading. */
export function foundText({ cutShort }: Recording, { track }: Part, { climbs }: Analysis): string {
  return `Read ${count(track.distance.length, 'point')}, ${count(climbs.length, 'climb')} found.${
    cutShort ? ' The file is cut short: what is whole was read.' : ''
  }`;
}

/** s from the first to the last time; NaN on a route. */
export function secondsOf({ track: { time } }: Part): number {
  const isThere = (each: number): boolean => Number.isFinite(each);
  return (time.findLast(isThere) ?? Number.NaN) - (time.find(isThere) ?? Number.NaN);
}

/** "Evening ride: ride, 42.1 km, 1:52:10" */
export function partText(part: Part, system: System): string {
  const { name, kind, track } = part;
  const seconds = secondsOf(part);
  const way = wayText(track.distance.at(-1) ?? Number.NaN, system);
  return `${name}: ${kind}, ${way}${Number.isFinite(seconds) ? `, ${formatDuration(seconds)}` : ''}`;
}

/** Where an end lies: "Start, 1.24 km, 812 m above sea". Two decimals, so that a step is heard. */
export function endText(end: 'start' | 'top', metres: number, height: number, system: System): string {
  const way = wayText(metres, system);
  const high = Number.isFinite(height) ? `, ${formatQuantity(height, 'height', system)} above sea` : '';
  return `${end === 'start' ? 'Start' : 'Top'}, ${way}${high}`;
}

/** Why the picked stretch cannot be the hill below. */
export function noHillText({ problem }: NoHill, system: System): string {
  const [shortest, longest] = [SHORTEST_ROAD, LONGEST_ROAD].map((si) => formatQuantity(si, 'distance', system));
  const why = {
    none: `Between these ends there is no road with heights, or only one that is steeper than ${formatQuantity(STEEPEST_GRADE, 'grade', system, { digits: 0 })}.`,
    short: `This stretch is shorter than ${shortest}, the least that a hill can be.`,
    long: `This stretch is longer than ${longest}, the most that a hill can be. Move its ends closer together.`,
    far: `This stretch goes further than ${formatQuantity(FARTHEST_HEIGHT, 'height', system)} above or below its start, the most that a hill can. Move its ends closer together.`,
  }[problem];
  return `${why} The hill below stays as it is.`;
}

import { formatDuration, formatNumber, formatQuantity, type System } from '../quantities/index.ts';
import type { Analysis } from './analysis.ts';
import type { Part, Recording } from './reading/recording.ts';

export const count = (n: number, one: string, several = `${one}s`): string =>
  `${n === 0 ? 'no' : formatNumber(n)} ${n === 1 ? one : several}`;

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
  const way = formatQuantity(track.distance.at(-1), 'distance', system);
  return `${name}: ${kind}, ${way}${Number.isFinite(seconds) ? `, ${formatDuration(seconds)}` : ''}`;
}

/** Where an end lies: "Start, 1.24 km, 812 m above sea". Two decimals, so that a step is heard. */
export function endText(end: 'start' | 'top', metres: number, height: number, system: System): string {
  const way = formatQuantity(metres, 'distance', system, metres < 1000 ? {} : { digits: 2 });
  const high = Number.isFinite(height) ? `, ${formatQuantity(height, 'height', system)} above sea` : '';
  return `${end === 'start' ? 'Start' : 'Top'}, ${way}${high}`;
}

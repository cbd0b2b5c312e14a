import { formatQuantity, type System, shownUnit } from '../quantities/index.ts';
import { toSi } from '../quantities/units.ts';
import type { Texts } from './document.ts';
import { inputOf, readInput } from './inputs.ts';

/** Half a step of the last figure of a typed number: what rounding may have hidden, in its own unit. */
function halfStep(typed: string): number {
  const decimals = /[.,](\d+)/.exec(typed)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/** What is compared, SI; `distanceKnown` is relative and `watch` in s, both 95 % half-widths. */
export interface TimeAndSpeed {
  time: number;
  speed: number;
  distance: number;
  distanceKnown: number;
  watch: number;
}

/**
 * A sentence when a run's time and mean speed cannot both be true on this hill; undefined when they can. They can when the speeds that
 * round to the typed one meet those that the rounded time, the watch and the distance as known allow.
 */
export function speedProblem(
  texts: Texts,
  { time, speed, distance, distanceKnown, watch }: TimeAndSpeed,
  system: System,
): string | undefined {
  const half = speedHalfStep(texts.speed ?? '', system);
  const slack = watch + (/[.,]\d/.test(texts.time ?? '') ? 0.05 : 0.5);
  const slowest = (distance * (1 - distanceKnown)) / (time + slack);
  const fastest = time > slack ? (distance * (1 + distanceKnown)) / (time - slack) : Number.POSITIVE_INFINITY;
  if (speed + half >= slowest && speed - half <= fastest) return undefined;
  const shown = (si: number): string => formatQuantity(si, 'speed', system, { digits: 2, trim: true });
  return `${formatQuantity(distance, 'distance', system, { trim: true })} in ${formatQuantity(time, 'duration', system)} is ${shown(distance / time)}, not ${shown(speed)}: time and mean speed cannot both be true. The time counts; check both.`;
}

/** Half a step of a typed speed, m/s. */
function speedHalfStep(typed: string, system: System): number {
  const input = inputOf('run', 'speed');
  const shown = shownUnit('speed', system);
  const unitText = typed.replace(/^[\s\d.,]+/, '');
  if (!input || unitText === '') return toSi(halfStep(typed), shown);
  // what one such unit is in m/s, read as the text itself is
  const one = readInput({ ...input, min: 0, max: Number.POSITIVE_INFINITY }, `1 ${unitText}`, system);
  return (one.ok && one.si !== null ? one.si : toSi(1, shown)) * halfStep(typed);
}

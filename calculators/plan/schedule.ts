import { forwardAndBack, type Order, rotatedOrder } from '../model/index.ts';

/** What the day asks of one bike, or of the control bike. */
export interface Ridden {
  /** s to the top */
  time: number;
  /** J from the battery for one climb; 0 without a motor */
  energy: number;
  /** J in its full battery, and what is kept of it */
  full: number;
  reserve: number;
}

/** What comes between the climbs, s, and where the day begins, s after midnight. */
export interface Pauses {
  start: number;
  wayDown: number;
  coolDown: number;
  /** a new battery, or charging this one */
  swap: number;
}

/** One run of the day. */
export interface Run {
  /** index of the bike; null is a control run */
  bike: number | null;
  /** s after midnight */
  start: number;
  time: number;
  /** at its foot again, s after midnight */
  back: number;
  /** the battery is full again before it, because it would have fallen under its reserve */
  swapped: boolean;
}

export interface Schedule {
  runs: Run[];
  /** the last rider is back, s after midnight */
  end: number;
  /** J left of each bike after its last run */
  left: number[];
}

/** Bikes in the order of riding, round by round. */
export const orderOf = (order: string, bikes: number, repeats: number): Order =>
  order === 'rotated' ? rotatedOrder(bikes, repeats) : forwardAndBack(bikes, repeats);

/** Control runs among the runs of bikes: the first and the last of all, others evenly between, so that drift shows. */
export function withControls(rides: readonly number[], controls: number): (number | null)[] {
  const all: (number | null)[] = [...rides];
  for (let k = controls - 1; k >= 0; k--) {
    const place = controls === 1 ? 0 : Math.round((k * rides.length) / (controls - 1));
    all.splice(place, 0, null);
  }
  return all;
}

/** The day by the clock. */
export function scheduleOf(
  rides: readonly (number | null)[],
  bikes: readonly Ridden[],
  controlTime: number,
  { start, wayDown, coolDown, swap }: Pauses,
): Schedule {
  const left = bikes.map(({ full }) => full);
  const runs: Run[] = [];
  let clock = start;
  for (const bike of rides) {
    const { time, energy, full, reserve } = bikes[bike ?? -1] ?? { time: controlTime, energy: 0, full: 0, reserve: 0 };
    const charge = left[bike ?? -1] ?? 0;
    // a battery that one run empties is full before each all the same
    const swapped = energy > 0 && charge < full && charge - energy < reserve;
    if (swapped) clock += swap;
    if (bike !== null) left[bike] = Math.max(0, (swapped ? full : charge) - energy);
    const back = clock + time + wayDown;
    runs.push({ bike, start: clock, time, back, swapped });
    clock = back + coolDown;
  }
  return { runs, end: runs.at(-1)?.back ?? start, left };
}

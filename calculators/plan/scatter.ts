import { type Climb, chiSquareQuantile, crankPowerForTime } from '../model/index.ts';
import { COVERAGE, DAY_DOUBTS, inputOf, numberOf, type Scenario } from '../scenario/index.ts';

/** What a plan expects of one bike. */
export interface Expected {
  climb: Climb;
  /** s */
  time: number;
  /** W at the crank, rider and motor */
  totalPower: number;
  /** s that it loses for each share of total power: 5 for 1 % is 500 */
  secondsPerShare: number;
}

/** Seconds of a canonical time, m:ss or h:mm:ss; of a clock, h:mm, minutes. */
const clockValue = (clock: string): number => clock.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);

/** A time of the day, s after midnight. */
export const clockOf = (scenario: Scenario, name: string): number => 60 * clockValue(String(inputOf(scenario, name)));

/** Repeats of the tester's own, s; empty when none were given. */
export function ownTimes(scenario: Scenario): number[] {
  const text = inputOf(scenario, 'own-times');
  return typeof text === 'string' ? text.split(',').map(clockValue) : [];
}

/** Seconds lost for each share of total power, at a time: how steeply the time rises as the power falls. */
export function secondsPerShareAt(climb: Climb, time: number): number {
  const step = 1e-4;
  const power = (factor: number): number => crankPowerForTime(climb, time * factor);
  return (time * 2 * step * power(1)) / (power(1 - step) - power(1 + step));
}

/** Standard deviation of one run relative to total power, and where it lies when it comes from few repeats. */
export interface Scatter {
  relative: number;
  low: number;
  high: number;
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** Scatter of one run: assumed, with what the instruments add, or from the tester's own repeats, which hold both. */
export function scatterOf(scenario: Scenario, bikes: readonly Expected[]): Scatter {
  const times = ownTimes(scenario);
  if (times.length > 1) return scatterOfRepeats(times, bikes);
  const half = (name: string): number => numberOf(scenario, name) / COVERAGE;
  const rider = numberOf(scenario, 'power');
  const relative = Math.hypot(
    half('scatter'),
    half('meter-repeat') * rootMeanSquare(bikes.map(({ totalPower }) => rider / totalPower)),
    half('watch') * rootMeanSquare(bikes.map(({ secondsPerShare }) => 1 / secondsPerShare)),
  );
  return { relative, low: relative, high: relative };
}

function scatterOfRepeats(times: readonly number[], bikes: readonly Expected[]): Scatter {
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
  const freedom = times.length - 1;
  const deviation = Math.sqrt(times.reduce((sum, time) => sum + (time - mean) ** 2, 0) / freedom);
  // the bike that they may have been ridden on: times nearest to them
  const like = bikes.reduce((best, bike) => (Math.abs(bike.time - mean) < Math.abs(best.time - mean) ? bike : best));
  const relative = deviation / secondsPerShareAt(like.climb, mean);
  const ratio = (chance: number): number => Math.sqrt(freedom / chiSquareQuantile(chance, freedom));
  return { relative, low: relative * ratio(0.975), high: relative * ratio(0.025) };
}

/** What sets two bikes apart however often they are ridden, as a standard uncertainty of each relative to its total power: drive, and unlike tyres. */
export function fixedOf(scenario: Scenario, bikes: readonly Expected[]): number {
  const between = numberOf(scenario, 'between') / COVERAGE;
  if (inputOf(scenario, 'same-tyres') !== 'no') return between;
  const more = DAY_DOUBTS.tyres / COVERAGE;
  const tyres = bikes.map(({ climb, time, totalPower }) => {
    const power = crankPowerForTime({ ...climb, rolling: climb.rolling + more }, time);
    return power / totalPower - 1;
  });
  return Math.hypot(between, rootMeanSquare(tyres));
}

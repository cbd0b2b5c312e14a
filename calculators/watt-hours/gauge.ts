import {
  assistShare,
  type Climb,
  gaugeEnergy,
  impliedEfficiency,
  type Limits,
  type StagedClimb,
} from '../model/index.ts';
import { none, numberOf, optionalOf, PACK_KNOWN, type Result, ranged, type Scenario } from '../scenario/index.ts';

/** What two readings of a gauge say, or what keeps them from saying it. */
export interface Read {
  /** J between the readings; limits from half a step at each */
  energy?: Limits;
  /** the motor's work over that energy; limits from the readings, the pack and, where it is modelled, the work */
  efficiency?: Limits;
  /** the time between the readings was measured, not modelled */
  timed: boolean;
  /** why there is no energy, or no efficiency */
  reason: string;
}

/**
 * Energy and implied efficiency from the gauge.
 * @param climb one of the climbs that were ridden between the readings
 * @param ride how the model rides it with help to the top
 * @param full J that a full battery gives until its gauge shows nothing
 * @param work the motor's modelled work on it, J, for want of a measured time
 */
export function readingsOf(scenario: Scenario, climb: Climb, ride: StagedClimb, full: number, work: Limits): Read {
  const start = optionalOf(scenario, 'start');
  const end = optionalOf(scenario, 'end');
  const time = optionalOf(scenario, 'time');
  const timed = time !== undefined;
  if (start === undefined || end === undefined) return { timed, reason: 'This needs the gauge before and after.' };
  if (start <= end) return { timed, reason: 'The gauge must show less after the climb than before it.' };
  const readings = [full, start, end, numberOf(scenario, 'step')] as const;
  const energy = gaugeEnergy(...readings);
  const done = timed ? workIn(climb, ride, time, numberOf(scenario, 'laps')) : work;
  if (!(done.value > 0 && done.value < Number.POSITIVE_INFINITY))
    return {
      timed,
      energy,
      reason: climb.motorPower > 0 ? 'The motor does no work there.' : 'Without a motor there is none.',
    };
  // a pack not known better than that, and the worst of everything together
  const pack = gaugeEnergy(...readings, PACK_KNOWN);
  const of = (motorWork: number): Limits => impliedEfficiency(Math.max(0, motorWork), pack);
  const efficiency = { value: of(done.value).value, low: of(done.low).low, high: of(done.high).high };
  return { timed, energy, efficiency, reason: '' };
}

/** The motor's work in a measured time, J. At the mean speed that was ridden it may have been fading; along a hill in pieces it gives what it does in the model. */
function workIn(climb: Climb, ride: StagedClimb, time: number, laps: number): Limits {
  const { hill, riderPower, motorPower, assistLimit } = climb;
  const helped = riderPower > 0 ? assistShare((hill.distance * laps) / time, assistLimit) : 0;
  const value = (hill.profile ? ride.motorPower : motorPower * helped) * time;
  return { value, low: value, high: value };
}

/** The results of two readings; their ranges are limits, not 95 %. */
export function gaugeResults({ energy, efficiency, reason }: Read, distance: number): Result[] {
  const give = (name: string, kind: Result['kind'], limits: Limits | undefined, over = 1): Result => {
    if (!limits) return none(name, kind, reason);
    const { value, low, high } = limits;
    return ranged(name, kind, { value: value / over, low: low / over, high: high / over, causes: [] }, reason);
  };
  return [
    give('gauge-energy', 'energy', energy),
    give('gauge-energy-per-distance', 'energy-per-distance', energy, distance),
    give('implied-efficiency', 'percent', efficiency),
  ];
}

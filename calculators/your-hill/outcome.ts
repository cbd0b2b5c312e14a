import { hillFromProfile, type Profile, type Reserves, rideStages, steepestStretch } from '../model/index.ts';
import {
  COLUMNS,
  type Column,
  type ComparisonOutcome,
  compareBikes,
  type Trial,
  withoutHill,
} from '../scenario/comparison.ts';
import {
  enduranceOf,
  enduranceResult,
  exact,
  hillOf,
  none,
  numberOf,
  optionalOf,
  type Result,
  reservesOf,
  type Scenario,
} from '../scenario/index.ts';

/** The climb on a hill as long and as high, of one grade. */
function timeAtMeanGrade({ climb, reserves }: Trial): number {
  const { distance, gain } = climb.hill;
  const even = { distance: Float64Array.of(0, distance), height: Float64Array.of(0, gain) };
  return rideStages({ ...climb, hill: hillFromProfile(even) }, reserves).time;
}

const atMeanGrade: Column = { name: 'time-mean-grade', kind: 'duration', of: timeAtMeanGrade };
const bias: Column = { name: 'time-bias', kind: 'duration', of: (trial) => trial.ride.time - timeAtMeanGrade(trial) };
const { time, gap, speed, motorPower, batteryEnergy, batteryShare, bindsAfter, bindsHeight, timeLost } = COLUMNS;
const RESULTS: readonly Column[] = [
  time,
  gap,
  speed,
  motorPower,
  batteryEnergy,
  batteryShare,
  bindsAfter,
  bindsHeight,
  timeLost,
  atMeanGrade,
  bias,
];
const ONCE: readonly [string, Result['kind']][] = [
  ['distance', 'distance'],
  ['gain', 'height'],
  ['grade', 'grade'],
  ['steepest', 'grade'],
  ['endurance-time', 'duration'],
];

export interface YourHillOutcome extends ComparisonOutcome {
  /** the hill that was ridden; absent where there is none */
  profile?: Profile;
}

/** What a bike can use up, and its rider too: the ride goes on at the critical power once W′ is used up. */
function whatRunsOut(scenario: Scenario, bike: number): Reserves {
  const criticalPower = optionalOf(scenario, 'endurance');
  const reserves = reservesOf(scenario, bike);
  if (criticalPower === undefined) return reserves;
  return { ...reserves, endurance: { criticalPower, workAbove: numberOf(scenario, 'endurance-work') } };
}

/** One to six bikes with one rider along the pieces of a hill. */
export function yourHill(scenario: Scenario): YourHillOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok) {
    const results = withoutHill(scenario, RESULTS, setting.problem);
    return {
      results: [...results, ...ONCE.map(([name, kind]) => none(name, kind, setting.problem))],
      notes: setting.notes,
      bikes: [],
      first: 0,
      endures: undefined,
    };
  }
  const hill = setting.value;
  const { profile } = hill;
  const endures = enduranceOf(scenario);
  const { results, ...comparison } = compareBikes(scenario, hill, RESULTS, undefined, whatRunsOut);
  results.push(
    exact('distance', 'distance', hill.distance, ''),
    exact('gain', 'height', hill.gain, ''),
    exact('grade', 'grade', hill.grade, ''),
    exact('steepest', 'grade', steepestStretch(hill, 100).grade, ''),
    enduranceResult(endures),
  );
  return { results, ...comparison, notes: setting.notes, endures, ...(profile ? { profile } : {}) };
}

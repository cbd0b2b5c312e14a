import { type Hill, hillFromProfile, type Profile, steepestStretch, straightProfile } from '../model/index.ts';
import {
  type Column,
  type ComparisonOutcome,
  compareBikes,
  RESULT_COLUMNS,
  type Trial,
} from '../scenario/comparison.ts';
import { enduranceOf, enduranceResult, exact, hillInPieces, type Scenario } from '../scenario/index.ts';
import { ridesOf } from '../scenario/rides.ts';
import { reservesWithRider } from './reserves.ts';

const { time, gap, speed, motorPower, batteryEnergy, batteryShare, bindsAfter, bindsHeight, timeLost } = RESULT_COLUMNS;

/** Results of a bike on this hill; the last two from a hill as long and as high, of one grade. */
function resultsOn({ distance, gain }: Hill): Column[] {
  const even = hillFromProfile(straightProfile(distance, gain));
  const riding = ridesOf(even);
  const atMeanGrade = ({ climb, reserves }: Trial): number => riding({ ...climb, hill: even }, reserves).time;
  return [
    ...[time, gap, speed, motorPower, batteryEnergy, batteryShare, bindsAfter, bindsHeight, timeLost],
    { name: 'time-mean-grade', kind: 'duration', of: atMeanGrade },
    { name: 'time-bias', kind: 'duration', of: (trial) => trial.ride.time - atMeanGrade(trial) },
  ];
}

export interface YourHillOutcome extends ComparisonOutcome {
  /** the hill that was ridden */
  profile: Profile;
}

/** One to six bikes with one rider along the pieces of a hill. */
export function yourHill(scenario: Scenario): YourHillOutcome {
  const hill = hillInPieces(scenario);
  const endures = enduranceOf(scenario);
  const { results, ...comparison } = compareBikes(scenario, hill, resultsOn(hill), undefined, reservesWithRider);
  results.push(
    exact('distance', 'distance', hill.distance, ''),
    exact('gain', 'height', hill.gain, ''),
    exact('grade', 'grade', hill.grade, ''),
    exact('steepest', 'grade', steepestStretch(hill, 100).grade, ''),
    enduranceResult(endures),
  );
  return { results, ...comparison, notes: [], endures, profile: hill.profile };
}

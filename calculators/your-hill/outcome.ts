import { type Hill, hillFromProfile, type Profile, steepestStretch } from '../model/index.ts';
import { COLUMNS, type Column, type ComparisonOutcome, compareBikes, type Trial } from '../scenario/comparison.ts';
import { enduranceOf, enduranceResult, exact, hillInPieces, type Scenario } from '../scenario/index.ts';
import { ridesOf } from '../scenario/rides.ts';
import { reservesWithRider } from './reserves.ts';

const { time, gap, speed, motorPower, batteryEnergy, batteryShare, bindsAfter, bindsHeight, timeLost } = COLUMNS;

/** Results of a bike on this hill; the last two from a hill as long and as high, of one grade. */
function resultsOn({ distance, gain }: Hill): Column[] {
  const even = hillFromProfile({ distance: Float64Array.of(0, distance), height: Float64Array.of(0, gain) });
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

import { useEffect, useState } from 'preact/hooks';
import { hillFromProfile, type Profile, rideStages } from '../model/index.ts';
import { ResultOutput } from '../parts/Output.tsx';
import { formatNumber, formatQuantity } from '../quantities/index.ts';
import { bikeName, climbOf, exact, reservesOf, type Scenario } from '../scenario/index.ts';
import type { HillBelow } from './below.ts';

interface Props {
  scenario: Scenario;
  hill: HillBelow | undefined;
  isBelow: boolean;
  onPut: () => void;
}

/** ms of quiet before the ride along every point is worked out. */
const PAUSE = 250;

/** s of the first bike along a profile. */
function timeAlong(scenario: Scenario, profile: Profile): number {
  return rideStages(climbOf(scenario, hillFromProfile(profile), 0), reservesOf(scenario, 0)).time;
}

/** Whether the picked stretch is the hill that the calculator rides, and how close its few pieces are to what was recorded. */
export function Below({ scenario, hill, isBelow, onPut }: Props) {
  const [difference, setDifference] = useState<number | undefined>(undefined);
  useEffect(() => {
    setDifference(undefined);
    if (!hill) return;
    const timer = setTimeout(() => {
      setDifference(timeAlong(scenario, hill.simple) - timeAlong(scenario, hill.full));
    }, PAUSE);
    return () => clearTimeout(timer);
  }, [scenario, hill]);
  if (!hill) return <p class="problem">There is no road with heights between these ends.</p>;
  const { system } = scenario;
  const name = bikeName(scenario, 0);
  return (
    <div class="below">
      {isBelow ? (
        <p>
          <strong>This climb is the hill below</strong>, in {formatNumber(hill.simple.distance.length - 1)} pieces for{' '}
          {formatNumber(hill.full.distance.length)} points.
        </p>
      ) : (
        <p>
          The hill below is another one.{' '}
          <button type="button" onClick={onPut}>
            Make this climb the hill below
          </button>
        </p>
      )}
      <p class="behind">
        Its heights are at most{' '}
        <ResultOutput
          result={exact('simplified-error', 'height', hill.largestError, '')}
          system={system}
          words={formatQuantity(hill.largestError, 'height', system, { digits: 1 })}
        />{' '}
        off.{' '}
        {difference !== undefined && Number.isFinite(difference) && (
          <>
            {name} takes{' '}
            <ResultOutput
              result={exact('simplified-time', 'seconds', difference, '')}
              system={system}
              words={formatQuantity(Math.abs(difference), 'seconds', system)}
            />{' '}
            {difference < 0 ? 'less' : 'longer'} on the pieces than on all points.
          </>
        )}
      </p>
    </div>
  );
}

import { ResultOutput } from '../parts/Output.tsx';
import { formatNumber, formatQuantity } from '../quantities/index.ts';
import { bikeName, exact, type Scenario } from '../scenario/index.ts';
import type { HillBelow, NoHill } from './below.ts';
import { noHillText } from './words.ts';

interface Props {
  scenario: Scenario;
  /** undefined until that is known */
  hill: HillBelow | NoHill | undefined;
  /** s that the first bike takes longer on the pieces; undefined until it is worked out */
  difference: number | undefined;
  isBelow: boolean;
  onPut: () => void;
}

/** Whether the picked stretch is the hill that the calculator rides, and how close its few pieces are to what was recorded. */
export function Below({ scenario, hill, difference, isBelow, onPut }: Props) {
  if (hill === undefined) return <p class="waiting">One moment…</p>;
  const { system } = scenario;
  if ('problem' in hill) return <p class="problem">{noHillText(hill, system)}</p>;
  const name = bikeName(scenario, 0);
  const off = formatQuantity(Math.abs(difference ?? 0), 'seconds', system);
  const isAsLong = off === formatQuantity(0, 'seconds', system);
  const longer = isAsLong ? 'as long' : `${off} ${(difference ?? 0) < 0 ? 'less' : 'longer'}`;
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
            <ResultOutput result={exact('simplified-time', 'seconds', difference, '')} system={system} words={longer} />{' '}
            on the pieces {isAsLong ? 'as' : 'than'} on all points.
          </>
        )}
      </p>
    </div>
  );
}

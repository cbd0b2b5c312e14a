import { ResultOutput } from '../parts/Output.tsx';
import { formatQuantity, type System } from '../quantities/index.ts';
import { bikeName, exact, type Scenario } from '../scenario/index.ts';
import type { HillBelow } from './below.ts';
import type { Differences } from './closeness.ts';

interface Props {
  scenario: Scenario;
  hill: HillBelow;
  /** undefined until they are worked out */
  differences: Differences | undefined;
}

/** How close the hill that is ridden is to what was recorded, in height and in the time of the first bike. */
export function Closeness({ scenario, hill, differences }: Props) {
  const { system } = scenario;
  const output = (name: string, kind: 'height' | 'seconds', si: number, words: string) => (
    <ResultOutput result={exact(name, kind, si, '')} system={system} words={words} />
  );
  const metres = (si: number): string => formatQuantity(si, 'height', system, { digits: 1 });
  const { points, half, twice, offRecorded } = differences ?? {};
  return (
    <p class="behind">
      The pieces are at most {output('simplified-error', 'height', hill.largestError, metres(hill.largestError))} off
      the smoothed heights
      {offRecorded !== undefined && (
        <> and {output('recorded-error', 'height', offRecorded, metres(offRecorded))} off the recorded ones</>
      )}
      .
      {points !== undefined && Number.isFinite(points) && (
        <>
          {' '}
          On every point {bikeName(scenario, 0)} would take{' '}
          {output('simplified-time', 'seconds', points, longerText(points, system))}
          {[half, twice].map(
            (each, i) =>
              each &&
              Number.isFinite(each.time) && (
                <>
                  ; smoothed over {formatQuantity(each.window, 'height', system, { digits: 1, trim: true })}{' '}
                  {output(
                    i === 0 ? 'half-window-time' : 'twice-window-time',
                    'seconds',
                    each.time,
                    longerText(each.time, system),
                  )}
                </>
              ),
          )}
          . Smoothing rounds ramps: the less of it, the steeper the road and its noise.
        </>
      )}
    </p>
  );
}

/** "4.1 s longer", "as long". */
function longerText(seconds: number, system: System): string {
  const text = formatQuantity(Math.abs(seconds), 'seconds', system);
  if (text === formatQuantity(0, 'seconds', system)) return 'as long';
  return `${text} ${seconds < 0 ? 'less' : 'longer'}`;
}

import { type ClimbFigures as Figures, STEEPEST_OVER } from '../model/index.ts';
import { ResultOutput } from '../parts/Output.tsx';
import { formatNumber, formatQuantity, type Kind, type System } from '../quantities/index.ts';
import { exact, type Result } from '../scenario/index.ts';
import { meanReason } from './found-words.ts';
import type { StretchFigures } from './workbench.ts';

interface Props {
  figures: Figures;
  system: System;
}

const NO_TIMES = 'A route has no times.';

/** The figures of a stretch, each with the reason where it has no value. */
export function figureResults(figures: Figures, system: System): [label: string, result: Result][] {
  const { distance, gain, grade, steepest, elapsed, riding, pauses, speed, verticalSpeed, power, cadence, heartRate } =
    figures;
  const hasTimes = elapsed !== undefined;
  const result = (name: string, kind: Kind, si: number | undefined, reason = ''): Result =>
    exact(`recorded-${name}`, kind, si ?? Number.NaN, reason);
  return [
    ['Time', result('time', 'duration', elapsed, NO_TIMES)],
    ['Without pauses', result('riding-time', 'duration', riding, NO_TIMES)],
    ['Paused', result('pause-time', 'duration', hasTimes ? pauses.seconds : undefined, NO_TIMES)],
    ['Along the road', result('distance', 'distance', distance)],
    ['Height gained, top less start', result('gain', 'height', gain)],
    ['Mean grade', result('grade', 'grade', grade)],
    [
      `Steepest ${formatQuantity(STEEPEST_OVER, 'height', system)}`,
      result('steepest', 'grade', steepest.length > 0 ? steepest.grade : undefined, 'No road without a gap.'),
    ],
    ['Speed', result('speed', 'speed', speed, NO_TIMES)],
    ['Vertical speed', result('vertical-speed', 'climb-rate', verticalSpeed, NO_TIMES)],
    ['Mean power', result('power', 'power', power.mean, meanReason('power', power, hasTimes))],
    ['Mean cadence', result('cadence', 'cadence', cadence.mean, meanReason('cadence', cadence, hasTimes))],
    [
      'Mean heart rate, per minute',
      result('heart-rate', 'count', heartRate.mean, meanReason('heart rate', heartRate, hasTimes)),
    ],
  ];
}

/** What was ridden on the picked stretch. */
export function ClimbFigures({ figures, system }: Props) {
  const all = figureResults(figures, system);
  const reasons = [...new Set(all.flatMap(([, { si, reason }]) => (si === undefined && reason ? [reason] : [])))];
  const { gaps } = figures;
  return (
    <>
      <dl class="facts">
        {all.map(([label, result]) => (
          <div key={result.name}>
            <dt>{label}</dt>
            <dd>
              <ResultOutput
                result={result}
                system={system}
                words={result.kind === 'count' ? wholeText(result) : undefined}
              />
            </dd>
          </div>
        ))}
      </dl>
      {reasons.length > 0 && <p class="behind">{reasons.join(' ')}</p>}
      {gaps > 0 && (
        <p class="behind">
          The recording is interrupted {gaps === 1 ? 'once' : `${formatNumber(gaps)} times`} on this stretch: what lies
          between is left out.
        </p>
      )}
    </>
  );
}

/** Beats of a heart have no decimals. */
const wholeText = ({ si }: Result): string | undefined => (si === undefined ? undefined : formatNumber(si));

interface SteepnessProps {
  classes: StretchFigures['steepness'];
  system: System;
}

/** How much of the road is how steep: a bar and its length for each class of grade. */
export function Steepness({ classes, system }: SteepnessProps) {
  const most = Math.max(...classes.map(({ distance }) => distance), 1);
  const edge = (grade: number): string => formatNumber(100 * grade);
  return (
    <table class="steepness">
      <caption>How steep, for how far</caption>
      <thead class="sr-only">
        <tr>
          <th scope="col">Grade</th>
          <th scope="col">Road</th>
        </tr>
      </thead>
      <tbody>
        {classes.map(({ low, high, distance }) => (
          <tr key={low}>
            <th scope="row">
              {edge(low)} to {edge(high)}&#8239;%
            </th>
            <td>
              <span class="steepness-bar">
                <svg aria-hidden="true" width="100%" height="14">
                  <rect class="bar" width={`${((100 * distance) / most).toFixed(1)}%`} height="14" />
                </svg>
                <span>{formatQuantity(distance, 'distance', system)}</span>
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

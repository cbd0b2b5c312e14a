import { type ClimbFigures as Figures, STEEPEST_OVER } from '../model/index.ts';
import { ResultOutput } from '../parts/Output.tsx';
import { formatNumber, formatQuantity, type Kind, type System } from '../quantities/index.ts';
import { exact, type Result } from '../scenario/index.ts';
import { meanReason } from './found-words.ts';
import { wayText } from './words.ts';
import type { StretchFigures } from './workbench.ts';

interface Props {
  figures: Figures;
  system: System;
}

/** The figures of a stretch, each with the reason where it has no value. A route has those of its road alone. */
export function figureResults(figures: Figures, system: System): [label: string, result: Result][] {
  const { distance, gain, grade, steepest, elapsed, riding, pauses, speed, verticalSpeed, power, cadence, heartRate } =
    figures;
  const result = (name: string, kind: Kind, si: number | undefined, reason = ''): Result =>
    exact(`recorded-${name}`, kind, si ?? Number.NaN, reason);
  const road: [string, Result][] = [
    ['Along the road', result('distance', 'distance', distance)],
    [gain < 0 ? 'Height, end less start' : 'Height gained, top less start', result('gain', 'height', gain)],
    ['Mean grade', result('grade', 'grade', grade)],
  ];
  // of a shorter stretch it would be the mean grade once more
  if (steepest.length > STEEPEST_OVER - 0.5)
    road.push([
      `Steepest ${formatQuantity(STEEPEST_OVER, 'height', system)}, smoothed`,
      result('steepest', 'grade', steepest.grade),
    ]);
  if (elapsed === undefined) return road;
  const stood: [string, Result][] = [
    ['Without pauses', result('riding-time', 'duration', riding)],
    ['Standing', result('pause-time', 'duration', pauses.seconds)],
  ];
  return [
    ['Time', result('time', 'duration', elapsed)],
    ...(pauses.count > 0 ? stood : []),
    ...road,
    ['Speed', result('speed', 'speed', speed)],
    ['Vertical speed', result('vertical-speed', 'climb-rate', verticalSpeed)],
    ['Mean power', result('power', 'power', power.mean, meanReason('power', power))],
    ['Mean cadence', result('cadence', 'cadence', cadence.mean, meanReason('cadence', cadence))],
    ['Mean heart rate, per minute', result('heart-rate', 'count', heartRate.mean, meanReason('heart rate', heartRate))],
  ];
}

/** What was ridden on the picked stretch. */
export function ClimbFigures({ figures, system }: Props) {
  const all = figureResults(figures, system);
  const { gaps, elapsed, pauses } = figures;
  const notes = [
    ...new Set(all.flatMap(([, { si, reason }]) => (si === undefined && reason ? [reason] : []))),
    elapsed === undefined ? 'A route has no times: no speed, no power.' : '',
    pauses.count > 0 ? 'Speeds are those of riding, without what was stood.' : '',
  ].filter(Boolean);
  return (
    <>
      <dl class="facts">
        {all
          .filter(([, { si }]) => si !== undefined)
          .map(([label, result]) => (
            <div key={result.name}>
              <dt>{label}</dt>
              <dd>
                <ResultOutput result={result} system={system} words={wordsOf(result, system)} />
              </dd>
            </div>
          ))}
      </dl>
      {notes.length > 0 && <p class="behind">{notes.join(' ')}</p>}
      {gaps > 0 && (
        <p class="behind">
          The recording is interrupted {gaps === 1 ? 'once' : `${formatNumber(gaps)} times`} on this stretch: what lies
          between is left out.
        </p>
      )}
    </>
  );
}

/** Beats of a heart have no decimals, and a way has as many as the places along it. */
function wordsOf({ si, kind }: Result, system: System): string | undefined {
  if (si === undefined) return undefined;
  if (kind === 'count') return formatNumber(si);
  return kind === 'distance' ? wayText(si, system) : undefined;
}

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

import type { Profile, ProfileRide } from '../model/index.ts';
import { differenceText } from '../parts/differences.ts';
import { LinesChart } from '../parts/LinesChart.tsx';
import { evenPoints, heldRows, ProfileFigure } from '../parts/ProfileChart.tsx';
import { formatQuantity, type System } from '../quantities/index.ts';
import { gapsAlong } from './along.ts';

interface Props {
  profile: Profile;
  /** in their order, each with its ride; none where it does not get up */
  bikes: readonly { label: string; ride: ProfileRide | undefined }[];
  /** the one that is first at the top */
  first: number;
  system: System;
  /** the answer in words */
  answer: string;
}

/** A gap as people read it: behind, or ahead with a minus sign. */
const gapText = (seconds: number): string => (Math.abs(seconds) < 0.05 ? '0\u202fs' : differenceText(seconds));

/** The hill with what holds each bike back on it, the gaps along it, and both as tables. */
export function HillCharts({ profile, bikes, first, system, answer }: Props) {
  const gaps = gapsAlong(
    bikes.map(({ ride }) => ride),
    first,
  );
  const drawn = bikes.flatMap(({ label }, bike) => {
    const points = gaps[bike] ?? [];
    return points.length > 0 ? [{ bike, label, points, last: points.at(-1)?.gap ?? 0 }] : [];
  });
  const onHill = bikes.map(({ label, ride }) => ({ label, spans: ride?.spans }));
  const widest = Math.max(...drawn.flatMap(({ points }) => points.map(({ gap }) => Math.abs(gap))), 0);
  const leader = bikes[first]?.label ?? '';
  const text = (metres: number, kind: 'distance' | 'height' = 'distance'): string =>
    formatQuantity(metres, kind, system);
  const marks = evenPoints(profile.distance);
  return (
    <>
      <ProfileFigure profile={profile} bikes={onHill} system={system} answer={answer} />
      {widest > 0 && (
        <figure>
          <figcaption>Time behind {leader} along the way.</figcaption>
          <LinesChart
            description={`Time behind ${leader}: ${drawn
              .filter(({ bike }) => bike !== first)
              .map(
                ({ label, points }) =>
                  `${label} ${marks.map((i) => `${gapText(points[i]?.gap ?? 0)} after ${text(points[i]?.distance ?? 0)}`).join(', ')}`,
              )
              .join('; ')}.`}
            lines={drawn.map(({ bike, label, points, last }) => ({
              label,
              points: points.map(({ distance, gap }) => ({ x: distance, y: gap })),
              text: bike === first ? 'first' : gapText(last),
            }))}
            xKind="distance"
            yKind={widest < 120 ? 'seconds' : 'duration'}
            system={system}
            wide
          />
        </figure>
      )}
      <details class="as-tables">
        <summary>The same as tables</summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
        <section class="scrolls" aria-label="Where something holds a bike back" tabIndex={0}>
          <table>
            <caption>Where something holds a bike back</caption>
            <thead>
              <tr>
                <th scope="col">Bike</th>
                <th scope="col">By</th>
                <th scope="col">From</th>
                <th scope="col">To</th>
              </tr>
            </thead>
            <tbody>
              {heldRows(onHill, system).flatMap(({ label, by, stretches }) =>
                (stretches.length > 0 ? stretches : [undefined]).map((stretch) => (
                  <tr key={`${label} ${by} ${stretch?.from}`}>
                    <th scope="row">{label}</th>
                    <td>{by}</td>
                    <td>{stretch ? text(stretch.from) : '–'}</td>
                    <td>{stretch ? text(stretch.to) : '–'}</td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
        </section>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
        <section class="scrolls" aria-label={`Time behind ${leader}`} tabIndex={0}>
          <table>
            <caption>Time behind {leader}</caption>
            <thead>
              <tr>
                <th scope="col">After</th>
                <th scope="col">Height</th>
                {drawn.map(({ bike, label }) => (
                  <th scope="col" key={bike}>
                    {label}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {marks.map((i) => (
                <tr key={i}>
                  <th scope="row">{text(profile.distance[i] ?? 0)}</th>
                  <td>{text(profile.height[i] ?? 0, 'height')}</td>
                  {drawn.map(({ bike, points }) => (
                    <td key={bike}>{gapText(points[i]?.gap ?? 0)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </details>
    </>
  );
}

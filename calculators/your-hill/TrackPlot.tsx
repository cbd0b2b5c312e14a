import { useMemo } from 'preact/hooks';
import type { Track } from '../model/index.ts';
import { BOTTOM, LEFT, Plot, path, TOP } from '../parts/Plot.tsx';
import type { System } from '../quantities/index.ts';
import { drawnLines, gapsIn, heightsOf, ticksBetween, type Window } from './drawn.ts';

/** Right edge of the plot, in percent of the chart. */
export const RIGHT = 98;

/** What a chart of a track draws. */
export interface Drawn {
  track: Track;
  /** m, mended and smoothed */
  height: Float64Array;
  window: Window;
  system: System;
  description: string;
}

/** m along the way of a point. */
export const way = (track: Track, index: number): number => track.distance[index] ?? 0;

/** Axes and the line of a profile. `marks` lie below the line and use the same scale. */
export function TrackPlot({
  track,
  height,
  window,
  system,
  description,
  chartHeight,
  marks,
  children,
}: Drawn & {
  chartHeight: number;
  marks: (x: (metres: number) => number) => preact.ComponentChildren;
  children?: preact.ComponentChildren;
}) {
  const { lines, heights, gaps } = useMemo(() => {
    const drawn = drawnLines(track.distance, height, track.breaks, window);
    return { lines: drawn, heights: heightsOf(drawn), gaps: gapsIn(track.distance, height, track.breaks) };
  }, [track, height, window.low, window.high]);
  const span = window.high - window.low;
  const x = (metres: number): number => (100 * (metres - window.low)) / span;
  const y = (metres: number): number => 100 - (100 * (metres - heights.low)) / (heights.high - heights.low);
  return (
    <Plot
      description={description}
      height={chartHeight}
      right={RIGHT}
      x={{
        ...ticksBetween(window, 'distance', system, 5),
        at: (metres) => LEFT + ((RIGHT - LEFT) * x(metres)) / 100,
      }}
      y={{ ...ticksBetween(heights, 'height', system, 4), at: (metres) => TOP + ((BOTTOM - TOP) * y(metres)) / 100 }}
      curves={
        <>
          {marks(x)}
          {lines.map((line) => {
            const points = line.map(([along, high]) => [x(along), y(high)] as const);
            const [first, last] = [points[0]?.[0] ?? 0, points.at(-1)?.[0] ?? 0];
            return (
              <g key={first}>
                <path class="ground" d={`${path(points)}L${last.toFixed(2)} 100L${first.toFixed(2)} 100Z`} />
                <path class="road" d={path(points)} />
              </g>
            );
          })}
          {gaps
            .filter((metres) => metres > window.low && metres < window.high)
            .map((metres) => (
              <path key={metres} class="gap" d={`M${x(metres)} 0V100`} />
            ))}
        </>
      }
    >
      {children}
    </Plot>
  );
}

import type { System } from '../quantities/index.ts';
import { shorten, spreadLabels } from './labels.ts';
import { BOTTOM, LEFT, Plot, path, TOP } from './Plot.tsx';
import { axisTicks, percent, SERIES } from './scale.ts';

export interface Track {
  label: string;
  text: string;
  /** s at the top, with its range */
  time: number;
  low: number;
  high: number;
  /** s, the same by the ratio of heights */
  proportional: number | undefined;
}

export interface TrackChartProps {
  description: string;
  tracks: readonly Track[];
  height: number;
  system: System;
}

/** Time against height: a straight line for each bike at its steady speed, its range at the top, and dashed what multiplying gives. */
export function TrackChart({ description, tracks, height, system }: TrackChartProps) {
  const right = 66;
  const top = Math.max(...tracks.map((track) => Math.max(track.time, track.high)), 1) * 1.04;
  const xAxis = axisTicks(height, 'height', system, 3);
  const yAxis = axisTicks(top, 'duration', system);
  const inPlotX = (x: number): number => LEFT + ((right - LEFT) * x) / height;
  const inPlotY = (y: number): number => BOTTOM - ((BOTTOM - TOP) * y) / top;
  const labels = spreadLabels(
    tracks.map((track) => inPlotY(track.time)),
    7,
  );
  return (
    <Plot
      description={description}
      height={240}
      right={right}
      x={{ ...xAxis, at: inPlotX }}
      y={{ ...yAxis, at: inPlotY }}
      curves={tracks.map((track, i) => (
        <g key={track.label + String(i)} class={SERIES[i % SERIES.length]}>
          {track.proportional !== undefined && (
            <path
              class="curve dashed"
              d={path([
                [0, 100],
                [100, 100 - (100 * track.proportional) / top],
              ])}
            />
          )}
          <path
            class="curve"
            d={path([
              [0, 100],
              [100, 100 - (100 * track.time) / top],
            ])}
          />
        </g>
      ))}
    >
      {tracks.map((track, i) => (
        <g key={track.label + String(i)} class={SERIES[i % SERIES.length]}>
          <line
            class="whisker"
            x1={percent(right / 100)}
            x2={percent(right / 100)}
            y1={percent(inPlotY(track.low) / 100)}
            y2={percent(inPlotY(track.high) / 100)}
          />
          <circle class="end" cx={percent(right / 100)} cy={percent(inPlotY(track.time) / 100)} r="4" />
          <text class="key" x={percent((right + 2) / 100)} y={percent((labels[i] ?? 0) / 100)} dy="4">
            <tspan class="value">{track.text}</tspan> {shorten(track.label)}
          </text>
        </g>
      ))}
    </Plot>
  );
}

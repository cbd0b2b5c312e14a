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
  /** where it is when, on the way: m as the axis counts them, and s; absent where the line is straight */
  points?: readonly { x: number; time: number }[] | undefined;
}

export interface TrackChartProps {
  description: string;
  tracks: readonly Track[];
  /** what runs along the axis, and m of it to the top */
  xKind: 'height' | 'distance';
  length: number;
  system: System;
}

/**
 * Time against height, or along a hill in pieces against distance: a line for each bike, straight at a steady speed, its range at the top,
 * and dashed what multiplying gives.
 */
export function TrackChart({ description, tracks, xKind, length, system }: TrackChartProps) {
  const right = 66;
  const top = Math.max(...tracks.map((track) => Math.max(track.time, track.high)), 1) * 1.04;
  const xAxis = axisTicks(length, xKind, system, 3);
  const yAxis = axisTicks(top, 'duration', system);
  const inPlotX = (x: number): number => LEFT + ((right - LEFT) * x) / length;
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
            d={path(
              (
                track.points ?? [
                  { x: 0, time: 0 },
                  { x: length, time: track.time },
                ]
              ).map(({ x, time }) => [(100 * x) / length, 100 - (100 * time) / top]),
            )}
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

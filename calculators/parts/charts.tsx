import type { ComponentChildren } from 'preact';
import type { Kind, System } from '../quantities/index.ts';
import { axisTicks, percent, SERIES, spreadLabels, type Tick } from './scale.ts';

/*
 * Charts are SVG laid out in percent, drawn on the server: they fill their column without a script, and their text keeps its size.
 * Curves stand in a nested SVG that stretches; lines in it keep their width.
 */

interface PlotProps {
  /** what the chart shows, for those who do not see it */
  description: string;
  /** px */
  height: number;
  x: { unit: string; ticks: Tick[]; at: (si: number) => number };
  y: { unit: string; ticks: Tick[]; at: (si: number) => number };
  /** drawn inside the stretched plot, 0 to 100 both ways */
  curves: ComponentChildren;
  children: ComponentChildren;
}

/** Plot area in percent of the chart: room for the marks of the axes and the labels at the right. */
const LEFT = 11;
const TOP = 9;
const BOTTOM = 86;

function Plot({ description, height, x, y, curves, children, right }: PlotProps & { right: number }) {
  return (
    <svg class="chart" width="100%" height={height} role="img" aria-label={description}>
      {y.ticks.map(({ at, text }) => (
        <g key={at}>
          <line
            class="grid"
            x1={percent(LEFT / 100)}
            x2={percent(right / 100)}
            y1={percent(y.at(at) / 100)}
            y2={percent(y.at(at) / 100)}
          />
          <text x={percent((LEFT - 1.5) / 100)} y={percent(y.at(at) / 100)} dy="4" text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <text x={percent((LEFT - 1.5) / 100)} y="12" text-anchor="end">
        {y.unit}
      </text>
      {x.ticks.map(({ at, text }, i) => (
        <text key={at} x={percent(x.at(at) / 100)} y={percent((BOTTOM + 8.5) / 100)} text-anchor="middle">
          {i === x.ticks.length - 1 ? `${text}\u202f${x.unit}` : text}
        </text>
      ))}
      <svg
        aria-hidden="true"
        x={percent(LEFT / 100)}
        y={percent(TOP / 100)}
        width={percent((right - LEFT) / 100)}
        height={percent((BOTTOM - TOP) / 100)}
        viewBox="0 0 100 100"
        preserveAspectRatio="none"
      >
        {curves}
        <path class="axis" d="M0 100H100" />
      </svg>
      {children}
    </svg>
  );
}

const path = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

export interface CurveChartProps {
  description: string;
  /** x, value, low and high in SI, x rising */
  points: readonly { x: number; value: number; low: number; high: number }[];
  xKind: Kind;
  /** the point that the reader set, with its label */
  here: { x: number; value: number; low: number; high: number; label: string };
  system: System;
}

/** A curve with its range as a band, and the reader's own point on it. Values are times. */
export function CurveChart({ description, points, xKind, here, system }: CurveChartProps) {
  const right = 97;
  const widest = points.at(-1)?.x ?? 1;
  // a long tail without a motor must not squeeze the part that matters
  const finite = points.map((point) => point.value).filter(Number.isFinite);
  const top = Math.min(Math.max(...finite, here.high), 4 * here.value) * 1.05;
  const px = (x: number): number => (100 * x) / widest;
  const py = (y: number): number => 100 - (100 * Math.min(y, top * 1.2)) / top;
  const drawn = points.filter((point) => Number.isFinite(point.high));
  const xAxis = axisTicks(widest, xKind, system, 5);
  const yAxis = axisTicks(top, 'duration', system);
  const inPlotX = (x: number): number => LEFT + ((right - LEFT) * x) / widest;
  const inPlotY = (y: number): number => BOTTOM - ((BOTTOM - TOP) * y) / top;
  const labelLeft = here.x > 0.7 * widest;
  return (
    <Plot
      description={description}
      height={210}
      right={right}
      x={{ ...xAxis, at: inPlotX }}
      y={{ ...yAxis, at: inPlotY }}
      curves={
        <>
          <path
            class="band"
            d={`${path([...drawn.map((p) => [px(p.x), py(p.high)] as const), ...drawn.map((p) => [px(p.x), py(p.low)] as const).reverse()])}Z`}
          />
          <path class="curve" d={path(drawn.map((p) => [px(p.x), py(p.value)]))} />
        </>
      }
    >
      <line
        class="whisker"
        x1={percent(inPlotX(here.x) / 100)}
        x2={percent(inPlotX(here.x) / 100)}
        y1={percent(inPlotY(here.low) / 100)}
        y2={percent(inPlotY(here.high) / 100)}
      />
      <circle class="here" cx={percent(inPlotX(here.x) / 100)} cy={percent(inPlotY(here.value) / 100)} r="5" />
      <text
        class="key"
        x={percent(inPlotX(here.x) / 100)}
        y={percent(inPlotY(here.high) / 100)}
        dy="-10"
        text-anchor={labelLeft ? 'end' : 'start'}
      >
        {here.label}
      </text>
    </Plot>
  );
}

export interface Bar {
  label: string;
  /** as people read it, behind the label */
  text: string;
  value: number;
  low?: number | undefined;
  high?: number | undefined;
}

const BAR_HEIGHT = 46;

/** Bars with their ranges, each labelled above itself. Values of one kind, from zero; `series` gives each bike the hue it has everywhere. */
export function BarChart({
  description,
  bars,
  series = false,
}: {
  description: string;
  bars: readonly Bar[];
  series?: boolean;
}) {
  const longest = Math.max(...bars.map((bar) => Math.max(bar.value, bar.high ?? 0)), 1e-9);
  const wide = (value: number): string => percent((0.98 * Math.max(0, value)) / longest);
  return (
    <svg class="chart" width="100%" height={BAR_HEIGHT * bars.length} role="img" aria-label={description}>
      {bars.map(({ label, text, value, low, high }, i) => {
        const y = BAR_HEIGHT * i;
        return (
          <g key={`${label}${i}`}>
            <text class="key" x="0" y={y + 15}>
              {label} <tspan class="value">{text}</tspan>
            </text>
            <rect
              class={series ? `bar ${SERIES[i % SERIES.length]}` : 'bar'}
              x="0"
              y={y + 22}
              width={wide(value)}
              height="14"
            />
            {low !== undefined && high !== undefined && (
              <>
                <line class="whisker" x1={wide(low)} x2={wide(high)} y1={y + 29} y2={y + 29} />
                <line class="whisker" x1={wide(low)} x2={wide(low)} y1={y + 24} y2={y + 34} />
                <line class="whisker" x1={wide(high)} x2={wide(high)} y1={y + 24} y2={y + 34} />
              </>
            )}
          </g>
        );
      })}
    </svg>
  );
}

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

/** Time against height: a straight line for each bike at its steady speed, its range at the top, and dashed what multiplying gives. */
export function TrackChart({
  description,
  tracks,
  height,
  system,
}: {
  description: string;
  tracks: readonly Track[];
  height: number;
  system: System;
}) {
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
            {shorten(track.label)} <tspan class="value">{track.text}</tspan>
          </text>
        </g>
      ))}
    </Plot>
  );
}

const shorten = (label: string): string => (label.length > 12 ? `${label.slice(0, 11)}…` : label);

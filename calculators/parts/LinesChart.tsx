import type { Kind, System } from '../quantities/index.ts';
import { shorten, spreadLabels } from './labels.ts';
import { BOTTOM, LEFT, Plot, path, TOP, WIDE } from './Plot.tsx';
import { axisTicks, percent, SERIES } from './scale.ts';

export interface Line {
  label: string;
  /** straight between these, SI, x rising from the start of the axis to its end */
  points: readonly { x: number; y: number }[];
  /** its value where the reader is */
  here?: number;
  /** as people read the value at its end, before its name */
  text?: string;
}

export interface LinesChartProps {
  description: string;
  lines: readonly Line[];
  xKind: Kind;
  yKind: Kind;
  /** where the reader is, with its label; absent where that is not in the chart */
  here?: { x: number; label: string } | undefined;
  system: System;
  /** as wide as a hill drawn above it, so that the same places lie below each other: names stand above the ends, not behind them */
  wide?: boolean;
}

/* One dash and one mark for each hue: lines that lie on each other still show, and colour is never all that tells two apart. */
const DASHES = ['none', '9 5', '2 4', '12 4 2 4', '5 3', '14 7'];
const MARKS = [
  'M-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0-9 0Z',
  'M-4-4H4V4H-4Z',
  'M0-5.5L5 4H-5Z',
  'M0-6L5.5 0L0 6L-5.5 0Z',
  'M0 5.5L5-4H-5Z',
  'M-5-1.5H-1.5V-5H1.5V-1.5H5V1.5H1.5V5H-1.5V1.5H-5Z',
];

/** How far above its end a name stands there, px. */
const ABOVE = 11;

/** Several lines over one axis, each with its name at its end, and a line across them where the reader is. Values from zero, or from the least below it. */
export function LinesChart({ description, lines, xKind, yKind, here, system, wide = false }: LinesChartProps) {
  const isLabelled = lines.some(({ text }) => text);
  const right = wide ? WIDE : isLabelled ? 62 : 71;
  const from = lines[0]?.points[0]?.x ?? 0;
  const to = lines[0]?.points.at(-1)?.x ?? 1;
  const values = lines.flatMap(({ points }) => points.map(({ y }) => y));
  const low = 1.08 * Math.min(0, ...values);
  // room for the name above the highest end
  const top = (wide ? 1.16 : 1.08) * (Math.max(...values) || 100);
  const px = (x: number): number => (100 * (x - from)) / (to - from);
  const py = (y: number): number => (100 * (top - y)) / (top - low);
  const inPlotX = (x: number): number => LEFT + ((right - LEFT) * px(x)) / 100;
  const inPlotY = (y: number): number => TOP + ((BOTTOM - TOP) * py(y)) / 100;
  const xAxis = axisTicks(to, xKind, system, wide ? 5 : isLabelled ? 4 : 6);
  const ends = lines.map(({ points }) => inPlotY(points.at(-1)?.y ?? 0));
  const labels = spreadLabels(ends, 7);
  const at = here && percent(inPlotX(here.x) / 100);
  const mark = (i: number, x: string, y: number) => (
    <svg aria-hidden="true" x={x} y={percent(y / 100)} overflow="visible">
      <path class="end" d={MARKS[i % MARKS.length]} />
    </svg>
  );
  return (
    <Plot
      description={description}
      height={250}
      right={right}
      x={{ unit: xAxis.unit, ticks: xAxis.ticks.filter((tick) => tick.at >= from && tick.at < to), at: inPlotX }}
      y={{ ...axisTicks(top, yKind, system, 4, low), at: inPlotY }}
      curves={lines.map(({ label, points }, i) => (
        <g key={label + String(i)} class={SERIES[i % SERIES.length]}>
          <path
            class="curve"
            stroke-dasharray={DASHES[i % DASHES.length]}
            d={path(points.map(({ x, y }) => [px(x), py(y)]))}
          />
        </g>
      ))}
    >
      {here && (
        <>
          <line class="axis" x1={at} x2={at} y1={percent(TOP / 100)} y2={percent(BOTTOM / 100)} />
          <text class="key" x={at} y="14" text-anchor={px(here.x) < 10 ? 'start' : px(here.x) > 75 ? 'end' : 'middle'}>
            {here.label}
          </text>
        </>
      )}
      {lines.map(({ label, here: value = 0, text }, i) => (
        <g key={label + String(i)} class={SERIES[i % SERIES.length]}>
          {at && mark(i, at, inPlotY(value))}
          {mark(i, percent((right + (wide ? 0 : 3)) / 100), wide ? (ends[i] ?? 0) : (labels[i] ?? 0))}
          <text
            class="key"
            x={percent((right + (wide ? 0 : 3)) / 100)}
            y={percent((labels[i] ?? 0) / 100)}
            dx={wide ? -8 : 10}
            dy={wide ? -ABOVE : 4}
            text-anchor={wide ? 'end' : undefined}
          >
            {text && (
              <>
                <tspan class="value">{text}</tspan>{' '}
              </>
            )}
            {shorten(label, text ? 8 : 10)}
          </text>
        </g>
      ))}
    </Plot>
  );
}

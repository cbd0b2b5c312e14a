import type { ComponentChildren } from 'preact';
import { percent, type Tick } from './scale.ts';

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
export const LEFT = 11;
export const TOP = 9;
export const BOTTOM = 86;
/** Where a plot ends that has no labels at its right. */
export const WIDE = 97;

export function Plot({ description, height, x, y, curves, children, right }: PlotProps & { right: number }) {
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
        <text
          key={at}
          x={percent(x.at(at) / 100)}
          y={percent((BOTTOM + 8.5) / 100)}
          text-anchor={x.at(at) > right - 4 ? 'end' : 'middle'}
        >
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

/** A path through points of the stretched plot. */
export const path = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

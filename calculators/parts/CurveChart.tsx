import type { Kind, System } from '../quantities/index.ts';
import { BOTTOM, LEFT, Plot, path, TOP } from './Plot.tsx';
import { axisTicks, percent } from './scale.ts';

export interface CurveChartProps {
  description: string;
  /** x, value, low and high in SI, x rising */
  points: readonly { x: number; value: number; low: number; high: number }[];
  xKind: Kind;
  /** the point that the reader set, with its label */
  here: { x: number; value: number; low: number; high: number; label: string };
  /** a value to hold the curve against, and where the curve meets it */
  line?: { value: number; label: string; x: number | undefined };
  system: System;
}

/** A curve with its range as a band, and the reader's own point on it. Values are times. */
export function CurveChart({ description, points, xKind, here, line, system }: CurveChartProps) {
  const right = 97;
  const widest = points.at(-1)?.x ?? 1;
  // a long tail without a motor must not squeeze the part that matters
  const finite = points.map((point) => point.value).filter(Number.isFinite);
  const top = Math.max(Math.min(Math.max(...finite, here.high), 4 * here.value), line?.value ?? 0) * 1.05;
  const px = (x: number): number => (100 * x) / widest;
  const py = (y: number): number => 100 - (100 * Math.min(y, top * 1.2)) / top;
  const drawn = points.filter((point) => Number.isFinite(point.high));
  const xAxis = axisTicks(widest, xKind, system, 5);
  const yAxis = axisTicks(top, 'duration', system);
  const inPlotX = (x: number): number => LEFT + ((right - LEFT) * x) / widest;
  const inPlotY = (y: number): number => BOTTOM - ((BOTTOM - TOP) * y) / top;
  const labelLeft = here.x > 0.7 * widest;
  // under the line on its left and over it on its right is no curve that falls
  const meets = line?.x !== undefined && line.x <= widest ? line.x : widest;
  const under = meets > 0.45 * widest;
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
          {line && <path class="axis" d={path([0, 100].map((x) => [x, py(line.value)]))} />}
        </>
      }
    >
      {line && (
        <>
          {line.x === meets && (
            <circle class="end" cx={percent(inPlotX(meets) / 100)} cy={percent(inPlotY(line.value) / 100)} r="4" />
          )}
          <text
            class="key"
            x={percent(inPlotX(meets) / 100)}
            y={percent(inPlotY(line.value) / 100)}
            dx={under ? -8 : 8}
            dy={under ? 17 : -8}
            text-anchor={under ? 'end' : 'start'}
          >
            {line.label}
          </text>
        </>
      )}
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

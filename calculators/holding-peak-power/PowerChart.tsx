import { BOTTOM, LEFT, Plot, path, TOP } from '../parts/Plot.tsx';
import { axisTicks, percent } from '../parts/scale.ts';
import type { System } from '../quantities/index.ts';

export interface PowerChartProps {
  description: string;
  /** what the motor gives on the way up, W, from so many s on */
  steps: readonly { from: number; power: number; label: string }[];
  /** s at the top */
  end: number;
  /** from when to when, s, it may come down, and to what power; absent where it does not */
  between?: { low: number; high: number; power: number } | undefined;
  system: System;
}

/** Motor power against time up a climb, in steps, and between when and when it may come down. */
export function PowerChart({ description, steps, end, between, system }: PowerChartProps) {
  const right = 97;
  const top = 1.25 * Math.max(...steps.map(({ power }) => power), 100);
  const px = (time: number): number => (100 * Math.min(time, end)) / end;
  const py = (power: number): number => 100 - (100 * power) / top;
  const inPlotX = (time: number): number => LEFT + ((right - LEFT) * px(time)) / 100;
  const inPlotY = (power: number): number => TOP + ((BOTTOM - TOP) * py(power)) / 100;
  const corners = steps.flatMap(({ from, power }, i): [number, number][] => {
    const to = steps[i + 1]?.from ?? end;
    return [
      [px(from), py(power)],
      [px(to), py(power)],
    ];
  });
  const peak = steps[0]?.power ?? 0;
  return (
    <Plot
      description={description}
      height={210}
      right={right}
      x={{ ...axisTicks(end, 'duration', system, 6), at: inPlotX }}
      y={{ ...axisTicks(top, 'power', system), at: inPlotY }}
      curves={
        <>
          {between && (
            <path
              class="band"
              d={`${path([
                [px(between.low), py(peak)],
                [px(between.high), py(peak)],
                [px(between.high), py(between.power)],
                [px(between.low), py(between.power)],
              ])}Z`}
            />
          )}
          <path class="curve" d={path(corners)} />
        </>
      }
    >
      {steps.map(({ from, power, label }, i) => {
        // the last step is labelled at its end, so that two labels never meet
        const last = i > 0 && i === steps.length - 1;
        return (
          <text
            key={label}
            class="key"
            x={percent(inPlotX(last ? end : from) / 100)}
            y={percent(inPlotY(power) / 100)}
            dx={last ? 0 : 4}
            dy={last ? 18 : -8}
            text-anchor={last ? 'end' : 'start'}
          >
            {label}
          </text>
        );
      })}
    </Plot>
  );
}

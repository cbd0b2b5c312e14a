import { percent } from './scale.ts';

export interface SignedBar {
  label: string;
  /** as people read it, behind the label */
  text: string;
  value: number;
  low?: number | undefined;
  high?: number | undefined;
}

export interface SignedBarChartProps {
  description: string;
  bars: readonly SignedBar[];
  /** what lies left and right of nothing */
  sides: readonly [string, string];
}

/** As in `BarChart`. */
const BAR_HEIGHT = 46;
/** Height of what names the sides. */
const SIDES_HEIGHT = 20;
/** Least share of the width that a side without bars keeps, so that the line of nothing is seen. */
const LEAST = 0.02;

/** Bars to both sides of nothing with their ranges, each labelled above itself. Values of one kind. */
export function SignedBarChart({ description, bars, sides }: SignedBarChartProps) {
  const ends = bars.flatMap(({ value, low, high }) => [value, low ?? value, high ?? value]);
  const left = Math.min(0, ...ends);
  const right = Math.max(0, ...ends);
  const margin = LEAST * (right - left || 1);
  const share = (value: number): number => (value - left + margin) / (right - left + 2 * margin);
  const at = (value: number): string => percent(share(value));
  return (
    <svg
      class="chart"
      width="100%"
      height={SIDES_HEIGHT + BAR_HEIGHT * bars.length}
      role="img"
      aria-label={description}
    >
      {left < 0 && (
        <text x="0" y="12">
          ← {sides[0]}
        </text>
      )}
      {right > 0 && (
        <text x="100%" y="12" text-anchor="end">
          {sides[1]} →
        </text>
      )}
      <line class="axis" x1={at(0)} x2={at(0)} y1="0" y2="100%" />
      {bars.map(({ label, text, value, low, high }, i) => {
        const y = SIDES_HEIGHT + BAR_HEIGHT * i;
        return (
          <g key={label}>
            <text class="key" x="0" y={y + 15}>
              {label} <tspan class="value">{text}</tspan>
            </text>
            <rect
              class="bar"
              x={at(Math.min(0, value))}
              y={y + 22}
              width={percent(Math.abs(share(value) - share(0)))}
              height="14"
            />
            {low !== undefined && high !== undefined && (
              <>
                <line class="whisker" x1={at(low)} x2={at(high)} y1={y + 29} y2={y + 29} />
                <line class="whisker" x1={at(low)} x2={at(low)} y1={y + 24} y2={y + 34} />
                <line class="whisker" x1={at(high)} x2={at(high)} y1={y + 24} y2={y + 34} />
              </>
            )}
          </g>
        );
      })}
    </svg>
  );
}

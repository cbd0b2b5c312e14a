import { percent, SERIES } from './scale.ts';

export interface Bar {
  label: string;
  /** as people read it, behind the label */
  text: string;
  value: number;
  low?: number | undefined;
  high?: number | undefined;
}

const BAR_HEIGHT = 46;

export interface BarChartProps {
  description: string;
  bars: readonly Bar[];
  series?: boolean;
}

/** Bars with their ranges, each labelled above itself. Values of one kind, from zero; `series` gives each bike the hue it has everywhere. */
export function BarChart({ description, bars, series = false }: BarChartProps) {
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

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
const anchor = (share: number): string => (share < 0.15 ? 'start' : share > 0.85 ? 'end' : 'middle');

export interface BarChartProps {
  description: string;
  bars: readonly Bar[];
  series?: boolean;
  /** a value that all are held against, with its label */
  line?: { value: number; label: string };
}

/** Height of the line's label above the bars. */
const LINE_LABEL = 20;

/** Bars with their ranges, each labelled above itself. Values of one kind, from zero; `series` gives each bike the hue it has everywhere. */
export function BarChart({ description, bars, series = false, line }: BarChartProps) {
  const longest = Math.max(...bars.map((bar) => Math.max(bar.value, bar.high ?? 0)), line?.value ?? 0, 1e-9);
  const top = line ? LINE_LABEL : 0;
  const wide = (value: number): string => percent((0.98 * Math.max(0, value)) / longest);
  return (
    <svg class="chart" width="100%" height={top + BAR_HEIGHT * bars.length} role="img" aria-label={description}>
      {line && line.value >= 0 && (
        <>
          <line class="axis" x1={wide(line.value)} x2={wide(line.value)} y1={top} y2="100%" />
          <text class="key value" x={wide(line.value)} y="13" text-anchor={anchor(line.value / longest)}>
            {line.label}
          </text>
        </>
      )}
      {bars.map(({ label, text, value, low, high }, i) => {
        const y = top + BAR_HEIGHT * i;
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

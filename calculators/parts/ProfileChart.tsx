import type { Profile, ProfileRide, Span, SpanLimit, StagedClimb } from '../model/index.ts';
import { formatQuantity, type System } from '../quantities/index.ts';
import { joinedSpans, lengthOf, type Stretch } from '../scenario/binding.ts';
import { shorten } from './labels.ts';
import { BOTTOM, LEFT, Plot, path, TOP, WIDE } from './Plot.tsx';
import { axisTicks, percent, SERIES } from './scale.ts';

/** A bike on this hill, and what holds it back on parts of it. */
export interface BikeOnHill {
  label: string;
  /** nothing where that is not known: its time was measured, or it does not get up */
  spans: readonly Span[] | undefined;
}

interface ProfileChartProps {
  profile: Profile;
  /** none where only the hill is shown */
  bikes?: readonly BikeOnHill[];
  /** the answer in words, where this is its first chart */
  answer?: string;
  system: System;
}

/** What a bike is held by, in two words. */
const HELD_BY: Readonly<Record<SpanLimit, string>> = {
  'assist-limit': 'assist limit',
  torque: 'torque',
  support: 'support',
  heat: 'motor heat',
  battery: 'empty battery',
  endurance: 'tired legs',
  brakes: 'brakes',
};

/** px of a row below the profile: its words and its bar. */
const ROW = 38;
/** A stretch is seen however short it is, percent of the chart. */
const SHORTEST = 0.8;

/** A row below the profile: a bike and one limit, or nothing. */
export interface HeldRow {
  bike: number;
  label: string;
  /** what holds it back, and on how much of the way */
  by: string;
  words: string;
  /** m from the bottom, by rising start; those that touch are one */
  stretches: Stretch[];
}

/** Where each limit binds on each bike; a bike that nothing holds back has one row that says so. */
export function heldRows(bikes: readonly BikeOnHill[], system: System): HeldRow[] {
  return bikes.flatMap(({ label, spans }, bike): HeldRow[] => {
    if (!spans) return [];
    const limits = [...new Set(spans.map(({ limit }) => limit))];
    if (limits.length === 0) return [{ bike, label, by: 'nothing', words: 'nothing holds it back', stretches: [] }];
    return limits.map((limit) => {
      const stretches = joinedSpans(spans, limit);
      return {
        bike,
        label,
        by: HELD_BY[limit],
        words: `${HELD_BY[limit]}, ${formatQuantity(lengthOf(stretches), 'distance', system)}`,
        stretches,
      };
    });
  });
}

/** Most points of which words or a table tell. */
const MOST_POINTS = 9;

/** The points of a hill that lie closest to even parts of it, by index: its bottom is left out, its top is in. */
export function evenPoints(distance: Float64Array): number[] {
  const length = distance.at(-1) ?? 0;
  const parts = Math.min(MOST_POINTS, distance.length - 1);
  const closest = (metres: number): number =>
    distance.reduce(
      (best, each, i) => (Math.abs(each - metres) < Math.abs((distance[best] ?? 0) - metres) ? i : best),
      0,
    );
  return [...new Set(Array.from({ length: parts }, (_, i) => closest((length * (i + 1)) / parts)))].filter(
    (i) => i > 0,
  );
}

/** A ride along a profile, of which more is known than of one on one grade; nothing where it does not get to the top. */
export const alongProfile = (ride: StagedClimb | undefined): ProfileRide | undefined =>
  ride && 'spans' in ride && Number.isFinite(ride.time) ? (ride as ProfileRide) : undefined;

/** A hill as it climbs, and below it a row for each bike and what holds it back, over the same distances. */
export function ProfileFigure(props: ProfileChartProps) {
  return (
    <figure>
      <figcaption>
        {props.bikes ? 'The hill, and where on it something holds a bike back.' : 'The hill in pieces.'}
      </figcaption>
      <ProfileChart {...props} />
    </figure>
  );
}

function ProfileChart({ profile, bikes = [], answer, system }: ProfileChartProps) {
  const distance = [...profile.distance];
  const height = [...profile.height];
  const length = distance.at(-1) ?? 1;
  const low = Math.min(...height);
  const top = Math.max(...height, low + length / 100);
  const headroom = 1.06 * (top - low);
  const px = (metres: number): number => (100 * metres) / length;
  const py = (metres: number): number => 100 - (100 * (metres - low)) / headroom;
  const inPlotX = (metres: number): number => LEFT + ((WIDE - LEFT) * metres) / length;
  const line = distance.map((metres, i) => [px(metres), py(height[i] ?? 0)] as const);
  const rows = heldRows(bikes, system);
  const text = (metres: number, kind: 'distance' | 'height'): string => formatQuantity(metres, kind, system);
  return (
    <>
      <Plot
        description={`${answer ? `${answer}. ` : ''}Height above the bottom: ${evenPoints(profile.distance)
          .map((i) => `${text(height[i] ?? 0, 'height')} after ${text(distance[i] ?? 0, 'distance')}`)
          .join(', ')}.`}
        height={170}
        right={WIDE}
        x={{ ...axisTicks(length, 'distance', system, 5), at: inPlotX }}
        y={{
          ...axisTicks(top, 'height', system, 4, low),
          at: (metres) => TOP + ((BOTTOM - TOP) * py(metres)) / 100,
        }}
        curves={
          <g class="six">
            <path class="band" d={`${path([...line, [100, 100], [0, 100]])}Z`} />
            <path class="curve" d={path(line)} />
          </g>
        }
      >
        {null}
      </Plot>
      {rows.length > 0 && (
        <svg
          class="chart"
          width="100%"
          height={ROW * rows.length}
          role="img"
          aria-label={`What holds each bike back: ${rows.map((row) => rowText(row, system)).join('; ')}.`}
        >
          {rows.map(({ bike, label, words, stretches }, i) => {
            const y = ROW * i;
            return (
              <g key={`${bike} ${words}`} class={SERIES[bike % SERIES.length]}>
                <text class="key" x={percent(LEFT / 100)} y={y + 13}>
                  <tspan class="value">{shorten(label)}</tspan> {words}
                </text>
                <line class="grid" x1={percent(LEFT / 100)} x2={percent(WIDE / 100)} y1={y + 23} y2={y + 23} />
                {stretches.map(({ from, to }) => (
                  <rect
                    key={from}
                    class="bar"
                    x={percent(inPlotX(from) / 100)}
                    y={y + 18}
                    width={percent(Math.max(SHORTEST, inPlotX(to) - inPlotX(from)) / 100)}
                    height="10"
                  />
                ))}
              </g>
            );
          })}
        </svg>
      )}
    </>
  );
}

/** A row in words, with its first stretches. */
function rowText({ label, words, stretches }: HeldRow, system: System): string {
  const text = (metres: number): string => formatQuantity(metres, 'distance', system);
  const shown = stretches.slice(0, 6).map(({ from, to }) => `${text(from)} to ${text(to)}`);
  const more = stretches.length > shown.length ? ` and ${stretches.length - shown.length} more` : '';
  return `${label}, ${words}${shown.length > 0 ? `: ${shown.join(', ')}${more}` : ''}`;
}

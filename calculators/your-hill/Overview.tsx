import { LEFT, TOP } from '../parts/Plot.tsx';
import { percent } from '../parts/scale.ts';
import { type Drawn, RIGHT, TrackPlot, way } from './TrackPlot.tsx';
import type { Picked } from './useFindings.ts';

interface Props extends Omit<Drawn, 'window'> {
  climbs: readonly { from: number; to: number }[];
  stretch: Picked | null;
  onPick: (climb: number) => void;
}

/** Of the width of a chart, what a number takes on a phone. */
const NUMBER_ROOM = 0.06;

/** Which of some places can be numbered without their numbers lying on each other: `first` in any case, the others from the left. */
function apart(places: readonly number[], room: number, first: number): number[] {
  const kept = places[first] === undefined ? [] : [first];
  places.forEach((place, i) => {
    if (kept.every((other) => Math.abs((places[other] ?? 0) - place) >= room)) kept.push(i);
  });
  return kept;
}

/** The whole recording, with the climbs that were found, by their numbers. A click on one picks it; for the keyboard there is the list. */
export function Overview({ track, height, system, description, climbs, stretch, onPick }: Props) {
  const window = { low: 0, high: way(track, track.distance.length - 1) };
  const at = (metres: number): string => percent((LEFT + ((RIGHT - LEFT) * metres) / window.high) / 100);
  const middles = climbs.map(({ from, to }) => (way(track, from) + way(track, to)) / 2);
  const numbered = apart(middles, NUMBER_ROOM * window.high, stretch?.climb ?? -1);
  return (
    <TrackPlot
      {...{ track, height, window, system, description }}
      chartHeight={190}
      marks={(x) => (
        <>
          {climbs.map(({ from, to }, i) => (
            // biome-ignore lint/a11y/noStaticElementInteractions: the list beside it does the same by keyboard
            <rect
              key={from}
              class={stretch?.climb === i ? 'climb picked' : 'climb'}
              x={x(way(track, from))}
              width={x(way(track, to)) - x(way(track, from))}
              y="0"
              height="100"
              onClick={() => onPick(i)}
            />
          ))}
          {stretch && stretch.climb < 0 && (
            <rect
              class="climb picked"
              x={x(way(track, stretch.from))}
              width={x(way(track, stretch.to)) - x(way(track, stretch.from))}
              y="0"
              height="100"
            />
          )}
        </>
      )}
    >
      {numbered.map((i) => (
        <text
          key={i}
          class={stretch?.climb === i ? 'key number picked' : 'key number'}
          x={at(middles[i] ?? 0)}
          y={percent(TOP / 100)}
          dy="-3"
          text-anchor="middle"
        >
          {i + 1}
        </text>
      ))}
    </TrackPlot>
  );
}

import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Track } from '../model/index.ts';
import { BOTTOM, LEFT, Plot, path, TOP } from '../parts/Plot.tsx';
import { percent } from '../parts/scale.ts';
import type { System } from '../quantities/index.ts';
import { drawnLines, gapsIn, heightsOf, ticksBetween, type Window } from './drawn.ts';
import { type End, moveEnd, type Stretch, stepEnd } from './stretch.ts';
import { endText } from './words.ts';

const RIGHT = 98;
/** m that an arrow key moves an end, and a page key. */
const STEP = 10;
const LEAP = 100;

interface Drawn {
  track: Track;
  /** m, mended and smoothed */
  height: Float64Array;
  window: Window;
  system: System;
  description: string;
}

interface OverviewProps extends Omit<Drawn, 'window'> {
  climbs: readonly { from: number; to: number }[];
  stretch: (Stretch & { climb: number }) | null;
  onPick: (climb: number) => void;
}

const way = (track: Track, index: number): number => track.distance[index] ?? 0;

/** Axes and the line of a profile. `marks` lie below the line and use the same scale. */
function ProfilePlot({
  track,
  height,
  window,
  system,
  description,
  chartHeight,
  marks,
  children,
}: Drawn & {
  chartHeight: number;
  marks: (x: (metres: number) => number) => preact.ComponentChildren;
  children?: preact.ComponentChildren;
}) {
  const { lines, heights, gaps } = useMemo(() => {
    const drawn = drawnLines(track.distance, height, track.breaks, window);
    return { lines: drawn, heights: heightsOf(drawn), gaps: gapsIn(track.distance, height, track.breaks) };
  }, [track, height, window.low, window.high]);
  const span = window.high - window.low;
  const x = (metres: number): number => (100 * (metres - window.low)) / span;
  const y = (metres: number): number => 100 - (100 * (metres - heights.low)) / (heights.high - heights.low);
  return (
    <Plot
      description={description}
      height={chartHeight}
      right={RIGHT}
      x={{
        ...ticksBetween(window, 'distance', system, 5),
        at: (metres) => LEFT + ((RIGHT - LEFT) * x(metres)) / 100,
      }}
      y={{ ...ticksBetween(heights, 'height', system, 4), at: (metres) => TOP + ((BOTTOM - TOP) * y(metres)) / 100 }}
      curves={
        <>
          {marks(x)}
          {lines.map((line) => {
            const points = line.map(([along, high]) => [x(along), y(high)] as const);
            const [first, last] = [points[0]?.[0] ?? 0, points.at(-1)?.[0] ?? 0];
            return (
              <g key={first}>
                <path class="ground" d={`${path(points)}L${last.toFixed(2)} 100L${first.toFixed(2)} 100Z`} />
                <path class="road" d={path(points)} />
              </g>
            );
          })}
          {gaps
            .filter((metres) => metres > window.low && metres < window.high)
            .map((metres) => (
              <path key={metres} class="gap" d={`M${x(metres)} 0V100`} />
            ))}
        </>
      }
    >
      {children}
    </Plot>
  );
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
export function Overview({ track, height, system, description, climbs, stretch, onPick }: OverviewProps) {
  const window = { low: 0, high: way(track, track.distance.length - 1) };
  const at = (metres: number): string => percent((LEFT + ((RIGHT - LEFT) * metres) / window.high) / 100);
  const middles = climbs.map(({ from, to }) => (way(track, from) + way(track, to)) / 2);
  const numbered = apart(middles, NUMBER_ROOM * window.high, stretch?.climb ?? -1);
  return (
    <ProfilePlot
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
    </ProfilePlot>
  );
}

interface CloseUpProps extends Omit<Drawn, 'window'> {
  stretch: Stretch;
  /** an end is being moved */
  moving: boolean;
  onMove: (next: Stretch, how: 'drag' | 'key') => void;
  onEnd: () => void;
}

/** Room on either side of a stretch, as a share of it, and the least of it, m. */
const ROOM = 0.3;
const LEAST_ROOM = 150;

function windowAround(track: Track, { from, to }: Stretch): Window {
  const [low, high] = [way(track, from), way(track, to)];
  const room = Math.max(ROOM * (high - low), LEAST_ROOM);
  return { low: Math.max(0, low - room), high: Math.min(way(track, track.distance.length - 1), high + room) };
}

/** The picked stretch and what lies around it, with a handle at either end. */
export function CloseUp({ track, height, system, description, stretch, moving, onMove, onEnd }: CloseUpProps) {
  const [dragged, setDragged] = useState<End | null>(null);
  // what is shown stays as it is while an end moves within it: a road that slides away under a finger cannot be hit
  const shown = useRef(windowAround(track, stretch));
  const isOutside = way(track, stretch.from) < shown.current.low || way(track, stretch.to) > shown.current.high;
  if (!moving || isOutside) shown.current = windowAround(track, stretch);
  const window = shown.current;
  const frame = useRef<HTMLDivElement>(null);
  const shareOf = (metres: number): number => (metres - window.low) / (window.high - window.low);
  const clamped = (metres: number): number => Math.max(window.low, Math.min(window.high, metres));

  const placeUnder = ({ clientX }: PointerEvent): number => {
    const { left, width } = frame.current?.getBoundingClientRect() ?? { left: 0, width: 1 };
    const share = ((clientX - left) / width - LEFT / 100) / ((RIGHT - LEFT) / 100);
    return window.low + Math.max(0, Math.min(1, share)) * (window.high - window.low);
  };
  const stop = (): void => {
    if (!dragged) return;
    setDragged(null);
    onEnd();
  };

  const handle = (end: End) => {
    const index = end === 'start' ? stretch.from : stretch.to;
    const metres = way(track, index);
    const last = way(track, track.distance.length - 1);
    return (
      <Handle
        key={end}
        end={end}
        share={shareOf(clamped(metres))}
        metres={metres}
        last={last}
        text={endText(end, metres, height[index] ?? Number.NaN, system)}
        isDragged={dragged === end}
        onGrip={() => setDragged(end)}
        onDrag={(event) => onMove(moveEnd(track.distance, stretch, end, placeUnder(event)), 'drag')}
        onDrop={stop}
        onStep={(by) => onMove(stepEnd(track.distance, stretch, end, by), 'key')}
        onJump={(place) => onMove(moveEnd(track.distance, stretch, end, place), 'key')}
      />
    );
  };

  return (
    <div class="close-up" ref={frame}>
      <ProfilePlot
        {...{ track, height, window, system, description }}
        chartHeight={230}
        marks={(x) => (
          <rect
            class="climb picked"
            x={x(clamped(way(track, stretch.from)))}
            width={Math.max(0, x(clamped(way(track, stretch.to))) - x(clamped(way(track, stretch.from))))}
            y="0"
            height="100"
          />
        )}
      />
      {handle('start')}
      {handle('top')}
    </div>
  );
}

interface HandleProps {
  end: End;
  /** where it is in the plot, 0 to 1 */
  share: number;
  /** m along the way, and of the whole */
  metres: number;
  last: number;
  text: string;
  isDragged: boolean;
  onGrip: () => void;
  onDrag: (event: PointerEvent) => void;
  onDrop: () => void;
  onStep: (by: number) => void;
  onJump: (metres: number) => void;
}

/** An end of the stretch: a line over the profile and a grip that mouse, finger and keys move. */
function Handle({ end, share, metres, last, text, isDragged, onGrip, onDrag, onDrop, onStep, onJump }: HandleProps) {
  const frame = useRef(0);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  const keys: Readonly<Record<string, () => void>> = {
    ArrowRight: () => onStep(STEP),
    ArrowUp: () => onStep(STEP),
    ArrowLeft: () => onStep(-STEP),
    ArrowDown: () => onStep(-STEP),
    PageUp: () => onStep(LEAP),
    PageDown: () => onStep(-LEAP),
    Home: () => onJump(0),
    End: () => onJump(last),
  };
  return (
    <div class={`handle ${end}`} style={{ left: percent((LEFT + (RIGHT - LEFT) * share) / 100) }}>
      <span class="handle-line" aria-hidden="true" />
      <div
        class="grip"
        role="slider"
        tabIndex={0}
        aria-label={end === 'start' ? 'Start of the climb' : 'Top of the climb'}
        aria-valuemin={0}
        aria-valuemax={Math.round(last)}
        aria-valuenow={Math.round(metres)}
        aria-valuetext={text}
        onKeyDown={(event) => {
          const isLong = event.shiftKey && event.key.startsWith('Arrow');
          const by = /Right|Up/.test(event.key) ? LEAP : -LEAP;
          const work = isLong ? () => onStep(by) : keys[event.key];
          if (!work || event.ctrlKey || event.altKey || event.metaKey) return;
          event.preventDefault();
          work();
        }}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          event.currentTarget.focus({ preventScroll: true });
          onGrip();
        }}
        onPointerMove={(event) => {
          if (!isDragged) return;
          cancelAnimationFrame(frame.current);
          // of several moves in a frame the last one counts
          frame.current = requestAnimationFrame(() => onDrag(event));
        }}
        onPointerUp={onDrop}
        onPointerCancel={onDrop}
        onLostPointerCapture={onDrop}
      >
        <span aria-hidden="true">{end === 'start' ? 'Start' : 'Top'}</span>
      </div>
    </div>
  );
}

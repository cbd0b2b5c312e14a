import { useRef, useState } from 'preact/hooks';
import { LEFT } from '../parts/Plot.tsx';
import { opened, windowAfter, windowAround } from './closeUp.ts';
import type { Window } from './drawn.ts';
import { EndHandle } from './EndHandle.tsx';
import { type End, moveEnd, type Stretch, stepEnd } from './stretch.ts';
import { type Drawn, RIGHT, TrackPlot, way } from './TrackPlot.tsx';
import { useFrames } from './useFrames.ts';
import { endText } from './words.ts';

interface Props extends Omit<Drawn, 'window'> {
  stretch: Stretch;
  /** an end is being moved */
  moving: boolean;
  onMove: (next: Stretch, how: 'drag' | 'key') => void;
  onEnd: () => void;
}

/** The picked stretch and what lies around it, with a handle at either end. */
export function CloseUp({ track, height, system, description, stretch, moving, onMove, onEnd }: Props) {
  const { distance } = track;
  const window = useWindow(distance, stretch, moving);
  const frame = useRef<HTMLDivElement>(null);
  const last = way(track, distance.length - 1);
  const shareOf = (metres: number): number =>
    Math.max(0, Math.min(1, (metres - window.shown.low) / (window.shown.high - window.shown.low)));

  const [dragged, setDragged] = useState<End | null>(null);
  const came = useRef(stretch);
  /** where the pointer is, as a share of the plot, 0 to 1 or beyond */
  const pointer = useRef(0.5);
  const point = ({ clientX }: PointerEvent): void => {
    const { left, width } = frame.current?.getBoundingClientRect() ?? { left: 0, width: 1 };
    pointer.current = ((clientX - left) / width - LEFT / 100) / ((RIGHT - LEFT) / 100);
  };
  // a handle that is held against an edge opens the window there, frame by frame
  const moved = useRef(stretch);
  moved.current = stretch;
  useFrames(dragged !== null, () => {
    if (!dragged) return;
    const { low, high } = window.openTowards(pointer.current);
    const place = low + Math.max(0, Math.min(1, pointer.current)) * (high - low);
    const next = moveEnd(distance, moved.current, dragged, place);
    const end = dragged === 'start' ? 'from' : 'to';
    if (next[end] !== moved.current[end]) onMove(next, 'drag');
  });
  const drop = (): void => {
    if (!dragged) return;
    setDragged(null);
    onEnd();
  };

  const handle = (end: End) => {
    const index = end === 'start' ? stretch.from : stretch.to;
    const metres = way(track, index);
    return (
      <EndHandle
        key={end}
        end={end}
        share={shareOf(metres)}
        metres={metres}
        last={last}
        text={endText(end, metres, height[index] ?? Number.NaN, system)}
        isDragged={dragged === end}
        onGrip={(event) => {
          point(event);
          came.current = stretch;
          setDragged(end);
        }}
        onDrag={point}
        onDrop={drop}
        onTakeBack={() => {
          onMove(came.current, 'drag');
          drop();
        }}
        onStep={(by) => onMove(stepEnd(distance, stretch, end, by), 'key')}
        onJump={(place) => onMove(moveEnd(distance, stretch, end, place), 'key')}
      />
    );
  };

  const [from, to] = [shareOf(way(track, stretch.from)), shareOf(way(track, stretch.to))];
  return (
    <div class="close-up" ref={frame}>
      <TrackPlot
        {...{ track, height, window: window.shown, system, description }}
        chartHeight={230}
        marks={() => <rect class="climb picked" x={100 * from} width={100 * (to - from)} y="0" height="100" />}
      />
      {handle('start')}
      {handle('top')}
    </div>
  );
}

/** What the close-up shows: it stays while an end moves, opens where a handle is held against its edge, and follows what is picked. */
function useWindow(
  distance: Float64Array,
  stretch: Stretch,
  moving: boolean,
): { shown: Window; openTowards: (share: number) => Window } {
  const [, drawAnew] = useState(0);
  const shown = useRef<Window>(windowAround(distance, stretch));
  const { from, to, own } = stretch;
  const isOutside = (distance[from] ?? 0) < shown.current.low || (distance[to] ?? 0) > shown.current.high;
  if (!own) shown.current = windowAround(distance, stretch);
  else if (!moving || isOutside) shown.current = windowAfter(shown.current, distance, stretch);
  return {
    shown: shown.current,
    openTowards: (share) => {
      const next = opened(shown.current, distance, share);
      if (next.low !== shown.current.low || next.high !== shown.current.high) drawAnew((n) => n + 1);
      shown.current = next;
      return next;
    },
  };
}

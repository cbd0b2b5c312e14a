import { LEFT } from '../parts/Plot.tsx';
import { percent } from '../parts/scale.ts';
import type { End } from './stretch.ts';
import { RIGHT } from './TrackPlot.tsx';

/** m that an arrow key moves an end, and a page key. */
const STEP = 10;
const LEAP = 100;

interface Props {
  end: End;
  /** where it is in the plot, 0 to 1 */
  share: number;
  /** m along the way, and of the whole */
  metres: number;
  last: number;
  text: string;
  isDragged: boolean;
  onGrip: (event: PointerEvent) => void;
  onDrag: (event: PointerEvent) => void;
  onDrop: () => void;
  /** what the drag did is taken back */
  onTakeBack: () => void;
  onStep: (by: number) => void;
  onJump: (metres: number) => void;
}

/** An end of the stretch: a line over the profile and a grip that mouse, finger and keys move. */
export function EndHandle({ end, share, metres, last, text, isDragged, ...on }: Props) {
  const keys: Readonly<Record<string, () => void>> = {
    ArrowRight: () => on.onStep(STEP),
    ArrowUp: () => on.onStep(STEP),
    ArrowLeft: () => on.onStep(-STEP),
    ArrowDown: () => on.onStep(-STEP),
    PageUp: () => on.onStep(LEAP),
    PageDown: () => on.onStep(-LEAP),
    Home: () => on.onJump(0),
    End: () => on.onJump(last),
    ...(isDragged ? { Escape: on.onTakeBack } : {}),
  };
  return (
    // styles lay it out: the line stands where the end is, the grip beside it where the chart ends
    <div class={`handle ${end}`} style={{ '--at': percent((LEFT + (RIGHT - LEFT) * share) / 100) }}>
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
          const work = isLong ? () => on.onStep(by) : keys[event.key];
          if (!work || event.ctrlKey || event.altKey || event.metaKey) return;
          event.preventDefault();
          work();
        }}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          event.currentTarget.focus({ preventScroll: true });
          on.onGrip(event);
        }}
        onPointerMove={(event) => {
          if (isDragged) on.onDrag(event);
        }}
        onPointerUp={on.onDrop}
        onPointerCancel={on.onDrop}
        onLostPointerCapture={on.onDrop}
      >
        <span aria-hidden="true">{end === 'start' ? 'Start' : 'Top'}</span>
      </div>
    </div>
  );
}

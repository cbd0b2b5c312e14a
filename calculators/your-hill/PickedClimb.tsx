import { useRef, useState } from 'preact/hooks';
import type { Track } from '../model/index.ts';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { Below } from './Below.tsx';
import { CloseUp } from './CloseUp.tsx';
import { OwnField } from './OwnField.tsx';
import { boundsOf, type End, placeEnd, type Stretch } from './stretch.ts';
import type { Picked } from './useFindings.ts';
import type { RecordingHandle } from './useRecording.ts';
import { endText, wayText } from './words.ts';

interface Props {
  state: RecordingHandle;
  track: Track;
  height: Float64Array;
  stretch: Picked;
  tool: Tool;
}

/** The picked stretch: that it is the hill below, its line with a handle at either end, and fields for both. */
export function PickedClimb({ state, track, height, stretch, tool }: Props) {
  const { system } = tool.scenario;
  const textOf = (end: End): string => {
    const index = end === 'start' ? stretch.from : stretch.to;
    return endText(end, track.distance[index] ?? 0, height[index] ?? Number.NaN, system);
  };
  return (
    <section class="picked-climb" aria-labelledby="picked-title">
      <h3 id="picked-title">{stretch.climb < 0 ? 'Your own stretch' : `Climb ${stretch.climb + 1}`}</h3>
      <Below
        tool={tool}
        hill={state.hill}
        figures={state.figures}
        isBelow={state.isBelow}
        isClimb={stretch.climb >= 0}
        onPut={state.put}
      />
      <figure>
        <figcaption>
          {textOf('start')}. {textOf('top')}.
        </figcaption>
        <CloseUp
          track={track}
          height={height}
          system={system}
          description="The picked stretch and the road around it."
          stretch={stretch}
          moving={state.moving}
          onMove={state.move}
          onEnd={state.endMove}
        />
      </figure>
      <Ends track={track} stretch={stretch} tool={tool} onMove={(next) => state.move(next, 'key')} />
    </section>
  );
}

interface EndsProps {
  track: Track;
  stretch: Stretch;
  tool: Tool;
  onMove: (next: Stretch) => void;
}

/** Both ends as fields. What is written is taken as it is: the other end moves along where it is in the way, and says so. */
function Ends({ track: { distance }, stretch, tool, onMove }: EndsProps) {
  const { system } = tool.scenario;
  // half a number must not push the other end for good: each key counts from where both were when the field was entered
  const came = useRef(stretch);
  const [pushed, setPushed] = useState('');
  const placeOf = ({ from, to }: Stretch, end: End): number => distance[end === 'start' ? from : to] ?? 0;
  const write = (end: End, metres: number): void => {
    const next = placeEnd(distance, came.current, end, metres);
    const other = end === 'start' ? 'top' : 'start';
    const isPushed = placeOf(next, other) !== placeOf(came.current, other);
    setPushed(isPushed ? `The ${other} moved along, to ${wayText(placeOf(next, other), system)}.` : '');
    onMove(next);
  };
  return (
    <fieldset class="ends">
      <legend class="minor">Drag the ends, move them with the arrow keys, or write where they are</legend>
      <div class="fields">
        {(['start', 'top'] as const).map((end) => (
          <OwnField
            key={end}
            id={`stretch-${end}`}
            label={end === 'start' ? 'Start, along the way' : 'Top, along the way'}
            kind="distance"
            value={placeOf(stretch, end)}
            decimals={2}
            {...boundsOf(end, distance.at(-1) ?? 0)}
            system={system}
            onFocus={() => {
              came.current = stretch;
              setPushed('');
            }}
            onValue={(si) => write(end, si)}
          />
        ))}
      </div>
      <p class="behind" role="status">
        {pushed}
      </p>
    </fieldset>
  );
}

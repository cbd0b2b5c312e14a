import { useRef } from 'preact/hooks';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { formatNumber, formatQuantity } from '../quantities/index.ts';
import { Below } from './Below.tsx';
import { Calibration } from './Calibration.tsx';
import { CloseUp, Overview } from './ClimbChart.tsx';
import { ClimbFigures, Steepness } from './ClimbFigures.tsx';
import { ClimbList } from './ClimbList.tsx';
import { ElevationSettings } from './ElevationSettings.tsx';
import { Found } from './Found.tsx';
import { OwnField } from './OwnField.tsx';
import type { Given } from './Recording.tsx';
import { problemText, type Recording } from './reading/recording.ts';
import { moveEnd } from './stretch.ts';
import { type RecordingHandle, useRecording } from './useRecording.ts';
import { endText, partText } from './words.ts';

interface Props {
  tool: Tool;
  /** the last file that the reader gave; null where only a kept recording is to be shown */
  given: Given | null;
}

/** Reads a recording, shows what is in it, and makes the picked climb the hill of the calculator below. */
export function RecordingPanel({ tool, given }: Props) {
  const state = useRecording(tool, given);
  const { reading, recording, problem, aside } = state;
  const panel = useRef<HTMLDivElement>(null);
  /** a button that goes must not take the keyboard's place with it */
  const toChooser = (): void =>
    panel.current?.closest('.recording')?.querySelector<HTMLElement>('.choose input')?.focus();
  return (
    <div class="recording-panel" ref={panel}>
      {reading && (
        <div class="recording-progress">
          <label for="recording-progress">
            Reading {reading.file}: {formatNumber(100 * reading.progress)}&#8239;%
          </label>
          <progress id="recording-progress" max={1} value={reading.progress} />
          <button
            type="button"
            onClick={() => {
              toChooser();
              state.cancel();
            }}
          >
            Cancel
          </button>
        </div>
      )}
      {problem && (
        <p class="problem" role="alert">
          {problem}
          {recording && ' What was here before stays.'}
        </p>
      )}
      {aside && (
        <p class="recording-undo">
          <span>{aside}</span>{' '}
          <button
            type="button"
            onClick={() => {
              toChooser();
              state.undo();
            }}
          >
            Undo
          </button>
        </p>
      )}
      {recording && (
        <File
          state={state}
          recording={recording}
          tool={tool}
          onForget={() => {
            toChooser();
            state.forget();
          }}
        />
      )}
      <p class="sr-only" role="status">
        {state.said}
      </p>
    </div>
  );
}

interface FileProps {
  state: RecordingHandle;
  recording: Recording;
  tool: Tool;
  onForget: () => void;
}

/** The file, its parts, and what is in the chosen one. */
function File({ state, recording, tool, onForget }: FileProps) {
  const { file, format, parts, problems, notes, cutShort } = recording;
  const { choice, part, analysis, trouble } = state;
  const { system } = tool.scenario;
  return (
    <>
      <div class="recording-file">
        <p>
          <strong>{file}</strong>
          {format && `, ${format.toUpperCase()}`}
          {part && <span class={parts.length > 1 ? 'print-only' : undefined}>. {partText(part, system)}</span>}
        </p>
        <button type="button" onClick={onForget}>
          Forget it
        </button>
      </div>
      <p class="behind no-print">
        {trouble || 'It stays on this device, and is here at your next visit, until you forget it.'} Where it was ridden
        was dropped after reading; a link holds lengths and heights only.
      </p>
      {cutShort && <p class="caution">The file is cut short: what is whole was read.</p>}
      {problems.length > 0 && (
        <details class="fold">
          <summary>Problems in the file: {formatNumber(problems.length)}</summary>
          <ul class="remarks">
            {problems.map((each) => (
              <li key={problemText(each)}>{problemText(each)}</li>
            ))}
          </ul>
        </details>
      )}
      {parts.length > 1 && (
        <fieldset class="parts">
          <legend>In this file</legend>
          {parts.map((each, i) => (
            <label class="climb-choice" key={`${each.name} ${i}`}>
              <input type="radio" name="part" checked={choice.part === i} onChange={() => state.choosePart(i)} />
              <span class="climb-words">{partText(each, system)}</span>
            </label>
          ))}
        </fieldset>
      )}
      {part && !analysis && <p class="waiting">Looking for climbs…</p>}
      {part && analysis && <Part state={state} part={part} analysis={analysis} notes={notes} tool={tool} />}
    </>
  );
}

interface PartProps {
  state: RecordingHandle;
  part: NonNullable<RecordingHandle['part']>;
  analysis: NonNullable<RecordingHandle['analysis']>;
  notes: readonly string[];
  tool: Tool;
}

function Part({ state, part, analysis, notes, tool }: PartProps) {
  const { choice, stretch, figures, hill, difference, isBelow } = state;
  const { track } = part;
  const { height, climbs } = analysis;
  const { system } = tool.scenario;
  const hasHeights = height.some(Number.isFinite);
  const last = track.distance.at(-1) ?? 0;
  const found = (
    <details class="fold found">
      <summary>The whole way: height gained, mended heights, pauses</summary>
      <Found part={part} analysis={analysis} choice={choice} system={system} />
      {hasHeights && <ElevationSettings choice={choice} system={system} onChange={state.chooseElevation} />}
      {notes.length > 0 && (
        <ul class="remarks">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </details>
  );
  if (!hasHeights)
    return (
      <>
        <p class="caution">This recording has no heights: without them no climb can be found in it.</p>
        {found}
      </>
    );
  const placeOf = (index: number): number => track.distance[index] ?? 0;
  return (
    <>
      <figure class="overview">
        <figcaption>The whole way, and the climbs on it</figcaption>
        <Overview
          track={track}
          height={height}
          system={system}
          description={`Height along the whole way of ${formatQuantity(last, 'distance', system)}, with ${formatNumber(climbs.length)} climbs. They are listed below.`}
          climbs={climbs}
          stretch={stretch}
          onPick={state.pickClimb}
        />
      </figure>
      {found}
      <div class="climbs-and-picked">
        <ClimbList
          part={part}
          analysis={analysis}
          picked={stretch?.climb}
          system={system}
          onPick={state.pickClimb}
          onOwn={state.pickOwn}
        />
        {stretch && (
          <section class="picked-climb" aria-labelledby="picked-title">
            <h3 id="picked-title">{stretch.climb < 0 ? 'Your own stretch' : `Climb ${stretch.climb + 1}`}</h3>
            <Below scenario={tool.scenario} hill={hill} difference={difference} isBelow={isBelow} onPut={state.put} />
            <figure>
              <figcaption>
                {endText('start', placeOf(stretch.from), height[stretch.from] ?? Number.NaN, system)}.{' '}
                {endText('top', placeOf(stretch.to), height[stretch.to] ?? Number.NaN, system)}.
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
            <fieldset class="ends">
              <legend class="minor">Drag the ends, move them with the arrow keys, or write where they are</legend>
              <div class="fields">
                {(['start', 'top'] as const).map((end) => (
                  <OwnField
                    key={end}
                    id={`stretch-${end}`}
                    label={end === 'start' ? 'Start, along the way' : 'Top, along the way'}
                    kind="distance"
                    value={placeOf(end === 'start' ? stretch.from : stretch.to)}
                    decimals={2}
                    min={0}
                    max={last}
                    system={system}
                    onValue={(si) => state.move(moveEnd(track.distance, stretch, end, si), 'key')}
                  />
                ))}
              </div>
            </fieldset>
            {figures && (
              <>
                <ClimbFigures figures={figures.figures} system={system} />
                <Steepness classes={figures.steepness} system={system} />
              </>
            )}
            <Calibration tool={tool} ask={state.ask} analysis={analysis} stretch={stretch} moving={state.moving} />
          </section>
        )}
      </div>
    </>
  );
}

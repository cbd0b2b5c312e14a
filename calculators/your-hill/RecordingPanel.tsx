import { useRef } from 'preact/hooks';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { formatNumber } from '../quantities/index.ts';
import { RecordedFile } from './RecordedFile.tsx';
import type { Given } from './Recording.tsx';
import { useRecording } from './useRecording.ts';

interface Props {
  tool: Tool;
  /** the last file that the reader gave; null where only a kept recording is to be shown */
  given: Given | null;
}

/** Reads a recording, shows what is in it, and makes the picked climb the hill of the calculator below. */
export function RecordingPanel({ tool, given }: Props) {
  const state = useRecording(tool, given);
  const { reading, recording, problem, cancelled, aside } = state;
  const panel = useRef<HTMLDivElement>(null);
  /** A button that goes must not take the keyboard's place with it. */
  const leaving = (work: () => void) => (): void => {
    panel.current?.closest('.recording')?.querySelector<HTMLElement>('.choose input')?.focus();
    work();
  };
  const stays = recording ? ' What was here before stays.' : '';
  return (
    <div class="recording-panel" ref={panel}>
      {reading && (
        <div class="recording-progress">
          <label for="recording-progress">
            Reading {reading.file}: {formatNumber(100 * reading.progress)}&#8239;%
          </label>
          <progress id="recording-progress" max={1} value={reading.progress} />
          <button type="button" onClick={leaving(state.cancel)}>
            Cancel
          </button>
        </div>
      )}
      {problem && (
        <p class="problem" role="alert">
          {problem}
          {stays}
        </p>
      )}
      {cancelled && (
        <p class="behind" role="status">
          Reading {cancelled} was cancelled.{stays}
        </p>
      )}
      {aside && (
        <p class="recording-undo">
          <span>{aside}</span>{' '}
          <button type="button" onClick={leaving(state.undo)}>
            Undo
          </button>
        </p>
      )}
      {recording && <RecordedFile state={state} recording={recording} tool={tool} onForget={leaving(state.forget)} />}
      <p class="sr-only" role="status">
        {state.said}
      </p>
    </div>
  );
}

import type { Handle as Tool } from '../parts/useScenario.ts';
import { formatNumber } from '../quantities/index.ts';
import { PanelFold } from './PanelFold.tsx';
import { RecordedPart } from './RecordedPart.tsx';
import { problemText, type Recording } from './reading/recording.ts';
import type { RecordingHandle } from './useRecording.ts';
import { partText } from './words.ts';

interface Props {
  state: RecordingHandle;
  recording: Recording;
  tool: Tool;
  onForget: () => void;
}

/** The file, its parts, and what is in the chosen one. */
export function RecordedFile({ state, recording, tool, onForget }: Props) {
  const { file, format, parts, problems, notes, cutShort } = recording;
  const { choice, part, analysis, stretch, trouble } = state;
  const { system } = tool.scenario;
  if (state.isFolded) {
    // whether it is the hill of the link is not known yet
    if (part && state.hill === undefined && (!analysis || stretch)) return <p class="waiting">One moment…</p>;
    return (
      <p class="recording-folded">
        <span>
          The hill below came with the link. Your recording <strong>{file}</strong> is kept on this device.
        </span>{' '}
        <button type="button" onClick={state.open}>
          Open it
        </button>
      </p>
    );
  }
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
      {trouble && (
        <p class="caution no-print" role="status">
          {trouble}
        </p>
      )}
      {cutShort && <p class="caution">The file is cut short: what is whole was read.</p>}
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
      {part && analysis && <RecordedPart state={state} part={part} analysis={analysis} notes={notes} tool={tool} />}
      {problems.length > 0 && (
        <PanelFold words={`Problems in the file: ${formatNumber(problems.length)}`}>
          <ul class="remarks">
            {problems.map((each) => (
              <li key={problemText(each)}>{problemText(each)}</li>
            ))}
          </ul>
        </PanelFold>
      )}
      <p class="behind no-print">
        {!trouble && 'It stays on this device, and is here at your next visit, until you forget it. '}Where it was
        ridden was dropped after reading; a link holds lengths and heights only.
      </p>
    </>
  );
}

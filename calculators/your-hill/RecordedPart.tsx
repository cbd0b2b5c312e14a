import type { Handle as Tool } from '../parts/useScenario.ts';
import type { Analysis } from './analysis.ts';
import { Calibration } from './Calibration.tsx';
import { ClimbFigures, Steepness } from './ClimbFigures.tsx';
import { ClimbList } from './ClimbList.tsx';
import { Closeness } from './Closeness.tsx';
import { ElevationSettings } from './ElevationSettings.tsx';
import { Found } from './Found.tsx';
import { mendedLine } from './found-words.ts';
import { Overview } from './Overview.tsx';
import { PanelFold } from './PanelFold.tsx';
import { PickedClimb } from './PickedClimb.tsx';
import type { Part } from './reading/recording.ts';
import type { RecordingHandle } from './useRecording.ts';
import { count, wayText } from './words.ts';

interface Props {
  state: RecordingHandle;
  part: Part;
  analysis: Analysis;
  notes: readonly string[];
  tool: Tool;
}

/** What is in a ride or route: its climbs first, the picked one, and in folds what stands behind both. */
export function RecordedPart({ state, part, analysis, notes, tool }: Props) {
  const { choice, stretch, figures, hill } = state;
  const { track } = part;
  const { height, climbs, mended } = analysis;
  const { system } = tool.scenario;
  const hasHeights = height.some(Number.isFinite);
  const found = (
    <PanelFold class="found" words="The whole way: height gained, mended heights, pauses" open={!hasHeights}>
      <Found part={part} analysis={analysis} choice={choice} system={system} />
      {hasHeights && <ElevationSettings choice={choice} system={system} onChange={state.chooseElevation} />}
      {notes.length > 0 && (
        <ul class="remarks">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </PanelFold>
  );
  if (!hasHeights)
    return (
      <>
        <p class="caution">This recording has no heights: without them no climb can be found in it.</p>
        {found}
      </>
    );
  return (
    <>
      <div class="climbs-and-picked">
        <ClimbList
          part={part}
          analysis={analysis}
          picked={stretch?.climb}
          system={system}
          onPick={state.pickClimb}
          onOwn={state.pickOwn}
        />
        {stretch && <PickedClimb state={state} track={track} height={height} stretch={stretch} tool={tool} />}
        <figure class="overview">
          <figcaption>The whole way, and the climbs on it</figcaption>
          <Overview
            track={track}
            height={height}
            system={system}
            description={`Height along the whole way of ${wayText(track.distance.at(-1) ?? 0, system)}, with ${count(climbs.length, 'climb')}. They are listed beside it.`}
            climbs={climbs}
            stretch={stretch}
            onPick={state.pickClimb}
          />
          {mended.length > 0 && <p class="behind">{mendedLine(mended, track, system)}</p>}
        </figure>
      </div>
      {stretch && figures && (
        <PanelFold class="stretch-figures" words="This stretch in figures, and how steep it is" open="wide">
          <div class="figures-and-steepness">
            <div>
              <ClimbFigures figures={figures.figures} system={system} />
            </div>
            <Steepness classes={figures.steepness} system={system} />
          </div>
          {hill && 'text' in hill && <Closeness scenario={tool.scenario} hill={hill} differences={state.differences} />}
        </PanelFold>
      )}
      {stretch && figures && (
        <Calibration tool={tool} state={state} analysis={analysis} figures={figures.figures} stretch={stretch} />
      )}
      {found}
    </>
  );
}

import { useEffect, useMemo, useState } from 'preact/hooks';
import { hillFromProfile, type Track } from '../model/index.ts';
import { climbOf, type Scenario } from '../scenario/index.ts';
import type { Analysis } from './analysis.ts';
import type { HillBelow, NoHill } from './below.ts';
import type { Differences } from './closeness.ts';
import type { Choice } from './keptRecording.ts';
import { reservesWithRider } from './reserves.ts';
import { climbOfStretch, type Stretch } from './stretch.ts';
import { useWorkbench } from './useWorkbench.ts';
import type { StretchFigures } from './workbench.ts';

/** A stretch and its place in the list of climbs, −1 for the reader's own. */
export type Picked = Stretch & { climb: number };

/**
 * What is found in a track as the reader chose to see it: climbs, the picked stretch and its figures, and that stretch as a hill. All of it
 * comes from the workbench, one from another.
 * @param moving an end is being moved: the last hill stays, so that the chart does not jump under a finger because of what stands over it
 */
export function useFindings(track: Track | undefined, choice: Choice, moving: boolean, scenario: Scenario) {
  const ask = useWorkbench();
  const [analysed, setAnalysed] = useState<{ track: Track; analysis: Analysis | undefined } | null>(null);
  // while heights are smoothed otherwise, what was found last stays; of another track nothing does
  const analysis = analysed && analysed.track === track ? analysed.analysis : undefined;
  useEffect(() => {
    if (track) ask({ is: 'track', track }, () => {});
  }, [track]);
  const { window, threshold } = choice;
  useEffect(() => {
    if (!track) return;
    const tell = (result: Analysis | undefined): void => setAnalysed({ track, analysis: result });
    return ask({ is: 'analysis', choice: { window, threshold } }, tell);
  }, [track, window, threshold]);

  const stretch = useMemo(
    () => (analysis && track ? pickedIn(analysis, track, choice.stretch) : null),
    [analysis, track, choice.stretch],
  );
  const [from, to] = [stretch?.from, stretch?.to];

  // figures follow an end that moves, as fast as they can be worked out
  const [figures, setFigures] = useState<StretchFigures | undefined>(undefined);
  useEffect(() => setFigures(undefined), [track]);
  useEffect(() => {
    if (!analysis || from === undefined || to === undefined) return;
    return ask({ is: 'figures', stretch: { from, to } }, setFigures);
  }, [analysis, from, to]);

  const [hill, setHill] = useState<HillBelow | NoHill | undefined>(undefined);
  useEffect(() => setHill(undefined), [track]);
  useEffect(() => {
    if (moving || !analysis || from === undefined || to === undefined) return;
    return ask({ is: 'hill', stretch: { from, to } }, setHill);
  }, [moving, analysis, from, to]);

  // how much pieces and smoothing change the time of the first bike, a moment after the answer
  const [differences, setDifferences] = useState<Differences | undefined>(undefined);
  useEffect(() => {
    setDifferences(undefined);
    if (!hill || !('text' in hill)) return;
    const climb = climbOf(scenario, hillFromProfile(hill.simple), 0);
    return ask({ is: 'differences', climb, reserves: reservesWithRider(scenario, 0) }, setDifferences);
  }, [hill, scenario]);

  return { ask, analysis, stretch, figures, hill, differences };
}

/** The stretch that is picked: the reader's own, else the climb that is most like what was chosen, else the hardest. */
function pickedIn({ climbs, hardest }: Analysis, { distance }: Track, chosen: Stretch | null): Picked | null {
  if (chosen?.own) return { ...chosen, climb: -1 };
  const climb = chosen ? climbOfStretch(distance, climbs, chosen) : hardest;
  const found = climbs[climb];
  if (found) return { ...found, own: false, climb };
  return chosen ? { ...chosen, own: true, climb: -1 } : null;
}

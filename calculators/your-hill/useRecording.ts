import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { GAIN_THRESHOLD, hillFromProfile, SMOOTHING_WINDOW, type Track } from '../model/index.ts';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { climbOf, inputOf } from '../scenario/index.ts';
import type { Analysis, ElevationChoice } from './analysis.ts';
import type { HillBelow, NoHill } from './below.ts';
import {
  type Choice,
  forgetKept,
  type Held,
  type Keeping,
  keepChoice,
  keepRecording,
  loadKept,
} from './keptRecording.ts';
import type { Given } from './Recording.tsx';
import { problemText, type Recording } from './reading/recording.ts';
import { useReading } from './reading/useReading.ts';
import { reservesWithRider } from './reserves.ts';
import { climbOfStretch, type Stretch } from './stretch.ts';
import { useWorkbench } from './useWorkbench.ts';
import { foundText } from './words.ts';
import type { StretchFigures } from './workbench.ts';

/** ms without a key after which a moved end becomes the hill below: not every step must be answered. */
const KEY_PAUSE = 300;
/** ms after the last change before it is kept. */
const KEEP_PAUSE = 500;

const START: Choice = { part: 0, window: SMOOTHING_WINDOW, threshold: GAIN_THRESHOLD, stretch: null };

/** What was taken away, and the words for it. */
interface PutAside {
  held: Held;
  words: string;
}

/** The recording on the page, what is found in it, and which of its stretches is the hill below. Views only show it. */
export function useRecording(tool: Tool, given: Given | null) {
  const reading = useReading();
  const [held, hold] = useState<Held | null>(null);
  const [aside, putAside] = useState<PutAside | null>(null);
  const [problem, setProblem] = useState('');
  const [said, say] = useState('');
  const [keeping, setKeeping] = useState<Keeping>({ kept: true });
  const [moving, setMoving] = useState(false);
  // a hill that came with a link stays until the reader gives a file or picks a stretch
  const mayPut = useRef(false);
  const announce = useRef(false);

  const { recording, choice = START } = held ?? {};
  const part = recording?.parts[choice.part];
  const track = part?.track;

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

  // kept on this device from an earlier visit
  useEffect(() => {
    if (given) return;
    loadKept().then((kept) => {
      if (!kept) return;
      mayPut.current = !new URLSearchParams(location.search).has('profile');
      hold((before) => before ?? kept);
    });
  }, []);

  useEffect(() => {
    if (!given) return;
    setProblem('');
    say('');
    reading.start(given.file);
  }, [given]);

  const keep = (next: Held): void => {
    keepRecording(next).then(setKeeping);
  };

  const { state } = reading;
  useEffect(() => {
    if (state.is !== 'read') return;
    const { recording: read } = state;
    if (read.parts.length === 0) {
      setProblem(unreadable(read));
      return;
    }
    const ride = read.parts.findIndex(({ kind }) => kind === 'ride');
    const next: Held = { recording: read, choice: { ...choice, part: Math.max(0, ride), stretch: null } };
    if (held) putAside({ held, words: `Put aside: ${held.recording.file}.` });
    mayPut.current = true;
    announce.current = true;
    hold(next);
    keep(next);
  }, [state]);

  const stretch = useMemo((): (Stretch & { climb: number }) | null => {
    if (!analysis || !track) return null;
    const { climbs, hardest } = analysis;
    const chosen = choice.stretch;
    if (chosen?.own) return { ...chosen, climb: -1 };
    const climb = chosen ? climbOfStretch(track.distance, climbs, chosen) : hardest;
    const found = climbs[climb];
    if (found) return { ...found, own: false, climb };
    return chosen ? { ...chosen, own: true, climb: -1 } : null;
  }, [analysis, track, choice.stretch]);

  useEffect(() => {
    if (!announce.current || !analysis || !part || !recording) return;
    announce.current = false;
    say(foundText(recording, part, analysis));
  }, [analysis]);

  // while an end moves, the last hill stays: the chart must not jump under a finger because of what stands over it
  const [cut, setCut] = useState<HillBelow | NoHill | undefined>(undefined);
  const hill = cut && 'text' in cut ? cut : undefined;
  useEffect(() => setCut(undefined), [track]);
  const [from, to] = [stretch?.from, stretch?.to];
  // they follow an end that moves, as fast as they can be worked out
  const [figures, setFigures] = useState<StretchFigures | undefined>(undefined);
  useEffect(() => setFigures(undefined), [track]);
  useEffect(() => {
    if (!analysis || from === undefined || to === undefined) return;
    return ask({ is: 'figures', stretch: { from, to } }, (next) => setFigures(next));
  }, [analysis, from, to]);
  useEffect(() => {
    if (moving || !analysis || from === undefined || to === undefined) return;
    return ask({ is: 'hill', stretch: { from, to } }, setCut);
  }, [moving, analysis, from, to]);
  // how much the few pieces change the time of the first bike, a moment after the answer
  const [difference, setDifference] = useState<number | undefined>(undefined);
  const { scenario } = tool;
  useEffect(() => {
    setDifference(undefined);
    if (!hill) return;
    const climb = climbOf(scenario, hillFromProfile(hill.simple), 0);
    return ask({ is: 'difference', climb, reserves: reservesWithRider(scenario, 0) }, setDifference);
  }, [hill, scenario]);
  const put = (): void => {
    if (hill) tool.change(({ edit }, before) => edit(before, 'profile', 0, hill.text));
  };
  useEffect(() => {
    if (hill && mayPut.current) put();
  }, [hill?.text]);

  const change = (next: Partial<Choice>): void =>
    hold((before) => before && { ...before, choice: { ...before.choice, ...next } });

  // what was chosen is kept a moment after the last change
  const kept = useRef<Choice | undefined>(undefined);
  useEffect(() => {
    if (!held) return;
    const isNew = kept.current !== undefined && kept.current !== held.choice;
    kept.current = held.choice;
    if (!isNew) return;
    const timer = setTimeout(() => void keepChoice(held.choice).then(setKeeping), KEEP_PAUSE);
    return () => clearTimeout(timer);
  }, [held]);

  const choose = (next: Stretch): void => {
    mayPut.current = true;
    change({ stretch: next });
  };
  const pause = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  return {
    reading: state.is === 'reading' ? state : null,
    cancel: reading.cancel,
    /** why the last file gave nothing; what was there before stays */
    problem,
    said,
    /** has something of the recording worked out */
    ask,
    recording,
    part,
    choice,
    analysis,
    /** the picked one; `climb` is its place in the list, −1 for the reader's own */
    stretch,
    /** of the picked stretch */
    figures,
    /** the picked stretch as a hill, or why it is none */
    hill: cut,
    difference,
    /** an end is being moved */
    moving,
    isBelow: hill !== undefined && inputOf(scenario, 'profile') === hill.text,
    put: (): void => {
      mayPut.current = true;
      put();
    },
    choosePart: (index: number): void => {
      mayPut.current = true;
      change({ part: index, stretch: null });
    },
    chooseElevation: (next: Partial<ElevationChoice>): void => change(next),
    pickClimb: (index: number): void => {
      const climb = analysis?.climbs[index];
      if (climb) choose({ ...climb, own: false });
    },
    /** Makes a stretch the reader's own: the picked one, else the whole way. */
    pickOwn: (): void => {
      if (stretch) choose({ from: stretch.from, to: stretch.to, own: true });
      else if (track) choose({ from: 0, to: track.distance.length - 1, own: true });
    },
    /** Moves an end. While it is dragged the hill below stays; it follows when that ends, or a moment after the last key. */
    move: (next: Stretch, how: 'drag' | 'key'): void => {
      clearTimeout(pause.current);
      setMoving(true);
      if (how === 'key') pause.current = setTimeout(() => setMoving(false), KEY_PAUSE);
      choose(next);
    },
    endMove: (): void => setMoving(false),
    /** what can be brought back */
    aside: aside?.words ?? '',
    /** Takes the recording off the page and off this device; the hill below stays. */
    forget: (): void => {
      if (!held) return;
      putAside({ held, words: `Forgotten: ${held.recording.file}. The hill below stays.` });
      hold(null);
      void forgetKept();
      say('Forgotten. It can be undone.');
    },
    undo: (): void => {
      if (!aside) return;
      putAside(held ? { held, words: `Put aside: ${held.recording.file}.` } : null);
      hold(aside.held);
      keep(aside.held);
      say('Brought back.');
    },
    trouble: keeping.kept ? '' : keeping.message,
  };
}

export type RecordingHandle = ReturnType<typeof useRecording>;

function unreadable({ problems }: Recording): string {
  return problems.map(problemText).join(' ') || 'There is no ride or route in this file.';
}

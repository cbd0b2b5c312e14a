import { useEffect, useRef, useState } from 'preact/hooks';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { inputOf } from '../scenario/index.ts';
import type { ElevationChoice } from './analysis.ts';
import type { HillBelow, NoHill } from './below.ts';
import type { OwnRide } from './keptRecording.ts';
import type { Given } from './Recording.tsx';
import { problemText, type Recording } from './reading/recording.ts';
import { useReading } from './reading/useReading.ts';
import type { Stretch } from './stretch.ts';
import { useFindings } from './useFindings.ts';
import { useHeld } from './useHeld.ts';
import { foundText } from './words.ts';

/** ms without a key after which a moved end becomes the hill below: not every step must be answered. */
const KEY_PAUSE = 300;

/** The recording on the page, what is found in it, and which of its stretches is the hill below. Views only show it. */
export function useRecording(tool: Tool, given: Given | null) {
  const file = useFile(given);
  const held = useHeld();
  const { recording, choice } = held;
  const part = recording?.parts[choice.part];
  const track = part?.track;
  const [said, say] = useState('');
  const moves = useMoves();
  const {
    ask,
    analysis,
    stretch,
    figures,
    hill: cut,
    differences,
  } = useFindings(track, choice, moves.moving, tool.scenario);
  const below = useBelow(tool, cut);

  useEffect(() => {
    if (given) return;
    held.load().then((isThere) => {
      if (isThere) below.found();
    });
  }, []);
  const announce = useRef(false);
  useEffect(() => {
    if (!file.read) return;
    announce.current = true;
    below.claim();
    held.take(file.read);
  }, [file.read]);
  useEffect(() => {
    if (!announce.current || !analysis || !part || !recording) return;
    announce.current = false;
    say(foundText(recording, part, analysis));
  }, [analysis]);
  const choose = (next: Stretch): void => {
    below.claim();
    held.change({ stretch: next });
  };

  return {
    reading: file.reading,
    cancel: file.cancel,
    /** why the last file gave nothing, or that it was given up; what was there before stays */
    problem: file.problem,
    cancelled: file.cancelled,
    said,
    /** has something of the recording worked out */
    ask,
    recording,
    part,
    choice,
    analysis,
    stretch,
    /** of the picked stretch */
    figures,
    /** the picked stretch as a hill, or why it is none */
    hill: cut,
    differences,
    /** an end is being moved */
    moving: moves.moving,
    isBelow: below.is,
    /** there is a recording, and the hill below came with a link: it waits until the reader opens it */
    isFolded: below.isFolded && recording !== undefined,
    open: below.open,
    put: (): void => {
      below.claim();
      below.put();
    },
    choosePart: (index: number): void => {
      below.claim();
      held.change({ part: index, stretch: null });
    },
    chooseElevation: (next: Partial<ElevationChoice>): void => held.change(next),
    sayOfRide: (ride: OwnRide): void => held.change({ ride }),
    pickClimb: (index: number): void => {
      const climb = analysis?.climbs[index];
      if (climb) choose({ from: climb.from, to: climb.to, own: false });
    },
    /** Makes a stretch the reader's own: the picked one, else the whole way. */
    pickOwn: (): void => {
      if (stretch) choose({ from: stretch.from, to: stretch.to, own: true });
      else if (track) choose({ from: 0, to: track.distance.length - 1, own: true });
    },
    /** Moves an end. While it is dragged the hill below stays; it follows when that ends, or a moment after the last key. */
    move: ({ from, to, own }: Stretch, how: 'drag' | 'key'): void => {
      moves.begin(how);
      choose({ from, to, own });
    },
    endMove: moves.end,
    aside: held.aside,
    forget: (): void => {
      held.forget();
      say('Forgotten. It can be undone.');
    },
    undo: (): void => {
      held.undo();
      say('Brought back.');
    },
    trouble: held.trouble,
  };
}

export type RecordingHandle = ReturnType<typeof useRecording>;

/**
 * Whether the picked stretch is the hill below. A hill that came with a link stays there until the reader gives a file or picks a stretch,
 * and what this device keeps stays folded so long, unless it is the very hill of that link.
 */
function useBelow(tool: Tool, cut: HillBelow | NoHill | undefined) {
  const mayPut = useRef(false);
  const [isFolded, fold] = useState(false);
  const hill = cut && 'text' in cut ? cut : undefined;
  const is = hill !== undefined && inputOf(tool.scenario, 'profile') === hill.text;
  useEffect(() => {
    if (is) fold(false);
  }, [is]);
  const put = (): void => {
    if (hill) tool.change(({ edit }, before) => edit(before, 'profile', 0, hill.text));
  };
  useEffect(() => {
    if (hill && mayPut.current) put();
  }, [hill?.text]);
  return {
    is,
    isFolded,
    put,
    open: (): void => fold(false),
    /** This device kept a recording. */
    found: (): void => {
      const isLink = location.search.length > 1;
      mayPut.current = !isLink;
      fold(isLink);
    },
    /** The reader chose: from now on what is picked is the hill below. */
    claim: (): void => {
      mayPut.current = true;
      fold(false);
    },
  };
}

/** The file that was given last: read in a worker, and what came of it. */
function useFile(given: Given | null) {
  const { state, start, cancel } = useReading();
  const [problem, setProblem] = useState('');
  const [cancelled, setCancelled] = useState('');
  const [read, setRead] = useState<Recording | undefined>(undefined);
  useEffect(() => {
    if (!given) return;
    setProblem('');
    setCancelled('');
    start(given.file);
  }, [given]);
  useEffect(() => {
    if (state.is !== 'read') return;
    const isThere = state.recording.parts.length > 0;
    if (isThere) setRead(state.recording);
    else setProblem(unreadable(state.recording));
  }, [state]);
  return {
    reading: state.is === 'reading' ? state : null,
    /** the last one that gave something */
    read,
    problem,
    /** name of the file that was given up */
    cancelled,
    cancel: (): void => {
      if (state.is === 'reading') setCancelled(state.file);
      cancel();
    },
  };
}

const unreadable = ({ problems }: Recording): string =>
  problems.map(problemText).join(' ') || 'There is no ride or route in this file.';

/** Whether an end of the stretch is being moved: by keys, until a moment after the last one. */
function useMoves() {
  const [moving, setMoving] = useState(false);
  const pause = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const end = (): void => setMoving(false);
  return {
    moving,
    begin: (how: 'drag' | 'key'): void => {
      clearTimeout(pause.current);
      setMoving(true);
      if (how === 'key') pause.current = setTimeout(end, KEY_PAUSE);
    },
    end,
  };
}

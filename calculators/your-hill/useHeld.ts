import { useEffect, useRef, useState } from 'preact/hooks';
import { GAIN_THRESHOLD, SMOOTHING_WINDOW } from '../model/index.ts';
import {
  type Choice,
  forgetKept,
  type Held,
  type Keeping,
  keepChoice,
  keepRecording,
  loadKept,
} from './keptRecording.ts';
import { joinTabs, type OtherTabs } from './otherTabs.ts';
import type { Recording } from './reading/recording.ts';

/** ms after the last change before it is kept. */
const KEEP_PAUSE = 500;

const START: Choice = { part: 0, window: SMOOTHING_WINDOW, threshold: GAIN_THRESHOLD, stretch: null };

const REPLACED = 'Another tab keeps another recording now: this one is gone when you leave this page.';
const FORGOTTEN = 'It was forgotten in another tab: it is gone when you leave this page.';

/** What was taken away, and the words for it. */
interface PutAside {
  held: Held;
  words: string;
}

/** Which recording is on the page, what was chosen of it, what was put aside, and what this device keeps of all that. */
export function useHeld() {
  const [held, hold] = useState<Held | null>(null);
  const [aside, putAside] = useState<PutAside | null>(null);
  const [keeping, setKeeping] = useState<Keeping>({ kept: true });
  /** what another tab did to what this device keeps, in words */
  const [elsewhere, setElsewhere] = useState('');

  const shown = useRef(held);
  shown.current = held;
  const others = useRef<OtherTabs | undefined>(undefined);
  useEffect(() => {
    others.current = joinTabs((what) => {
      if (!shown.current) return;
      if (what === 'forgotten') setElsewhere(FORGOTTEN);
      else setElsewhere(what(shown.current.recording) ? '' : REPLACED);
    });
    return () => others.current?.close();
  }, []);

  const keep = (next: Held): void => {
    setElsewhere('');
    keepRecording(next).then((kept) => {
      setKeeping(kept);
      if (kept.kept) others.current?.tell(next.recording);
    });
  };

  // what was chosen is kept a moment after the last change, unless another recording is kept meanwhile
  const last = useRef<Choice | undefined>(undefined);
  useEffect(() => {
    if (!held) return;
    const isNew = last.current !== undefined && last.current !== held.choice;
    last.current = held.choice;
    if (!isNew || elsewhere) return;
    const timer = setTimeout(() => void keepChoice(held.choice).then(setKeeping), KEEP_PAUSE);
    return () => clearTimeout(timer);
  }, [held, elsewhere]);

  return {
    recording: held?.recording,
    choice: held?.choice ?? START,
    /** Shows what this device kept at an earlier visit, unless there is something already; tells whether it did. */
    load: async (): Promise<boolean> => {
      const kept = await loadKept();
      if (!kept || shown.current) return false;
      hold(kept);
      return true;
    },
    /** A recording that was read takes the place of the last one. */
    take: (recording: Recording): void => {
      const ride = recording.parts.findIndex(({ kind }) => kind === 'ride');
      const { window, threshold } = held?.choice ?? START;
      const next: Held = { recording, choice: { part: Math.max(0, ride), window, threshold, stretch: null } };
      if (held) putAside({ held, words: `Put aside: ${held.recording.file}.` });
      hold(next);
      keep(next);
    },
    change: (next: Partial<Choice>): void =>
      hold((before) => before && { ...before, choice: { ...before.choice, ...next } }),
    /** what can be brought back, in words */
    aside: aside?.words ?? '',
    /** Takes the recording off the page and off this device. */
    forget: (): void => {
      if (!held) return;
      putAside({ held, words: `Forgotten: ${held.recording.file}. The hill below stays.` });
      hold(null);
      setElsewhere('');
      // what another tab keeps meanwhile is not this tab's to forget
      if (elsewhere) return;
      forgetKept().then(() => others.current?.tell(null));
    },
    /** Brings back what was put aside; what is there takes its place. */
    undo: (): void => {
      if (!aside) return;
      putAside(held ? { held, words: `Put aside: ${held.recording.file}.` } : null);
      hold(aside.held);
      keep(aside.held);
    },
    /** why it is not kept, or no longer; empty where it is */
    trouble: elsewhere || (keeping.kept ? '' : keeping.message),
  };
}

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { remember, remembered } from '../parts/remembered.ts';
import type { System } from '../quantities/index.ts';
import type { Comparing, DayDocument, DayRun } from './document.ts';
import * as editing from './editing.ts';
import { exampleDay } from './example.ts';
import { fileText } from './file.ts';
import { readFragment } from './link.ts';
import { type DayProblem, hasNoMotor, readDay } from './read.ts';
import { fileName, saveAs } from './saveAs.ts';
import { type DayStore, type Keeping, openStore } from './storage.ts';
import { rememberedUndoables, rememberUndoables, type Undoable } from './undoing.ts';
import { capital, compared, count, dayInWords, ridden, runInWords } from './words.ts';

/** How long after the last key a half-typed value is not complained about. */
const TYPING_PAUSE = 800;
/** The answer follows when nothing was typed for so long: on the hill it is not what is looked at. */
const ANSWER_PAUSE = 250;

/** A day that came by link or file and does not take the place of the reader's own before they say so. */
export interface Visiting {
  document: DayDocument;
  from: 'link' | 'file';
}

/** The state of the page: the day, the run that is being entered, what can be undone, and how all of it is kept. Views only show it. */
export function useDay() {
  const [document, setDocument] = useState<DayDocument>(editing.emptyDay);
  // the next run: it joins the day with its first key, under this id
  const [draft, setDraft] = useState(editing.newId);
  const [opened, setOpened] = useState('');
  const [insisted, setInsisted] = useState('');
  const [typing, setTyping] = useState('');
  const [undoables, setUndoables] = useState<readonly Undoable[]>([]);
  const [said, say] = useState('');
  const [setUpOpen, toggleSetUp] = useState(true);
  const pause = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const reading = useMemo(() => readDay(document), [document]);
  const settled = useSettled(document, ANSWER_PAUSE);

  // what has the focus once this change is on the page
  const next = useRef('');
  useLayoutEffect(() => {
    if (!next.current) return;
    const element = globalThis.document.querySelector<HTMLElement>(next.current);
    next.current = '';
    element?.focus();
  });

  const blank = (): DayRun =>
    editing.addRun(document, undefined, draft).runs.find(({ id }) => id === draft) ?? {
      id: draft,
      bike: '',
      assisted: true,
      counted: true,
      texts: {},
    };
  const find = (id: string): DayRun | undefined => document.runs.find((run) => run.id === id);
  const open = find(opened) ?? find(draft) ?? blank();
  const isNext = open.id === draft;
  const listed = document.runs.filter(({ id }) => id !== draft);

  /** Changes a run, which may be the next one that is not in the day yet. */
  const changeRun = (id: string, change: (before: DayDocument) => DayDocument): void =>
    setDocument((before) =>
      change(
        id === draft && !before.runs.some((run) => run.id === id) ? editing.addRun(before, undefined, id) : before,
      ),
    );

  const enter = (of: string, name: string, text: string, whole = false): void => {
    clearTimeout(pause.current);
    setTyping(whole ? '' : `${of} ${name}`);
    pause.current = setTimeout(() => setTyping(''), TYPING_PAUSE);
    setInsisted('');
    changeRun(of, (before) => editing.setText(before, of, name, text));
  };
  const leave = (): void => setTyping('');

  const problemsOf = (place: string): readonly DayProblem[] =>
    reading.problems.filter((problem) => problem.place === place);

  /** The sentence beside a field: not while it is being typed into, and not before anybody wanted the run saved. */
  const problemOf = (place: string, name: string): string | undefined => {
    if (typing === `${place} ${name}`) return undefined;
    if (place === open.id && name === 'bike' && insisted === open.id && !open.bike) return noBike();
    if (place === draft && insisted !== draft && !open.texts[name]?.trim()) return undefined;
    return problemsOf(place).find((problem) => problem.name === name)?.message;
  };
  const noBike = (): string => `Choose the ${compared(document.comparing).one} of this run.`;

  const offer = (taken: Omit<Undoable, 'at'>): void => {
    const undoable = { ...taken, at: Date.now() };
    setUndoables((before) => [...before, undoable]);
    say(`${undoable.words} It can be undone.`);
    next.current = '#undo';
  };

  const replaceDay = (by: DayDocument, words: string): void => {
    if (!editing.isEmptyDay(document)) offer({ where: 'day', words, replaced: { document, draft } });
    setDocument(by);
    setDraft(editing.newId());
    setOpened('');
    toggleSetUp(by.runs.length === 0);
  };

  const undo = (): void => {
    const last = undoables.at(-1);
    if (!last) return;
    setUndoables(undoables.slice(0, -1));
    const { removed, replaced, where } = last;
    if (removed) setDocument((before) => editing.restore(before, removed));
    if (replaced) {
      replaceDay(replaced.document, `Put aside: ${dayInWords(document)}.`);
      setDraft(replaced.draft);
    }
    say('Brought back.');
    if (removed?.bike) next.current = `[data-of="${removed.bike.bike.id}"]`;
    else if (where === 'runs') next.current = `#run-${removed?.runs[0]?.run.id}`;
    else next.current = '#day-title';
  };

  /** Takes the run into the list and offers the next one. Stops once where something cannot be used; pressed again it is kept as it is. */
  const saveRun = (): void => {
    if (!isNext) {
      setOpened('');
      next.current = `#run-${open.id}`;
      say('Run changed.');
      return;
    }
    if (Object.values(open.texts).every((typed) => typed.trim() === '')) {
      next.current = `[data-of="${open.id}"]`;
      say('Nothing is written yet: fill in the time first.');
      return;
    }
    const wrong = open.bike ? problemsOf(open.id)[0] : { name: 'bike', message: noBike() };
    if (wrong && insisted !== open.id) {
      setInsisted(open.id);
      setTyping('');
      next.current = wrong.name === 'bike' ? '[name="run-bike"]' : `[data-of="${open.id}"][name="${wrong.name}"]`;
      say(`${wrong.message} Save again to keep the run as it is.`);
      return;
    }
    const after = editing.isFull(document) ? undefined : editing.addRun(document, undefined, 'after').runs.at(-1);
    setDraft(editing.newId());
    setInsisted('');
    next.current = '#run-entry-title';
    say(
      `${elsewhere ? 'Not kept until you choose above: ' : 'Saved: '}${runInWords(document, open)}.${after?.bike ? ` Next: ${ridden(document, after)}.` : ''}`,
    );
  };

  const openRun = (id: string): void => {
    setOpened(id);
    next.current = '#run-entry-title';
  };

  const removeRun = (id: string): void => {
    const run = find(id);
    if (!run) return;
    const number = document.runs.indexOf(run) + 1;
    const { document: after, removed } = editing.removeRun(document, id);
    setDocument(after);
    if (opened === id) setOpened('');
    offer({ where: 'runs', words: `Removed: run ${number}, ${runInWords(document, run)}.`, removed });
  };

  const moveRun = (id: string, by: number): void => {
    setDocument((before) => editing.moveRun(before, id, by));
    const number = document.runs.findIndex((run) => run.id === id) + 1 + by;
    next.current = `#${by < 0 ? 'earlier' : 'later'}-${id}`;
    say(`Now run ${number}.`);
  };

  const countRun = (id: string, counted: boolean): void => {
    setDocument((before) => editing.setCounted(before, id, counted));
    say(counted ? 'The run counts again.' : 'The run is kept and not counted. Write why.');
    next.current = counted ? `#run-${id}` : `[data-of="${id}"][name="note"]`;
  };

  /** Chooses the bike of a run. From a bike without a motor back to one with it the motor is on again, as it is for a new run. */
  const chooseBike = (id: string, bike: string): void =>
    changeRun(id, (before) => {
      const last = before.bikes.find((each) => each.id === before.runs.find((run) => run.id === id)?.bike);
      const wasMotorless = last !== undefined && hasNoMotor(last, before.system);
      return editing.setRunBike(wasMotorless ? editing.setAssisted(before, id, true) : before, id, bike);
    });

  const addBike = (): void => {
    const id = editing.newId();
    setDocument((before) => editing.addBike(before, {}, id));
    next.current = `[data-of="${id}"]`;
  };

  const removeBike = (id: string): void => {
    const index = document.bikes.findIndex((bike) => bike.id === id);
    const name =
      document.bikes[index]?.texts.name?.trim() || `${capital(compared(document.comparing).one)} ${index + 1}`;
    const { document: after, removed } = editing.removeBike(document, id);
    setDocument(after);
    const runs = removed.runs.length > 0 ? ` and its ${count(removed.runs.length, 'run')}` : '';
    offer({ where: 'bikes', words: `Removed: ${name}${runs}.`, removed });
  };

  /** Opens the set-up at what of the hill is not filled in. */
  const openSetUp = (): void => {
    toggleSetUp(true);
    const empty = ['distance', 'gain'].find((name) => !document.setup[name]?.trim());
    next.current = empty ? `[data-of="setup"][name="${empty}"]` : '#set-up';
  };

  const finishSetUp = (): void => {
    if (document.bikes.length === 0) {
      next.current = '#add-bike';
      say(`Add a ${compared(document.comparing).one} first.`);
      return;
    }
    toggleSetUp(false);
    next.current = '#run-entry-title';
  };

  const chooseUnits = (system: System): void => {
    remember(system);
    setDocument((before) => editing.chooseSystem(before, system));
  };

  const startNew = (): void => {
    replaceDay(editing.emptyDay(document.system), `Put aside: ${dayInWords(document)}.`);
    if (editing.isEmptyDay(document)) next.current = '#day-title';
  };
  const lookAtExample = (): void => {
    replaceDay(exampleDay(document.system), `Put aside: ${dayInWords(document)}.`);
    if (editing.isEmptyDay(document)) next.current = '#day-title';
    say('This is an invented example. Change it as you like.');
  };

  const takeTable = (by: DayDocument, taken: string): void => {
    setPasting(false);
    const words = [taken, readDay(by).missing].filter(Boolean).join(' ');
    if (editing.isEmptyDay(document)) {
      replaceDay(by, '');
      say(words);
      next.current = '#run-list-title';
    } else {
      offer({ where: 'day', words, replaced: { document, draft } });
      setDocument(by);
    }
  };

  // Kept on the device: at every change, unless another tab changed the day meanwhile.
  const store = useRef<DayStore | undefined>(undefined);
  const known = useRef<DayDocument | undefined>(undefined);
  const [opening, setOpening] = useState(true);
  const [keeping, setKeeping] = useState<Keeping>({ kept: true });
  const [elsewhere, setElsewhere] = useState<DayDocument | null>(null);
  const [visiting, setVisiting] = useState<Visiting | null>(null);
  const [linkProblem, setLinkProblem] = useState('');
  const [pasting, setPasting] = useState(false);

  const followLink = async (): Promise<void> => {
    const opened = await readFragment(location.hash);
    if (!opened) return;
    setLinkProblem(opened.ok ? '' : opened.message);
    setVisiting(opened.ok ? { document: opened.document, from: 'link' } : null);
  };

  useEffect(() => {
    const opened = openStore();
    store.current = opened;
    opened.onKeeping(setKeeping);
    opened.onOther(setElsewhere);
    const open = async (): Promise<void> => {
      const kept = await opened.load();
      const start = kept ?? editing.emptyDay(remembered());
      known.current = start;
      setKeeping(opened.keeping);
      setDocument(start);
      const next = rememberedNext();
      if (start.runs.some(({ id }) => id === next)) setDraft(next);
      toggleSetUp(start.runs.length === 0);
      setUndoables(rememberedUndoables());
      await followLink();
      setOpening(false);
    };
    void open();
    const follow = (): void => void followLink();
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);

  useLayoutEffect(() => {
    if (opening || document === known.current) return;
    known.current = document;
    store.current?.save(document);
  }, [opening, document]);
  useEffect(() => {
    if (!opening) rememberNext(draft);
  }, [opening, draft]);
  useEffect(() => {
    if (!opening) rememberUndoables(undoables);
  }, [opening, undoables]);

  const takeElsewhere = (): void => {
    if (!elsewhere) return;
    store.current?.take();
    // it is stored already: to store it again would tell the other tab of a change that is none
    known.current = elsewhere;
    setElsewhere(null);
    replaceDay(elsewhere, `Put aside: what stood in this tab, ${dayInWords(document)}.`);
    const next = rememberedNext();
    if (elsewhere.runs.some(({ id }) => id === next)) setDraft(next);
  };
  const keepHere = (): void => {
    setElsewhere(null);
    store.current?.keep(document);
    say('This tab’s day is kept.');
    next.current = '#day-title';
  };

  const visit = (by: DayDocument): void => {
    if (editing.isEmptyDay(document)) {
      replaceDay(by, '');
      next.current = '#day-title';
    } else setVisiting({ document: by, from: 'file' });
    setPasting(false);
  };
  const leaveVisiting = (): void => {
    setVisiting(null);
    dropFragment();
    next.current = '#day-title';
  };
  const takeVisiting = (): void => {
    if (!visiting) return;
    next.current = '#day-title';
    replaceDay(visiting.document, `Put aside: ${dayInWords(document)}.`);
    setVisiting(null);
    dropFragment();
  };

  const togglePasting = (): void => {
    setPasting(!pasting);
    next.current = pasting ? '#paste' : '#pasted';
  };

  const saveFile = (): void => saveAs(fileText(document), fileName(document.setup.title, 'json'), 'application/json');

  return {
    document,
    /** the same a moment later, for what takes longer to work out */
    settled,
    /** the run in the entry, and whether it is the next one or one of the list */
    open,
    isNext,
    listed,
    /** why there is no answer yet */
    missing: reading.missing,
    problemOf,
    problemsOf,
    enter,
    leave,
    said,
    undoable: undoables.at(-1),
    undo,
    saveRun,
    openRun,
    removeRun,
    moveRun,
    countRun,
    chooseBike,
    chooseMotor: (id: string, assisted: boolean): void =>
      changeRun(id, (before) => editing.setAssisted(before, id, assisted)),
    addBike,
    removeBike,
    compare: (comparing: Comparing): void => setDocument((before) => editing.setComparing(before, comparing)),
    setUpOpen,
    toggleSetUp,
    finishSetUp,
    openSetUp,
    chooseUnits,
    startNew,
    lookAtExample,
    pasting,
    togglePasting,
    takeTable,
    /** nothing is known of the device yet */
    opening,
    /** everything is kept on this device; if not, `trouble` says so */
    kept: keeping.kept && !elsewhere,
    trouble: keeping.kept ? '' : keeping.message,
    linkProblem,
    elsewhere,
    takeElsewhere,
    keepHere,
    visiting,
    visit,
    leaveVisiting,
    takeVisiting,
    saveFile,
  };
}

export type Handle = ReturnType<typeof useDay>;

/** A value once it has not changed for a while; at first at once. */
function useSettled<T>(value: T, pause: number): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), pause);
    return () => clearTimeout(timer);
  }, [value, pause]);
  return settled;
}

/** Takes a linked day out of the address, so that a reload does not bring it back. */
function dropFragment(): void {
  if (location.hash) history.replaceState(history.state, '', location.pathname + location.search);
}

/*
 * Which run is being entered: a browser that forgets it shows a half-typed run in the list instead.
 */
const NEXT_RUN = 'uphill-measured:next-run';

function rememberedNext(): string {
  try {
    return localStorage.getItem(NEXT_RUN) ?? '';
  } catch {
    return '';
  }
}

function rememberNext(id: string): void {
  try {
    localStorage.setItem(NEXT_RUN, id);
  } catch {
    // refused or full: the run itself is kept with the day, or the page has said that it is not
  }
}

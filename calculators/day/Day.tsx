import { useEffect, useMemo, useState } from 'preact/hooks';
import { DaySheet } from './DaySheet.tsx';
import { isEmptyDay } from './editing.ts';
import { RunEntry } from './RunEntry.tsx';
import { RunList } from './RunList.tsx';
import { SetUp } from './SetUp.tsx';
import { Undo } from './Undo.tsx';
import { type Handle, useDay } from './useDay.ts';
import { compared, dayInWords } from './words.ts';

/** What is not needed for the first key: it comes by itself as soon as the page is idle, so that it is there without a signal. */
type Later = typeof import('./later.ts');

/** The page of a test day: beginning, set-up, one run at a time, the list, the answer, and the ways to pass it on. */
export function Day() {
  const day = useDay();
  const later = useLater(!day.opening);
  return (
    <section class="tool day not-content" aria-label="Test day" data-ready={day.opening ? undefined : ''}>
      {day.opening ? (
        <Opening />
      ) : day.visiting ? (
        <Visit day={day} later={later.code} />
      ) : (
        <Own day={day} later={later.code} />
      )}
      {later.failed && (
        <p class="problem" role="alert">
          A part of this page did not come, so it cannot answer yet. What you enter is kept all the same. With a signal,
          load the page again.
        </p>
      )}
      <p class="sr-only" role="status">
        {day.said}
      </p>
    </section>
  );
}

/** Loads the answer's code once the page is idle, and tries again when the signal is back. */
function useLater(wanted: boolean): { code: Later | undefined; failed: boolean } {
  const [code, setCode] = useState<Later>();
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    if (!wanted || code) return;
    const load = (): void => {
      import('./later.ts').then(
        (loaded) => {
          setFailed(false);
          loaded.readySampling();
          setCode(loaded);
        },
        () => setFailed(true),
      );
    };
    const idle = globalThis.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 200));
    idle(load);
    addEventListener('online', load);
    return () => removeEventListener('online', load);
  }, [wanted, code]);
  return { code, failed };
}

/** Seen for a moment, or for longer where the page's script did not come. */
function Opening() {
  return (
    <div class="opening">
      <p>Opening the test day…</p>
      <p class="late">This takes too long. With a signal, load the page again; what was entered before is kept.</p>
    </div>
  );
}

interface Props {
  day: Handle;
  later: Later | undefined;
}

/** The reader's own day. */
function Own({ day, later }: Props) {
  const { document } = day;
  const empty = isEmptyDay(document);
  return (
    <>
      <Notices day={day} />
      <header class="day-head">
        <h2 id="day-title" tabIndex={-1}>
          {document.setup.title?.trim() || (empty ? 'A new test day' : 'Your test day')}
        </h2>
        {empty && <Begin day={day} />}
      </header>
      {day.pasting && (later ? <later.PasteRuns day={day} /> : <p class="waiting">One moment…</p>)}
      <SetUp day={day} />
      {document.bikes.length > 0 ? (
        <div class="entering">
          <RunEntry day={day} />
          <RunList day={day} />
        </div>
      ) : (
        !empty && <p class="waiting">Add a {compared(document.comparing).one} to the set-up, then enter runs here.</p>
      )}
      {document.runs.length > 0 && <Answer day={day} later={later} />}
      <Foot day={day} empty={empty} />
      <div class="on-paper">
        <DaySheet document={document} heading="What was entered" />
      </div>
    </>
  );
}

/** What must be known before anything is typed: where it is kept, and what another tab did. */
function Notices({ day }: { day: Handle }) {
  return (
    <>
      {day.trouble && (
        <p class="notice" role="alert">
          {day.trouble}{' '}
          <button type="button" onClick={day.saveFile}>
            Save as a file
          </button>
        </p>
      )}
      {day.elsewhere && (
        <div class="notice" role="alert">
          <p>
            This day was changed in another tab: there it is {dayInWords(day.elsewhere)}. Nothing is overwritten until
            you choose; what you do here is not kept meanwhile.
          </p>
          <div class="choices">
            <button type="button" onClick={day.takeElsewhere}>
              Go on with the other tab’s
            </button>
            <button type="button" onClick={day.keepHere}>
              Keep what stands here
            </button>
          </div>
        </div>
      )}
      {day.linkProblem && <p class="notice">{day.linkProblem}</p>}
      <Undo day={day} where="day" />
    </>
  );
}

/** Three ways to begin. */
function Begin({ day }: { day: Handle }) {
  return (
    <>
      <p>Type it in below, one run at a time, or begin otherwise:</p>
      <div class="choices">
        <button type="button" id="paste" onClick={day.togglePasting} aria-expanded={day.pasting}>
          Paste a table or open a file
        </button>
        <button type="button" onClick={day.lookAtExample}>
          Look at an invented example
        </button>
      </div>
    </>
  );
}

function Answer({ day, later }: Props) {
  const document = day.visiting?.document ?? day.settled;
  const outcome = useMemo(() => later?.dayOutcome(document), [later, document]);
  if (!later || !outcome) return <p class="waiting">The answer comes in a moment.</p>;
  return (
    <>
      <later.Result document={document} outcome={outcome} shared={day.visiting !== null} />
      <later.PassOn document={document} outcome={outcome} />
    </>
  );
}

/** Units, and what replaces the whole day. */
function Foot({ day, empty }: { day: Handle; empty: boolean }) {
  const { system } = day.document;
  return (
    <div class="share">
      {!empty && (
        <>
          <button type="button" id="paste" onClick={day.togglePasting} aria-expanded={day.pasting}>
            Paste a table or open a file
          </button>
          <button type="button" onClick={day.startNew}>
            Start a new day
          </button>
          <button type="button" onClick={day.lookAtExample}>
            Load the example
          </button>
        </>
      )}
      <fieldset class="units">
        <legend>Units</legend>
        {(['metric', 'us'] as const).map((each) => (
          <label key={each}>
            <input type="radio" name="units-day" checked={system === each} onChange={() => day.chooseUnits(each)} />
            {each === 'metric' ? 'Metric' : 'US'}
          </label>
        ))}
      </fieldset>
    </div>
  );
}

/** Somebody else’s day, or one from a file: to be read. The reader’s own stays as it is until they say otherwise. */
function Visit({ day, later }: Props) {
  const { visiting, document } = day;
  if (!visiting) return null;
  const own = isEmptyDay(document) ? '' : `Your own, ${dayInWords(document)}, is kept as it is.`;
  return (
    <>
      <div class="notice">
        <p>
          This day came {visiting.from === 'link' ? 'with a link' : 'from a file'}. {own}
        </p>
        <div class="choices">
          <button type="button" onClick={day.takeVisiting}>
            {own ? 'Put mine aside and work on this one' : 'Work on this day'}
          </button>
          <button type="button" onClick={day.leaveVisiting}>
            {own ? 'Back to my own' : 'Start a new day'}
          </button>
        </div>
      </div>
      <header class="day-head">
        <h2 id="day-title" tabIndex={-1}>
          {visiting.document.setup.title?.trim() || 'A test day'}
        </h2>
      </header>
      <Answer day={day} later={later} />
      <DaySheet document={visiting.document} heading="What was entered" />
    </>
  );
}

import { DayField } from './DayField.tsx';
import type { DayRun } from './document.ts';
import { Undo } from './Undo.tsx';
import type { Handle } from './useDay.ts';
import { ridden, shown } from './words.ts';

/** The runs so far, in the order in which they were ridden. What can be done with one stands under its line. */
export function RunList({ day }: { day: Handle }) {
  const { document, listed } = day;
  return (
    <section class="run-list" aria-labelledby="run-list-title">
      <h2 id="run-list-title" tabIndex={-1}>
        Runs
      </h2>
      <Undo day={day} where="runs" />
      {listed.length > 0 && day.missing && (
        <p class="notice">
          {day.missing}{' '}
          <button type="button" onClick={day.openSetUp}>
            Open the set-up
          </button>
        </p>
      )}
      {listed.length === 0 ? (
        <p>None yet. A run is listed here when it is saved.</p>
      ) : (
        <ol>
          {listed.map((run) => (
            <Row key={run.id} day={day} run={run} number={document.runs.indexOf(run) + 1} />
          ))}
        </ol>
      )}
    </section>
  );
}

function Row({ day, run, number }: { day: Handle; run: DayRun; number: number }) {
  const { document } = day;
  const value = (name: string): string => shown('run', run.texts, name, document);
  const problems = day.problemsOf(run.id);
  const left = problems.some(({ leavesOut }) => leavesOut);
  const last = day.listed.at(-1) === run;
  const first = day.listed[0] === run;
  return (
    <li>
      <details class={run.counted && !left ? 'run' : 'run apart'}>
        <summary id={`run-${run.id}`}>
          <span class="number">{number}</span>
          <span class="ridden">{ridden(document, run)}</span>
          <span class="figures">
            {value('time') || 'no time'}
            {value('power') && ` at ${value('power')}`}
          </span>
          {!run.counted && <span class="mark">not counted</span>}
          {run.counted && problems.length > 0 && <span class="mark">{left ? 'cannot count yet' : 'look at this'}</span>}
        </summary>
        {run.texts.note?.trim() && run.counted && <p class="said">“{run.texts.note.trim()}”</p>}
        {problems.length > 0 && (
          <ul class="remarks">
            {problems.map(({ message }) => (
              <li class="wrong" key={message}>
                {message}
              </li>
            ))}
          </ul>
        )}
        {!run.counted && (
          <DayField day={day} place="run" of={run.id} texts={run.texts} name="note" label="Why it is not counted" />
        )}
        <div class="choices">
          <button type="button" aria-label={`Change run ${number}`} onClick={() => day.openRun(run.id)}>
            Change
          </button>
          <button
            type="button"
            aria-label={run.counted ? `Do not count run ${number}` : `Count run ${number} again`}
            onClick={() => day.countRun(run.id, !run.counted)}
          >
            {run.counted ? 'Do not count' : 'Count again'}
          </button>
          <button
            type="button"
            id={`earlier-${run.id}`}
            aria-label={`Move run ${number} earlier`}
            aria-disabled={first}
            onClick={() => !first && day.moveRun(run.id, -1)}
          >
            Earlier
          </button>
          <button
            type="button"
            id={`later-${run.id}`}
            aria-label={`Move run ${number} later`}
            aria-disabled={last}
            onClick={() => !last && day.moveRun(run.id, 1)}
          >
            Later
          </button>
          <button type="button" aria-label={`Remove run ${number}`} onClick={() => day.removeRun(run.id)}>
            Remove
          </button>
        </div>
      </details>
    </li>
  );
}

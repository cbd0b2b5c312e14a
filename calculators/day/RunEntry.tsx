import { DayField } from './DayField.tsx';
import type { DayRun } from './document.ts';
import { isFull, MOST_RUNS } from './editing.ts';
import { bikeNamesOf, hasNoMotor } from './read.ts';
import type { Handle } from './useDay.ts';
import { capital, compared } from './words.ts';

/** What a run must have, what it may have, and what hardly ever differs from the day's. */
const MAIN = ['time', 'power', 'start', 'end', 'note'];
const LESS = ['cadence', 'speed', 'rider', 'wind'];

/** One run at a time, for a phone in a gloved hand: the next one, or one of the list that is being changed. */
export function RunEntry({ day }: { day: Handle }) {
  const { document, open, isNext } = day;
  const { bikes, comparing, system } = document;
  const names = bikeNamesOf(document);
  const place = document.runs.findIndex(({ id }) => id === open.id);
  const number = place < 0 ? document.runs.length + 1 : place + 1;
  const bike = bikes.find(({ id }) => id === open.bike);
  const motorless = bike !== undefined && hasNoMotor(bike, system);
  const noBike = day.problemOf(open.id, 'bike');
  if (place < 0 && isFull(document))
    return (
      <section class="run-entry" aria-labelledby="run-entry-title">
        <h2 id="run-entry-title" tabIndex={-1}>
          No room for another run
        </h2>
        <p>This day holds {MOST_RUNS} runs, the most that it can. Remove one, or save this day and start a new one.</p>
      </section>
    );
  return (
    <form
      class="run-entry"
      aria-labelledby="run-entry-title"
      onSubmit={(event) => {
        event.preventDefault();
        day.saveRun();
      }}
    >
      <h2 id="run-entry-title" tabIndex={-1}>
        {isNext ? `Run ${number}` : `Change run ${number}`}
      </h2>
      <fieldset class="picks" aria-describedby={noBike ? 'run-bike-w' : undefined}>
        <legend>{capital(compared(comparing).one)}</legend>
        {bikes.map(({ id }) => (
          <label class="pick" key={id}>
            <input
              type="radio"
              name="run-bike"
              checked={open.bike === id}
              onChange={() => day.chooseBike(open.id, id)}
            />
            <span>{names.get(id)}</span>
          </label>
        ))}
      </fieldset>
      {noBike && (
        <small class="problem" id="run-bike-w">
          {noBike}
        </small>
      )}
      <fieldset class="picks">
        <legend>Motor</legend>
        {[true, false].map((assisted) => (
          <label class="pick" key={String(assisted)}>
            <input
              type="radio"
              name="run-motor"
              checked={(open.assisted && !motorless) === assisted}
              disabled={motorless && assisted}
              onChange={() => day.chooseMotor(open.id, assisted)}
            />
            <span>{assisted ? 'On' : 'Off: control run'}</span>
          </label>
        ))}
      </fieldset>
      <div class="fields">
        {MAIN.map((name) => (
          <DayField key={name} day={day} place="run" of={open.id} texts={open.texts} name={name} />
        ))}
      </div>
      <details class="fold">
        <summary>More: cadence, mean speed, rider and wind of this run</summary>
        <div class="fields">
          {LESS.map((name) => (
            <DayField key={name} day={day} place="run" of={open.id} texts={open.texts} name={name} />
          ))}
        </div>
      </details>
      <div class="actions">
        <button type="submit" class="main">
          {isNext ? 'Save and next run' : 'Done'}
        </button>
        {/* the live region at the page's head says it to those who cannot see it */}
        {day.said && !(isNext && hasText(open)) && <small aria-hidden="true">{day.said}</small>}
        {day.kept && isNext && hasText(open) && <small>Kept on this device as you type.</small>}
      </div>
    </form>
  );
}

const hasText = ({ texts }: DayRun): boolean => Object.values(texts).some((typed) => typed.trim() !== '');

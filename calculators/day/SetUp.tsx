import type { TargetedKeyboardEvent } from 'preact';
import { DayField } from './DayField.tsx';
import type { DayBike } from './document.ts';
import { MOST_BIKES } from './editing.ts';
import { type SetupGroup, setupInputs } from './inputs.ts';
import { bikeNamesOf } from './read.ts';
import { Undo } from './Undo.tsx';
import type { Handle } from './useDay.ts';
import { capital, compared, DIFFERENCES, setupInWords } from './words.ts';

/** What the whole day has in common: first on an empty day, one line when runs are being entered. */
export function SetUp({ day }: { day: Handle }) {
  const { document } = day;
  const { comparing, bikes } = document;
  const words = compared(comparing);
  const names = bikeNamesOf(document);
  return (
    <details class="set-up" open={day.setUpOpen} onToggle={(event) => day.toggleSetUp(event.currentTarget.open)}>
      <summary id="set-up">
        <span class="title">Set-up</span>
        {!day.setUpOpen && <span class="line">{setupInWords(document)}</span>}
      </summary>
      <form
        onSubmit={(event) => event.preventDefault()}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && event.target instanceof HTMLInputElement) nextField(event);
        }}
      >
        <Group day={day} group="about" legend="This day" />
        <Group day={day} group="hill" legend="The hill" />
        <Group day={day} group="rider" legend="Rider" />
        <fieldset class="picks">
          <legend>What differs</legend>
          {DIFFERENCES.map(({ comparing: choice, label }) => (
            <label class="pick" key={choice}>
              <input
                type="radio"
                name="comparing"
                checked={comparing === choice}
                onChange={() => day.compare(choice)}
              />
              <span>{label}</span>
            </label>
          ))}
          <small>{DIFFERENCES.find((each) => each.comparing === comparing)?.hint}</small>
        </fieldset>
        <fieldset>
          <legend>{capital(words.several)}</legend>
          {bikes.map((bike) => (
            <Bike key={bike.id} day={day} bike={bike} name={names.get(bike.id) ?? ''} />
          ))}
          <Undo day={day} where="bikes" />
          {bikes.length < MOST_BIKES && (
            <button type="button" id="add-bike" onClick={day.addBike}>
              Add a {words.one}
            </button>
          )}
        </fieldset>
        <details class="fold">
          <summary>Air, surface and drive</summary>
          <Group day={day} group="conditions" legend="Air, surface and drive" />
        </details>
        <details class="fold">
          <summary>Instruments: how well each thing is known</summary>
          <p class="behind">Half-widths that hold 95 times in 100. Empty fields count as the grey figure.</p>
          <Group day={day} group="instruments" legend="Instruments" />
        </details>
        <details class="fold">
          <summary>Another hill to carry the result to</summary>
          <Group day={day} group="target" legend="The other hill" />
        </details>
        <div class="actions">
          <button type="button" class="main" onClick={day.finishSetUp}>
            Enter runs
          </button>
        </div>
      </form>
    </details>
  );
}

/** Enter leads on, as Tab does: a set-up has no button that sends it, and a phone's keys have no Tab. */
function nextField(event: TargetedKeyboardEvent<HTMLFormElement>): void {
  event.preventDefault();
  const all = [...event.currentTarget.querySelectorAll<HTMLElement>('input, button, summary')].filter((each) =>
    each.checkVisibility({ contentVisibilityAuto: true }),
  );
  all[all.indexOf(event.target as HTMLElement) + 1]?.focus();
}

function Group({ day, group, legend }: { day: Handle; group: SetupGroup; legend: string }) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="fields">
        {setupInputs
          .filter((input) => input.group === group)
          .map(({ name }) => (
            <DayField key={name} day={day} place="setup" of="setup" texts={day.document.setup} name={name} />
          ))}
      </div>
    </fieldset>
  );
}

const MAIN = ['name', 'bike'];
const LESS = ['tyres', 'motor', 'limit', 'battery', 'support'];

function Bike({ day, bike, name }: { day: Handle; bike: DayBike; name: string }) {
  const first = day.document.bikes[0] === bike;
  const field = (input: string) => (
    <DayField key={input} day={day} place="bike" of={bike.id} texts={bike.texts} name={input} hinted={first} />
  );
  return (
    <fieldset class="row">
      <legend class="minor">{name}</legend>
      <div class="fields">{MAIN.map(field)}</div>
      <details class="fold">
        <summary>
          Tyres, motor, battery<span class="sr-only"> of {name}</span>
        </summary>
        <div class="fields">{LESS.map(field)}</div>
        <button type="button" class="quiet" onClick={() => day.removeBike(bike.id)}>
          Remove {name}
        </button>
      </details>
    </fieldset>
  );
}

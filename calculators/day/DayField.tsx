import { shownUnit } from '../quantities/index.ts';
import { shortText } from '../scenario/scenario.ts';
import type { Texts } from './document.ts';
import { type DayInput, inputOf, type Place } from './inputs.ts';
import type { Handle } from './useDay.ts';
import { timesMeant } from './words.ts';

interface Props {
  day: Handle;
  place: Place;
  /** `setup`, or the id of the bike or run */
  of: string;
  texts: Texts;
  name: string;
  label?: string;
  /** the sentence below it */
  hinted?: boolean;
}

/** Numbers that never carry a sign or a word get the number keys of a phone; a time too, with a button for its colon. */
function keyboard({ kind, min, allowNone }: DayInput): 'decimal' | 'text' {
  return kind === 'text' || allowNone || min < 0 ? 'text' : 'decimal';
}

/** One text of a day: label, unit, the text as typed, and the sentence that says what is wrong with it. */
export function DayField({ day, place, of, texts, name, label, hinted = true }: Props) {
  const input = inputOf(place, name);
  if (!input) return null;
  const { system } = day.document;
  const id = `${of}-${name}`;
  const typed = texts[name] ?? '';
  const unit = input.kind === 'text' || input.kind === 'duration' ? '' : shownUnit(input.kind, system).text;
  // a unit that was typed stands there already
  const ownUnit = /[^\d\s.,+−-]/.test(typed);
  const wrong = day.problemOf(of, name);
  const hint = hinted ? input.hint : undefined;
  const described = [unit && !ownUnit && `${id}-u`, hint && `${id}-h`, wrong && `${id}-w`].filter(Boolean).join(' ');
  const meant = input.kind === 'duration' && wrong ? timesMeant(typed) : [];
  return (
    <div class={`day-field ${input.kind === 'text' ? 'wide' : ''}`}>
      <div class={wrong ? 'field wrong' : 'field'}>
        <label for={id}>{label ?? input.label}</label>
        <span class="entry">
          <input
            id={id}
            name={name}
            data-of={of}
            type="text"
            inputMode={keyboard(input)}
            enterkeyhint={place === 'run' ? 'done' : 'next'}
            autocomplete="off"
            autocapitalize={input.kind === 'text' ? 'sentences' : 'off'}
            spellcheck={false}
            value={typed}
            placeholder={placeholderOf(input, system)}
            aria-invalid={wrong ? true : undefined}
            aria-describedby={described || undefined}
            onInput={(event) => day.enter(of, name, event.currentTarget.value)}
            onBlur={day.leave}
          />
          {input.kind === 'duration' && <Colon day={day} of={of} name={name} id={id} />}
          {unit && !ownUnit && (
            <span class="unit" id={`${id}-u`}>
              {unit}
            </span>
          )}
        </span>
      </div>
      {wrong && (
        <small class="problem" id={`${id}-w`}>
          {wrong}
        </small>
      )}
      {meant.length > 0 && (
        <div class="choices">
          {meant.map((time) => (
            <button type="button" key={time} onClick={() => day.enter(of, name, time, true)}>
              {time}
            </button>
          ))}
        </div>
      )}
      {hint && (
        <small class="hint" id={`${id}-h`}>
          {hint}
        </small>
      )}
    </div>
  );
}

/** The number keys of many phones have no colon. Whoever has one does not need this button, so Tab passes it by. */
function Colon({ day, of, name, id }: { day: Handle; of: string; name: string; id: string }) {
  const insert = (): void => {
    const field = document.getElementById(id) as HTMLInputElement;
    const { selectionStart, selectionEnd, value } = field;
    const start = selectionStart ?? value.length;
    field.focus();
    field.setRangeText(':', start, selectionEnd ?? start, 'end');
    day.enter(of, name, field.value);
  };
  return (
    <button
      type="button"
      class="colon"
      tabIndex={-1}
      aria-label="Put a colon"
      // the field keeps the focus, and the phone its keys
      onPointerDown={(event) => event.preventDefault()}
      onClick={insert}
    >
      :
    </button>
  );
}

/** What an empty field stands for. */
function placeholderOf({ kind, default: standard, name }: DayInput, system: 'metric' | 'us'): string {
  if (kind === 'duration') return 'm:ss';
  if (standard === undefined) return name === 'date' ? 'today, or when it was' : '';
  return standard === null ? 'none' : shortText(standard, kind, system);
}

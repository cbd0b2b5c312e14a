import { useEffect, useState } from 'preact/hooks';
import { fieldText, fromSi, type Kind, parseQuantity, type System, shownUnit, toSi } from '../quantities/index.ts';

interface Props {
  id: string;
  label: string;
  kind: Kind;
  /** SI */
  value: number;
  min: number;
  max: number;
  system: System;
  /** a value that can be used; the last one stays while the text cannot be read */
  onValue: (si: number) => void;
  hint?: string;
  /** of the value, where it has more than a reader can use; what is typed stays as it is */
  decimals?: number;
}

/** ms without a key before a half-typed value is complained about. */
const TYPING_PAUSE = 800;

/** A quantity that belongs to the recording, and not to the scenario: label, unit, the text as typed, and what is wrong with it. */
export function OwnField({ id, label, kind, value, min, max, system, onValue, hint, decimals }: Props) {
  // as typed; null where the field shows the value
  const [typed, setTyped] = useState<string | null>(null);
  const [focused, setFocused] = useState(false);
  const [settled, setSettled] = useState(true);
  const unit = shownUnit(kind, system);
  const scale = 10 ** (decimals ?? 0);
  const shown = decimals === undefined ? value : toSi(Math.round(fromSi(value, unit) * scale) / scale, unit);
  const read = (text: string) => parseQuantity(text, kind, { unit: unit.symbol, where: 'field', min, max, label });
  const parsed = typed === null ? undefined : read(typed);
  const wrong = parsed && !parsed.ok && settled ? parsed.message || 'Nothing is typed: the last value counts.' : '';
  useEffect(() => setTyped(null), [system]);
  useEffect(() => {
    // it came from elsewhere: what was typed no longer holds
    if (!focused) setTyped(null);
  }, [value]);
  useEffect(() => {
    if (settled) return;
    const timer = setTimeout(() => setSettled(true), TYPING_PAUSE);
    return () => clearTimeout(timer);
  }, [settled, typed]);
  const described = [unit.text && `${id}-u`, hint && `${id}-h`, wrong && `${id}-w`].filter(Boolean).join(' ');
  return (
    <div class="own-field">
      <div class={wrong ? 'field wrong' : 'field'}>
        <label for={id}>{label}</label>
        <span class="entry">
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            value={typed ?? fieldText(shown, kind, system)}
            aria-invalid={wrong ? true : undefined}
            aria-describedby={described || undefined}
            onInput={({ currentTarget }) => {
              const result = read(currentTarget.value);
              setTyped(currentTarget.value);
              setSettled(false);
              if (result.ok && result.si !== null) onValue(result.si);
            }}
            onFocus={() => setFocused(true)}
            onBlur={() => {
              setFocused(false);
              setSettled(true);
              // what could not be read stays, with its sentence
              if (parsed?.ok) setTyped(null);
            }}
          />
          {unit.text && (
            <span class="unit" id={`${id}-u`}>
              {unit.text}
            </span>
          )}
        </span>
      </div>
      {wrong && (
        <small class="problem" id={`${id}-w`}>
          {wrong}
        </small>
      )}
      {hint && (
        <small class="hint" id={`${id}-h`}>
          {hint}
        </small>
      )}
    </div>
  );
}

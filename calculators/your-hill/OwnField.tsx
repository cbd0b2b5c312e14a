import { useEffect, useState } from 'preact/hooks';
import { fieldText, fromSi, type Kind, parseQuantity, type System, shownUnit, toSi } from '../quantities/index.ts';

interface Props {
  id: string;
  label: string;
  kind: Kind;
  /** SI; undefined: empty, and it may be */
  value: number | undefined;
  min: number;
  max: number;
  system: System;
  /** a value that can be used; the last one stays while the text cannot be read */
  onValue: (si: number) => void;
  /** what is typed is no value: where it is given, the last value does not stay */
  onNone?: () => void;
  onFocus?: () => void;
  hint?: string;
  /** of the value, where it has more than a reader can use; what is typed stays as it is */
  decimals?: number;
}

/** ms without a key before a half-typed value is complained about. */
const TYPING_PAUSE = 800;

/** A quantity that belongs to the recording, and not to the scenario: label, unit, the text as typed, and what is wrong with it. */
export function OwnField({
  id,
  label,
  kind,
  value,
  min,
  max,
  system,
  onValue,
  onNone,
  onFocus,
  hint,
  decimals,
}: Props) {
  // as typed; null where the field shows the value
  const [typed, setTyped] = useState<string | null>(null);
  const [focused, setFocused] = useState(false);
  const [settled, setSettled] = useState(true);
  const unit = shownUnit(kind, system);
  const scale = 10 ** (decimals ?? 0);
  /** as the field shows it: what it shows can be typed, so the limits are compared as they read */
  const rounded = (si: number): number =>
    decimals === undefined ? si : toSi(Math.round(fromSi(si, unit) * scale) / scale, unit);
  const limits = { min: Math.min(min, rounded(min)), max: Math.max(max, rounded(max)) };
  const read = (text: string) => parseQuantity(text, kind, { unit: unit.symbol, where: 'field', ...limits, label });
  const parsed = typed === null ? undefined : read(typed);
  const mayBeSo = onNone && parsed && !parsed.ok && parsed.reason === 'empty';
  const wrong = parsed && !parsed.ok && settled && !mayBeSo ? parsed.message : '';
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
            value={typed ?? (value === undefined ? '' : fieldText(rounded(value), kind, system))}
            aria-invalid={wrong ? true : undefined}
            aria-describedby={described || undefined}
            onInput={({ currentTarget }) => {
              const result = read(currentTarget.value);
              setTyped(currentTarget.value);
              setSettled(false);
              if (result.ok && result.si !== null) onValue(Math.max(min, Math.min(max, result.si)));
              else onNone?.();
            }}
            onFocus={() => {
              setFocused(true);
              onFocus?.();
            }}
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

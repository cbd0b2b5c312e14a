import { formatQuantity, formatRange, NO_VALUE, type System } from '../quantities/index.ts';
import { type Outcome, type Result, resultOf } from '../scenario/index.ts';

/** A result as people read it. */
export function resultText(result: Result, system: System): string {
  // a public word, such as "assist-limit": pages that embed a result read it as it stands
  if (result.text !== undefined) return result.text;
  return result.si === undefined ? NO_VALUE : formatQuantity(result.si, result.kind, system);
}

/** The 95 % range of a result, empty where it has none. */
export function rangeText({ si, low, high, kind }: Result, system: System): string {
  if (si === undefined || (low === undefined && high === undefined)) return '';
  if (low === undefined) return `at most ${formatQuantity(high, kind, system)}`;
  if (high === undefined) return `at least ${formatQuantity(low, kind, system)}`;
  return formatRange(low, high, kind, system);
}

interface HowShown {
  system: System;
  /** show the range behind the value; `named` says what it is */
  range?: boolean | 'named' | undefined;
  class?: string | undefined;
  /** said in place of the value, which stays in the attributes */
  words?: string | undefined;
}

interface Props extends HowShown {
  outcome: Outcome;
  name: string;
  bike?: number;
}

/** One result of an outcome, by its name. */
export function Output({ outcome, name, bike, ...how }: Props) {
  return <ResultOutput result={resultOf(outcome, name, bike)} {...how} />;
}

/** One result in its public form: name, unrounded SI value, 95 % range, text for people. It is not announced one by one: `Island` speaks once per change. */
export function ResultOutput({
  result,
  system,
  range = false,
  class: className,
  words,
}: HowShown & { result: Result }) {
  const rangeWords = range ? rangeText(result, system) : '';
  return (
    <>
      <output
        name={result.name}
        class={className}
        aria-live="off"
        data-bike={result.bike}
        data-against={result.against}
        data-si={result.si === undefined ? undefined : String(result.si)}
        data-low={result.low === undefined ? undefined : String(result.low)}
        data-high={result.high === undefined ? undefined : String(result.high)}
        data-text={result.text}
        title={result.reason || undefined}
      >
        {words ?? resultText(result, system)}
      </output>
      {rangeWords && (
        <span class="range">
          {' '}
          {range === 'named' && '95\u202f% range '}
          {rangeWords}
        </span>
      )}
    </>
  );
}

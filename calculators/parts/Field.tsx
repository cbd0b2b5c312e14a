import { type Doubt, fieldOf, type Hint, keyOf, labelOf, parameterOf, type Remark } from '../scenario/index.ts';
import { addressUnderBase } from './address.ts';
import type { Handle } from './useScenario.ts';

/** Hydration leaves what came with the page alone where a part is given this. */
export const AS_IT_CAME = { __html: '' };

interface Props {
  tool: Handle;
  name: string;
  column?: number;
  /** a sentence about this field that comes from the answer, such as a hill steeper than its length allows */
  remark?: Remark | undefined;
  /** the sentence below it, where it did not come with the page */
  hint?: Hint | undefined;
  /** what the value is known to, and its source */
  doubt?: Doubt | undefined;
}

/** Numbers that never carry a sign, a colon or a word get the number keys of a phone. */
function keyboard(name: string): 'decimal' | 'text' {
  const { kind, min, allowNone } = parameterOf(name);
  return allowNone || min < 0 || kind === 'text' || kind === 'duration' ? 'text' : 'decimal';
}

/** One input: label, unit, the text as typed, and the sentence that says what is wrong with it. */
export function Field({ tool, name, column = 0, remark, hint, doubt }: Props) {
  const { scenario } = tool;
  // a page may hold the same calculator twice, each with a query of its own
  const id = `${scenario.calculator[0]}${tool.query.length || ''}-${name}-${column}`;
  const parameter = parameterOf(name);
  const { text, placeholder, unit, problem, note: own } = fieldOf(scenario, name, column);
  const typing = tool.typing === keyOf(name, column);
  const isNote = remark?.tone === 'plain';
  const note = own ?? (isNote ? remark.text : undefined);
  const wrong = typing ? undefined : (problem ?? (isNote ? undefined : remark?.text));
  // said once, not for every bike
  const hinted = column === 0 && parameter.hinted;
  const described = [unit && `${id}u`, hinted && `${id}h`, note && `${id}n`, wrong && `${id}w`]
    .filter(Boolean)
    .join(' ');
  return (
    <>
      <div class={wrong ? 'field wrong' : 'field'}>
        <label for={id}>{labelOf(scenario.calculator, name)}</label>
        <span class="entry">
          <input
            id={id}
            name={name}
            data-column={column}
            type="text"
            inputMode={keyboard(name)}
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            value={text}
            placeholder={placeholder}
            aria-invalid={wrong ? true : undefined}
            aria-describedby={described || undefined}
            onInput={(event) => tool.enterText(name, column, event.currentTarget.value)}
            onBlur={tool.leave}
            onChange={tool.leave}
          />
          {unit && (
            <span class="unit" id={`${id}u`}>
              {unit}
            </span>
          )}
        </span>
        {doubt && (
          <small>
            Known to: {doubt.range}. <SourceLink id={doubt.source} />
          </small>
        )}
      </div>
      {parameter.choices && (
        <div class="choices">
          {parameter.choices.map((choice) => (
            <button
              type="button"
              key={choice.label}
              onClick={() =>
                tool.change(({ clear, edit }, before) =>
                  choice.text === undefined ? clear(before, name, column) : edit(before, name, column, choice.text),
                )
              }
            >
              {choice.label}
            </button>
          ))}
        </div>
      )}
      {wrong && (
        <small class="problem" id={`${id}w`}>
          {wrong}
        </small>
      )}
      {hinted && hint && (
        <small class="hint" id={`${id}h`}>
          {hint.text} {hint.source && <SourceLink id={hint.source} />}
        </small>
      )}
      {hinted && !hint && <small class="hint" id={`${id}h`} dangerouslySetInnerHTML={AS_IT_CAME} />}
      {note && !wrong && (
        <small class="note" id={`${id}n`}>
          {note}
        </small>
      )}
      {remark?.pieces && (
        <div class="choices">
          <button
            type="button"
            onClick={() => {
              // the button goes away with the pieces
              document.getElementById(id)?.focus();
              tool.change(({ asWhole }, before) => asWhole(before, remark.pieces ?? 'profile'));
            }}
          >
            Use plain distance and height instead
          </button>
        </div>
      )}
    </>
  );
}

/** Where the bibliography names a source. */
export function SourceLink({ id }: { id: string }) {
  if (id === 'assumption') return <>Our assumption.</>;
  return <a href={addressUnderBase(`/reference/sources/#${id}`)}>Source</a>;
}

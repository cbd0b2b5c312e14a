import { useLayoutEffect, useRef } from 'preact/hooks';
import {
  bikeName,
  calculatorOf,
  columnsOf,
  hintOf,
  MAX_BIKES,
  MAX_CONTROLS,
  parameterOf,
  type Remark,
  type Section,
} from '../scenario/index.ts';
import { Field } from './Field.tsx';
import { Fold } from './Fold.tsx';
import { legendOf, remarkBeside } from './legends.ts';
import type { Handle } from './useScenario.ts';

interface Props {
  tool: Handle;
  /** sentences that belong beside a field */
  remarks: readonly Remark[];
}

/** All inputs of a calculator: the main ones in sections, the rest under one fold. */
export function Form({ tool, remarks }: Props) {
  const { scenario } = tool;
  const { sections, bikes, fold, one = 'bike' } = calculatorOf(scenario.calculator);
  const several = bikes.max > 1;
  // a row that comes or goes must not lose the keyboard's place: what has the focus next
  const form = useRef<HTMLFormElement>(null);
  const next = useRef('');
  useLayoutEffect(() => {
    if (next.current) form.current?.querySelector<HTMLElement>(next.current)?.focus();
    next.current = '';
  }, [scenario.bikes, scenario.controls]);
  const legend = (section: Section): string => legendOf(section, several);
  const fields = (names: readonly string[], column = 0) =>
    names.map((name) => (
      <Field
        key={name}
        tool={tool}
        name={name}
        column={column}
        remark={remarkBeside(remarks, name)}
        hint={import.meta.env.SSR ? hintOf(scenario.calculator, name) : undefined}
      />
    ));

  return (
    <form
      class="tool-form"
      ref={form}
      onSubmit={(event) => event.preventDefault()}
      onFocusIn={tool.warmUp}
      onPointerEnter={tool.warmUp}
    >
      {sections
        .filter(({ names }) => names.length > 0)

        .map((section) => {
          const { names } = section;
          const list = names.map((name) => parameterOf(name).list).find(Boolean);
          if (!list || (list === 'bike' && !several)) {
            return (
              <fieldset key={legend(section)}>
                <legend>{legend(section)}</legend>
                <div class="fields">{fields(names)}</div>
              </fieldset>
            );
          }
          const columns = columnsOf(scenario, names[0] as string);
          const fewest = list === 'bike' ? bikes.min : 0;
          const most = list === 'bike' ? MAX_BIKES : MAX_CONTROLS;
          return (
            <fieldset key={legend(section)}>
              <legend>{legend(section)}</legend>
              {list === 'control' && <small>No assistance, known power, same hill, tyres and day.</small>}
              {columns.map((column) => {
                const title = list === 'bike' ? bikeName(scenario, column) : `Control run ${column + 1}`;
                return (
                  <fieldset class="row" key={column}>
                    <legend class={list === 'bike' ? 'sr-only' : 'minor'}>{title}</legend>
                    <div class="fields">{fields(names, column)}</div>
                    {columns.length > fewest && (
                      <button
                        type="button"
                        class="quiet"
                        onClick={() => {
                          next.current = `[data-add="${list}"]`;
                          tool.change(({ removeColumn }, before) => removeColumn(before, list, column));
                        }}
                      >
                        Remove {list === 'bike' ? title : title.toLowerCase()}
                      </button>
                    )}
                  </fieldset>
                );
              })}
              {columns.length < most && (
                <button
                  type="button"
                  data-add={list}
                  onClick={() => {
                    next.current = `[name="${names[0]}"][data-column="${columns.length}"]`;
                    tool.change(({ addColumn }, before) => addColumn(before, list));
                  }}
                >
                  Add a {list === 'bike' ? one : 'control run'}
                </button>
              )}
            </fieldset>
          );
        })}
      {fold && <Fold tool={tool} words={fold} remarks={remarks} />}
    </form>
  );
}

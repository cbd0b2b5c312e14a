import { useLayoutEffect, useRef } from 'preact/hooks';
import {
  bikeName,
  type CalculatorName,
  calculators,
  columnsOf,
  type Group,
  MAX_BIKES,
  MAX_CONTROLS,
  type Outcome,
  parameterOf,
} from '../scenario/index.ts';
import { Field } from './Field.tsx';
import type { Handle } from './useScenario.ts';

const LEGENDS: Record<Group, string> = {
  hill: 'Hill',
  rider: 'Rider',
  bike: 'Bike',
  conditions: 'Surface',
  control: 'Control runs',
  target: 'The other hill',
  companion: 'Companion',
};

interface Props {
  tool: Handle;
  outcome: Outcome;
}

/** All inputs of a calculator: the main ones in sections, the rest under one fold. */
export function Form({ tool, outcome }: Props) {
  const { scenario } = tool;
  const { sections, bikes } = calculators[scenario.calculator];
  const several = bikes.max > 1;
  // a row that comes or goes must not lose the keyboard's place: what has the focus next
  const form = useRef<HTMLFormElement>(null);
  const next = useRef('');
  useLayoutEffect(() => {
    if (next.current) form.current?.querySelector<HTMLElement>(next.current)?.focus();
    next.current = '';
  }, [scenario.bikes, scenario.controls]);
  const legend = (group: Group): string =>
    group === 'bike' && several
      ? 'Bikes'
      : group === 'hill' && scenario.calculator === 'bigger-hill'
        ? 'The measured hill'
        : LEGENDS[group];
  const contradiction = (name: string): string | undefined =>
    outcome.remarks.find((remark) => remark.field === name)?.text;
  const fields = (names: readonly string[], column = 0, detailed = false) =>
    names.map((name) => (
      <Field
        key={name}
        tool={tool}
        name={name}
        column={column}
        contradiction={contradiction(name)}
        detailed={detailed}
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
        .map(({ group, names }) => {
          const list = names.map((name) => parameterOf(name).list).find(Boolean);
          if (!list || (list === 'bike' && !several)) {
            return (
              <fieldset key={group}>
                <legend>{legend(group)}</legend>
                <div class="fields">{fields(names)}</div>
              </fieldset>
            );
          }
          const columns = columnsOf(scenario, names[0] as string);
          const fewest = list === 'bike' ? bikes.min : 0;
          const most = list === 'bike' ? MAX_BIKES : MAX_CONTROLS;
          return (
            <fieldset key={group}>
              <legend>{legend(group)}</legend>
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
                  {list === 'bike' ? 'Add a bike' : 'Add a control run'}
                </button>
              )}
            </fieldset>
          );
        })}
      <details class="fold">
        <summary>More: {FOLD[scenario.calculator]}</summary>
        {sections
          .filter(({ folded }) => folded)
          .map(({ group, folded = [] }) => {
            const list = folded.map((name) => parameterOf(name).list).find(Boolean);
            const columns = list && (list === 'control' || several) ? columnsOf(scenario, folded[0] as string) : [0];
            return columns.map((column) => {
              const title =
                list === 'bike' && several
                  ? bikeName(scenario, column)
                  : list === 'control'
                    ? `Control run ${column + 1}`
                    : group === 'conditions'
                      ? 'Air and drive'
                      : legend(group);
              return (
                <fieldset key={`${group}.${column}`}>
                  <legend>{title}</legend>
                  <div class="fields">{fields(folded, column, true)}</div>
                </fieldset>
              );
            });
          })}
      </details>
    </form>
  );
}

const FOLD: Record<CalculatorName, string> = {
  'climb-time': 'battery, assist limit, air, drive',
  'side-by-side': 'measured times, batteries, assist limit, air, drive',
  'bigger-hill': 'batteries, assist limit, surface, air, drive',
  'power-to-weight': 'assist limit, air, drive',
};

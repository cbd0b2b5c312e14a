import {
  bikeName,
  calculatorOf,
  columnsOf,
  doubts,
  hintOf,
  parameterOf,
  type Remark,
  type Section,
} from '../scenario/index.ts';
import { Field } from './Field.tsx';
import { legendOf, remarkBeside } from './legends.ts';
import type { Handle } from './useScenario.ts';

interface Props {
  tool: Handle;
  remarks: readonly Remark[];
}

/** The inputs under the fold, each with what it is known to. */
export function FoldedFields({ tool, remarks }: Props) {
  const { scenario } = tool;
  const { sections, bikes } = calculatorOf(scenario.calculator);
  const several = bikes.max > 1;
  const titleOf = (section: Section, list: 'bike' | 'control' | undefined, column: number): string => {
    if (list === 'bike' && several) return bikeName(scenario, column);
    if (list === 'control') return `Control run ${column + 1}`;
    return section.group === 'conditions' && !section.legend ? 'Air and drive' : legendOf(section, several);
  };
  return (
    <>
      {sections.map((section) => {
        const { folded = [] } = section;
        if (folded.length === 0) return null;
        const list = folded.map((name) => parameterOf(name).list).find(Boolean);
        const columns = list && (list === 'control' || several) ? columnsOf(scenario, folded[0] as string) : [0];
        return columns.map((column) => (
          <fieldset key={`${legendOf(section, several)}.${column}`}>
            <legend>{titleOf(section, list, column)}</legend>
            <div class="fields">
              {folded.map((name) => (
                <Field
                  key={name}
                  tool={tool}
                  name={name}
                  column={column}
                  remark={remarkBeside(remarks, name)}
                  hint={hintOf(scenario.calculator, name)}
                  // said once, not for every bike
                  doubt={column === 0 ? doubts[name] : undefined}
                />
              ))}
            </div>
          </fieldset>
        ));
      })}
    </>
  );
}

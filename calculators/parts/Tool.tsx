import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import {
  bikeName,
  calculatorOf,
  inputOf,
  labelOf,
  type Outcome,
  parameterOf,
  problemsOf,
  type Remark,
  type Remarks,
  valueText,
} from '../scenario/index.ts';
import { Form } from './Form.tsx';
import type { InputsUsed } from './InputsUsed.tsx';
import { Onward } from './Onward.tsx';
import { ShareBar } from './ShareBar.tsx';
import { AS_IT_CAME, useLater } from './useLater.ts';
import type { Handle } from './useScenario.ts';

interface Props<O extends Outcome> {
  tool: Handle;
  outcome: O;
  /** what writes the sentences: the code itself while the page is built, later when the calculator is touched */
  remarks: Remarks<O> | undefined;
  loadRemarks: () => Promise<Remarks<O>>;
  /** what lists the inputs for print, likewise */
  inputs: typeof InputsUsed | undefined;
  /** the answer: stays in view on a phone */
  head: ComponentChildren;
  /** the answer in one sentence, spoken once after a change */
  spoken: string;
  children: ComponentChildren;
}

const SPEAK_AFTER = 900;

/** The frame of every calculator: answer, inputs, what stands behind the answer, and the ways to pass it on. */
export function Tool<O extends Outcome>({
  tool,
  outcome,
  remarks,
  loadRemarks,
  inputs,
  head,
  spoken,
  children,
}: Props<O>) {
  const { scenario } = tool;
  const { title } = calculatorOf(scenario.calculator);
  const said = useLater(tool, remarks, loadRemarks)?.(scenario, outcome);
  const problems = tool.typing ? [] : problemsOf(scenario);
  const answer = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = answer.current;
    if (!element) return;
    // an answer that stays in view must not lie on what has the focus: styles keep its height free
    const observer = new ResizeObserver(() => {
      const height = getComputedStyle(element).position === 'sticky' ? element.offsetHeight : 0;
      element.parentElement?.style.setProperty('--answer-height', `${height}px`);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return (
    <section class="tool not-content" aria-label={title} data-tool={scenario.calculator} data-query={tool.query}>
      <div class="tool-frame">
        <div class={problems.length > 0 ? 'tool-head stale' : 'tool-head'} ref={answer}>
          {head}
          {problems.length > 0 && (
            <p class="stand-in">
              {problems.length === 1 ? 'One field cannot be used' : `${problems.length} fields cannot be used`}. The
              answer is for {problems.map(({ name, column }) => standInText(tool, name, column)).join(', ')}.
            </p>
          )}
        </div>
        <Form tool={tool} remarks={said ?? []} />
        <div class="tool-rest">
          {tool.failure && (
            <p class="problem" role="alert">
              {tool.failure}
            </p>
          )}
          {scenario.notes.length > 0 && (
            <ul class="remarks">
              {scenario.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          )}
          <Sentences remarks={tool.changed || remarks ? said : undefined} outdated={tool.changed} />
          {children}
          <Onward scenario={scenario} />
          <ShareBar tool={tool} />
        </div>
        <Inputs tool={tool} server={inputs} />
        <Spoken text={spoken} />
      </div>
    </section>
  );
}

function standInText({ scenario }: Handle, name: string, column: number): string {
  const { list } = parameterOf(name);
  const label = labelOf(scenario.calculator, name);
  const whose = list === 'bike' && scenario.bikes > 1 ? ` of ${bikeName(scenario, column)}` : '';
  const value = inputOf(scenario, name, column) === undefined ? 'nothing' : valueText(scenario, name, column);
  return `${label.toLowerCase()}${whose} ${value}`;
}

/** What the reader should know about the answer. Sentences that no longer hold are hidden until the code is there that writes them. */
function Sentences({ remarks, outdated }: { remarks: readonly Remark[] | undefined; outdated: boolean }) {
  if (!remarks)
    return <ul key="came" class={outdated ? 'remarks outdated' : 'remarks'} dangerouslySetInnerHTML={AS_IT_CAME} />;
  return (
    <ul key="written" class="remarks">
      {remarks.map(({ tone, text }) => (
        <li class={tone} key={text}>
          {text}
        </li>
      ))}
    </ul>
  );
}

/** What was put in, as it came with the page until something is changed: the code that lists it anew comes then. */
function Inputs({ tool, server }: { tool: Handle; server: typeof InputsUsed | undefined }) {
  const List = useLater(tool, server, loadInputs);
  const came = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // the server does not know where the page will stand
    const origin = came.current?.querySelector('.inputs-used > p');
    if (origin) origin.textContent += location.href;
  }, []);
  if (List && (server || tool.changed))
    return (
      <div key="anew">
        <List scenario={tool.scenario} />
      </div>
    );
  return <div key="came" ref={came} dangerouslySetInnerHTML={AS_IT_CAME} />;
}

const loadInputs = async () => (await import('./InputsUsed.tsx')).InputsUsed;

/** Says the answer once, after the reader has paused: a screen reader must not hear every key's result. */
function Spoken({ text }: { text: string }) {
  const [said, say] = useState('');
  const [first] = useState(text);
  useEffect(() => {
    if (text === first && said === '') return;
    const timer = setTimeout(() => say(text), SPEAK_AFTER);
    return () => clearTimeout(timer);
  }, [text, first, said]);
  return (
    <p class="sr-only" role="status">
      {said}
    </p>
  );
}

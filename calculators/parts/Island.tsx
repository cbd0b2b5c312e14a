import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import {
  bikeName,
  type Calculator,
  cellOf,
  inputOf,
  labelOf,
  parameterOf,
  problemsOf,
  valueText,
} from '../scenario/index.ts';
import type { Answering } from './answer.ts';
import { AS_IT_CAME } from './Field.tsx';
import { Form } from './Form.tsx';
import { ShareBar } from './ShareBar.tsx';
import { type Handle, type IslandProps, NOT_LOADED, useScenario } from './useScenario.ts';

/** What answers, and the parts that show it. */
type Code = { answering: Answering } & typeof import('./Behind.tsx');

interface Props extends IslandProps {
  definition: Calculator;
  /** brings what answers: an answer comes with the page, so this is needed from the first touch on, or for a link */
  load: () => Promise<Answering>;
  /** the same while the page is built */
  server?: Code;
  /** stands over the calculator and may change it: on the server too, and the same at first */
  above?: ((tool: Handle) => ComponentChildren) | undefined;
}

const SPEAK_AFTER = 900;

/** The frame of every calculator: answer, inputs, what stands behind the answer, and the ways to pass it on. */
export function Island({ definition, load, server, above, small = false, ...props }: Props) {
  const tool = useScenario(definition, props);
  const { scenario } = tool;
  const [loaded, setLoaded] = useState<Code | null>(null);
  const [failed, setFailed] = useState(false);
  const wanted = tool.warm || tool.changed;
  useEffect(() => {
    if (!wanted || loaded) return;
    Promise.all([load(), import('./Behind.tsx')]).then(
      ([answering, parts]) => {
        setFailed(false);
        setLoaded({ answering, ...parts });
      },
      () => setFailed(true),
    );
  }, [wanted, scenario]);
  const code = server ?? (tool.changed ? loaded : null);
  const answer = useMemo(() => code?.answering(scenario, small), [code, scenario, small]);
  const problems = tool.typing ? [] : problemsOf(scenario);
  const failure = tool.failure || (failed && tool.changed ? NOT_LOADED : '');
  const head = useRef<HTMLDivElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = head.current;
    if (!element) return;
    // the server does not know where the page will stand
    const origin = frame.current?.querySelector('.inputs-used > p');
    if (origin) origin.textContent += location.href;
    // an answer that stays in view must not lie on what has the focus: styles keep its height free
    const observer = new ResizeObserver(() => {
      const height = getComputedStyle(element).position === 'sticky' ? element.offsetHeight : 0;
      frame.current?.style.setProperty('--answer-height', `${height}px`);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return (
    <section class="tool not-content" aria-label={definition.title} data-tool={definition.name} data-query={tool.query}>
      {above?.(tool)}
      <div class="tool-frame" ref={frame}>
        <div class={problems.length > 0 ? 'tool-head stale' : 'tool-head'} ref={head}>
          <Region tool={tool}>{answer?.head}</Region>
          {problems.length > 0 && (
            <p class="stand-in">
              {problems.length === 1 ? 'One field cannot be used' : `${problems.length} fields cannot be used`}.{' '}
              {problems.map(({ name }) => hiddenReason(tool, name))}
              The answer takes {problems.map(({ name, column }) => standInText(tool, name, column)).join(', ')}.
            </p>
          )}
        </div>
        <Form tool={tool} remarks={answer?.remarks ?? []} />
        <div class="tool-rest">
          {failure && (
            <p class="problem" role="alert">
              {failure}
            </p>
          )}
          {scenario.notes.length > 0 && (
            <ul class="remarks">
              {scenario.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          )}
          <Region tool={tool}>
            {code && answer && (
              <>
                <code.Sentences remarks={answer.remarks} />
                {answer.details}
              </>
            )}
          </Region>
          <Region tool={tool}>{code && <code.Onward scenario={scenario} differing={props.differing} />}</Region>
          <ShareBar tool={tool} />
        </div>
        <Region tool={tool}>
          {code && (
            <>
              <code.InputsUsed scenario={scenario} />
              {answer?.sheet}
            </>
          )}
        </Region>
        <Spoken text={answer?.spoken ?? ''} />
      </div>
    </section>
  );
}

/** A part of the answer: as it came with the page until it can be made anew. What no longer holds is hidden meanwhile. */
function Region({ tool, children }: { tool: Handle; children: ComponentChildren }) {
  if (children)
    return (
      <div key="made" class="region">
        {children}
      </div>
    );
  return <div key="came" class={tool.changed ? 'region outdated' : 'region'} dangerouslySetInnerHTML={AS_IT_CAME} />;
}

/** What is wrong with a hill in pieces: it comes with a link, and its field stands in a closed fold. */
const hiddenReason = ({ scenario }: Handle, name: string): string =>
  parameterOf(name).form === 'profile' ? `${cellOf(scenario, name, 0)?.problem} ` : '';

function standInText({ scenario }: Handle, name: string, column: number): string {
  const { list, form } = parameterOf(name);
  const label = labelOf(scenario.calculator, name);
  const whose = list === 'bike' && scenario.bikes > 1 ? ` of ${bikeName(scenario, column)}` : '';
  const isEmpty = inputOf(scenario, name, column) === undefined;
  // without pieces the plain hill counts: say which that is
  const plain = isEmpty && form === 'profile' ? ['distance', 'gain'].map((each) => name.replace('profile', each)) : [];
  const instead = plain.map((each) => valueText(scenario, each)).join(' and ');
  return `“${label}”${whose} as ${isEmpty ? 'empty' : valueText(scenario, name, column)}${instead && `, so ${instead} count`}`;
}

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

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Parsed, System } from '../quantities/index.ts';
import {
  type CalculatorName,
  cellOf,
  edit,
  exampleOf,
  parameterOf,
  parseOptions,
  readLink,
  readText,
  type Scenario,
  switchSystem,
  writeLink,
} from '../scenario/index.ts';

/** How a page sets an island up. */
export interface IslandProps {
  /** the calculator reads and writes the page's address */
  page?: boolean;
  /** query it starts from inside an explainer */
  query?: string;
}

const REMEMBERED = 'uphill-units';
/** Browsers refuse more than about 100 changes of the address in ten seconds. */
const ADDRESS_PAUSE = 300;
/** How long after the last key a half-typed value is not complained about. */
const TYPING_PAUSE = 800;

function remembered(): System {
  try {
    return localStorage.getItem(REMEMBERED) === 'us' ? 'us' : 'metric';
  } catch {
    return 'metric';
  }
}

function remember(system: System): void {
  try {
    localStorage.setItem(REMEMBERED, system);
  } catch {
    // a browser that stores nothing forgets the choice; the page works all the same
  }
}

/** What somebody typed into the page before its script came: inputs that no longer hold what the server wrote. */
function typedBefore(tool: Element | null): { name: string; column: number; text: string }[] {
  return [...(tool?.querySelectorAll<HTMLInputElement>('input[data-column]') ?? [])]
    .filter((input) => input.value !== input.defaultValue)
    .map((input) => ({ name: input.name, column: Number(input.dataset.column), text: input.value }));
}

/**
 * The state of one calculator on a page. The first render is the example (or the island's own query), the same as the server's;
 * the address, the remembered units and what was typed meanwhile are applied before the first paint after it.
 */
export function useScenario(calculator: CalculatorName, { page = false, query = '' }: IslandProps) {
  const [scenario, setScenario] = useState<Scenario>(() =>
    query ? readLink(calculator, query) : exampleOf(calculator),
  );
  const [typing, setTyping] = useState<string | null>(null);
  const touched = useRef(false);
  const pause = useRef<number | undefined>(undefined);
  const typed = useMemo(
    () => (typeof document === 'undefined' ? [] : typedBefore(document.querySelector(toolSelector(calculator, query)))),
    [calculator, query],
  );

  useLayoutEffect(() => {
    const search = page ? location.search : query;
    let next = readLink(calculator, search, remembered());
    if (!page && next.system !== 'metric') next = { ...switchSystem(next, next.system), systemChosen: false };
    for (const { name, column, text } of typed) next = edit(next, name, column, text);
    setScenario(next);
    document.documentElement.removeAttribute('data-linked');
  }, [calculator, page, query, typed]);

  useEffect(() => {
    if (!page || !touched.current) return;
    const timer = setTimeout(() => {
      const link = writeLink(scenario);
      try {
        history.replaceState(history.state, '', `${location.pathname}${link && `?${link}`}${location.hash}`);
      } catch {
        // too many changes at once: the next one writes it
      }
    }, ADDRESS_PAUSE);
    return () => clearTimeout(timer);
  }, [page, scenario]);

  const change = (next: (before: Scenario) => Scenario): void => {
    touched.current = true;
    setScenario(next);
  };

  /** A key was pressed in a field. A sum or a rare unit is worked out by a larger library, loaded when first needed. */
  const enterText = (name: string, column: number, text: string): void => {
    clearTimeout(pause.current);
    setTyping(`${name}.${column}`);
    pause.current = setTimeout(() => setTyping(null), TYPING_PAUSE) as unknown as number;
    const parameter = parameterOf(name);
    const parsed: Parsed = readText(parameter, text, 'field', scenario.system);
    change((before) => edit(before, name, column, text, parsed));
    if (parsed.ok || parsed.reason !== 'expression') return;
    import('../quantities/expression.ts')
      .then(({ evaluateExpression }) =>
        evaluateExpression(text, parameter.kind, parseOptions(parameter, 'field', scenario.system)),
      )
      .then((result) =>
        change((before) =>
          cellOf(before, name, column)?.text === text ? edit(before, name, column, text, result) : before,
        ),
      )
      .catch(() => {
        // without a connection the sentence of the plain reader stays beside the field
      });
  };

  const leave = (): void => setTyping(null);
  const chooseSystem = (system: System): void => {
    remember(system);
    change((before) => switchSystem(before, system));
  };
  const reset = (): void =>
    change((before) => ({ ...exampleOf(calculator, before.system), systemChosen: before.systemChosen }));

  return { scenario, page, query, typing, change, enterText, leave, chooseSystem, reset };
}

export type Handle = ReturnType<typeof useScenario>;

/** Finds a calculator's element on the page, before its script runs. */
export function toolSelector(calculator: CalculatorName, query: string): string {
  return `[data-tool="${calculator}"][data-query="${CSS.escape(query)}"]`;
}

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { System } from '../quantities/index.ts';
import {
  type Calculator,
  type CalculatorName,
  cellOf,
  exampleOf,
  keyOf,
  parameterOf,
  type Scenario,
} from '../scenario/index.ts';
import { remember, remembered } from './remembered.ts';

/** How a page sets an island up. */
export interface IslandProps {
  /** the calculator reads and writes the page's address */
  page?: boolean;
  /** only the answer and what stands next to it; the tables are folded */
  small?: boolean;
  /** inside an explainer: the query of the link it starts from, and what that link says */
  query?: string;
  start?: Scenario;
  /** by calculator onward: the inputs whose defaults are others there */
  differing?: Partial<Record<CalculatorName, string[]>>;
}

/** Browsers refuse more than about 100 changes of the address in ten seconds. */
const ADDRESS_PAUSE = 300;
/** How long after the last key a half-typed value is not complained about. */
const TYPING_PAUSE = 800;

interface Typed {
  name: string;
  column: number;
  text: string;
}

/** The scenario with a text in a field that nobody has read yet: its value stays. */
function withText(scenario: Scenario, { name, column, text }: Typed): Scenario {
  const key = keyOf(name, column);
  return { ...scenario, cells: { ...scenario.cells, [key]: { ...scenario.cells[key], text } } };
}

/** What somebody typed into the page before its script came: inputs that no longer hold what the server wrote. */
function typedBefore(tool: Element | null): Typed[] {
  return [...(tool?.querySelectorAll<HTMLInputElement>('input[data-column]') ?? [])]
    .filter((input) => input.value !== input.defaultValue)
    .map((input) => ({ name: input.name, column: Number(input.dataset.column), text: input.value }));
}

type Changes = typeof import('./changes.ts');

let changes: Changes | undefined;
let loading: Promise<Changes> | undefined;

/**
 * Loads what reads and writes texts; a calculator asks for it as soon as it is touched.
 * One promise for all who ask meanwhile: keys pressed before it is there must be worked off in their order.
 */
export function loadChanges(): Promise<Changes> {
  loading ??= import('./changes.ts').then(
    (loaded) => {
      changes = loaded;
      return loaded;
    },
    (error) => {
      loading = undefined;
      throw error;
    },
  );
  return loading;
}

export const NOT_LOADED = 'This change could not be worked out: the page lost its connection. Load it again.';

/**
 * The state of one calculator on a page. The first render is the example (or the island's own start), the same as the server's;
 * the address, the remembered units and what was typed meanwhile are applied after it.
 */
export function useScenario({ name: calculator }: Calculator, { page = false, query = '', start }: IslandProps) {
  const [came] = useState<Scenario>(start ?? exampleOf(calculator));
  const [scenario, setScenario] = useState<Scenario>(came);
  const [typing, setTyping] = useState<string | null>(null);
  const [failure, setFailure] = useState('');
  // the reader is about to change something: have ready what that needs
  const [warm, setWarm] = useState(false);
  const touched = useRef(false);
  const pause = useRef<number | undefined>(undefined);
  // read while rendering for the first time: what comes after puts the server's texts back
  const typed = useMemo(
    () => (typeof document === 'undefined' ? [] : typedBefore(document.querySelector(toolSelector(calculator, query)))),
    [calculator, query],
  );

  /** Makes a change with the loaded functions: at once when they are there, else as soon as they come. */
  const apply = (work: (loaded: Changes) => void): void => {
    if (changes) work(changes);
    else
      loadChanges().then(
        (loaded) => {
          setFailure('');
          work(loaded);
        },
        () => setFailure(NOT_LOADED),
      );
  };

  useLayoutEffect(() => {
    const unmark = (): void => document.documentElement.removeAttribute('data-linked');
    const search = page ? location.search : '';
    const system = remembered();
    if (search.length <= 1 && typed.length === 0 && system === scenario.system) return unmark();
    // what answers is needed too: it comes at the same time
    setWarm(true);
    setScenario((before) => typed.reduce(withText, before));
    apply(({ edit, openLink, unreadIn }) => {
      const linked = openLink(came, search, system);
      unreadIn(linked).then((note) => {
        // unless the link was left for the example meanwhile
        if (note)
          setScenario((before) => (before.kept.length > 0 ? { ...before, notes: [...before.notes, note] } : before));
      });
      setScenario((before) => {
        let next = linked;
        for (const { name, column } of typed) next = edit(next, name, column, cellOf(before, name, column)?.text ?? '');
        return next;
      });
      unmark();
    });
  }, []);

  useEffect(() => {
    if (!page || !touched.current) return;
    const timer = setTimeout(() => {
      apply(({ writeLink }) => {
        const link = writeLink(scenario);
        try {
          history.replaceState(history.state, '', `${location.pathname}${link && `?${link}`}${location.hash}`);
        } catch {
          // too many changes at once: the next one writes it
        }
      });
    }, ADDRESS_PAUSE);
    return () => clearTimeout(timer);
  }, [page, scenario]);

  // what "Back to the example" replaced, until something else is changed
  const [replaced, setReplaced] = useState<Scenario | null>(null);

  const change = (next: (loaded: Changes, before: Scenario) => Scenario): void => {
    touched.current = true;
    setReplaced(null);
    apply((loaded) => setScenario((before) => next(loaded, before)));
  };

  /** A key was pressed in a field. A sum or a rare unit is worked out by a larger library, loaded when first needed. */
  const enterText = (name: string, column: number, text: string): void => {
    touched.current = true;
    setReplaced(null);
    // until it can be read, the text stays at least
    if (!changes) setScenario((before) => withText(before, { name, column, text }));
    apply(({ edit, evaluateText, readText }) => {
      clearTimeout(pause.current);
      setTyping(keyOf(name, column));
      pause.current = setTimeout(() => setTyping(null), TYPING_PAUSE) as unknown as number;
      const parameter = parameterOf(name);
      const parsed = readText(parameter, text, 'field', scenario.system);
      setScenario((before) => edit(before, name, column, text, parsed));
      if (parsed.ok || parsed.reason !== 'expression') return;
      evaluateText(parameter, text, scenario.system).then(
        (result) =>
          setScenario((before) =>
            cellOf(before, name, column)?.text === text ? edit(before, name, column, text, result) : before,
          ),
        () => {
          // without a connection the sentence of the plain reader stays beside the field
        },
      );
    });
  };

  const warmUp = (): void => {
    setWarm(true);
    loadChanges().catch(() => {
      // tried again, and reported, when something is changed
    });
  };
  const leave = (): void => setTyping(null);
  const chooseSystem = (system: System): void => {
    remember(system);
    change(({ switchSystem }, before) => switchSystem(before, system));
  };
  const reset = (): void => {
    change((_, before) => ({
      ...(start ?? exampleOf(calculator)),
      system: before.system,
      systemChosen: before.systemChosen,
    }));
    setReplaced(scenario);
  };
  const undo = (): void => {
    if (replaced) change(() => replaced);
  };

  return {
    scenario,
    /** the scenario is not what the page came with */
    changed: scenario !== came,
    warm,
    warmUp,
    page,
    query,
    typing,
    failure,
    change,
    enterText,
    leave,
    chooseSystem,
    reset,
    undo,
    replaced,
  };
}

export type Handle = ReturnType<typeof useScenario>;

/** Finds a calculator's element on the page, before its script runs. */
export function toolSelector(calculator: CalculatorName, query: string): string {
  return `[data-tool="${calculator}"][data-query="${CSS.escape(query)}"]`;
}

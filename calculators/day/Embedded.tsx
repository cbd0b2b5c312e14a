import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { DayDocument } from './document.ts';
import { tellHeight } from './embed.ts';
import { readFragment } from './link.ts';
import { dayOutcome } from './outcome.ts';
import { Result } from './Result.tsx';

const NO_DAY = 'There is no test day in this address. Copy the code to embed again from the page of the test day.';

/** The result of a linked day inside another page. */
export function Embedded() {
  const [document, setDocument] = useState<DayDocument>();
  const [problem, setProblem] = useState('');
  const whole = useRef<HTMLElement>(null);
  useEffect(() => {
    const open = async (): Promise<void> => {
      const opened = await readFragment(location.hash);
      setDocument(opened?.ok ? opened.document : undefined);
      setProblem(opened?.ok ? '' : (opened?.message ?? NO_DAY));
    };
    open();
    addEventListener('hashchange', open);
    return () => removeEventListener('hashchange', open);
  }, []);
  useEffect(() => (whole.current ? tellHeight(whole.current) : undefined), []);
  const outcome = useMemo(() => document && dayOutcome(document), [document]);
  return (
    <section class="tool day not-content" aria-label="Result of a test day" data-ready="" ref={whole}>
      {problem && <p class="notice">{problem}</p>}
      {document && outcome && (
        <>
          <header class="day-head">
            <h2>{document.setup.title?.trim() || 'A test day'}</h2>
          </header>
          <Result document={document} outcome={outcome} embedded />
          <p class="onward">
            <a href={`${location.pathname}${location.hash}`} target="_blank" rel="noopener">
              All runs, and how they were measured
            </a>
          </p>
        </>
      )}
    </section>
  );
}

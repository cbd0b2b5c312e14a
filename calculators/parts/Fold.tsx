import { useEffect, useRef, useState } from 'preact/hooks';
import type { Remark } from '../scenario/index.ts';
import type { Handle } from './useScenario.ts';

interface Props {
  tool: Handle;
  /** what is inside */
  words: string;
  remarks: readonly Remark[];
}

type Inside = typeof import('./FoldedFields.tsx').FoldedFields;

/** The fold of a form. Its fields come when it is opened: most readers never do, and without JavaScript they would be of no use. */
export function Fold({ tool, words, remarks }: Props) {
  const fold = useRef<HTMLDetailsElement>(null);
  const [Fields, setFields] = useState<Inside | null>(null);
  const [failed, setFailed] = useState(false);
  const fill = (): void => {
    if (!fold.current?.open || Fields) return;
    import('./FoldedFields.tsx').then(
      ({ FoldedFields }) => setFields(() => FoldedFields),
      () => setFailed(true),
    );
  };
  // it may have been opened before the script came
  useEffect(fill, []);
  return (
    <details class="fold" ref={fold} onToggle={fill}>
      <summary>More: {words}</summary>
      {Fields ? (
        <Fields tool={tool} remarks={remarks} />
      ) : (
        failed && <p class="problem">These fields did not come: the page lost its connection. Load it again.</p>
      )}
    </details>
  );
}

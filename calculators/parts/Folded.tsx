import type { ComponentChildren } from 'preact';

/** What stands behind the answer: open on a calculator's own page, folded where the calculator is small. */
export function Folded({
  small,
  words,
  children,
}: {
  small?: boolean | undefined;
  words: string;
  children: ComponentChildren;
}) {
  if (!small) return <>{children}</>;
  return (
    <details class="fold figures">
      <summary>{words}</summary>
      {children}
    </details>
  );
}

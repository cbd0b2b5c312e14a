import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

/** px of window from which there is room beside the answer. */
const WIDE = '(min-width: 60rem)';

interface Props {
  words: string;
  class?: string;
  /** whether it is open at first: `wide` where there is room */
  open?: boolean | 'wide';
  children: ComponentChildren;
}

/** A part of the panel that not everybody needs: on a phone the way to the answer is not to be long. */
export function PanelFold({ words, class: className = '', open = false, children }: Props) {
  const [isOpen] = useState(() => (open === 'wide' ? matchMedia(WIDE).matches : open));
  return (
    <details class={`fold ${className}`.trim()} open={isOpen}>
      <summary>{words}</summary>
      {children}
    </details>
  );
}

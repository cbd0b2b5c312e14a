import { type ComponentChildren, h, hydrate } from 'preact';
import type { Calculator } from '../scenario/index.ts';
import type { Answering } from './answer.ts';
import { Island } from './Island.tsx';
import type { Handle, IslandProps } from './useScenario.ts';

/** What makes a calculator live whose finished HTML stands in `place`; `load` brings what answers it, and `above` is what stands over it on its own page. */
export const islandOf =
  (definition: Calculator, load: () => Promise<Answering>, above?: (tool: Handle) => ComponentChildren) =>
  (place: Element, props: IslandProps): void =>
    hydrate(h(Island, { ...props, definition, load, above: props.page && !props.query ? above : undefined }), place);

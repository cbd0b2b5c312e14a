import { h, hydrate } from 'preact';
import type { Calculator } from '../scenario/index.ts';
import type { Answering } from './answer.ts';
import { Island } from './Island.tsx';
import type { IslandProps } from './useScenario.ts';

/** What makes a calculator live whose finished HTML stands in `place`; `load` brings what answers it. */
export const islandOf =
  (definition: Calculator, load: () => Promise<Answering>) =>
  (place: Element, props: IslandProps): void =>
    hydrate(h(Island, { ...props, definition, load }), place);

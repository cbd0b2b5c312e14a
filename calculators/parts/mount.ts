import { type ComponentType, h, hydrate } from 'preact';
import type { IslandProps } from './useScenario.ts';

/** What makes a calculator live whose finished HTML stands in `place`. */
export const mountOf =
  (View: ComponentType<IslandProps>) =>
  (place: Element, props: IslandProps): void =>
    hydrate(h(View, props), place);

import { type ComponentType, h, hydrate } from 'preact';
import type { IslandProps } from './useScenario.ts';

/** What the page hands to a calculator that it wakes: all but the chart and the sentences, which came with the page. */
export type LiveProps = Omit<IslandProps, 'chart' | 'remarks' | 'inputs'>;

/** What makes a calculator live whose finished HTML stands in `place`. */
export const mountOf =
  (View: ComponentType<LiveProps>) =>
  (place: Element, props: LiveProps): void =>
    hydrate(h(View, props), place);

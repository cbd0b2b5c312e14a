import { h, hydrate } from 'preact';
import { Day } from './Day.tsx';

/** Makes the page of a test day live, whose first paint stands in `place`. */
export function mount(place: Element): void {
  hydrate(h(Day, null), place);
}

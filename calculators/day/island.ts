import { h, hydrate, render } from 'preact';
import { Day } from './Day.tsx';
import { isEmbedded } from './embed.ts';

/** Makes the page of a test day live, whose first paint stands in `place`: the result alone where another page shows it. */
export async function mount(place: Element): Promise<void> {
  if (!isEmbedded()) {
    hydrate(h(Day, null), place);
    return;
  }
  const { Embedded } = await import('./Embedded.tsx');
  place.replaceChildren();
  render(h(Embedded, null), place);
}

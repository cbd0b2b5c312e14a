import { mount } from '../calculators/day/island.ts';

/* Wakes the test day. Its page asks for all of its code by itself, because on the hill there may be no signal to ask for more. */

const place = document.querySelector<HTMLElement>('[data-test-day]');
if (place)
  mount(place).then(() => {
    place.dataset.live = '';
  });

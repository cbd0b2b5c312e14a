import type { IslandProps } from '../calculators/parts/useScenario.ts';
import type { CalculatorName } from '../calculators/scenario/index.ts';

/*
 * Wakes the calculators of a page. They arrive as finished HTML; this makes them live: at once on a page that reads its address,
 * elsewhere when they come into view. Astro's own loader does the same for any framework in two kilobytes more.
 */

const islands: Record<CalculatorName, () => Promise<{ mount: (place: Element, props: IslandProps) => void }>> = {
  'climb-time': () => import('../calculators/climb-time/island.ts'),
  'side-by-side': () => import('../calculators/side-by-side/island.ts'),
  'bigger-hill': () => import('../calculators/bigger-hill/island.ts'),
  'power-to-weight': () => import('../calculators/power-to-weight/island.ts'),
  'torque-at-cadence': () => import('../calculators/torque-at-cadence/island.ts'),
  'gears-and-restart': () => import('../calculators/gears-and-restart/island.ts'),
  'holding-peak-power': () => import('../calculators/holding-peak-power/island.ts'),
  'watt-hours': () => import('../calculators/watt-hours/island.ts'),
  'keep-up': () => import('../calculators/keep-up/island.ts'),
  'what-changes-it': () => import('../calculators/what-changes-it/island.ts'),
  'your-hill': () => import('../calculators/your-hill/island.ts'),
  plan: () => import('../calculators/plan/island.ts'),
};

async function wake(place: HTMLElement): Promise<void> {
  const { island, props = '{}' } = place.dataset;
  const { mount } = await islands[island as CalculatorName]();
  mount(place, JSON.parse(props));
  place.dataset.live = '';
}

const seen = new IntersectionObserver(
  (entries) => {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      seen.unobserve(target);
      wake(target as HTMLElement);
    }
  },
  { rootMargin: '200px' },
);

for (const place of document.querySelectorAll<HTMLElement>('[data-island]')) {
  if ('page' in place.dataset) wake(place);
  else seen.observe(place);
}

import type { LiveProps } from '../calculators/parts/mount.ts';
import type { CalculatorName } from '../calculators/scenario/index.ts';

/*
 * Wakes the calculators of a page. They arrive as finished HTML; this makes them live: at once on a page that reads its address,
 * elsewhere when they come into view. Astro's own loader does the same for any framework in two kilobytes more.
 */

const views: Partial<Record<CalculatorName, () => Promise<{ mount: (place: Element, props: LiveProps) => void }>>> = {
  'climb-time': () => import('../calculators/climb-time/ClimbTime.tsx'),
  'side-by-side': () => import('../calculators/side-by-side/SideBySide.tsx'),
  'bigger-hill': () => import('../calculators/bigger-hill/BiggerHill.tsx'),
  'power-to-weight': () => import('../calculators/power-to-weight/PowerToWeight.tsx'),
  'torque-at-cadence': () => import('../calculators/torque-at-cadence/TorqueAtCadence.tsx'),
  'holding-peak-power': () => import('../calculators/holding-peak-power/HoldingPeakPower.tsx'),
  'watt-hours': () => import('../calculators/watt-hours/WattHours.tsx'),
  'keep-up': () => import('../calculators/keep-up/KeepUp.tsx'),
  'what-changes-it': () => import('../calculators/what-changes-it/WhatChangesIt.tsx'),
};

async function wake(place: HTMLElement): Promise<void> {
  const { island, props = '{}' } = place.dataset;
  const view = await views[island as CalculatorName]?.();
  view?.mount(place, JSON.parse(props));
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

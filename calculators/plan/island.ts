import { islandOf } from '../parts/island.ts';
import { plan } from '../scenario/definitions/plan.ts';

export const mount = islandOf(plan, async () => (await import('./Plan.tsx')).planAnswer);

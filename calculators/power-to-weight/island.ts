import { islandOf } from '../parts/island.ts';
import { powerToWeight } from '../scenario/definitions/power-to-weight.ts';

export const mount = islandOf(powerToWeight, async () => (await import('./PowerToWeight.tsx')).powerToWeightAnswer);

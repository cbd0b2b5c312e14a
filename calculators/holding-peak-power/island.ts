import { islandOf } from '../parts/island.ts';
import { holdingPeakPower } from '../scenario/definitions/holding-peak-power.ts';

export const mount = islandOf(
  holdingPeakPower,
  async () => (await import('./HoldingPeakPower.tsx')).holdingPeakPowerAnswer,
);

import { islandOf } from '../parts/island.ts';
import { torqueAtCadence } from '../scenario/definitions/torque-at-cadence.ts';

export const mount = islandOf(
  torqueAtCadence,
  async () => (await import('./TorqueAtCadence.tsx')).torqueAtCadenceAnswer,
);

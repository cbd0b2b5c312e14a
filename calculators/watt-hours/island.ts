import { islandOf } from '../parts/island.ts';
import { wattHours } from '../scenario/definitions/watt-hours.ts';

export const mount = islandOf(wattHours, async () => (await import('./WattHours.tsx')).wattHoursAnswer);

import { islandOf } from '../parts/island.ts';
import { climbTime } from '../scenario/definitions/climb-time.ts';

export const mount = islandOf(climbTime, async () => (await import('./ClimbTime.tsx')).climbTimeAnswer);

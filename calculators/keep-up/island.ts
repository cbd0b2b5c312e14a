import { islandOf } from '../parts/island.ts';
import { keepUp } from '../scenario/definitions/keep-up.ts';

export const mount = islandOf(keepUp, async () => (await import('./KeepUp.tsx')).keepUpAnswer);

import { islandOf } from '../parts/island.ts';
import { biggerHill } from '../scenario/definitions/bigger-hill.ts';

export const mount = islandOf(biggerHill, async () => (await import('./BiggerHill.tsx')).biggerHillAnswer);

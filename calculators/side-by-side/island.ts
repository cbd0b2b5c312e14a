import { islandOf } from '../parts/island.ts';
import { sideBySide } from '../scenario/definitions/side-by-side.ts';

export const mount = islandOf(sideBySide, async () => (await import('./SideBySide.tsx')).sideBySideAnswer);

import { islandOf } from '../parts/island.ts';
import { gearsAndRestart } from '../scenario/definitions/gears-and-restart.ts';

export const mount = islandOf(
  gearsAndRestart,
  async () => (await import('./GearsAndRestart.tsx')).gearsAndRestartAnswer,
);

import { h } from 'preact';
import { islandOf } from '../parts/island.ts';
import { yourHill } from '../scenario/definitions/your-hill.ts';
import { Recording } from './Recording.tsx';

export const mount = islandOf(
  yourHill,
  async () => (await import('./YourHill.tsx')).yourHillAnswer,
  (tool) => h(Recording, { tool }),
);

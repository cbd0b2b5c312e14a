import { islandOf } from '../parts/island.ts';
import { whatChangesIt } from '../scenario/definitions/what-changes-it.ts';

export const mount = islandOf(whatChangesIt, async () => (await import('./WhatChangesIt.tsx')).whatChangesItAnswer);

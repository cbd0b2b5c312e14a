import { air } from './air.ts';
import { alongAProfile, profileRides } from './along-a-profile.ts';
import type { Check } from './check.ts';
import { type Comparison, comparisons as models } from './comparisons.ts';
import { criticalPower } from './critical-power.ts';
import { distributionComparisons, distributions } from './distributions.ts';
import { longClimbs } from './long-climbs.ts';
import { overload } from './overload.ts';
import { roadPower } from './road-power.ts';
import { sampleSize } from './sample-size.ts';
import { startTest } from './start-test.ts';
import { statistics } from './statistics.ts';
import { torque } from './torque.ts';
import { tyres } from './tyres.ts';
import { uncertainty } from './uncertainty.ts';
import { units } from './units.ts';

export * from './check.ts';

/** Every published or recomputed value that the model is held against. */
export const checks: readonly Check[] = [
  ...roadPower,
  ...air,
  ...tyres,
  ...startTest,
  ...torque,
  ...overload,
  ...criticalPower,
  ...units,
  ...uncertainty,
  ...statistics,
  ...distributions,
  ...sampleSize,
  ...alongAProfile,
];

export const comparisons: readonly Comparison[] = [
  ...models,
  ...longClimbs,
  ...profileRides,
  ...distributionComparisons,
];

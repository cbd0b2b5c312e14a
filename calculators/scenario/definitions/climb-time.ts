import { CLIMB } from '../parameters/climb.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, ONE_BIKE, RIDER } from './common.ts';

export const climbTime = defineCalculator({
  name: 'climb-time',
  title: 'Climb time',
  parameters: [CLIMB],
  sections: [HILL, RIDER, { group: 'bike', names: ['bike', 'motor'], folded: ['battery', 'limit'] }, CONDITIONS],
  fold: 'battery, assist limit, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: { 1: { ...COMMON, ...ONE_BIKE } },
  onward: [
    { to: 'side-by-side', words: 'Compare bikes on this hill', bikes: 3 },
    { to: 'power-to-weight', words: 'Power to weight of this rider', bikes: 1 },
  ],
});

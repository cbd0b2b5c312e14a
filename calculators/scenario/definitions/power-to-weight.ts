import { CLIMB } from '../parameters/climb.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, RIDER } from './common.ts';

export const powerToWeight = defineCalculator({
  name: 'power-to-weight',
  title: 'Power to weight',
  parameters: [CLIMB],
  sections: [RIDER, { group: 'bike', names: ['bike', 'motor'], folded: ['limit'] }, HILL, CONDITIONS],
  fold: 'assist limit, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: { 1: { ...COMMON, name: 'Bike', bike: 20, motor: 380 } },
  onward: [{ to: 'climb-time', words: 'This climb in detail', bikes: 1 }],
});

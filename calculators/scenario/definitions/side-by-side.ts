import { CLIMB } from '../parameters/climb.ts';
import { TIMED } from '../parameters/measured.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, RIDER, THREE_BIKES } from './common.ts';

export const sideBySide = defineCalculator({
  name: 'side-by-side',
  title: 'Side by side',
  parameters: [CLIMB, TIMED],
  sections: [
    HILL,
    RIDER,
    { group: 'bike', names: ['name', 'bike', 'motor'], folded: ['time', 'battery', 'limit'] },
    CONDITIONS,
  ],
  fold: 'measured times, batteries, assist limit, air, drive',
  bikes: { min: 2, max: 6, example: 3 },
  controls: 0,
  defaults: { 1: { ...COMMON, ...THREE_BIKES } },
  onward: [{ to: 'climb-time', words: 'One bike in detail', bikes: 1 }],
});

import { CHANGE } from '../parameters/change.ts';
import { CLIMB } from '../parameters/climb.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, ONE_BIKE, RIDER } from './common.ts';

export const whatChangesIt = defineCalculator({
  name: 'what-changes-it',
  title: 'What changes it',
  parameters: [CLIMB, CHANGE],
  sections: [
    HILL,
    RIDER,
    { group: 'bike', names: ['bike', 'motor'], folded: ['limit'] },
    {
      group: 'change',
      names: ['change-mass', 'change-rolling', 'change-power', 'change-motor', 'change-wind', 'change-altitude'],
    },
    CONDITIONS,
  ],
  fold: 'assist limit, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      ...COMMON,
      ...ONE_BIKE,
      'change-mass': 9,
      'change-rolling': -0.15,
      'change-power': 20,
      'change-motor': 50,
      'change-wind': 2,
      'change-altitude': 1500,
    },
  },
  onward: [{ to: 'climb-time', words: 'This climb in detail', bikes: 1 }],
});

import { CHANGE } from '../parameters/change.ts';
import { CLIMB } from '../parameters/climb.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, RIDER } from './common.ts';

export const whatChangesIt = defineCalculator({
  name: 'what-changes-it',
  title: 'What changes it',
  parameters: [CLIMB, CHANGE],
  sections: [
    {
      group: 'change',
      names: ['change-mass', 'change-rolling', 'change-power', 'change-motor', 'change-wind', 'change-altitude'],
      legend: 'Changes, with a minus for less',
    },
    HILL,
    RIDER,
    { group: 'bike', names: ['bike', 'motor'], folded: ['limit'] },
    // the drive unit decides what a battery gives, not the time
    { ...CONDITIONS, folded: CONDITIONS.folded.filter((name) => name !== 'unit') },
  ],
  fold: 'assist limit, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      ...COMMON,
      name: 'Bike',
      bike: 20,
      motor: 380,
      'change-mass': 9,
      'change-rolling': -0.15,
      'change-power': 20,
      'change-motor': 50,
      'change-wind': 2,
      'change-altitude': 1500,
    },
  },
  onward: [
    { to: 'climb-time', words: 'This climb in detail', bikes: 1 },
    { to: 'side-by-side', words: 'Compare bikes on this hill', bikes: 3 },
  ],
});

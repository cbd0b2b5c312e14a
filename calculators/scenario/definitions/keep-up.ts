import { kmh } from '../amounts.ts';
import { CLIMB } from '../parameters/climb.ts';
import { COMPANION } from '../parameters/companion.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, ONE_BIKE, RIDER } from './common.ts';

export const keepUp = defineCalculator({
  name: 'keep-up',
  title: 'Keep up',
  parameters: [CLIMB, COMPANION],
  sections: [
    HILL,
    {
      group: 'companion',
      names: ['companion-rider', 'companion-power', 'companion-bike', 'companion-motor'],
      folded: ['companion-limit'],
    },
    { ...RIDER, legend: 'You' },
    { group: 'bike', names: ['bike', 'motor'], folded: ['limit'], legend: 'Your bike' },
    CONDITIONS,
  ],
  fold: 'assist limits, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      ...COMMON,
      ...ONE_BIKE,
      'companion-rider': 75,
      'companion-power': 210,
      'companion-bike': 24,
      'companion-motor': 560,
      'companion-limit': kmh(25),
    },
  },
  onward: [{ to: 'climb-time', words: 'Your climb in detail', bikes: 1 }],
});

import { CLIMB } from '../parameters/climb.ts';
import { ENDURANCE } from '../parameters/endurance.ts';
import { HEAT } from '../parameters/heat.ts';
import { CARRIED, TIMED } from '../parameters/measured.ts';
import { TARGET_PROFILE } from '../parameters/profile.ts';
import { RESERVE } from '../parameters/reserve.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, LONG_CLIMB, THREE_BIKES, TIRING_RIDER, WARM_MOTOR } from './common.ts';

export const biggerHill = defineCalculator({
  name: 'bigger-hill',
  title: 'Another hill',
  parameters: [CLIMB, TIMED, CARRIED, ENDURANCE, HEAT, RESERVE, TARGET_PROFILE],
  sections: [
    { ...HILL, legend: 'The measured hill' },
    TIRING_RIDER,
    { group: 'bike', names: ['name', 'bike', 'time'], folded: ['battery', 'limit', 'continuous'] },
    { ...WARM_MOTOR, folded: [...WARM_MOTOR.folded, 'reserve'], legend: 'Heat and reserve' },
    { group: 'control', names: ['control-time', 'control-power', 'control-bike'], folded: ['control-rider'] },
    {
      group: 'target',
      names: ['target-gain', 'target-grade', 'target-distance', 'target-rider', 'target-power'],
      folded: ['target-profile', 'target-rolling', 'target-altitude', 'target-temperature', 'target-wind'],
    },
    { ...CONDITIONS, names: [], folded: ['rolling', ...CONDITIONS.folded] },
  ],
  fold: 'hill in pieces, batteries, assist limit, heat, endurance, surface, air, drive',
  bikes: { min: 1, max: 6, example: 3 },
  controls: 1,
  defaults: {
    1: {
      ...COMMON,
      ...THREE_BIKES,
      ...LONG_CLIMB,
      time: [704, 575, 478, 600],
      'control-time': [1720, 1360],
      'control-power': [170, 220],
      'control-bike': [13],
      'target-gain': 600,
    },
  },
  onward: [{ to: 'side-by-side', words: 'Other bikes on the measured hill', bikes: 3 }],
});

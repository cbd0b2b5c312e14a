import { CLIMB } from '../parameters/climb.ts';
import { ENDURANCE } from '../parameters/endurance.ts';
import { HEAT } from '../parameters/heat.ts';
import { TIMED } from '../parameters/measured.ts';
import { PROFILE } from '../parameters/profile.ts';
import { RESERVE } from '../parameters/reserve.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL_OR_PROFILE, LONG_CLIMB, THREE_BIKES, TIRING_RIDER, WARM_MOTOR } from './common.ts';

export const sideBySide = defineCalculator({
  name: 'side-by-side',
  title: 'Side by side',
  parameters: [CLIMB, TIMED, ENDURANCE, HEAT, RESERVE, PROFILE],
  sections: [
    HILL_OR_PROFILE,
    TIRING_RIDER,
    { group: 'bike', names: ['name', 'bike', 'motor'], folded: ['time', 'battery', 'limit', 'continuous'] },
    { ...WARM_MOTOR, folded: [...WARM_MOTOR.folded, 'reserve'], legend: 'Heat and reserve' },
    CONDITIONS,
  ],
  fold: 'hill in pieces, measured times, batteries, assist limit, heat, endurance, air, drive',
  bikes: { min: 2, max: 6, example: 3 },
  controls: 0,
  defaults: { 1: { ...COMMON, ...THREE_BIKES, ...LONG_CLIMB } },
  onward: [
    { to: 'climb-time', words: 'One bike in detail', bikes: 1 },
    { to: 'keep-up', words: 'Ride with somebody else', bikes: 1, hill: 'either' },
    { to: 'your-hill', words: 'A hill whose grade varies', bikes: 3, hill: 'pieces' },
  ],
});

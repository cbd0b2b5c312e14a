import { CLIMB } from '../parameters/climb.ts';
import { ENDURANCE } from '../parameters/endurance.ts';
import { HEAT } from '../parameters/heat.ts';
import { MOTOR } from '../parameters/motor.ts';
import { RESERVE } from '../parameters/reserve.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, LONG_CLIMB, ONE_BIKE, TIRING_RIDER, WARM_MOTOR } from './common.ts';

export const climbTime = defineCalculator({
  name: 'climb-time',
  title: 'Climb time',
  parameters: [CLIMB, MOTOR, ENDURANCE, HEAT, RESERVE],
  sections: [
    HILL,
    TIRING_RIDER,
    {
      group: 'bike',
      names: ['bike', 'motor'],
      folded: ['battery', 'reserve', 'limit', 'support', 'torque', 'cadence'],
    },
    { ...WARM_MOTOR, folded: ['continuous', ...WARM_MOTOR.folded] },
    CONDITIONS,
  ],
  fold: 'battery, assist limit, torque, heat, endurance, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: { 1: { ...COMMON, ...ONE_BIKE, ...LONG_CLIMB, cadence: 75 } },
  onward: [
    { to: 'side-by-side', words: 'Compare bikes on this hill', bikes: 3 },
    { to: 'power-to-weight', words: 'Power to weight of this rider', bikes: 1 },
    { to: 'watt-hours', words: 'How many such climbs on a charge', bikes: 1 },
    { to: 'what-changes-it', words: 'What would change this time', bikes: 1 },
  ],
});

import { millimetres } from '../amounts.ts';
import { CLIMB } from '../parameters/climb.ts';
import { ENDURANCE } from '../parameters/endurance.ts';
import { GEARS } from '../parameters/gears.ts';
import { HEAT } from '../parameters/heat.ts';
import { MOTOR } from '../parameters/motor.ts';
import { DOWNHILL, PROFILE, TOP_SPEED } from '../parameters/profile.ts';
import { RESERVE } from '../parameters/reserve.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, LONG_CLIMB, RIDER, THREE_BIKES, TIRING_RIDER, WARM_MOTOR } from './common.ts';

const { distance: _distance, gain: _gain, ...WITHOUT_HILL } = COMMON;

/** An invented hill: a gentle start, a ramp, a flat, a short dip, and a steep end. */
const EXAMPLE =
  '1:180,9.1:240,20.4:200,18.6:150,23.7:110,21.6:90,11.2:210,1.5:180,3.4:260,24.8:160,15.9:120,-5.2:90,-1.6:220,17.4:290,33:230,27.3:170,22.3:140,16.6';

export const yourHill = defineCalculator({
  name: 'your-hill',
  title: 'Your hill',
  parameters: [CLIMB, MOTOR, ENDURANCE, HEAT, RESERVE, GEARS, DOWNHILL, PROFILE],
  sections: [
    { group: 'hill', names: [], folded: ['profile'] },
    { ...RIDER, folded: [...TIRING_RIDER.folded, 'cadence', 'top-speed'] },
    {
      group: 'bike',
      names: ['name', 'bike', 'motor', 'battery'],
      folded: ['torque', 'support', 'limit', 'continuous'],
    },
    { group: 'gears', names: [], folded: ['ring', 'sprocket', 'wheel'], legend: 'Lowest gear' },
    { ...WARM_MOTOR, folded: [...WARM_MOTOR.folded, 'reserve'], legend: 'Heat and reserve' },
    CONDITIONS,
  ],
  fold: 'the hill in pieces, endurance, cadence, torque, support, assist limit, gears, heat, air, drive',
  bikes: { min: 1, max: 6, example: 3 },
  controls: 0,
  defaults: {
    1: {
      ...WITHOUT_HILL,
      ...THREE_BIKES,
      ...LONG_CLIMB,
      profile: EXAMPLE,
      cadence: 75,
      ring: 32,
      sprocket: 50,
      wheel: millimetres(350),
      'top-speed': TOP_SPEED,
    },
  },
  onward: [
    { to: 'side-by-side', words: 'The bikes side by side', bikes: 3, hill: 'either' },
    { to: 'keep-up', words: 'Ride it with somebody else', bikes: 1, hill: 'either' },
    { to: 'watt-hours', words: 'How many such climbs on a charge', bikes: 1, hill: 'either' },
    { to: 'bigger-hill', words: 'Carry a measured climb to it', bikes: 3, hill: 'target' },
  ],
});

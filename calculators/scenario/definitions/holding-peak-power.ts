import { CLIMB } from '../parameters/climb.ts';
import { HEAT } from '../parameters/heat.ts';
import { MOTOR } from '../parameters/motor.ts';
import { WARMING } from '../parameters/warming.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, RIDER, WARMING_UP } from './common.ts';

export const holdingPeakPower = defineCalculator({
  name: 'holding-peak-power',
  title: 'Holding peak power',
  parameters: [CLIMB, MOTOR, HEAT, WARMING],
  sections: [
    { group: 'bike', names: ['motor', 'bike'], folded: ['limit'] },
    {
      group: 'heat',
      names: ['continuous', 'warm-up'],
      folded: ['continuous-cadence', 'cadence', 'warm', 'fixed-losses'],
    },
    HILL,
    RIDER,
    CONDITIONS,
  ],
  labels: { motor: 'Peak power' },
  fold: 'cadence, warm start, losses, assist limit, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      ...COMMON,
      name: 'Bike',
      distance: 9000,
      gain: 880,
      motor: 560,
      bike: 24,
      continuous: 320,
      cadence: 75,
      'continuous-cadence': 75,
      ...WARMING_UP,
      warm: 0,
    },
  },
  onward: [{ to: 'watt-hours', words: 'What that takes from the battery', bikes: 1 }],
});

import { millimetres } from '../amounts.ts';
import { CLIMB } from '../parameters/climb.ts';
import { GEARS } from '../parameters/gears.ts';
import { MOTOR } from '../parameters/motor.ts';
import { defineCalculator } from '../schema.ts';
import { RIDER } from './common.ts';

export const gearsAndRestart = defineCalculator({
  name: 'gears-and-restart',
  title: 'Gears and restart',
  parameters: [CLIMB, MOTOR, GEARS],
  sections: [
    { group: 'hill', names: ['grade'], legend: 'The ramp' },
    { ...RIDER, folded: ['cadence', 'push'] },
    { group: 'bike', names: ['bike', 'torque'], folded: ['motor', 'support'] },
    { group: 'gears', names: ['ring', 'sprocket'], folded: ['wheel', 'crank'] },
    { group: 'conditions', names: ['rolling'], folded: ['drive'], legend: 'Surface and chain' },
  ],
  labels: { grade: 'Grade', motor: 'Peak power' },
  fold: 'cadence, first push, peak power, support, wheel, crank, chain',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      grade: 0.2,
      rider: 82,
      power: 170,
      rolling: 0.028,
      drive: 0.96,
      name: 'Bike',
      bike: 20,
      motor: 500,
      torque: 60,
      support: 3.4,
      ring: 32,
      sprocket: 50,
      wheel: millimetres(350),
      crank: millimetres(165),
      push: 0.5,
      cadence: 60,
    },
  },
  onward: [
    { to: 'torque-at-cadence', words: 'What the motor gives at other cadences', bikes: 2 },
    { to: 'climb-time', words: 'How long a climb takes', bikes: 1 },
  ],
});

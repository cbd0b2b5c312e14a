import { CLIMB } from '../parameters/climb.ts';
import { MOTOR } from '../parameters/motor.ts';
import { defineCalculator } from '../schema.ts';

export const torqueAtCadence = defineCalculator({
  name: 'torque-at-cadence',
  title: 'Torque at a cadence',
  parameters: [CLIMB, MOTOR],
  sections: [
    { group: 'rider', names: ['cadence', 'power'] },
    { group: 'bike', names: ['name', 'torque', 'motor'], folded: ['support'], legend: 'Motors' },
  ],
  labels: { torque: 'Torque', motor: 'Peak power' },
  fold: 'how much each motor adds to your power',
  bikes: { min: 1, max: 6, example: 2 },
  one: 'motor',
  controls: 0,
  defaults: {
    1: {
      power: 170,
      cadence: 70,
      name: ['Motor A', 'Motor B', 'Motor 3', 'Motor 4', 'Motor 5', 'Motor 6'],
      torque: [60, 85, 60],
      motor: [500, 600, 500],
      support: [3.4, 4, 3.4],
    },
  },
  onward: [{ to: 'climb-time', words: 'How long a climb takes', bikes: 1 }],
});

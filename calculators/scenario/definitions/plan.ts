import { kilojoules } from '../amounts.ts';
import { CLIMB } from '../parameters/climb.ts';
import { ENDURANCE } from '../parameters/endurance.ts';
import { CARRIED, TIMED } from '../parameters/measured.ts';
import { PLAN } from '../parameters/plan.ts';
import { RESERVE } from '../parameters/reserve.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, RIDER, THREE_BIKES } from './common.ts';

export const plan = defineCalculator({
  name: 'plan',
  title: 'Plan a test',
  parameters: [CLIMB, TIMED, CARRIED, ENDURANCE, RESERVE, PLAN],
  sections: [
    HILL,
    { ...RIDER, names: [...RIDER.names, 'endurance'], folded: ['endurance-work'] },
    { group: 'bike', names: ['name', 'bike', 'motor'], folded: ['time', 'battery', 'limit'] },
    { group: 'control', names: ['control-power', 'control-bike'], folded: ['control-time'] },
    {
      group: 'test',
      names: ['difference', 'chance', 'scatter', 'repeats'],
      folded: ['own-times', 'meter-repeat', 'watch', 'same-tyres', 'between', 'order'],
    },
    {
      group: 'schedule',
      names: ['first-start', 'last-light', 'way-down', 'cool-down'],
      folded: ['swap', 'reserve'],
    },
    { ...CONDITIONS, names: [], folded: ['rolling', ...CONDITIONS.folded] },
  ],
  labels: {
    time: 'Expected time',
    'control-time': 'Expected time',
    power: 'Target power',
    reserve: 'Kept in a battery',
  },
  fold: 'expected times, batteries, your own repeats, instruments, tyres, order, surface, air, drive',
  bikes: { min: 2, max: 6, example: 3 },
  controls: 2,
  defaults: {
    1: {
      ...COMMON,
      ...THREE_BIKES,
      endurance: 200,
      'endurance-work': kilojoules(15),
      reserve: 0.2,
      'control-power': 170,
      'control-bike': 13,
      difference: 40,
      chance: 0.8,
      // what a test day assumes too: see `doubts.ts`, which a form need not load
      scatter: 0.035,
      'meter-repeat': 0.024,
      watch: 1,
      'same-tyres': 'yes',
      between: 0.015,
      order: 'rotated',
      'first-start': '9:00',
      'last-light': '19:00',
      'way-down': 420,
      'cool-down': 480,
      swap: 300,
    },
  },
  onward: [
    { to: 'side-by-side', words: 'The bikes side by side', bikes: 3 },
    { to: 'watt-hours', words: 'One battery in detail', bikes: 1 },
  ],
});

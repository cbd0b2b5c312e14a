import { wattHours as wh } from '../amounts.ts';
import { GAUGE, USABLE } from '../parameters/battery.ts';
import { CLIMB } from '../parameters/climb.ts';
import { PROFILE } from '../parameters/profile.ts';
import { RESERVE } from '../parameters/reserve.ts';
import { TIMED } from '../parameters/timed.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL, HILL_OR_PROFILE, ONE_BIKE, RIDER } from './common.ts';

export const wattHours = defineCalculator({
  name: 'watt-hours',
  title: 'Watt-hours',
  parameters: [CLIMB, TIMED, RESERVE, USABLE, GAUGE, PROFILE],
  sections: [
    { ...HILL_OR_PROFILE, names: [...HILL.names, 'laps'] },
    RIDER,
    { group: 'bike', names: ['bike', 'motor', 'battery'], folded: ['limit'] },
    {
      group: 'battery',
      names: ['reserve', 'health', 'cold'],
      folded: ['add-on', 'volts', 'amp-hours', 'idle', 'start', 'end', 'step', 'time'],
    },
    CONDITIONS,
  ],
  labels: { time: 'Climbing time between readings' },
  fold: 'hill in pieces, add-on, volts and amp-hours, lights, gauge readings, assist limit, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      ...COMMON,
      ...ONE_BIKE,
      laps: 1,
      reserve: 0.1,
      health: 1,
      cold: 1,
      idle: 5,
      'add-on': wh(0),
      step: 0.01,
    },
  },
  onward: [
    { to: 'climb-time', words: 'This climb in detail', bikes: 1 },
    { to: 'holding-peak-power', words: 'Does the motor hold it', bikes: 1 },
    { to: 'your-hill', words: 'A hill whose grade varies', bikes: 3, hill: 'pieces' },
  ],
});

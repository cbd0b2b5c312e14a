import { kilojoules, kmh } from '../amounts.ts';
import { CLIMB } from '../parameters/climb.ts';
import { COMPANION } from '../parameters/companion.ts';
import { ENDURANCE } from '../parameters/endurance.ts';
import { PROFILE } from '../parameters/profile.ts';
import { defineCalculator } from '../schema.ts';
import { COMMON, CONDITIONS, HILL_OR_PROFILE, ONE_BIKE, TIRING_RIDER } from './common.ts';

export const keepUp = defineCalculator({
  name: 'keep-up',
  title: 'Keep up',
  parameters: [CLIMB, COMPANION, ENDURANCE, PROFILE],
  sections: [
    HILL_OR_PROFILE,
    { ...TIRING_RIDER, legend: 'You' },
    { group: 'bike', names: ['bike', 'motor'], folded: ['battery', 'limit'], legend: 'Your bike' },
    {
      group: 'companion',
      names: ['companion-rider', 'companion-power', 'companion-bike', 'companion-motor'],
      folded: ['companion-limit'],
    },
    CONDITIONS,
  ],
  fold: 'hill in pieces, your battery, assist limits, endurance, air, drive',
  bikes: { min: 1, max: 1, example: 1 },
  controls: 0,
  defaults: {
    1: {
      ...COMMON,
      ...ONE_BIKE,
      'endurance-work': kilojoules(15),
      'companion-rider': 78,
      'companion-power': 180,
      'companion-bike': 21,
      'companion-motor': 400,
      'companion-limit': kmh(25),
    },
  },
  onward: [
    { to: 'climb-time', words: 'Your climb in detail', bikes: 1 },
    { to: 'what-changes-it', words: 'What would change your time', bikes: 1 },
    { to: 'watt-hours', words: 'Whether your battery lasts', bikes: 1, hill: 'either' },
    { to: 'side-by-side', words: 'Compare bikes on this hill', bikes: 3, hill: 'either' },
    { to: 'your-hill', words: 'A hill whose grade varies', bikes: 3, hill: 'pieces' },
  ],
});

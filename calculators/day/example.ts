import type { System } from '../quantities/index.ts';
import { shortText } from '../scenario/scenario.ts';
import { type DayBike, type DayDocument, type DayRun, DOCUMENT_VERSION } from './document.ts';
import { chooseSystem } from './editing.ts';

/*
 * An invented test day: three bikes with a motor and one without, forward and back. Its times are those of the model with motors of 290,
 * 440 and 590 W, rolling resistance of 0.026 and 0.8 % of scatter from run to run; a test reads these motors back.
 */

export const EXAMPLE_TITLE = 'An invented test day';

const bike = (id: string, name: string, texts: Record<string, string>): DayBike => ({
  id,
  texts: { name, tyres: 'Knobbly 29 × 2.4, 1.6 bar', ...texts },
});

const bikes: readonly DayBike[] = [
  bike('control', 'Without motor', { bike: '12.4', motor: 'none' }),
  bike('light', 'Light assist', { bike: '18.6', motor: '300', battery: '360', limit: '25' }),
  bike('mid', 'Mid assist', { bike: '22.9', motor: '450', battery: '500', limit: '25' }),
  bike('full', 'Full assist', { bike: '24.7', motor: '600', battery: '720', limit: '25' }),
];

/** Bike, time, rider power, cadence, gauge before and after. */
const rows: readonly (readonly [string, string, string, string, string?, string?])[] = [
  ['control', '15:04', '203', '68'],
  ['light', '6:48', '203', '76', '97', '86'],
  ['mid', '5:31', '199', '78', '98', '88'],
  ['full', '4:36', '198', '79', '99', '91'],
  ['full', '4:35', '197', '80', '91', '83'],
  ['mid', '5:30', '207', '79', '88', '78'],
  ['light', '6:45', '202', '77', '86', '74'],
  ['light', '6:50', '202', '76', '74', '63'],
  ['mid', '5:36', '197', '77', '78', '68'],
  ['full', '4:37', '201', '79', '83', '75'],
  ['control', '14:51', '204', '69'],
];

const runs: readonly DayRun[] = rows.map(([owner, time, power, cadence, start, end], index) => ({
  id: `run-${index + 1}`,
  bike: owner,
  assisted: owner !== 'control',
  counted: true,
  texts: { time, power, cadence, ...(start && end ? { start, end } : {}) },
}));

/** A complete day to look at: invented, and its title says so. In US units it has the figures that one would write down there. */
export function exampleDay(system: System = 'metric'): DayDocument {
  const day: DayDocument = {
    version: DOCUMENT_VERSION,
    system: 'metric',
    comparing: 'bikes',
    setup: {
      title: EXAMPLE_TITLE,
      distance: '1.5',
      gain: '150',
      altitude: '600',
      temperature: '18',
      rider: '82',
      power: '200',
      'target-gain': '600',
    },
    bikes,
    runs,
  };
  return chooseSystem(day, system, shortText);
}

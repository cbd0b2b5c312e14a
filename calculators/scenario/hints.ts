import type { CalculatorName } from './schema.ts';

/** A sentence below a field, and the id in the bibliography of a figure that it names. */
export interface Hint {
  text: string;
  source?: string;
}

/*
 * Hints come with the page; their texts load with the fold of a form, whose fields are made in the reader's browser.
 */

const hints: Readonly<Record<string, Hint>> = {
  health: { text: 'Capacity now, as a share of new.' },
  cold: { text: 'One laboratory cell gave 88 % at 2 °C of what it gave at 32 °C.', source: 'bubulinca-2016' },
  volts: { text: 'Volts and amp-hours together count in place of the battery’s watt-hours.' },
  step: { text: 'Five bars are steps of 20 %.' },
  'change-rolling': { text: 'Nine tyres on one course were 15 % apart.', source: 'maier-2018' },
  grade: { text: 'Used when the height is left empty. 10 %, 1 in 10 and 5.7° all work.' },
  rolling: { text: 'A paved path took 0.008, two cross-country courses 0.022 and 0.030.', source: 'tengattini-2018' },
  power: {
    text: 'For scale: racers averaged 2.7 W per kilogram of body; most of us hold less.',
    source: 'smekal-2015',
  },
  motor: { text: 'What it gives, not what it is rated. Write none for a bike without a motor.' },
  limit: { text: 'What applies to you is local law. Write none where nothing limits the motor.' },
  'companion-motor': { text: 'Write none for a bike without a motor.' },
  endurance: { text: 'Critical power: about what you hold for 30 to 60 minutes. Empty: not considered.' },
  wheel: { text: 'From axle to ground, tyre and load included.' },
  push: { text: 'At the first push, as a share of your weight.' },
  continuous: {
    text: 'Continuous output at the crank. The legal 250 W is a rating, not always what a motor can hold.',
  },
  'warm-up': { text: 'After this time a motor has come 63 % of the way to its final temperature.' },
  'target-distance': { text: 'With distance and height, no grade is needed.' },
  'target-grade': { text: 'Empty: the measured hill’s.' },
  cadence: { text: 'Turns of the crank per minute. Professionals turned 71 on mountain passes.', source: 'lucia-2001' },
  support: { text: 'Motor power as a share of yours: 300 % gives three watts for each of your own.' },
  'fixed-losses': { text: 'Losses that do not depend on torque, over the copper losses at continuous output.' },
  difference: { text: 'What would change a reader’s choice.' },
  scatter: {
    text: '19 of 20 runs at one power lie within this of their mean, of total power. Common practice, no source.',
  },
  repeats: { text: 'With no number of your own: as many as it takes.' },
  'own-times': { text: 'One bike, one power: 7:22, 7:18, 7:30. They count in place of the scatter.' },
  between: { text: 'Drive and the like, of total power. It does not average.' },
  'cool-down': { text: 'At the foot, until legs and motor are as before.' },
  swap: { text: 'Before a run that would take a battery below what is kept.' },
  profile: {
    text: 'Comes from Your hill: length and rise of each piece, in metres. It counts in place of the hill above.',
  },
  'target-profile': {
    text: 'Comes from Your hill: length and rise of each piece, in metres. It counts in place of height, grade and distance.',
  },
  'top-speed': { text: 'Where the road falls, the rider brakes rather than go faster. Our assumption: 40 km/h.' },
  warm: { text: 'Share of the permitted rise already there: 0 % from cold.' },
};

/** Where a calculator says something else. */
const own: Readonly<Record<string, Hint>> = {
  'torque-at-cadence motor': { text: 'The most it gives, however short. Write none for no motor.' },
  'gears-and-restart motor': { text: 'The most it gives, however short. Write none for no motor.' },
  'holding-peak-power motor': { text: 'The most it gives before it gets hot.' },
  'plan endurance': { text: 'Critical power: about what you hold for 30 to 60 minutes.' },
  'your-hill profile': { text: 'Comes from the picked climb: length and rise of each piece, in metres.' },
  'gears-and-restart grade': { text: '10 %, 1 in 10 and 5.7° all work.' },
};

/** What stands below a field. */
export function hintOf(calculator: CalculatorName, name: string): Hint | undefined {
  return own[`${calculator} ${name}`] ?? hints[name];
}

/** Every hint, for tests. */
export const allHints: readonly Hint[] = [...Object.values(hints), ...Object.values(own)];

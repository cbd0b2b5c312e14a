import type { CalculatorName } from './schema.ts';

/** A named scenario: a calculator set to a situation that people pass on. All are invented. Its words stand in `content/scenarios/`. */
export interface Preset {
  /** addresses its page: `/scenarios/NAME/` */
  name: string;
  /** the situation in a few words */
  title: string;
  calculator: CalculatorName;
  /** of the calculator's link */
  query: string;
  /** the result that answers it, and what follows it in a sentence */
  answer: { result: string; bike?: number; words: string };
}

export const presets: readonly Preset[] = [
  {
    name: 'after-work-hill',
    title: 'After-work hill, light against full assist',
    calculator: 'side-by-side',
    query:
      'distance=3.1km&gain=320m&rider=78kg&power=160W&name=Light,Full&bike=17kg,24kg&motor=280W,560W&battery=360Wh,720Wh',
    answer: { result: 'gap', bike: 1, words: 'between the two at the top' },
  },
  {
    name: 'two-laps-one-battery',
    title: 'Will one battery do two laps?',
    calculator: 'watt-hours',
    query: 'distance=6.4km&gain=610m&rider=90kg&power=150W&bike=24kg&motor=450W&battery=540Wh&laps=2&health=90',
    answer: { result: 'climbs', words: 'climbs on a charge' },
  },
  {
    name: 'unassisted-friend',
    title: 'Ride with an unassisted friend',
    calculator: 'keep-up',
    query:
      'distance=4.2km&gain=380m&companion-rider=70kg&companion-power=240W&companion-bike=13kg&companion-motor=none&rider=84kg&power=120W&bike=17kg&motor=250W',
    answer: { result: 'rider-needed', words: 'to stay together' },
  },
  {
    name: 'long-pass',
    title: 'A long pass: heat, battery, legs',
    calculator: 'climb-time',
    query:
      'distance=17.5km&gain=1350m&rider=80kg&power=180W&endurance=190W&bike=25kg&motor=520W&battery=720Wh&reserve=10&continuous=320W&rolling=0.008',
    answer: { result: 'time', words: 'to the top' },
  },
  {
    name: 'restart-on-the-ramp',
    title: 'Stopped on the steep ramp',
    calculator: 'gears-and-restart',
    query: 'grade=24&rider=88kg&power=150W&bike=23kg&torque=50Nm&ring=34&sprocket=46',
    answer: { result: 'steepest-held', words: 'is the steepest to keep going on, by force alone' },
  },
  {
    name: 'ramp-and-flat',
    title: 'The same height, not the same hill',
    calculator: 'your-hill',
    query:
      'profile=1:700,10:420,63:500,4:380,57:400,2:300,42&rider=78kg&power=160W&name=Light,Full&bike=17kg,24kg&motor=280W,560W',
    answer: { result: 'time-bias', bike: 1, words: 'longer on ramps and flats than at their mean grade' },
  },
];

/** The preset of that name. @throws RangeError when there is none: a mistake in our own pages. */
export function presetOf(name: string): Preset {
  const preset = presets.find((one) => one.name === name);
  if (!preset) throw new RangeError(`There is no scenario “${name}”.`);
  return preset;
}

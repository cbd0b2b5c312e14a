import { sinOfGrade } from '../model/index.ts';
import { defaultText, plainText } from './editing.ts';
import { writeProfile } from './profile-text.ts';
import { wholeOf } from './profile-words.ts';
import { cellOf, inputOf, isGiven, isOverruled, numberOf, type Scenario } from './scenario.ts';
import type { Way } from './schema.ts';

const HILL: readonly string[] = ['distance', 'gain', 'grade'];
const CONDITIONS_AND_RIDER: readonly string[] =
  'altitude temperature wind rolling drag drive unit rider power cadence endurance endurance-work limit warm-up reserve health cold'.split(
    ' ',
  );
export const HILL_AND_RIDER: readonly string[] = [...HILL, ...CONDITIONS_AND_RIDER];
export const FIRST_BIKE: readonly string[] = ['name', 'bike', 'motor', 'torque', 'support', 'battery', 'continuous'];
/** Inputs of this hill and its rider that are those of the other hill where a measured climb is carried to it. */
const OF_THE_TARGET: readonly string[] = ['altitude', 'temperature', 'wind', 'rolling', 'rider', 'power'];

/** Length and height of the hill, m, whatever it was said by. */
function wholeHill(scenario: Scenario): { distance: number; gain: number } {
  const pieces = inputOf(scenario, 'profile');
  if (typeof pieces === 'string') return wholeOf(pieces);
  const distance = numberOf(scenario, 'distance');
  const grade = inputOf(scenario, 'grade');
  const counts = typeof grade === 'number' && !isGiven(scenario, 'gain');
  return { distance, gain: counts ? distance * sinOfGrade(grade) : numberOf(scenario, 'gain') };
}

/** How the hill goes along. What was said plainly goes as it was said where that is read; nothing in pieces needs escaping. */
function hillPairs(scenario: Scenario, hill: Way['hill'], textOf: (name: string) => string | undefined): string[] {
  const pieces = inputOf(scenario, 'profile');
  if (typeof pieces !== 'string' && hill !== 'pieces')
    return HILL.flatMap((name) => {
      const text = textOf(name);
      return text === undefined ? [] : [`${name}=${encodeURIComponent(text)}`];
    });
  if (typeof pieces === 'string' && hill) return [`${hill === 'target' ? 'target-profile' : 'profile'}=${pieces}`];
  const { distance, gain } = wholeHill(scenario);
  if (hill === 'pieces')
    return [`profile=${writeProfile({ distance: Float64Array.of(0, distance), height: Float64Array.of(0, gain) })}`];
  // a link has no height below zero
  const height =
    gain < 0
      ? `grade=${plainText(gain / Math.sqrt(distance * distance - gain * gain), 'grade')}`
      : `gain=${plainText(gain, 'height')}`;
  return [`distance=${plainText(distance, 'distance')}`, height];
}

/**
 * Query that opens another calculator with what was said here about hill, rider and the first bike.
 * @param differing inputs whose default there is another one than here: they go along untouched too, else another example would open
 */
export function onwardQuery(
  scenario: Scenario,
  { bikes, hill }: Pick<Way, 'bikes' | 'hill'>,
  differing: readonly string[] = [],
): string {
  const textOf = (name: string): string | undefined => {
    if (name !== 'name' && isGiven(scenario, name)) return cellOf(scenario, name)?.canonical;
    return differing.includes(name) && !isOverruled(scenario, name) ? defaultText(scenario, name, 0) : undefined;
  };
  const carriesMeasured = hill === 'target';
  const pair = (name: string, rest = ''): string[] => {
    const text = textOf(name);
    const there = carriesMeasured && OF_THE_TARGET.includes(name) ? `target-${name}` : name;
    return text === undefined ? [] : [`${there}=${encodeURIComponent(text)}${rest}`];
  };
  const pairs = [
    ...hillPairs(scenario, hill, textOf),
    ...CONDITIONS_AND_RIDER.flatMap((name) => pair(name)),
    // the bikes there are those that were measured
    ...(carriesMeasured ? [] : FIRST_BIKE.flatMap((name) => pair(name, ','.repeat(bikes - 1)))),
    ...(scenario.systemChosen ? [`units=${scenario.system}`] : []),
  ];
  return pairs.length > 0 ? `?${pairs.join('&')}` : '';
}

import { sinOfGrade } from '../model/index.ts';
import { defaultText, plainText } from './editing.ts';
import { encodeItem } from './link.ts';
import { writeProfile } from './profile-text.ts';
import { wholeOf } from './profile-words.ts';
import { bikeName, cellOf, columnsOf, inputOf, isGiven, isOverruled, numberOf, type Scenario } from './scenario.ts';
import { calculatorOf, type Way } from './schema.ts';

const HILL: readonly string[] = ['distance', 'gain', 'grade'];
const CONDITIONS_AND_RIDER: readonly string[] =
  'altitude temperature wind rolling drag drive unit rider power cadence endurance endurance-work warm-up reserve health cold'.split(
    ' ',
  );
const LIMIT = 'limit';
/** Of a bike, besides its assist limit. */
const OF_A_BIKE: readonly string[] = ['name', 'bike', 'motor', 'torque', 'support', 'battery', 'continuous'];
/** What was measured with several bikes up this hill holds for them there too. */
const MEASURED: readonly string[] = ['time'];
/** Inputs that go along where both calculators have them. */
export const FOR_ALL: readonly string[] = [...HILL, ...CONDITIONS_AND_RIDER];
export const PER_BIKE: readonly string[] = [LIMIT, ...OF_A_BIKE];
export const PER_MEASURED_BIKE: readonly string[] = [...PER_BIKE, ...MEASURED];
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
  // no calculator of whole hills reads pieces: it hands them on, and says that the hill came whole
  const beside = typeof pieces === 'string' ? [`profile=${pieces}`] : [];
  return [`distance=${plainText(distance, 'distance')}`, height, ...beside];
}

/** Both take several bikes. */
const isForSeveral = (scenario: Scenario, { bikes }: Pick<Way, 'bikes'>): boolean =>
  bikes > 1 && calculatorOf(scenario.calculator).bikes.max > 1;

/** What a way onward is called: where there is room for one bike of several, with whose. */
export function onwardWords(scenario: Scenario, { words, bikes }: Pick<Way, 'words' | 'bikes'>): string {
  const isOneOfSeveral = bikes === 1 && scenario.bikes > 1 && calculatorOf(scenario.calculator).bikes.max > 1;
  return isOneOfSeveral ? `${words}, with ${bikeName(scenario, 0)}` : words;
}

/**
 * Query that opens another calculator with what was said here about hill, rider and bikes: all of them where it takes several, else the first.
 * @param differing inputs whose default there is another one than here: they go along untouched too, else another example would open
 */
export function onwardQuery(
  scenario: Scenario,
  way: Pick<Way, 'bikes' | 'hill'>,
  differing: readonly string[] = [],
): string {
  const { bikes, hill } = way;
  const textOf = (name: string, column = 0): string | undefined => {
    if (isGiven(scenario, name, column)) return cellOf(scenario, name, column)?.canonical;
    return differing.includes(name) && !isOverruled(scenario, name) ? defaultText(scenario, name, column) : undefined;
  };
  const pair = (name: string): string[] => {
    const text = textOf(name);
    const there = hill === 'target' && OF_THE_TARGET.includes(name) ? `target-${name}` : name;
    return text === undefined ? [] : [`${there}=${encodeURIComponent(text)}`];
  };
  const pairs = [
    ...hillPairs(scenario, hill, textOf),
    ...CONDITIONS_AND_RIDER.flatMap(pair),
    // the bikes there are those that were measured
    ...(hill === 'target'
      ? pair(LIMIT)
      : isForSeveral(scenario, way)
        ? bikePairs(scenario, bikes, textOf)
        : firstBike()),
    ...(scenario.systemChosen ? [`units=${scenario.system}`] : []),
  ];
  return pairs.length > 0 ? `?${pairs.join('&')}` : '';

  /** One bike beside those of the example there. All have the limit that was said of it: it is the law where they are ridden. */
  function firstBike(): string[] {
    const lists = OF_A_BIKE.flatMap((name) => {
      // a calculator for one bike asks for no name
      const text = name === 'name' && isGiven(scenario, name) ? undefined : textOf(name);
      return text === undefined ? [] : [`${name}=${encodeItem(text)}${','.repeat(bikes - 1)}`];
    });
    return [...pair(LIMIT), ...lists];
  }
}

/** All bikes. The name is said of each where there are not as many as in the example there, because the length of a list is their number. */
function bikePairs(
  scenario: Scenario,
  example: number,
  textOf: (name: string, column: number) => string | undefined,
): string[] {
  // one bike alone would be taken for all of the example
  const count = scenario.bikes === 1 ? example : scenario.bikes;
  const isWhole = count !== example;
  return PER_MEASURED_BIKE.flatMap((name) => {
    const items = columnsOf(scenario, name).map(
      (column) =>
        textOf(name, column) ?? (isWhole && name === 'name' ? defaultText(scenario, name, column) : undefined),
    );
    if (items.every((item) => item === undefined)) return [];
    return [`${name}=${Array.from({ length: count }, (_, column) => encodeItem(items[column] ?? '')).join(',')}`];
  });
}

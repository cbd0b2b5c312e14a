import { defaultText } from './editing.ts';
import { cellOf, isGiven, isOverruled, type Scenario } from './scenario.ts';

export const HILL_AND_RIDER: readonly string[] = (
  'distance gain grade altitude temperature wind rolling drag drive unit rider power cadence endurance endurance-work limit ' +
  'warm-up reserve health cold'
).split(' ');
export const FIRST_BIKE: readonly string[] = ['name', 'bike', 'motor', 'torque', 'support', 'battery', 'continuous'];

/**
 * Query that opens another calculator, whose example has so many bikes, with what was said here about hill, rider and the first bike.
 * @param differing inputs whose default there is another one than here: they go along untouched too, else another example would open
 */
export function onwardQuery(scenario: Scenario, bikes: number, differing: readonly string[] = []): string {
  const textOf = (name: string): string | undefined => {
    if (name !== 'name' && isGiven(scenario, name)) return cellOf(scenario, name)?.canonical;
    return differing.includes(name) && !isOverruled(scenario, name) ? defaultText(scenario, name, 0) : undefined;
  };
  const pair = (name: string, rest = ''): string[] => {
    const text = textOf(name);
    return text === undefined ? [] : [`${name}=${encodeURIComponent(text)}${rest}`];
  };
  const pairs = [
    ...HILL_AND_RIDER.flatMap((name) => pair(name)),
    ...FIRST_BIKE.flatMap((name) => pair(name, ','.repeat(bikes - 1))),
    ...(scenario.systemChosen ? [`units=${scenario.system}`] : []),
  ];
  return pairs.length > 0 ? `?${pairs.join('&')}` : '';
}

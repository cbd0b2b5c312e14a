import { cellOf, isGiven, type Scenario } from './scenario.ts';

const HILL_AND_RIDER = (
  'distance gain grade altitude temperature wind rolling drag drive unit rider power cadence endurance endurance-work limit ' +
  'warm-up reserve health cold'
).split(' ');
const FIRST_BIKE = ['bike', 'motor', 'torque', 'support', 'battery', 'continuous'];

/** Query that opens another calculator, whose example has so many bikes, with what was said here about hill, rider and the first bike. */
export function onwardQuery(scenario: Scenario, bikes: number): string {
  const pair = (name: string, rest = ''): string[] =>
    isGiven(scenario, name) ? [`${name}=${encodeURIComponent(cellOf(scenario, name)?.canonical ?? '')}${rest}`] : [];
  const pairs = [
    ...HILL_AND_RIDER.flatMap((name) => pair(name)),
    ...FIRST_BIKE.flatMap((name) => pair(name, ','.repeat(bikes - 1))),
    ...(scenario.systemChosen ? [`units=${scenario.system}`] : []),
  ];
  return pairs.length > 0 ? `?${pairs.join('&')}` : '';
}

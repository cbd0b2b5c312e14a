import { isGiven, type Scenario } from './scenario.ts';
import type { CalculatorName } from './schema.ts';

/** By calculator: its title, and the parameters of a link that it reads. A page knows its own calculators only; `/reference/parameters.json` lists all. */
export type Readers = Partial<Record<CalculatorName, { title: string; reads: readonly string[] }>>;

/** The link has a hill in pieces for calculators that ride along one, and its length for this one. */
export const cameWhole = (scenario: Scenario): boolean =>
  isGiven(scenario, 'distance') && scenario.kept.some(([name]) => name === 'profile');

/** What the reader of such a link is told. */
export const CAME_WHOLE =
  'The hill came along as its length and its mean grade: this calculator rides it as one even slope, not piece by piece.';

/** Says which parameters of a link this calculator does not read though another does, and which: the fewest others that read them all. Empty where there is none. */
export function unreadNote(scenario: Scenario, readers: Readers): string {
  let left = [...new Set(scenario.kept.map(([name]) => name))].filter(
    (name) => name !== 'profile' || !cameWhole(scenario),
  );
  const groups: string[] = [];
  for (;;) {
    const most = Object.values(readers)
      .map(({ title, reads }) => {
        const names = left.filter((name) => reads.includes(name));
        // of several that read as much, one that rides along the same hill
        const rides = isGiven(scenario, 'profile') && reads.includes('profile');
        return { title, names, score: names.length + (rides ? 0.5 : 0) };
      })
      .filter(({ names }) => names.length > 0)
      .reduce((best, one) => (one.score > best.score ? one : best), { title: '', names: [] as string[], score: 0 });
    if (most.names.length === 0) break;
    groups.push(`${listed(most.names.map((name) => `“${name}”`))} (${most.title} does)`);
    left = left.filter((name) => !most.names.includes(name));
  }
  if (groups.length === 0) return '';
  return `This page does not use what the link says of ${listed(groups)}, so its answer may be another one.`;
}

/** a, b and c */
const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;

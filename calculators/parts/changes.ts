/** What a calculator loads when something is changed, linked or copied, and not before. */
import type { Parsed, System } from '../quantities/index.ts';
import { parseOptions } from '../scenario/editing.ts';
import { type Parameter, pathOf, type Scenario } from '../scenario/index.ts';
import { writeLink } from '../scenario/link.ts';
import { unreadNote } from '../scenario/unread.ts';
import { addressUnderBase } from './address.ts';

export * from '../scenario/editing.ts';
export * from '../scenario/link.ts';

/** Works out a sum or a rare unit in a field, with a larger library that is loaded when first needed. */
export async function evaluateText(parameter: Parameter, text: string, system: System): Promise<Parsed> {
  const { evaluateExpression } = await import('../quantities/expression.ts');
  return evaluateExpression(text, parameter.kind, parseOptions(parameter, 'field', system));
}

/** The sentence about what a link says that only other calculators read; empty where there is nothing to say, or no connection. */
export async function unreadIn(scenario: Scenario): Promise<string> {
  if (scenario.kept.length === 0) return '';
  try {
    const answer = await fetch(addressUnderBase('/reference/parameters.json'));
    return answer.ok ? unreadNote(scenario, await answer.json()) : '';
  } catch {
    return '';
  }
}

/** Address of a scenario: the page's own where it reads its address, the calculator's page from inside an explainer. */
export function addressOf(scenario: Scenario, page: boolean): string {
  const query = writeLink(scenario);
  const path = page ? location.pathname : addressUnderBase(pathOf(scenario.calculator));
  return `${location.origin}${path}${query && `?${query}`}`;
}

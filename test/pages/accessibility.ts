import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What depends on colours, and so on the theme; everything else is the same in both. */
export const colourRules = ['color-contrast', 'link-in-text-block'];

/** What axe finds on a page, one readable line each; all its rules, or only these. */
export async function findings(page: Page, only?: string[]): Promise<string[]> {
  const runOnly = only === undefined ? { type: 'tag' as const, values: tags } : { type: 'rule' as const, values: only };
  // no page of this site holds another: axe need not open a second page to put frames together
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ runOnly, resultTypes: ['violations'] })
    .analyze();
  return violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}: ${node.html.slice(0, 200)}`));
}

import { defineHastPlugin, type HastNode, htmlToHast } from 'satteri';
import { mathHtml } from './mathml.ts';

/**
 * Sets `$…$` and `$$…$$` of a page. The parser only marks them up as code of language `math`: a `code` element inline,
 * a `pre` around one for display. A formula that KaTeX cannot read stops the build and is named.
 */
export function mathPlugin() {
  return defineHastPlugin({
    name: 'math',
    element: {
      filter: ['code', 'pre'],
      visit(node, context) {
        const code = node.tagName === 'pre' ? node.children[0] : node;
        if (code?.type !== 'element') return;
        const classes = code.properties.className;
        if (!Array.isArray(classes) || !classes.includes('language-math')) return;
        const display = classes.includes('math-display');
        // The code inside a display formula's pre is replaced with its parent.
        if (display && node.tagName === 'code') return;
        const tex = context.textContent(node).trim();
        try {
          const tree = htmlToHast(mathHtml(tex, display), { fragment: true });
          return 'children' in tree ? (tree.children[0] as HastNode) : undefined;
        } catch (error) {
          throw new Error(`The formula “${tex}” in ${context.fileURL?.pathname ?? 'a page'} cannot be set: ${error}`);
        }
      },
    },
  });
}

import { defineHastPlugin } from 'satteri';

/**
 * Makes the empty corner of a table a plain cell: Markdown can only write a heading there, and one without text is
 * announced as a heading of nothing.
 */
export function tableHeads() {
  return defineHastPlugin({
    name: 'table-heads',
    element: {
      filter: ['th'],
      visit(node, context) {
        return context.textContent(node).trim() === '' ? { ...node, tagName: 'td' } : undefined;
      },
    },
  });
}

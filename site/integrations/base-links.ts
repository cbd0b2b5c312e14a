import { defineHastPlugin } from 'satteri';

/** The base path without its last slash: '' at the root, '/sub' for '/sub' and '/sub/'. */
export function basePrefix(base: string): string {
  return base.replace(/\/+$/, '');
}

/**
 * Puts the base path before links that start at the root (`/learn/torque/`), which Astro leaves as they are,
 * so that pages are written once and served under any path.
 */
export function baseLinks(base: string) {
  const prefix = basePrefix(base);
  const prefixed = (href: unknown): string | undefined =>
    typeof href === 'string' && /^\/(?!\/)/.test(href) ? prefix + href : undefined;
  return defineHastPlugin({
    name: 'base-links',
    element: {
      filter: prefix === '' ? [] : ['a'],
      visit(node, context) {
        const href = prefixed(node.properties.href);
        if (href !== undefined) context.setProperty(node, 'href', href);
      },
    },
  });
}

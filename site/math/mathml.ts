import katex from 'katex';

/**
 * Sets TeX as MathML, for the page to show without a script or a style sheet of its own.
 *
 * KaTeX's `annotation` (the TeX source) is dropped: it would stand twice in heading ids, in the table of contents
 * and in search results.
 *
 * @param tex a formula in TeX, as KaTeX understands it
 * @param display true for a formula on its own line
 * @returns a `<math>` element as text
 * @throws when KaTeX cannot read the formula, so that a bad formula fails the build
 */
export function mathml(tex: string, display = false): string {
  const html = katex.renderToString(tex, {
    output: 'mathml',
    displayMode: display,
    throwOnError: true,
    strict: 'error',
  });
  return html
    .replace(/^<span class="katex">|<\/span>$/g, '')
    .replace(/ xmlns="[^"]*"/, '')
    .replace(/<annotation[^>]*>[\s\S]*?<\/annotation>/g, '')
    .replace(/<\/?semantics>/g, '');
}

/** A formula in its wrapper, as `$…$` in a page and `Formula` both show it; `not-content` keeps the prose spacing off. */
export function mathHtml(tex: string, display = false): string {
  const math = mathml(tex, display);
  return display
    ? `<div class="math-block not-content">${math}</div>`
    : `<span class="math not-content">${math}</span>`;
}

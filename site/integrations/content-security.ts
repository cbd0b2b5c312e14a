import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { changeHtmlFiles } from './html-files.ts';

const inlineScript = /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g;
const inlineStyle = /<style[^>]*>([\s\S]*?)<\/style>/g;
const policyMeta = /<meta http-equiv="content-security-policy" content="([^"]*)"\s*\/?>/i;

/**
 * Completes the content security policy of every built page: writes the hashes of its inline scripts and styles,
 * of which Astro knows only some (not those marked `is:inline`, nor the math font's), and moves the policy right after the charset,
 * because a policy does not cover what stands before it.
 */
export function contentSecurity(): AstroIntegration {
  return {
    name: 'content-security',
    hooks: {
      'astro:build:done': ({ dir }) => changeHtmlFiles(fileURLToPath(dir), secured),
    },
  };
}

/** One page with its policy completed and moved; throws when a page has no policy, which would leave it unprotected. */
export function secured(html: string): string {
  // A page that only sends the reader on has neither scripts nor styles of ours.
  if (/<meta http-equiv="refresh"/i.test(html)) return html;
  const meta = policyMeta.exec(html);
  if (meta?.[1] === undefined) throw new Error('A built page has no content security policy.');
  const policy = completed(
    completed(meta[1], 'script-src', hashes(html, inlineScript)),
    'style-src',
    hashes(html, inlineStyle),
  );
  const tag = `<meta http-equiv="content-security-policy" content="${policy}">`;
  return html.replace(meta[0], '').replace(/<meta charset="utf-8"\s*\/?>/i, (charset) => charset + tag);
}

function hashes(html: string, pattern: RegExp): string[] {
  return [...html.matchAll(pattern)].map(
    (match) =>
      `'sha256-${createHash('sha256')
        .update(match[1] ?? '')
        .digest('base64')}'`,
  );
}

/** The directive with exactly the hashes this page needs; Astro's own list holds those of all its islands on every page. */
function completed(policy: string, directive: string, found: string[]): string {
  return policy
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      const [name, ...sources] = part.split(/\s+/);
      if (name !== directive) return part;
      const kept = sources.filter((source) => !source.startsWith("'sha256-"));
      return [name, ...kept, ...new Set(found)].join(' ');
    })
    .join('; ');
}

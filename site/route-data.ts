import { execFileSync } from 'node:child_process';
import { defineRouteMiddleware } from '@astrojs/starlight/route-data';

/** Sets the day a page was last changed, which Starlight finds only for content in its own place. */
export const onRequest = defineRouteMiddleware((context) => {
  const route = context.locals.starlightRoute;
  const file = route.entry.filePath;
  lastChanges ??= readLastChanges();
  const changed = file === undefined ? undefined : lastChanges.get(file);
  if (changed !== undefined && route.entry.data.lastUpdated !== false) route.lastUpdated = changed;
});

let lastChanges: Map<string, Date> | undefined;

/** When each file under content/ was last committed; nothing without git, outside a repository or in a shallow clone. */
function readLastChanges(): Map<string, Date> {
  const changes = new Map<string, Date>();
  let log: string;
  try {
    // A shallow clone would give every page the day of its one commit.
    if (git('rev-parse', '--is-shallow-repository').trim() !== 'false') return changes;
    log = git('-c', 'core.quotepath=false', 'log', '--format=date %cI', '--name-only', '--', 'content');
  } catch {
    return changes;
  }
  let date = new Date(0);
  for (const line of log.split('\n')) {
    if (line.startsWith('date ')) date = new Date(line.slice(5));
    else if (line !== '' && !changes.has(line)) changes.set(line, date);
  }
  return changes;
}

function git(...args: string[]): string {
  return execFileSync('git', args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}

import { useEffect, useState } from 'preact/hooks';
import type { Handle } from './useScenario.ts';

/** Hydration leaves what came with the page alone where a part is given this. */
export const AS_IT_CAME = { __html: '' };

/**
 * Code that a page needs only once its calculator is touched or set by a link: charts and sentences come drawn and written from the server.
 * @param server the code itself while the page is built
 * @returns it, or null until it is there
 */
export function useLater<T>(tool: Handle, server: T | undefined, load: () => Promise<T>): T | null {
  const [loaded, setLoaded] = useState<{ code: T } | null>(null);
  const wanted = tool.warm || tool.changed;
  useEffect(() => {
    if (!wanted || loaded) return;
    load().then(
      (code) => setLoaded({ code }),
      () => {
        // without a connection the numbers and tables still follow
      },
    );
  }, [wanted]);
  return server ?? loaded?.code ?? null;
}

import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Handle } from './useScenario.ts';

interface Props<P> {
  tool: Handle;
  /** the chart itself while the page is built; what comes to the reader is drawn already */
  server: ComponentType<P> | undefined;
  /** its code, for drawing anew */
  load: () => Promise<ComponentType<P>>;
  chart: P;
}

/** Leaves the children alone that came with the page. */
const AS_IT_CAME = { __html: '' };

/** A chart that arrives drawn. The code that draws it is loaded when the calculator is touched; until it is there, a chart that no longer holds is hidden. */
export function Drawn<P extends object>({ tool, server: Server, load, chart }: Props<P>) {
  const [Chart, setChart] = useState<ComponentType<P> | null>(null);
  const wanted = tool.warm || tool.changed;
  useEffect(() => {
    if (!wanted || Chart) return;
    load().then(
      (loaded) => setChart(() => loaded),
      () => {
        // without a connection the numbers and tables still follow
      },
    );
  }, [wanted]);
  if (Server)
    return (
      <div>
        <Server {...chart} />
      </div>
    );
  if (Chart && tool.changed)
    return (
      <div key="anew">
        <Chart {...chart} />
      </div>
    );
  return <div key="came" class={tool.changed ? 'outdated' : undefined} dangerouslySetInnerHTML={AS_IT_CAME} />;
}

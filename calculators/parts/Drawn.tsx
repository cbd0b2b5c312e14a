import type { ComponentType } from 'preact';
import { AS_IT_CAME, useLater } from './useLater.ts';
import type { Handle } from './useScenario.ts';

interface Props<P> {
  tool: Handle;
  /** the chart itself while the page is built; what comes to the reader is drawn already */
  server: ComponentType<P> | undefined;
  /** its code, for drawing anew */
  load: () => Promise<ComponentType<P>>;
  chart: P;
}

/** A chart that arrives drawn. Until the code that draws it is there, a chart that no longer holds is hidden. */
export function Drawn<P extends object>({ tool, server, load, chart }: Props<P>) {
  const Chart = useLater(tool, server, load);
  if (server) return <div>{Chart && <Chart {...chart} />}</div>;
  if (Chart && tool.changed)
    return (
      <div key="anew">
        <Chart {...chart} />
      </div>
    );
  return <div key="came" class={tool.changed ? 'outdated' : undefined} dangerouslySetInnerHTML={AS_IT_CAME} />;
}

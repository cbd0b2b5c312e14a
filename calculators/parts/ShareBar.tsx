import { useEffect, useRef, useState } from 'preact/hooks';
import { type Handle, loadChanges } from './useScenario.ts';

/** Address of this scenario: the page's own where it reads its address, the calculator's page from inside an explainer. */
async function addressOf({ scenario, page }: Handle): Promise<string> {
  const { writeLink } = await loadChanges();
  const query = writeLink(scenario);
  const path = page
    ? location.pathname
    : `${import.meta.env.BASE_URL.replace(/\/$/, '')}/calculators/${scenario.calculator}/`;
  return `${location.origin}${path}${query && `?${query}`}`;
}

/** Ways to pass the scenario on, to change units and to start again. */
export function ShareBar({ tool }: { tool: Handle }) {
  const { scenario } = tool;
  const [canShare, setCanShare] = useState(false);
  const [copied, setCopied] = useState('');
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => setCanShare(typeof navigator.share === 'function'), []);
  // what was copied is not what stands here now
  useEffect(() => setCopied(''), [scenario]);

  const copy = async (): Promise<void> => {
    const address = await addressOf(tool);
    try {
      await navigator.clipboard.writeText(address);
      setCopied('Link copied.');
    } catch {
      setCopied(address);
    }
  };
  const share = async (): Promise<void> => {
    try {
      await navigator.share({ title: document.title, url: await addressOf(tool) });
    } catch {
      // the reader closing the sheet is no error
    }
  };
  return (
    <div class="share">
      <button type="button" onClick={copy}>
        Copy link
      </button>
      {canShare && (
        <button type="button" onClick={share}>
          Share…
        </button>
      )}
      <button type="button" ref={back} onClick={tool.reset}>
        Back to the example
      </button>
      {tool.replaced && (
        <button
          type="button"
          onClick={() => {
            // this button goes, and must not take the keyboard's place with it
            back.current?.focus();
            tool.undo();
          }}
        >
          Undo
        </button>
      )}
      <fieldset class="units">
        <legend>Units</legend>
        {(['metric', 'us'] as const).map((system) => (
          <label key={system}>
            <input
              type="radio"
              name={`units-${scenario.calculator}-${tool.query}`}
              checked={scenario.system === system}
              onChange={() => tool.chooseSystem(system)}
            />
            {system === 'metric' ? 'Metric' : 'US'}
          </label>
        ))}
      </fieldset>
      <p class="copied" role="status">
        {copied}
      </p>
    </div>
  );
}

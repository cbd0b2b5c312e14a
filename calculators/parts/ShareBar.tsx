import { useEffect, useRef, useState } from 'preact/hooks';
import { type Handle, loadChanges, NOT_LOADED } from './useScenario.ts';

/** Ways to pass the scenario on, to change units and to start again. */
export function ShareBar({ tool }: { tool: Handle }) {
  const { scenario } = tool;
  const [canShare, setCanShare] = useState(false);
  const [copied, setCopied] = useState('');
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => setCanShare(typeof navigator.share === 'function'), []);
  // what was copied is not what stands here now
  useEffect(() => setCopied(''), [scenario]);

  const address = async (): Promise<string> => (await loadChanges()).addressOf(scenario, tool.page);
  const copy = async (): Promise<void> => {
    let link = '';
    try {
      link = await address();
      await navigator.clipboard.writeText(link);
      setCopied('Link copied.');
    } catch {
      // no clipboard: here it is to be copied by hand; nothing loaded: say so
      setCopied(link || NOT_LOADED);
    }
  };
  const share = async (): Promise<void> => {
    try {
      await navigator.share({ title: document.title, url: await address() });
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

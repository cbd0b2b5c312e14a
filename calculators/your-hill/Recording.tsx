import { useEffect, useState } from 'preact/hooks';
import { type Handle, NOT_LOADED } from '../parts/useScenario.ts';
import { hasKept } from './kept.ts';
import { LARGEST } from './reading/recording.ts';

/** A file that the reader gave; each one is another, also where the same file is given twice. */
export interface Given {
  file: File;
}

type Panel = typeof import('./RecordingPanel.tsx').RecordingPanel;

/**
 * Where a recorded ride or a route is given to the page. What reads and shows it comes with the first file, or where this device kept one.
 * @param tool the calculator below, whose hill the climb becomes
 */
export function Recording({ tool }: { tool: Handle }) {
  const [given, give] = useState<Given | null>(null);
  const [kept, setKept] = useState(false);
  const [Panel, setPanel] = useState<Panel | null>(null);
  const [over, setOver] = useState(false);
  const [failed, setFailed] = useState(false);
  const wanted = kept || given !== null;
  useEffect(() => setKept(hasKept()), []);
  useEffect(() => {
    if (!wanted || Panel) return;
    import('./RecordingPanel.tsx').then(
      ({ RecordingPanel }) => {
        setFailed(false);
        setPanel(() => RecordingPanel);
      },
      () => setFailed(true),
    );
  }, [wanted, given]);

  const take = (files: FileList | null | undefined): void => {
    const file = files?.[0];
    if (!file) return;
    give({ file });
    tool.warmUp();
  };
  const hasFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;
  // an explainer shows the calculator alone
  if (!tool.page) return null;
  return (
    <section
      class={over ? 'recording over' : 'recording'}
      aria-labelledby="recording-title"
      data-ready={Panel ? '' : undefined}
      onDragOver={(event) => {
        if (!hasFile(event)) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false);
      }}
      onDrop={(event) => {
        setOver(false);
        if (!hasFile(event)) return;
        event.preventDefault();
        take(event.dataTransfer?.files);
      }}
    >
      <h2 id="recording-title">Your hill, from a recorded ride</h2>
      <div class="recording-give">
        {/* without “accept”: phones grey out endings that they do not know, and the content tells what a file is */}
        <label class="choose">
          <input
            type="file"
            class="sr-only"
            aria-describedby="recording-formats"
            onChange={({ currentTarget }) => {
              take(currentTarget.files);
              // the same file may be given again
              currentTarget.value = '';
            }}
          />
          <span>Choose a recording</span>
        </label>
        <p id="recording-formats">
          <span class="mouse-only">Or drop it here. </span>GPX, TCX, FIT or CSV, up to {LARGEST / 1e6}&#8239;MB. Read on
          this device; nothing is sent anywhere.
        </p>
      </div>
      {failed && (
        <p class="problem" role="alert">
          {NOT_LOADED}
        </p>
      )}
      {wanted && !Panel && !failed && <p class="waiting">One moment…</p>}
      {Panel && <Panel tool={tool} given={given} />}
    </section>
  );
}

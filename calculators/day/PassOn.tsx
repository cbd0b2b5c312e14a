import { useEffect, useRef, useState } from 'preact/hooks';
import { addressUnderBase } from '../parts/address.ts';
import type { DayDocument } from './document.ts';
import { embedCode } from './embed.ts';
import { fileText } from './file.ts';
import { dayFragment, lengthNote } from './link.ts';
import type { DayOutcome } from './outcome.ts';
import { resultsCsv } from './results-file.ts';
import { fileName, saveAs } from './saveAs.ts';
import { tableText } from './table.ts';

/** Ways to pass a day on: link, print, files, and the code that shows its result in another page. */
export function PassOn({ document, outcome }: { document: DayDocument; outcome: DayOutcome }) {
  const [said, say] = useState('');
  /** what the clipboard did not take, to be copied by hand */
  const [byHand, setByHand] = useState('');
  const [canShare, setCanShare] = useState(false);
  useEffect(() => setCanShare(typeof navigator.share === 'function'), []);
  // what was copied is not what stands here now
  useEffect(() => {
    say('');
    setByHand('');
  }, [document]);

  const address = async (): Promise<string> =>
    `${location.origin}${addressUnderBase('/test/day/')}${await dayFragment(document)}`;
  const copy = async (what: string, text: (link: string) => string): Promise<void> => {
    let copied = '';
    try {
      const link = await address();
      copied = text(link);
      await navigator.clipboard.writeText(copied);
      setByHand('');
      say([`${what} copied.`, lengthNote(link)].filter(Boolean).join(' '));
    } catch {
      setByHand(copied);
      say(
        copied
          ? `This browser does not let the page copy. Here is the ${what.toLowerCase()}, to be copied by hand:`
          : 'This browser cannot make a link. Save the day as a file and pass that on.',
      );
    }
  };
  const share = async (): Promise<void> => {
    try {
      await navigator.share({ title: document.setup.title || 'A test day', url: await address() });
    } catch {
      // the reader closing the sheet is no error
    }
  };
  const save = (text: string, ending: string, type: string): void =>
    saveAs(text, fileName(document.setup.title, ending), type);
  const title = document.setup.title?.trim() || 'Result of a test day';
  const hasResults = outcome.about !== undefined;
  return (
    <section class="pass-on" aria-labelledby="pass-on-title">
      <h2 id="pass-on-title">Pass it on</h2>
      <p class="note">
        The link holds the whole day, and nothing is stored elsewhere: all runs are in it, those that do not count too.
      </p>
      <div class="choices">
        <button type="button" onClick={() => copy('Link', (link) => link)}>
          Copy the link
        </button>
        {canShare && (
          <button type="button" onClick={share}>
            Share…
          </button>
        )}
        <button type="button" onClick={() => print()}>
          Print
        </button>
        <button
          type="button"
          onClick={() => save(tableText(document, { separator: ',', mark: true }), 'runs.csv', 'text/csv')}
        >
          Runs as a table (CSV)
        </button>
        {hasResults && (
          <button type="button" onClick={() => save(resultsCsv(document, outcome), 'results.csv', 'text/csv')}>
            Results as a table (CSV)
          </button>
        )}
        <button type="button" onClick={() => save(fileText(document), 'json', 'application/json')}>
          The day as a file (JSON)
        </button>
        {hasResults && (
          <button type="button" onClick={() => copy('Code', (link) => embedCode(link, title))}>
            Copy code to embed the result
          </button>
        )}
      </div>
      <p class="copied" role="status">
        {said}
      </p>
      {byHand && <ByHand text={byHand} />}
    </section>
  );
}

/** A text to be copied by hand, selected as a whole. */
function ByHand({ text }: { text: string }) {
  const area = useRef<HTMLTextAreaElement>(null);
  useEffect(() => area.current?.select(), [text]);
  return <textarea ref={area} readOnly rows={4} value={text} aria-label="To be copied by hand" />;
}

import { useMemo, useState } from 'preact/hooks';
import { columns as everyColumn, type Target } from './columns.ts';
import { RunTable } from './DaySheet.tsx';
import { readFile } from './file.ts';
import { readBytes } from './readBytes.ts';
import { acceptTable, readTable, type TableProposal } from './table.ts';
import type { Handle } from './useDay.ts';
import { compared, count, dayInWords } from './words.ts';

/** Most rows of a preview: enough to see whether columns and decimals were understood. */
const PREVIEWED = 8;

/** A table or a file from elsewhere: what was understood is shown, and nothing is taken in before the reader says so. */
export function PasteRuns({ day }: { day: Handle }) {
  const [text, setText] = useState('');
  const [fileName, setFileName] = useState('');
  const [assigned, assign] = useState<Readonly<Record<number, Target>>>({});
  const [problem, setProblem] = useState('');
  const { document } = day;
  const proposal = useMemo(
    () => (text.trim() === '' ? undefined : readTable(text, document, assigned)),
    [text, document, assigned],
  );

  const take = (from: string, name = ''): void => {
    setText(from);
    setFileName(name);
    assign({});
    setProblem('');
  };
  const openFile = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const read = await readBytes(file);
    if (!read.ok) {
      take('');
      setProblem(read.message);
    } else if (read.text.trim() === '') {
      take('');
      setProblem('There is nothing in this file.');
    } else if (/^\s*\{/.test(read.text)) {
      const opened = readFile(read.text);
      take('');
      if (opened.ok) day.visit(opened.document);
      else setProblem(opened.message);
    } else take(read.text, file.name);
  };

  return (
    <section class="pasting" aria-labelledby="pasting-title">
      <h2 id="pasting-title" tabIndex={-1}>
        Paste a table or open a file
      </h2>
      <div class="field">
        <label for="pasted">Paste a table, with names over its columns: bike, time, power…</label>
        <textarea
          id="pasted"
          value={fileName ? '' : text}
          spellcheck={false}
          onInput={(event) => take(event.currentTarget.value)}
        />
      </div>
      <div class="field">
        <label for="opened">Or open a file: a table as CSV, or a day that this page saved</label>
        <input
          id="opened"
          type="file"
          accept=".csv,.tsv,.txt,.json,text/csv,text/plain,application/json"
          onChange={(event) => openFile(event.currentTarget.files?.[0])}
        />
      </div>
      {problem && <p class="problem">{problem}</p>}
      {proposal && <Understood day={day} proposal={proposal} fileName={fileName} assigned={assigned} assign={assign} />}
      <div class="choices">
        {proposal && <TakeIn day={day} proposal={proposal} />}
        <button type="button" onClick={day.togglePasting}>
          Close without taking anything in
        </button>
      </div>
    </section>
  );
}

interface UnderstoodProps {
  day: Handle;
  proposal: TableProposal;
  fileName: string;
  assigned: Readonly<Record<number, Target>>;
  assign: (assigned: Readonly<Record<number, Target>>) => void;
}

/** What a table would add, which columns it was read from, and what was not understood. */
function Understood({ day, proposal, fileName, assigned, assign }: UnderstoodProps) {
  const { columns, ignored, bikes, runs, problems } = proposal;
  const { document } = day;
  const { one, several } = compared(document.comparing);
  const whole = proposal.day ?? acceptTable({ ...document, runs: [] }, proposal);
  return (
    <>
      <p>
        {fileName && `${fileName}. `}
        {proposal.day
          ? `Understood: ${dayInWords(proposal.day)}.`
          : `Understood: ${count(runs.length, 'run')}${bikes.length > 0 ? ` and ${count(bikes.length, `new ${one}`, `new ${several}`)}` : ''}.`}
        {!proposal.day &&
          document.runs.length > 0 &&
          ` They are added to the ${count(document.runs.length, 'run')} of your day.`}
        {ignored.length > 0 && ` Left out: ${ignored.join(', ')}.`}
      </p>
      {problems.length > 0 && (
        <ul class="remarks">
          {problems.map((message) => (
            <li class="wrong" key={message}>
              {message}
            </li>
          ))}
        </ul>
      )}
      {runs.length > 0 && (
        <RunTable
          caption={runs.length > PREVIEWED ? `The first ${PREVIEWED} of ${runs.length} runs` : 'What was understood'}
          document={whole}
          runs={whole.runs.slice(0, PREVIEWED)}
        />
      )}
      {!proposal.day && columns.length > 0 && (
        <details class="fold" open={ignored.length > 0 || runs.length === 0}>
          <summary>What each column holds</summary>
          <div class="fields">
            {columns.map(({ index, title, sample, target }) => (
              <div class="field" key={index}>
                <label for={`column-${index}`}>
                  {title}
                  {sample && `: “${sample.slice(0, 24)}”`}
                </label>
                <select
                  id={`column-${index}`}
                  value={target ?? 'ignore'}
                  onChange={(event) => assign({ ...assigned, [index]: event.currentTarget.value as Target })}
                >
                  <option value="ignore">Leave it out</option>
                  {OFFERED.map((column) => (
                    <option value={column.target} key={column.target}>
                      {column.title}
                    </option>
                  ))}
                </select>
              </div>
            ))}
          </div>
        </details>
      )}
    </>
  );
}

/** What a column of somebody else's table can hold. */
const OFFERED = everyColumn.filter(
  ({ target }) => target === 'assisted' || target === 'counted' || /^(run|bike)\./.test(target),
);

function TakeIn({ day, proposal }: { day: Handle; proposal: TableProposal }) {
  const { document } = day;
  const { runs, bikes } = proposal;
  const whole = proposal.day;
  if (whole)
    return (
      <button type="button" class="main" onClick={() => day.visit(whole)}>
        Open this day
      </button>
    );
  if (runs.length === 0) return null;
  const words = `${count(runs.length, 'run')}${bikes.length > 0 ? ` and ${count(bikes.length, compared(document.comparing).one)}` : ''}`;
  return (
    <button
      type="button"
      class="main"
      onClick={() => day.takeTable(acceptTable(document, proposal), `Taken in: ${words}.`)}
    >
      Take in {words}
    </button>
  );
}

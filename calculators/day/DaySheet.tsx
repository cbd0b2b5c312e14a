import type { DayDocument, DayRun, Texts } from './document.ts';
import { bikeInputs, type DayInput, type Place, runInputs, setupInputs } from './inputs.ts';
import { bikeNamesOf } from './read.ts';
import { capital, compared, DIFFERENCES, ridden, shown } from './words.ts';

/** A whole day to be read, not changed: a linked day, the printed page, and the page without JavaScript. */
export function DaySheet({ document, heading }: { document: DayDocument; heading: string }) {
  const { setup, bikes, runs, comparing } = document;
  const names = bikeNamesOf(document);
  const words = compared(comparing);
  return (
    <section class="day-sheet" aria-label={heading}>
      <h2>{heading}</h2>
      <dl class="facts">
        {comparing !== 'bikes' && (
          <div>
            <dt>What differs</dt>
            <dd>{DIFFERENCES.find((each) => each.comparing === comparing)?.label}</dd>
          </div>
        )}
        {filled(setupInputs, [setup]).map(({ name, label, group }) => (
          <div key={name}>
            <dt>{group === 'target' ? `Other hill: ${label.toLowerCase()}` : label}</dt>
            <dd>{shown('setup', setup, name, document)}</dd>
          </div>
        ))}
      </dl>
      {bikes.length > 0 && (
        <Table
          caption={capital(words.several)}
          document={document}
          place="bike"
          inputs={bikeInputs.filter(({ name }) => name !== 'name')}
          rows={bikes.map(({ id, texts }) => ({ id, head: names.get(id) ?? '', texts }))}
        />
      )}
      {runs.length > 0 && (
        <RunTable caption="Runs, in the order in which they were ridden" document={document} runs={runs} />
      )}
    </section>
  );
}

/** Runs as a table, with a column for everything that somebody wrote. */
export function RunTable({
  caption,
  document,
  runs,
}: {
  caption: string;
  document: DayDocument;
  runs: readonly DayRun[];
}) {
  return (
    <Table
      caption={caption}
      document={document}
      place="run"
      inputs={runInputs}
      rows={runs.map((run) => ({
        id: run.id,
        head: `${document.runs.indexOf(run) + 1}. ${ridden(document, run)}${run.counted ? '' : ' (not counted)'}`,
        texts: run.texts,
      }))}
    />
  );
}

/** Inputs for which somebody wrote something. */
const filled = <T extends DayInput>(inputs: readonly T[], texts: readonly Texts[]): readonly T[] =>
  inputs.filter(({ name }) => texts.some((each) => each[name]?.trim()));

interface TableProps {
  caption: string;
  document: DayDocument;
  place: Place;
  inputs: readonly DayInput[];
  rows: readonly { id: string; head: string; texts: Texts }[];
}

function Table({ caption, document, place, inputs, rows }: TableProps) {
  const columns = filled(
    inputs,
    rows.map(({ texts }) => texts),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scrolls" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{place === 'run' ? 'Run' : 'Name'}</th>
            {columns.map(({ name, label }) => (
              <th scope="col" key={name}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, head, texts }) => (
            <tr key={id}>
              <th scope="row">{head}</th>
              {columns.map(({ name }) => (
                <td key={name} class={name === 'note' || name === 'tyres' ? 'words' : undefined}>
                  {shown(place, texts, name, document)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

import type { ReadProblem } from './recording.ts';

/** Of each kind so many are named; the others are counted. */
const NAMED = 3;

/** Collects what could not be read, so that a file with a million mistakes makes a short list. */
export interface Problems {
  /** `kind` names such mistakes in the plural, for the count: "points whose place is not on Earth" */
  add: (kind: string, at: number, message: string) => void;
  /** a sentence about the whole file */
  say: (message: string) => void;
  list: () => ReadProblem[];
}

/** `unit` is what the format counts in: a line, a record. */
export function collectProblems(unit: 'line' | 'record'): Problems {
  const said: ReadProblem[] = [];
  const kinds = new Map<string, { named: ReadProblem[]; count: number }>();
  return {
    add(kind, at, message) {
      let of = kinds.get(kind);
      if (!of) {
        of = { named: [], count: 0 };
        kinds.set(kind, of);
      }
      of.count++;
      if (of.named.length < NAMED) of.named.push({ where: `${unit} ${at}`, message });
    },
    say(message) {
      said.push({ where: '', message });
    },
    list: () => [
      ...said,
      ...[...kinds].flatMap(([kind, { named, count }]) =>
        count > NAMED ? [...named, { where: '', message: othersText(count - NAMED, kind) }] : named,
      ),
    ],
  };
}

const othersText = (count: number, kind: string): string =>
  count === 1 ? 'And one more of the last kind.' : `And ${count} more ${kind}.`;

/** A text of the file within a sentence, shortened, without what would upset a line. */
export function quoted(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a damaged file holds such characters
  const plain = text.replace(/[\s\u0000-\u001f\u007f-\u009f]+/g, ' ').trim();
  return `“${plain.length > 30 ? `${plain.slice(0, 29)}…` : plain}”`;
}

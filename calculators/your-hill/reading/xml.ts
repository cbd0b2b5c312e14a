import { SaxesParser } from 'saxes';
import { type Problems, quoted } from './problems.ts';
import { readDateTime, readNumber, textChunks } from './text.ts';
import type { Point } from './trackBuilder.ts';

/** What a reader of one kind of XML does with what comes by. Names are without their namespace's prefix. */
export interface XmlReader {
  open: (name: string, attributes: Record<string, string>, line: number, depth: number) => void;
  /** `text` is what stood in an element that holds no others; what stands beside other elements is of no use here */
  close: (name: string, text: string, line: number, depth: number) => void;
}

export interface XmlEnd {
  cutShort: boolean;
  /** the last line that was read */
  line: number;
  /** names of the elements that were still open, the innermost last */
  open: readonly string[];
}

/** No recording nests deeper; a file that does is broken or means harm. */
const DEEPEST = 100;
/** So many mistakes of form, and the rest is not looked at. */
const MOST_MISTAKES = 1000;
/** Longest text of one element that is kept. */
const LONGEST_TEXT = 10_000;

class Stop extends Error {}

/*
 * A bare & is the commonest mistake, in the names of tracks. The parser would take all that follows for the name of an entity, as far as the
 * next semicolon; so it is given the & as it should have been written, except where a comment or a CDATA section holds it.
 */
const TOKENS = /<!--|-->|<!\[CDATA\[|\]\]>|&(?!(?:#\d{1,7}|#x[\da-f]{1,6}|[a-z_][\w.-]{0,30});)/gi;
const ENDS = { '<!--': '-->', '<![CDATA[': ']]>' } as const;
type Within = '' | keyof typeof ENDS;
/** Longer than any of the tokens and what must follow it. */
const LOOK_AHEAD = 40;

/** Every prefix is taken off: extensions come in many namespaces, and often in none that was declared. */
const localName = (name: string): string => name.slice(name.indexOf(':') + 1);

/**
 * Reads XML as it comes, without a tree in memory. Mistakes of form are named and passed over as far as there is sense in it; entities of
 * the file's own are never expanded.
 */
export function readXml(
  bytes: Uint8Array,
  reader: XmlReader,
  problems: Problems,
  onProgress: (share: number) => void,
): XmlEnd {
  // as a fragment: one tag too many at the end of a track must not make the next track a mistake of form
  const parser = new SaxesParser({ fragment: true });
  const open: string[] = [];
  let text = '';
  let mistakes = 0;
  let ended = false;

  parser.on('opentag', ({ name, attributes }) => {
    const local = localName(name);
    open.push(local);
    if (open.length > DEEPEST) {
      problems.add('places', parser.line, 'The tags are nested too deep for a recording: the rest is not read.');
      throw new Stop();
    }
    text = '';
    // plain texts, because the parser was not asked for namespaces
    reader.open(local, attributes as Record<string, string>, parser.line, open.length);
  });
  const keep = (part: string): void => {
    if (text.length < LONGEST_TEXT) text += part.slice(0, LONGEST_TEXT);
  };
  parser.on('text', keep);
  parser.on('cdata', keep);
  parser.on('closetag', () => {
    const name = open.at(-1) ?? '';
    reader.close(name, text, parser.line, open.length);
    open.pop();
    text = '';
  });
  const mistake = (message: string): void => {
    problems.add(
      'mistakes in the form of the XML',
      parser.line,
      `The XML is not well formed here (${quoted(message.replace(/^[\d:]+ /, '').replace(/\.$/, ''))}).`,
    );
    if (++mistakes < MOST_MISTAKES) return;
    problems.say(`The file has too many mistakes in its form: it is read as far as line ${parser.line}.`);
    throw new Stop();
  };
  parser.on('error', ({ message }) => {
    if (!ended) mistake(message);
  });

  try {
    let isStart = true;
    let rest = '';
    let within: Within = '';
    for (const { text: chunk, share } of textChunks(bytes)) {
      // a fragment has no declaration; its line breaks stay, so that lines are counted right
      rest += isStart ? chunk.replace(/^\s*<\?xml[^>]*\?>/, (found) => found.replace(/[^\r\n]/g, '')) : chunk;
      isStart = false;
      // near the end of a piece a token may be cut in two: the rest from there on waits for the next piece
      const sure = share < 1 ? Math.max(0, rest.length - LOOK_AHEAD) : rest.length;
      let seen = sure;
      let written = 0;
      for (const found of rest.matchAll(TOKENS)) {
        if (found.index >= sure) break;
        const [token] = found;
        seen = Math.max(seen, found.index + token.length);
        if (within !== '') within = token === ENDS[within] ? '' : within;
        else if (token === '<!--' || token === '<![CDATA[') within = token;
        else if (token === '&') {
          parser.write(rest.slice(written, found.index));
          mistake('& should be &amp;');
          parser.write('&amp;');
          written = found.index + 1;
        }
      }
      const next = rest.slice(seen).search(/[&<\]-]/);
      const end = next < 0 || share === 1 ? rest.length : seen + next;
      parser.write(rest.slice(written, end));
      rest = rest.slice(end);
      onProgress(share);
    }
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return { cutShort: false, line: parser.line, open };
  }
  const whileOpen = [...open];
  const { line } = parser;
  let unfinished = false;
  ended = true;
  parser.on('error', ({ message }) => {
    unfinished ||= message.includes('unexpected end');
  });
  parser.close();
  return { cutShort: whileOpen.length > 0 || unfinished, line, open: whileOpen };
}

/** What the values of a point are called. */
const WORDS: Record<keyof Point, string> = {
  latitude: 'latitude',
  longitude: 'longitude',
  elevation: 'elevation',
  time: 'time',
  power: 'power',
  cadence: 'cadence',
  heartRate: 'heart rate',
  counter: 'distance',
  otherPower: 'power',
};

/** Sets a value of a point from a text; names the text where it is no such value. */
export function setValue(point: Point, column: keyof Point, text: string, line: number, problems: Problems): void {
  const value = column === 'time' ? readDateTime(text) : readNumber(text);
  if (value === undefined)
    problems.add(
      `texts that are no ${column === 'time' ? 'time' : 'number'}`,
      line,
      `The ${WORDS[column]} ${quoted(text)} is no ${column === 'time' ? 'time' : 'number'}: it is left out.`,
    );
  else if (!Number.isNaN(value) && Number.isNaN(point[column])) point[column] = value;
}

export function cutShortText(line: number, inPoint: boolean): string {
  return `The file ends in line ${line}, ${inPoint ? 'in the middle of a point' : 'before its last tag is closed'}: what is whole up to there is read.`;
}

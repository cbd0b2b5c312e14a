import {
  FARTHEST_HEIGHT,
  isTooSteep,
  LONGEST_ROAD,
  type Profile,
  SHORTEST_ROAD,
  STEEPEST_GRADE,
} from '../model/index.ts';
import { formatNumber } from '../quantities/index.ts';
import { piecesOf } from './profile-words.ts';

/*
 * A hill in a link: `1:120,9.6:85,12.1`, the version of this form, then length and rise of each piece in metres, whatever the reader's
 * units. At most one decimal counts. It holds lengths and heights, and no position.
 */

/** Said where such a link is passed on. */
export const WITHOUT_PLACE = 'The link holds lengths and heights, not where the hill is.';

const VERSION = '1';
/** Most pieces of a link. */
export const MAX_PIECES = 60;

const AS_WRITTEN = '1:120,9.6:85,12.1 (1, then length and rise of each piece in metres)';
const NUMBER = /^-?(?:\d{1,7}(?:\.\d*)?|\.\d+)$/;

const metres = (decimetres: number): string => `${formatNumber(decimetres / 10, decimetres % 10 === 0 ? 0 : 1)}\u202fm`;
const quoted = (text: string): string => `“${text.length > 16 ? `${text.slice(0, 15)}…` : text}”`;
const tidy = (text: string): string => text.replace(/[−–]/g, '-').replace(/\s|\+/g, '').replace(/:$/, '');

/** The canonical text of a hill in pieces, or what is wrong with it: a sentence that names the piece. */
export function tidyProfile(text: string): { canonical: string } | { problem: string } {
  const [version = '', ...pieces] = tidy(text).split(':');
  if (pieces.length === 0) return { problem: `A hill in pieces is written ${AS_WRITTEN}.` };
  if (version !== VERSION)
    return { problem: `This page reads version ${VERSION} of a hill in pieces, not ${quoted(version)}.` };
  if (pieces.length > MAX_PIECES)
    return {
      problem: `A hill in pieces has at most ${MAX_PIECES} of them; this one has ${formatNumber(pieces.length)}.`,
    };
  for (const [i, piece] of pieces.entries()) {
    const numbers = piece.split(',');
    if (numbers.length !== 2 || !numbers.every((each) => NUMBER.test(each)))
      return {
        problem: `Piece ${i + 1} is ${quoted(piece)}: write its length and its rise in metres, such as 120,9.6.`,
      };
  }
  const canonical = [
    VERSION,
    ...piecesOf(`:${pieces.join(':')}`).map(({ length, rise }) => `${length / 10},${rise / 10}`),
  ].join(':');
  const problem = problemOf(canonical);
  return problem ? { problem } : { canonical };
}

/** What no road can be. */
function problemOf(canonical: string): string | undefined {
  let [distance, height] = [0, 0];
  for (const [i, { length, rise }] of piecesOf(canonical).entries()) {
    const which = `Piece ${i + 1}`;
    if (!(length > 0)) return `${which} is ${metres(length)} long: a piece needs a length above zero.`;
    const rises = `${rise < 0 ? 'falls' : 'rises'} ${metres(Math.abs(rise))}`;
    if (Math.abs(rise) >= length) return `${which} ${rises} on ${metres(length)} of road: the height must be smaller.`;
    if (isTooSteep(length, rise))
      return `${which} ${rises} on ${metres(length)} of road: that is steeper than ${100 * STEEPEST_GRADE}\u202f%.`;
    distance += length;
    height += rise;
    if (Math.abs(height) > 10 * FARTHEST_HEIGHT)
      return `${which} ends ${metres(Math.abs(height))} ${height < 0 ? 'below' : 'above'} the bottom: at most ${metres(10 * FARTHEST_HEIGHT)} can be used.`;
  }
  if (distance < 10 * SHORTEST_ROAD)
    return `All pieces together are ${metres(distance)} long: a hill needs at least ${metres(10 * SHORTEST_ROAD)}.`;
  if (distance > 10 * LONGEST_ROAD)
    return `All pieces together are ${metres(distance)} long: at most ${metres(10 * LONGEST_ROAD)} can be used.`;
  return undefined;
}

/** The road of a canonical text. */
export function profileFromText(canonical: string): Profile {
  const pieces = piecesOf(canonical);
  const distance = new Float64Array(pieces.length + 1);
  const height = new Float64Array(pieces.length + 1);
  let [along, up] = [0, 0];
  pieces.forEach(({ length, rise }, i) => {
    along += length;
    up += rise;
    distance[i + 1] = along / 10;
    height[i + 1] = up / 10;
  });
  return { distance, height };
}

/**
 * The canonical text of a road: each point to the nearest 0.1 m, so that nothing adds up on the way. What `profileFromText` gave comes back
 * as it was. A piece that is no longer than that is left out.
 */
export function writeProfile({ distance, height }: Profile): string {
  const texts = [VERSION];
  let [along, up] = [0, 0];
  for (let i = 1; i < distance.length; i++) {
    const [next, top] = [Math.round(10 * (distance[i] ?? 0)), Math.round(10 * (height[i] ?? 0))];
    if (next <= along) continue;
    texts.push(`${(next - along) / 10},${(top - up) / 10}`);
    [along, up] = [next, top];
  }
  return texts.join(':');
}

import { formatNumber, formatQuantity, type System } from '../quantities/index.ts';

/** A stretch of road of one grade, in decimetres: whole numbers, so that sums of them are exact. */
export interface Piece {
  length: number;
  rise: number;
}

const decimetres = (text: string | undefined): number => Math.round(10 * Number(text));

/** The pieces of a hill as a link writes it, with its version before them: `1:120,9.6:85,12.1`. */
export function piecesOf(canonical: string): Piece[] {
  return canonical
    .split(':')
    .slice(1)
    .map((piece) => {
      const [length, rise] = piece.split(',');
      return { length: decimetres(length), rise: decimetres(rise) };
    });
}

/** Length and rise of all pieces together, m. */
export function wholeOf(canonical: string): { distance: number; gain: number; pieces: number } {
  const pieces = piecesOf(canonical);
  const sum = (of: (piece: Piece) => number): number => pieces.reduce((total, piece) => total + of(piece), 0) / 10;
  return { distance: sum(({ length }) => length), gain: sum(({ rise }) => rise), pieces: pieces.length };
}

/** What a hill in pieces is to people: "3.2 km, 264 m up, in 37 pieces". */
export function profileInWords(canonical: string, system: System): string {
  const { distance, gain, pieces } = wholeOf(canonical);
  const height = formatQuantity(Math.abs(gain), 'height', system);
  const count = pieces === 1 ? 'one piece' : `${formatNumber(pieces)} pieces`;
  return `${formatQuantity(distance, 'distance', system)}, ${height} ${gain < 0 ? 'down' : 'up'}, in ${count}`;
}

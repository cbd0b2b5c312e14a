import { heightOn, type Profile } from '../profile.ts';
import { isTooSteep } from '../roadLimits.ts';
import { withoutJumps } from './climbs.ts';
import { at } from './columns.ts';
import type { Break } from './track.ts';

/** m: points of a recording that lie closer together become one point of the profile. Ours: heights are not known so closely. */
export const SHORTEST_CUT = 1;
/** m: pieces of a simplified profile are at least as long, where the whole is. Ours: a bike settles to its speed over about as much. */
export const SHORTEST_PIECE = 20;
/** m by which length or rise of a simplified piece may change when its ends are rounded to the decimetre, as a link does. */
const ROUNDING = 0.1;

/**
 * The road from one point of a track to another, from zero on. Jumps over breaks are taken out, as nothing is known of what lies
 * between; points without a height, closer than `SHORTEST_CUT` or steeper than `STEEPEST_GRADE` are passed over. Both ends stay.
 * @param height m, mended and smoothed
 * @throws RangeError where there is no road between the points, or one that is too steep as a whole
 */
export function cutProfile(
  distance: Float64Array,
  height: Float64Array,
  breaks: readonly Break[],
  from: number,
  to: number,
): Profile {
  const level = withoutJumps(height, breaks);
  let [first, last] = [Math.min(from, to), Math.max(from, to)];
  while (first < last && !Number.isFinite(at(level, first))) first++;
  while (first < last && !Number.isFinite(at(level, last))) last--;
  const isRoad = (a: number, b: number): boolean => {
    const way = at(distance, b) - at(distance, a);
    return way >= SHORTEST_CUT && !isTooSteep(way, at(level, b) - at(level, a));
  };
  const kept = [first];
  for (let i = first + 1; i < last; i++) if (isRoad(kept.at(-1) ?? first, i)) kept.push(i);
  while (kept.length > 1 && !isRoad(kept.at(-1) ?? first, last)) kept.pop();
  if (!isRoad(kept.at(-1) ?? first, last)) throw new RangeError('There is no road between these points.');
  kept.push(last);
  return {
    distance: Float64Array.from(kept, (i) => at(distance, i) - at(distance, first)),
    height: Float64Array.from(kept, (i) => at(level, i) - at(level, first)),
  };
}

/** Points that remain to choose from after the least important ones have gone. */
const CHOICE = 300;

/**
 * A profile with at most so many pieces that keeps its ends, distance and gain exactly. Its points are points of the full one, chosen so
 * that the squared height error along the road is least (exactly so among the `CHOICE` points that stand out most). Pieces are at
 * least `SHORTEST_PIECE` long, where the whole is, and no steeper than `STEEPEST_GRADE` even when they are rounded to the decimetre, where
 * the whole is. n log n in the points.
 * @param pieces at least 1
 */
export function simplifyProfile(profile: Profile, pieces: number): Profile {
  const kept = leastSquares(profile, standingOut(profile, CHOICE), Math.max(1, Math.floor(pieces)));
  return {
    distance: Float64Array.from(kept, (i) => at(profile.distance, i)),
    height: Float64Array.from(kept, (i) => at(profile.height, i)),
  };
}

/**
 * At most `most` points of a profile, both ends among them: those that make the largest triangle with their neighbours, after Visvalingam
 * and Whyatt (value from memory), half of the least ones gone in each round rather than one by one.
 */
function standingOut({ distance, height }: Profile, most: number): number[] {
  let kept = Array.from(distance, (_, i) => i);
  while (kept.length > most) {
    const areas = Float64Array.from(kept, (i, k) => {
      const [before, after] = [kept[k - 1], kept[k + 1]];
      if (before === undefined || after === undefined) return Number.POSITIVE_INFINITY;
      const [x, y] = [at(distance, i) - at(distance, before), at(height, i) - at(height, before)];
      return Math.abs(x * (at(height, after) - at(height, before)) - y * (at(distance, after) - at(distance, before)));
    });
    const rank = Math.min(kept.length - most, kept.length >> 1) - 1;
    const limit = at(areas.toSorted(), rank);
    let hasGone = false;
    kept = kept.filter((_, k) => {
      // of two neighbours one stays for the next round, where its triangle is another
      hasGone = !hasGone && at(areas, k) <= limit;
      return !hasGone;
    });
  }
  return kept;
}

/** The way through at most `pieces` of some points of a profile, from the first to the last, that has the least squared height error. */
function leastSquares({ distance, height }: Profile, points: readonly number[], pieces: number): number[] {
  const count = points.length;
  const end = distance.length - 1;
  // heights off the straight line from end to end keep more digits
  const mean = at(height, end) / at(distance, end);
  const x = Float64Array.from(points, (i) => at(distance, i));
  const y = Float64Array.from(points, (i) => at(height, i) - mean * at(distance, i));
  // ∫y, ∫xy and ∫y² of the full profile from its start to each of the points
  const [area, moment, square] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  let [a, m, s] = [0, 0, 0];
  for (let i = 1, k = 1; i <= end; i++) {
    const [x0, x1] = [at(distance, i - 1), at(distance, i)];
    const [y0, y1] = [at(height, i - 1) - mean * x0, at(height, i) - mean * x1];
    a += ((x1 - x0) * (y0 + y1)) / 2;
    m += ((x1 - x0) * (y0 * (2 * x0 + x1) + y1 * (x0 + 2 * x1))) / 6;
    s += ((x1 - x0) * (y0 * y0 + y0 * y1 + y1 * y1)) / 3;
    if (i !== points[k]) continue;
    [area[k], moment[k], square[k]] = [a, m, s];
    k++;
  }
  /** squared error, m³, of one straight piece; Infinity where it would be too short or too steep */
  const errorOf = (i: number, j: number): number => {
    const way = at(x, j) - at(x, i);
    const slope = (at(y, j) - at(y, i)) / way;
    const rise = Math.abs(slope + mean) * way;
    if (way < SHORTEST_PIECE || isTooSteep(way - ROUNDING, rise + ROUNDING)) return Number.POSITIVE_INFINITY;
    const level = at(y, i) - slope * at(x, i);
    const cross = level * (at(area, j) - at(area, i)) + slope * (at(moment, j) - at(moment, i));
    const own = (way * (at(y, i) ** 2 + at(y, i) * at(y, j) + at(y, j) ** 2)) / 3;
    return Math.max(0, at(square, j) - at(square, i) - 2 * cross + own);
  };
  const errors = new Float64Array(count * count);
  for (let i = 0; i < count; i++) for (let j = i + 1; j < count; j++) errors[i * count + j] = errorOf(i, j);

  let least = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  const came: Uint16Array[] = [];
  let best = { error: Number.POSITIVE_INFINITY, pieces: 0 };
  for (let n = 1; n <= Math.min(pieces, count - 1); n++) {
    const next = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
    const from = new Uint16Array(count);
    for (let i = 0; i < count - 1; i++) {
      const soFar = at(least, i);
      if (soFar === Number.POSITIVE_INFINITY) continue;
      for (let j = i + 1; j < count; j++) {
        const error = soFar + at(errors, i * count + j);
        if (error < at(next, j)) {
          next[j] = error;
          from[j] = i;
        }
      }
    }
    came.push(from);
    least = next;
    // one more piece must be worth it beyond the last digits
    if (at(least, count - 1) < best.error - 1e-9 * at(square, count - 1))
      best = { error: at(least, count - 1), pieces: n };
  }
  if (best.pieces === 0) return [0, end];
  const way = [end];
  for (let n = best.pieces, j = count - 1; n > 0; n--) {
    j = at(came[n - 1] ?? [], j);
    way.push(points[j] ?? 0);
  }
  return way.reverse();
}

/** How far a simplified profile is off the full one in height, m: at its worst, and as the root of the mean square along the road. */
export function profileError(full: Profile, simple: Profile): { largest: number; rms: number } {
  const end = Math.min(full.distance.at(-1) ?? 0, simple.distance.at(-1) ?? 0);
  const places = Float64Array.from([...full.distance, ...simple.distance]).sort();
  let [largest, sum, before, last] = [0, 0, 0, 0];
  for (const place of places) {
    if (place > end) break;
    const off = heightOn(full, place) - heightOn(simple, place);
    largest = Math.max(largest, Math.abs(off));
    sum += ((place - last) * (off * off + off * before + before * before)) / 3;
    [before, last] = [off, place];
  }
  return { largest, rms: end > 0 ? Math.sqrt(Math.max(0, sum) / end) : 0 };
}

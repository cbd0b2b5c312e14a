import { at, known, type PointRange, stretchesOf } from './columns.ts';
import type { Break, Track } from './track.ts';

/** A run of points whose recorded height was no height. Both ends included. */
export interface Mended {
  /**
   * `zero`: exactly nought among heights far from it; `spike`: up and back, or down and back, within a few points and steeper than a
   * road; `hole`: no height at all
   */
  kind: 'zero' | 'spike' | 'hole';
  from: number;
  to: number;
  /** of a zero or a spike, how far the worst point was off, m of height; of a hole, m of road without a height */
  metres: number;
}

/** m that heights beside a zero must at least be away from it before it counts as no height. Ours, no standard found. */
export const ZERO_JUMP = 20;
/** Least height of a spike, m: less than that is noise, which smoothing is for. Ours, no standard found. */
export const SPIKE_HEIGHT = 8;
/** Most points of a spike. Ours: what lasts longer may be a hill that was driven up. */
export const SPIKE_POINTS = 5;
/** Flanks of a spike are steeper than this (rise over way). Ours: steeper than anything that is ridden for that far. */
export const SPIKE_GRADE = 0.5;

/**
 * Smoothing window, m of road. It keeps a ramp of 100 m in sight and takes out what a device adds from second to second. No accepted
 * standard found: practice runs from none to 500 m, so pages say which one they used and let it be changed.
 */
export const SMOOTHING_WINDOW = 100;
/**
 * Least rise that counts, m, in the gain by threshold: above the steps and the drift of a barometer, below the hills that people name.
 * No accepted standard found.
 */
export const GAIN_THRESHOLD = 5;

/**
 * Heights with what cannot be one replaced: zeros, spikes and holes, each named. In between, the line over the way from the last good
 * point to the next takes their place; at the end of a stretch, the height of the nearest good point; never across a break.
 * A stretch without any height stays without one: NaN.
 */
export function mendElevation({ distance, elevation, breaks }: Pick<Track, 'distance' | 'elevation' | 'breaks'>): {
  elevation: Float64Array;
  mended: Mended[];
} {
  const heights = Float64Array.from(elevation);
  const stretches = stretchesOf(heights.length, breaks);
  const zeros = zerosOf(heights, stretches);
  for (const { from, to } of zeros) heights.fill(Number.NaN, from, to + 1);
  const spikes = stretches.flatMap((stretch) => spikesOf(distance, heights, stretch));
  for (const { from, to } of spikes) heights.fill(Number.NaN, from, to + 1);
  const holes = missingOf(elevation, stretches);
  for (const stretch of stretches) fillHoles(distance, heights, stretch);
  const worst = ({ from, to }: PointRange): number => {
    let metres = 0;
    for (let i = from; i <= to; i++) metres = Math.max(metres, Math.abs(at(elevation, i) - at(heights, i)) || 0);
    return metres;
  };
  const wayOf = ({ from, to }: PointRange): number =>
    at(distance, Math.min(to + 1, heights.length - 1)) - at(distance, Math.max(from - 1, 0));
  const mended: Mended[] = [
    ...zeros.map((span) => ({ kind: 'zero' as const, ...span, metres: worst(span) })),
    ...spikes.map((span) => ({ kind: 'spike' as const, ...span, metres: worst(span) })),
    ...holes.map((span) => ({ kind: 'hole' as const, ...span, metres: wayOf(span) })),
  ];
  return { elevation: heights, mended: mended.sort((a, b) => a.from - b.from) };
}

/** Runs of points without a height. */
function missingOf(elevation: Float64Array, stretches: readonly PointRange[]): PointRange[] {
  const missing = elevation.map((height) => (Number.isFinite(height) ? Number.NaN : 1));
  return known(missing, stretches);
}

/** Runs of exact zeros in one stretch whose nearest heights on either side, breaks or not, are all far from zero. */
function zerosOf(heights: Float64Array, stretches: readonly PointRange[]): PointRange[] {
  const after = new Float64Array(heights.length);
  for (let i = heights.length - 1, next = Number.NaN; i >= 0; i--) {
    if (isHeight(at(heights, i))) next = at(heights, i);
    after[i] = next;
  }
  const zeros: PointRange[] = [];
  let before = Number.NaN;
  for (const { from, to } of stretches) {
    for (let i = from; i <= to; i++) {
      if (at(heights, i) !== 0) {
        if (isHeight(at(heights, i))) before = at(heights, i);
        continue;
      }
      const start = i;
      while (i < to && at(heights, i + 1) === 0) i++;
      const beside = [before, at(after, i)].filter(Number.isFinite);
      if (beside.length > 0 && beside.every((height) => Math.abs(height) > ZERO_JUMP))
        zeros.push({ from: start, to: i });
    }
  }
  return zeros;
}

const isHeight = (height: number): boolean => Number.isFinite(height) && height !== 0;

/** Spikes in one stretch, over its holes too: one may stand at the edge of a hole. */
function spikesOf(distance: Float64Array, heights: Float64Array, { from, to }: PointRange): PointRange[] {
  const points: number[] = [];
  for (let i = from; i <= to; i++) if (Number.isFinite(at(heights, i))) points.push(i);
  const height = (k: number): number => at(heights, at(points, k));
  const place = (k: number): number => at(distance, at(points, k));
  const isSteep = (a: number, b: number): boolean =>
    Math.abs(height(b) - height(a)) > SPIKE_GRADE * (place(b) - place(a));
  const spikes: PointRange[] = [];
  for (let i = 0; i < points.length - 2; i++) {
    const base = height(i);
    const up = Math.sign(height(i + 1) - base);
    // the first step of a spike is steep, and makes a fair part of its height
    if (Math.abs(height(i + 1) - base) < SPIKE_HEIGHT / SPIKE_POINTS || !isSteep(i, i + 1)) continue;
    let peak = i + 1;
    for (let j = i + 2; j < points.length && j <= i + SPIKE_POINTS + 1; j++) {
      if (up * (height(j) - height(peak)) > 0) {
        peak = j;
        continue;
      }
      const high = up * (height(peak) - base);
      const back = Math.abs(height(j) - base);
      if (high > SPIKE_HEIGHT && back < high / 2 && isSteep(i, peak) && isSteep(peak, j)) {
        spikes.push({ from: at(points, i + 1), to: at(points, j - 1) });
        i = j - 1;
        break;
      }
    }
  }
  return spikes;
}

/** Puts the line between its neighbours, or the nearest height at an end, into every hole of a stretch. */
function fillHoles(distance: Float64Array, heights: Float64Array, { from, to }: PointRange): void {
  let last = -1;
  for (let i = from; i <= to; i++) {
    if (!Number.isFinite(at(heights, i))) continue;
    if (last < 0) heights.fill(at(heights, i), from, i);
    else if (i > last + 1) {
      const way = at(distance, i) - at(distance, last);
      const rise = at(heights, i) - at(heights, last);
      for (let j = last + 1; j < i; j++) {
        const share = way > 0 ? (at(distance, j) - at(distance, last)) / way : (j - last) / (i - last);
        heights[j] = at(heights, last) + share * rise;
      }
    }
    last = i;
  }
  if (last >= 0) heights.fill(at(heights, last), last + 1, to + 1);
}

/**
 * Heights smoothed over the way: at each point the mean of the road's height, drawn straight from point to point, over `window` metres
 * around it. Nearer to an end of a stretch the window is cut off there, and the line that fits best within it takes the place of the mean:
 * so a steady slope stays as it is up to its end, and a first or last height that is off makes no wall. Never across a break or a hole.
 * Linear in the points.
 * @param window m of road, whole width; 0 leaves all as it is
 * @returns heights, m; NaN where there is none
 */
export function smoothElevation(
  distance: Float64Array,
  elevation: Float64Array,
  window: number,
  breaks: readonly Break[],
): Float64Array {
  const smooth = Float64Array.from(elevation);
  if (!(window > 0)) return smooth;
  const area = new Float64Array(elevation.length);
  for (const { from, to } of known(elevation, stretchesOf(elevation.length, breaks))) {
    const places = distance.subarray(from, to + 1);
    const heights = elevation.subarray(from, to + 1);
    const into = smooth.subarray(from, to + 1);
    smoothMiddle(places, heights, window / 2, area, into);
    smoothStart(places, heights, window / 2, into);
    smoothEnd(places, heights, window / 2, into);
  }
  return smooth;
}

/** Puts the means over whole windows where there is one. `area` is room for as many numbers. */
function smoothMiddle(
  distance: Float64Array,
  elevation: Float64Array,
  half: number,
  area: Float64Array,
  smooth: Float64Array,
): void {
  const last = distance.length - 1;
  const [start, end] = [at(distance, 0), at(distance, last)];
  // heights above the first one, so that the area keeps its digits far above the sea
  const base = at(elevation, 0);
  area[0] = 0;
  for (let i = 1; i <= last; i++) {
    const mean = 0.5 * (at(elevation, i - 1) + at(elevation, i)) - base;
    area[i] = at(area, i - 1) + mean * (at(distance, i) - at(distance, i - 1));
  }
  /** area from the start to `place`, which lies between the points `i` and `i + 1` */
  const areaTo = (place: number, i: number): number => {
    const past = place - at(distance, i);
    if (!(past > 0)) return at(area, i);
    const slope = (at(elevation, i + 1) - at(elevation, i)) / (at(distance, i + 1) - at(distance, i));
    return at(area, i) + past * (at(elevation, i) - base + 0.5 * slope * past);
  };
  let [low, high] = [0, 0];
  for (let i = 0; i <= last; i++) {
    const here = at(distance, i);
    if (here - half < start || here + half > end) continue;
    while (low < last - 1 && at(distance, low + 1) <= here - half) low++;
    while (high < last - 1 && at(distance, high + 1) <= here + half) high++;
    smooth[i] = base + (areaTo(here + half, high) - areaTo(here - half, low)) / (2 * half);
  }
}

/** Puts, where a window is cut off by the start, the line that fits best within what is left of it. */
function smoothStart(distance: Float64Array, elevation: Float64Array, half: number, smooth: Float64Array): void {
  const last = distance.length - 1;
  const [start, base] = [at(distance, 0), at(elevation, 0)];
  const whole = at(distance, last) - start;
  // area and moment of the heights above the first one, from the start to the point `next − 1` and on to the window's end
  let [area, moment, next] = [0, 0, 1];
  for (let i = 0; i <= last && at(distance, i) - start < half; i++) {
    const here = at(distance, i) - start;
    const width = Math.min(here + half, whole);
    if (!(width > 0)) {
      // all the points are at one place
      smooth.fill(base + elevation.reduce((sum, height) => sum + (height - base), 0) / elevation.length);
      return;
    }
    while (next <= last && at(distance, next) - start <= width) {
      const [a, b] = [at(distance, next - 1) - start, at(distance, next) - start];
      const [low, high] = [at(elevation, next - 1) - base, at(elevation, next) - base];
      area += areaBelow(a, b, low, high);
      moment += momentBelow(a, b, low, high);
      next++;
    }
    let [fullArea, fullMoment] = [area, moment];
    if (next <= last) {
      const a = at(distance, next - 1) - start;
      const low = at(elevation, next - 1) - base;
      const share = (width - a) / (at(distance, next) - start - a);
      const high = low + share * (at(elevation, next) - base - low);
      fullArea += areaBelow(a, width, low, high);
      fullMoment += momentBelow(a, width, low, high);
    }
    const slope = (12 * (fullMoment - 0.5 * width * fullArea)) / width ** 3;
    smooth[i] = base + fullArea / width + slope * (here - 0.5 * width);
  }
}

/** The same at the end, where the window is not cut off by the start as well: the start of the way back. */
function smoothEnd(distance: Float64Array, elevation: Float64Array, half: number, smooth: Float64Array): void {
  const [start, end] = [at(distance, 0), at(distance, distance.length - 1)];
  let first = distance.length;
  while (first > 0 && end - at(distance, first - 1) <= 2 * half) first--;
  // one point more, on the road on which the window may end
  first = Math.max(0, first - 1);
  const back = distance
    .slice(first)
    .reverse()
    .map((place) => end - place);
  const heights = elevation.slice(first).reverse();
  const reversed = new Float64Array(back.length).fill(Number.NaN);
  smoothStart(back, heights, half, reversed);
  for (const [k, height] of reversed.entries()) {
    const i = distance.length - 1 - k;
    if (Number.isFinite(height) && at(distance, i) - start >= half) smooth[i] = height;
  }
}

/** ∫h dx and ∫x h dx of a straight piece from `a` to `b`. */
const areaBelow = (a: number, b: number, low: number, high: number): number => 0.5 * (b - a) * (low + high);
const momentBelow = (a: number, b: number, low: number, high: number): number =>
  ((b - a) * (low * (2 * a + b) + high * (a + 2 * b))) / 6;

/** Height gained by each of the ways in use, m. They differ, and each is right about something else. */
export interface Gains {
  /** last height less first, breaks or not; NaN without any height */
  net: number;
  /** every rise from point to point as given */
  raw: number;
  /** every rise after smoothing */
  smoothed: number;
  /** rises that exceed the threshold before a fall does, of the heights as given */
  threshold: number;
}

/**
 * Height gained along a track, by each method. Nothing is counted across a break or a hole; a rise that a break interrupts goes on
 * after it. Raw sums grow with every step of noise: give mended heights.
 * @param window m of road for `smoothed`
 * @param threshold m for `threshold`: a rise counts in full once it exceeds it, and ends once a fall does
 */
export function gainsOf(
  distance: Float64Array,
  elevation: Float64Array,
  breaks: readonly Break[],
  { window, threshold }: { window: number; threshold: number } = {
    window: SMOOTHING_WINDOW,
    threshold: GAIN_THRESHOLD,
  },
): Gains {
  const parts = known(elevation, stretchesOf(elevation.length, breaks));
  const first = parts[0];
  const last = parts.at(-1);
  return {
    net: first && last ? at(elevation, last.to) - at(elevation, first.from) : Number.NaN,
    raw: risesOf(elevation, parts),
    smoothed: risesOf(smoothElevation(distance, elevation, window, breaks), parts),
    threshold: risesAbove(threshold, elevation, parts),
  };
}

function risesOf(elevation: Float64Array, parts: readonly PointRange[]): number {
  let sum = 0;
  for (const { from, to } of parts)
    for (let i = from + 1; i <= to; i++) sum += Math.max(0, at(elevation, i) - at(elevation, i - 1));
  return sum;
}

/** Sum of the rises that exceed `threshold`, with the jumps between the parts taken out. */
function risesAbove(threshold: number, elevation: Float64Array, parts: readonly PointRange[]): number {
  let sum = 0;
  let height = 0;
  let [low, high, rising] = [0, 0, false];
  for (const { from, to } of parts)
    for (let i = from + 1; i <= to; i++) {
      height += at(elevation, i) - at(elevation, i - 1);
      if (rising) {
        high = Math.max(high, height);
        if (high - height > threshold) {
          sum += high - low;
          rising = false;
          low = height;
        }
      } else {
        low = Math.min(low, height);
        if (height - low > threshold) {
          rising = true;
          high = height;
        }
      }
    }
  return rising ? sum + high - low : sum;
}

import { steepestRise } from '../profile.ts';
import { at, known, type PointRange } from './columns.ts';
import type { Break, Track } from './track.ts';

/** What counts as a climb. */
export interface ClimbOptions {
  /** least height gained, m */
  gain: number;
  /** least mean grade (tan) */
  grade: number;
  /** a fall ends a climb once it is deeper than the larger of these: m, and a share of what was gained until there */
  fall: number;
  fallShare: number;
  /** so many metres without getting on end it too, however much was gained */
  flat: number;
}

/** What counts as a climb unless somebody says otherwise. Ours: people do not agree on it, and no standard was found. */
export const CLIMB: Readonly<ClimbOptions> = { gain: 20, grade: 0.02, fall: 10, fallShare: 0.15, flat: 2000 };

/**
 * A break whose ends lie at most so far apart, m along the ground and in height, is a pause on the spot: a climb goes on after it. Ours: about
 * what a position and a barometer drift by while a bike stands.
 */
export const PAUSE_APART = 20;
export const PAUSE_HEIGHT = 5;

/**
 * Is a break a pause on the spot? Where a file has no positions nobody knows how far its ends lie apart: then a stopped timer or a
 * silence is taken for one, the start of a new stretch is not.
 */
export function isPause({ index, why, apart }: Break, height: Float64Array): boolean {
  const near = Number.isFinite(apart) ? apart <= PAUSE_APART : why !== 'file';
  return near && Math.abs(at(height, index) - at(height, index - 1)) <= PAUSE_HEIGHT;
}

/** The parts of a way on which every point has a height, parted by the breaks that are no pause on the spot. */
function roads(height: Float64Array, breaks: readonly Break[], { from, to }: PointRange): PointRange[] {
  const gaps = breaks.filter((gap) => gap.index > from && gap.index <= to && !isPause(gap, height));
  const starts = [from, ...gaps.map(({ index }) => index)];
  return known(
    height,
    starts.map((start, k) => ({ from: start, to: (starts[k + 1] ?? to + 1) - 1 })),
  );
}

/** Heights with every jump over a break taken out: what lies between is not known to be road. The first stays as it is. */
export function withoutJumps(height: Float64Array, breaks: readonly Break[]): Float64Array {
  const jumps = breaks.filter(({ index }) => index > 0 && index < height.length);
  if (jumps.length === 0) return height;
  const level = Float64Array.from(height);
  jumps.forEach(({ index }, k) => {
    const jump = at(height, index) - at(level, index - 1);
    if (!Number.isFinite(jump)) return;
    const end = jumps[k + 1]?.index ?? height.length;
    for (let i = index; i < end; i++) level[i] = at(height, i) - jump;
  });
  return level;
}

/**
 * Climbs along a way, the hardest first (by gain times grade): from the point where the road begins to climb to the one where it stops.
 * A climb may dip and level out on its way as far as the options allow; a gentle way to its foot or on from its top is left off. It never
 * crosses a hole, nor a break that is not a pause on the spot. Linear in the points.
 * @param height m, smoothed: noise makes small climbs
 * @returns indices of the first and the last point
 */
export function findClimbs(
  distance: Float64Array,
  height: Float64Array,
  breaks: readonly Break[],
  options: Partial<ClimbOptions> = {},
): PointRange[] {
  const rules = { ...CLIMB, ...options };
  const level = withoutJumps(height, breaks);
  const gainOf = ({ from, to }: PointRange): number => at(level, to) - at(level, from);
  const wayOf = ({ from, to }: PointRange): number => at(distance, to) - at(distance, from);
  const counts = (span: PointRange): boolean =>
    gainOf(span) >= rules.gain && gradeOf(gainOf(span), wayOf(span)) >= rules.grade;
  const found: PointRange[] = [];
  for (const road of roads(height, breaks, { from: 0, to: height.length - 1 })) {
    // half the least grade at first, so that a gentle part between two steep ones does not part them …
    for (const rise of risesOver(distance, level, road, 0.5 * rules.grade, rules)) {
      const half = 0.5 * gradeOf(gainOf(rise), wayOf(rise));
      const core = steadiest(distance, level, rise, Math.max(rules.grade, half));
      if (counts(core)) found.push(core);
      else core.to = core.from;
      // … and what is left on either side is looked through once more on its own
      for (const rest of [
        { from: rise.from, to: core.from },
        { from: core.to, to: rise.to },
      ])
        for (const other of risesOver(distance, level, rest, rules.grade, rules)) if (counts(other)) found.push(other);
    }
  }
  const hardness = (span: PointRange): number => gainOf(span) * gradeOf(gainOf(span), wayOf(span));
  return found.sort((a, b) => hardness(b) - hardness(a) || a.from - b.from);
}

/** tan of the slope that gains so much over a way along the road; 0 over no way. A way that is all height is as good as upright. */
export function gradeOf(gain: number, way: number): number {
  if (!(way > 0)) return 0;
  const sin = Math.max(-0.999, Math.min(0.999, gain / way));
  return sin / Math.sqrt(1 - sin * sin);
}

/**
 * Rises in one span, measured above a line of grade `tilt`: there a flat is a fall. Each goes from a lowest to a highest point, and is over
 * after a fall that the rules do not allow, or after a long way without a new high.
 */
function risesOver(
  distance: Float64Array,
  height: Float64Array,
  { from, to }: PointRange,
  tilt: number,
  rules: ClimbOptions,
): PointRange[] {
  const rises: PointRange[] = [];
  const above = (i: number): number => at(height, i) - tilt * at(distance, i);
  const close = (foot: number, top: number): void => {
    if (at(height, top) - at(height, foot) >= rules.gain) rises.push({ from: foot, to: top });
  };
  let [foot, top, dip] = [from, from, from];
  for (let i = from + 1; i <= to; i++) {
    const here = above(i);
    if (here >= above(top)) {
      top = dip = i;
      continue;
    }
    if (here <= above(dip)) dip = i;
    const gained = at(height, top) - at(height, foot);
    const isOver =
      here <= above(foot) ||
      above(top) - here > Math.max(rules.fall, rules.fallShare * gained) ||
      (gained >= rules.gain && at(distance, i) - at(distance, top) > rules.flat);
    if (!isOver) continue;
    close(foot, top);
    // the next one may begin at the lowest point since the top
    foot = top = i = dip;
  }
  close(foot, top);
  return rises;
}

/** The part of a span that rises highest above a line of grade `tilt`: its ends flatter than that are left off. */
function steadiest(distance: Float64Array, height: Float64Array, { from, to }: PointRange, tilt: number): PointRange {
  let best = { from, to: from };
  let [most, foot] = [0, from];
  const above = (i: number): number => at(height, i) - tilt * at(distance, i);
  for (let i = from; i <= to; i++) {
    if (above(i) <= above(foot)) foot = i;
    if (above(i) - above(foot) > most) {
      most = above(i) - above(foot);
      best = { from: foot, to: i };
    }
  }
  return best;
}

/** Least share of the riding time that must have a value before a mean is told. Ours: what is missing cannot move the mean by much. */
export const FULL_COVERAGE = 0.95;
/** Slower than this, m/s, for at least so many seconds is standing. Ours: pushing a bike up a steep path is faster. */
export const STANDING_SPEED = 0.3;
export const STANDING_TIME = 10;
/** m of road that the steepest part is taken over. */
export const STEEPEST_OVER = 100;

/** A measured column over the riding time. */
export interface MeanValue {
  /** weighted by time; undefined where coverage is below `FULL_COVERAGE` */
  mean: number | undefined;
  /** share of the riding time with a value, 0 to 1 */
  coverage: number;
}

/** A part of a track in figures. What needs times is undefined on a route. */
export interface ClimbFigures {
  /** m along the road; nothing is counted across a break */
  distance: number;
  /** m, last height less first without the jumps over breaks */
  gain: number;
  /** tan */
  grade: number;
  /** the steepest `STEEPEST_OVER` metres, or the whole where that is shorter: its grade (tan) and the way from the start to it, m */
  steepest: { grade: number; at: number; length: number };
  /** breaks within that are no pause on the spot: the figures leave out what lies between */
  gaps: number;
  /** s from first to last point, everything included */
  elapsed: number | undefined;
  /** s without pauses */
  riding: number | undefined;
  /** breaks and times of standing */
  pauses: { count: number; seconds: number };
  /** m/s over the riding time: along the road, and up */
  speed: number | undefined;
  verticalSpeed: number | undefined;
  /** W, rpm, beats per minute. Zeros count as zeros, what is missing does not. */
  power: MeanValue;
  cadence: MeanValue;
  heartRate: MeanValue;
}

/**
 * Figures of the part of a track from one point to another, both included. A value recorded at a point stands for the time since the
 * point before. Linear in its points.
 * @param height m, mended and smoothed
 */
export function climbFigures(track: Track, height: Float64Array, from: number, to: number): ClimbFigures {
  const { distance } = track;
  const [first, last] = orderedEnds(from, to, distance.length);
  const breaks = track.breaks.filter(({ index }) => index > first && index <= last);
  const level = withoutJumps(height, breaks);
  const parts = roads(height, breaks, { from: first, to: last });
  const way = distance.length > 0 ? at(distance, last) - at(distance, first) : 0;
  const [start, end] = [parts[0], parts.at(-1)];
  const gain = start && end ? at(level, end.to) - at(level, start.from) : 0;
  const clock = clockOf({ ...track, breaks }, first, last);
  const { riding } = clock;
  return {
    distance: way,
    gain,
    grade: gradeOf(gain, way),
    steepest: steepestPart(distance, level, parts, first, STEEPEST_OVER),
    gaps: breaks.filter((gap) => !isPause(gap, height)).length,
    elapsed: clock.elapsed,
    riding,
    pauses: clock.pauses,
    speed: riding ? way / riding : undefined,
    verticalSpeed: riding ? gain / riding : undefined,
    power: meanOver(track.power, clock),
    cadence: meanOver(track.cadence, clock),
    heartRate: meanOver(track.heartRate, clock),
  };
}

function orderedEnds(from: number, to: number, points: number): [number, number] {
  const within = (index: number): number => Math.max(0, Math.min(points - 1, Math.round(index) || 0));
  const [a, b] = [within(from), within(to)];
  return a <= b ? [a, b] : [b, a];
}

/** The steepest `over` metres within any of some roads; where none is as long, the steepest whole one. */
function steepestPart(
  distance: Float64Array,
  height: Float64Array,
  parts: readonly PointRange[],
  origin: number,
  over: number,
): { grade: number; at: number; length: number } {
  const longest = parts.reduce((most, { from, to }) => Math.max(most, at(distance, to) - at(distance, from)), 0);
  const length = Math.min(over, longest);
  let best = { rise: Number.NEGATIVE_INFINITY, from: 0 };
  for (const part of length > 0 ? parts : []) {
    const steepest = steepestRise({ distance, height }, part, length);
    if (steepest.rise > best.rise) best = steepest;
  }
  if (!Number.isFinite(best.rise)) return { grade: 0, at: 0, length: 0 };
  return { grade: gradeOf(best.rise, length), at: best.from - at(distance, origin), length };
}

interface Clock {
  /** ridden intervals: the point at which each ends, and its s */
  ends: number[];
  seconds: number[];
  elapsed: number | undefined;
  riding: number | undefined;
  pauses: { count: number; seconds: number };
}

/** Time from point to point, with pauses set apart. Points without a time are passed over. */
function clockOf({ time, distance, breaks }: Track, from: number, to: number): Clock {
  const clock: Clock = {
    ends: [],
    seconds: [],
    elapsed: undefined,
    riding: undefined,
    pauses: { count: 0, seconds: 0 },
  };
  const starts = new Set(breaks.map(({ index }) => index));
  let [start, last] = [-1, -1];
  let isBroken = false;
  // intervals of standing in a row, which are a pause only if they last
  let [standing, slow] = [0, 0];
  const pause = (seconds: number): void => {
    clock.pauses.count++;
    clock.pauses.seconds += seconds;
  };
  const settle = (): void => {
    if (slow >= STANDING_TIME) {
      pause(slow);
      clock.ends.length -= standing;
      clock.seconds.length -= standing;
    }
    standing = slow = 0;
  };
  for (let i = from; i <= to; i++) {
    if (i > from && starts.has(i)) isBroken = true;
    if (!Number.isFinite(at(time, i))) continue;
    if (last < 0) start = i;
    else {
      const seconds = Math.max(0, at(time, i) - at(time, last));
      if (isBroken) {
        settle();
        pause(seconds);
      } else {
        const isStanding = at(distance, i) - at(distance, last) < STANDING_SPEED * seconds;
        if (!isStanding) settle();
        clock.ends.push(i);
        clock.seconds.push(seconds);
        if (isStanding) {
          standing++;
          slow += seconds;
        }
      }
    }
    last = i;
    isBroken = false;
  }
  settle();
  if (last > start) {
    clock.elapsed = Math.max(0, at(time, last) - at(time, start));
    clock.riding = clock.seconds.reduce((sum, seconds) => sum + seconds, 0);
  }
  return clock;
}

/** Mean of a column over ridden time. */
function meanOver(column: Float64Array, { ends, seconds, riding }: Clock): MeanValue {
  let [sum, covered] = [0, 0];
  for (let k = 0; k < ends.length; k++) {
    const value = at(column, at(ends, k));
    if (!Number.isFinite(value)) continue;
    sum += value * at(seconds, k);
    covered += at(seconds, k);
  }
  const coverage = riding ? Math.min(1, covered / riding) : 0;
  return { mean: coverage >= FULL_COVERAGE ? sum / covered : undefined, coverage };
}

/** Width of a class of steepness (tan). */
export const STEEPNESS_CLASS = 0.02;
/** Grades beyond this are counted at it: no road is as steep, a recording may be. */
const STEEPEST_CLASS = 0.6;

/**
 * How many metres of road each class of grade takes, from the gentlest class with road to the steepest, empty ones between included.
 * A class holds its lower end. Nothing is counted over a break, where the distance stands still.
 * @param height m, smoothed
 * @param width of a class (tan)
 */
export function steepness(
  distance: Float64Array,
  height: Float64Array,
  from: number,
  to: number,
  width = STEEPNESS_CLASS,
): { low: number; high: number; distance: number }[] {
  const [first, last] = orderedEnds(from, to, distance.length);
  const ways = new Map<number, number>();
  for (let i = first + 1; i <= last; i++) {
    const way = at(distance, i) - at(distance, i - 1);
    const rise = at(height, i) - at(height, i - 1);
    if (!(way > 0) || !Number.isFinite(rise)) continue;
    const grade = Math.max(-STEEPEST_CLASS, Math.min(STEEPEST_CLASS, gradeOf(rise, way)));
    // a steady 6 % must not fall into the class below for want of a last digit
    const step = Math.floor(grade / width + 1e-9);
    ways.set(step, (ways.get(step) ?? 0) + way);
  }
  const steps = [...ways.keys()];
  const lowest = Math.min(...steps);
  return Array.from({ length: steps.length > 0 ? Math.max(...steps) - lowest + 1 : 0 }, (_, k) => ({
    low: (lowest + k) * width,
    high: (lowest + k + 1) * width,
    distance: ways.get(lowest + k) ?? 0,
  }));
}

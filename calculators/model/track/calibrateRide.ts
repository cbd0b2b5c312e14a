import { BEARINGS_CONSTANT, BEARINGS_PER_SPEED, GRAVITY } from '../constants.ts';
import { tQuantile } from '../distributions.ts';
import { propagate, type UncertainInput, type UncertainResult } from '../uncertainty.ts';
import { climbFigures, FULL_COVERAGE, STANDING_SPEED } from './climbs.ts';
import { at, type PointRange, stretchesOf } from './columns.ts';
import type { Track } from './track.ts';

/** How well the setting of a recorded ride and its recording are known: 95 % half-widths. */
export interface RideDoubts {
  /** of the power meter's scale, relative */
  meter: number;
  /** kg, of everything that moves */
  mass: number;
  /** of heights, relative: the barometer's scale */
  gain: number;
  /** m that the recorded height drifts from foot to top */
  drift: number;
  /** of the way, relative */
  distance: number;
  /** of the drive's efficiency, absolute */
  drive: number;
  /** of the density of the air, relative */
  density: number;
  /** m/s of head wind */
  wind: number;
  /** m² of C_dA */
  drag: number;
}

/** What is held while a recorded ride is calibrated. */
export interface RideSetting {
  /** kg, everything that moves */
  mass: number;
  /** of chain and gears */
  efficiency: number;
  /** kg/m³ */
  density: number;
  /** m/s, head wind positive */
  headWind: number;
  /** m², the guess before the ride; `doubts.drag` says how sure */
  dragArea: number;
  doubts: RideDoubts;
}

/** What a ride says of its hill. */
export interface CalibratedRide {
  /** C_rr with its 95 % range; causes are named as in `RideDoubts`, and `scatter` from piece to piece */
  rolling: UncertainResult;
  /** C_dA, m² */
  dragArea: UncertainResult;
  /** the ride halved the range that the guess had: only then is C_dA worth telling */
  dragAreaIsInformed: boolean;
  /** m and s of the pieces of road that were used, and how many they are */
  used: { distance: number; seconds: number; pieces: number };
}

/** Why a ride says nothing. */
export interface UncalibratedRide {
  /**
   * `times`: none recorded; `power`: it covers less than `FULL_COVERAGE` of the riding time; `short`: less than `LEAST_ROAD` can be
   * used; `absurd`: the balance asks for a C_rr below zero or above `MOST_ROLLING`
   */
  problem: 'times' | 'power' | 'short' | 'absurd';
  /** share of the riding time with power */
  coverage: number;
  /** m of road that can be used */
  distance: number;
  /** C_rr that it asks for, where that is absurd; and the inputs that could bring it back, the likeliest first */
  rolling?: number;
  likely?: (keyof RideDoubts)[];
}

export type RideCalibration = CalibratedRide | UncalibratedRide;

/** m of road in a piece over which energy is balanced, and the least s: short enough to tell fast from slow, long enough for heights. */
export const PIECE_LENGTH = 150;
export const PIECE_TIME = 20;
/** m of usable road below which nothing is told. Ours. */
export const LEAST_ROAD = 300;
/** No surface that is ridden rolls worse: deep sand. Ours. */
export const MOST_ROLLING = 0.15;
/**
 * A piece on which the rider does not pedal for more than this share of the time is left out: who brakes would count as surface. Not told
 * from the recorded fall, whose noise would pick the pieces.
 */
export const MOST_COASTING = 0.1;
/** s on either side over which a speed is taken, so that a position that comes late does not count as a burst. */
const SPEED_REACH = 3;
/** Scatter of a piece's force about its balance before anything is seen, relative, worth so many pieces. An assumption. */
const EXPECTED_SCATTER = 0.05;
const EXPECTED_FREEDOM = 2;
/** 95 % half-width over standard uncertainty. */
const COVERAGE = 1.96;

/** Sums over a piece of road, SI. */
interface Piece {
  seconds: number;
  /** J by the meter */
  energy: number;
  /** m of height */
  rise: number;
  /** m: ∫ds and ∫cos ds */
  way: number;
  level: number;
  /** m²/s: ∫v ds */
  speedIntegral: number;
  /** m³/s²: ∫v² ds */
  squareIntegral: number;
  /** m²/s², v² at the end less at the start */
  faster: number;
}

/** Unknowns of the balance, in this order: two sought, the others known to within a doubt. */
const NAMES = ['rolling', 'drag', 'meter', 'mass', 'gain', 'drift', 'distance', 'drive', 'density', 'wind'] as const;
const [ROLLING, DRAG, METER, MASS, GAIN, DRIFT, DISTANCE, DRIVE, DENSITY, WIND] = [
  0, 1, 2, 3, 4, 5, 6, 7, 8, 9,
] as const;

/**
 * Calibrates a hill from a ride with power and without assistance: η∫P dt = m g Δh + C_rr m g ∫cos ds + ½ ρ C_dA ∫u|u| ds + bearings + ΔE_kin
 * for each piece of some 150 m, by least squares weighted by length. All that the pieces share (meter, mass, heights, way, drive, density,
 * wind, the guess of C_dA) enters as an observation of its own with its doubt: so a meter that may be 2 % off cannot pass for air. The
 * scatter from piece to piece is read from the residuals, widened by how far neighbours go together, and counts by Student's t.
 * C_rr is an effective value: it holds what the site's model leaves out, on this surface and at this speed. A break parts pieces; pieces
 * with a stop, with coasting (brakes) or with gaps in the power are left out.
 * @param height m, mended and smoothed
 */
export function calibrateRide(
  track: Track,
  height: Float64Array,
  from: number,
  to: number,
  setting: RideSetting,
): RideCalibration {
  const { power, riding } = climbFigures(track, height, from, to);
  const [first, last] = [Math.min(from, to), Math.max(from, to)];
  const nothing = (problem: UncalibratedRide['problem'], distance = 0): UncalibratedRide => ({
    problem,
    coverage: power.coverage,
    distance,
  });
  if (!riding) return nothing('times');
  if (power.coverage < FULL_COVERAGE) return nothing('power');
  const pieces = balancedPieces(track, height, { from: first, to: last });
  const total = (name: keyof Piece): number => pieces.reduce((sum, piece) => sum + piece[name], 0);
  const used = { distance: total('way'), seconds: total('seconds'), pieces: pieces.length };
  if (used.distance < LEAST_ROAD) return nothing('short', used.distance);

  const { doubts } = setting;
  const inputs = inputsOf(setting);
  const road = used.distance;
  const expected = startingScatter(pieces, road);
  let scatter = expected;
  let fit = solve(pieces, road, inputs, scatter);
  let freedom = EXPECTED_FREEDOM;
  for (let i = 0; i < 4; i++) {
    [scatter, freedom] = scatterOf(fit.residuals, expected);
    fit = solve(pieces, road, inputs, scatter);
  }
  const values = propagate(inputs, (centres) => {
    const shifted = inputs.map((input, k) => ({ ...input, value: centres[k] ?? input.value }));
    return [...solve(pieces, road, shifted, scatter, fit.values).values.slice(0, 2)];
  });
  const spread = tQuantile(0.975, freedom);
  const alone = fit.scatter();
  const [rolling, dragArea] = [ROLLING, DRAG].map((k) =>
    withScatter(values[k] as UncertainResult, spread * at(alone, k)),
  ) as [UncertainResult, UncertainResult];
  if (!(rolling.value > 0 && rolling.value < MOST_ROLLING)) {
    const likely = rolling.causes.flatMap(({ name }) => (name in doubts ? [name as keyof RideDoubts] : []));
    return { ...nothing('absurd', used.distance), rolling: rolling.value, likely };
  }
  const dragAreaIsInformed = (dragArea.high - dragArea.low) / 2 < doubts.drag / 2;
  return { rolling, dragArea, dragAreaIsInformed, used };
}

/** What is known beside the recording, with its 95 % ranges, in the order of `NAMES` after C_rr. */
function inputsOf({ mass, efficiency, density, headWind, dragArea, doubts }: RideSetting): UncertainInput[] {
  const around = (name: keyof RideDoubts, value: number, half: number): UncertainInput => ({
    name,
    value,
    low: value - half,
    high: value + half,
  });
  return [
    around('drag', dragArea, doubts.drag),
    around('meter', 1, doubts.meter),
    around('mass', mass, doubts.mass),
    around('gain', 1, doubts.gain),
    around('drift', 0, doubts.drift),
    around('distance', 1, doubts.distance),
    around('drive', efficiency, doubts.drive),
    around('density', density, density * doubts.density),
    around('wind', headWind, doubts.wind),
  ];
}

/** The result with its piece-to-piece scatter as one more cause. */
function withScatter({ value, low, high, causes }: UncertainResult, half: number): UncertainResult {
  const all = [...causes, { name: 'scatter', down: -half, up: half }];
  return {
    value,
    low: value - Math.hypot(value - low, half),
    high: value + Math.hypot(high - value, half),
    causes: all.sort((a, b) => b.up - b.down - (a.up - a.down)),
  };
}

/** Pieces of road that can be balanced. */
function balancedPieces(track: Track, height: Float64Array, whole: PointRange): Piece[] {
  const pieces: Piece[] = [];
  for (const stretch of stretchesOf(height.length, track.breaks)) {
    const points: number[] = [];
    for (let i = Math.max(stretch.from, whole.from); i <= Math.min(stretch.to, whole.to); i++)
      if (Number.isFinite(at(track.time, i)) && Number.isFinite(at(height, i))) points.push(i);
    const speeds = speedsOf(track, points);
    let start = 0;
    for (let k = 1; k < points.length; k++) {
      const [a, b] = [at(points, start), at(points, k)];
      const end = at(points, points.length - 1);
      const isLong = (i: number, j: number): boolean =>
        at(track.distance, j) - at(track.distance, i) >= PIECE_LENGTH &&
        at(track.time, j) - at(track.time, i) >= PIECE_TIME;
      // what is left at the end belongs to the last piece
      if (k < points.length - 1 && !(isLong(a, b) && isLong(b, end))) continue;
      const piece = balanced(track, height, points, speeds, start, k);
      if (piece) pieces.push(piece);
      start = k;
    }
  }
  return pieces;
}

/** Speeds at points, m/s, over some seconds around each. */
function speedsOf({ time, distance }: Track, points: readonly number[]): Float64Array {
  const speeds = new Float64Array(points.length);
  let [low, high] = [0, 0];
  for (let k = 0; k < points.length; k++) {
    const here = at(time, at(points, k));
    while (low < k && at(time, at(points, low + 1)) <= here - SPEED_REACH) low++;
    while (high < points.length - 1 && at(time, at(points, high)) < here + SPEED_REACH) high++;
    const [a, b] = [at(points, low), at(points, high)];
    const seconds = at(time, b) - at(time, a);
    speeds[k] = seconds > 0 ? (at(distance, b) - at(distance, a)) / seconds : 0;
  }
  return speeds;
}

/** Sums of one piece, or null where it cannot be balanced. */
function balanced(
  { time, distance, power }: Track,
  height: Float64Array,
  points: readonly number[],
  speeds: Float64Array,
  start: number,
  end: number,
): Piece | null {
  const piece = { seconds: 0, energy: 0, rise: 0, way: 0, level: 0, speedIntegral: 0, squareIntegral: 0, faster: 0 };
  let [covered, coasting] = [0, 0];
  for (let k = start + 1; k <= end; k++) {
    const [a, b] = [at(points, k - 1), at(points, k)];
    const [seconds, way] = [at(time, b) - at(time, a), at(distance, b) - at(distance, a)];
    const [v0, v1] = [at(speeds, k - 1), at(speeds, k)];
    if (v1 < STANDING_SPEED) return null;
    piece.seconds += seconds;
    piece.way += way;
    piece.speedIntegral += 0.5 * (v0 + v1) * way;
    piece.squareIntegral += ((v0 * v0 + v0 * v1 + v1 * v1) / 3) * way;
    if (!Number.isFinite(at(power, b))) continue;
    piece.energy += at(power, b) * seconds;
    covered += seconds;
    if (!(at(power, b) > 0)) coasting += seconds;
  }
  piece.rise = at(height, at(points, end)) - at(height, at(points, start));
  piece.faster = at(speeds, end) ** 2 - at(speeds, start) ** 2;
  if (!(piece.way > 0) || covered < FULL_COVERAGE * piece.seconds) return null;
  if (coasting > MOST_COASTING * piece.seconds || Math.abs(piece.rise) >= piece.way) return null;
  // a gap of a few seconds is taken to be like the rest of its piece
  piece.energy *= piece.seconds / covered;
  piece.level = Math.sqrt(piece.way ** 2 - piece.rise ** 2);
  return piece;
}

/**
 * J by which the pedals put in more than hill, surface, air, bearings and speed take, with the unknowns at `p`.
 * @param slopes takes how it changes with each of them
 */
function imbalance(piece: Piece, road: number, p: Float64Array, slopes: Float64Array): number {
  const [rolling, drag, meter, mass] = [at(p, ROLLING), at(p, DRAG), at(p, METER), at(p, MASS)];
  const [scale, drive, density, wind] = [at(p, DISTANCE), at(p, DRIVE), at(p, DENSITY), at(p, WIND)];
  const { energy, level, way, speedIntegral, squareIntegral, faster } = piece;
  const rise = at(p, GAIN) * piece.rise + at(p, DRIFT) * (way / road);
  // a tail wind faster than the bike pushes
  const against = scale * speedIntegral + wind * way < 0 ? -1 : 1;
  const air =
    against * 0.5 * scale * (scale * scale * squareIntegral + 2 * wind * scale * speedIntegral + wind * wind * way);
  const force = 0.5 * density * drag * against;
  slopes[ROLLING] = -mass * GRAVITY * scale * level;
  slopes[DRAG] = -density * air;
  slopes[METER] = drive * energy;
  slopes[MASS] = -GRAVITY * (rise + rolling * scale * level) - 0.5 * scale * scale * faster;
  slopes[GAIN] = -mass * GRAVITY * piece.rise;
  slopes[DRIFT] = -mass * GRAVITY * (way / road);
  slopes[DISTANCE] =
    -mass * GRAVITY * rolling * level -
    force * (3 * scale * scale * squareIntegral + 4 * wind * scale * speedIntegral + wind * wind * way) -
    (BEARINGS_CONSTANT * way + 2 * BEARINGS_PER_SPEED * scale * speedIntegral) -
    mass * scale * faster;
  slopes[DRIVE] = meter * energy;
  slopes[DENSITY] = -drag * air;
  slopes[WIND] = -2 * force * scale * (scale * speedIntegral + wind * way);
  const bearings = BEARINGS_CONSTANT * scale * way + BEARINGS_PER_SPEED * scale * scale * speedIntegral;
  return drive * meter * energy + mass * at(slopes, MASS) - density * drag * air - bearings;
}

interface Fit {
  /** the unknowns, as `NAMES` */
  values: Float64Array;
  /** standard uncertainty of each from the scatter of the pieces alone; worked out when asked, for most fits nobody does */
  scatter: () => Float64Array;
  /** of each piece in its order, N√m: force off the balance times the root of its length */
  residuals: Float64Array;
}

/**
 * Gauss and Newton's least squares, with what is known beside the recording as observations. The balance is nearly linear: two steps from
 * a fit of nearly the same and three from a guess are off by less than a hundredth of the range.
 */
function solve(
  pieces: readonly Piece[],
  road: number,
  inputs: readonly UncertainInput[],
  scatter: number,
  near?: Float64Array,
): Fit {
  const size = NAMES.length;
  const guess = Float64Array.from([0.02, ...inputs.map(({ value }) => value)]);
  const values = Float64Array.from(near ?? guess);
  const precision = Float64Array.from([0, ...inputs.map(({ low, high }) => ((2 * COVERAGE) / (high - low)) ** 2)]);
  const centre = guess;
  const residuals = new Float64Array(pieces.length);
  const slopes = new Float64Array(size);
  const data = new Float64Array(size * size);
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  // an input without a doubt is held: no precision is infinite, so it gets no slope
  const held = precision.map((each) => (Number.isFinite(each) ? 0 : 1));
  for (let step = near ? 1 : 0; step < 3; step++) {
    data.fill(0);
    right.fill(0);
    pieces.forEach((piece, i) => {
      const off = imbalance(piece, road, values, slopes);
      residuals[i] = off / Math.sqrt(piece.way);
      const weight = 1 / (piece.way * scatter * scatter);
      for (let k = 0; k < size; k++) {
        if (at(held, k)) continue;
        right[k] = at(right, k) - weight * at(slopes, k) * off;
        for (let l = 0; l < size; l++)
          if (!at(held, l)) data[k * size + l] = at(data, k * size + l) + weight * at(slopes, k) * at(slopes, l);
      }
    });
    normal.set(data);
    for (let k = 0; k < size; k++) {
      const known = at(held, k) ? 1 : at(precision, k);
      normal[k * size + k] = at(normal, k * size + k) + known;
      right[k] = at(right, k) + known * (at(centre, k) - at(values, k));
    }
    const change = solved(normal, right);
    for (let k = 0; k < size; k++) values[k] = at(values, k) + at(change, k);
  }
  return { values, scatter: () => scatterUncertainty(normal, data), residuals };
}

/** Standard uncertainties N⁻¹ D N⁻¹ from the data's own part D of the normal equations N. */
function scatterUncertainty(normal: Float64Array, data: Float64Array): Float64Array {
  const size = NAMES.length;
  return Float64Array.from(NAMES, (_, k) => {
    const unit = new Float64Array(size);
    unit[k] = 1;
    const column = solved(normal, unit);
    let sum = 0;
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++) sum += at(column, i) * at(data, i * size + j) * at(column, j);
    return Math.sqrt(Math.max(0, sum));
  });
}

/** Solution of a symmetric positive definite system (Cholesky), scaled by its diagonal, whose units differ. */
function solved(matrix: Float64Array, right: Float64Array): Float64Array {
  const size = right.length;
  const scale = Float64Array.from(right, (_, k) => 1 / Math.sqrt(at(matrix, k * size + k)));
  const lower = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = at(matrix, i * size + j) * at(scale, i) * at(scale, j);
      for (let k = 0; k < j; k++) sum -= at(lower, i * size + k) * at(lower, j * size + k);
      lower[i * size + j] = i === j ? Math.sqrt(Math.max(sum, 1e-15)) : sum / at(lower, j * size + j);
    }
  const x = Float64Array.from(right, (value, k) => value * at(scale, k));
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i] = at(x, i) - at(lower, i * size + k) * at(x, k);
    x[i] = at(x, i) / at(lower, i * size + i);
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i] = at(x, i) - at(lower, k * size + i) * at(x, k);
    x[i] = at(x, i) / at(lower, i * size + i);
  }
  return x.map((value, k) => value * at(scale, k));
}

/** Scatter that is expected before anything is seen, N√m. */
function startingScatter(pieces: readonly Piece[], road: number): number {
  const force = pieces.reduce((sum, piece) => sum + piece.energy, 0) / road;
  // a ride without any power has no force to be relative to
  return Math.max(EXPECTED_SCATTER * force, 1) * Math.sqrt(road / pieces.length);
}

/**
 * Scatter of the pieces, N√m, with the degrees of freedom that it has: what was expected and what the residuals show together. Where
 * neighbours err alike, they count as fewer.
 */
function scatterOf(residuals: Float64Array, expected: number): [number, number] {
  const n = residuals.length;
  let [squares, neighbours] = [0, 0];
  for (let i = 0; i < n; i++) {
    squares += at(residuals, i) ** 2;
    if (i > 0) neighbours += at(residuals, i) * at(residuals, i - 1);
  }
  const alike = squares > 0 ? Math.max(0, Math.min(0.8, neighbours / squares)) : 0;
  const fewer = (1 + alike) / (1 - alike);
  const seen = Math.max(0, n - 2);
  const variance = (EXPECTED_FREEDOM * expected ** 2 + squares) / (EXPECTED_FREEDOM + seen);
  return [Math.sqrt(variance * fewer), EXPECTED_FREEDOM + seen / fewer];
}

/**
 * Significant digits to which a range supports a figure: down to the place of the first digit of its half-width, so 0.0247 ± 0.006 is
 * told as 0.025. At least 1, at most 6; 0 where a side is not bounded or there is no figure.
 */
export function digitsOf(value: number, low: number, high: number): number {
  const half = (high - low) / 2;
  if (!Number.isFinite(value) || !Number.isFinite(half) || value === 0) return 0;
  if (!(half > 0)) return 6;
  const place = (size: number): number => Math.floor(Math.log10(size));
  return Math.max(1, Math.min(6, place(Math.abs(value)) - place(half) + 1));
}

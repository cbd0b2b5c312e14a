import type { Resistance } from './resistance.ts';

// Kronrod's rule of 15 points, every second one a node of Gauss's rule of 7 (as in QUADPACK; values from memory, and the tests hold them to the integrals
// of polynomials). From the outermost node inwards; the last is the middle.
const HALF_NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
const HALF_KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225017, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.2044329400752989, 0.20948214108472782,
];
const HALF_GAUSS = [0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0, 0.4179591836734694];

const mirrored = (half: readonly number[], sign: number): Float64Array =>
  Float64Array.from([...half.map((value) => sign * value), ...half.slice(0, -1).reverse()]);

export const NODES = mirrored(HALF_NODES, -1);
export const KRONROD = mirrored(HALF_KRONROD, 1);
export const GAUSS = mirrored(HALF_GAUSS, 1);

/** Halvings of a range before its integral is taken as it is. */
const DEEPEST = 40;

/** Share of a limit that one more step of Newton's method makes up to the last digit. */
const CLOSE = 1e-5;

/** Share of a difference in speed up to which three points are enough for what is left of it. */
const NEARLY = 0.01;

/** How far the outer ones lie from the middle of a range. */
const GAUSS_THREE = Math.sqrt(15) / 10;

/** Past so many e-foldings nothing is left of a difference in speed. */
export const SETTLED = 40;

/**
 * How a bike settles to its steady speed on one slope, where the power at the wheel is `power + perSpeed · v`: the time and distance until it
 * rides at another speed, exactly but for rounding and integrals of smooth functions.
 *
 * With `y = v − v∞` its motion is `m v dy/dt = −y Q(v)`, where Q is the quadratic that stays of the cubic `power at the wheel − v F(v)` without its root
 * v∞. So `dt = −h(v) dy/y` with `h = m v/Q`. Where v∞ lies in the same law (`isOwn`), `h(v∞)/y` is integrated as a logarithm, and what remains,
 * `(h(v) − h(v∞))/y`, is smooth to the very end. Where the law changes before v∞ is reached, `m v/(power − v F)` is.
 * Progress is counted in e-foldings `x = ln(y₀/y)`; at infinity the bike rides at v∞.
 *
 * One object serves many stretches: nothing is allocated on the way.
 */
export class Settling {
  /** share of an integral that may be wrong, by a careful estimate: the true error is far smaller */
  tolerance = 1e-7;

  // what is given
  private mass = 0;
  private power = 0;
  private constant = 0;
  private linear = 0;
  private quadratic = 0;
  private steady = 0;
  private isOwn = false;
  private away = 0;
  // Q = q0 + q1 v + q2 v²
  private q0 = 0;
  private q1 = 0;
  private q2 = 0;
  private atSteady = 0;
  /** h(v∞), s */
  private scale = 0;

  // what is found: s, m, ∫ v ds, ∫ v² ds and m/s at the end, and the progress up to there
  time = 0;
  distance = 0;
  speedIntegral = 0;
  squareIntegral = 0;
  speed = 0;
  progress = 0;

  // the smooth parts of the first four
  private smoothTime = 0;
  private smoothDistance = 0;
  private smoothSpeedIntegral = 0;
  private smoothSquareIntegral = 0;
  private upTo = Number.NaN;
  // and those all the way to the steady speed
  private wholeTime = 0;
  private wholeDistance = 0;
  private wholeSpeedIntegral = 0;
  private wholeSquareIntegral = 0;
  private isWhole = false;

  constructor() {
    // fields that hold fractions from the start keep their kind, so that no number is boxed on the way
    this.mass = this.power = this.constant = this.linear = this.quadratic = this.steady = 0.5;
    this.away = this.q0 = this.q1 = this.q2 = this.atSteady = this.scale = this.upTo = 0.5;
    this.time = this.distance = this.speedIntegral = this.squareIntegral = this.speed = this.progress = 0.5;
    this.smoothTime = this.smoothDistance = this.smoothSpeedIntegral = this.smoothSquareIntegral = 0.5;
    this.wholeTime = this.wholeDistance = this.wholeSpeedIntegral = this.wholeSquareIntegral = 0.5;
  }

  /**
   * Sets out at speed `from` (m/s) for the steady speed `steady` (not negative).
   * @param mass kg that are sped up
   * @param r resistance; the sign of the air speed must not change between `from` and where this law ends
   * @param power W at the wheel at rest, not negative
   * @param perSpeed N: what it grows by with speed
   * @param isOwn `steady` is where this very law balances
   * @param wind +1 while the air comes from the front, −1 while the wind is faster than the bike
   */
  start(
    mass: number,
    r: Resistance,
    power: number,
    perSpeed: number,
    from: number,
    steady: number,
    isOwn: boolean,
    wind: number,
  ): void {
    const k = wind * r.quadratic;
    const linear = r.linear + 2 * k * r.headWind;
    const constant = r.constant - perSpeed + k * r.headWind * r.headWind;
    this.mass = mass;
    this.power = power;
    this.constant = constant;
    this.linear = linear;
    this.quadratic = k;
    this.steady = steady;
    this.isOwn = isOwn;
    this.away = from - steady;
    this.speed = from;
    this.upTo = Number.NaN;
    this.isWhole = false;
    this.q2 = k;
    this.q1 = linear + steady * k;
    // the cubic at rest is −v∞ times this: where both are nothing, what holds the bike at rest stays
    this.q0 = steady > 0 ? power / steady : constant;
    this.atSteady = this.q0 + steady * (this.q1 + steady * this.q2);
    this.scale = isOwn ? (mass * steady) / this.atSteady : 0;
  }

  /** h at a speed, s: how long an e-folding takes there. */
  perFolding(v: number): number {
    if (this.isOwn) return (this.mass * v) / (this.q0 + v * (this.q1 + v * this.q2));
    return (-this.mass * v * (v - this.steady)) / this.surplus(v);
  }

  /** Speed after a progress of `x` e-foldings. */
  speedAt(x: number): number {
    return this.steady + this.away * Math.exp(-x);
  }

  /** Progress, in e-foldings, at which the bike rides at `v`. */
  progressAt(v: number): number {
    return Math.log(this.away / (v - this.steady));
  }

  /** Distance, m, in which a bike comes to rest that nothing moves. */
  distanceToRest(): number {
    this.integrate(0);
    return this.smoothDistance;
  }

  /** Goes to the progress `x`, at which the speed is `v` where that is known. */
  to(x: number, v = this.speedAt(x)): void {
    const y = this.isOwn && x > SETTLED ? 0 : v - this.steady;
    this.integrate(y);
    const { scale, steady } = this;
    const folded = this.isOwn ? scale * x : 0;
    this.time = folded + this.smoothTime;
    this.distance = folded * steady + this.smoothDistance;
    this.speedIntegral = folded * steady * steady + this.smoothSpeedIntegral;
    this.squareIntegral = folded * steady * steady * steady + this.smoothSquareIntegral;
    this.speed = steady + y;
    this.progress = x;
  }

  /**
   * Goes to where `perTime · time + perDistance · distance` is `limit`, by Newton's method inside a bracket. That must rise on the way and come so far.
   * @param most the progress before which it does; where the bike is now, when nothing is said
   */
  reach(perTime: number, perDistance: number, limit: number, most = this.progress): void {
    const start = this.steady + this.away;
    let low = 0;
    let high = most;
    let x = limit / (this.perFolding(start) * (perTime + perDistance * start));
    if (this.isOwn) {
      this.integrate(0);
      const later =
        (limit - perTime * this.smoothTime - perDistance * this.smoothDistance) /
        (this.scale * (perTime + perDistance * this.steady));
      // the rest of a long way goes at the steady speed
      if (later > 1 && later < Number.POSITIVE_INFINITY) {
        const rest = this.away * Math.exp(-later);
        const smooth = this.smoothPerTime(this.steady);
        const rate = perTime * smooth + perDistance * (this.scale + this.steady * smooth);
        x = later + (rest * rate) / (this.scale * (perTime + perDistance * this.steady));
      }
    }
    if (!(x < high)) x = high < Number.POSITIVE_INFINITY ? 0.5 * high : 1;
    for (let i = 0; i < 100; i++) {
      this.to(x);
      const v = this.speed;
      const off = perTime * this.time + perDistance * this.distance - limit;
      if (off > 0) high = x;
      else low = x;
      let step = -off / (this.perFolding(v) * (perTime + perDistance * v));
      if (Math.abs(off) <= CLOSE * limit) {
        this.nudge(step);
        return;
      }
      if (!(x + step > low && x + step < high)) step = high < Number.POSITIVE_INFINITY ? 0.5 * (low + high) - x : x + 1;
      if (x + step === x) return;
      x += step;
    }
  }

  /** Goes on by so small a step in progress that the mean of its two ends is exact. */
  private nudge(step: number): void {
    const v = this.speed;
    this.progress += step;
    this.speed = this.speedAt(this.progress);
    const before = 0.5 * step * this.perFolding(v);
    const after = 0.5 * step * this.perFolding(this.speed);
    this.time += before + after;
    this.distance += before * v + after * this.speed;
    this.speedIntegral += before * v * v + after * this.speed * this.speed;
    this.squareIntegral += before * v * v * v + after * this.speed * this.speed * this.speed;
  }

  /** The power that is left for speeding up, W. */
  private surplus(v: number): number {
    return this.power - v * (this.constant + v * (this.linear + v * this.quadratic));
  }

  /** Fills the smooth parts from the start to `y` from the steady speed. */
  private integrate(y: number): void {
    if (y === this.upTo) return;
    const { away } = this;
    this.upTo = y;
    this.smoothTime = this.smoothDistance = this.smoothSpeedIntegral = this.smoothSquareIntegral = 0;
    if (!(this.isOwn && Math.abs(y) < NEARLY * Math.abs(away))) {
      if (y !== away) this.panel(y, away, 0);
      return;
    }
    if (!this.isWhole) {
      this.panel(0, away, 0);
      this.isWhole = true;
      this.wholeTime = this.smoothTime;
      this.wholeDistance = this.smoothDistance;
      this.wholeSpeedIntegral = this.smoothSpeedIntegral;
      this.wholeSquareIntegral = this.smoothSquareIntegral;
    }
    // all the way to the steady speed, less the last of it by Gauss's rule of three points
    let time = 0;
    let distance = 0;
    let speedIntegral = 0;
    let squareIntegral = 0;
    for (let i = -1; i <= 1; i++) {
      const v = this.steady + y * (0.5 + i * GAUSS_THREE);
      const weight = i === 0 ? 8 / 18 : 5 / 18;
      const perTime = this.smoothPerTime(v);
      const folding = this.perFolding(v);
      const perDistance = folding + this.steady * perTime;
      const perSpeeds = v * folding + this.steady * perDistance;
      time += weight * perTime;
      distance += weight * perDistance;
      speedIntegral += weight * perSpeeds;
      squareIntegral += weight * (v * v * folding + this.steady * perSpeeds);
    }
    this.smoothTime = this.wholeTime - y * time;
    this.smoothDistance = this.wholeDistance - y * distance;
    this.smoothSpeedIntegral = this.wholeSpeedIntegral - y * speedIntegral;
    this.smoothSquareIntegral = this.wholeSquareIntegral - y * squareIntegral;
  }

  /** (h(v) − h(v∞))/y, without a difference. */
  private smoothPerTime(v: number): number {
    const { q0, q1, q2, steady } = this;
    return (this.mass * (q0 - q2 * v * steady)) / ((q0 + v * (q1 + v * q2)) * this.atSteady);
  }

  /** Adds the smooth parts between two speedIntegral, given from the steady one, in halves where one rule is not enough. */
  private panel(a: number, b: number, depth: number): void {
    const { mass, steady, q0, q1, q2, isOwn } = this;
    const atRest = (mass / this.atSteady) * q0;
    const change = (mass / this.atSteady) * q2 * steady;
    const half = 0.5 * (b - a);
    const middle = 0.5 * (a + b);
    let time = 0;
    let distance = 0;
    let speedIntegral = 0;
    let squareIntegral = 0;
    let rough = 0;
    for (let i = 0; i < 15; i++) {
      const weight = KRONROD[i] as number;
      const v = steady + middle + half * (NODES[i] as number);
      let perTime: number;
      let perDistance: number;
      if (isOwn) {
        const inverse = 1 / (q0 + v * (q1 + v * q2));
        const folding = mass * v * inverse;
        perTime = (atRest - change * v) * inverse;
        perDistance = folding + steady * perTime;
        const perSpeeds = v * folding + steady * perDistance;
        speedIntegral += weight * perSpeeds;
        squareIntegral += weight * (v * v * folding + steady * perSpeeds);
      } else {
        // from the start to here: the way back over y
        perTime = (-mass * v) / this.surplus(v);
        perDistance = perTime * v;
        speedIntegral += weight * perDistance * v;
        squareIntegral += weight * perDistance * v * v;
      }
      time += weight * perTime;
      distance += weight * perDistance;
      rough += (GAUSS[i] as number) * perTime;
    }
    const fastest = steady + Math.max(a, b);
    if (depth < DEEPEST && Math.abs(time - rough) > this.tolerance * (Math.abs(time) + Math.abs(distance) / fastest)) {
      this.panel(a, middle, depth + 1);
      this.panel(middle, b, depth + 1);
      return;
    }
    this.smoothTime += half * time;
    this.smoothDistance += half * distance;
    this.smoothSpeedIntegral += half * speedIntegral;
    this.smoothSquareIntegral += half * squareIntegral;
  }
}

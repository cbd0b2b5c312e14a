import type { Resistance } from './resistance.ts';

// Nodes and weights of Kronrod's rule of 15 points, every second one a node of Gauss's rule of 7 (Piessens et al. 1983, QUADPACK; values from memory,
// and the tests hold them to the integrals of polynomials). From the outermost node inwards; the last is the middle.
const NODES = Float64Array.of(
  0.9914553711208126,
  0.9491079123427585,
  0.8648644233597691,
  0.7415311855993945,
  0.5860872354676911,
  0.4058451513773972,
  0.20778495500789848,
);
const KRONROD = Float64Array.of(
  0.022935322010529224,
  0.06309209262997856,
  0.10479001032225017,
  0.14065325971552592,
  0.1690047266392679,
  0.19035057806478542,
  0.2044329400752989,
);
const KRONROD_MIDDLE = 0.20948214108472782;
const GAUSS = Float64Array.of(0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0);
const GAUSS_MIDDLE = 0.4179591836734694;

/** Halvings of a range before its integral is taken as it is. */
const DEEPEST = 40;

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
  speeds = 0;
  squares = 0;
  speed = 0;
  progress = 0;

  // the smooth parts of the first four
  private smoothTime = 0;
  private smoothDistance = 0;
  private smoothSpeeds = 0;
  private smoothSquares = 0;
  private upTo = Number.NaN;

  constructor() {
    // fields that hold fractions from the start keep their kind, so that no number is boxed on the way
    this.mass = this.power = this.constant = this.linear = this.quadratic = this.steady = 0.5;
    this.away = this.q0 = this.q1 = this.q2 = this.atSteady = this.scale = this.upTo = 0.5;
    this.time = this.distance = this.speeds = this.squares = this.speed = this.progress = 0.5;
    this.smoothTime = this.smoothDistance = this.smoothSpeeds = this.smoothSquares = 0.5;
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
    this.speeds = folded * steady * steady + this.smoothSpeeds;
    this.squares = folded * steady * steady * steady + this.smoothSquares;
    this.speed = steady + y;
    this.progress = x;
  }

  /**
   * Goes to where `perTime · time + perDistance · distance` is `limit`, by Newton's method inside a bracket. That must rise on the way and come so far.
   */
  reach(perTime: number, perDistance: number, limit: number): void {
    const start = this.steady + this.away;
    let low = 0;
    let high = Number.POSITIVE_INFINITY;
    let x = limit / (this.perFolding(start) * (perTime + perDistance * start));
    if (this.isOwn) {
      this.integrate(0);
      const later =
        (limit - perTime * this.smoothTime - perDistance * this.smoothDistance) /
        (this.scale * (perTime + perDistance * this.steady));
      // the rest of a long way goes at the steady speed
      if (later > 2 && later < Number.POSITIVE_INFINITY) x = later;
    }
    if (!(x < SETTLED) && !(this.isOwn && x < Number.POSITIVE_INFINITY)) x = 1;
    for (let i = 0; i < 100; i++) {
      this.to(x);
      const v = this.speed;
      const off = perTime * this.time + perDistance * this.distance - limit;
      if (off > 0) high = x;
      else low = x;
      const slope = this.perFolding(v) * (perTime + perDistance * v);
      let next = x - off / slope;
      if (!(next > low && next < high)) {
        if (Math.abs(off) <= 1e-15 * limit) return;
        next = high < Number.POSITIVE_INFINITY ? 0.5 * (low + high) : 2 * x + 1;
      }
      if (next === x || Math.abs(off) <= 2e-15 * limit) return;
      x = next;
    }
  }

  /** The power that is left for speeding up, W. */
  private surplus(v: number): number {
    return this.power - v * (this.constant + v * (this.linear + v * this.quadratic));
  }

  /** Fills the smooth parts from the start to `y` from the steady speed. */
  private integrate(y: number): void {
    if (y === this.upTo) return;
    this.upTo = y;
    this.smoothTime = this.smoothDistance = this.smoothSpeeds = this.smoothSquares = 0;
    if (y !== this.away) this.panel(y, this.away, 0);
  }

  /** Adds the smooth parts between two speeds, given from the steady one, in halves where one rule is not enough. */
  private panel(a: number, b: number, depth: number): void {
    const { mass, steady, q0, q1, q2, isOwn } = this;
    const own = mass / this.atSteady;
    const half = 0.5 * (b - a);
    const middle = 0.5 * (a + b);
    let time = 0;
    let distance = 0;
    let speeds = 0;
    let squares = 0;
    let rough = 0;
    for (let i = -7; i <= 7; i++) {
      const j = i < 0 ? i + 7 : 7 - i;
      const node = i === 0 ? 0 : i < 0 ? -(NODES[j] as number) : (NODES[j] as number);
      const weight = i === 0 ? KRONROD_MIDDLE : (KRONROD[j] as number);
      const v = steady + middle + half * node;
      let perTime: number;
      let perDistance: number;
      if (isOwn) {
        const q = q0 + v * (q1 + v * q2);
        const folding = (mass * v) / q;
        perTime = (own * (q0 - q2 * v * steady)) / q;
        perDistance = folding + steady * perTime;
        const perSpeeds = v * folding + steady * perDistance;
        speeds += weight * perSpeeds;
        squares += weight * (v * v * folding + steady * perSpeeds);
      } else {
        // from the start to here: the way back over y
        perTime = (-mass * v) / (this.power - v * (this.constant + v * (this.linear + v * this.quadratic)));
        perDistance = perTime * v;
        speeds += weight * perDistance * v;
        squares += weight * perDistance * v * v;
      }
      time += weight * perTime;
      distance += weight * perDistance;
      rough += (i === 0 ? GAUSS_MIDDLE : (GAUSS[j] as number)) * perTime;
    }
    const fastest = steady + Math.max(a, b);
    if (depth < DEEPEST && Math.abs(time - rough) > this.tolerance * (Math.abs(time) + Math.abs(distance) / fastest)) {
      this.panel(a, middle, depth + 1);
      this.panel(middle, b, depth + 1);
      return;
    }
    this.smoothTime += half * time;
    this.smoothDistance += half * distance;
    this.smoothSpeeds += half * speeds;
    this.smoothSquares += half * squares;
  }
}

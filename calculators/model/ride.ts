import { type Climb, loadOf } from './climb.ts';
import { FADE_WIDTH, GRAVITY } from './constants.ts';
import type { Endurance } from './endurance.ts';
import { cadenceAt, crankTorque, gearSpeed, wheelForce } from './gears.ts';
import { cadenceOf, finalRise, heldPower, torqueRatio } from './heat.ts';
import { motorBound } from './motor.ts';
import { profileOf } from './profile.ts';
import { type Resistance, resistanceOf, resistingForce } from './resistance.ts';
import { SETTLED, Settling } from './settling.ts';
import { steadySpeed } from './speed.ts';
import type { Reserves, Stage, StagedClimb } from './stages.ts';

/** A motor that heat holds back is let up again once its rise has fallen to this share of the permitted one: our assumption, so that it does not come and go. */
export const COOLED = 0.95;

/** A rider who has nothing left rides above the critical power again once this share of W′ has come back: our assumption, for the same reason. */
export const RECOVERED = 0.05;

/** m/s. Nothing rides faster: the cap where neither air nor brakes hold a bike back. */
const FASTEST = 1000;

/** So many changes on one piece are more than there can be. */
const MOST_STRETCHES = 1e6;

/** E-foldings of the first step when the rise of a motor is followed whose torque changes; later ones are longer. */
const FINEST_STEP = 0.15;

/** Gauss's method of three points: how far the outer ones lie from the middle of a step, and what its stages need (Butcher 1964, value from memory). */
const GAUSS_NODE = Math.sqrt(15) / 10;
const GAUSS_STAGE = Math.sqrt(15) / 30;

/** What holds a ride back on a part of the way. */
export type SpanLimit = 'assist-limit' | 'torque' | 'support' | 'heat' | 'battery' | 'endurance' | 'brakes';

/** A place on the way: m and s from the bottom. */
export interface Place {
  distance: number;
  time: number;
}

/** A part of the way on which something binds. */
export interface Span {
  limit: SpanLimit;
  from: Place;
  to: Place;
}

/**
 * A ride along a profile. Its stages are the pieces of the profile, cut where heat or battery begin or cease to limit; their speeds and powers are means.
 * Over the whole ride the powers and the change of kinetic energy add up: `crankPower · time` is the sum of `powers` times `time`,
 * of `brakes`, and of `kinetic.end − kinetic.start`.
 */
export interface ProfileRide extends StagedClimb {
  /** one row for each point of the profile: m from the bottom, s, m/s, and W that the motor gives there */
  points: { distance: Float64Array; time: Float64Array; speed: Float64Array; motorPower: Float64Array };
  /** in the order in which they begin; those of the rider may lie over those of the motor */
  spans: Span[];
  /** J that the brakes take */
  brakes: number;
  /** J */
  kinetic: { start: number; end: number };
}

/** A ride along a profile rather than one in stages of one grade. */
export const isAlongProfile = (ride: StagedClimb): ride is ProfileRide => 'spans' in ride;

/** Crank power of rider and motor over a range of speeds: the motor gives `power + perSpeed · v`. */
interface Part {
  /** m/s, where it ends */
  upTo: number;
  /** W */
  power: number;
  /** N */
  perSpeed: number;
  limit: SpanLimit | undefined;
  /** +1 where the air comes from the front, −1 where the wind is faster */
  wind: number;
  /** the motor's torque is the same all over it */
  isEvenTorque: boolean;
}

/** What turns the crank while nothing else gives out, by rising speed. */
interface Law {
  /** W */
  riderPower: number;
  parts: Part[];
}

/** The law of a climb in one state of its reserves. */
function lawOf(climb: Climb, { heat, endurance }: Reserves, charged: boolean, hot: boolean, spent: boolean): Law {
  const { assistLimit, fadeWidth = FADE_WIDTH, torque, gear, headWind } = climb;
  const riderPower = spent && endurance ? Math.min(climb.riderPower, endurance.criticalPower) : climb.riderPower;
  const bound = motorBound({ ...climb, riderPower });
  const none = Number.POSITIVE_INFINITY;
  const lasting = hot && heat ? heldPower(cadenceOf(climb, heat), heat) : none;
  const lastingForce =
    hot && heat && gear ? wheelForce(crankTorque(heat.continuous, heat.continuousCadence), gear) : none;
  const torqueForce = torque !== undefined && gear ? wheelForce(torque, gear) : none;
  const force = Math.min(torqueForce, lastingForce);
  const most = Math.min(bound.power, lasting);
  const gearedAt = gear && heat ? gearSpeed(cadenceOf(climb, heat), gear) : 0;
  const parts: Part[] = [];
  let low = 0;
  /** Up to `upTo` the motor gives this; cut where the wind turns and where the lowest gear is left. */
  const add = (upTo: number, power: number, perSpeed: number, limit: SpanLimit | undefined): void => {
    while (low < upTo) {
      let high = upTo;
      for (const cut of [-headWind, gearedAt]) if (cut > low && cut < high) high = cut;
      const wind = high <= -headWind ? -1 : 1;
      const isEvenTorque = high <= gearedAt ? power === 0 : perSpeed === 0;
      parts.push({ upTo: high, power, perSpeed, limit, wind, isEvenTorque });
      low = high;
    }
  };
  if (charged && most > 0) {
    let full = most / force;
    let fades = assistLimit === null ? none : assistLimit - (fadeWidth * most) / bound.power;
    if (full > fades && assistLimit !== null)
      full = fades = force === none ? 0 : (bound.power * assistLimit) / (fadeWidth * force + bound.power);
    add(full, 0, force, lastingForce < torqueForce ? 'heat' : 'torque');
    add(fades, most, 0, lasting < bound.power ? 'heat' : bound.binds === 'peak' ? undefined : bound.binds);
    if (assistLimit !== null) {
      const perSpeed = -bound.power / fadeWidth;
      add(assistLimit, -perSpeed * assistLimit, perSpeed, 'assist-limit');
      add(none, 0, 0, 'assist-limit');
    }
  } else add(none, 0, 0, bound.power > 0 ? (charged ? 'heat' : 'battery') : undefined);
  return { riderPower, parts };
}

/** Why a stretch ends: the piece does, the law changes with speed, something gives out or comes back. */
type End = 'piece' | 'speed' | 'battery' | 'endurance' | 'heat';

/** A ride as it goes on: one object for all its pieces, so that nothing is allocated on the way but what the caller gets. */
class Ride {
  readonly spans: Span[] = [];
  /** the stages, eight numbers each: most rides are asked for their time only */
  readonly seams: number[] = [];
  // Fractions at first, so that these fields hold fractions for good and no number is boxed on the way.
  distance = 0.5;
  time = 0.5;
  speed = 0.5;
  /** W, the motor's at the start of the last stretch */
  motorPower = 0.5;
  /** J each */
  motorWork = 0.5;
  riderWork = 0.5;
  rolling = 0.5;
  air = 0.5;
  brakes = 0.5;
  energy = 0.5;
  private rise = 0.5;
  /** J of W′ */
  private left = 0.5;
  private charged = true;
  private hot = false;
  private spent = false;

  private readonly climb: Climb;
  private readonly reserves: Reserves;
  /** kg that are sped up */
  readonly mass: number;
  private readonly topSpeed: number;
  /** N that neither slope nor speed change */
  private readonly bearings: number;
  private readonly resistance: Resistance;
  /** the same with the force of a motor whose power changes with speed */
  private readonly helped: Resistance;
  private readonly settling = new Settling();
  private readonly laws: (Law | undefined)[] = [];
  /** of the present piece and state: the steady speed and the part of the law that holds there */
  private steady = 0.5;
  private steadyPart = 0;
  private rollingForce = 0.5;
  private stretches = 0;
  private stageLimit: Stage['limit'] = 'none';
  private stageDistance = 0.5;
  private stageTime = 0.5;
  private stageWork = 0.5;
  private stageSpeed = 0.5;

  constructor(climb: Climb, reserves: Reserves, tolerance: number) {
    this.climb = climb;
    this.reserves = reserves;
    this.mass = climb.mass + (climb.wheelMass ?? 0);
    this.topSpeed = Math.min(climb.topSpeed ?? FASTEST, FASTEST);
    this.bearings = resistanceOf({ ...loadOf(climb), mass: 0 }).constant;
    this.resistance = resistanceOf(loadOf(climb));
    this.helped = { ...this.resistance };
    this.settling.tolerance = tolerance;
    this.distance = this.time = this.speed = this.motorPower = 0;
    this.motorWork = this.riderWork = this.rolling = this.air = this.brakes = this.energy = 0;
    this.rise = reserves.heat?.rise ?? 0;
    this.left = reserves.endurance?.workAbove ?? 0;
    this.stageDistance = this.stageTime = this.stageWork = 0;
  }

  /** Sets out at the steady speed of the first piece, or the top speed. False where that is none. */
  begin(sin: number): boolean {
    this.turn(sin);
    do {
      this.findSteady();
      this.speed = Math.min(this.steady, this.topSpeed);
    } while (this.changesAtOnce(this.partAt(this.speed)));
    this.stageSpeed = this.speed;
    return this.speed > 0;
  }

  /** Rides a piece of this sine. False where the bike cannot be kept moving. */
  piece(sin: number, length: number): boolean {
    const { settling } = this;
    this.turn(sin);
    this.stretches = 0;
    let left = length;
    while (left > 0) {
      if (++this.stretches > MOST_STRETCHES) return false;
      this.findSteady();
      const part = this.partAt(this.speed);
      if (this.stretches === 1) this.motorPower = part.power + part.perSpeed * this.speed;
      if (this.changesAtOnce(part)) continue;
      if (this.speed >= this.topSpeed && this.steady > this.topSpeed) {
        left -= this.hold(part, left);
        continue;
      }
      const law = this.law();
      const end = this.settle(part, left);
      if (end === undefined) return false;
      const distance = end === 'piece' ? left : settling.distance;
      this.note(part.limit, distance, settling.time, part.power * settling.time + part.perSpeed * distance);
      this.riderWork += law.riderPower * settling.time;
      this.rolling += this.rollingForce * distance + this.resistance.linear * settling.speedIntegral;
      const { headWind: wind, quadratic } = this.resistance;
      this.air +=
        part.wind * quadratic * (settling.squareIntegral + wind * (2 * settling.speedIntegral + wind * distance));
      this.speed = settling.speed;
      left = end === 'piece' ? 0 : left - distance;
      if (end !== 'piece' && end !== 'speed') this.change(end);
    }
    return true;
  }

  /** W, what the motor gives here and now. */
  motorNow(): number {
    const part = this.partAt(this.speed);
    return part.power + part.perSpeed * this.speed;
  }

  /** Ends a stage: at the end of a piece, and where heat or battery begin or cease to limit. */
  endStage(): void {
    const distance = this.distance - this.stageDistance;
    const time = this.time - this.stageTime;
    const work = this.motorWork - this.stageWork;
    if (distance > 0)
      this.seams.push(
        LIMITS.indexOf(this.stageLimit),
        this.stageDistance,
        this.stageTime,
        distance,
        time,
        work,
        this.stageSpeed,
        this.speed,
      );
    this.stageDistance = this.distance;
    this.stageTime = this.time;
    this.stageWork = this.motorWork;
    this.stageSpeed = this.speed;
    this.stageLimit = this.limitNow();
  }

  private law(): Law {
    const state = (this.charged ? 1 : 0) + (this.hot ? 2 : 0) + (this.spent ? 4 : 0);
    let law = this.laws[state];
    if (!law) {
      law = lawOf(this.climb, this.reserves, this.charged, this.hot, this.spent);
      this.laws[state] = law;
    }
    return law;
  }

  private turn(sin: number): void {
    const weight = this.climb.mass * GRAVITY;
    this.rollingForce = weight * this.climb.rolling * Math.sqrt(1 - sin * sin) + this.bearings;
    this.resistance.constant = weight * sin + this.rollingForce;
  }

  /** Power that speeds the bike up at `v`, W. Over `v` it falls with speed, so that it is nothing at one speed only. */
  private surplus(law: Law, part: Part, v: number): number {
    return (
      this.climb.efficiency * (law.riderPower + part.power + part.perSpeed * v) - v * resistingForce(this.resistance, v)
    );
  }

  private findSteady(): void {
    const law = this.law();
    let k = 0;
    let part = law.parts[0] as Part;
    while (part.upTo < Number.POSITIVE_INFINITY && this.surplus(law, part, part.upTo) > 0) {
      k++;
      part = law.parts[k] as Part;
    }
    const { helped, resistance } = this;
    const { efficiency } = this.climb;
    helped.constant = resistance.constant - efficiency * part.perSpeed;
    const v = steadySpeed(helped, efficiency * (law.riderPower + part.power));
    const low = k > 0 ? (law.parts[k - 1] as Part).upTo : 0;
    this.steady = Math.min(Math.max(v, low), part.upTo);
    this.steadyPart = k;
  }

  /** The part of the law on which a bike at speed `v` rides on. */
  private partAt(v: number): Part {
    const { parts } = this.law();
    if (v === this.steady) return parts[this.steadyPart] as Part;
    let k = 0;
    if (v < this.steady) while ((parts[k] as Part).upTo <= v) k++;
    else while ((parts[k] as Part).upTo < v) k++;
    return parts[k] as Part;
  }

  /** Something has given out before the motor gives what it would. */
  private changesAtOnce(part: Part): boolean {
    const { battery, heat, endurance } = this.reserves;
    if (endurance && !this.spent && this.climb.riderPower > endurance.criticalPower && this.left <= 0) {
      this.change('endurance');
      return true;
    }
    if (part.power === 0 && part.perSpeed === 0) return false;
    if (battery && this.charged && this.energy >= battery.energy) {
      this.change('battery');
      return true;
    }
    if (heat && !this.hot && this.rise >= 1 && this.torqueAt(part, this.speed) > 1) {
      this.change('heat');
      return true;
    }
    return false;
  }

  private change(end: End): void {
    const { battery, endurance, heat } = this.reserves;
    if (end === 'battery') {
      this.charged = false;
      if (battery) this.energy = battery.energy;
    } else if (end === 'heat') {
      this.hot = !this.hot;
      if (heat) this.rise = this.hot ? Math.max(1, this.rise) : COOLED;
    } else if (end === 'endurance' && endurance) {
      this.spent = !this.spent;
      if (this.spent) this.left = 0;
    } else return;
    if (end === 'endurance' || this.limitNow() !== this.stageLimit) this.endStage();
  }

  /** What holds the motor back from now on, in the words of a stage. */
  private limitNow(): Stage['limit'] {
    if (!this.charged) return 'battery';
    return this.hot ? 'heat' : 'none';
  }

  /** Torque of the motor over what it holds for ever, at speed `v`. */
  private torqueAt(part: Part, v: number): number {
    const { heat } = this.reserves;
    const power = part.power + part.perSpeed * v;
    if (!heat || !(power > 0)) return 0;
    const { gear } = this.climb;
    const preferred = cadenceOf(this.climb, heat);
    return torqueRatio(power, gear ? cadenceAt(v, gear, preferred) : preferred, heat);
  }

  /** Goes on towards the steady speed as long as nothing changes; undefined where the bike comes to rest on the way. */
  private settle(part: Part, left: number): End | undefined {
    const { settling, steady, speed: from, topSpeed } = this;
    const { efficiency } = this.climb;
    const law = this.law();
    const own = law.parts[this.steadyPart] === part && steady < 2 * FASTEST;
    const goal = Math.min(steady, 2 * FASTEST);
    settling.start(
      this.mass,
      this.resistance,
      efficiency * (law.riderPower + part.power),
      efficiency * part.perSpeed,
      from,
      goal,
      own,
      part.wind,
    );
    let end: End = 'piece';
    // where this law ends, on the way to the steady speed
    let edge = Number.NaN;
    if (from < steady) {
      if (!own) edge = part.upTo;
      if (steady > topSpeed) edge = Math.min(part.upTo, topSpeed);
    } else if (!own) edge = (law.parts[law.parts.indexOf(part) - 1] as Part).upTo;
    if (Number.isNaN(edge)) {
      if (!(steady > 0) && settling.distanceToRest() <= left) return undefined;
      settling.reach(0, 1, left, Number.POSITIVE_INFINITY);
    } else {
      settling.to(settling.progressAt(edge), edge);
      if (settling.distance > left) settling.reach(0, 1, left);
      else {
        settling.speed = edge;
        end = 'speed';
      }
    }
    const { battery, endurance } = this.reserves;
    const helps = this.charged && (part.power !== 0 || part.perSpeed !== 0);
    // W and N that the battery gives for the motor, with what is always on
    const perTime = battery ? (helps ? part.power / battery.unitEfficiency : 0) + battery.idle : 0;
    const perDistance = battery && helps ? part.perSpeed / battery.unitEfficiency : 0;
    if (battery && helps) {
      const rest = battery.energy - this.energy;
      if (perTime * settling.time + perDistance * settling.distance > rest) {
        settling.reach(perTime, perDistance, rest);
        end = 'battery';
      }
    }
    if (endurance && !this.spent && law.riderPower > endurance.criticalPower) {
      const lasts = this.left / (law.riderPower - endurance.criticalPower);
      if (settling.time > lasts) {
        settling.reach(1, 0, lasts);
        end = 'endurance';
      }
    }
    if (this.warm(part)) end = 'heat';
    if (battery) this.draw(perTime * settling.time + perDistance * settling.distance);
    this.tire(law.riderPower, settling.time);
    return end;
  }

  private draw(energy: number): void {
    const { battery } = this.reserves;
    if (battery && this.charged) this.energy = Math.min(battery.energy, this.energy + energy);
  }

  /** W′ is used above the critical power, and comes back below it: the model of `workBalance`. */
  private tire(power: number, time: number): void {
    const { endurance } = this.reserves;
    if (!endurance) return;
    const { criticalPower, workAbove } = endurance;
    const above = power - criticalPower;
    if (above > 0) this.left = Math.max(0, this.left - above * time);
    else this.left = workAbove - (workAbove - this.left) * Math.exp((above * time) / workAbove);
  }

  /** How long, s, until the motor at an even torque is too hot, or cool again; Infinity where it stays as it is. */
  private heatChangesIn(torque: number): number {
    const { heat } = this.reserves;
    if (!heat) return Number.POSITIVE_INFINITY;
    const final = finalRise(torque, heat.fixedLosses);
    const { rise, hot } = this;
    const threshold = hot ? COOLED : 1;
    // a motor that holds nothing for ever is never let up again
    if (hot ? !(final < COOLED && heat.continuous > 0) : !(final > 1 && rise < 1)) return Number.POSITIVE_INFINITY;
    return heat.timeConstant * Math.log1p((threshold - rise) / (final - threshold));
  }

  private warmEvenly(torque: number, time: number): void {
    const { heat } = this.reserves;
    if (!heat) return;
    const final = finalRise(torque, heat.fixedLosses);
    // a torque without bound has made it hot at once
    this.rise =
      final < Number.POSITIVE_INFINITY ? final + (this.rise - final) * Math.exp(-time / heat.timeConstant) : 1;
  }

  /** The rise over a stretch of settling, which ends early where the motor becomes too hot or cool again: true there. */
  private warm(part: Part): boolean {
    const { heat } = this.reserves;
    if (!heat) return false;
    const { settling } = this;
    const torque = this.torqueAt(part, settling.speed);
    if (part.isEvenTorque) {
      const changes = this.heatChangesIn(torque);
      const isChanged = changes < settling.time;
      if (isChanged) settling.reach(1, 0, changes);
      this.warmEvenly(torque, settling.time);
      return isChanged;
    }
    const end = settling.progress;
    const whole = settling.time;
    const unsettled = Math.min(end, SETTLED);
    for (let x = 0; x < unsettled; ) {
      const step = Math.min(FINEST_STEP * (1 + x), unsettled - x);
      const before = this.rise;
      this.warmStep(part, x, step);
      if (this.hot ? this.rise <= COOLED && heat.continuous > 0 : this.rise >= 1 && before < 1) {
        settling.to(x + this.changeWithin(part, x, step, before));
        return true;
      }
      x += step;
    }
    if (!(end > unsettled)) return false;
    settling.to(unsettled);
    const changes = settling.time + this.heatChangesIn(torque);
    const isChanged = changes < whole;
    const last = isChanged ? changes : whole;
    this.warmEvenly(torque, last - settling.time);
    settling.to(isChanged ? end - (whole - last) / settling.perFolding(settling.speed) : end);
    return isChanged;
  }

  /**
   * One step in progress, the final rise at its mean over the step, what comes late counting most. Times and mean by Gauss's method of three points,
   * whose stages say when each point is passed.
   */
  private warmStep(part: Part, x: number, step: number): void {
    const { heat } = this.reserves;
    if (!heat) return;
    const { settling } = this;
    const v1 = settling.speedAt(x + step * (0.5 - GAUSS_NODE));
    const v2 = settling.speedAt(x + step * 0.5);
    const v3 = settling.speedAt(x + step * (0.5 + GAUSS_NODE));
    const h1 = step * settling.perFolding(v1);
    const h2 = step * settling.perFolding(v2);
    const h3 = step * settling.perFolding(v3);
    const time = (5 * h1 + 8 * h2 + 5 * h3) / 18;
    const t1 = (5 / 36) * h1 + (2 / 9 - 2 * GAUSS_STAGE) * h2 + (5 / 36 - GAUSS_STAGE) * h3;
    const t2 = (5 / 36 + 1.25 * GAUSS_STAGE) * h1 + (2 / 9) * h2 + (5 / 36 - 1.25 * GAUSS_STAGE) * h3;
    const t3 = (5 / 36 + GAUSS_STAGE) * h1 + (2 / 9 + 2 * GAUSS_STAGE) * h2 + (5 / 36) * h3;
    const { timeConstant, fixedLosses } = heat;
    const w1 = 5 * h1 * Math.exp((t1 - time) / timeConstant);
    const w2 = 8 * h2 * Math.exp((t2 - time) / timeConstant);
    const w3 = 5 * h3 * Math.exp((t3 - time) / timeConstant);
    const final =
      (w1 * finalRise(this.torqueAt(part, v1), fixedLosses) +
        w2 * finalRise(this.torqueAt(part, v2), fixedLosses) +
        w3 * finalRise(this.torqueAt(part, v3), fixedLosses)) /
      (w1 + w2 + w3);
    this.rise = final + (this.rise - final) * Math.exp(-time / timeConstant);
  }

  /** The part of a step after which the threshold is met, by halving. */
  private changeWithin(part: Part, x: number, step: number, before: number): number {
    const threshold = this.hot ? COOLED : 1;
    const isRising = !this.hot;
    let low = 0;
    let high = step;
    for (let i = 0; i < 60 && high - low > 1e-15 * (x + step); i++) {
      const middle = 0.5 * (low + high);
      this.rise = before;
      this.warmStep(part, x, middle);
      if (isRising ? this.rise >= threshold : this.rise <= threshold) high = middle;
      else low = middle;
    }
    this.rise = threshold;
    return high;
  }

  /** Rides on at the top speed: rider and motor ease off to what is needed, and where the slope gives more the brakes take it. Returns how far, m. */
  private hold(part: Part, left: number): number {
    const { climb, speed } = this;
    const { battery, endurance } = this.reserves;
    const { riderPower } = this.law();
    const force = resistingForce(this.resistance, speed);
    const motor = part.power + part.perSpeed * speed;
    const needed = Math.max(0, (force * speed) / climb.efficiency);
    const share = needed > 0 ? needed / (riderPower + motor) : 0;
    const drawn = battery ? (motor > 0 ? (share * motor) / battery.unitEfficiency : 0) + battery.idle : 0;
    const torque = share * this.torqueAt(part, speed);
    let time = left / speed;
    let end: End = 'piece';
    const sooner = (lasts: number, why: End): void => {
      if (lasts < time) {
        time = lasts;
        end = why;
      }
    };
    if (battery && this.charged && share * motor > 0) sooner((battery.energy - this.energy) / drawn, 'battery');
    const above = endurance && !this.spent ? share * riderPower - endurance.criticalPower : 0;
    if (above > 0) sooner(this.left / above, 'endurance');
    if (endurance && this.spent) sooner(recoveredIn(endurance, share * riderPower, this.left), 'endurance');
    sooner(this.heatChangesIn(torque), 'heat');
    const distance = end === 'piece' ? left : speed * time;
    this.draw(drawn * time);
    this.tire(share * riderPower, time);
    this.warmEvenly(torque, time);
    this.riderWork += share * riderPower * time;
    this.rolling += (this.rollingForce + this.resistance.linear * speed) * distance;
    const u = speed + this.resistance.headWind;
    this.air += this.resistance.quadratic * u * Math.abs(u) * distance;
    this.brakes += Math.max(0, -force) * distance;
    this.note('brakes', distance, time, share * motor * time);
    if (end !== 'piece') this.change(end);
    return distance;
  }

  /** Goes on by a stretch, and says what binds on it. */
  private note(limit: SpanLimit | undefined, distance: number, time: number, motorWork: number): void {
    const fromDistance = this.distance;
    const fromTime = this.time;
    this.distance = fromDistance + distance;
    this.time = fromTime + time;
    this.motorWork += motorWork;
    if (limit) this.extend(limit, fromDistance, fromTime);
    if (this.spent) this.extend('endurance', fromDistance, fromTime);
  }

  /** A span that binds up to here goes on; a new one begins where it did not before. */
  private extend(limit: SpanLimit, fromDistance: number, fromTime: number): void {
    if (this.time === fromTime) return;
    for (let i = this.spans.length - 1; i >= 0 && i >= this.spans.length - 2; i--) {
      const { limit: other, to } = this.spans[i] as Span;
      if (other === limit && to.time === fromTime) {
        to.distance = this.distance;
        to.time = this.time;
        return;
      }
    }
    this.spans.push({
      limit,
      from: { distance: fromDistance, time: fromTime },
      to: { distance: this.distance, time: this.time },
    });
  }
}

/** Time, s, in which a rider who gives `power` (W) gets from `left` (J of W′) to `RECOVERED`; Infinity at the critical power. */
function recoveredIn({ criticalPower, workAbove }: Endurance, power: number, left: number): number {
  if (!(power < criticalPower && workAbove > 0)) return Number.POSITIVE_INFINITY;
  return (workAbove / (criticalPower - power)) * Math.log((workAbove - left) / ((1 - RECOVERED) * workAbove));
}

/** The kinds of stages, by number. */
const LIMITS: readonly Stage['limit'][] = ['none', 'heat', 'battery'];

/** The stages of a ride from the numbers in which they were kept. */
function stagesOf(seams: readonly number[]): Stage[] {
  return Array.from({ length: seams.length / 8 }, (_, i): Stage => {
    const [limit, from, start, distance, time, work, entered, left] = seams.slice(8 * i, 8 * i + 8) as Seam;
    return {
      limit: LIMITS[limit] ?? 'none',
      from: { distance: from, time: start },
      distance,
      time,
      speed: distance / time,
      motorPower: work / time,
      ends: [entered, left],
    };
  });
}

type Seam = [number, number, number, number, number, number, number, number];

/** A bike that does not get to the top. */
function stranded(points: ProfileRide['points']): ProfileRide {
  return {
    speed: 0,
    verticalSpeed: 0,
    time: Number.POSITIVE_INFINITY,
    motorPower: 0,
    crankPower: 0,
    powers: { gravity: 0, rolling: 0, air: 0, drive: 0 },
    energy: 0,
    stages: [],
    points,
    spans: [],
    brakes: 0,
    kinetic: { start: 0, end: 0 },
  };
}

/**
 * A climb along the profile of its hill, or straight to its top where none is known, with the kinetic energy that it takes to ride on at another speed
 * (Martin et al. 1998, all terms). It sets out at the steady speed of the first piece: bikes roll through the start line at climbing speed.
 *
 * On each piece the slope is constant, and power and resistance hold one law up to the next of a few known speeds: the fade and the limit of
 * assistance, the lowest gear, the wind. In between, time and distance are integrals over speed (`Settling`), so that a long piece costs no more than a
 * short one, and a constant grade is exact. Where the battery, the heat of the motor or the rider's W′ come to their end is found inside a piece.
 *
 * - Heat: when the rise reaches 1 the motor's torque is held to what lasts; it is let up when the rise has come down to `COOLED`.
 * - Battery: empty, the motor gives nothing. What is always on draws as well.
 * - The rider pedals at one power, goes on at the critical power once W′ is used up, and eases off only where the bike would pass its top speed.
 *   Easing off, W′ comes back; from `RECOVERED` on the rider rides at the full power again.
 *
 * A bike that cannot be kept moving somewhere on the way never gets up: time Infinity, speed and powers 0, as in `rideClimb`.
 *
 * For equal power all the way, equal speed at both ends and still air, the mean grade is a lower bound on the time: the work against gravity is the same, and
 * that against the air is least at an even speed. Only tyres are off by a trace, since a slope carries less weight: where grades differ by δ from a mean grade s
 * (root mean square), the bound is lower by a share of `C_rr δ²/2 ÷ (s + C_rr)`, 0.014 % for 3 points about 6 % at C_rr 0.028.
 * @param tolerance share of an integral that may be wrong by a careful estimate; for a look at its effect
 */
export function rideProfile(climb: Climb, reserves: Reserves, tolerance = 1e-7): ProfileRide {
  const { hill } = climb;
  const { distance, height } = profileOf(hill);
  const { length } = distance;
  const points = {
    distance,
    time: new Float64Array(length).fill(Number.POSITIVE_INFINITY),
    speed: new Float64Array(length),
    motorPower: new Float64Array(length),
  };
  const sinAfter = (i: number): number =>
    ((height[i + 1] as number) - (height[i] as number)) / ((distance[i + 1] as number) - (distance[i] as number));
  const ride = new Ride(climb, reserves, tolerance);
  if (!ride.begin(sinAfter(0))) return stranded(points);
  const start = ride.speed;
  for (let i = 0; i < length; i++) {
    points.time[i] = ride.time;
    points.speed[i] = ride.speed;
    if (i + 1 === length) points.motorPower[i] = ride.motorNow();
    else {
      const isUp = ride.piece(sinAfter(i), (distance[i + 1] as number) - (distance[i] as number));
      if (!isUp) return stranded(points);
      points.motorPower[i] = ride.motorPower;
      ride.distance = distance[i + 1] as number;
      ride.endStage();
    }
  }
  const { time, motorWork, riderWork, rolling, air, brakes, energy, seams, spans } = ride;
  let stages: Stage[] | undefined;
  const kinetic = (v: number): number => 0.5 * ride.mass * v * v;
  const crankPower = (motorWork + riderWork) / time;
  return {
    time,
    speed: hill.distance / time,
    verticalSpeed: hill.gain / time,
    motorPower: motorWork / time,
    crankPower,
    powers: {
      gravity: (climb.mass * GRAVITY * hill.gain) / time,
      rolling: rolling / time,
      air: air / time,
      drive: (1 - climb.efficiency) * crankPower,
    },
    energy,
    get stages(): Stage[] {
      stages ??= stagesOf(seams);
      return stages;
    },
    points,
    spans,
    brakes,
    kinetic: { start: kinetic(start), end: kinetic(ride.speed) },
  };
}

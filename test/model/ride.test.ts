import * as mathjs from 'mathjs';
import { describe, expect, test } from 'vitest';
import {
  type Climb,
  costOfLimit,
  crankPowerForTime,
  distanceAfter,
  FADE_WIDTH,
  hillFromGrade,
  inferMotor,
  type Limit,
  limitsOf,
  motorToKeep,
  type ProfileRide,
  powerAtLimit,
  type Reserves,
  rideClimb,
  rideProfile,
  riderToKeep,
  rideStages,
} from '../../calculators/model/index.ts';
import { type Random, random, relative } from '../random.ts';
import {
  ALLOWED_ALONG,
  anyHeldRide,
  anyLongRide,
  differenceAlong,
  integrated,
  perMetre,
} from '../reference/along-a-profile.ts';
import { anyLongClimb } from '../reference/long-climbs.ts';
import { anyClimb, anyHill, anyRide, hillOfPieces, PLAIN } from './climbs.ts';

/** mathjs has it, its types do not. */
const { solveODE } = mathjs as unknown as {
  solveODE: (
    derivative: (x: number, y: number[]) => number[],
    range: [number, number],
    start: number[],
    options: { method: 'RK45'; tol: number; firstStep: number },
  ) => { y: number[][] };
};

/** Next to nothing has to be sped up, so that a ride is a row of steady climbs. */
const weightless = (climb: Climb): Climb => ({ ...climb, wheelMass: -climb.mass * (1 - 1e-11) });

/** The same hill as a profile of so many equal pieces. */
const inPieces = (climb: Climb, count: number): Climb => ({
  ...climb,
  hill: hillOfPieces(
    Array.from({ length: count }, () => [climb.hill.distance / count, climb.hill.grade] as [number, number]),
  ),
});

/** What is missing from the balance of energy, as a share of the largest amount in it. */
function imbalance(ride: ProfileRide): number {
  const { time, powers, crankPower, brakes, kinetic } = ride;
  const amounts = [
    ...Object.values(powers).map((power) => power * time),
    brakes,
    kinetic.end,
    -kinetic.start,
    -crankPower * time,
  ];
  return Math.abs(amounts.reduce((a, b) => a + b)) / Math.max(...amounts.map(Math.abs));
}

describe('on one grade a ride along a profile is the steady climb', () => {
  test('to the last digits, in one piece or in seven', () => {
    const r = random(300);
    for (let i = 0; i < 1000; i++) {
      const climb = { ...anyClimb(r), riderPower: r.between(5, 600) };
      const steady = rideClimb(climb);
      for (const ride of [rideProfile(climb, {}), rideProfile(inPieces(climb, 7), {})]) {
        expect(relative(ride.time, steady.time)).toBeLessThan(1e-12);
        expect(relative(ride.crankPower, steady.crankPower)).toBeLessThan(1e-11);
        expect(relative(ride.powers.air, steady.powers.air, 1e-6 * steady.crankPower)).toBeLessThan(1e-8);
        expect(relative(ride.powers.rolling, steady.powers.rolling)).toBeLessThan(1e-11);
      }
    }
  });

  test('and the stages of a long climb, with heat and battery, where nothing has to be sped up', () => {
    const r = random(301);
    let hot = 0;
    let empty = 0;
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const stages = rideStages(climb, reserves);
      const ride = rideProfile(weightless(climb), reserves);
      // 1e-11 of the mass is still sped up
      expect(relative(ride.time, stages.time)).toBeLessThan(1e-9);
      expect(relative(ride.energy, stages.energy, 1e-6)).toBeLessThan(1e-9);
      expect(relative(ride.motorPower, stages.motorPower, 1e-6)).toBeLessThan(1e-9);
      expect(ride.stages.map(({ limit }) => limit)).toEqual(stages.stages.map(({ limit }) => limit));
      ride.stages.forEach(({ from }, k) => {
        expect(relative(from.time, stages.stages[k]?.from.time ?? Number.NaN, 1e-6 * ride.time)).toBeLessThan(1e-8);
      });
      if (stages.stages.some(({ limit }) => limit === 'heat')) hot++;
      if (stages.stages.at(-1)?.limit === 'battery') empty++;
    }
    expect(hot).toBeGreaterThan(100);
    expect(empty).toBeGreaterThan(100);
  });

  test('what is sped up and slowed down costs a long climb little', () => {
    const r = random(302);
    for (let i = 0; i < 300; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const steady = rideStages(climb, reserves);
      const ride = rideProfile(climb, reserves);
      // when a motor stops, the bike rolls on: it never loses by that
      expect(ride.time).toBeLessThanOrEqual(steady.time * (1 + 1e-9));
    }
  });
});

describe('against general integrators', () => {
  test('odex: time, end speed, work and energy on profiles with everything that can bind, also at a top speed', () => {
    const r = random(310);
    const seen = new Map<string, number>();
    const count = (what: string): void => void seen.set(what, (seen.get(what) ?? 0) + 1);
    for (let i = 0; i < 300; i++) {
      const { climb, reserves } = i < 60 ? anyLongRide(r) : anyHeldRide(r);
      expect(differenceAlong(climb, reserves)).toBeLessThan(ALLOWED_ALONG);
      const { spans } = rideProfile(climb, reserves);
      for (const { limit, from } of spans) {
        count(limit);
        const isHeld = spans.some(
          (one) => one.limit === 'brakes' && one.from.time < from.time && from.time <= one.to.time,
        );
        if (isHeld) count(`${limit} at the top speed`);
      }
    }
    for (const limit of ['assist-limit', 'torque', 'support', 'heat', 'battery', 'endurance', 'brakes'])
      expect(seen.get(limit)).toBeGreaterThan(5);
    for (const limit of ['heat', 'battery']) expect(seen.get(`${limit} at the top speed`)).toBeGreaterThan(5);
  });

  test('odex: the time without heat as far as it goes', () => {
    const r = random(311);
    for (let i = 0; i < 60; i++) {
      const { climb, reserves } = i % 2 ? anyHeldRide(r) : anyLongRide(r);
      const { heat: _, ...rest } = reserves;
      expect(relative(rideProfile(climb, rest).time, integrated(climb, rest).time)).toBeLessThan(1e-9);
    }
  });

  test('mathjs, piece by piece', () => {
    const r = random(312);
    for (let i = 0; i < 6; i++) {
      const { climb } = anyLongRide(r);
      // a motor with nothing that bends its law
      const plain = { ...climb, assistLimit: null, gear: undefined };
      const { profile } = plain.hill;
      const ride = rideProfile(plain, {});
      let y: number[] = [0, ride.points.speed[0] as number];
      const state = { empty: false, hot: false, spent: false, held: false };
      for (let k = 0; profile && k + 1 < profile.distance.length; k++) {
        const length = (profile.distance[k + 1] as number) - (profile.distance[k] as number);
        const sin = ((profile.height[k + 1] as number) - (profile.height[k] as number)) / length;
        const derivative = perMetre(plain, {}, state, Math.tan(Math.asin(sin)));
        const f = (x: number, [time = 0, v = 0]: number[]): number[] =>
          derivative(x, [time, v, 0, 0, 0, 0, 0, 0, 0, 0]).slice(0, 2);
        const solution = solveODE(f, [0, length], y, { method: 'RK45', tol: 1e-10, firstStep: 0.01 });
        y = solution.y.at(-1) as number[];
      }
      expect(relative(ride.time, y[0] as number)).toBeLessThan(1e-6);
      expect(relative(ride.points.speed.at(-1) ?? 0, y[1] as number)).toBeLessThan(1e-6);
    }
  });

  test('finer integrals change the time by less than 1e-10', () => {
    const r = random(313);
    for (let i = 0; i < 300; i++) {
      const { climb, reserves } = anyRide(r);
      const [coarse, fine] = [1e-7, 1e-12].map((tolerance) => rideProfile(climb, reserves, tolerance).time);
      expect(relative(coarse as number, fine as number)).toBeLessThan(1e-10);
    }
  });

  test('pieces cut into halves change nothing', () => {
    const r = random(314);
    for (let i = 0; i < 300; i++) {
      const { climb, reserves } = anyLongRide(r);
      const { profile } = climb.hill;
      if (!profile) throw new Error('A profile is needed.');
      const halved = hillOfPieces(
        Array.from({ length: profile.distance.length - 1 }, (_, k) => {
          const length = (profile.distance[k + 1] as number) - (profile.distance[k] as number);
          const sin = ((profile.height[k + 1] as number) - (profile.height[k] as number)) / length;
          const half = [length / 2, sin / Math.sqrt(1 - sin * sin)] as const;
          return [half, half];
        }).flat(),
      );
      const [whole, halves] = [climb.hill, halved].map((hill) => rideProfile({ ...climb, hill }, reserves).time);
      // where heat changes depends on the steps in which it is followed
      expect(relative(whole as number, halves as number)).toBeLessThan(reserves.heat ? 1e-6 : 1e-10);
    }
  });
});

describe('energy', () => {
  test('work at the crank is what gravity, tyres, air, drive and brakes take, and the change of kinetic energy', () => {
    const r = random(320);
    let braked = 0;
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyRide(r);
      const ride = rideProfile({ ...climb, topSpeed: r.pick([undefined, r.between(3, 12)]) }, reserves);
      if (ride.time === Number.POSITIVE_INFINITY) continue;
      // air and tyres are integrals of their own
      expect(imbalance(ride)).toBeLessThan(1e-9);
      expect(relative(ride.powers.gravity * ride.time, climb.mass * 9.80665 * climb.hill.gain)).toBeLessThan(1e-12);
      if (ride.brakes > 0) braked++;
    }
    expect(braked).toBeGreaterThan(100);
  });
});

describe('by hand', () => {
  test('brakes: down 8 % at 8 m/s, coasting', () => {
    const climb: Climb = { ...PLAIN, hill: hillOfPieces([[1000, -0.08]]), topSpeed: 8, assistLimit: null };
    const ride = rideProfile(climb, {});
    expect(ride.time).toBe(125);
    // 102 × 9.80665 × (0.08 − 0.028)/√1.0064 − 0.091 − 0.0087 × 8 − 0.5 × 1.16 × 0.45 × 64 N = 34.98 N over 1000 m
    expect(ride.brakes).toBeCloseTo(34_984.2, 0);
    expect(ride).toMatchObject({ crankPower: 0, motorPower: 0 });
    expect(ride.spans).toEqual([
      { limit: 'brakes', from: { distance: 0, time: 0 }, to: { distance: 1000, time: 125 } },
    ]);
  });

  test('brakes: on the level rider and motor ease off to what the top speed takes', () => {
    const climb: Climb = { ...PLAIN, hill: hillOfPieces([[600, 0]]), topSpeed: 6, assistLimit: null };
    const ride = rideProfile(climb, {});
    // (102 × 9.80665 × 0.028 + 0.091 + 0.0087 × 6 + 0.5 × 1.16 × 0.45 × 36) N × 6 m/s / 0.96 = 234.67 W, the motor's 380 of 550 W
    expect(ride.crankPower).toBeCloseTo(234.67, 1);
    expect(ride.motorPower).toBeCloseTo((234.67 * 380) / 550, 1);
    expect(ride.brakes).toBe(0);
    expect(imbalance(ride)).toBeLessThan(1e-12);
  });

  test('a rider 50 W above CP with 9 kJ goes on at CP after 180 s', () => {
    const reserves: Reserves = { endurance: { criticalPower: 120, workAbove: 9000 } };
    const ride = rideStages(PLAIN, reserves) as ProfileRide;
    expect(ride.spans).toHaveLength(1);
    expect(ride.spans[0]).toMatchObject({ limit: 'endurance', to: { distance: 2400 } });
    expect(ride.spans[0]?.from.time).toBeCloseTo(180, 9);
    expect(ride.points.speed[1]).toBeCloseTo(rideClimb({ ...PLAIN, riderPower: 120 }).speed, 9);
    expect(limitsOf(PLAIN, reserves)).toMatchObject([{ limit: 'endurance' }]);
  });

  test('W′ comes back on a descent: half of it after ln 2 × W′/CP seconds', () => {
    // climbing uses it up; braking down the rider does nothing, so it comes back by exp(−CP t/W′)
    const down = 6 * ((Math.LN2 * 9000) / 120);
    const hill = hillOfPieces([
      [1500, 0.08],
      [down + 30, -0.1],
      [1500, 0.08],
    ]);
    const climb: Climb = { ...PLAIN, motorPower: 0, hill, topSpeed: 6 };
    const ride = rideProfile(climb, { endurance: { criticalPower: 120, workAbove: 9000 } });
    const tired = ride.spans.filter(({ limit }) => limit === 'endurance');
    expect(tired).toHaveLength(2);
    expect(tired[0]?.from.time).toBeCloseTo(180, 9);
    // the second time some half of W′ is there, 90 s at 50 W above CP, from soon after the bottom of the descent
    const bottom = ride.points.time[2] as number;
    expect((tired[1]?.from.time ?? 0) - bottom).toBeGreaterThan(80);
    expect((tired[1]?.from.time ?? 0) - bottom).toBeLessThan(100);
  });

  test('a motor that has been too hot is let up again when it has cooled to 95 %, on the level beyond its limit', () => {
    const heat = { continuous: 190, continuousCadence: 70, timeConstant: 600, fixedLosses: 0, rise: 0 };
    const hill = hillOfPieces([
      [2000, 0.1],
      [1000, -0.03],
      [2000, 0.1],
    ]);
    const climb: Climb = { ...PLAIN, hill, cadence: 70, assistLimit: 25 / 3.6 };
    const ride = rideProfile(climb, { heat });
    const hot = ride.spans.filter(({ limit }) => limit === 'heat');
    expect(hot).toHaveLength(2);
    // twice the lasting torque: 600 s × ln(4/3)
    expect(hot[0]?.from.time).toBeCloseTo(600 * Math.log(4 / 3), 0);
    const back = ride.stages.find(({ limit, from }) => limit === 'none' && from.distance > 2000);
    const beyond = ride.spans.find(({ limit, from }) => limit === 'assist-limit' && from.distance >= 2000);
    // from 1 to 0.95 without any load: 600 s × ln(1/0.95) = 30.8 s, a little more for the way through the fade
    expect((back?.from.time ?? 0) - (beyond?.from.time ?? 0)).toBeGreaterThan(30.7);
    expect((back?.from.time ?? 0) - (beyond?.from.time ?? 0)).toBeLessThan(34);
  });

  /** On the level at 6 m/s: 234.67 W at the crank, as above. */
  const EASED = (234.67 * 380) / 550;

  test('at the top speed the battery gives what is eased off to, with what is always on, and runs out', () => {
    const climb: Climb = { ...PLAIN, hill: hillOfPieces([[600, 0]]), topSpeed: 6 };
    // 162.14 W / 0.8 + 5 W, for a minute
    const battery = { energy: 60 * (EASED / 0.8 + 5), unitEfficiency: 0.8, idle: 5 };
    const { spans, energy } = rideProfile(climb, { battery });
    expect(spans.map(({ limit }) => limit)).toEqual(['brakes', 'battery']);
    expect(spans[1]?.from.time).toBeCloseTo(60, 1);
    expect(spans[1]?.from.distance).toBeCloseTo(360, 0);
    expect(energy).toBe(battery.energy);
    // one that is a little larger than the 100 s take lasts
    const lasting = rideProfile(climb, { battery: { ...battery, energy: 100.1 * (EASED / 0.8 + 5) } });
    expect(lasting.spans.map(({ limit }) => limit)).toEqual(['brakes']);
    expect(lasting.energy).toBeCloseTo(100 * (EASED / 0.8 + 5), -1);
  });

  test('at the top speed the motor warms by what it is eased off to, and cools by what is left of that', () => {
    const heat = { continuous: 120, continuousCadence: 70, timeConstant: 60, fixedLosses: 0, rise: 0 };
    const climb: Climb = { ...PLAIN, hill: hillOfPieces([[900, 0]]), cadence: 70, topSpeed: 6 };
    const { stages, spans } = rideProfile(climb, { heat });
    expect(spans.map(({ limit }) => limit)).toEqual(['brakes']);
    const [warming, cooling, again] = stages;
    // 162.14 W at 70 rpm are 1.3512 of the lasting torque, a final rise of 1.8256: 60 s × ln(1.8256/0.8256) = 47.61 s
    expect(warming?.time).toBeCloseTo(47.61, 1);
    // rider and a motor of 120 W give 290 W, still more than is needed: 234.67 W × 120/290 = 97.1 W are a final rise of 0.6548,
    // and 60 s × ln((1 − 0.6548)/(0.95 − 0.6548)) = 9.39 s
    expect(cooling?.limit).toBe('heat');
    expect(cooling?.motorPower).toBeCloseTo(97.1, 1);
    expect(cooling?.time).toBeCloseTo(9.39, 1);
    expect(again?.limit).toBe('none');
  });

  test('a hot motor cools while the bike is braked', () => {
    const heat = { continuous: 190, continuousCadence: 70, timeConstant: 600, fixedLosses: 0, rise: 1 };
    const hill = hillOfPieces([
      [1000, -0.08],
      [1000, 0.08],
    ]);
    const { stages } = rideProfile({ ...PLAIN, hill, cadence: 70, topSpeed: 8 }, { heat });
    // from 1 to 0.95 without any load: 600 s × ln(1/0.95) = 30.7760 s
    expect(stages[0]?.limit).toBe('heat');
    expect(stages[0]?.time).toBeCloseTo(30.776, 3);
    expect(stages[1]?.limit).toBe('none');
  });

  test('at the top speed W′ is used by what the rider is eased off to, and runs out', () => {
    const climb: Climb = { ...PLAIN, hill: hillOfPieces([[600, 0]]), topSpeed: 6 };
    // 234.67 W × 170/550 = 72.53 W: 22.53 W above 50 W
    const endurance = { criticalPower: 50, workAbove: 40 * (234.67 * (170 / 550) - 50) };
    const { spans } = rideProfile(climb, { endurance });
    const tired = spans.find(({ limit }) => limit === 'endurance');
    expect(tired?.from.time).toBeCloseTo(40, 1);
  });

  test('a rider with nothing left is let go again when 5 % of W′ are back', () => {
    // braking down the rider does nothing: 5 % are back after −ln(0.95) × 9000 J/120 W = 3.847 s
    const endurance = { criticalPower: 120, workAbove: 9000 };
    const ridden = (down: number): ProfileRide => {
      const hill = hillOfPieces([
        [1500, 0.08],
        [down, -0.1],
        [1500, 0.08],
      ]);
      return rideProfile({ ...PLAIN, motorPower: 0, hill, topSpeed: 6 }, { endurance });
    };
    const braked = ridden(100).spans.find(({ limit }) => limit === 'brakes');
    const tiredAfter = (seconds: number): number[] => {
      const ride = ridden((braked?.from.distance ?? Number.NaN) - 1500 + 6 * seconds);
      const bottom = ride.points.time[2] as number;
      return ride.spans
        .filter(({ limit, to }) => limit === 'endurance' && to.time > bottom)
        .map(({ from }) => from.time - bottom);
    };
    // all the way over the bottom
    expect(tiredAfter(3.8)).toHaveLength(1);
    expect(tiredAfter(3.8)[0]).toBeLessThan(0);
    // 9000 J × (1 − exp(−120 × 3.9/9000)) = 456.0 J are there, for 50 W above CP
    expect(tiredAfter(3.9)).toHaveLength(1);
    expect(tiredAfter(3.9)[0]).toBeCloseTo(9.12, 2);
  });

  test('mean grade and bias: steep parts cost more than flat ones give back, and speeding up is not free', () => {
    const even = rideProfile({ ...PLAIN, motorPower: 0, hill: hillOfPieces([[4000, 0.06]]) }, {}).time;
    const sine = Math.sin(Math.atan(0.06));
    const steep = (4000 * sine) / Math.sin(Math.atan(0.12));
    const pieces: [number, number][] = [
      [4000 - steep, 0],
      [steep, 0.12],
    ];
    const uneven = rideProfile({ ...PLAIN, motorPower: 0, hill: hillOfPieces(pieces) }, {});
    expect(uneven.time).toBeGreaterThan(even);
    // what it had at the bottom of the ramp is spent at its top
    expect(uneven.kinetic.start).toBeGreaterThan(uneven.kinetic.end);
  });
});

describe('mean grade', () => {
  test('is a lower bound on the time for equal power and equal speed at both ends in still air', () => {
    const r = random(330);
    let closest = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 1000; i++) {
      const mean = r.between(0.01, 0.15);
      const pieces = Array.from({ length: r.whole(2, 20) }, (): [number, number] => [
        r.between(10, 500),
        mean + r.between(-1, 1) * r.pick([0.002, 0.03, 0.2]),
      ]);
      // the first and the last piece are alike and long, so that the ride starts and ends at one speed
      const end: [number, number] = [r.between(500, 1000), mean];
      const hill = hillOfPieces([end, ...pieces, end]);
      const { assistLimit: _, ...rest } = anyClimb(r);
      const climb = { ...rest, assistLimit: null, headWind: 0, riderPower: r.between(100, 400), motorPower: 0, hill };
      const ride = rideProfile(climb, {});
      if (!(hill.gain > 0) || Math.abs(ride.kinetic.end / ride.kinetic.start - 1) > 1e-6) continue;
      const steady = rideClimb(climb);
      closest = Math.min(closest, ride.time / steady.time - 1);
      // cos θ is less on the steep parts than on the mean grade: so much less rolls, and no more than that is won
      const { distance, height } = hill.profile ?? { distance: [0], height: [0] };
      let level = 0;
      for (let k = 1; k < distance.length; k++)
        level += Math.sqrt(
          ((distance[k] as number) - (distance[k - 1] as number)) ** 2 -
            ((height[k] as number) - (height[k - 1] as number)) ** 2,
        );
      const saved =
        ((hill.distance * hill.cos - level) * climb.mass * 9.80665 * climb.rolling) /
        (climb.efficiency * steady.crankPower);
      expect(ride.time).toBeGreaterThanOrEqual(steady.time - saved - 1e-6 * steady.time);
    }
    expect(closest).toBeGreaterThan(-2e-3);
  });
});

describe('anything at all', () => {
  const anything = (r: Random): { climb: Climb; reserves: Reserves } => ({
    climb: {
      ...anyClimb(r),
      hill: anyHill(
        r,
        r.pick([1, 2, 3, 10, 40]),
        r.pick([
          [-0.6, 0.6],
          [-0.05, 0.05],
          [0, 0],
          [-0.6, -0.1],
          [0.3, 0.6],
        ]) as [number, number],
        r.pick([
          [1e-6, 1e-3],
          [1e-3, 1e4],
          [10, 100],
          [0.1, 5],
        ]) as [number, number],
      ),
      headWind: r.pick([0, -3, r.between(-20, 20), r.between(-5, 5)]),
      riderPower: r.pick([0, 1e-3, 1, r.between(0, 600)]),
      support: r.pick([undefined, 0, 2]),
      torque: r.pick([undefined, 0, 5, 60]),
      cadence: r.pick([undefined, 20, 80]),
      gear: r.pick([undefined, { wheelRadius: 0.35, turns: r.between(0.5, 2) }]),
      topSpeed: r.pick([undefined, undefined, r.between(1, 20)]),
      fadeWidth: r.pick([FADE_WIDTH, 3, 20, 1e-3]),
      assistLimit: r.pick([null, 25 / 3.6, 1, 28]),
      rolling: r.pick([0, 0.03]),
      dragArea: r.pick([0.5, 0.5, 0.1, 0]),
      efficiency: r.pick([0.5, 1]),
    },
    reserves: {
      battery: r.pick([undefined, { energy: r.pick([0, 36e3, 1e6]), unitEfficiency: 0.8, idle: r.pick([0, 5]) }]),
      heat: r.pick([
        undefined,
        {
          continuous: r.pick([0, 1, 100, 250]),
          continuousCadence: 70,
          timeConstant: r.pick([1, 60, 600]),
          fixedLosses: r.pick([0, 0.5]),
          rise: r.pick([0, 0.5, 1]),
        },
      ]),
      endurance: r.pick([undefined, { criticalPower: r.pick([0, 100, 200]), workAbove: r.pick([0, 1e3, 2e4]) }]),
    },
  });

  test('10,000 hostile rides: none hangs, no number is without end, or nothing moves and all says so', () => {
    const r = random(340);
    let stranded = 0;
    for (let i = 0; i < 10_000; i++) {
      const { climb, reserves } = anything(r);
      const ride = rideProfile(climb, reserves);
      if (ride.time === Number.POSITIVE_INFINITY) {
        stranded++;
        expect(ride).toMatchObject({ speed: 0, motorPower: 0, crankPower: 0, energy: 0, stages: [], spans: [] });
        // only a bike without power comes to rest
        expect(climb.riderPower === 0 || reserves.endurance?.criticalPower === 0).toBe(true);
        continue;
      }
      const { points, stages, spans, powers, kinetic, ...numbers } = ride;
      for (const value of [...Object.values(numbers), ...Object.values(powers), kinetic.start, kinetic.end])
        expect(Number.isFinite(value)).toBe(true);
      for (const column of Object.values(points)) expect(column.every(Number.isFinite)).toBe(true);
      expect(points.speed.every((v) => v <= (climb.topSpeed ?? 1000))).toBe(true);
      expect(imbalance(ride)).toBeLessThan(1e-8);
      for (const { from, to } of spans) expect(to.time).toBeGreaterThan(from.time);
      expect(
        relative(
          stages.reduce((sum, { time }) => sum + time, 0),
          ride.time,
        ),
      ).toBeLessThan(1e-9);
    }
    expect(stranded).toBeGreaterThan(1000);
  });

  test('a hundred thousand pieces', () => {
    const r = random(341);
    const climb = { ...PLAIN, hill: anyHill(r, 100_000, [-0.05, 0.2], [1, 20]), assistLimit: 25 / 3.6 };
    const ride = rideProfile(climb, {});
    expect(imbalance(ride)).toBeLessThan(1e-9);
    expect(ride.points.time.at(-1)).toBe(ride.time);
  });

  test('a rider who does not pedal rolls down, and stops on the next rise', () => {
    const still: Climb = { ...PLAIN, riderPower: 0 };
    const down = rideProfile({ ...still, hill: hillOfPieces([[500, -0.05]]) }, {});
    expect(relative(down.time, rideClimb({ ...still, hill: hillFromGrade(500, -0.05) }).time)).toBeLessThan(1e-12);
    const pieces: [number, number][] = [
      [500, -0.05],
      [500, 0.05],
    ];
    const stopped = rideProfile({ ...still, hill: hillOfPieces(pieces) }, {});
    expect(stopped.time).toBe(Number.POSITIVE_INFINITY);
    // it gets to the dip
    expect(relative(stopped.points.time[1] as number, down.time)).toBeLessThan(1e-12);
    // on a rise shorter than v²/2a it does not stop
    const short = rideProfile({ ...still, hill: hillOfPieces([pieces[0] ?? [1, 0], [5, 0.05]]) }, {});
    expect(Number.isFinite(short.time)).toBe(true);
  });
});

describe('what follows from a ride', () => {
  /** A ride that one thing does not hold back. */
  const unlimited = (climb: Climb, reserves: Reserves, limit: Limit['limit']): [Climb, Reserves] => {
    const none = undefined;
    if (limit === 'assist-limit') return [{ ...climb, assistLimit: null }, reserves];
    if (limit === 'torque') return [{ ...climb, torque: none }, reserves];
    if (limit === 'support') return [{ ...climb, support: none }, reserves];
    if (limit === 'brakes') return [{ ...climb, topSpeed: none }, reserves];
    const { battery, heat, endurance } = reserves;
    if (limit === 'heat') return [climb, { battery, endurance }];
    return [climb, limit === 'battery' ? { heat, endurance } : { battery, heat }];
  };

  test('limits: each with its first place and what it costs against a ride without it, the costliest first', () => {
    const r = random(350);
    const seen = new Map<string, number>();
    for (let i = 0; i < 200; i++) {
      const { climb, reserves } = i % 2 ? anyHeldRide(r) : anyLongRide(r);
      const ride = rideProfile(climb, reserves);
      const limits = limitsOf(climb, reserves);
      for (const limit of limits) {
        seen.set(limit.limit, (seen.get(limit.limit) ?? 0) + 1);
        expect(limit.from).toEqual(ride.spans.find((span) => span.limit === limit.limit)?.from);
        expect(costOfLimit(climb, reserves, ride, limit.limit)).toEqual(limit);
        const without = unlimited(climb, reserves, limit.limit);
        expect(limit.lost).toBe(Math.max(0, ride.time - rideProfile(...without).time));
      }
      const lost = limits.map((limit) => limit.lost);
      expect(lost).toEqual(lost.toSorted((a, b) => b - a));
    }
    for (const limit of ['assist-limit', 'torque', 'support', 'heat', 'battery', 'endurance', 'brakes'])
      expect(seen.get(limit)).toBeGreaterThan(5);
  });

  test('distanceAfter is where the bike is: at the points of the profile exactly, between them within two metres', () => {
    const r = random(351);
    for (let i = 0; i < 50; i++) {
      const pieces = Array.from({ length: 20 }, (): [number, number] => [r.between(30, 250), r.between(0, 0.15)]);
      const climb = { ...PLAIN, assistLimit: r.pick([null, 25 / 3.6]) };
      const ride = rideProfile({ ...climb, hill: hillOfPieces(pieces) }, {});
      const fine = hillOfPieces(
        pieces.flatMap(([length, grade]) => Array.from({ length: 25 }, (): [number, number] => [length / 25, grade])),
      );
      const { points } = rideProfile({ ...climb, hill: fine }, {});
      points.time.forEach((time, k) => {
        const off = Math.abs(distanceAfter(ride, time) - (points.distance[k] as number));
        expect(off).toBeLessThan(k % 25 === 0 ? 1e-6 : 2);
      });
    }
  });

  test('a motor read back from the time of a ride is the motor that rode it', () => {
    const r = random(352);
    let limited = 0;
    for (let i = 0; i < 100; i++) {
      const { climb: any } = anyLongRide(r);
      const { support: _, torque: __, gear: ___, cadence: ____, fadeWidth: _____, ...climb } = any;
      const ride = rideProfile(climb, {});
      if (!(ride.motorPower > 1)) continue;
      const motor = inferMotor(climb, ride.time);
      // where nearly all of it is ridden beyond the limit the time says little about the motor
      const beyond = ride.spans.reduce((sum, { from, to }) => sum + to.time - from.time, 0);
      if (beyond > 0.9 * ride.time) continue;
      expect(relative(motor.mean, ride.motorPower)).toBeLessThan(1e-6);
      if (motor.held !== undefined) {
        limited++;
        expect(relative(motor.held, climb.motorPower)).toBeLessThan(1e-6);
      }
      const even = crankPowerForTime(climb, ride.time);
      const again = rideProfile({ ...climb, riderPower: even, motorPower: 0 }, {});
      expect(relative(again.time, ride.time)).toBeLessThan(1e-9);
    }
    expect(limited).toBeGreaterThan(20);
  });

  test('rider and motor that keep a companion’s time, ridden again, take it', () => {
    const r = random(353);
    const seen = new Set<string>();
    for (let i = 0; i < 200; i++) {
      const { climb, reserves } = anyLongRide(r);
      const { endurance: _, ...rest } = reserves;
      const time = r.between(0.7, 1.3) * rideProfile(climb, rest).time;
      const rider = riderToKeep(climb, time, rest);
      if (rider > 0) expect(relative(rideProfile({ ...climb, riderPower: rider }, rest).time, time)).toBeLessThan(1e-8);
      const motor = motorToKeep(climb, time, rest);
      seen.add(typeof motor === 'number' ? 'power' : motor);
      if (typeof motor === 'number')
        expect(relative(rideProfile({ ...climb, motorPower: motor }, {}).time, time)).toBeLessThan(1e-8);
      else if (motor === 'none-needed')
        expect(rideProfile({ ...climb, motorPower: 0 }, {}).time).toBeLessThanOrEqual(time * (1 + 1e-9));
      else if (motor === 'bound' || motor === 'beyond-limit')
        expect(rideProfile({ ...climb, motorPower: 1e6 }, {}).time).toBeGreaterThan(time);
    }
    for (const kind of ['power', 'none-needed', 'bound', 'beyond-limit']) expect(seen).toContain(kind);
  });

  test('the limit is reached everywhere with the motor that its steepest piece asks for', () => {
    const pieces: [number, number][] = [
      [300, 0.03],
      [300, 0.11],
      [300, 0.06],
    ];
    const climb: Climb = { ...PLAIN, hill: hillOfPieces(pieces), assistLimit: 25 / 3.6 };
    const steep: Climb = { ...climb, hill: hillFromGrade(300, 0.11) };
    expect(powerAtLimit(climb)).toBeCloseTo(powerAtLimit(steep) ?? Number.NaN, 9);
  });
});

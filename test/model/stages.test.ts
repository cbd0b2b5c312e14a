import { describe, expect, test } from 'vitest';
import {
  type Climb,
  distanceAfter,
  drawnPower,
  FADE_WIDTH,
  type Heat,
  hillFromGrade,
  limitsOf,
  type Reserves,
  rideClimb,
  rideStages,
} from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { anyLongClimb } from '../reference/long-climbs.ts';
import { anyBoundAscent, anyClimb, anyReserves, PLAIN } from './climbs.ts';

const BOTTOM = { distance: 0, time: 0 };

/** Twice its lasting torque while the motor of PLAIN gives its 380 W at 70 rpm. */
const HEAT: Heat = { continuous: 190, continuousCadence: 70, timeConstant: 600, fixedLosses: 0, rise: 0 };
const WARM: Climb = { ...PLAIN, cadence: 70 };

const numbers = (value: unknown): number[] =>
  typeof value === 'number' ? [value] : value && typeof value === 'object' ? Object.values(value).flatMap(numbers) : [];

describe('with nothing that gives out rideStages is rideClimb to the last bit', () => {
  test('nothing is given', () => {
    const r = random(110);
    for (let i = 0; i < 2000; i++) {
      const climb = r.chance(0.5) ? anyClimb(r) : anyBoundAscent(r);
      const ride = rideClimb(climb);
      const { distance } = climb.hill;
      const { time, speed, motorPower } = ride;
      const whole = { limit: 'none', from: BOTTOM, distance, time, speed, motorPower };
      expect(rideStages(climb, {})).toEqual({ ...ride, energy: 0, stages: [whole] });
    }
  });

  test('a battery and a motor that last', () => {
    const r = random(111);
    for (let i = 0; i < 500; i++) {
      const climb = anyBoundAscent(r);
      const ride = rideClimb(climb);
      const battery = { energy: 1e12, unitEfficiency: 0.8, idle: 3 };
      const { stages, energy, ...staged } = rideStages(climb, { battery, heat: { ...HEAT, continuous: 1e6 } });
      expect(staged).toEqual(ride);
      expect(stages).toHaveLength(1);
      expect(relative(energy, (ride.motorPower / 0.8 + 3) * ride.time)).toBeLessThan(1e-14);
    }
  });

  test('nobody pedals: no stage, nothing drawn, no NaN', () => {
    const still = { ...PLAIN, riderPower: 0 };
    const reserves: Reserves = { battery: { energy: 1e6, unitEfficiency: 0.8, idle: 0 }, heat: HEAT };
    expect(rideStages(still, reserves)).toEqual({ ...rideClimb(still), energy: 0, stages: [] });
    expect(limitsOf(still, reserves)).toEqual([]);
  });
});

describe('by hand', () => {
  test('the battery empties halfway: half the way with motor, half without', () => {
    const [helped, alone] = [rideClimb(PLAIN), rideClimb({ ...PLAIN, motorPower: 0 })];
    // 380 W through 0.8 and 5 W for lights are 480 W, for 1200 m
    const energy = (480 * 1200) / helped.speed;
    const ride = rideStages(PLAIN, { battery: { energy, unitEfficiency: 0.8, idle: 5 } });
    const [first, second] = [1200 / helped.speed, 1200 / alone.speed];
    expect(ride.stages.map(({ limit }) => limit)).toEqual(['none', 'battery']);
    expect(ride.stages[1]?.from.distance).toBeCloseTo(1200, 9);
    expect(ride.time).toBeCloseTo(first + second, 9);
    expect(ride.energy).toBe(energy);
    expect(ride.motorPower).toBeCloseTo((380 * first) / (first + second), 9);
  });

  test('twice the lasting torque holds 600 s × ln(4/3) = 172.6 s, then half of it is left', () => {
    const ride = rideStages(WARM, { heat: HEAT });
    expect(ride.stages.map(({ limit }) => limit)).toEqual(['none', 'heat']);
    expect(ride.stages[1]?.from.time).toBeCloseTo(172.6092, 4);
    expect(ride.stages[1]?.motorPower).toBeCloseTo(190, 10);
    expect(ride.stages[1]?.speed).toBe(rideClimb({ ...PLAIN, motorPower: 190 }).speed);
  });

  test('a hot motor gives what it can hold from the bottom, an empty battery nothing', () => {
    const hot = rideStages(WARM, { heat: { ...HEAT, rise: 1 } });
    expect(hot.stages).toHaveLength(1);
    expect(hot.time).toBeCloseTo(rideClimb({ ...PLAIN, motorPower: 190 }).time, 9);
    const empty = rideStages(WARM, { heat: HEAT, battery: { energy: 0, unitEfficiency: 0.8, idle: 5 } });
    expect(empty.time).toBe(rideClimb({ ...PLAIN, motorPower: 0 }).time);
    expect(empty).toMatchObject({ energy: 0, motorPower: 0, stages: [{ limit: 'battery' }] });
  });

  test('the same power at a slower cadence is more torque: 60 instead of 80 rpm heats 1.78 times as much', () => {
    const held = (cadence: number): number =>
      rideStages({ ...PLAIN, cadence }, { heat: HEAT }).stages[0]?.time ?? Number.NaN;
    expect(held(60)).toBeLessThan(held(80));
    // 380 W at 60 rpm are 7/3 of the lasting torque, at 80 rpm 7/4: 600 s × ln(k²/(k² − 1))
    expect(held(60)).toBeCloseTo(600 * Math.log(49 / 40), 9);
    expect(held(80)).toBeCloseTo(600 * Math.log(49 / 33), 9);
  });

  test('in the lowest gear it is the cadence that the speed leaves which counts', () => {
    // 2 m/s is far too slow for 70 rpm in 1:1 at 0.35 m (2.57 m/s)
    const climb = { ...WARM, gear: { wheelRadius: 0.35, turns: 1 }, mass: 170 };
    const { speed, motorPower } = rideClimb(climb);
    const cadence = (60 * speed) / (2 * Math.PI * 0.35);
    expect(cadence).toBeLessThan(70);
    const k = (motorPower / cadence) * (70 / 190);
    const { stages } = rideStages(climb, { heat: HEAT });
    expect(stages[0]?.time).toBeCloseTo(600 * Math.log((k * k) / (k * k - 1)), 8);
    // then the lasting torque, 190 W at 70 rpm, at the cadence that is left
    const slow = stages[1];
    const left = (60 * (slow?.speed ?? 0)) / (2 * Math.PI * 0.35);
    expect(slow?.motorPower).toBeCloseTo((190 * left) / 70, 9);
  });
});

describe('corners', () => {
  const LIGHTS = { energy: 3600, unitEfficiency: 0.8, idle: 20 };

  test('without a motor an empty battery takes nothing away: one stage, and no more drawn than there is', () => {
    // 1 Wh lasts 180 s for 20 W; alone the climb takes some 13 minutes
    const climb = { ...PLAIN, motorPower: 0, riderPower: 250 };
    const ride = rideStages(climb, { battery: LIGHTS });
    expect(ride.stages).toMatchObject([{ limit: 'none' }]);
    expect(ride.time).toBe(rideClimb(climb).time);
    expect(ride.energy).toBe(3600);
    expect(limitsOf(climb, { battery: LIGHTS })).toEqual([]);
  });

  test('beyond the assist limit all the way down neither heat nor battery binds', () => {
    const down = { ...PLAIN, hill: hillFromGrade(3000, -0.06), assistLimit: 25 / 3.6 };
    const reserves: Reserves = { battery: { ...LIGHTS, energy: 0 }, heat: { ...HEAT, rise: 1 } };
    const ride = rideStages(down, reserves);
    expect(ride).toMatchObject({ motorPower: 0, energy: 0, stages: [{ limit: 'none' }] });
    expect(ride.time).toBe(rideClimb({ ...down, motorPower: 0 }).time);
  });

  test('a rider who coasts down gets there without motor, lights on', () => {
    const down = { ...PLAIN, hill: hillFromGrade(3000, -0.06), riderPower: 0 };
    const ride = rideStages(down, { battery: { ...LIGHTS, energy: 1e6 }, heat: HEAT });
    expect(ride.stages).toHaveLength(1);
    expect(relative(ride.energy, 20 * ride.time)).toBeLessThan(1e-14);
  });

  test('a motor that is hot at the bottom with an empty battery is a rider alone, not two stages of no length', () => {
    const reserves: Reserves = { battery: { ...LIGHTS, energy: 0 }, heat: { ...HEAT, rise: 1 } };
    expect(rideStages(WARM, reserves).stages).toMatchObject([{ limit: 'battery', from: BOTTOM, distance: 2400 }]);
  });

  test('heat inside the fade: the lasting output comes through in full, and the bike is slower than before', () => {
    // in the middle of the fade half of 2 × 380 W comes through: twice the lasting 190 W
    const { speed } = rideClimb(WARM);
    const climb = { ...WARM, motorPower: 760, assistLimit: speed + FADE_WIDTH / 2 };
    const { stages } = rideStages(climb, { heat: HEAT });
    expect(stages[0]?.motorPower).toBeCloseTo(380, 6);
    expect(stages[0]?.time).toBeCloseTo(172.6092, 3);
    expect(stages[1]?.motorPower).toBeCloseTo(190, 9);
    expect(stages[1]?.speed).toBeLessThan(speed);
  });

  test('a motor that can hold nothing stops at once, a road of no length is over at once', () => {
    const nothing = rideStages(WARM, { heat: { ...HEAT, continuous: 0 } });
    expect(nothing.time).toBe(rideClimb({ ...PLAIN, motorPower: 0 }).time);
    expect(rideStages({ ...WARM, motorPower: 0 }, { heat: { ...HEAT, continuous: 0 } }).time).toBe(nothing.time);
    const over = rideStages({ ...PLAIN, hill: { ...PLAIN.hill, distance: 0, gain: 0 } }, { heat: HEAT });
    expect(over).toMatchObject({ time: 0, energy: 0, stages: [] });
  });

  test('down and up, pedalling or not, in any wind: everything is a finite number, and no stage is without length', () => {
    const r = random(119);
    for (let i = 0; i < 3000; i++) {
      const any = r.chance(0.5) ? anyClimb(r) : anyBoundAscent(r);
      const climb = { ...any, support: r.pick([undefined, 0, 2]), riderPower: r.pick([0, 1, any.riderPower]) };
      const reserves = anyReserves(r, { ...climb, riderPower: 100 });
      const ride = rideStages(climb, reserves);
      const limits = limitsOf(climb, reserves);
      for (const value of numbers(limits)) expect(Number.isFinite(value)).toBe(true);
      if (!(rideClimb(climb).speed > 0)) {
        expect(ride.stages).toEqual([]);
        continue;
      }
      for (const value of numbers(ride)) expect(Number.isFinite(value)).toBe(true);
      expect(ride.energy).toBeGreaterThanOrEqual(0);
      expect(ride.energy).toBeLessThanOrEqual(reserves.battery?.energy ?? 0);
      // nor as short as what rounding leaves of a battery
      for (const stage of ride.stages) expect(stage.time).toBeGreaterThan(1e-9 * ride.time);
      expect(relative(ride.speed * ride.time, climb.hill.distance)).toBeLessThan(1e-12);
    }
  });
});

describe('on 1,000 long climbs with any motor, battery and heat', () => {
  test('everything is a finite number, stages follow each other and add up to the hill', () => {
    const r = random(112);
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const ride = rideStages(climb, reserves);
      for (const value of numbers(ride)) expect(Number.isFinite(value)).toBe(true);
      let [distance, time] = [0, 0];
      for (const stage of ride.stages) {
        expect(relative(stage.from.distance, distance)).toBeLessThan(1e-12);
        expect(relative(stage.from.time, time)).toBeLessThan(1e-12);
        expect(relative(stage.distance, stage.speed * stage.time, 1e-6 * climb.hill.distance)).toBeLessThan(1e-9);
        distance += stage.distance;
        time += stage.time;
      }
      expect(relative(distance, climb.hill.distance)).toBeLessThan(1e-12);
      expect(relative(time, ride.time)).toBeLessThan(1e-12);
      expect(relative(ride.speed * ride.time, climb.hill.distance)).toBeLessThan(1e-12);
      expect(relative(ride.verticalSpeed * ride.time, climb.hill.gain)).toBeLessThan(1e-12);
    }
  });

  test('mean powers and energies balance', () => {
    const r = random(113);
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const ride = rideStages(climb, reserves);
      const { gravity, rolling, air, drive } = ride.powers;
      expect(Math.abs(gravity + rolling + air + drive - ride.crankPower)).toBeLessThan(1e-9 * ride.crankPower);
      expect(relative(ride.crankPower, climb.riderPower + ride.motorPower)).toBeLessThan(1e-12);
      expect(relative(gravity * ride.time, climb.mass * 9.80665 * climb.hill.gain)).toBeLessThan(1e-11);
      expect(relative(drive, (1 - climb.efficiency) * ride.crankPower, 1e-9)).toBeLessThan(1e-9);
      const { battery } = reserves;
      if (!battery) {
        expect(ride.energy).toBe(0);
        continue;
      }
      const drawn = ride.stages.reduce(
        (sum, { limit, motorPower, time }) =>
          sum + (limit === 'battery' ? 0 : drawnPower(motorPower, battery.unitEfficiency, battery.idle) * time),
        0,
      );
      // lights on an empty battery go out
      expect(Math.abs(ride.energy - Math.min(drawn, battery.energy))).toBeLessThan(1e-9 * ride.crankPower * ride.time);
      expect(ride.energy).toBeLessThanOrEqual(battery.energy);
      // only what is empty holds the motor back
      if (ride.stages.at(-1)?.limit === 'battery') expect(ride.energy).toBe(battery.energy);
    }
  });

  test('an emptier battery never raises the mean output, nor shortens the time', () => {
    const r = random(114);
    let slower = 0;
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      if (!reserves.battery) continue;
      const battery = { ...reserves.battery, energy: reserves.battery.energy * r.between(0, 1) };
      const [full, emptier] = [rideStages(climb, reserves), rideStages(climb, { ...reserves, battery })];
      expect(emptier.motorPower).toBeLessThanOrEqual(full.motorPower * (1 + 1e-12));
      expect(emptier.time).toBeGreaterThanOrEqual(full.time * (1 - 1e-12));
      if (emptier.time > full.time * (1 + 1e-9)) slower++;
    }
    expect(slower).toBeGreaterThan(200);
  });

  test('without a battery a motor that holds less, or starts warmer, is never faster', () => {
    const r = random(115);
    let slower = 0;
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const { heat } = reserves;
      if (!heat) continue;
      const { time } = rideStages(climb, { heat });
      const weaker = rideStages(climb, { heat: { ...heat, continuous: heat.continuous * 0.95 } }).time;
      const warmer = rideStages(climb, { heat: { ...heat, rise: Math.min(1, heat.rise + 0.05) } }).time;
      for (const other of [weaker, warmer]) {
        expect(other).toBeGreaterThanOrEqual(time * (1 - 1e-12));
        if (other > time * (1 + 1e-9)) slower++;
      }
    }
    expect(slower).toBeGreaterThan(200);
  });

  test('the rider alone is never faster', () => {
    const r = random(116);
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const alone = rideClimb({ ...climb, motorPower: 0 }).time;
      expect(rideStages(climb, reserves).time).toBeLessThanOrEqual(alone * (1 + 1e-12));
    }
  });
});

test('where heat limits, a stronger motor can lose: its heat goes with the square of its torque', () => {
  // By hand, without fixed losses: twice the lasting 190 W hold 600 s × ln(4/3) = 173 s, 33 kJ more than the lasting output in all.
  // 1500 W are k = 7.89 and hold 600 s × ln(k²/(k² − 1)) = 9.7 s, 13 kJ more.
  const [mild, fierce] = [380, 1500].map((motorPower) => rideStages({ ...WARM, motorPower }, { heat: HEAT }));
  expect(fierce?.motorPower).toBeLessThan(mild?.motorPower ?? 0);
  expect(fierce?.time).toBeGreaterThan(mild?.time ?? Number.POSITIVE_INFINITY);
});

describe('limitsOf', () => {
  test('names nothing where nothing binds', () => {
    expect(limitsOf(PLAIN, {})).toEqual([]);
    expect(limitsOf({ ...PLAIN, torque: 200, cadence: 80, support: 5, assistLimit: 15 }, {})).toEqual([]);
    expect(limitsOf({ ...PLAIN, motorPower: 0, assistLimit: 1 }, {})).toEqual([]);
  });

  test('says from where on, and what each costs against the same climb without it', () => {
    const r = random(117);
    const seen = new Map<string, number>();
    for (let i = 0; i < 1000; i++) {
      const { climb, reserves } = anyLongClimb(r);
      const { time, stages } = rideStages(climb, reserves);
      const limits = limitsOf(climb, reserves);
      limits.forEach(({ limit, lost, from }, k) => {
        if (limit === 'endurance' || limit === 'brakes') throw new Error('Neither is given.');
        seen.set(limit, (seen.get(limit) ?? 0) + 1);
        expect(lost).toBeLessThanOrEqual(limits[k - 1]?.lost ?? Number.POSITIVE_INFINITY);
        const without = {
          'assist-limit': () => rideStages({ ...climb, assistLimit: null }, reserves),
          torque: () => rideStages({ ...climb, torque: undefined }, reserves),
          support: () => rideStages({ ...climb, support: undefined }, reserves),
          heat: () => rideStages(climb, { battery: reserves.battery }),
          battery: () => rideStages(climb, { heat: reserves.heat }),
        }[limit]();
        expect(lost).toBe(Math.max(0, time - without.time));
        if (limit !== 'heat') expect(lost).toBeGreaterThan(0);
        const stage = stages.find((one) => one.limit === limit);
        expect(from).toEqual(limit === 'heat' || limit === 'battery' ? stage?.from : BOTTOM);
      });
      // what is not named changes nothing when it is taken away, or costs nothing
      const named = limits.map(({ limit }) => limit);
      if (!named.includes('assist-limit'))
        expect(rideStages({ ...climb, assistLimit: null }, reserves).time).toBeGreaterThanOrEqual(time * (1 - 1e-9));
      if (!named.includes('battery'))
        expect(rideStages(climb, { heat: reserves.heat }).time).toBeGreaterThanOrEqual(time * (1 - 1e-9));
    }
    for (const limit of ['assist-limit', 'torque', 'support', 'heat', 'battery'])
      expect(seen.get(limit)).toBeGreaterThan(10);
  });
});

test('distanceAfter(ride, time) is where the bike is: nowhere yet, at the seams of its stages, at the top from then on', () => {
  const r = random(118);
  for (let i = 0; i < 300; i++) {
    const { climb, reserves } = anyLongClimb(r);
    const ride = rideStages(climb, reserves);
    expect(distanceAfter(ride, 0)).toBe(0);
    for (const { from, speed, time } of ride.stages) {
      expect(relative(distanceAfter(ride, from.time), from.distance, 1)).toBeLessThan(1e-11);
      expect(relative(distanceAfter(ride, from.time + time / 2), from.distance + (speed * time) / 2)).toBeLessThan(
        1e-11,
      );
    }
    expect(relative(distanceAfter(ride, 2 * ride.time), climb.hill.distance)).toBeLessThan(1e-11);
  }
});

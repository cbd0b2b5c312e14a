import { describe, expect, test } from 'vitest';
import {
  airDensity,
  batteryEnergy,
  type Climb,
  crankPower,
  hillFromGain,
  hillFromProfile,
  loadOf,
  resistanceOf,
  rideClimb,
  rideProfile,
} from '../../calculators/model/index.ts';
import type { Result } from '../../calculators/scenario/vocabulary.ts';
import { random, relative } from '../random.ts';
import { answer } from './outcome.ts';

/** What an answer depends on that nobody has measured: every figure here is written out, none comes from the calculators. */
interface Unknowns {
  rolling: number;
  drag: number;
  drive: number;
  unit: number;
  fade: number;
}
const STATED: Unknowns = { rolling: 0.028, drag: 0.45, drive: 0.96, unit: 0.8, fade: 2 / 3.6 };
const ENDS: [keyof Unknowns, number, number][] = [
  ['rolling', 0.015, 0.035],
  ['drag', 0.35, 0.55],
  ['drive', 0.94, 0.98],
  ['unit', 0.75, 0.85],
  ['fade', 1 / 3.6, 4 / 3.6],
];

const climb = (gain: number, bike: number, motorPower: number, u: Unknowns): Climb => ({
  hill: hillFromGain(2400, gain),
  mass: 82 + bike,
  rolling: u.rolling,
  dragArea: u.drag,
  density: airDensity(500, 15),
  headWind: 0,
  efficiency: u.drive,
  riderPower: 170,
  motorPower,
  assistLimit: 25 / 3.6,
  fadeWidth: u.fade,
});

/** Pairs of shifts from `now`, added in squares by side. */
function quadrature(now: number, pairs: readonly (readonly number[])[]): { low: number; high: number } {
  let [down2, up2] = [0, 0];
  for (const pair of pairs) {
    const shifts = pair.map((value) => value - now);
    down2 += Math.min(0, ...shifts) ** 2;
    up2 += Math.max(0, ...shifts) ** 2;
  }
  return { low: now - Math.sqrt(down2), high: now + Math.sqrt(up2) };
}

/** Range of `f` with one unknown moved at a time. */
function rangeOf(f: (u: Unknowns) => number, ends = ENDS): { low: number; high: number } {
  const moved = ends.map(([name, ...both]) => both.map((end) => f({ ...STATED, [name]: end })));
  return quadrature(f(STATED), moved);
}

/** A result is that value with that range, to 1e-9 of either half of it. */
function expectRange(result: Result, si: number, { low, high }: { low: number; high: number }): void {
  expect(relative(result.si ?? Number.NaN, si)).toBeLessThan(1e-12);
  expect(high).toBeGreaterThan(low);
  expect(relative((result.high ?? Number.NaN) - si, high - si)).toBeLessThan(1e-9);
  expect(relative(si - (result.low ?? Number.NaN), si - low)).toBeLessThan(1e-9);
}

describe('the range of a predicted climb is a plain sum of squares', () => {
  const cases: [string, number, number][] = [
    ['', 235, 380],
    ['gain=60m&motor=600W', 60, 600],
  ];
  // and anything between, from no help to full fade
  const { whole } = random(20_260);
  for (let i = 0; i < 6; i++) {
    const [gain, motor] = [whole(20, 300), whole(150, 700)];
    cases.push([`gain=${gain}m&motor=${motor}W`, gain, motor]);
  }

  test.each(cases)('climb-time/?%s: time, speed and battery energy', (query, gain, motor) => {
    const { result } = answer('climb-time', query);
    const ride = (u: Unknowns) => rideClimb(climb(gain, 20, motor, u));
    const time = (u: Unknowns): number => ride(u).time;
    const speed = (u: Unknowns): number => ride(u).speed;
    const energy = (u: Unknowns): number => batteryEnergy(ride(u).motorPower, ride(u).time, u.unit);
    expectRange(result('time'), time(STATED), rangeOf(time));
    expectRange(result('speed'), speed(STATED), rangeOf(speed));
    expectRange(result('battery-energy'), energy(STATED), rangeOf(energy));
  });

  test('at the limit the width of the fade has its share, far below it none; the drive unit costs energy, not time', () => {
    const without = (left: keyof Unknowns) => ENDS.filter(([name]) => name !== left);
    const atLimit = (u: Unknowns): number => rideClimb(climb(60, 20, 600, u)).time;
    const steep = (u: Unknowns): number => rideClimb(climb(235, 20, 380, u)).time;
    const { low = 0, high = 0 } = answer('climb-time', 'gain=60m&motor=600W').result('time');
    expect(high - low).toBeGreaterThan(
      1.05 * (rangeOf(atLimit, without('fade')).high - rangeOf(atLimit, without('fade')).low),
    );
    expect(rangeOf(steep, without('fade'))).toEqual(rangeOf(steep));
    expect(rangeOf(steep, without('unit'))).toEqual(rangeOf(steep));
    const energy = answer('climb-time').result('battery-energy');
    const byTimeAlone = rangeOf((u) => (380 * steep(u)) / 0.8);
    expect((energy.high ?? 0) - (energy.low ?? 0)).toBeGreaterThan(1.05 * (byTimeAlone.high - byTimeAlone.low));
  });

  test.each([
    ['', 235],
    ['gain=60m', 60],
  ])('side-by-side/?%s: a gap moves with what both bikes share', (query, gain) => {
    const { result } = answer('side-by-side', query);
    for (const [bike, mass, motor] of [
      [1, 17, 280],
      [2, 21, 400],
    ] as const) {
      const gap = (u: Unknowns): number =>
        rideClimb(climb(gain, mass, motor, u)).time - rideClimb(climb(gain, 24, 560, u)).time;
      const { low, high } = rangeOf(gap);
      // a range is not carried below a gap of nothing
      expectRange(result('gap', bike), gap(STATED), { low: Math.max(0, low), high });
    }
  });

  test('power-to-weight at the limit: the equivalent, and what a kilogram costs', () => {
    const { result } = answer('power-to-weight', 'gain=60m&motor=600W');
    const equivalent = (u: Unknowns): number => rideClimb(climb(60, 20, 600, u)).crankPower / 82;
    const { low, high } = rangeOf(equivalent);
    // the legs alone are there whatever the motor does
    expectRange(result('watts-per-kilogram-unassisted-equivalent'), equivalent(STATED), {
      low: Math.max(170 / 82, low),
      high,
    });
    const kilogram = (u: Unknowns): number =>
      rideClimb(climb(60, 21, 600, u)).time - rideClimb(climb(60, 20, 600, u)).time;
    // a small difference of two times has fewer digits than either
    const range = rangeOf(kilogram);
    const perKilogram = result('time-per-kilogram');
    expect(perKilogram.si).toBeCloseTo(kilogram(STATED), 9);
    expect(perKilogram.low).toBeCloseTo(range.low, 9);
    expect(perKilogram.high).toBeCloseTo(range.high, 9);
    expect(answer('power-to-weight').result('watts-per-kilogram-unassisted-equivalent')).not.toHaveProperty('low');
  });
});

test('a range along a profile moves with how fast the motor warms and what it loses anyway, too', () => {
  interface Warm extends Unknowns {
    warmUp: number;
    losses: number;
  }
  const stated: Warm = { ...STATED, warmUp: 600, losses: 0.2 };
  // 600 s that the reader states, ±30 %; fixed losses of 0 to 0.5, and a battery that lasts whatever it holds
  const ends: [keyof Warm, number, number][] = [...ENDS, ['warmUp', 420, 780], ['losses', 0, 0.5]];
  const pieces = [
    [1500, 120],
    [800, -40],
    [1500, 150],
  ] as const;
  const profile = {
    distance: Float64Array.of(0, 1500, 2300, 3800),
    height: Float64Array.of(0, 120, 80, 230),
  };
  const ride = (u: Warm) =>
    rideProfile(
      {
        ...climb(235, 21, 400, u),
        hill: hillFromProfile(profile),
        cadence: 75,
        gear: { wheelRadius: 0.35, turns: 32 / 50 },
        topSpeed: 40 / 3.6,
      },
      { heat: { continuous: 200, continuousCadence: 75, timeConstant: u.warmUp, fixedLosses: u.losses, rise: 0 } },
    );
  const time = (u: Warm): number => ride(u).time;
  const power = (u: Warm): number => ride(u).motorPower;
  const energy = (u: Warm): number => batteryEnergy(power(u), time(u), u.unit);
  const range = (f: (u: Warm) => number, of = ends) =>
    quadrature(
      f(stated),
      of.map(([name, ...both]) => both.map((end) => f({ ...stated, [name]: end }))),
    );
  const link = `profile=1:${pieces.map((piece) => piece.join()).join(':')}&name=A&bike=21kg&motor=400W&continuous=200W&warm-up=10:00`;
  const { result } = answer('your-hill', link);
  expectRange(result('time', 1), time(stated), range(time));
  expectRange(result('motor-power', 1), power(stated), range(power));
  expectRange(result('battery-energy', 1), energy(stated), range(energy));
  // each of the two has its share
  for (const left of ['warmUp', 'losses']) {
    const less = range(
      power,
      ends.filter(([name]) => name !== left),
    );
    expect((result('motor-power', 1).high ?? 0) - (result('motor-power', 1).low ?? 0)).toBeGreaterThan(
      1.01 * (less.high - less.low),
    );
  }
});

describe('the range of a time on another hill is what links with one input off at a time say', () => {
  const there = 'target-grade=6&limit=none';
  const time = (query: string): number => answer('bigger-hill', query).si('time', 1);
  const found = answer('bigger-hill', there).si('rolling');
  const meter = (factor: number): string => `power=${170 * factor}&control-power=${170 * factor}`;
  const INSTRUMENTS: [string, string][] = [
    ['drag=0.35', 'drag=0.55'],
    ['drive=94', 'drive=98'],
    ['rider=81', 'rider=83'],
    [`distance=${2400 * 0.99}`, `distance=${2400 * 1.01}`],
    [`gain=${235 * 0.97}`, `gain=${235 * 1.03}`],
    ['bike=16.7,,', 'bike=17.3,,'],
    ['time=11:43,,', 'time=11:45,,'],
    // how steadily this run was ridden, the control run and the other hill apart from it
    [`power=${170 * 0.976}&target-power=170`, `power=${170 * 1.024}&target-power=170`],
    ['control-bike=12.7', 'control-bike=13.3'],
    [`control-power=${170 * 0.976}`, `control-power=${170 * 1.024}`],
    ['control-time=28:39', 'control-time=28:41'],
  ];
  const METER: [string, string] = [meter(0.98), meter(1.02)];
  const SURFACE: [string, string] = [`target-rolling=${found - 0.004}`, `target-rolling=${found + 0.004}`];
  const sum = (base: string, pairs: [string, string][]) =>
    quadrature(
      time(base),
      pairs.map((pair) => pair.map((query) => time(`${base}&${query}`))),
    );

  test('nothing said about the surface and the power there', () => {
    const { result } = answer('bigger-hill', there);
    expectRange(result('time', 1), time(there), sum(there, [...INSTRUMENTS, METER, SURFACE]));
  });

  test('the surface there has a share, and more of the same hill has none of it', () => {
    const all = sum(there, [...INSTRUMENTS, METER, SURFACE]);
    const without = sum(there, [...INSTRUMENTS, METER]);
    expect(all.high - all.low).toBeGreaterThan(1.05 * (without.high - without.low));
    // measured by the same instruments: a height misread here is misread there
    const same = 'limit=none';
    const follow = INSTRUMENTS.map((pair) =>
      pair.map((query) =>
        query.replace(/^gain=(.*)$/, (gain, metres) => `${gain}&target-gain=${(600 * metres) / 235}`),
      ),
    );
    const moved = [...follow, METER].map((pair) => pair.map((query) => time(`${same}&${query}`)));
    expectRange(answer('bigger-hill', same).result('time', 1), time(same), quadrature(time(same), moved));
  });

  test.each([
    ['0.01', 0.003],
    ['0.03', 0.004],
  ])('a stated target-rolling=%s is known to ±%f', (stated, half) => {
    const base = `${there}&target-rolling=${stated}`;
    const now = time(base);
    const moved = [-half, half].map((by) => time(`${there}&target-rolling=${Number(stated) + by}`));
    const instruments = [...INSTRUMENTS, METER].map((pair) => pair.map((query) => time(`${base}&${query}`)));
    expectRange(answer('bigger-hill', base).result('time', 1), now, quadrature(now, [...instruments, moved]));
  });

  test('a power of its own there is taken as true: another range, the same value', () => {
    const base = `${there}&target-power=170W`;
    const unsaid = answer('bigger-hill', there).result('time', 1);
    const said = answer('bigger-hill', base).result('time', 1);
    expect(said.si).toBe(unsaid.si);
    expectRange(said, time(base), sum(base, [...INSTRUMENTS, METER, SURFACE]));
    expect(relative(said.high ?? 0, unsaid.high ?? 0)).toBeGreaterThan(1e-4);
    expect(relative(said.low ?? 0, unsaid.low ?? 0)).toBeGreaterThan(1e-4);
  });
});

describe('a remark stands on its side of its threshold, and only there', () => {
  const JUST = 1e-6;

  test('the battery: only when it is empty before the top', () => {
    const cases = [
      ['climb-time', 'On this climb: the battery is empty after', undefined],
      ['side-by-side', 'Light: the battery is empty after', 1],
      ['bigger-hill', 'Light on the other hill: the battery is empty after', 1],
    ] as const;
    for (const [calculator, sentence, bike] of cases) {
      const plenty = answer(calculator);
      const wattHours = plenty.si('battery-energy', bike) / 3600;
      const rest = bike === undefined ? '' : ',,';
      const enough = answer(calculator, `battery=${wattHours * (1 + JUST)}Wh${rest}`);
      const short = answer(calculator, `battery=${wattHours * (1 - JUST)}Wh${rest}`);
      expect(enough.si('battery-share', bike)).toBeLessThan(1);
      expect(enough.said, calculator).not.toContain(sentence);
      expect(enough.result('binds', bike).text).not.toBe('battery');
      expect(short.si('battery-share', bike)).toBeCloseTo(1, 12);
      expect(short.said, calculator).toContain(sentence);
      // a millionth of the energy less is a millionth of the way without help
      expect(short.si('time', bike)).toBeGreaterThan(plenty.si('time', bike));
      expect(short.si('time', bike)).toBeLessThan(plenty.si('time', bike) * (1 + 5 * JUST));
    }
  });

  test.each([80, 235, 500])('the stroll, %i m high: only below 0.8 m/s', (gain) => {
    const load = loadOf(climb(gain, 20, 0, STATED));
    const power = crankPower(resistanceOf(load), 0.8, 0.96);
    const at = (factor: number) => answer('climb-time', `gain=${gain}m&motor=none&power=${power * factor}W`);
    expect(at(1 - JUST).si('speed')).toBeLessThan(0.8);
    expect(at(1 - JUST).said).toContain('slower than a stroll');
    expect(at(1 + JUST).si('speed')).toBeGreaterThan(0.8);
    expect(at(1 + JUST).said).not.toContain('stroll');
  });

  test('grip: only above 30 %', () => {
    const steep = 'On a slope this steep';
    expect(answer('climb-time', 'grade=29.9999').said).not.toContain(steep);
    expect(answer('climb-time', 'grade=30.0001').said).toContain(steep);
  });

  test('grip: 30 % is not above 30 %', () => {
    expect(answer('climb-time', 'grade=30').said).not.toContain('On a slope this steep');
  });

  test('an absurd rolling resistance: only outside 0.007 to 0.043', () => {
    const asksFor = (rolling: number) => {
      // 95 kg, 28:40 and no motor: the power at which that C_rr is what is left over
      const load = loadOf(climb(235, 13, 0, { ...STATED, rolling }));
      const one = answer('bigger-hill', `control-power=${crankPower(resistanceOf(load), 2400 / 1720, 0.96)}W`);
      expect(one.si('rolling')).toBeCloseTo(rolling, 9);
      const sentences = one.outcome.remarks.filter(({ text }) => text.startsWith('The control run asks for'));
      return sentences.map(({ tone }) => tone);
    };
    for (const rolling of [-0.001, 0.006_99, 0.043_01]) expect(asksFor(rolling), `${rolling}`).toEqual(['wrong']);
    for (const rolling of [0.007_01, 0.014_99, 0.035_01, 0.042_99])
      expect(asksFor(rolling), `${rolling}`).toEqual(['caution']);
    for (const rolling of [0.015_01, 0.034_99]) expect(asksFor(rolling), `${rolling}`).toEqual([]);
  });

  const far = (query: string): [boolean, boolean] => {
    const { said, result } = answer('bigger-hill', `limit=none&${query}`);
    return [said.includes('too different for multiplying times'), result('binds', 1).text === 'grade'];
  };

  test('too different for multiplying: only beyond a tenth', () => {
    const grade = answer('bigger-hill').si('grade') * 100;
    for (const factor of [0.9 - JUST, 1.1 + JUST, 0.5, 2])
      expect(far(`target-grade=${grade * factor}`), `${factor}`).toEqual([true, true]);
    for (const factor of [0.9 + JUST, 1.1 - JUST, 1])
      expect(far(`target-grade=${grade * factor}`), `${factor}`).toEqual([false, false]);
    expect(far('target-gain=1200m')).toEqual([false, false]);
  });

  const tenthOff = (here: number, other: number): void =>
    expect(far(`grade=${here}&target-grade=${other}`), `${here} to ${other}`).toEqual([false, false]);

  test.each([
    [10, 11],
    [5, 5.5],
    [20, 22],
    [20, 18],
  ])('too different for multiplying: from %s to %s per cent is a tenth, not beyond it', tenthOff);

  // in floating point 0.1 − 0.09 is more than 0.01: the last digit must not decide
  test.each([
    [10, 9],
    [5, 4.5],
    [8, 8.8],
    [8, 7.2],
  ])('too different for multiplying: from %s to %s per cent too', tenthOff);
});

/** From a day of runs to motors, differences and their ranges: days with known motors, figures worked out by hand, and check values of the trade. */
import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { tukeyFactor } from '../../calculators/model/day/verdict.ts';
import {
  airDensity,
  type DayDoubts,
  type Estimate,
  fitLine,
  hillFromGain,
  hillFromGrade,
  inferMotor,
  type ReducedPair,
  type Reduction,
  randomSource,
  reduceDay,
  rideClimb,
  sampleDay,
  studentizedRangeQuantile,
  type TestBike,
  type TestDay,
  type TestRun,
  tQuantile,
} from '../../calculators/model/index.ts';
import { DAY_DOUBTS } from '../../calculators/scenario/doubts.ts';
import { relative } from '../random.ts';
import { calibrated, hill, POUND, timedHill } from '../reference/timed-hill.ts';
import { anyBikes, type Count, countDays, EQUAL_BIKES, onlyScatter, perCent, plantedDay, threeErrors } from './days.ts';

const half = ({ low, high }: Estimate): number => (high - low) / 2;
const none = onlyScatter(0);

function motor(reduction: Reduction, bike: number): Estimate {
  const estimate = reduction.bikes[bike]?.motorPower;
  if (!estimate) throw new Error('This bike has no motor power.');
  return estimate;
}

function pair(reduction: Reduction, first: number, second: number): ReducedPair {
  const found = reduction.pairs.find((one) => one.first === first && one.second === second);
  if (!found) throw new Error('There is no such pair.');
  return found;
}

describe('days with known motors', () => {
  // 600 days: a share of 95 % is off by chance by up to 2.7 %, three standard errors
  const DAYS = 600;
  const off = threeErrors(0.95, DAYS);
  const holds95 = (counts: readonly Count[]): void => {
    for (const one of counts) expect(Math.abs(perCent(one) - 0.95)).toBeLessThan(off);
  };

  test('with nothing off, motors and times come out as they were planted', () => {
    const { day, motors, times } = plantedDay(randomSource(3), {
      motors: [300, 450, 620],
      masses: [17, 20, 24],
      runs: 3,
      controls: 2,
      doubts: none,
    });
    const reduction = reduceDay(day, none);
    motors.forEach((planted, i) => {
      // the bisection stops at 10⁻¹⁷ of 30 m/s
      expect(motor(reduction, i).value).toBeCloseTo(planted, 6);
      expect(reduction.bikes[i]?.time?.value).toBeCloseTo(times[i] ?? 0, 6);
    });
    // 0.028 is the surface that the days are planted on
    expect(reduction.rolling[0]?.estimate.value).toBeCloseTo(0.028, 8);
    expect(reduction.scatter.relative).toBeLessThan(1e-8);
  });

  test('95 % ranges hold each motor, each time and each difference on 95 % of the days', { timeout: 30_000 }, () => {
    const tally = countDays(DAYS, (random) => ({
      ...anyBikes(random),
      runs: 3 + Math.floor(4 * random()),
      controls: 1 + Math.floor(2 * random()),
      doubts: DAY_DOUBTS,
    }));
    holds95(tally.motors);
    holds95(tally.differences);
    holds95(tally.times);
    holds95(tally.timeDifferences);
  });

  test('so they do in a paired experiment and where tyres differ', { timeout: 30_000 }, () => {
    const bikes = { motors: [300, 320, 400, 500], runs: 3, controls: 2, doubts: DAY_DOUBTS };
    const settings = countDays(DAYS, () => ({ ...bikes, factor: 'setting' }), DAY_DOUBTS, 2);
    holds95([...settings.motors, ...settings.differences]);
    const tyres = countDays(DAYS, () => ({ ...bikes, unlikeTyres: 0.005, tyresEntered: true }), DAY_DOUBTS, 3);
    holds95([...tyres.motors, ...tyres.differences]);
  });

  test('equal bikes are called different as seldom as promised, one pair or all', { timeout: 30_000 }, () => {
    const tally = countDays(DAYS, () => ({ ...EQUAL_BIKES, runs: 4, controls: 2, doubts: DAY_DOUBTS }));
    expect(perCent(tally.realAlone)).toBeLessThan(0.05 + off);
    expect(perCent(tally.realAmongAll)).toBeLessThan(0.05 + off);
    // one pair at a time, a day of six pairs would find one far more often
    expect(perCent(tally.realAlone)).toBeGreaterThan(0.05 - off);
  });
});

/** The hill of the trade as a test day: every bike once, and both rides without a motor. */
const BIKES: TestBike[] = [
  { mass: 23 * POUND, assistLimit: null, tyres: 1 },
  ...timedHill.bikes.map(({ bike }) => ({ mass: bike, assistLimit: null, tyres: 1 })),
  // another light bike, 17 s faster
  { mass: 37 * POUND, assistLimit: null, tyres: 1 },
];
const [LIGHT, MID, FULL, OTHER] = [1, 2, 3, 4];
const controls: TestRun[] = timedHill.controls.map(({ time, riderPower }) => ({
  bike: 0,
  assisted: false,
  time,
  riderPower,
}));
const assisted: TestRun[] = [...timedHill.bikes.map(({ time }) => time), 7 * 60 + 5].map((time, i) => ({
  bike: i + 1,
  assisted: true,
  time,
  riderPower: timedHill.riderPower,
}));
const timedDay: TestDay = {
  factor: 'bikes',
  hill,
  density: airDensity(500, 15),
  headWind: 0,
  dragArea: 0.45,
  efficiency: 0.96,
  rolling: 0.025,
  riderMass: 80,
  targetPower: timedHill.riderPower,
  bikes: BIKES,
  runs: [...controls, ...assisted],
  gaugeStep: 0.01,
};
/** what instruments alone leave open: no wind, no line, no drive, rolling the same at all speeds */
const instruments: DayDoubts = { ...DAY_DOUBTS, scatter: 0, efficiencyBetween: 0, rollingWithSpeed: 0, headWind: 0 };
/** each assisted bike three times, its runs as far apart as on an ordinary day: 1.8 % of total power (1 SD), here 1.65 % of the time */
const threeTimes = (runs: readonly TestRun[]): TestRun[] =>
  runs.flatMap((run) => [-1, 0, 1].map((k) => ({ ...run, time: run.time * (1 + 0.0165 * k) })));
const ordinary: TestDay = {
  ...timedDay,
  runs: [...controls.slice(0, 1), ...threeTimes(assisted), ...controls.slice(1)],
};

describe('the timed hill, common practice, no source', () => {
  test('the motors are about 300, 450 and 620 W, and the ranges hold that', () => {
    const reduction = reduceDay(timedDay, DAY_DOUBTS);
    timedHill.bikes.forEach(({ motor: said }, i) => {
      const { value, low, high } = motor(reduction, i + 1);
      expect(Math.abs(value / said - 1)).toBeLessThan(0.02);
      expect(low).toBeLessThan(said);
      expect(high).toBeGreaterThan(said);
    });
  });

  test('light and mid assist are apart, even run once', () => {
    const { motorPower, time } = pair(reduceDay(timedDay, DAY_DOUBTS), LIGHT, MID);
    for (const verdict of [motorPower, time]) {
      expect(verdict.realAlone).toBe(true);
      expect(verdict.realAmongAll).toBe(true);
      expect(verdict.runsNeeded).toBe(0);
    }
    expect(time.difference.value).toBeCloseTo(5 * 60 + 57 - (7 * 60 + 22), 6);
  });

  test('a second light bike with 7:05 is 21 W more', () => {
    expect(pair(reduceDay(timedDay, DAY_DOUBTS), LIGHT, OTHER).motorPower.difference.value).toBeCloseTo(21, 0);
  });

  test('which is apart with instruments alone, barely on an ordinary day, and not with unlike tyres', () => {
    const alone = pair(reduceDay(timedDay, instruments), LIGHT, OTHER).motorPower;
    expect(alone.realAlone).toBe(true);
    // the range is about a third of the difference
    expect(half(alone.difference)).toBeLessThan(9);
    const usual = pair(reduceDay(ordinary, DAY_DOUBTS), LIGHT, OTHER).motorPower;
    expect(usual.realAlone).toBe(true);
    expect(usual.realAmongAll).toBe(false);
    expect(half(usual.difference) / usual.difference.value).toBeGreaterThan(0.75);
    const otherTyres = { ...ordinary, bikes: BIKES.map((bike, i) => ({ ...bike, tyres: i === OTHER ? 2 : 1 })) };
    const unlike = pair(reduceDay(otherTyres, DAY_DOUBTS), LIGHT, OTHER).motorPower;
    expect(unlike.realAlone).toBe(false);
    expect(unlike.difference.causes[0]?.name).toBe('tyres');
  });

  /** s that a run 3 W under target is corrected by */
  const corrections = (bikes: TestBike[]): (number | undefined)[] => {
    const runs = [...controls, ...assisted.map((run) => ({ ...run, riderPower: 197 }))];
    const reduction = reduceDay({ ...timedDay, bikes, runs }, DAY_DOUBTS);
    return [LIGHT, MID, FULL].map((bike) => reduction.bikes[bike]?.correction);
  };

  test('3 W under target are worth about 2.4, 1.5 and 0.9 s when the motors are saturated', () => {
    const [light = 0, mid = 0, full = 0] = corrections(BIKES);
    // the figures are of a hill much like this one
    expect(Math.abs(light + 2.4)).toBeLessThan(0.15);
    expect(Math.abs(mid + 1.5)).toBeLessThan(0.15);
    expect(Math.abs(full + 0.9)).toBeLessThan(0.15);
  });

  test('and 6.1, 4.9 and 3.9 s when the motors multiply the rider', () => {
    // 300 of 197 W and so on
    const supports = [undefined, 1.53, 2.29, 3.15, 1.6];
    const [light = 0, mid = 0, full = 0] = corrections(
      BIKES.map((bike, i) => ({ ...bike, ...(supports[i] !== undefined && { support: supports[i] }) })),
    );
    expect(Math.abs(light + 6.1)).toBeLessThan(0.25);
    expect(Math.abs(mid + 4.9)).toBeLessThan(0.25);
    expect(Math.abs(full + 3.9)).toBeLessThan(0.25);
  });

  test('without control runs the absolute ranges at least double, with a meter good to 1 %', () => {
    const meter = { ...instruments, meterScale: 0.01 };
    const withControl = reduceDay(timedDay, meter);
    const without = reduceDay({ ...timedDay, runs: assisted }, meter);
    for (const bike of [LIGHT, MID, FULL])
      expect(half(motor(without, bike)) / half(motor(withControl, bike))).toBeGreaterThan(2);
    expect(motor(without, LIGHT).causes[0]?.name).toBe('rolling');
    expect(without.rolling[0]?.estimate).toMatchObject({ value: 0.025 });
    expect(without.rolling[0]?.estimate.low).toBeCloseTo(0.015, 6);
    expect(without.rolling[0]?.estimate.high).toBeCloseTo(0.035, 6);
  });

  test('a meter that nobody checked makes the control run worth less', () => {
    const unchecked = reduceDay(timedDay, { ...instruments, meterScale: 1.96 * 0.032 });
    const without = reduceDay({ ...timedDay, runs: assisted }, { ...instruments, meterScale: 1.96 * 0.032 });
    const worth = half(motor(without, FULL)) / half(motor(unchecked, FULL));
    expect(worth).toBeGreaterThan(1);
    expect(worth).toBeLessThan(2);
    expect(motor(unchecked, FULL).causes[0]?.name).toBe('meterScale');
  });

  test('the day agrees with the calculator that reads back one run', () => {
    // only the first control run, as that calibration has it
    const reduction = reduceDay({ ...timedDay, runs: [...controls.slice(0, 1), ...assisted] }, DAY_DOUBTS);
    const { rolling, motors } = calibrated({ rider: 80, dragArea: 0.45, altitude: 500 });
    expect(reduction.rolling[0]?.estimate.value).toBeCloseTo(rolling, 9);
    motors.forEach((one, i) => {
      expect(motor(reduction, i + 1).value).toBeCloseTo(one, 6);
    });
  });
});

describe('what moves the motor, from the table of a simulation of ours (1 mile, 550 ft, an 80 kg rider at 200 W)', () => {
  const only = (doubts: Partial<DayDoubts>): Reduction => reduceDay(once, { ...none, ...doubts });
  const once = { ...timedDay, runs: [...controls.slice(0, 1), ...assisted] };

  test('a head wind of 1 m/s on all runs takes 4, 7 and 11 W', () => {
    const reduction = only({ headWind: 1 });
    [4, 7, 11].forEach((watts, i) => {
      expect(Math.abs(half(motor(reduction, i + 1)) - watts)).toBeLessThan(1.5);
    });
  });

  test('rolling that may rise by 3 % per m/s (1 SD) is ±12, 22 and 36 W', () => {
    const reduction = only({ rollingWithSpeed: 1.96 * 0.03 });
    // C_rr of that simulation was not noted: a tenth
    [12, 22, 36].forEach((watts, i) => {
      expect(Math.abs(half(motor(reduction, i + 1)) / watts - 1)).toBeLessThan(0.1);
    });
  });

  test('a meter scale of 2 % (1 SD) hardly touches like bikes and stays ±11 W between light and full', () => {
    const reduction = only({ meterScale: 1.96 * 0.02 });
    expect(half(pair(reduction, LIGHT, OTHER).motorPower.difference)).toBeCloseTo(0.7, 0);
    expect(Math.abs(half(pair(reduction, LIGHT, FULL).motorPower.difference) - 11)).toBeLessThan(0.7);
  });

  test('bike masses are worth 5 to 7 W per kg, the rider’s much less', () => {
    const reduction = only({ bikeMass: 1 });
    // its own mass; the control bike's, one more of the same size, is in it too
    expect(half(motor(reduction, LIGHT)) / Math.SQRT2).toBeGreaterThan(4.5);
    expect(half(motor(reduction, LIGHT)) / Math.SQRT2).toBeLessThan(7);
    expect(half(motor(only({ riderMass: 1 }), FULL))).toBeLessThan(2);
  });

  test('gain and distance cancel', () => {
    // 3 % of the gain alone would be 3 % of most of 500 W
    expect(half(motor(only({ gain: 0.03, distance: 0.01 }), LIGHT))).toBeLessThan(1.5);
  });

  test('times do not depend on what all runs share', () => {
    const { meterRepeatability: _, scatter: __, stopwatch: ___, ...shared } = DAY_DOUBTS;
    for (const { time } of only(shared).bikes.slice(1)) expect(half(time as Estimate)).toBeLessThan(1e-6);
  });
});

describe('scatter', () => {
  test('runs of one time and 190, 200 and 210 W scatter by 10 W of total power', () => {
    const runs = [190, 200, 210].flatMap((riderPower) =>
      [0, 1].map((bike): TestRun => ({ bike: bike + 1, assisted: true, time: 442, riderPower })),
    );
    const day = { ...timedDay, runs: [...controls.slice(0, 1), ...runs] };
    const reduction = reduceDay(day, onlyScatter(0.02));
    const total = reduction.runs[1]?.totalPower ?? 0;
    const other = reduction.runs[2]?.totalPower ?? 0;
    // T/(T ∓ 10) − 1, twice each, from 2 (3 − 1) degrees of freedom
    const squares = [total, other].map((T) => (10 / (T - 10)) ** 2 + (10 / (T + 10)) ** 2);
    expect(reduction.scatter.relative).toBeCloseTo(Math.sqrt(((squares[0] ?? 0) + (squares[1] ?? 0)) / 4), 9);
    expect(reduction.scatter).toMatchObject({ freedom: 4, assumed: false });
    // a mean of three: u = s T/√3, and the control run as much of itself carried on, s T of the assisted power; t of 4 degrees 2.776
    const { standard, freedom, low, value } = motor(reduction, 1);
    expect(freedom).toBeCloseTo(4, 6);
    expect((value - low) / standard).toBeCloseTo(2.7764, 4);
    const own = pair(reduction, 1, 2).motorPower.difference.standard;
    // the control run is shared and the bikes differ by 8 lb, so what is left is nearly the two means
    expect(own / (reduction.scatter.relative * Math.hypot(total, other))).toBeCloseTo(1 / Math.sqrt(3), 2);
  });

  test('without repeats it is what instruments and the assumed day leave open', () => {
    const { scatter, bikes } = reduceDay(timedDay, DAY_DOUBTS);
    expect(scatter).toMatchObject({ freedom: 0, assumed: true });
    // 1.8 % of the day, 1.2 % of 200 of 398 to 818 W or of all, 0.05 to 0.2 % of the stopwatch
    expect(scatter.relative).toBeGreaterThan(0.0185);
    expect(scatter.relative).toBeLessThan(0.0215);
    expect(bikes[LIGHT]?.time?.freedom).toBe(Number.POSITIVE_INFINITY);
    // 1 s on a run is 1 s on its time at the target power
    const watch = reduceDay({ ...timedDay, runs: assisted }, { ...none, stopwatch: 1 });
    expect(half(watch.bikes[LIGHT]?.time as Estimate)).toBeCloseTo(1, 2);
  });

  test('a few repeats worse than assumed count with the few degrees of freedom that they have', () => {
    // two bikes twice, each 16 s apart: two degrees of freedom, whose t is 4.3027
    const twice = [1, 2].flatMap((bike) =>
      [0, 16].map(
        (more): TestRun => ({ bike, assisted: true, time: (bike === 1 ? 392 : 362) + more, riderPower: 200 }),
      ),
    );
    const [control] = controls;
    const few = reduceDay({ ...timedDay, runs: [control as TestRun, ...twice] }, { ...none, scatter: 0.02 });
    expect(few.scatter).toMatchObject({ freedom: 2, assumed: false });
    const { time } = pair(few, 1, 2);
    expect(half(time.difference) / time.difference.standard).toBeCloseTo(4.3027, 3);
    // so a further run that agrees narrows the range; with t left out it would have widened it
    const control2 = { ...(control as TestRun), time: (control as TestRun).time + 10 };
    const more = reduceDay({ ...timedDay, runs: [control as TestRun, ...twice, control2] }, { ...none, scatter: 0.02 });
    expect(more.scatter.freedom).toBe(3);
    expect(half(pair(more, 1, 2).time.difference)).toBeLessThan(half(time.difference));
  });

  test('repeats that agree to the second are no surer than the stopwatch', () => {
    const same = { ...timedDay, runs: [...controls.slice(0, 1), ...assisted, ...assisted] };
    const reduction = reduceDay(same, DAY_DOUBTS);
    expect(reduction.scatter.assumed).toBe(false);
    expect(half(reduction.bikes[LIGHT]?.time as Estimate)).toBeGreaterThan(0.7);
  });

  test('a mistyped control run does not outvote the others', () => {
    const typed = [200, 20, 203].map((riderPower): TestRun => ({ bike: 0, assisted: false, time: 1003, riderPower }));
    const of = (runs: TestRun[]): number =>
      reduceDay({ ...timedDay, runs: [...runs, ...assisted] }, DAY_DOUBTS).rolling[0]?.estimate.value ?? 0;
    const mean = typed.reduce((sum, run) => sum + of([run]) / 3, 0);
    // one and the same time, so one weight: the mean of the three. Weights from the reading would give the 20 W a hundred times that of 200.
    expect(of(typed)).toBeCloseTo(mean, 3);
  });

  test('a drift shows as the line through the residuals', () => {
    const times = [440, 443, 441, 445, 444, 447, 446, 450];
    const runs = times.map((time): TestRun => ({ bike: LIGHT, assisted: true, time, riderPower: 200 }));
    const { drift, runs: reduced } = reduceDay({ ...timedDay, runs }, DAY_DOUBTS);
    const line = fitLine(
      times.map((_, i) => i),
      reduced.map(({ residual }) => residual),
    );
    expect(drift?.perRun).toBeCloseTo(line.slope, 12);
    // as likely by chance as a t that large, of 8 − 2 degrees of freedom
    expect(tQuantile(1 - (drift?.probability ?? 0) / 2, 6)).toBeCloseTo(Math.abs(line.slope / line.slopeError), 6);
    expect(drift?.probability).toBeLessThan(0.01);
    expect(drift?.perRun).toBeLessThan(0);
    expect(reduceDay(timedDay, DAY_DOUBTS).drift).toBeUndefined();
  });
});

test('Tukey’s width of many pairs is the exact one to 0.04 %', () => {
  for (const groups of [2, 3, 4, 6, 10])
    for (const freedom of [3, 3.7, 8, 14, 40, 1000, Number.POSITIVE_INFINITY])
      expect(
        relative(tukeyFactor(groups, freedom), studentizedRangeQuantile(0.95, groups, freedom) / Math.SQRT2),
      ).toBeLessThan(4e-4);
});

describe('how many more runs', () => {
  // two bikes alike, nothing off but the runs: 2 % of total power
  const alike: TestDay = {
    ...timedDay,
    runs: [...controls.slice(0, 1), ...assisted.filter(({ bike }) => bike === LIGHT || bike === OTHER)],
  };

  test('as many as make 1.96 s T √(2/n) less than the difference', () => {
    const reduction = reduceDay(alike, onlyScatter(0.02));
    const { difference, runsNeeded } = pair(reduction, LIGHT, OTHER).motorPower;
    const [, first, second] = reduction.runs;
    const one = 1.96 * 0.02 * Math.hypot(first?.totalPower ?? 0, second?.totalPower ?? 0);
    // 29 W against 21: n = 1.9, so one run more; the control run, shared, adds less than 2 W
    expect(runsNeeded).toBe(Math.ceil((one / difference.value) ** 2) - 1);
    expect(runsNeeded).toBe(1);
  });

  test('that number of runs does it, one less does not', () => {
    const doubts = onlyScatter(0.05);
    const needed = pair(reduceDay(alike, doubts), LIGHT, OTHER).motorPower.runsNeeded ?? 0;
    expect(needed).toBeGreaterThan(5);
    // an assumed scatter averaged over n runs is one of 1/√n: the control run's part is the same on both
    const averaged = (runs: number) =>
      pair(reduceDay(alike, onlyScatter(0.05 / Math.sqrt(runs))), LIGHT, OTHER).motorPower.realAlone;
    expect(averaged(needed + 1)).toBe(true);
    expect(averaged(needed)).toBe(false);
  });

  /** Two bikes alike but for so many s, each ridden three times, 2 % apart: the repeats tell the scatter, with 4 degrees of freedom. */
  function repeated(faster: number) {
    const spread = [0.98, 1.0, 1.02];
    const ridden = (bike: number, time: number): TestRun[] =>
      spread.map((factor) => ({ bike, assisted: true, time: time * factor, riderPower: 200 }));
    const day: TestDay = { ...timedDay, runs: [...ridden(LIGHT, 442), ...ridden(OTHER, 442 - faster)] };
    const reduction = reduceDay(day, onlyScatter(0.02));
    const totals = [0, 3].map((first) => {
      const own = reduction.runs.slice(first, first + 3).map(({ totalPower }) => totalPower);
      return Math.sqrt(own.reduce((sum, total) => sum + total * total, 0) / 3);
    });
    const { difference, runsNeeded } = pair(reduction, LIGHT, OTHER).motorPower;
    expect(reduction.scatter).toMatchObject({ freedom: 4, assumed: false });
    return { size: Math.abs(difference.value), one: reduction.scatter.relative * Math.hypot(...totals), runsNeeded };
  }
  const SECONDS_FASTER = [25, 21, 18, 16, 14, 12.5, 11.5, 10.5, 9.7];

  test('with repeats of one’s own: as many as make t s T √(2/n) less, with two degrees of freedom more for each', () => {
    // t of 97.5 % with 4, 6, 8 … degrees of freedom; table, values from memory
    const t = [2.776, 2.447, 2.306, 2.228, 2.179, 2.145, 2.12, 2.101, 2.086, 2.074, 2.064, 2.056, 2.048, 2.042];
    const counts = SECONDS_FASTER.map((faster) => {
      const { size, one, runsNeeded } = repeated(faster);
      expect(runsNeeded, `${faster} s`).toBe(
        t.findIndex((factor, more) => size > (factor * one) / Math.sqrt(3 + more)),
      );
      return runsNeeded ?? 0;
    });
    expect(counts).toContain(0);
    expect(Math.max(...counts)).toBeGreaterThan(4);
  });

  test('after them such a difference comes out real on half of the days: the noncentral t, integrated here', () => {
    const normalCdf = (z: number): number => (1 + (erf(z / Math.SQRT2) as number)) / 2;
    // chi-square of an even freedom 2 k has the density x^(k−1) e^(−x/2) / (2^k (k − 1)!); Simpson over what of it is not nothing
    const chance = (delta: number, critical: number, freedom: number): number => {
      const k = freedom / 2;
      let factorial = 1;
      for (let i = 2; i < k; i++) factorial *= i;
      const end = freedom + 12 * Math.sqrt(2 * freedom) + 40;
      const STEPS = 4000;
      let sum = 0;
      for (let i = 0; i <= STEPS; i++) {
        const x = (end * i) / STEPS;
        const density = (x ** (k - 1) * Math.exp(-x / 2)) / (2 ** k * factorial);
        sum +=
          (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) *
          density *
          normalCdf(delta - critical * Math.sqrt(x / freedom));
      }
      return (sum * end) / STEPS / 3;
    };
    for (const faster of SECONDS_FASTER) {
      const { size, one, runsNeeded } = repeated(faster);
      const chanceAfter = (more: number): number =>
        chance((size * Math.sqrt(3 + more)) / one, tQuantile(0.975, 4 + 2 * more), 4 + 2 * more);
      const needed = runsNeeded ?? Number.NaN;
      expect(chanceAfter(needed), `${faster} s`).toBeGreaterThanOrEqual(0.5);
      // the middle of a noncentral t lies a little above its centre: just short of real it is 50 to 52 %
      if (needed > 0) expect(chanceAfter(needed - 1), `${faster} s`).toBeLessThan(0.52);
    }
  });

  test('none would do where tyres hide it', () => {
    const tyres = { ...alike, bikes: BIKES.map((bike, i) => ({ ...bike, tyres: i })) };
    expect(pair(reduceDay(tyres, { ...DAY_DOUBTS, tyres: 0.008 }), LIGHT, OTHER).motorPower.runsNeeded).toBeNull();
  });
});

describe('tyres', () => {
  const onTyres = (numbers: number[]): TestBike[] => BIKES.map((bike, i) => ({ ...bike, tyres: numbers[i] ?? 1 }));

  test('each with control runs of their own have their own C_rr, and no doubt between them', () => {
    const own = [controls[0], { bike: OTHER, assisted: false, time: 1100, riderPower: 200 }] as TestRun[];
    const day = { ...timedDay, bikes: onTyres([1, 1, 1, 1, 2]), runs: [...own, ...assisted] };
    const reduction = reduceDay(day, DAY_DOUBTS);
    expect(reduction.rolling.map(({ tyres, runs }) => [tyres, runs])).toEqual([
      [1, 1],
      [2, 1],
    ]);
    const { causes } = pair(reduction, LIGHT, OTHER).motorPower.difference;
    expect(causes.map(({ name }) => name)).not.toContain('tyres');
    // its own control run put in: the crank power of that climb is the 200 W that it was ridden with
    const bike = {
      ...timedDay,
      mass: 80 + 37 * POUND,
      rolling: reduction.rolling[1]?.estimate.value ?? 0,
      riderPower: 0,
      assistLimit: null,
    };
    expect(inferMotor(bike, 1100).mean).toBeCloseTo(200, 1);
  });

  test('without control runs take the mean of the others, ±0.005', () => {
    const runs = [...controls.slice(0, 1), ...assisted];
    const reduction = reduceDay({ ...timedDay, runs, bikes: onTyres([1, 1, 1, 1, 2]) }, { ...none, tyres: 0.005 });
    const [seen, unseen] = reduction.rolling;
    expect(unseen?.estimate.value).toBe(seen?.estimate.value);
    expect(half(unseen?.estimate as Estimate)).toBeCloseTo(0.005, 6);
    // ΔC m g v/η: 0.005 · 96.8 kg · 9.807 · cos · 3.79 m/s / 0.96
    expect(half(motor(reduction, OTHER))).toBeCloseTo(18.6, 0);
    expect(half(motor(reduction, LIGHT))).toBeLessThan(0.01);
  });

  test('two of them are ±0.005 apart too', () => {
    const reduction = reduceDay({ ...timedDay, bikes: onTyres([1, 2, 1, 1, 3]) }, { ...none, tyres: 0.005 });
    const [, light, , other] = [0, 1, 2, 4].map((bike) => reduction.bikes[bike]?.motorPower);
    const apart = half(pair(reduction, LIGHT, OTHER).motorPower.difference);
    expect(apart / half(light as Estimate)).toBeGreaterThan(0.95);
    expect(apart / half(other as Estimate)).toBeLessThan(1.05);
  });
});

describe('paired experiments', () => {
  const variants: TestBike[] = [0, 1].map((tyres) => ({ mass: 20, assistLimit: null, tyres }));
  const runs: TestRun[] = [
    { bike: 0, assisted: false, time: 1050, riderPower: 200 },
    { bike: 0, assisted: true, time: 442, riderPower: 200 },
    { bike: 1, assisted: true, time: 430, riderPower: 200 },
  ];
  const day: TestDay = { ...timedDay, bikes: variants, runs };
  const causesOf = (factor: TestDay['factor'], bikes = variants): string[] =>
    pair(reduceDay({ ...day, factor, bikes }, DAY_DOUBTS), 0, 1).motorPower.difference.causes.map(({ name }) => name);
  const sameTyres = variants.map((bike) => ({ ...bike, tyres: 1 }));

  test('what is held cancels: tyres are the effect, settings share mass and drive', () => {
    const share = (factor: TestDay['factor'], name: string): number =>
      pair(reduceDay({ ...day, factor }, DAY_DOUBTS), 0, 1).motorPower.difference.causes.find(
        (cause) => cause.name === name,
      )?.share ?? 0;
    expect(share('bikes', 'tyres')).toBeGreaterThan(0.1);
    expect(share('tyres', 'tyres')).toBe(0);
    // of a difference of 14 W, half a kilogram or a drive that both share is nothing
    expect(share('tyres', 'efficiencyBetween')).toBeLessThan(1e-3);
    expect(share('bikes', 'efficiencyBetween')).toBeGreaterThan(0.05);
    expect(share('tyres', 'bikeMass')).toBeLessThan(1e-3);
    expect(causesOf('setting', sameTyres)).not.toContain('tyres');
  });

  test('an added mass is known to the scale', () => {
    const heavier = sameTyres.map((bike, i) => ({ ...bike, mass: 20 + 5 * i }));
    const of = (factor: TestDay['factor']): number =>
      half(pair(reduceDay({ ...day, factor, bikes: heavier }, { ...none, bikeMass: 0.3 }), 0, 1).motorPower.difference);
    // 0.3 kg at 5 to 7 W/kg
    expect(of('mass')).toBeGreaterThan(1.4);
    expect(of('mass')).toBeLessThan(2.1);
    expect(of('setting')).toBeLessThan(0.2);
  });

  test('tyres that save 0.004 show as the power that they save and the time it is', () => {
    const climb = { ...timedDay, mass: 100, riderPower: 200, motorPower: 300, assistLimit: null };
    const [slow, fast] = [0.03, 0.026].map((rolling) => rideClimb({ ...climb, rolling }).time);
    const control = rideClimb({ ...climb, motorPower: 0, rolling: 0.03 }).time;
    const tested = {
      ...day,
      factor: 'tyres' as const,
      runs: [control, slow, fast].map((time, i) => ({
        bike: i === 2 ? 1 : 0,
        assisted: i > 0,
        time: time ?? 0,
        riderPower: 200,
      })),
    };
    const { motorPower, time } = pair(reduceDay(tested, DAY_DOUBTS), 0, 1);
    // 0.004 · 100 kg · 9.80665 · cos · v/η with v of the faster
    expect(motorPower.difference.value).toBeCloseTo(
      (0.004 * 100 * 9.80665 * hill.cos * hill.distance) / (fast ?? 0) / 0.96,
      6,
    );
    expect(time.difference.value).toBeCloseTo((fast ?? 0) - (slow ?? 0), 6);
  });
});

describe('normalising', () => {
  test('a bike in its fade keeps its time at the target power and is called so', () => {
    const limit = 26 / 3.6;
    const climb = {
      ...timedDay,
      hill: hillFromGrade(1600, 0.05),
      mass: 100,
      riderPower: 200,
      motorPower: 600,
      assistLimit: limit,
      rolling: 0.025,
    };
    const { time } = rideClimb(climb);
    const control = rideClimb({ ...climb, motorPower: 0 }).time;
    const bikes = [{ mass: 20, assistLimit: limit, tyres: 1 }];
    const runs = [
      { bike: 0, assisted: false, time: control, riderPower: 200 },
      { bike: 0, assisted: true, time, riderPower: 200 },
    ];
    const [bike] = reduceDay({ ...timedDay, hill: climb.hill, bikes, runs }, DAY_DOUBTS).bikes;
    expect(bike?.insideFade).toBe(true);
    expect(bike?.time?.value).toBeCloseTo(time, 6);
    // what it gave there, less than the 600 W that it has
    expect(bike?.motorPower?.value).toBeLessThan(500);
    expect(reduceDay(timedDay, DAY_DOUBTS).bikes[LIGHT]?.insideFade).toBe(false);
  });

  test('the run of a lighter rider in a wind is brought to the common rider in the day’s air', () => {
    const climb = { ...timedDay, mass: 100, riderPower: 200, motorPower: 300, assistLimit: null, rolling: 0.03 };
    const there = rideClimb({ ...climb, mass: 90, headWind: 2, riderPower: 210 }).time;
    const bikes = [{ mass: 20, assistLimit: null, tyres: 1 }];
    const runs = [
      { bike: 0, assisted: false, time: rideClimb({ ...climb, motorPower: 0 }).time, riderPower: 200 },
      { bike: 0, assisted: true, time: there, riderPower: 210, riderMass: 70, headWind: 2 },
    ];
    const { bikes: reduced, runs: each } = reduceDay({ ...timedDay, bikes, runs }, DAY_DOUBTS);
    expect(reduced[0]?.motorPower?.value).toBeCloseTo(300, 6);
    expect(reduced[0]?.time?.value).toBeCloseTo(rideClimb(climb).time, 6);
    expect(reduced[0]?.correction).toBeCloseTo(rideClimb(climb).time - there, 6);
    expect(each[1]?.timeAtTarget).toBeCloseTo(rideClimb(climb).time, 6);
  });

  test('a bike that would stand still has no time', () => {
    const runs = [...controls, { bike: LIGHT, assisted: true, time: 1e5, riderPower: 200 }];
    const reduction = reduceDay({ ...timedDay, runs, targetPower: 1 }, DAY_DOUBTS);
    expect(reduction.bikes[LIGHT]?.time).toBeUndefined();
    expect(reduction.runs[2]?.timeAtTarget).toBeNaN();
    expect(reduction.bikes[MID]).toEqual({ runs: 0 });
  });

  test('a run of a bike that is not there is refused', () => {
    const runs = [{ bike: 9, assisted: true, time: 400, riderPower: 200 }];
    expect(() => reduceDay({ ...timedDay, runs }, DAY_DOUBTS)).toThrow('A run needs one of the bikes.');
  });
});

describe('energy', () => {
  const withGauge = (readings: [number, number][]): TestDay => ({
    ...timedDay,
    bikes: BIKES.map((bike) => ({ ...bike, usableEnergy: 360 * 3600 })),
    runs: [
      ...controls,
      ...readings.map(([gaugeBefore, gaugeAfter]) => ({ ...(assisted[0] as TestRun), gaugeBefore, gaugeAfter })),
    ],
    gaugeStep: 0.05,
  });
  const energyOf = (readings: [number, number][], doubts: DayDoubts): Estimate =>
    reduceDay(withGauge(readings), doubts).bikes[LIGHT]?.batteryEnergy as Estimate;

  test('the mean of the climbs, each reading off by half a step, evenly', () => {
    const apart: [number, number][] = [
      [0.9, 0.75],
      [0.8, 0.65],
    ];
    const { value, standard, causes } = energyOf(apart, none);
    // 15 % of 360 Wh
    expect(value).toBeCloseTo(54 * 3600, 6);
    // four readings of u = 5 %/√12 over two climbs
    expect(standard / (360 * 3600)).toBeCloseTo((0.05 / Math.sqrt(12)) * (Math.sqrt(4) / 2), 9);
    expect(causes).toEqual([{ name: 'gauge', share: 1 }]);
  });

  test('a reading between two climbs counts once each way', () => {
    const chained: [number, number][] = [
      [0.9, 0.75],
      [0.75, 0.6],
    ];
    expect(energyOf(chained, none).standard / (360 * 3600)).toBeCloseTo((0.05 / Math.sqrt(12)) * (Math.sqrt(2) / 2), 9);
  });

  test('the battery is as well known as is said, and the efficiency is the motor’s work over it', () => {
    const readings: [number, number][] = [[0.9, 0.75]];
    const { standard, value } = energyOf(readings, { ...none, battery: 0.06 });
    const steps = (0.05 / 0.15) * Math.sqrt(2 / 12);
    expect(standard / value).toBeCloseTo(Math.hypot(steps, 0.06 / 1.96), 4);
    const [, light] = reduceDay(withGauge(readings), none).bikes;
    // about 298 W for 442 s of 54 Wh
    expect(light?.efficiency?.value).toBeCloseTo(((light?.motorPower?.value ?? 0) * 442) / (54 * 3600), 9);
    expect(light?.efficiency?.value).toBeCloseTo(0.68, 2);
    // where the gauge alone is in doubt (one control run, which nothing contradicts), its ends are the work over the energy's ends
    const one = withGauge(readings);
    const alone = reduceDay({ ...one, runs: one.runs.slice(1) }, none).bikes[LIGHT];
    const work = (alone?.motorPower?.value ?? 0) * 442;
    expect(relative(alone?.efficiency?.low ?? 0, work / (alone?.batteryEnergy?.high ?? 0))).toBeLessThan(1e-6);
    expect(relative(alone?.efficiency?.high ?? 0, work / (alone?.batteryEnergy?.low ?? 0))).toBeLessThan(1e-6);
  });

  test('a gauge that may have used nothing bounds the efficiency from below only', () => {
    const [, light] = reduceDay(withGauge([[0.9, 0.85]]), none).bikes;
    expect(light?.batteryEnergy?.low).toBeGreaterThan(0);
    const [, coarse] = reduceDay({ ...withGauge([[0.9, 0.87]]) }, none).bikes;
    expect(coarse?.batteryEnergy?.low).toBeLessThan(0);
    expect(coarse?.efficiency?.high).toBe(Number.POSITIVE_INFINITY);
    expect(coarse?.efficiency?.low).toBeGreaterThan(0);
  });

  test('without readings there is none', () => {
    expect(reduceDay(timedDay, DAY_DOUBTS).bikes[LIGHT]?.batteryEnergy).toBeUndefined();
  });
});

describe('another hill', () => {
  const target = (targetHill: TestDay['hill'], rolling?: number): TestDay['target'] => ({
    hill: targetHill,
    riderMass: 80,
    riderPower: 200,
    headWind: 0,
    density: timedDay.density,
    ...(rolling !== undefined && { rolling }),
  });
  const on = (there: TestDay['target']): Reduction =>
    reduceDay({ ...timedDay, ...(there && { target: there }) }, DAY_DOUBTS);

  test('twice as much of the same hill takes twice as long, its range with it', () => {
    const [, light] = on(target(hillFromGain(2 * hill.distance, 2 * hill.gain))).bikes;
    expect(light?.targetTime?.value).toBeCloseTo(2 * 442, 6);
    expect(half(light?.targetTime as Estimate)).toBeCloseTo(2 * half(light?.time as Estimate), 4);
  });

  test('on another grade its surface is in doubt', () => {
    const [, light] = on(target(hillFromGrade(2000, 0.06))).bikes;
    expect(light?.targetTime?.causes[0]?.name).toBe('targetRolling');
    expect(light?.time?.causes.map(({ name }) => name)).not.toContain('targetRolling');
  });

  test('the time is that of the model with the motor and surface found', () => {
    const reduction = on(target(hillFromGrade(2000, 0.06), 0.02));
    const motorPower = motor(reduction, LIGHT).value;
    const climb = {
      ...timedDay,
      hill: hillFromGrade(2000, 0.06),
      mass: 80 + 37 * POUND,
      rolling: 0.02,
      riderPower: 200,
      motorPower,
      assistLimit: null,
    };
    // C_dA was calibrated too, by next to nothing
    expect(reduction.bikes[LIGHT]?.targetTime?.value).toBeCloseTo(rideClimb(climb).time, 0);
    expect(pair(reduction, LIGHT, MID).targetTime?.difference.value).toBeLessThan(0);
  });
});

describe('by drawing', () => {
  test('the ranges agree with the linear ones within 5 % of their width at 20 000 trials', { timeout: 30_000 }, () => {
    const day: TestDay = {
      ...ordinary,
      target: { hill: hillFromGain(3000, 250), riderMass: 80, riderPower: 200, headWind: 0, density: 1.1 },
    };
    const reduction = reduceDay(day, DAY_DOUBTS);
    const sampled = sampleDay(day, DAY_DOUBTS, 20_000, randomSource(4));
    const agree = (linear: Estimate | undefined, drawn: { low: number; high: number } | undefined): void => {
      if (!linear || !drawn) throw new Error('A range is missing.');
      const width = linear.high - linear.low;
      expect(Math.abs(drawn.low - linear.low)).toBeLessThan(0.05 * width);
      expect(Math.abs(drawn.high - linear.high)).toBeLessThan(0.05 * width);
      expect(Math.abs(drawn.high - drawn.low - width)).toBeLessThan(0.05 * width);
    };
    for (const bike of [LIGHT, MID, FULL, OTHER])
      for (const name of ['motorPower', 'time', 'targetTime'] as const)
        agree(reduction.bikes[bike]?.[name], sampled.bikes[bike]?.[name]);
    sampled.pairs.forEach(({ first, second, differences }) => {
      const linear = pair(reduction, first, second);
      agree(linear.motorPower.difference, differences.motorPower);
      agree(linear.time.difference, differences.time);
    });
  });

  test('it tells in between how far it is, and gives the same for the same seed', () => {
    const seen: number[] = [];
    const sampled = sampleDay(timedDay, DAY_DOUBTS, 500, randomSource(1), ({ trials }) => seen.push(trials), 200);
    expect(seen).toEqual([200, 400]);
    expect(sampled).toEqual(sampleDay(timedDay, DAY_DOUBTS, 500, randomSource(1)));
    expect(sampled.bikes[0]).toEqual({});
    expect(sampled.pairs).toHaveLength(6);
  });
});

test('C_dA is told only where control runs tell it', () => {
  expect(reduceDay(timedDay, DAY_DOUBTS).dragArea).toBeUndefined();
  // 200 W, and 400 W three times as fast on a gentle hill: both unknowns follow
  const gentle = hillFromGrade(3000, 0.01);
  const climb = { ...timedDay, hill: gentle, mass: 90, motorPower: 0, assistLimit: null, rolling: 0.01, dragArea: 0.5 };
  const runs = [100, 400, 100, 400].map((riderPower) => ({
    bike: 0,
    assisted: false,
    time: rideClimb({ ...climb, riderPower }).time,
    riderPower,
  }));
  const doubts = {
    ...DAY_DOUBTS,
    dragArea: 0.3,
    scatter: 0,
    meterRepeatability: 0.002,
    stopwatch: 0.2,
    gain: 0.005,
    headWind: 0.05,
    rollingWithSpeed: 0,
  };
  const { dragArea } = reduceDay(
    { ...timedDay, hill: gentle, bikes: [{ mass: 10, assistLimit: null, tyres: 1 }], runs, dragArea: 0.45 },
    doubts,
  );
  expect(dragArea?.value).toBeCloseTo(0.5, 2);
});

import { expect, test } from 'vitest';
import { calibrate, crankPower, loadOf, resistanceOf, rideClimb } from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { anyControls, leastSquares } from '../reference/comparisons.ts';
import { PLAIN } from './climbs.ts';

test('calibrate with one run meets it exactly and leaves C_dA at its prior', () => {
  const r = random(60);
  for (let i = 0; i < 300; i++) {
    const { runs, setting } = anyControls(r, 1);
    const [run] = runs;
    if (!run) throw new Error('no run');
    const fitted = calibrate(runs, setting);
    expect(relative(fitted.dragArea, setting.dragArea)).toBeLessThan(1e-12);
    expect(relative(fitted.dragAreaUncertainty, setting.dragAreaUncertainty)).toBeLessThan(1e-9);
    const climb = { ...PLAIN, ...setting, mass: run.mass, rolling: fitted.rolling };
    const power = crankPower(resistanceOf(loadOf(climb)), setting.hill.distance / run.time, setting.efficiency);
    expect(relative(power, run.riderPower)).toBeLessThan(1e-9);
  }
});

test('calibrate gives back the tyres and the air that made the runs', () => {
  const r = random(61);
  for (let i = 0; i < 200; i++) {
    const { setting } = anyControls(r, 1);
    const rolling = r.between(0.005, 0.05);
    const runs = [150, 220, 300].map((riderPower) => {
      const climb = { ...PLAIN, ...setting, rolling, riderPower, motorPower: 0 };
      return { riderPower, mass: climb.mass, time: rideClimb(climb).time };
    });
    const fitted = calibrate(runs, setting);
    expect(relative(fitted.rolling, rolling)).toBeLessThan(1e-9);
    expect(relative(fitted.dragArea, setting.dragArea)).toBeLessThan(1e-9);
  }
});

test('calibrate with several runs is weighted least squares with the prior as one more observation', () => {
  const r = random(62);
  for (let i = 0; i < 100; i++) {
    const { runs, setting } = anyControls(r, r.whole(2, 6));
    const [ours, theirs] = [calibrate(runs, setting), leastSquares(runs, setting)];
    expect(relative(ours.rolling, theirs.rolling, 1e-3)).toBeLessThan(1e-9);
    expect(relative(ours.dragArea, theirs.dragArea)).toBeLessThan(1e-9);
    expect(relative(ours.rollingUncertainty, theirs.rollingUncertainty)).toBeLessThan(1e-9);
    expect(relative(ours.dragAreaUncertainty, theirs.dragAreaUncertainty)).toBeLessThan(1e-9);
  }
});

test('the order of the runs does not matter, and a repeated run counts twice', () => {
  const { runs, setting } = anyControls(random(63), 4);
  const [ours, turned] = [calibrate(runs, setting), calibrate([...runs].reverse(), setting)];
  expect(relative(ours.rolling, turned.rolling)).toBeLessThan(1e-12);
  const [first] = runs;
  if (!first) throw new Error('no run');
  // two of one run: same C_rr, uncertainty from repeatability smaller by √2 where the air hardly counts
  const slow = { ...setting, dragAreaUncertainty: 1e-6 };
  const once = calibrate([first], slow);
  const twice = calibrate([first, first], slow);
  expect(relative(once.rolling, twice.rolling)).toBeLessThan(1e-9);
  expect(once.rollingUncertainty / twice.rollingUncertainty).toBeCloseTo(Math.SQRT2, 5);
});

test('slow runs on a steep hill say nothing about C_dA, fast ones on a gentle hill do', () => {
  const { setting } = anyControls(random(64), 1);
  const informed = (grade: number, powers: number[]): boolean => {
    const hill = { ...PLAIN.hill, sin: grade, cos: Math.sqrt(1 - grade ** 2), gain: grade * PLAIN.hill.distance };
    const there = {
      ...setting,
      hill,
      headWind: 0,
      dragArea: 0.45,
      dragAreaUncertainty: 0.051,
      powerRepeatability: 0.012,
    };
    const runs = powers.map((riderPower) => {
      const climb = { ...PLAIN, ...there, riderPower, motorPower: 0 };
      return { riderPower, mass: climb.mass, time: rideClimb(climb).time };
    });
    return calibrate(runs, there).dragAreaIsInformed;
  };
  expect(informed(0.1, [180, 220])).toBe(false);
  expect(informed(0.002, [120, 200, 300, 400])).toBe(true);
});

test('C_dA counts as informed once the data halve the prior’s uncertainty, or bring it below 0.05 m² at 95 %', () => {
  const r = random(66);
  const seen = { halved: 0, fine: 0, neither: 0 };
  for (let i = 0; i < 2000; i++) {
    const { runs, setting } = anyControls(r, r.whole(1, 6));
    const wide = { ...setting, dragAreaUncertainty: r.pick([0.027, 0.1, 0.5]) };
    const { dragAreaUncertainty } = leastSquares(runs, wide);
    const halved = dragAreaUncertainty < wide.dragAreaUncertainty / 2;
    const fine = 1.96 * dragAreaUncertainty < 0.05;
    seen[halved ? 'halved' : fine ? 'fine' : 'neither']++;
    expect(calibrate(runs, wide).dragAreaIsInformed).toBe(halved || fine);
  }
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
});

test('calibrate without a run says what is missing', () => {
  const { setting } = anyControls(random(65), 1);
  expect(() => calibrate([], setting)).toThrow('Calibration needs at least one control run.');
});

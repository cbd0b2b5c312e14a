/** From times to motors on one hill that everybody in the trade could have ridden: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { rideClimb } from '../../calculators/model/index.ts';
import { evaluateFormula, valueIn } from '../../calculators/quantities/formula-tools.ts';
import { formulas } from '../../calculators/quantities/formulas.ts';
import { calibrated, cases, hill, timedHill } from '../reference/timed-hill.ts';

const [slow, fast] = timedHill.controls;

test('the grade is 10.5 % (tan), 10.4 % (sin)', () => {
  expect(hill.grade * 100).toBeCloseTo(10.47, 2);
  expect(hill.sin * 100).toBeCloseTo(10.42, 2);
});

describe.each(cases)('rider $rider kg with kit, C_dA $dragArea m² held, $altitude m', (assumed) => {
  test('calibrated with the 200 W run, the 300 W run comes out within 1.5 % of 11:18', () => {
    const { climb } = calibrated(assumed);
    const predicted = rideClimb(climb(fast.bike, fast.riderPower)).time;
    expect(Math.abs(predicted / fast.time - 1)).toBeLessThan(0.015);
  });

  test('the motors are about 300, 450 and 620 W, within 5 %', () => {
    const { motors } = calibrated(assumed);
    timedHill.bikes.forEach(({ motor }, i) => {
      expect(Math.abs((motors[i] ?? 0) / motor - 1)).toBeLessThan(0.05);
    });
  });

  test('10 kg more or less of rider move no motor by 3 %', () => {
    const { motors } = calibrated(assumed);
    for (const change of [-10, 10]) {
      const other = calibrated({ ...assumed, rider: assumed.rider + change }).motors;
      motors.forEach((motor, i) => {
        expect(Math.abs((other[i] ?? 0) / motor - 1)).toBeLessThan(0.03);
      });
    }
  });
});

test('the control run asks for C_rr 0.057 of a rider of 65 kg and 0.011 of one of 95 kg', () => {
  const at = (rider: number): number => calibrated({ rider, dragArea: 0.45, altitude: 500 }).rolling;
  expect(at(65)).toBeCloseTo(0.057, 3);
  expect(at(95)).toBeCloseTo(0.011, 3);
  expect(at(120)).toBeLessThan(0);
});

test('the one-line rule reads the same motors within 10 %, always low, because it leaves out the air', () => {
  const { motors } = calibrated({ rider: 80, dragArea: 0.45, altitude: 500 });
  timedHill.bikes.forEach(({ bike, time }, i) => {
    const formula = formulas.find(({ id }) => id === 'motor-by-ratio');
    if (!formula) throw new Error('There is no formula “motor-by-ratio”.');
    const scope = {
      P_control: `${slow.riderPower} W`,
      t_control: `${slow.time} s`,
      t_assisted: `${time} s`,
      m_assisted: `${80 + bike} kg`,
      m_control: `${80 + slow.bike} kg`,
      P_rider: `${timedHill.riderPower} W`,
    };
    const ratio = valueIn(evaluateFormula(formula, scope), 'W') / (motors[i] ?? 0);
    expect(ratio).toBeGreaterThan(0.9);
    expect(ratio).toBeLessThan(1);
  });
});

test('35 N·m at 80 rpm are 293 W: what 300 W of the light-assist bike amount to', () => {
  const formula = formulas.find(({ id }) => id === 'torque-power');
  if (!formula) throw new Error('There is no formula “torque-power”.');
  const power = valueIn(evaluateFormula(formula, { tau: '35 N m', n: '80 rpm' }), 'W');
  // 35 × 2π × 80 / 60
  expect(power).toBeCloseTo(293.215, 3);
});

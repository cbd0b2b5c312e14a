import { expect, test } from 'vitest';
import { powerToWeight, rideClimb, timePerKilogram } from '../../calculators/model/index.ts';
import { random, relative } from '../random.ts';
import { anyAscent, PLAIN } from './climbs.ts';

test('powerToWeight(climb, rider) of 170 W, 380 W of motor, 82 kg of rider and 20 kg of bike', () => {
  const ratios = powerToWeight(PLAIN, 82);
  expect(ratios.rider).toBeCloseTo(170 / 82, 14);
  expect(ratios.assisted).toBeCloseTo(550 / 82, 14);
  expect(ratios.system).toBeCloseTo(550 / 102, 14);
  expect(ratios.unassistedEquivalent).toBeCloseTo(550 / 82, 12);
});

test('the unassisted equivalent climbs as fast on the same bike with the motor off, limit or none', () => {
  const r = random(90);
  for (let i = 0; i < 500; i++) {
    const climb = anyAscent(r);
    const { unassistedEquivalent } = powerToWeight(climb, 80);
    const alone = { ...climb, motorPower: 0, riderPower: unassistedEquivalent * 80 };
    expect(relative(rideClimb(alone).time, rideClimb(climb).time)).toBeLessThan(1e-9);
  }
});

test('nobody pedals: a motor that assists counts for nothing', () => {
  expect(powerToWeight({ ...PLAIN, riderPower: 0 }, 82)).toEqual({
    rider: 0,
    assisted: 0,
    system: 0,
    unassistedEquivalent: 0,
  });
});

test('timePerKilogram(climb) is about a hundredth of the time per percent of mass, on a steep climb', () => {
  const { time } = rideClimb(PLAIN);
  // gravity and tyres, over 95 % of the power here, are proportional to mass
  expect(timePerKilogram(PLAIN) / (time / PLAIN.mass)).toBeGreaterThan(0.9);
  expect(timePerKilogram(PLAIN) / (time / PLAIN.mass)).toBeLessThan(1);
});

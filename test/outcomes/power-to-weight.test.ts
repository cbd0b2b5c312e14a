import { expect, test } from 'vitest';
import { answer } from './outcome.ts';

test('the example: 170 W, 82 kg with kit, 380 W of motor, 20 kg of bike', () => {
  const { si } = answer('power-to-weight');
  expect(si('watts-per-kilogram')).toBeCloseTo(170 / 82, 12);
  expect(si('watts-per-kilogram-assisted')).toBeCloseTo(550 / 82, 12);
  expect(si('watts-per-kilogram-system')).toBeCloseTo(550 / 102, 12);
  expect(si('watts-per-kilogram-unassisted-equivalent')).toBeCloseTo(550 / 82, 9);
});

test('the unassisted equivalent climbs as fast on the same bike with the motor off', () => {
  for (const hill of ['', 'gain=60m', 'gain=20m&limit=20mph', 'gain=600m']) {
    const equivalent = answer('power-to-weight', hill).si('watts-per-kilogram-unassisted-equivalent');
    const alone = answer('climb-time', `${hill}&motor=none&power=${equivalent * 82}W`);
    expect(alone.si('time')).toBeCloseTo(answer('climb-time', hill).si('time'), 6);
  }
});

test('time-per-kilogram is the difference of two links', () => {
  const heavier = answer('climb-time', 'bike=21').si('time') - answer('climb-time').si('time');
  expect(answer('power-to-weight').si('time-per-kilogram')).toBeCloseTo(heavier, 9);
});

test('where the limit takes part of the motor, the equivalent is lower and the sentence says so', () => {
  const { si, said } = answer('power-to-weight', 'gain=40m');
  expect(si('watts-per-kilogram-unassisted-equivalent')).toBeLessThan(si('watts-per-kilogram-assisted'));
  expect(said).toContain('the equivalent is lower than rider and motor together');
});

test('without a motor three of the ratios are one', () => {
  const { si } = answer('power-to-weight', 'motor=none');
  expect(si('watts-per-kilogram-assisted')).toBe(si('watts-per-kilogram'));
  expect(si('watts-per-kilogram-unassisted-equivalent')).toBeCloseTo(si('watts-per-kilogram'), 12);
});

test('nobody pedals: ratios of zero, no cost of a kilogram, one sentence', () => {
  const { si, result, remarks } = answer('power-to-weight', 'power=0');
  expect(si('watts-per-kilogram-assisted')).toBe(0);
  expect(result('time-per-kilogram').reason).toBe('This power does not move the bike on this hill.');
  expect(remarks).toEqual(['Nobody pedals: a motor that assists gives nothing then.']);
});

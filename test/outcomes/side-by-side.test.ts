import { describe, expect, test } from 'vitest';
import { answer } from './outcome.ts';

describe('the example', () => {
  const { si, half, said } = answer('side-by-side');

  test('gap, distance and height behind belong together', () => {
    for (const bike of [1, 2, 3]) {
      expect(si('gap', bike)).toBeCloseTo(si('time', bike) - si('time', 3), 12);
      expect(si('distance-behind', bike)).toBeCloseTo(2400 - si('speed', bike) * si('time', 3), 9);
      expect(si('height-behind', bike)).toBeCloseTo((si('distance-behind', bike) * 235) / 2400, 9);
    }
    expect(si('gap', 3)).toBe(0);
  });

  test('each bike takes as long as it does alone', () => {
    [
      [17, 280, 360],
      [21, 400, 540],
      [24, 560, 720],
    ].forEach(([bike, motor, battery], i) => {
      const alone = answer('climb-time', `bike=${bike}&motor=${motor}&battery=${battery}`);
      for (const name of ['time', 'speed', 'battery-energy', 'battery-share'])
        expect(si(name, i + 1)).toBeCloseTo(alone.si(name), 9);
      expect(half('time', i + 1)).toBeCloseTo(alone.half('time'), 9);
    });
  });

  test('the gap is surer than either time, because surface, air and drive are shared', () => {
    for (const bike of [1, 2]) {
      expect(half('gap', bike)).toBeLessThan(half('time', bike));
      expect(half('gap', bike)).toBeLessThan(0.8 * Math.hypot(half('time', bike), half('time', 3)));
    }
    expect(said).toContain('All bikes share it, so the gaps are surer than the times.');
  });
});

test('equal bikes have no gap, and no doubt about that', () => {
  const { result } = answer('side-by-side', 'bike=20&motor=400&battery=500');
  for (const bike of [1, 2, 3]) {
    expect(result('gap', bike).si).toBe(0);
    expect(result('gap', bike)).not.toHaveProperty('high');
  }
});

test('a measured time stands, its motor is read back', () => {
  const timed = answer('side-by-side', 'time=,10:00,');
  expect(timed.si('time', 2)).toBe(600);
  expect(timed.si('speed', 2)).toBe(4);
  const power = timed.si('motor-power', 2);
  expect(answer('side-by-side', `motor=,${power}W,`).si('time', 2)).toBeCloseTo(600, 6);
  expect(timed.result('time', 2)).not.toHaveProperty('low');
  expect(timed.half('motor-power', 2)).toBeGreaterThan(10);
});

test('on a gentle grade the limit makes unequal motors almost equal, and says so', () => {
  const steep = answer('side-by-side');
  const gentle = answer('side-by-side', 'gain=50m');
  expect(gentle.si('gap', 1) / gentle.si('time', 3)).toBeLessThan(0.3 * (steep.si('gap', 1) / steep.si('time', 3)));
  expect(gentle.result('binds', 3).text).toBe('assist-limit');
  expect(gentle.said).toContain('Full is held back by the assist limit of 25');
});

test('no range reaches below nothing at the lowest limit', () => {
  // the motor's lower end was −0.7 W, and the third bike might have had −2 m still to ride
  const { outcome } = answer('side-by-side', 'limit=5');
  for (const { name, bike, low = 0 } of outcome.results) expect(low, `${name} of ${bike}`).toBeGreaterThanOrEqual(0);
});

test('a bike without a motor is never held back by a limit, however fast', () => {
  const { result, said } = answer('side-by-side', 'gain=0&power=500&motor=none,400,400');
  expect([1, 2].map((bike) => result('binds', bike).text)).toEqual(['none', 'assist-limit']);
  expect(said).not.toContain('Light is held back');
});

test('nobody pedals: no times, one sentence', () => {
  const { result, remarks, tones } = answer('side-by-side', 'power=0');
  for (const bike of [1, 2, 3])
    expect(result('time', bike).reason).toBe('This power does not move the bike on this hill.');
  expect(remarks[0]).toBe('Nobody pedals: a motor that assists gives nothing then.');
  expect(tones[0]).toBe('wrong');
});

test('a time longer than the rider alone needs is named', () => {
  const { said, si } = answer('side-by-side', 'time=50:00,,');
  expect(si('motor-power', 1)).toBeLessThan(0);
  expect(said).toContain('Light: 50:00 is longer than the rider alone would need');
});

test('a hill that cannot be: every result of every bike has the reason', () => {
  const { outcome } = answer('side-by-side', 'gain=2400m&name=A,B');
  expect(outcome.results).toHaveLength(25);
  for (const { si, reason } of outcome.results) {
    expect(si).toBeUndefined();
    expect(reason).toContain('cannot gain');
  }
});

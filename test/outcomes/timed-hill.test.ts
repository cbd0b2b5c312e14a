/** The hill of 1 mile and 550 ft, from the link to the answer: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { TIMED_HILL_LINK, timedHill } from '../reference/timed-hill.ts';
import { answer } from './outcome.ts';

const carried = (more: string): ReturnType<typeof answer> => answer('bigger-hill', `${TIMED_HILL_LINK}&${more}`);

describe('motors read back', () => {
  test.each([65, 80, 95])('rider %d kg: about 300, 450 and 620 W, within 5 %%', (rider) => {
    const { si } = carried(`rider=${rider}kg`);
    timedHill.bikes.forEach(({ motor }, i) => {
      expect(Math.abs(si('motor-power', i + 1) / motor - 1)).toBeLessThan(0.05);
    });
  });

  test('move by less than 3 % when the rider’s mass moves by 10 kg', () => {
    const [less, more] = [carried('rider=75kg'), carried('rider=85kg')];
    for (const bike of [1, 2, 3])
      expect(Math.abs(more.si('motor-power', bike) / less.si('motor-power', bike) - 1)).toBeLessThan(0.03);
  });

  test('the second control run, 300 W in 11:18, changes them by less than 1.5 %', () => {
    const one = carried('rider=80kg');
    const two = answer(
      'bigger-hill',
      `${TIMED_HILL_LINK.replace('control-time=16:43&control-power=200W', 'control-time=16:43,11:18&control-power=200W,300W')}&rider=80kg`,
    );
    for (const bike of [1, 2, 3])
      expect(Math.abs(two.si('motor-power', bike) / one.si('motor-power', bike) - 1)).toBeLessThan(0.015);
  });
});

describe('a rolling resistance that looks absurd names the rider’s mass', () => {
  test('65 kg: C_rr 0.057', () => {
    const { si, said, tones } = carried('rider=65kg');
    expect(si('rolling')).toBeCloseTo(0.057, 3);
    expect(said).toMatch(/rolling resistance of 0\.0569.*most often the rider’s mass \(65\u202fkg with kit\)/);
    expect(tones).toContain('wrong');
  });

  test('95 kg: C_rr 0.011', () => {
    const { si, said } = carried('rider=95kg');
    expect(si('rolling')).toBeCloseTo(0.011, 3);
    expect(said).toMatch(/rolling resistance of 0\.0109.*rider’s mass \(95\u202fkg with kit\)/);
  });

  test('120 kg: below zero, which no tyre does', () => {
    expect(carried('rider=120kg').said).toContain('below zero, which no tyre does');
  });

  test('80 kg: 0.030, nothing to say', () => {
    const { si, said } = carried('rider=80kg');
    expect(si('rolling')).toBeCloseTo(0.03, 3);
    expect(said).not.toContain('rider’s mass');
  });
});

describe('2,000 ft at the same grade', () => {
  const { si, half } = carried('rider=80kg&target-gain=2000ft&limit=none');

  test('the light-assist bike arrives 5:09 after the mid-assist one', () => {
    expect(si('time', 1) - si('time', 2)).toBeGreaterThan(308);
    expect(si('time', 1) - si('time', 2)).toBeLessThan(310);
  });

  test('multiplying and the model agree within 1 %', () => {
    for (const bike of [1, 2, 3])
      expect(Math.abs(si('time', bike) / si('time-proportional', bike) - 1)).toBeLessThan(0.01);
  });

  test('the times by multiplying, by hand: 7:22, 5:57 and 4:56 times 2000/550', () => {
    timedHill.bikes.forEach(({ time }, i) => {
      expect(si('time-proportional', i + 1)).toBeCloseTo((time * 2000) / 550, 9);
    });
  });

  test('the range is 1 to 2 % of the time', () => {
    for (const bike of [1, 2, 3]) {
      expect(half('time', bike) / si('time', bike)).toBeGreaterThan(0.005);
      expect(half('time', bike) / si('time', bike)).toBeLessThan(0.02);
    }
  });
});

describe('2,000 ft at 6 %', () => {
  const limited = carried('rider=80kg&target-gain=2000ft&target-grade=6&limit=25km/h');

  test('under a limit of 25 km/h the full-assist bike is held back, and the page says so', () => {
    expect(limited.result('binds', 3).text).toBe('assist-limit');
    expect(limited.said).toMatch(/Full is held back by the assist limit of 25(\.0)?\u202fkm\/h on the other hill/);
    expect(limited.si('speed', 3)).toBeLessThan(25 / 3.6);
    expect(limited.si('speed', 3)).toBeGreaterThan(23 / 3.6);
  });

  test('the others are not, and are told that the grade is too different for multiplying', () => {
    expect([1, 2].map((bike) => limited.result('binds', bike).text)).toEqual(['grade', 'grade']);
    expect(limited.said).toContain('More than a tenth apart is too different for multiplying times');
  });

  test('multiplying by height comes out too short, by the share that the page names; what the limit costs is told apart', () => {
    const free = carried('rider=80kg&target-gain=2000ft&target-grade=6&limit=none');
    const errors = [1, 2, 3].map((bike) => 1 - free.si('time-proportional', bike) / free.si('time', bike));
    const worst = Math.round(Math.max(...errors) * 100);
    expect(limited.said).toContain(`up to ${worst}`);
    expect(limited.said).toContain('too short');
  });

  test('without a limit the range is 4 to 7 % of the time', () => {
    const free = carried('rider=80kg&target-gain=2000ft&target-grade=6&limit=none');
    for (const bike of [1, 2, 3]) {
      expect(free.half('time', bike) / free.si('time', bike)).toBeGreaterThan(0.04);
      expect(free.half('time', bike) / free.si('time', bike)).toBeLessThan(0.07);
      expect(free.result('binds', bike).text).toBe('grade');
    }
  });

  test('without a limit it would take what the page says it would', () => {
    const free = carried('rider=80kg&target-gain=2000ft&target-grade=6&limit=none').si('time', 3);
    const clock = `${Math.floor(free / 60)}:${String(Math.round(free % 60)).padStart(2, '0')}`;
    expect(limited.said).toContain(`Without a limit it would take ${clock}.`);
  });
});

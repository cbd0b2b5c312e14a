import { describe, expect, test } from 'vitest';
import { climbTime } from '../../calculators/climb-time/outcome.ts';
import { readLink } from '../../calculators/scenario/vocabulary.ts';
import { relative } from '../random.ts';
import { answer } from './outcome.ts';

test('the example: where the power goes adds up, and time, speed and energy belong together', () => {
  const { si } = answer('climb-time');
  expect(si('power-gravity') + si('power-rolling') + si('power-air') + si('power-drive')).toBeCloseTo(
    si('crank-power'),
    9,
  );
  expect(si('crank-power')).toBe(550);
  expect(si('time') * si('speed')).toBeCloseTo(2400, 9);
  expect(si('vertical-speed') * si('time')).toBeCloseTo(235, 9);
  expect(si('rider-energy')).toBeCloseTo(170 * si('time'), 9);
  // 380 W through 0.8, of 540 Wh
  expect(si('battery-energy')).toBeCloseTo((380 * si('time')) / 0.8, 9);
  expect(si('battery-share')).toBeCloseTo(si('battery-energy') / (540 * 3600), 12);
  expect(si('watts-per-kilogram')).toBeCloseTo(170 / 82, 12);
  // tan of the angle whose sine is 235/2400
  expect(si('grade')).toBeCloseTo(235 / Math.sqrt(2400 ** 2 - 235 ** 2), 14);
});

test('a time comes with a range, and the sentence names what makes it', () => {
  const { half, si, said } = answer('climb-time');
  expect(half('time') / si('time')).toBeGreaterThan(0.05);
  expect(half('time') / si('time')).toBeLessThan(0.12);
  expect(said).toMatch(
    /^Most of the doubt is the surface: that alone puts the time anywhere from \d+:\d\d to \d+:\d\d\./,
  );
});

test('what no doubt moves has no range', () => {
  const { result } = answer('climb-time');
  for (const name of ['grade', 'watts-per-kilogram']) expect(result(name)).not.toHaveProperty('low');
});

describe('the assist limit', () => {
  const limited = answer('climb-time', 'gain=40m');

  test('binds where the motor fades, and the sentence says what it costs', () => {
    expect(limited.result('binds').text).toBe('assist-limit');
    const free = answer('climb-time', 'gain=40m&limit=none');
    expect(limited.si('time')).toBeGreaterThan(free.si('time'));
    const clock = `${Math.floor(free.si('time') / 60)}:${String(Math.round(free.si('time') % 60)).padStart(2, '0')}`;
    expect(limited.said).toContain(`without a limit the climb would take ${clock}`);
  });

  test('does not bind a bike without a motor, however fast', () => {
    expect(answer('climb-time', 'gain=0&motor=none&power=600').result('binds').text).toBe('none');
  });

  test('does not bind on the example hill', () => {
    expect(answer('climb-time').result('binds').text).toBe('none');
  });
});

describe('nobody pedals', () => {
  test('uphill: no time, a reason, and no effects or curve with holes', () => {
    const { result, remarks, tones } = answer('climb-time', 'power=0');
    for (const name of ['time', 'rider-energy'])
      expect(result(name).reason).toBe('This power does not move the bike on this hill.');
    expect(remarks).toEqual(['Nobody pedals: a motor that assists gives nothing then.']);
    expect(tones).toEqual(['wrong']);
    const outcome = climbTime(readLink('climb-time', 'power=0'));
    expect(outcome.effects).toEqual([]);
    expect(outcome.curve).toEqual([]);
  });

  test('downhill: the bike rolls by itself and the motor gives nothing', () => {
    const { si, said } = answer('climb-time', 'grade=-6&power=0');
    expect(si('speed')).toBeGreaterThan(8);
    expect(si('battery-energy')).toBe(0);
    expect(said).toContain('this is the bike rolling by itself');
  });
});

describe('the effects of a little more or less', () => {
  const { effects } = climbTime(readLink('climb-time', ''));
  const { si } = answer('climb-time');

  test.each([
    ['10 W of rider power', 'power=180', 'power=160'],
    ['1\u202fkg', 'bike=21', 'bike=19'],
  ])('%s is what another link would say', (change, more, less) => {
    const effect = effects.find((one) => one.change === change);
    expect(effect?.more).toBeCloseTo(answer('climb-time', more).si('time') - si('time'), 9);
    expect(effect?.less).toBeCloseTo(answer('climb-time', less).si('time') - si('time'), 9);
  });

  test('1 % of grade at the same distance', () => {
    const effect = effects.find((one) => one.change === '1 % of grade');
    const grade = si('grade') * 100;
    expect(effect?.more).toBeCloseTo(answer('climb-time', `grade=${grade + 1}`).si('time') - si('time'), 6);
    expect(effect?.less).toBeCloseTo(answer('climb-time', `grade=${grade - 1}`).si('time') - si('time'), 6);
  });
});

test('the curve falls with the motor, and passes through the answer', () => {
  const { curve } = climbTime(readLink('climb-time', 'motor=600W&limit=none'));
  expect(curve[0]?.motor).toBe(0);
  for (let i = 1; i < curve.length; i++) {
    expect(curve[i]?.motor).toBeGreaterThan(curve[i - 1]?.motor ?? 0);
    expect(curve[i]?.time).toBeLessThan(curve[i - 1]?.time ?? 0);
  }
  expect(curve[0]?.time).toBeCloseTo(answer('climb-time', 'motor=none').si('time'), 9);
  const last = curve.at(-1);
  expect(last?.time).toBeCloseTo(answer('climb-time', `motor=${last?.motor}W&limit=none`).si('time'), 9);
});

test('a climb that cannot be: every result has the reason', () => {
  const { outcome, remarks } = answer('climb-time', 'distance=200m&gain=200m');
  expect(outcome.results).toHaveLength(20);
  for (const { si, reason } of outcome.results) expect([si, reason]).toEqual([undefined, remarks[0]]);
  expect(remarks[0]).toContain('the height must be smaller than the distance along the road');
});

test('a battery that is too small, and a pace that is a walk', () => {
  expect(answer('climb-time', 'distance=40km&gain=4000m').said).toContain('the battery is empty after');
  expect(answer('climb-time', 'motor=none&power=60').said).toContain('slower than a stroll');
  expect(answer('climb-time').said).not.toMatch(/stroll|battery is empty/);
});

test('sentences follow the units of the reader', () => {
  expect(answer('climb-time', 'gain=40m&units=us').said).toMatch(/assist limit of 15\.5\u202fmph/);
});

test('proportions: twice the distance and the height take twice the time', () => {
  expect(
    relative(answer('climb-time', 'distance=4800&gain=470').si('time'), 2 * answer('climb-time').si('time')),
  ).toBeLessThan(1e-12);
});

test.each([
  ['grade=-3', 'descent'],
  ['gain=0', 'ride'],
  ['gain=100', 'climb'],
])('%s is called a %s', (query, way) => {
  const { said } = answer('climb-time', `${query}&power=250&endurance=100&limit=none`);
  expect(said).toContain(`The ${way} takes `);
});

test('a cadence that changes nothing, or not the heat, is told', () => {
  expect(answer('climb-time', 'cadence=60').said).toContain('changes nothing here while the motor’s torque is empty.');
  expect(answer('climb-time', 'cadence=60&continuous=200').said).toContain('Holding peak power works out');
  expect(answer('climb-time', 'cadence=60&continuous=200&torque=60').said).toContain('takes the two apart');
  expect(answer('climb-time', 'cadence=60&torque=60').said).not.toMatch(/cadence changes nothing|takes the two apart/);
  expect(answer('climb-time', 'continuous=200').said).not.toContain('Your cadence');
});

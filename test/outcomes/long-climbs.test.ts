/** What happens on a long climb when something runs out: battery, heat, the rider. By plain sums, not by the calculators. */
import { describe, expect, test } from 'vitest';
import { answer } from './outcome.ts';

const LONG = 'distance=12km&gain=1175m';

describe('an empty battery on the way', () => {
  // 380 W through 0.8 empty 200 Wh after 200 · 3600 · 0.8 / 380 s
  const seconds = (200 * 3600 * 0.8) / 380;
  const short = answer('climb-time', `${LONG}&battery=200Wh`);
  const helped = answer('climb-time', `${LONG}&battery=5000Wh`);
  const alone = answer('climb-time', `${LONG}&motor=none`);

  test('the part with help and the part without add up', () => {
    const share = seconds / helped.si('time');
    expect(short.si('time')).toBeCloseTo(seconds + (1 - share) * alone.si('time'), 6);
    expect(short.si('battery-energy')).toBeCloseTo(200 * 3600, 6);
    expect(short.si('battery-share')).toBeCloseTo(1, 12);
    expect(short.si('motor-power')).toBeCloseTo((380 * seconds) / short.si('time'), 9);
  });

  test('it binds from then on, and costs the difference', () => {
    expect(short.result('binds').text).toBe('battery');
    expect(short.si('binds-after')).toBeCloseTo(seconds, 6);
    expect(short.si('binds-height')).toBeCloseTo((1175 * seconds) / helped.si('time'), 6);
    expect(short.si('time-lost')).toBeCloseTo(short.si('time') - helped.si('time'), 6);
  });

  test('the pack is known to ±6 % only, and so is when it is empty', () => {
    const { low, high } = short.result('binds-after');
    expect(low).toBeLessThan(seconds * 0.94);
    expect(high).toBeGreaterThan(seconds * 1.06);
  });

  test('a reserve empties it sooner by its share', () => {
    const kept = answer('climb-time', `${LONG}&battery=200Wh&reserve=25`);
    expect(kept.si('binds-after')).toBeCloseTo(0.75 * seconds, 6);
  });

  test('where nothing binds there is no time and no height, and a reason', () => {
    for (const name of ['binds-after', 'binds-height', 'time-lost'])
      expect(helped.result(name)).toEqual({
        name,
        kind: name === 'binds-height' ? 'height' : 'duration',
        reason: 'Nothing holds it back on this climb.',
      });
  });
});

describe('heat', () => {
  // torque ratio 380/250 = 1.52; final rise (1.52² + 0.2)/1.2 = 2.092; held for 900 s · ln(2.092/1.092)
  const hold = 900 * Math.log((1.52 ** 2 + 0.2) / (1.52 ** 2 - 1));
  const hot = answer('climb-time', `${LONG}&continuous=250W&battery=5000Wh`);

  test('full output until the permitted rise, what it holds for ever after it', () => {
    const full = answer('climb-time', `${LONG}&battery=5000Wh`);
    const held = answer('climb-time', `${LONG}&battery=5000Wh&motor=250W`);
    const share = hold / full.si('time');
    expect(hot.si('binds-after')).toBeCloseTo(hold, 6);
    expect(hot.si('time')).toBeCloseTo(hold + (1 - share) * held.si('time'), 6);
    expect(hot.result('binds').text).toBe('heat');
    expect(hot.said).toContain('From there it holds 250\u202fW of its 380\u202fW.');
  });

  test('nobody published how fast a bicycle motor warms up: the hold time is known to within a factor', () => {
    const { low = 0, high = 0 } = hot.result('binds-after');
    expect(low).toBeLessThan(0.5 * hold);
    expect(high).toBeGreaterThan(2 * hold);
    const stated = answer('climb-time', `${LONG}&continuous=250W&battery=5000Wh&warm-up=15:00`);
    expect(stated.result('binds-after').low).toBeGreaterThan(low);
  });

  test('a motor that gives no more than it holds never gets there', () => {
    expect(answer('climb-time', `${LONG}&continuous=380W&battery=5000Wh`).result('binds').text).toBe('none');
  });

  test('binds each of several bikes by itself', () => {
    const { result, si } = answer('side-by-side', `${LONG}&continuous=,,300W&battery=5000Wh`);
    expect([1, 2, 3].map((bike) => result('binds', bike).text)).toEqual(['none', 'none', 'heat']);
    expect(si('time-lost', 3)).toBeGreaterThan(60);
  });

  test('on another hill, with the motor read back from the measured one', () => {
    const free = answer('bigger-hill', 'target-gain=1500m&battery=5000Wh');
    const limited = answer('bigger-hill', 'target-gain=1500m&battery=5000Wh&continuous=,,300W');
    expect(limited.result('binds', 3).text).toBe('heat');
    expect(limited.si('time', 3) - free.si('time', 3)).toBeCloseTo(limited.si('time-lost', 3), 6);
    expect(limited.si('time', 1)).toBe(free.si('time', 1));
    const k = free.si('motor-power', 3) / 300;
    expect(limited.si('binds-after', 3)).toBeCloseTo(900 * Math.log((k * k + 0.2) / (k * k - 1)), 6);
  });
});

describe('the rider', () => {
  test('who holds 150 W for long and 15 kJ above it lasts 15,000/(200 − 150) s at 200 W', () => {
    const tired = answer('climb-time', 'power=200W&endurance=150W');
    expect(tired.si('endurance-time')).toBe(300);
    expect(tired.result('binds').text).toBe('endurance');
    expect(tired.si('binds-after')).toBe(300);
    expect(tired.si('binds-height')).toBeCloseTo(300 * tired.si('vertical-speed'), 9);
    expect(tired.result('time-lost').reason).toBe('How much slower a tired rider is, the model does not say.');
    // told, not computed away
    expect(tired.si('time')).toBe(answer('climb-time', 'power=200W').si('time'));
    expect(tired.said).toContain('you hold 200\u202fW for about 5:00');
  });

  test('has time enough at or below that, or when nothing is said', () => {
    expect(answer('climb-time', 'power=150W&endurance=150W').result('endurance-time').reason).toContain(
      'hold for long',
    );
    expect(answer('climb-time').result('endurance-time').reason).toContain('Say what you hold');
    expect(answer('climb-time', 'power=200W&endurance=195W').result('binds').text).toBe('none');
  });

  test('of the other hill is asked for the power held there', () => {
    expect(answer('bigger-hill', 'endurance=150W&target-power=200W').si('endurance-time')).toBe(300);
    expect(answer('bigger-hill', 'endurance=150W&target-power=200W').result('binds', 1).text).toBe('endurance');
  });
});

describe('torque and support', () => {
  test('the least of the three counts', () => {
    // 40 N·m at 75 rpm: 40 · 2π · 75/60 W
    const torque = answer('climb-time', 'torque=40Nm');
    expect(torque.si('motor-power')).toBeCloseTo(100 * Math.PI, 9);
    expect(torque.result('binds').text).toBe('torque');
    const support = answer('climb-time', 'torque=85Nm&support=150');
    expect(support.si('motor-power')).toBeCloseTo(255, 9);
    expect(support.result('binds').text).toBe('support');
    expect(support.said).toContain('170\u202fW of yours bring out 255\u202fW of the 380\u202fW');
  });
});

test('with an assist limit no motor is faster than the limit, and the page says at which power that is', () => {
  const query = 'gain=40m&motor=';
  const times = [300, 600, 1200, 3000].map((motor) => answer('climb-time', `${query}${motor}W`).si('time'));
  for (let i = 1; i < times.length; i++) expect(times[i]).toBeLessThan(times[i - 1] ?? 0);
  const least = 2400 / (25 / 3.6);
  expect(times.at(-1)).toBeGreaterThan(least);
  const { si, said } = answer('climb-time', `${query}600W`);
  // without a limit that motor rides at exactly 25 km/h
  const there = answer('climb-time', `${query}${si('limit-power')}W&limit=none`);
  expect(there.si('time')).toBeCloseTo(least, 6);
  expect(said).toContain('more gains next to nothing, for no motor, however strong, is faster than 5:46');
  expect(answer('climb-time', 'limit=none').result('limit-power').si).toBeUndefined();
});

test('nothing binds above the top', () => {
  const query = 'distance=12km&gain=1100m&battery=300Wh&continuous=260W&warm-up=12:00&power=190W';
  const { low, high } = answer('climb-time', query).result('binds-height');
  expect(high).toBe(1100);
  expect(low).toBeGreaterThan(900);
});

import { describe, expect, test } from 'vitest';
import { random } from '../random.ts';
import { answer } from './outcome.ts';

const G = 9.80665;
/** A motor of 50 N·m, 34 to 51 teeth, a wheel of 0.35 m, 110 kg in all, C_rr 0.01, nothing lost. */
const PLAIN = 'torque=50Nm&ring=34&sprocket=51&wheel=350mm&rider=90kg&bike=20kg&rolling=0.01&drive=100';

/** The other way round: the force that a grade takes, with the angle itself. */
const forceOn = (grade: number, mass: number, rolling: number): number =>
  mass * G * (Math.sin(Math.atan(grade)) + rolling * Math.cos(Math.atan(grade)));

describe('50 N·m through 34/51, without a rider', () => {
  const { si } = answer('gears-and-restart', `${PLAIN}&power=0`);

  test('are 75 N·m at the wheel', () => {
    expect(si('wheel-torque')).toBeCloseTo(75, 12);
  });

  test('hold 19.2 %: 75/0.35 N over 110 × 9.80665 N is 0.19865 = sin θ + 0.01 cos θ', () => {
    // asin(0.19865 / √1.0001) − atan 0.01 = 0.18998 rad, tan 0.1923
    expect(si('steepest-motor')).toBeCloseTo(0.1923, 4);
    expect(forceOn(si('steepest-motor'), 110, 0.01)).toBeCloseTo(75 / 0.35, 9);
  });

  test('in a hub hold 12.3 %: 50/0.35 N is 0.13243 of the weight', () => {
    expect(si('steepest-hub')).toBeCloseTo(0.1234, 4);
    expect(forceOn(si('steepest-hub'), 110, 0.01)).toBeCloseTo(50 / 0.35, 9);
  });
});

test('with a rider, by hand: 120 W at 60 rpm are 19.099 N·m, the push is 0.4 × 90 kg × g × 0.17 m', () => {
  const { si, result } = answer(
    'gears-and-restart',
    `${PLAIN}&power=120&cadence=60&push=40&crank=170mm&motor=600&support=500&grade=20`,
  );
  const legs = 120 / (2 * Math.PI);
  const through = 51 / 34 / 0.35;
  expect(si('wheel-force')).toBeCloseTo((50 + legs) * through, 9);
  expect(forceOn(si('steepest-held'), 110, 0.01)).toBeCloseTo((50 + legs) * through, 9);
  expect(forceOn(si('rider-alone'), 110, 0.01)).toBeCloseTo(legs * through, 9);
  const push = 0.4 * 90 * G * 0.17;
  expect(forceOn(si('steepest-restart'), 110, 0.01)).toBeCloseTo((50 + push) * through, 9);
  // in the hub the motor does not pass the gear, the legs do
  expect(forceOn(si('steepest-hub-held'), 110, 0.01)).toBeCloseTo(50 / 0.35 + legs * through, 9);
  expect(forceOn(si('steepest-hub-restart'), 110, 0.01)).toBeCloseTo(50 / 0.35 + push * through, 9);
  expect(si('force-needed')).toBeCloseTo(forceOn(0.2, 110, 0.01), 9);
  // one turn of the crank is 34/51 turns of a wheel of 2π × 0.35 m: 1.466 m each second
  expect(si('speed')).toBeCloseTo(1.466, 3);
  expect(result('verdict').text).toBe('holds-and-restarts');
});

test('chain losses touch what passes the chain, not a hub', () => {
  const lossless = answer('gears-and-restart', `${PLAIN}&power=0`);
  const lossy = answer('gears-and-restart', `${PLAIN.replace('drive=100', 'drive=90')}&power=0`);
  expect(lossy.si('wheel-torque')).toBeCloseTo(67.5, 12);
  expect(lossy.si('steepest-motor')).toBeLessThan(lossless.si('steepest-motor'));
  expect(lossy.si('steepest-hub')).toBe(lossless.si('steepest-hub'));
  expect(lossless.result('wheel-torque')).toMatchObject({ low: 73.5, high: 75 });
});

describe('the motor gives no more than peak and support allow', () => {
  test('at a quick cadence its peak leaves less than its torque: 300 W at 90 rpm are 31.83 N·m', () => {
    const { si } = answer('gears-and-restart', `${PLAIN}&power=120&cadence=90&motor=300&support=500`);
    const torque = (300 + 120) / (2 * Math.PI * 1.5);
    expect(si('wheel-force')).toBeCloseTo((torque * 51) / 34 / 0.35, 9);
    // the first push is at no cadence at all, so the peak does not matter to it
    const slow = answer('gears-and-restart', `${PLAIN}&power=120&cadence=40&motor=300&support=500`);
    expect(si('steepest-restart')).toBe(slow.si('steepest-restart'));
  });

  test('gentle legs get support × their power: 100 % of 60 W', () => {
    const { si } = answer('gears-and-restart', `${PLAIN}&power=60&cadence=60&support=100`);
    expect(si('wheel-force')).toBeCloseTo(((120 / (2 * Math.PI)) * 51) / 34 / 0.35, 9);
  });

  test('a gentle push gets support × its torque: at 10 % of 90 kg on 165 mm', () => {
    const { si } = answer('gears-and-restart', `${PLAIN}&push=10&support=100`);
    const push = 0.1 * 90 * G * 0.165;
    expect(forceOn(si('steepest-restart'), 110, 0.01)).toBeCloseTo((2 * push * 51) / 34 / 0.35, 9);
  });
});

test('at random: a lower gear, more torque, a lighter bike never lower a ramp; a hub never gains from the gear', () => {
  const r = random(712);
  for (let i = 0; i < 300; i++) {
    const of = (torque: number, ring: number, bike: number) =>
      answer(
        'gears-and-restart',
        `torque=${torque}Nm&ring=${ring}&bike=${bike}kg&motor=3000&support=1000&power=${150}W&cadence=50&sprocket=48`,
      );
    const [torque, ring, bike] = [r.between(10, 70), r.whole(28, 50), r.between(10, 40)];
    const { si } = of(torque, ring, bike);
    const names = ['steepest-held', 'steepest-restart', 'steepest-motor', 'steepest-hub', 'steepest-hub-held'] as const;
    for (const more of [of(torque + 5, ring, bike), of(torque, ring, bike - 4)])
      for (const name of names) expect(more.si(name), name).toBeGreaterThan(si(name));
    const lower = of(torque, ring - 4, bike);
    for (const name of ['steepest-held', 'steepest-restart', 'steepest-motor'] as const)
      expect(lower.si(name), name).toBeGreaterThan(si(name));
    expect(lower.si('steepest-hub')).toBe(si('steepest-hub'));
    expect(si('steepest-held')).toBeGreaterThan(Math.max(si('steepest-motor'), si('rider-alone')));
    // through a gear below 1 the crank beats the hub, above 1 the hub beats the crank
    if (ring !== 48) expect(si('steepest-motor') > si('steepest-hub')).toBe(0.96 * (48 / ring) > 1);
  }
});

describe('the verdict', () => {
  const word = (query: string) => answer('gears-and-restart', query).result('verdict').text;

  test('turns at the steepest ramp of each kind', () => {
    const { si } = answer('gears-and-restart');
    const held = si('steepest-held');
    expect(held).toBeLessThan(si('steepest-restart'));
    expect(word(`grade=${100 * held - 0.01}`)).toBe('holds-and-restarts');
    expect(word(`grade=${100 * held + 0.01}`)).toBe('too-steep');
    const weak = answer('gears-and-restart', 'push=5').si('steepest-restart');
    expect(word(`push=5&grade=${100 * weak - 0.01}`)).toBe('holds-and-restarts');
    expect(word(`push=5&grade=${100 * weak + 0.01}`)).toBe('holds');
  });

  test('is put into words', () => {
    expect(answer('gears-and-restart', 'push=5&grade=35').said).toContain('if you stop, there is no starting again');
    expect(answer('gears-and-restart', 'grade=45').said).toContain('The first push would go, but');
    expect(answer('gears-and-restart').said).toContain(
      'takes 224\u202fN at the ground; you and the motor have 373\u202fN',
    );
  });

  test('near the edge says that it may go or not', () => {
    expect(answer('gears-and-restart', 'grade=36.5').said).toContain('36.5\u202f% lies inside the range');
    expect(answer('gears-and-restart', 'grade=20').said).not.toContain('lies inside the range');
  });

  test('a slope that falls needs nothing', () => {
    const { said, si } = answer('gears-and-restart', 'grade=-10');
    expect(si('force-needed')).toBeLessThan(0);
    expect(said).toContain('the bike rolls by itself');
    expect(word('grade=-10&power=0&push=0')).toBe('holds-and-restarts');
  });
});

describe('the ranges', () => {
  test('are of surface and chain: by hand, each end of both, in squares', () => {
    const { result } = answer('gears-and-restart', 'rolling=0.02&drive=95');
    const at = (rolling: number, drive: number) =>
      answer('gears-and-restart', `rolling=${rolling}&drive=${drive}`).si('steepest-held');
    const centre = at(0.02, 95);
    const { low = 0, high = 0, si = 0 } = result('steepest-held');
    expect(si).toBe(centre);
    // a stated C_rr is known to 30 %, the chain to two points
    expect(high).toBeCloseTo(centre + Math.hypot(at(0.014, 95) - centre, at(0.02, 97) - centre), 12);
    expect(low).toBeCloseTo(centre - Math.hypot(at(0.026, 95) - centre, at(0.02, 93) - centre), 12);
  });

  test('the surface makes most of it on a trail that nobody surveyed', () => {
    expect(answer('gears-and-restart').said).toContain('Most of the doubt is the surface');
  });
});

test('a force larger than the weight: no value, a reason, no number without end', () => {
  const { outcome, result, said } = answer(
    'gears-and-restart',
    'torque=250&ring=20&sprocket=52&rider=40&bike=10&motor=3000&support=1000&grade=60',
  );
  for (const name of ['steepest-held', 'steepest-restart', 'steepest-motor', 'steepest-hub'])
    expect(result(name).reason).toBe('That force carries more than the weight: no ramp is too steep for it.');
  expect(result('verdict').text).toBe('holds-and-restarts');
  expect(said).not.toMatch(/NaN|Infinity|By itself it holds/);
  for (const { si, text, reason } of outcome.results) expect(si ?? text ?? reason).toBeDefined();
});

test('where only the lighter end of the range carries the weight, that side is left open', () => {
  // 0.995 of what carries √(1 + C²) of the weight
  const ratio = (0.995 * 102 * G * Math.hypot(1, 0.028) * 0.35) / 0.96;
  const { result } = answer('gears-and-restart', `power=0&ring=20&sprocket=80&torque=${ratio / 4}Nm&motor=3000`);
  expect(result('steepest-motor').si).toBeGreaterThan(5);
  expect(result('steepest-motor').low).toBeLessThan(5);
  expect(result('steepest-motor')).not.toHaveProperty('high');
});

test('nobody pedals: the motor gives nothing, and the page says so', () => {
  const { si, said, tones, result } = answer('gears-and-restart', 'power=0');
  expect(si('wheel-force')).toBe(0);
  // not even the level: it rolls from a slope of C_rr on
  expect(si('steepest-held')).toBeCloseTo(-0.028, 12);
  expect(si('rider-alone')).toBeCloseTo(-0.028, 12);
  expect(result('verdict').text).toBe('too-steep');
  expect(said).toContain('Nobody pedals');
  expect(tones).toContain('wrong');
});

test('no motor: the rider alone', () => {
  const { si, said } = answer('gears-and-restart', 'motor=none');
  expect(si('steepest-held')).toBe(si('rider-alone'));
  expect(si('wheel-torque')).toBe(0);
  expect(said).toContain('you have 116\u202fN in the lowest gear');
  expect(said).not.toContain('the motor’s');
});

test('a gear in which the wheel outruns the crank: the hub is no worse, and the sentence does not say that it is', () => {
  const { si, said } = answer('gears-and-restart', 'ring=44&sprocket=40');
  expect(si('steepest-hub')).toBeGreaterThan(si('steepest-motor'));
  expect(said).toContain('gains nothing over a hub of 60\u202fN·m');
});

test('grip and the front wheel are named first, always', () => {
  for (const query of ['', 'grade=2', 'motor=none', 'power=0', 'grade=45'])
    expect(answer('gears-and-restart', query).remarks[0]).toContain('Whether the tyre grips');
});

test('a crawl is named as one', () => {
  expect(answer('gears-and-restart', 'cadence=30').said).toContain('too slow for most people to keep their balance');
  expect(answer('gears-and-restart', 'cadence=60').said).not.toContain('balance');
});

test('what cannot be read computes with the default; units of both systems agree', () => {
  const example = answer('gears-and-restart');
  const nonsense = answer('gears-and-restart', 'torque=lots&ring=-3&wheel=9m&push=900&grade=steep');
  expect(nonsense.outcome.results).toEqual(example.outcome.results);
  const us = answer('gears-and-restart', `torque=${60 / 1.3558179483314003}lb-ft&wheel=${350 / 25.4}in&units=us`);
  expect(us.si('steepest-held')).toBeCloseTo(example.si('steepest-held'), 12);
});

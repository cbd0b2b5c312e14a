import { describe, expect, test } from 'vitest';
import { answer } from './outcome.ts';

const BIKES = [1, 2, 3];

describe('ranges', () => {
  const none = answer('bigger-hill', 'control-time=none');
  const one = answer('bigger-hill');

  test('a control run at least halves the doubt about the motors', () => {
    for (const bike of BIKES) expect(one.half('motor-power', bike)).toBeLessThan(none.half('motor-power', bike) / 2);
  });

  test('a second control run narrows the rolling resistance', () => {
    // both runs as the calibrated hill would have them, so that only their number differs
    const two = answer('bigger-hill', 'control-time=28:40,28:40&control-power=170,170&control-bike=13');
    expect(two.half('rolling')).toBeLessThan(one.half('rolling'));
  });

  test('gaps are surer than the times they come from, unknown surface or known', () => {
    const shared = answer('bigger-hill', 'target-grade=6&limit=none');
    for (const bike of [1, 2]) {
      expect(shared.half('gap', bike)).toBeLessThan(shared.half('time', bike));
      expect(shared.half('gap', bike)).toBeLessThan(Math.hypot(shared.half('time', bike), shared.half('time', 3)));
    }
  });

  test('without a control run the page says what one would be worth', () => {
    expect(none.said).toContain('A run without assistance would narrow them.');
    expect(one.said).not.toContain('Without a control run');
  });

  test('every range holds its value, and time-proportional has none', () => {
    for (const { low, high, si, name } of [...one.outcome.results, ...none.outcome.results]) {
      if (si === undefined) continue;
      expect(low ?? si).toBeLessThanOrEqual(si);
      expect(high ?? si).toBeGreaterThanOrEqual(si);
      if (name === 'time-proportional') expect([low, high]).toEqual([undefined, undefined]);
    }
  });

  test('a stated surface of the other hill is surer than an unsaid one', () => {
    const unsaid = answer('bigger-hill', 'target-grade=6&limit=none');
    const stated = answer('bigger-hill', `target-grade=6&limit=none&target-rolling=0.02`);
    expect(stated.half('time', 1)).toBeLessThan(unsaid.half('time', 1));
  });

  test('the doubt that the page names is one that it lists, not an internal word', () => {
    for (const query of [
      '',
      'control-time=none',
      'target-grade=6',
      'target-grade=6&target-rolling=0.02',
      'target-distance=9km',
    ]) {
      const sentence = answer('bigger-hill', query).remarks.find((text) => text.startsWith('Most of the doubt'));
      expect(sentence, query).toMatch(/^Most of the doubt about the times is (the|how) [a-z’ ]+\.$/);
    }
  });
});

test('the range of a motor is what links with one input misread at a time say, added in squares', () => {
  const [rider, power, bike, control] = [82, 170, 17, 13];
  const motor = (query: string): number => answer('bigger-hill', query).si('motor-power', 1);
  const now = motor('');
  // what may be wrong by how much is the table of doubts on the model's page
  const misread: [string, string][] = [
    ['drag=0.35', 'drag=0.55'],
    ['drive=94', 'drive=98'],
    [`power=${power * 0.98}&control-power=${power * 0.98}`, `power=${power * 1.02}&control-power=${power * 1.02}`],
    [`rider=${rider - 1}`, `rider=${rider + 1}`],
    [`distance=${2400 * 0.99}`, `distance=${2400 * 1.01}`],
    [`gain=${235 * 0.97}`, `gain=${235 * 1.03}`],
    [`bike=${bike - 0.3},,`, `bike=${bike + 0.3},,`],
    ['time=11:43,,', 'time=11:45,,'],
    [`control-bike=${control - 0.3}`, `control-bike=${control + 0.3}`],
    [`control-power=${power * 0.976}`, `control-power=${power * 1.024}`],
    ['control-time=28:39', 'control-time=28:41'],
    // how steadily that bike alone was ridden: the rider's watts go over to the motor
  ];
  let [up2, down2] = [(power * 0.024) ** 2, (power * 0.024) ** 2];
  for (const pair of misread) {
    const shifts = pair.map((query) => motor(query) - now);
    up2 += Math.max(0, ...shifts) ** 2;
    down2 += Math.min(0, ...shifts) ** 2;
  }
  const { low = 0, high = 0 } = answer('bigger-hill').result('motor-power', 1);
  expect(high - now).toBeCloseTo(Math.sqrt(up2), 9);
  expect(now - low).toBeCloseTo(Math.sqrt(down2), 9);
});

describe('a run inside the fade of its limit', () => {
  // 2.4 km in 6:00 is 24 km/h: half of the fade before 25 km/h
  const fading = answer('bigger-hill', 'time=11:44,9:35,6:00');

  test('gives a lower bound for the motor, and says so', () => {
    const held = fading.result('motor-held', 3);
    // all that is certain is the mean, and of that its lower end
    expect(held.low).toBe(fading.result('motor-power', 3).low);
    expect(held.high).toBeUndefined();
    expect(held.si).toBe(fading.si('motor-power', 3));
    expect(fading.said).toMatch(
      /Full was ridden so close to its assist limit that the motor was already fading: .* is a lower bound/,
    );
  });

  test('the others keep both sides', () => {
    const held = fading.result('motor-held', 1);
    expect(held.low).toBeLessThan(held.si ?? 0);
    expect(held.high).toBeGreaterThan(held.si ?? 0);
    expect(fading.si('motor-held', 1)).toBe(fading.si('motor-power', 1));
  });

  test('above its limit a motor gives nothing, so a time there contradicts the limit', () => {
    const { said, tones } = answer('bigger-hill', 'time=11:44,9:35,5:40');
    expect(said).toContain('Full was measured at 25.4\u202fkm/h, above its assist limit of 25\u202fkm/h');
    expect(tones).toContain('wrong');
  });

  test('on a steeper hill the lower bound gives no less time than twice that motor would', () => {
    const steeper = answer('bigger-hill', 'time=11:44,9:35,6:00&target-grade=14');
    const straight = answer('bigger-hill', 'time=11:44,9:35,6:00&target-grade=14&limit=none');
    expect(steeper.si('time', 3)).toBeGreaterThanOrEqual(straight.si('time', 3));
  });

  test('carried to the same grade it is as fast as it was', () => {
    expect(fading.si('speed', 3) * 3.6).toBeCloseTo(24, 6);
    expect(fading.result('binds', 3).text).toBe('assist-limit');
  });
});

describe('inputs that contradict each other', () => {
  test('a bike slower than the rider alone has a motor below zero, named as such, and is carried without one', () => {
    const { si, said, tones } = answer('bigger-hill', 'time=40:00,9:35,7:58');
    expect(si('motor-power', 1)).toBeLessThan(0);
    expect(said).toContain('Light: 40:00 is longer than the rider alone would need');
    expect(tones).toContain('wrong');
    expect(si('battery-energy', 1)).toBe(0);
  });

  test.each([
    ['gain=3000m', 'A road of 2.4\u202fkm cannot gain 3\u202f000\u202fm'],
    ['target-distance=400m&target-gain=600m', 'A road of 400\u202fm cannot gain 600\u202fm'],
    ['target-grade=0', 'needs a grade above zero'],
    ['target-gain=0', 'A hill that gains no height needs its distance'],
  ])('%s: no result has a value, all have the reason', (query, reason) => {
    const { outcome, remarks, tones } = answer('bigger-hill', query);
    expect(outcome.results.length).toBe(40);
    for (const result of outcome.results) {
      expect(result.si).toBeUndefined();
      expect(result.reason).toContain(reason);
    }
    expect(remarks).toEqual([outcome.results[0]?.reason]);
    expect(tones).toEqual(['wrong']);
  });
});

test('nobody pedals on the other hill: no time, and the sentence says why', () => {
  const { result, said } = answer('bigger-hill', 'target-power=0');
  expect(result('time', 1)).toMatchObject({ reason: 'This bike does not get up the other hill with that power.' });
  expect(said).toContain('Light: nobody pedals, and a motor that assists gives nothing then.');
});

test('an other hill that falls is ridden down', () => {
  const { si } = answer('bigger-hill', 'target-distance=3km&target-grade=-5');
  expect(si('target-grade')).toBeCloseTo(-0.05, 12);
  expect(si('speed', 1)).toBeGreaterThan(5);
});

test('a measured hill without height has no ratio, and its own reason', () => {
  const { result, si } = answer(
    'bigger-hill',
    'gain=0&control-time=none&time=6:00,6:00,6:00&limit=none&target-distance=5km&target-grade=4',
  );
  expect(result('time-proportional', 1).reason).toBe('Multiplying heights needs two hills that gain height.');
  expect(si('time', 1)).toBeGreaterThan(360);
});

test('a battery too small for the other hill is named', () => {
  const { si, said, result } = answer('bigger-hill', 'battery=100Wh&target-gain=1500m');
  expect(si('battery-share', 1)).toBe(1);
  expect(result('binds', 1).text).toBe('battery');
  expect(said).toMatch(/Light on the other hill: the battery is empty after \d+:\d\d, \d+\u202fm up\./);
});

test('two to six bikes and one to six control runs all have their results', () => {
  const { outcome, si } = answer(
    'bigger-hill',
    'name=a,b,c,d,e,f&time=12:00,11:00,10:00,9:00,8:00,7:00&control-time=28:00,29:00,30:00,31:00,32:00,33:00&control-power=170',
  );
  expect(outcome.results.filter(({ name }) => name === 'time')).toHaveLength(6);
  expect(si('gap', 6)).toBe(0);
  for (let bike = 1; bike < 6; bike++) expect(si('gap', bike)).toBeGreaterThan(si('gap', bike + 1));
});

describe('several control runs', () => {
  const first = 'control-power=212W,209W&control-bike=12.4kg&rider=76kg&distance=1.85km&gain=196m&power=210W';

  test('that agree within their steadiness draw no word', () => {
    expect(answer('bigger-hill', `${first}&control-time=16:21,16:38`).said).not.toContain('disagree');
  });

  test('of which one has minutes and seconds swapped disagree, and the page says so', () => {
    const { said, tones } = answer('bigger-hill', `${first}&control-time=21:16,16:38`);
    expect(said).toContain('The control runs disagree');
    expect(tones).toContain('wrong');
  });
});

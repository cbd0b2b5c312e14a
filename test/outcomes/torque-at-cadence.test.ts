import { describe, expect, test } from 'vitest';
import { random } from '../random.ts';
import { answer } from './outcome.ts';

/** With so much support the legs never limit. */
const STRONG = 'power=400W&support=1000';

describe('the example: 70 rpm, 170 W', () => {
  const { si, result, said } = answer('torque-at-cadence');

  test('by hand: each motor gives the least of its three powers', () => {
    // 60 N·m × 2π × 70/60 per s = 140 π W; 3.4 × 170 = 578 W; peak 500 W
    expect(si('torque-limit', 1)).toBeCloseTo(140 * Math.PI, 9);
    expect(si('support-limit', 1)).toBeCloseTo(578, 9);
    expect(si('motor-power', 1)).toBeCloseTo(439.823, 3);
    expect(result('binds', 1).text).toBe('torque');
    // 85 × 2π × 70/60 = 623.1 W; 4 × 170 = 680 W; peak 600 W
    expect(si('torque-limit', 2)).toBeCloseTo(623.083, 3);
    expect(si('support-limit', 2)).toBeCloseTo(680, 9);
    expect(si('motor-power', 2)).toBe(600);
    expect(result('binds', 2).text).toBe('peak');
  });

  test('85 N·m reach 600 W at 67.4 rpm: 600 ÷ (2π × 85) × 60', () => {
    expect(si('torque-cadence', 2)).toBeCloseTo(67.407, 3);
    expect(said).toContain('Motor B gives its peak');
  });

  test('the rider power that brings out the peak: 500 ÷ 3.4 and 600 ÷ 4', () => {
    expect(si('rider-for-peak', 1)).toBeCloseTo(147.059, 3);
    expect(si('rider-for-peak', 2)).toBeCloseTo(150, 9);
  });

  test('figures taken as true have no range', () => {
    for (const bike of [1, 2])
      for (const name of ['motor-power', 'torque-limit', 'support-limit', 'torque-cadence', 'rider-for-peak']) {
        expect(result(name, bike)).not.toHaveProperty('low');
        expect(result(name, bike)).not.toHaveProperty('high');
      }
  });
});

test('70 and 90 N·m with a common cap of 500 W, from 30 to 80 rpm: 90/70 apart below, equal above', () => {
  for (let cadence = 30; cadence <= 80; cadence += 1) {
    const { si, said } = answer('torque-at-cadence', `${STRONG}&torque=70,90&motor=500&cadence=${cadence}`);
    const [weak, strong] = [si('motor-power', 1), si('motor-power', 2)];
    // 500 W at 70 N·m is 68.2 rpm, at 90 N·m 53.1 rpm
    if (cadence <= 53) expect(strong / weak).toBeCloseTo(90 / 70, 12);
    else if (cadence <= 68) expect([weak < 500, strong]).toEqual([true, 500]);
    else {
      expect([weak, strong]).toEqual([500, 500]);
      expect(said).toContain('All give the same here, however much their torques differ.');
    }
  }
});

test('each curve bends where torque stops limiting, and passes through the answer', () => {
  const { outcome, si } = answer('torque-at-cadence', 'torque=60,85,30&power=120W&cadence=55');
  const { motors } = outcome as unknown as { motors: { curve: { cadence: number; power: number }[] }[] };
  motors.forEach(({ curve }, i) => {
    const turning = si('torque-cadence', i + 1);
    const after = curve.findIndex(({ cadence }) => cadence > 55);
    const [a, b] = [curve[after - 1], curve[after]];
    if (!a || !b) throw new Error('The curve ends before the cadence.');
    const between = a.power + ((b.power - a.power) * (55 - a.cadence)) / (b.cadence - a.cadence);
    expect(between).toBeCloseTo(si('motor-power', i + 1), 9);
    if (turning < 120) expect(curve.map(({ cadence }) => cadence)).toContain(turning);
    expect(curve.at(-1)?.cadence).toBe(120);
  });
});

test('for a faster rider the curve reaches to the greatest cadence', () => {
  const { outcome } = answer('torque-at-cadence', 'cadence=140');
  const { motors } = outcome as unknown as { motors: { curve: { cadence: number }[] }[] };
  expect(motors.map(({ curve }) => curve.at(-1)?.cadence)).toEqual([160, 160]);
});

test('at random: never more than any of the three, one of them reached; more of anything never lowers the output', () => {
  const r = random(711);
  for (let i = 0; i < 400; i++) {
    const of = (torque: number, motor: number, support: number, power: number, cadence: number) =>
      answer(
        'torque-at-cadence',
        `torque=${torque}Nm&motor=${motor}W&support=${100 * support}%25&power=${power}W&cadence=${cadence}rpm`,
      );
    const [torque, motor, support] = [r.between(5, 240), r.between(1, 2900), r.between(0, 9)];
    const [power, cadence] = [r.between(1, 1400), r.between(20, 150)];
    const { si, result } = of(torque, motor, support, power, cadence);
    const limits = { torque: (torque * 2 * Math.PI * cadence) / 60, support: support * power, peak: motor };
    const least = Math.min(...Object.values(limits));
    expect(si('motor-power', 1)).toBeCloseTo(least, 8);
    expect(limits[result('binds', 1).text as keyof typeof limits]).toBeCloseTo(least, 8);
    for (const more of [
      of(torque + 10, motor, support, power, cadence),
      of(torque, motor + 100, support, power, cadence),
      of(torque, motor, support + 1, power, cadence),
      of(torque, motor, support, power + 100, cadence),
      of(torque, motor, support, power, cadence + 10),
    ])
      expect(more.si('motor-power', 1)).toBeGreaterThanOrEqual(si('motor-power', 1) - 1e-9);
    // the cadence and the rider power that it names are those where the limit changes hands
    if (support > 0.1) {
      const turning = si('torque-cadence', 1);
      const ceiling = Math.min(motor, support * power);
      expect((torque * 2 * Math.PI * turning) / 60).toBeCloseTo(ceiling, 8);
      expect(support * si('rider-for-peak', 1)).toBeCloseTo(motor, 8);
    }
  }
});

describe('gentle legs', () => {
  const { result, si, said } = answer('torque-at-cadence', 'power=80W&cadence=80');

  test('never see the peak, and hear what they would need', () => {
    expect([1, 2].map((bike) => result('binds', bike).text)).toEqual(['support', 'support']);
    expect(si('motor-power', 1)).toBeCloseTo(272, 9); // 3.4 × 80
    expect(said).toContain('Motor A adds 340\u202f% of your power and no more');
    expect(said).toContain('it needs 147\u202fW from you');
  });

  test('and the torque that they can use is reached at a lower cadence', () => {
    // 272 W ÷ (2π × 60) × 60
    expect(si('torque-cadence', 1)).toBeCloseTo(43.29, 2);
    const slow = answer('torque-at-cadence', 'power=80W&cadence=40');
    expect(slow.result('binds', 1).text).toBe('torque');
    expect(slow.said).toContain('from there on it gives 272\u202fW, all that it adds to your power');
  });
});

test('a torque that never reaches its peak at a cadence people keep is named as that', () => {
  // 500 W ÷ (2π × 30) × 60 = 159 rpm
  expect(answer('torque-at-cadence', 'torque=30').said).toContain(
    'Motor A is held by its torque at any cadence that people keep on a climb: only at 159\u202frpm would it give 500\u202fW.',
  );
});

test('nobody pedals: no output, one sentence', () => {
  const { si, result, remarks, tones } = answer('torque-at-cadence', 'power=0');
  for (const bike of [1, 2]) {
    expect(si('motor-power', bike)).toBe(0);
    expect(si('support-limit', bike)).toBe(0);
    expect(result('torque-cadence', bike).reason).toContain('gives nothing here');
  }
  expect(si('rider-for-peak', 2)).toBe(150);
  expect(remarks).toEqual(['Nobody pedals: a motor that assists gives nothing then.']);
  expect(tones).toEqual(['wrong']);
});

test('without support no rider power is enough, and the answer says so instead of a number without end', () => {
  const { si, result, said } = answer('torque-at-cadence', 'support=0,400');
  expect(si('motor-power', 1)).toBe(0);
  expect(result('binds', 1).text).toBe('support');
  expect(result('rider-for-peak', 1).reason).toBe('Without support no rider power brings out the peak.');
  expect(said).toContain('Motor A adds nothing to your power.');
  expect(si('motor-power', 2)).toBe(600);
});

test('no motor: nothing to give, no peak to reach', () => {
  const { si, result, said } = answer('torque-at-cadence', 'motor=none,600');
  expect(si('motor-power', 1)).toBe(0);
  expect(result('rider-for-peak', 1).reason).toBe('A bike without a motor has no peak.');
  expect(result('torque-cadence', 1).reason).toContain('gives nothing here');
  expect(said).not.toContain('Motor A');
});

test('what cannot be read computes with the default', () => {
  const { si } = answer('torque-at-cadence', 'torque=lots,85&motor=-5W,600&cadence=999');
  const example = answer('torque-at-cadence');
  for (const bike of [1, 2]) expect(si('motor-power', bike)).toBe(example.si('motor-power', bike));
});

test('one motor or six', () => {
  expect(answer('torque-at-cadence', 'motor=500W').outcome.results).toHaveLength(6);
  expect(answer('torque-at-cadence', 'torque=60,60,60,60,60,60,60').outcome.results).toHaveLength(36);
});

test('in pound-feet as in newton metres', () => {
  const metric = answer('torque-at-cadence', 'torque=85Nm');
  const us = answer('torque-at-cadence', `torque=${85 / 1.3558179483314003}lb-ft&units=us`);
  expect(us.si('motor-power', 1)).toBeCloseTo(metric.si('motor-power', 1), 9);
});

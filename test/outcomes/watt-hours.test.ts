import { describe, expect, test } from 'vitest';
import { formatQuantity } from '../../calculators/quantities/index.ts';
import { random, relative } from '../random.ts';
import { answer } from './outcome.ts';

const WH = 3600;
const wattHours = (query = '') => answer('watt-hours', query);

describe('the example', () => {
  const { si } = wattHours();
  const time = answer('climb-time').si('time');

  test('takes 380 W through 0.8 and 5 W for display and lights, for as long as the climb lasts', () => {
    expect(si('time')).toBe(time);
    expect(si('energy-per-climb')).toBeCloseTo((380 / 0.8 + 5) * time, 6);
    for (const name of ['needed-energy', 'battery-energy']) expect(si(name)).toBe(si('energy-per-climb'));
    expect(si('energy-per-distance')).toBeCloseTo(si('battery-energy') / 2400, 9);
  });

  test('has 540 Wh on the label, 486 Wh above its reserve of a tenth', () => {
    expect(si('nominal-energy')).toBe(540 * WH);
    expect(si('usable-energy')).toBeCloseTo(486 * WH, 6);
    expect(si('battery-share')).toBeCloseTo(si('battery-energy') / (540 * WH), 12);
    expect(si('battery-left')).toBeCloseTo(1 - si('battery-energy') / (486 * WH), 12);
    expect(si('climbs')).toBeCloseTo((486 * WH) / si('battery-energy'), 12);
  });

  test('lifts 102 kg by 235 m; the legs do 170 of 550 W', () => {
    // 102 kg × 9.80665 m/s² × 235 m
    expect(si('lift-energy')).toBeCloseTo(235_065.4005, 3);
    expect(si('rider-share')).toBeCloseTo(170 / 550, 12);
    expect(si('watts-per-kilogram')).toBeCloseTo(170 / 82, 12);
    expect(si('watts-per-kilogram-unassisted-equivalent')).toBeCloseTo(550 / 82, 9);
  });

  test('is empty nowhere, for a reason; without readings a gauge says nothing', () => {
    const { result } = wattHours();
    for (const name of ['empty-at', 'empty-distance', 'empty-lap', 'time-without-help'])
      expect(result(name)).toMatchObject({ reason: 'It lasts to the top.' });
    for (const name of ['gauge-energy', 'gauge-energy-per-distance', 'implied-efficiency'])
      expect(result(name)).toMatchObject({ reason: 'This needs the gauge before and after.' });
    expect(result('binds').text).toBe('none');
  });
});

describe('what is known from elsewhere', () => {
  test.each([
    ['volts=36V&amp-hours=15Ah', 540],
    ['volts=48V&amp-hours=11.25Ah', 540],
    ['volts=36V&amp-hours=10000mAh', 360],
  ])('%s is %d Wh', (query, label) => {
    expect(relative(wattHours(query).si('nominal-energy'), label * WH)).toBeLessThan(1e-12);
  });

  test('10 kg over 1,000 m are 27.2 Wh of lift', () => {
    const hill = 'distance=10.2km&gain=1000m';
    const more = wattHours(`${hill}&bike=30kg`).si('lift-energy') - wattHours(`${hill}&bike=20kg`).si('lift-energy');
    // 10 kg × 9.80665 m/s² × 1000 m = 98,066.5 J
    expect(more).toBeCloseTo(98_066.5, 4);
    expect(formatQuantity(more, 'energy', 'metric', { digits: 1 })).toBe('27.2\u202fWh');
  });

  test('625 Wh, 95 % of it used over 159 km, are 3.73 Wh/km, never W/km', () => {
    const { result, si, said } = wattHours('battery=625Wh&start=100&end=5&distance=159km');
    // 593.75 Wh / 159 km
    expect(si('gauge-energy')).toBeCloseTo(593.75 * WH, 6);
    expect(si('gauge-energy-per-distance')).toBeCloseTo((593.75 * WH) / 159_000, 9);
    const { kind } = result('gauge-energy-per-distance');
    expect(formatQuantity(si('gauge-energy-per-distance'), kind, 'metric')).toBe('3.73\u202fWh/km');
    // 593.75 Wh / 98.798 mi
    expect(formatQuantity(si('gauge-energy-per-distance'), kind, 'us')).toBe('6.01\u202fWh/mi');
    expect(said).not.toContain('W/km');
  });

  /*
   * Common practice, no source: a light-assist bike used 12 % of its battery (320 to 360 Wh) on a climb of 7:22 with about 300 W.
   * 300 W × 442 s = 132,600 J = 36.83 Wh.
   */
  describe('12 % of 340 Wh for 300 W over 7:22', () => {
    const query = 'battery=340Wh&motor=300W&start=90&end=78&time=7:22';
    const { result, si, said, tones } = wattHours(query);

    test('imply 0.90, from about 0.8 to 1.05', () => {
      // 36.83 Wh / (340 Wh × 0.12)
      expect(si('implied-efficiency')).toBeCloseTo(0.902_78, 5);
      const { low = 0, high = 0 } = result('implied-efficiency');
      // half a step at each reading is 11 to 13 %, the pack 340 Wh ± 6 % is 319.6 to 360.4 Wh
      expect(low).toBeCloseTo(132_600 / (360.4 * WH * 0.13), 9);
      expect(high).toBeCloseTo(132_600 / (319.6 * WH * 0.11), 9);
      expect(low).toBeCloseTo(0.786, 3);
      expect(high).toBeCloseTo(1.048, 3);
    });

    test('are 41 Wh, 37 to 44 by the steps of the gauge', () => {
      expect(si('gauge-energy')).toBeCloseTo(40.8 * WH, 6);
      expect(result('gauge-energy').low).toBeCloseTo(37.4 * WH, 6);
      expect(result('gauge-energy').high).toBeCloseTo(44.2 * WH, 6);
    });

    test('are not called wrong, and the sentence says what would narrow them', () => {
      expect(tones).not.toContain('wrong');
      expect(said).toContain('the drive turned 79 to 105\u202f% of what left the battery into work');
      expect(said).toContain('the range reaches what is: two readings so coarse cannot tell.');
      expect(said).toContain(
        'To narrow it: a longer climb or more of them between the readings, a gauge with finer steps, a meter on the battery.',
      );
    });

    test('the reserve is the rider’s, not the gauge’s; age, cold and add-on count', () => {
      expect(wattHours(`${query}&reserve=40`).si('gauge-energy')).toBe(si('gauge-energy'));
      expect(wattHours(`${query}&health=80&cold=90`).si('gauge-energy')).toBeCloseTo(si('gauge-energy') * 0.72, 6);
      expect(wattHours(`${query}&add-on=170Wh`).si('gauge-energy')).toBeCloseTo(si('gauge-energy') * 1.5, 6);
    });
  });
});

describe('a measured time that the other inputs do not allow', () => {
  test('was taken without a word', () => {
    // the example takes 9:20 to 10:40 or so with 170 W and a motor of 380 W
    const { remarks, outcome } = wattHours('start=90&end=78&time=5:00');
    const sentence = remarks.find((each) => each.includes('contradict')) ?? '';
    expect(sentence).toMatch(
      /^The measured 5:00 and the other inputs contradict each other: with them the model takes \d+:\d\d to \d+:\d\d\./,
    );
    expect(outcome.remarks).toContainEqual({ tone: 'caution', field: 'time', text: sentence });
    expect(wattHours('time=25:00').said).toContain('contradict');
  });

  test('one that they allow is not complained about', () => {
    const { si, said } = wattHours('start=90&end=78');
    const seconds = Math.round(si('time'));
    expect(said).not.toContain('contradict');
    expect(
      wattHours(`start=90&end=78&time=${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`).said,
    ).not.toContain('contradict');
  });
});

describe('what the gauge cannot be', () => {
  // a strong rider: the hill takes 757 W at the crank at that speed, (102 kg × 9.81 × 0.126 × 5.43 m/s + 42 W of air) / 0.96
  const timed = 'battery=340Wh&motor=300W&time=7:22&power=457W';

  test('an efficiency beyond any drive names the likely inputs', () => {
    const { said, tones, result } = wattHours(`${timed}&start=90&end=80&step=0.1`);
    // 36.83 Wh / (360.4 Wh × 0.101) = 1.012
    expect(result('implied-efficiency').low).toBeCloseTo(1.012, 3);
    expect(tones).toContain('wrong');
    expect(said).toContain('more than any drive does, so an input is wrong. The likely ones: the motor gives less');
  });

  test('an efficiency below any drive too', () => {
    const { said, tones, result } = wattHours(`${timed}&start=90&end=60`);
    // 36.83 Wh / (319.6 Wh × 0.29) = 0.397
    expect(result('implied-efficiency').high).toBeCloseTo(0.397, 3);
    expect(tones).toContain('wrong');
    expect(said).toContain(
      'less than any drive that works, so an input is wrong. The likely ones: the motor gave more',
    );
  });

  test('a believable one is not complained about', () => {
    const { tones, said } = wattHours(`${timed}&start=90&end=76`);
    expect(tones).not.toContain('wrong');
    expect(tones).not.toContain('caution');
    expect(said).not.toContain('believable');
  });

  test('steps larger than the drop bound the energy from above only', () => {
    const { result } = wattHours(`${timed}&start=60&end=40&step=20`);
    expect(result('gauge-energy')).toMatchObject({ low: 0 });
    expect(result('gauge-energy').high).toBeCloseTo(340 * WH * 0.4, 6);
    expect(result('implied-efficiency').high).toBeUndefined();
    expect(result('implied-efficiency').low).toBeCloseTo(132_600 / (360.4 * WH * 0.4), 9);
    expect(wattHours(`${timed}&start=60&end=40&step=20`).said).toContain('26\u202f% or more of what left');
  });

  test.each([
    ['start=50&end=50', 'The gauge must show less after the climb than before it.', 'wrong'],
    ['start=50&end=80', 'The gauge must show less after the climb than before it.', 'wrong'],
    ['start=50', 'One reading of the gauge says nothing: fill in the other too.', 'caution'],
    ['end=50', 'One reading of the gauge says nothing: fill in the other too.', 'caution'],
  ])('%s', (query, sentence, tone) => {
    const { outcome, result } = wattHours(query);
    expect(outcome.remarks).toContainEqual(expect.objectContaining({ tone, text: sentence }));
    expect(result('gauge-energy').si).toBeUndefined();
    expect(result('implied-efficiency').reason).toMatch(/\.$/);
  });

  test('a measured time at which the motor fades counts less than its output', () => {
    // 2400 m in 360 s are 24 km/h: half of the 2 km/h fade below 25 km/h is gone
    const { si } = wattHours('battery=340Wh&motor=300W&start=90&end=78&time=6:00');
    expect(si('implied-efficiency') * si('gauge-energy')).toBeCloseTo(150 * 360, 6);
    expect(wattHours('start=90&end=78&time=5:00').result('implied-efficiency').reason).toBe(
      'The motor does no work there.',
    );
  });

  test('without a measured time the modelled one serves, with its doubt', () => {
    const query = 'motor=300W&start=90&end=78&step=0.1';
    const { si, result, said } = wattHours(query);
    expect(si('implied-efficiency') * si('gauge-energy')).toBeCloseTo(300 * si('time'), 6);
    const range = ({ low = 0, high = 0 }) => high / low;
    const clock = `${Math.floor(si('time') / 60)}:${String(Math.round(si('time') % 60)).padStart(2, '0')}`;
    const measured = wattHours(`${query}&time=${clock}`);
    expect(range(result('implied-efficiency'))).toBeGreaterThan(1.1 * range(measured.result('implied-efficiency')));
    expect(said).toContain('To narrow it: a measured time, a longer climb');
    expect(measured.said).not.toContain('a measured time');
  });

  test('no motor, no efficiency', () => {
    expect(wattHours('motor=none&start=90&end=78').result('implied-efficiency').reason).toBe(
      'Without a motor there is none.',
    );
  });
});

describe('a battery that ends on the way', () => {
  const { si, result, said } = wattHours('laps=8');
  const alone = answer('climb-time', 'motor=none');
  const helped = answer('climb-time');

  test('where, on which climb, and how long the rest takes, worked out from two other links', () => {
    // 486 Wh at 480 W
    const until = (486 * WH) / 480;
    const reach = until * helped.si('speed');
    expect(si('empty-distance')).toBeCloseTo(reach, 6);
    expect(si('empty-at')).toBeCloseTo((reach * 235) / 2400, 6);
    expect(si('empty-lap')).toBe(Math.ceil(reach / 2400));
    const rest = (8 * 2400 - reach) / alone.si('speed');
    expect(si('time-without-help')).toBeCloseTo(rest, 6);
    expect(si('time')).toBeCloseTo(until + rest, 6);
    // 170 W all the way, 380 W until then
    expect(si('rider-share')).toBeCloseTo((170 * (until + rest)) / (170 * (until + rest) + 380 * until), 9);
    expect(si('battery-left')).toBe(0);
    expect(result('binds').text).toBe('battery');
  });

  test('what the climbs would take does not depend on what there is', () => {
    expect(si('needed-energy')).toBeCloseTo(8 * wattHours().si('energy-per-climb'), 6);
    // all that could be drawn was
    expect(si('battery-energy')).toBeCloseTo(486 * WH, 6);
    expect(si('battery-share')).toBeCloseTo(0.9, 12);
    expect(result('battery-energy').high).toBeCloseTo(486 * 1.06 * WH, 6);
    expect(si('climbs')).toBeCloseTo(wattHours().si('climbs'), 12);
  });

  test('the sentence says it', () => {
    expect(said).toContain(
      `The battery is empty after ${formatQuantity(si('empty-at'), 'height', 'metric')} of climbing, on climb ${si('empty-lap')} of 8.`,
    );
    expect(said).toContain(
      'without help. To keep up the pace you would have to hold 6.71\u202fW/kg instead of your 2.07',
    );
    expect(wattHours('laps=8&units=us').said).toMatch(/empty after [\d\u202f]+\u202fft of climbing/);
  });

  test('exactly the climbs of one charge leave nothing, and a little more is too much', () => {
    const needed = wattHours('laps=3').si('needed-energy') / WH;
    const holding = (share: number) => wattHours(`laps=3&reserve=0&battery=${needed * share}Wh`);
    expect(holding(1 + 1e-9).si('battery-left')).toBeCloseTo(0, 8);
    expect(holding(1 + 1e-9).result('binds').text).toBe('none');
    expect(holding(1 - 1e-9).result('binds').text).toBe('battery');
  });

  test('the reserve is told from the end', () => {
    const needed = wattHours('laps=6').si('needed-energy') / WH;
    const enoughWithReserve = wattHours(`laps=6&battery=${needed * 1.05}Wh`);
    expect(enoughWithReserve.result('binds').text).toBe('battery');
    expect(enoughWithReserve.said).toContain(
      'only your reserve of 10\u202f% is left. With it you would have help to the top.',
    );
    expect(wattHours(`laps=6&battery=${needed * 0.95}Wh`).said).toContain(
      'Your reserve of 10\u202f% is left then, but would not take you to the top either.',
    );
    expect(wattHours(`laps=6&battery=${needed * 0.95}Wh&reserve=0`).said).not.toContain('reserve');
  });

  test('near the end the ranges say that it may come out the other way', () => {
    const needed = wattHours('reserve=0').si('needed-energy') / WH;
    const short = wattHours(`reserve=0&battery=${needed * 0.99}Wh`);
    expect(short.said).toContain('It may last all the same');
    expect(short.result('battery-left').high).toBeGreaterThan(0);
    // nothing bounds the place from above, for it may be none
    expect(short.result('empty-at').low).toBeLessThan(short.si('empty-at'));
    expect(short.result('empty-at').high).toBeUndefined();
    const enough = wattHours(`reserve=0&battery=${needed * 1.01}Wh`);
    expect(enough.said).toContain('It may not last');
    expect(enough.result('battery-left').low).toBe(0);
    expect(wattHours().said).not.toMatch(/may (not )?last/);
  });

  test('on a flat road it ends at a distance', () => {
    const flat = wattHours('gain=0&distance=100km&battery=100Wh');
    expect(flat.result('empty-at').reason).toBe('This road gains no height: see the distance.');
    expect(flat.si('empty-distance')).toBeGreaterThan(1000);
    expect(flat.said).toMatch(/The battery is empty after [\d.]+\u202fkm\./);
  });
});

test('a larger, younger, warmer battery never is slower, nor does it leave less', () => {
  const r = random(77);
  for (let i = 0; i < 200; i++) {
    const rest = `laps=${r.whole(1, 20)}&gain=${r.whole(0, 600)}m&motor=${r.whole(50, 700)}W&power=${r.whole(60, 300)}W`;
    const battery = r.between(50, 900);
    const less = wattHours(`${rest}&battery=${battery}Wh&cold=${r.whole(50, 99)}&health=${r.whole(50, 99)}`);
    const more = wattHours(`${rest}&battery=${battery * r.between(1, 1.5)}Wh`);
    expect(more.si('time')).toBeLessThanOrEqual(less.si('time') * (1 + 1e-12));
    expect(more.si('battery-left')).toBeGreaterThanOrEqual(less.si('battery-left'));
    expect(more.si('rider-share')).toBeLessThanOrEqual(less.si('rider-share') * (1 + 1e-12));
    expect(more.si('needed-energy')).toBe(less.si('needed-energy'));
  }
});

test('age, cold and reserve multiply, and an add-on has the same', () => {
  const { si } = wattHours('battery=500Wh&add-on=250Wh&health=90&cold=80&reserve=25');
  // 750 × 0.9 × 0.8 × 0.75
  expect(si('usable-energy')).toBeCloseTo(405 * WH, 6);
  expect(si('nominal-energy')).toBe(750 * WH);
});

describe('volts and amp-hours', () => {
  test('beat watt-hours that are given too, and say so beside them', () => {
    const { outcome, si } = wattHours('volts=48V&amp-hours=15Ah&battery=540Wh');
    expect(si('nominal-energy')).toBeCloseTo(720 * WH, 6);
    expect(outcome.remarks[0]).toMatchObject({ tone: 'caution', field: 'battery' });
    expect(wattHours('volts=48V&amp-hours=15Ah').remarks[0]).not.toContain('both given');
  });

  test.each([
    ['volts=48V', 'Only volts are given. Without amp-hours they say nothing'],
    ['amp-hours=15Ah', 'Only amp-hours are given. Without volts they say nothing'],
  ])('%s alone counts for nothing, and says so', (query, sentence) => {
    const { remarks, si } = wattHours(query);
    expect(si('nominal-energy')).toBe(540 * WH);
    expect(remarks[0]).toContain(sentence);
  });
});

describe('ranges', () => {
  /** Shifts of a result when one input at a time goes to either end of what is known of it, in squares by side. */
  const quadrature = (name: string, base: string, pairs: [string, string][]) => {
    const now = wattHours(base).si(name);
    let [down2, up2] = [0, 0];
    for (const pair of pairs) {
      const shifts = pair.map((query) => wattHours(`${base}&${query}`).si(name) - now);
      down2 += Math.min(0, ...shifts) ** 2;
      up2 += Math.max(0, ...shifts) ** 2;
    }
    return { low: now - Math.sqrt(down2), high: now + Math.sqrt(up2) };
  };
  const CLIMB: [string, string][] = [
    ['rolling=0.015', 'rolling=0.035'],
    ['drag=0.35', 'drag=0.55'],
    ['drive=94', 'drive=98'],
    ['unit=75', 'unit=85'],
  ];
  const PACK: [string, string] = [`battery=${540 * 0.94}Wh`, `battery=${540 * 1.06}Wh`];

  test.each([
    ['energy-per-climb', '', CLIMB],
    ['needed-energy', 'laps=3', CLIMB],
    ['battery-energy', 'laps=12', [PACK]],
    ['energy-per-distance', '', CLIMB],
    ['usable-energy', '', [PACK]],
    ['climbs', '', [...CLIMB, PACK]],
    ['battery-left', 'laps=3', [...CLIMB, PACK]],
    ['empty-distance', 'laps=12', [...CLIMB, PACK]],
    ['empty-at', 'laps=12', [...CLIMB, PACK]],
    ['time', 'laps=12', [...CLIMB, PACK]],
    ['time-without-help', 'laps=12', [...CLIMB, PACK]],
    ['rider-share', 'laps=12', [...CLIMB, PACK]],
  ] as [string, string, [string, string][]][])(
    'of %s with “%s”: links with one input off at a time',
    (name, base, pairs) => {
      const expected = quadrature(name, base, pairs);
      const { low, high } = wattHours(base).result(name);
      expect(relative(low ?? Number.NaN, expected.low)).toBeLessThan(1e-9);
      expect(relative(high ?? Number.NaN, expected.high)).toBeLessThan(1e-9);
      expect(expected.high).toBeGreaterThan(expected.low);
    },
  );

  test('what no doubt moves has none', () => {
    for (const name of ['nominal-energy', 'lift-energy', 'watts-per-kilogram', 'rider-share'])
      expect(wattHours().result(name)).not.toHaveProperty('low');
  });

  test('the sentence names what makes most of the doubt', () => {
    expect(wattHours().said).toContain('Most of the doubt about what a climb takes is the surface.');
    expect(wattHours('rolling=0.028&gain=400m').said).toContain('is the losses of the drive unit.');
  });
});

describe('the ends', () => {
  test('nobody pedals uphill: no climb, one sentence, but the battery is what it is', () => {
    const { result, si, remarks } = wattHours('power=0W');
    for (const name of ['climbs', 'energy-per-climb', 'battery-left', 'time', 'empty-at', 'rider-share'])
      expect(result(name).reason).toBe('This power does not move the bike on this hill.');
    expect(si('usable-energy')).toBeCloseTo(486 * WH, 6);
    expect(result('binds').text).toBe('none');
    expect(remarks).toEqual(['Nobody pedals: a motor that assists gives nothing then.']);
  });

  test('nobody pedals downhill: only display and lights draw', () => {
    const { si, said } = wattHours('grade=-6&power=0W');
    expect(si('battery-energy')).toBeCloseTo(5 * si('time'), 9);
    expect(said).toContain('this is the bike rolling by itself');
  });

  test('no motor: display and lights, and without them nothing', () => {
    const { si, said } = wattHours('motor=none');
    expect(si('battery-energy')).toBeCloseTo(5 * si('time'), 9);
    expect(said).toContain('Without a motor the battery runs only the display and lights.');
    const none = wattHours('motor=none&idle=0W');
    expect(none.si('battery-energy')).toBe(0);
    expect(none.si('battery-left')).toBe(1);
    expect(none.result('climbs').reason).toBe('Nothing draws on the battery.');
    expect(none.result('empty-at').reason).toBe('Nothing draws on the battery.');
  });

  test('the legs’ share is never more than all, not by its last digit either', () => {
    const r = random(78);
    for (let i = 0; i < 300; i++) {
      const query = `motor=none&add-on=${r.between(0, 50)}Wh&battery=${r.between(10, 50)}Wh&laps=${r.between(1, 90)}`;
      const { si = 0, high = 0 } = wattHours(`${query}&idle=${r.between(1, 100)}W`).result('rider-share');
      expect(Math.max(si, high)).toBeLessThanOrEqual(1);
    }
  });

  test('at the limit the motor gives and takes less', () => {
    const { result, said, si } = wattHours('gain=40m');
    expect(result('binds').text).toBe('assist-limit');
    expect(said).toContain('The assist limit of 25\u202fkm/h holds the motor back here');
    expect(si('rider-share')).toBeGreaterThan(170 / 550);
    expect(wattHours('gain=0&motor=none&power=600W').result('binds').text).toBe('none');
  });

  test('a climb that cannot be: every result has the reason', () => {
    const { outcome, remarks } = wattHours('distance=200m&gain=200m');
    for (const { si, reason } of outcome.results) expect([si, reason]).toEqual([undefined, remarks[0]]);
    expect(remarks).toHaveLength(1);
  });

  test('cold that is not counted is told; cold that is comes back', () => {
    expect(wattHours('temperature=0C').said).toContain('At 0\u202f°C a battery that was kept outdoors gives less.');
    expect(wattHours('temperature=0C&units=us').said).toContain('At 32\u202f°F');
    expect(wattHours('temperature=0C&cold=80').said).toContain('comes back when the battery is warm again.');
    expect(wattHours('temperature=0C&cold=100').said).not.toMatch(/outdoors|comes back/);
    expect(wattHours('cold=80&health=90').said).toContain('What age took does not.');
    expect(wattHours().said).not.toMatch(/outdoors|comes back/);
  });

  test('several climbs: only the ways up are counted', () => {
    expect(wattHours('laps=2').said).toContain('Only the ways up are counted.');
    expect(wattHours().said).not.toContain('ways up');
    expect(wattHours('laps=2').si('battery-energy')).toBeCloseTo(2 * wattHours().si('battery-energy'), 6);
  });
});

describe('a hill in pieces', () => {
  const PIECES = 'profile=1:300,36:200,2:150,-6:400,60:350,21';

  test('of one piece is the hill of that length and height', () => {
    const one = wattHours('profile=1:2400,235');
    for (const { name, si } of wattHours().outcome.results)
      if (si !== undefined) expect(relative(one.si(name), si), name).toBeLessThan(1e-9);
  });

  test('takes from the battery what your-hill says that a bike takes along it, less display and lights', () => {
    const query = `${PIECES}&bike=21&motor=420&battery=400&reserve=20`;
    const there = answer('your-hill', `${query}&name=Trail`);
    const here = wattHours(`${query}&idle=0`);
    for (const name of ['time', 'battery-energy', 'battery-share'])
      expect(relative(here.si(name), there.si(name, 1)), name).toBeLessThan(1e-9);
    // 5 W for as long
    const lit = wattHours(query).si('battery-energy') - here.si('battery-energy');
    expect(relative(lit, 5 * here.si('time'))).toBeLessThan(1e-9);
  });

  test('counts its own length and height in every climb', () => {
    const needed = wattHours(PIECES).si('needed-energy');
    const { si, result } = wattHours(`${PIECES}&laps=3&reserve=0&battery=${(1.5 * needed) / WH}Wh`);
    expect(relative(si('needed-energy'), 3 * needed)).toBeLessThan(1e-12);
    expect(si('empty-lap')).toBe(2);
    // half a charge on one climb ends at the same place: 1,400 m and 113 m lower
    const half = wattHours(`${PIECES}&reserve=0&battery=${(0.5 * needed) / WH}Wh`);
    expect(si('empty-distance')).toBeCloseTo(1400 + half.si('empty-distance'), 6);
    expect(si('empty-at')).toBeCloseTo(113 + half.si('empty-at'), 6);
    // the third climb is ridden without a motor from its bottom on
    const alone = wattHours(`${PIECES}&motor=none`).si('time');
    expect(si('time-without-help')).toBeCloseTo(half.si('time-without-help') + alone, 6);
    // 102 kg × 9.80665 m/s² × 3 × 113 m
    expect(si('lift-energy')).toBeCloseTo(339_094.34, 1);
    expect(result('binds').text).toBe('battery');
  });

  test('is said to count, and to meet the assist limit on part of the way', () => {
    expect(wattHours(PIECES).said).toContain('The hill in pieces counts: 1.4\u202fkm, 113\u202fm up, in 5 pieces.');
    expect(wattHours(`${PIECES}&motor=700`).said).toContain('holds the motor back on part of the way');
    expect(wattHours().said).not.toContain('piece');
  });

  test('with two readings and a time, the motor did what it does on average there', () => {
    const { si } = wattHours(`${PIECES}&motor=200&start=90&end=80&step=0.1&time=10:00&limit=none`);
    // 200 W all the way but for the dip, where nothing reaches 40 km/h: 600 s × 200 W ÷ a tenth of 540 Wh
    expect(si('implied-efficiency')).toBeCloseTo((600 * 200) / (54 * WH), 6);
  });
});

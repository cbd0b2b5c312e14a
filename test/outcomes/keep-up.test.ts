import { describe, expect, test } from 'vitest';
import { airDensity, type Climb, hillFromGain, rideClimb, riderToKeep } from '../../calculators/model/index.ts';
import { readLink, switchSystem, writeLink } from '../../calculators/scenario/vocabulary.ts';
import { random, relative } from '../random.ts';
import { answer } from './outcome.ts';

/** Power at the crank, W, of so much mass at that speed on the example's hill: the force balance written out once more. */
function crankPower(mass: number, speed: number): number {
  const sin = 235 / 2400;
  const weight = mass * 9.80665;
  const air = 0.5 * airDensity(500, 15) * 0.45 * speed ** 2;
  return (speed * (weight * (sin + 0.028 * Math.sqrt(1 - sin ** 2)) + 0.091 + 0.0087 * speed + air)) / 0.96;
}

test('the example: the companion’s power turns into a pace, and the pace into your watts', () => {
  const { si, result } = answer('keep-up');
  // 78 and 21 kg, 180 and 400 W
  expect(crankPower(99, si('companion-speed'))).toBeCloseTo(580, 9);
  expect(si('companion-time') * si('companion-speed')).toBeCloseTo(2400, 9);
  // 82 and 20 kg at the same speed, 380 W from the motor or 170 W from the legs
  const needed = crankPower(102, si('companion-speed'));
  expect(si('rider-needed')).toBeCloseTo(needed - 380, 9);
  expect(si('motor-needed')).toBeCloseTo(needed - 170, 9);
  expect(si('rider-needed-per-kilogram')).toBeCloseTo((needed - 380) / 82, 12);
  expect(result('class-needed').text).toBe('mid');
  expect(si('gap')).toBeCloseTo(si('time') - si('companion-time'), 9);
  expect(si('gap')).toBeGreaterThan(0);
  expect(si('time')).toBe(answer('climb-time').si('time'));
  expect(si('motor-power')).toBe(380);
  expect(result('binds').text).toBe('none');
});

test('the companion is a rider as climb-time knows them', () => {
  const { si } = answer('keep-up', 'companion-rider=70kg&companion-power=260W&companion-bike=9kg&companion-motor=none');
  expect(si('companion-time')).toBe(answer('climb-time', 'rider=70kg&power=260W&bike=9kg&motor=none').si('time'));
  const fast = answer('keep-up', 'gain=40m&companion-limit=28mph');
  const alike = answer('climb-time', 'gain=40m&rider=78kg&power=180W&bike=21kg&motor=400W&limit=28mph');
  expect(fast.si('companion-time')).toBe(alike.si('time'));
  expect(fast.si('companion-speed')).toBe(alike.si('speed'));
});

/** A link's own rider and bike for climb-time, with one input set to a result. Of an input that stands there twice the first counts. */
const alone = (query: string, input: string, watts: number | string): string =>
  [
    ...query.split('&').filter((pair) => pair && !new RegExp(`^(companion-|${input}=)`).test(pair)),
    `${input}=${watts}W`,
  ].join('&');

describe('there and back: what it asks for, put into climb-time, takes the companion’s time', () => {
  // the climbs here take minutes to hours; the model's own inverse is held to 1e-6 s
  const WITHIN = 1e-6;

  const cases: [string, string][] = [
    ['the example', ''],
    [
      'a companion without a motor',
      'companion-rider=70kg&companion-power=260W&companion-bike=9kg&companion-motor=none&motor=100W',
    ],
    ['nobody with a motor', 'companion-motor=none&motor=none'],
    ['a faster limit than yours', 'gain=60m&companion-limit=20mph&limit=25km/h&companion-motor=600W'],
    ['a pace in your fade', 'gain=150m&companion-limit=20mph&limit=25km/h&companion-motor=500W&motor=600W'],
    ['a pace above your limit', 'gain=50m&companion-limit=28mph&limit=25km/h&companion-motor=750W'],
    ['a faster limit than the companion’s', 'gain=60m&companion-limit=25km/h&limit=28mph'],
    ['no limits at all', 'gain=30m&companion-limit=none&limit=none&companion-motor=700W'],
    [
      'typed in the units of the country',
      'units=us&distance=1.5mi&gain=900ft&rider=190lb&bike=52lb&companion-rider=165lb&companion-bike=45lb',
    ],
    ['a head wind on a paved path', 'wind=4m/s&rolling=0.008&altitude=1800m&temperature=30C'],
    ['down a hill against the wind', 'grade=-2&wind=12m/s&companion-motor=none&motor=none'],
  ];

  test.each([
    ['a battery that is empty on the way', 'distance=18km&gain=1500m&battery=360Wh'],
    ['the same in US units', 'units=us&distance=11mi&gain=5000ft&battery=300Wh&rider=190lb'],
  ])('%s: the legs make up the rest', (_, query) => {
    const { si, result, said } = answer('keep-up', query);
    const ridden = answer('climb-time', alone(query, 'power', si('rider-needed')));
    expect(ridden.result('binds').text).toBe('battery');
    expect(Math.abs(ridden.si('time') - si('companion-time'))).toBeLessThan(WITHIN);
    expect(result('binds').text).toBe('battery');
    expect(said).toContain('your battery is empty before the top');
    // more than with a battery that lasts, and no motor makes up for a battery
    expect(si('rider-needed')).toBeGreaterThan(
      answer('keep-up', `${query}&`.replace(/battery=\w+&/, 'battery=3000Wh&')).si('rider-needed'),
    );
    expect(result('motor-needed').reason).toBe('Its battery would be empty before the top.');
  });

  test.each(cases)('%s: rider-needed', (_, query) => {
    const { si } = answer('keep-up', query);
    const ridden = answer('climb-time', alone(query, 'power', si('rider-needed')));
    expect(Math.abs(ridden.si('time') - si('companion-time'))).toBeLessThan(WITHIN);
  });

  test.each(cases.filter(([, query]) => !/gain=[56]0m.*(20|28)mph&limit=25/.test(query)))(
    '%s: motor-needed',
    (_, query) => {
      const { si } = answer('keep-up', query);
      const ridden = answer('climb-time', alone(query, 'motor', si('motor-needed')));
      expect(Math.abs(ridden.si('time') - si('companion-time'))).toBeLessThan(WITHIN);
    },
  );

  test('as typed digits through a link that was written and read again, in both systems of units', () => {
    for (const [, query] of cases)
      for (const system of ['metric', 'us'] as const) {
        const scenario = switchSystem(readLink('keep-up', query), system);
        const there = answer('keep-up', writeLink(scenario));
        // six decimals are more than anybody types
        const watts = there.si('rider-needed').toFixed(6);
        const climb = switchSystem(readLink('climb-time', alone(query, 'power', watts)), system);
        const back = answer('climb-time', writeLink(climb));
        expect(Math.abs(back.si('time') - there.si('companion-time'))).toBeLessThan(0.001);
      }
  });

  test('any riders, bikes, hills and limits', () => {
    const { between, pick } = random(31_415);
    let [legs, motors] = [0, 0];
    for (let i = 0; i < 300; i++) {
      const number = (low: number, high: number): string => between(low, high).toFixed(2);
      const limit = (): string => pick(['none', '25km/h', '20mph', '28mph', '45km/h']);
      const query = [
        `distance=${number(500, 6000)}m`,
        `grade=${number(-1, 18)}`,
        `rolling=${number(0.005, 0.04)}`,
        `wind=${number(-4, 6)}m/s`,
        `rider=${number(50, 110)}kg`,
        `power=${number(60, 350)}W`,
        `bike=${number(8, 30)}kg`,
        `motor=${pick(['none', number(50, 800)])}`,
        `limit=${limit()}`,
        `companion-rider=${number(50, 110)}kg`,
        `companion-power=${number(60, 350)}W`,
        `companion-bike=${number(8, 30)}kg`,
        `companion-motor=${pick(['none', number(50, 800)])}`,
        `companion-limit=${limit()}`,
      ].join('&');
      const { si, result } = answer('keep-up', query);
      // no battery may end before the climb does, which keep-up does not ask about
      const off = (input: string, name: string): number => {
        const ridden = answer('climb-time', alone(`${query}&battery=5500Wh`, input, si(name)));
        return Math.abs(ridden.si('time') - si('companion-time'));
      };
      const watts = result('rider-needed').si;
      if (watts !== undefined && watts > 0.01 && watts <= 1500) {
        legs++;
        expect(off('power', 'rider-needed'), query).toBeLessThan(WITHIN);
      }
      const motor = result('motor-needed').si;
      if (motor !== undefined && motor <= 3000) {
        motors++;
        expect(off('motor', 'motor-needed'), query).toBeLessThan(WITHIN);
      }
    }
    // the loop has tried what it is for
    expect(legs).toBeGreaterThan(150);
    expect(motors).toBeGreaterThan(100);
  });
});

test('a companion like you needs what you hold and have', () => {
  const { si, result } = answer(
    'keep-up',
    'companion-rider=82kg&companion-power=170W&companion-bike=20kg&companion-motor=380W',
  );
  expect(si('gap')).toBe(0);
  expect(si('rider-needed')).toBeCloseTo(170, 9);
  expect(si('motor-needed')).toBeCloseTo(380, 9);
  expect(result('class-needed').text).toBe('mid');
});

describe('the classes: light to 300 W, mid to 450, full to 750, common practice, no source', () => {
  // without a limit a motor and legs are the same watts, so the companion's motor is what you need and a little more
  const alike = 'companion-rider=82kg&companion-power=170W&companion-bike=20kg&limit=none&companion-limit=none';
  test.each([
    ['299.9W', 'light'],
    ['300.1W', 'mid'],
    ['449.9W', 'mid'],
    ['450.1W', 'full'],
    ['749.9W', 'full'],
    ['750.1W', 'beyond'],
    ['1W', 'light'],
  ])('%s is %s', (motor, text) => {
    expect(answer('keep-up', `${alike}&companion-motor=${motor}`).result('class-needed').text).toBe(text);
  });

  test('no motor where the legs are enough, and the motor says why', () => {
    const { result, said } = answer('keep-up', `${alike}&companion-motor=none&power=171W`);
    expect(result('class-needed').text).toBe('none');
    expect(result('motor-needed')).toMatchObject({ reason: 'Your legs alone are as fast.' });
    expect(said).not.toContain('stronger class');
  });

  test('a range that reaches into the next class is said', () => {
    // on a steep hill the range is a few watts to either side
    const near = answer('keep-up', `${alike.replace('82', '80')}&companion-motor=300W`);
    const { high = 0 } = near.result('motor-needed');
    expect(high).toBeGreaterThan(near.si('motor-needed'));
    const edge = answer('keep-up', 'companion-motor=418W');
    expect(edge.si('motor-needed')).toBeLessThan(450);
    expect(edge.result('motor-needed').high).toBeGreaterThan(450);
    expect(edge.said).toContain('the motor you need belongs to a stronger class');
    expect(answer('keep-up').said).not.toContain('stronger class');
  });
});

describe('the assist limit', () => {
  const above = 'gain=50m&companion-limit=28mph&limit=25km/h&companion-motor=750W';

  test('above it only legs count: the same watts as without a motor', () => {
    const { si, result, said } = answer('keep-up', above);
    expect(si('companion-speed')).toBeGreaterThan(25 / 3.6);
    expect(si('rider-needed')).toBeCloseTo(answer('keep-up', `${above}&motor=none`).si('rider-needed'), 9);
    expect(si('motor-power')).toBe(0);
    expect(result('binds').text).toBe('assist-limit');
    expect(result('motor-needed').reason).toBe(
      'The companion rides as fast as your assist limit or faster, where no motor helps.',
    );
    expect(result('class-needed').reason).toBe(result('motor-needed').reason);
    expect(said).toContain('up there the watts are all from your legs');
  });

  test('inside the fade the legs make up what is missing', () => {
    const { si, result, said } = answer(
      'keep-up',
      'gain=150m&companion-limit=20mph&limit=25km/h&companion-motor=500W&motor=600W',
    );
    const kmh = si('companion-speed') * 3.6;
    expect(kmh).toBeGreaterThan(23);
    expect(kmh).toBeLessThan(25);
    // the fade is linear over its last 2 km/h
    expect(si('motor-power')).toBeCloseTo((600 * (25 - kmh)) / 2, 9);
    expect(result('binds').text).toBe('assist-limit');
    expect(said).toContain('Your legs make up the rest.');
  });

  test('limit-power takes the hill at the limit where nothing holds it back, and limit-time is that time', () => {
    const { si } = answer('keep-up');
    // 2,400 m at 25 km/h
    expect(si('limit-time')).toBeCloseTo(345.6, 9);
    expect(si('limit-power')).toBeCloseTo(crankPower(102, 25 / 3.6) - 170, 9);
    expect(answer('climb-time', `limit=none&motor=${si('limit-power')}W`).si('time')).toBeCloseTo(345.6, 9);
  });

  test('however strong, no motor gives more there, nor is faster', () => {
    for (const query of ['', 'gain=60m', 'gain=120m&limit=20mph&power=250W', 'gain=400m&limit=15km/h']) {
      const { si } = answer('keep-up', query);
      let before = 0;
      for (const motor of [200, 400, 800, 1600, 3000]) {
        const ride = answer('climb-time', `${query}&motor=${motor}W&battery=5500Wh`);
        expect(ride.si('motor-power')).toBeLessThan(si('limit-power'));
        expect(ride.si('motor-power')).toBeGreaterThanOrEqual(before);
        expect(ride.si('time')).toBeGreaterThan(si('limit-time'));
        before = ride.si('motor-power');
      }
    }
  });

  test('no limit, or legs that beat it: no such figures, and why', () => {
    for (const [query, reason] of [
      ['limit=none', 'Your bike has no assist limit.'],
      ['gain=0m&power=400W&limit=15km/h', 'You reach your assist limit without a motor.'],
    ] as const) {
      const { result, said } = answer('keep-up', query);
      expect(result('limit-power')).toMatchObject({ reason });
      expect(result('limit-time')).toMatchObject({ reason });
      expect(said).not.toContain('However strong');
    }
  });
});

describe('what moves both of you alike hardly moves what you need', () => {
  interface Unknowns {
    rolling: number;
    drag: number;
    drag2: number;
    drive: number;
    fade: number;
  }
  const STATED: Unknowns = { rolling: 0.028, drag: 0.45, drag2: 0.45, drive: 0.96, fade: 2 / 3.6 };
  const ENDS: [keyof Unknowns, number, number][] = [
    ['rolling', 0.015, 0.035],
    ['drag', 0.35, 0.55],
    ['drag2', 0.35, 0.55],
    ['drive', 0.94, 0.98],
    ['fade', 1 / 3.6, 4 / 3.6],
  ];
  const climb = (u: Unknowns, mass: number, riderPower: number, motorPower: number, dragArea: number): Climb => ({
    hill: hillFromGain(2400, 235),
    mass,
    rolling: u.rolling,
    dragArea,
    density: airDensity(500, 15),
    headWind: 0,
    efficiency: u.drive,
    riderPower,
    motorPower,
    assistLimit: 25 / 3.6,
    fadeWidth: u.fade,
  });
  const legs = (u: Unknowns): number =>
    riderToKeep(climb(u, 102, 170, 380, u.drag), rideClimb(climb(u, 99, 180, 400, u.drag2)).time);

  test('the range is a plain sum of squares, surface and chain moved for both, air for each', () => {
    const now = legs(STATED);
    let [down2, up2] = [0, 0];
    for (const [name, ...ends] of ENDS) {
      const shifts = ends.map((end) => legs({ ...STATED, [name]: end }) - now);
      down2 += Math.min(0, ...shifts) ** 2;
      up2 += Math.max(0, ...shifts) ** 2;
    }
    const { si = 0, low = 0, high = 0 } = answer('keep-up').result('rider-needed');
    expect(relative(si, now)).toBeLessThan(1e-12);
    expect(relative(si - low, Math.sqrt(down2))).toBeLessThan(1e-9);
    expect(relative(high - si, Math.sqrt(up2))).toBeLessThan(1e-9);
  });

  test('so it is far narrower than the range of either time, and the sentence names the air', () => {
    const { half, si, said } = answer('keep-up');
    // of all that goes through your crank
    const share = half('rider-needed') / (si('rider-needed') + 380);
    expect(share).toBeLessThan(0.2 * (half('time') / si('time')));
    expect(half('gap')).toBeLessThan(0.2 * half('time'));
    expect(said).toContain('Most of the doubt is how much air you push');
  });
});

describe('who cannot, or need not', () => {
  test('the motor alone is faster: turning the pedals is enough', () => {
    const { result, said, si } = answer('keep-up', 'companion-motor=none&companion-power=100W');
    const reason = 'Turning the pedals is enough: your motor is faster.';
    expect(result('rider-needed')).toMatchObject({ reason });
    expect(result('rider-needed-per-kilogram')).toMatchObject({ reason });
    // who is ahead has no use for what a motor gives at most
    expect(said).toBe('');
    expect(si('gap')).toBeLessThan(0);
  });

  test('downhill, rolling is as fast', () => {
    const { result } = answer('keep-up', 'grade=-8&companion-power=0W&companion-rider=60kg&companion-motor=none');
    expect(result('rider-needed').reason).toBe('You roll down as fast without pedalling.');
    expect(result('class-needed').text).toBe('none');
  });

  test('you do not pedal: no time of yours, no motor, but still the watts', () => {
    const { result, si, said } = answer('keep-up', 'power=0W');
    expect(si('rider-needed')).toBe(answer('keep-up').si('rider-needed'));
    for (const name of ['time', 'gap', 'motor-needed', 'class-needed'])
      expect(result(name).reason, name).toBe('Nobody pedals: a motor that assists gives nothing then.');
    expect(said).toContain('You do not pedal');
  });

  test('the companion does not get up: everything that hangs on it says so', () => {
    const { outcome, result, remarks, tones } = answer('keep-up', 'companion-power=0W');
    for (const name of ['rider-needed', 'motor-needed', 'class-needed', 'companion-time', 'gap', 'endurance-time'])
      expect(result(name).reason, name).toBe('This power does not move the companion on this hill.');
    expect(result('time').si).toBeGreaterThan(0);
    expect(remarks).toEqual(['The companion does not pedal: a motor that assists gives nothing then.']);
    expect(tones).toEqual(['wrong']);
    expect(outcome.results.filter(({ si, text, reason }) => si === undefined && !text && !reason)).toEqual([]);
    expect(answer('keep-up', 'companion-power=0W&companion-motor=none').remarks).toEqual([
      'This power does not move the companion on this hill.',
    ]);
  });

  test('a climb that cannot be: every result has the reason', () => {
    const { outcome, remarks } = answer('keep-up', 'distance=200m&gain=200m');
    for (const { si, reason } of outcome.results) expect([si, reason]).toEqual([undefined, remarks[0]]);
    expect(remarks[0]).toContain('the height must be smaller than the distance along the road');
  });
});

describe('watts beyond anybody', () => {
  const strong = 'companion-motor=3000W&companion-limit=none&motor=none';

  test('are not told as a hard effort', () => {
    const { said, si } = answer('keep-up', strong);
    expect(si('rider-needed')).toBeGreaterThan(1500);
    expect(said).toContain('That is more than anybody holds for so long');
    expect(said).not.toContain('That is a hard effort');
  });

  test('600 W for 11 minutes on 82 kg are 7.3 W/kg: beyond the 6.5 of the best; 400 W are not', () => {
    const needed = (watts: number) =>
      answer(
        'keep-up',
        `motor=none&companion-rider=82kg&companion-bike=20kg&companion-motor=none&companion-power=${watts}W&distance=5km&gain=500m`,
      );
    expect(needed(600).si('rider-needed')).toBeCloseTo(600, 6);
    expect(needed(600).si('companion-time')).toBeGreaterThan(660);
    expect(needed(600).said).toContain('more than anybody');
    expect(needed(400).said).toContain('That is a hard effort');
    expect(needed(400).said).not.toContain('more than anybody');
  });
});

describe('how long you hold it', () => {
  test('above critical power: the work above it over the watts above it, worked out by hand', () => {
    const { si, said } = answer('keep-up', 'endurance=150W');
    // 15 kJ over 216.87 − 150 W
    expect(si('endurance-time')).toBeCloseTo(15_000 / (si('rider-needed') - 150), 9);
    expect(si('endurance-time')).toBeCloseTo(224.3, 1);
    expect(said).toContain('you hold 217\u202fW for about 3:44');
    expect(said).toContain('ask a doctor first');
  });

  test('at or below it there is no end, and nothing to warn of', () => {
    const { result, said, tones } = answer('keep-up', 'endurance=250W');
    expect(result('endurance-time').reason).toBe('That is no more than what you hold for long.');
    expect(said).toContain('you can keep that up to the top');
    expect(tones).not.toContain('caution');
  });

  test('nothing said of it: one sentence points to it, unless you hold more already', () => {
    expect(answer('keep-up').said).toContain('a question of endurance');
    expect(answer('keep-up', 'power=250W').said).not.toContain('endurance');
  });

  test('more than racers averaged is called hard: 2.66 W/kg', () => {
    const hard = 'That is a hard effort';
    // 82 kg: 218.1 W
    expect(answer('keep-up', 'companion-power=181W').si('rider-needed')).toBeLessThan(218.1);
    expect(answer('keep-up', 'companion-power=181W').said).not.toContain(hard);
    expect(answer('keep-up', 'companion-power=182W').si('rider-needed')).toBeGreaterThan(218.13);
    expect(answer('keep-up', 'companion-power=182W').said).toContain(hard);
  });
});

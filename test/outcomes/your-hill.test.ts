import { describe, expect, test } from 'vitest';
import { isAlongProfile, type ProfileRide } from '../../calculators/model/index.ts';
import type { CalculatorName } from '../../calculators/scenario/vocabulary.ts';
import { readLink } from '../../calculators/scenario/vocabulary.ts';
import { yourHill } from '../../calculators/your-hill/outcome.ts';
import { random, relative } from '../random.ts';
import { answer } from './outcome.ts';

/** The rides behind the answer of a link. */
function ridesOf(query: string): ProfileRide[] {
  return yourHill(readLink('your-hill', query)).bikes.map(({ ride }) => {
    if (!ride || !isAlongProfile(ride)) throw new Error(`?${query} is not ridden in pieces.`);
    return ride;
  });
}

const plain = (text: string): string => text.replaceAll('\u202f', ' ');

describe('a hill of one piece is the plain hill', () => {
  // the same climb by two ways of saying it: every result of the plain hill, to 1e-9
  const same = (
    calculator: CalculatorName,
    whole: string,
    pieces: string,
    inPieces: CalculatorName = calculator,
    but: string[] = [],
  ): void => {
    const [one, other] = [answer(calculator, whole), answer(inPieces, pieces)];
    for (const { name, bike, si, low, high, text } of one.outcome.results) {
      if (but.includes(name)) continue;
      const again = other.result(name, bike);
      expect(again.text, name).toBe(text);
      for (const [a, b] of [
        [si, again.si],
        [low, again.low],
        [high, again.high],
      ]) {
        expect(typeof b, `${name} of ${bike}`).toBe(typeof a);
        if (a !== undefined && b !== undefined)
          expect(relative(a, b, 1e-6), `${name} of ${bike}: ${a}, ${b}`).toBeLessThan(1e-9);
      }
    }
  };
  // what side-by-side alone tells, and what the ride of Your hill tires the rider by
  const ALONE = ['distance-behind', 'height-behind'];

  test.each([
    ['gain=235m', '1:2400,235'],
    ['gain=60m', '1:2400,60'],
    ['gain=36m', '1:2400,36'],
  ])('side by side: %s and profile=%s', (whole, profile) => {
    same('side-by-side', whole, `profile=${profile}`);
    same('side-by-side', whole, `profile=${profile}`, 'your-hill', ALONE);
  });

  test.each(['battery=60', 'continuous=200&warm-up=5:00'])(
    'but for the speed that it rolls on with once the motor gives less: %s',
    (rest) => {
      const query = `name=A&bike=21&motor=400W&${rest}`;
      const whole = answer('climb-time', `distance=5km&gain=400m&cadence=75&${query}`);
      const pieces = answer('your-hill', `profile=1:5000,400&${query}`);
      const speed = (motor: string): number =>
        answer('climb-time', `distance=5km&gain=400m&bike=21&motor=${motor}`).si('speed');
      // the held motor, or none, then carries on with (v1² − v2²) m/2 of kinetic energy in hand
      const [motor, held] = rest.startsWith('battery') ? ['none', 0] : ['200W', 200];
      const saved = (0.5 * (82 + 21) * (speed('400W') ** 2 - speed(motor) ** 2)) / (0.96 * (170 + held));
      const difference = whole.si('time') - pieces.si('time', 1);
      expect(difference).toBeGreaterThan(0.5 * saved);
      expect(difference).toBeLessThan(1.2 * saved);
      expect(pieces.result('binds', 1).text).toBe(whole.result('binds').text);
      expect(pieces.si('binds-after', 1)).toBeCloseTo(whole.si('binds-after'), 6);
    },
  );

  test('with a measured time, whose motor is read back', () => {
    same('side-by-side', 'time=,10:00,', 'profile=1:2400,235&time=,10:00,', 'side-by-side', ALONE);
    const { result } = answer('side-by-side', 'profile=1:2400,235&time=,10:00,');
    expect(result('distance-behind', 2).reason).toBe(
      'A measured time does not say where on this hill the bike was then.',
    );
    expect(result('distance-behind', 1).si).toBeGreaterThan(0);
  });

  test('another hill that a measured climb is carried to', () => {
    same('bigger-hill', 'target-distance=6km&target-gain=500m', 'target-profile=1:6000,500');
  });

  test('with a companion; along pieces the motor’s power at one speed is its mean, and no speed is the limit’s', () => {
    const but = ['limit-power', 'limit-time'];
    same('keep-up', '', 'profile=1:2400,235', 'keep-up', but);
    same('keep-up', 'gain=100m', 'profile=1:2400,100', 'keep-up', but);
    const { result } = answer('keep-up', 'profile=1:2400,235');
    for (const name of but) expect(result(name).reason).toContain('Along a hill in pieces your speed changes');
  });
});

describe('long pieces', () => {
  // 6 km at 5 %, 4 km at 9 %, each ridden at its own steady speed but for the first metres after the bend
  const time = (distance: number, gain: number, motor: string): number =>
    answer('climb-time', `distance=${distance}m&gain=${gain}m&bike=21&motor=${motor}&power=200W`).si('time');

  test.each(['none', '300W'])(
    'take as long as one after the other, less what the bike rolls on with: motor %s',
    (motor) => {
      const { si } = answer('your-hill', `profile=1:6000,300:4000,360&name=A&bike=21&motor=${motor}&power=200W`);
      const parts = time(6000, 300, motor) + time(4000, 360, motor);
      // it comes to the bend with more kinetic energy than it leaves with, which is that much of the power's work
      const [v1, v2] = [6000 / time(6000, 300, motor), 4000 / time(4000, 360, motor)];
      const saved = (0.5 * (82 + 21) * (v1 ** 2 - v2 ** 2)) / (0.96 * (200 + (motor === 'none' ? 0 : 300)));
      expect(parts - si('time', 1)).toBeGreaterThan(0);
      expect(parts - si('time', 1)).toBeLessThan(1.5 * saved);
      expect(saved).toBeLessThan(3);
    },
  );

  test('the time at the mean grade is that of climb-time, and what it leaves out the difference', () => {
    const { si } = answer('your-hill', 'profile=1:6000,300:4000,360&name=A&bike=21&motor=300W&power=200W');
    expect(si('time-mean-grade', 1)).toBeCloseTo(time(10_000, 660, '300W'), 6);
    expect(si('time-bias', 1)).toBeCloseTo(si('time', 1) - si('time-mean-grade', 1), 9);
    expect([si('distance'), si('gain')]).toEqual([10_000, 660]);
    // tan: 660 / √(10,000² − 660²) = 0.06614
    expect(si('grade')).toBeCloseTo(0.06614, 5);
    // tan: 9 / √(100² − 9²) = 0.09037
    expect(si('steepest')).toBeCloseTo(0.09037, 5);
  });

  test('and a bend the other way costs what the bike must be sped up by', () => {
    const { si } = answer('your-hill', 'profile=1:4000,360:6000,300&name=A&bike=21&motor=none&power=200W');
    const lost = si('time', 1) - time(4000, 360, 'none') - time(6000, 300, 'none');
    expect(lost).toBeGreaterThan(0);
    expect(lost).toBeLessThan(3);
  });
});

test('a mean grade is a lower bound on the time: equal power, equal speed at both ends, still air, no brakes', () => {
  const r = random(61);
  for (let i = 0; i < 40; i++) {
    const pieces = Array.from({ length: r.whole(1, 12) }, () => {
      const length = r.whole(50, 500);
      return `${length},${(length * r.between(-0.02, 0.14)).toFixed(1)}`;
    });
    // alike at both ends, and long enough to settle
    const query = `profile=1:600,30:${pieces.join(':')}:600,30&name=A&bike=15&motor=none&power=220W&top-speed=100km/h`;
    expect(answer('your-hill', query).si('time-bias', 1), query).toBeGreaterThan(-0.01);
  }
});

describe('the rider’s endurance', () => {
  const query = 'profile=1:6000,500&name=A&bike=12&motor=none&power=230W';
  const tired = answer('your-hill', `${query}&endurance=180W&endurance-work=15kJ`);

  test('is in the ride: W′ is used up after 15,000 J / (230 − 180) W = 300 s, and the rest is ridden at what lasts', () => {
    const climb = (power: string): number =>
      answer('climb-time', `distance=6km&gain=500m&bike=12&motor=none&power=${power}`).si('speed');
    const [fresh, spent] = [climb('230W'), climb('180W')];
    expect(tired.result('binds', 1).text).toBe('endurance');
    expect(tired.si('binds-after', 1)).toBeCloseTo(300, 6);
    expect(tired.si('binds-height', 1)).toBeCloseTo((300 * fresh * 500) / 6000, 3);
    expect(tired.si('endurance-time')).toBeCloseTo(300, 9);
    // slowing down, the bike rolls on a little: kinetic energy over power, below a second
    const whole = 300 + (6000 - 300 * fresh) / spent;
    expect(whole - tired.si('time', 1)).toBeGreaterThan(0);
    expect(whole - tired.si('time', 1)).toBeLessThan(1);
    const unlimited = answer('your-hill', query).si('time', 1);
    expect(tired.si('time-lost', 1)).toBeCloseTo(tired.si('time', 1) - unlimited, 6);
  });

  test('is said with where, what follows and that it is hard', () => {
    expect(plain(tired.said)).toMatch(/You hold 230 W for about 5:00, up to \d+ m along, \d+ m up\./);
    expect(plain(tired.said)).toContain('the answer goes on at the 180 W that you hold for long');
    expect(tired.said).toContain('ask a doctor first');
  });
});

describe('a way down', () => {
  const down = 'profile=1:200,10:1500,-150:300,15&name=A&bike=20&motor=none&power=100W';

  test('is ridden no faster than the fastest downhill, and the brakes say so', () => {
    const [ride] = ridesOf(down);
    if (!ride) throw new Error('There is no ride.');
    expect(Math.max(...ride.points.speed)).toBeLessThanOrEqual((40 / 3.6) * (1 + 1e-12));
    expect(ride.brakes).toBeGreaterThan(0);
    const { result, said } = answer('your-hill', down);
    expect(result('binds', 1).text).toBe('brakes');
    expect(plain(said)).toContain('the rider brakes rather than go faster than 40 km/h, our assumption');
    expect(said).toContain('as fast as you can see and stop');
  });

  test('is a descent, and braking is told by whoever rides along it', () => {
    const { said } = answer('side-by-side', 'profile=1:600,-40:600,-20:300,5&motor=250');
    expect(plain(said)).toContain('the rider brakes rather than go faster than 40 km/h, our assumption');
    expect(plain(answer('bigger-hill', 'target-profile=1:600,-40:600,-20:300,5').said)).toContain(
      'the rider brakes rather',
    );
    expect(answer('your-hill', 'profile=1:600,-40:600,-20:300,5').said).not.toMatch(/from the bottom|Steep parts/);
  });

  test('takes longer with a lower one, by what the slower metres take', () => {
    const [slow, fast] = ['20km/h', '30km/h'].map((speed) =>
      answer('your-hill', `${down}&top-speed=${speed}`).si('time', 1),
    );
    // nearly all of 1,500 m: 1500 / 5.56 − 1500 / 8.33 = 90 s; and with less it rolls up what follows: ½ · 102 kg (8.33² − 5.56²) / 96 W = 20 s
    expect((slow ?? 0) - (fast ?? 0)).toBeGreaterThan(80);
    expect((slow ?? 0) - (fast ?? 0)).toBeLessThan(112);
  });
});

describe('the example', () => {
  const { outcome, si, said, half } = answer('your-hill');

  test('is invented, about 3 km and 260 m, and its pieces steepen, level out and fall', () => {
    expect(si('distance')).toBe(3040);
    expect(si('gain')).toBeCloseTo(260, 9);
    expect(si('steepest')).toBeGreaterThan(0.18);
  });

  test('says what the mean grade leaves out, with the numbers of its results', () => {
    expect(si('time-bias', 3)).toBeGreaterThan(30);
    expect(plain(said)).toContain(
      // the table has it in whole seconds too
      `At its mean grade of 8.6 % the model would say 9:07 for Full: ${si('time-bias', 3).toFixed(0)} s too little.`,
    );
    expect(said).toContain('Steep parts cost more time than gentle ones win back.');
    expect(plain(said)).toContain('The hill is 17 straight pieces');
  });

  test('says on how much of the way the limit holds each bike back, and on which stretches', () => {
    // the flat from 0.98 to 1.37 km and the dip from 1.81 km on; it must first come up to speed
    expect(plain(said)).toMatch(
      /Light is held back by the assist limit of 25 km\/h on \d+ m of the way \(1\.0\d to 1\.3\d km and 1\.8\d? to 2\.0\d? km along\)\./,
    );
    // the strong one from the gentle start on too
    expect(plain(said)).toMatch(
      /Full is held back .* of the way \(0 to 1\d\d m, [\d.]+ to [\d.]+ km and [\d.]+ to [\d.]+ km along\)\./,
    );
  });

  test('has no range of where a limit is first met: it jumps from one stretch to another', () => {
    // Mid is held back from 1 km on, but from the start on where it is a little faster: half of that way is no place
    const { outcome } = answer('your-hill');
    const places = outcome.results.filter(({ name }) => name.startsWith('binds-'));
    expect(places).toHaveLength(6);
    for (const { si, low, high } of places) {
      expect(si).toBeGreaterThanOrEqual(0);
      expect([low, high]).toEqual([undefined, undefined]);
    }
    // a battery runs down whatever the road
    expect(answer('your-hill', 'battery=40').result('binds-after', 2).low).toBeGreaterThan(200);
  });

  test('has gaps surer than times, and the fastest has none', () => {
    expect(si('gap', 3)).toBe(0);
    expect(half('gap', 1)).toBeLessThan(half('time', 1));
    expect(outcome.results.filter(({ name }) => name === 'gap')).toHaveLength(3);
  });
});

test('the lowest gear: where the cadence falls, the torque gives less, and only where it is known', () => {
  const ramp = 'profile=1:100,5:400,80&name=A&bike=22&motor=500W&power=120W';
  const easy = answer('your-hill', `${ramp}&torque=50Nm&ring=28&sprocket=51`);
  const hard = answer('your-hill', `${ramp}&torque=50Nm&ring=38&sprocket=42`);
  expect(hard.si('time', 1)).toBeGreaterThan(easy.si('time', 1) + 5);
  expect(plain(hard.said)).toMatch(/A: at 75 rpm its 50 N·m make|in the lowest gear the cadence falls/);
  const unknown = ['28', '38'].map((ring) => answer('your-hill', `${ramp}&ring=${ring}`).si('time', 1));
  expect(unknown[0]).toBe(unknown[1]);
});

test('nobody pedals: no times, one sentence', () => {
  const { result, remarks, tones } = answer('your-hill', 'power=0');
  expect(result('time', 1).reason).toBe('This power does not move the bike on this hill.');
  expect(remarks[0]).toBe('Nobody pedals: a motor that assists gives nothing then.');
  expect(tones[0]).toBe('wrong');
});

test('height and distance behind along pieces come from the road and not from its mean', () => {
  // the last bike is on the steep end when the first tops out: more height left than the mean grade says
  const { si } = answer('side-by-side', 'profile=1:2000,20:400,80');
  const left = si('distance-behind', 1);
  expect(left).toBeGreaterThan(20);
  expect(left).toBeLessThan(400);
  expect(si('height-behind', 1)).toBeCloseTo((left * 80) / 400, 9);
});

test('another hill in pieces is compared by its mean grade, and says so', () => {
  // the same mean grade as the measured 235 m on 2,400 m
  const { said, si } = answer('bigger-hill', 'target-profile=1:2400,400:2400,70');
  expect(said).toContain('grades are compared by the mean of all');
  expect(said).not.toContain('too different for multiplying');
  expect(si('target-grade')).toBeCloseTo(si('grade'), 12);
  // multiplying: twice the height, twice the time; the model knows that the steep half takes longer than the gentle one saves
  expect(si('time-proportional', 3)).toBeCloseTo(2 * 478, 9);
  expect(si('time', 3)).toBeGreaterThan(2 * 478);
  expect(answer('bigger-hill', 'target-profile=1:2400,400:2400,300').said).toContain('on average');
});

import { describe, expect, test } from 'vitest';
import { clockText } from '../../calculators/plan/clock.ts';
import { type PlanAbout, plan } from '../../calculators/plan/outcome.ts';
import { withControls } from '../../calculators/plan/schedule.ts';
import { DAY_DOUBTS } from '../../calculators/scenario/doubts.ts';
import { defaultOf, problemsOf, readLink } from '../../calculators/scenario/vocabulary.ts';
import { random, relative } from '../random.ts';
import { answer } from './outcome.ts';

const planOf = (query = '') => answer('plan', query);

/** What stands behind the answer. @throws where there is no plan */
function aboutOf(query: string): PlanAbout {
  const { about } = plan(readLink('plan', query));
  if (!about) throw new Error(`plan/?${query} has no plan.`);
  return about;
}

/** Two bikes alike, no control run and nothing that does not average: the plain test of two samples. */
const TWO = 'name=A,B&bike=20,20&motor=400,400&between=0&control-time=none';

/** 95 % half-width over standard deviation, as the vocabulary has it. */
const COVERAGE = 1.96;

/** Standard deviation of one run of the slowest bike, s. */
const deviation = (query: string): number => planOf(query).si('scatter-time') / COVERAGE;

describe('how many runs: R’s power.t.test(delta = 1, sd = 1) of two samples, values from memory, recomputed', () => {
  const difference = `difference=${deviation(TWO)}s`;

  test('20 runs of each: power 0.8689528', () => {
    expect(planOf(`${TWO}&${difference}&repeats=20`).si('chance')).toBeCloseTo(0.8689528, 6);
  });

  test('power 0.90: 22.02 runs of each, so 23', () => {
    expect(planOf(`${TWO}&${difference}&chance=90`).si('repeats')).toBe(23);
  });

  test('what 23 runs find with that chance is a little less than one standard deviation', () => {
    const { si } = planOf(`${TWO}&${difference}&chance=90`);
    expect(si('detectable-difference') / deviation(TWO)).toBeGreaterThan(0.97);
    expect(si('detectable-difference') / deviation(TWO)).toBeLessThan(1);
  });

  test('of two bikes, every pair is one pair', () => {
    const { si } = planOf(TWO);
    expect(relative(si('detectable-difference-all'), si('detectable-difference'))).toBeLessThan(1e-7);
  });
});

test('the number of runs is the least: with one fewer the chance is below what is wanted', () => {
  const r = random(401);
  for (let i = 0; i < 20; i++) {
    const query = `difference=${r.between(40, 100).toFixed(1)}s&scatter=${r.between(1, 6).toFixed(1)}&chance=${r.whole(60, 95)}`;
    const needed = planOf(query).si('repeats');
    const wanted = Number(/chance=(\d+)/.exec(query)?.[1]) / 100;
    expect(planOf(`${query}&repeats=${needed}`).si('chance'), query).toBeGreaterThanOrEqual(wanted);
    if (needed > 2) expect(planOf(`${query}&repeats=${needed - 1}`).si('chance'), query).toBeLessThan(wanted);
  }
});

describe('what does not average', () => {
  test('no number of runs finds less than (z 0.975 + z 0.8) √2 times it, a normal approximation that is good to 1 in 10,000 there', () => {
    const { si } = planOf();
    const secondsPerShare = si('scatter-time') / si('scatter');
    expect(
      relative(si('least-difference'), (1.959964 + 0.841621) * Math.SQRT2 * (0.015 / COVERAGE) * secondsPerShare),
    ).toBeLessThan(1e-4);
  });

  test('below that no number is enough, and the page says what hides it', () => {
    const { result, si, said, tones } = planOf('difference=10s');
    expect(result('repeats')).toMatchObject({
      reason: 'No number of runs to 60 finds that difference with that chance.',
    });
    expect(si('repeats-planned')).toBe(4);
    expect(tones).toContain('wrong');
    expect(said).toContain('Tyres and drive do not average');
  });

  test('unlike tyres hide far more', () => {
    const [same, unlike] = [planOf().si('least-difference'), planOf('same-tyres=no').si('least-difference')];
    expect(unlike / same).toBeGreaterThan(2);
    expect(planOf('same-tyres=no').said).toContain('Unlike tyres');
  });

  test('what unlike tyres cost lies where it was computed for such a hill: 12 to 59 W from the best to the worst', () => {
    // one pair at 95 %: the W that no number of runs finds with half a chance is the half-width of that difference
    const query =
      'distance=1mi&gain=550ft&rider=80kg&power=200W&bike=37lb,45lb,52lb&time=7:22,5:57,4:56&between=0&same-tyres=no&chance=50';
    const { si } = planOf(query);
    const watts = (si('least-difference') / si('detectable-difference')) * si('detectable-power');
    expect(watts).toBeGreaterThan(12);
    expect(watts).toBeLessThan(59);
  });
});

describe('scatter', () => {
  test('a share of power in seconds: time over 1 + 2 × the share of the air, where all other forces are the same at any speed', () => {
    // P = v (F + k v²), so dP/P = (1 + 2 k v²/(F + k v²)) dv/v, and the time changes as the speed does; bearings rise with speed a little
    const { si } = planOf();
    const climb = answer('climb-time', 'bike=17kg&motor=280W');
    const air = climb.si('power-air') / (climb.si('crank-power') * 0.96);
    const secondsPerShare = si('scatter-time') / si('scatter');
    expect(relative(secondsPerShare, climb.si('time') / (1 + 2 * air))).toBeLessThan(1e-3);
    const perWatt = si('detectable-difference') / si('detectable-power');
    expect(relative(perWatt * 450, secondsPerShare)).toBeLessThan(1e-8);
  });

  test('assumed scatter, meter and stopwatch add in squares', () => {
    const [scatter, meter, watch] = ['meter-repeat=0&watch=0', 'scatter=0&watch=0', 'scatter=0&meter-repeat=0'].map(
      (query) => planOf(query).si('scatter'),
    ) as [number, number, number];
    expect(scatter).toBeCloseTo(0.035, 12);
    expect(planOf().si('scatter')).toBeCloseTo(Math.hypot(scatter, meter, watch), 12);
  });

  test('three repeats: 95 % of standard deviations from three lie between 0.521 and 6.285 times theirs', () => {
    // chi-square with 2 degrees of freedom: 0.025 at 0.0506356, 0.975 at 7.377759, from the usual tables
    const { si = 0, low = 0, high = 0 } = planOf('own-times=7:22,7:18,7:30').result('scatter');
    expect(low / si).toBeCloseTo(Math.sqrt(2 / 7.377759), 6);
    expect(high / si).toBeCloseTo(Math.sqrt(2 / 0.0506356), 4);
  });

  test('repeats of the slowest bike scatter in time as they do', () => {
    // 442, 438 and 450 s: mean 443.333, squares 1.778 + 28.444 + 44.444 = 74.667, over 2: 6.110 s
    const { si, said } = planOf('distance=1mi&gain=550ft&time=7:23.333,5:57,4:56&own-times=7:22,7:18,7:30');
    expect(si('scatter-time') / COVERAGE).toBeCloseTo(6.11, 2);
    expect(said).toContain('count in place of the assumed scatter');
    expect(said).not.toContain('The scatter is assumed');
  });

  test('their range is that of the answer; its far end may be out of sight', () => {
    const { result, said } = planOf('own-times=7:22,7:18,7:30&difference=30s');
    expect(result('repeats').low).toBe(2);
    expect(result('repeats').high).toBeUndefined();
    expect(said).toContain('2 runs of each or many more may be needed');
    const many = planOf('own-times=11:30,11:36,11:42,11:34,11:38,11:28,11:44,11:35,11:37').result('repeats');
    expect(many.low).toBeLessThanOrEqual(many.si ?? 0);
    expect(many.high).toBeGreaterThanOrEqual(many.si ?? 0);
  });

  test('none at all: two runs, and what does not average is all there is', () => {
    const { si } = planOf('scatter=0&meter-repeat=0&watch=0');
    expect(si('repeats')).toBe(2);
    expect(si('detectable-difference')).toBe(si('least-difference'));
    const nothing = planOf('scatter=0&meter-repeat=0&watch=0&between=0');
    expect([nothing.si('chance'), nothing.si('detectable-difference')]).toEqual([1, 0]);
  });
});

describe('the day, worked out by hand', () => {
  const DAY = 'name=A,B&bike=20,20&time=10:00,12:00&control-time=20:00,20:00&way-down=5:00&cool-down=5:00&repeats=2';

  test('every run by the clock', () => {
    // there and back: control 20 + 10, A 20, B 22, B 22, A 20, control 20 + 5 at its end
    const { schedule } = aboutOf(`${DAY}&order=forward-and-back`);
    expect(schedule.runs.map(({ bike }) => bike)).toEqual([null, 0, 1, 1, 0, null]);
    expect(schedule.runs.map(({ start }) => clockText(start))).toEqual([
      '9:00',
      '9:30',
      '9:50',
      '10:12',
      '10:34',
      '10:54',
    ]);
    expect(planOf(`${DAY}&order=forward-and-back`).si('ends-at')).toBe((11 * 60 + 19) * 60);
  });

  test('last light: what fits in, and what that finds', () => {
    const { si, said } = planOf(`${DAY}&last-light=10:45`);
    expect(si('runs-in-light')).toBe(4);
    // one of each: control 30, A 20, B 22, control 25: back at 10:37
    expect(si('repeats-in-light')).toBe(1);
    expect(said).toContain(
      'The last run is back at 11:19, after last light at 10:45: 4 of 6 runs fit. Drop first: ride a second day, with control runs of its own.',
    );
    expect(planOf('last-light=12:00').said).toContain(
      'Drop first: (1) ride each bike twice, which shows the gaps that you expect; (2)',
    );
    expect(planOf(`${DAY}&last-light=11:19`).si('runs-in-light')).toBe(6);
    expect(planOf(`${DAY}&last-light=8:00`).said).toContain('Last light comes before the first start.');
  });

  test('batteries: full again before the run that would take them below what is kept', () => {
    // 300 W at the crank for 600 s through 0.8: 62.5 Wh; of 160 Wh, 32 are kept, so two runs leave 35 and a third would not
    const query = `distance=2000m&gain=200m&power=170W&time=10:00,10:00&battery=160Wh,160Wh&repeats=3&between=1`;
    const { si } = planOf(query);
    const motor = si('motor-power', 1);
    expect(si('battery-energy', 1)).toBeCloseTo((motor * 600) / 0.8, 6);
    const needs = si('battery-energy', 1) / 3600;
    const fit = Math.floor((160 - 32) / needs);
    expect(si('swaps', 1)).toBe(Math.ceil(3 / fit) - 1);
    expect(aboutOf(query).schedule.runs.filter(({ swapped }) => swapped).length).toBe(si('swaps', 1) + si('swaps', 2));
    expect(si('battery-left', 1)).toBeGreaterThanOrEqual(0.2);
  });

  test('a battery too small for one run is named', () => {
    const { said, si } = planOf('battery=20Wh,540Wh,720Wh');
    expect(said).toContain('Light: one run takes more than its battery gives above what is kept.');
    expect(si('battery-left', 1)).toBe(0);
  });

  test('a new battery takes its time', () => {
    const [quick, slow] = ['swap=0:00', 'swap=30:00'].map((swap) => planOf(`battery=150Wh,540Wh,720Wh&${swap}`));
    expect((slow?.si('ends-at') ?? 0) - (quick?.si('ends-at') ?? 0)).toBeCloseTo(
      1800 * (quick?.si('swaps', 1) ?? 0),
      6,
    );
    expect(quick?.si('swaps', 1)).toBeGreaterThan(0);
  });

  test('a clock past midnight says which day', () => {
    expect([0, 59, 86_340, 86_400 + 600, 3 * 86_400 + 3600].map(clockText)).toEqual([
      '0:00',
      '0:01',
      '23:59',
      '0:10 the next day',
      '1:00, 3 days later',
    ]);
  });
});

describe('order', () => {
  test('control runs are first and last, others evenly between', () => {
    const rides = [0, 1, 2, 0, 1, 2];
    const places = (controls: number): number[] =>
      withControls(rides, controls).flatMap((ride, i) => (ride === null ? [i] : []));
    expect(places(0)).toEqual([]);
    expect(places(1)).toEqual([0]);
    expect(places(2)).toEqual([0, 7]);
    expect(places(3)).toEqual([0, 4, 8]);
    expect(withControls(rides, 3).filter((ride) => ride !== null)).toEqual(rides);
  });

  test.each(['rotated', 'forward-and-back'])('%s: every bike as often as planned', (order) => {
    for (const bikes of [2, 3, 4, 5, 6]) {
      const { schedule } = aboutOf(`name=${'ABCDEF'.slice(0, bikes).split('').join(',')}&repeats=3&order=${order}`);
      for (let bike = 0; bike < bikes; bike++) expect(schedule.runs.filter((run) => run.bike === bike)).toHaveLength(3);
    }
  });

  test('rotated: after as many rounds as bikes, each has stood in each place once', () => {
    const { schedule } = aboutOf('name=A,B,C,D&repeats=4&control-time=none');
    for (let bike = 0; bike < 4; bike++) {
      const places = schedule.runs.flatMap((run, i) => (run.bike === bike ? [i % 4] : []));
      expect(places.sort()).toEqual([0, 1, 2, 3]);
    }
  });
});

describe('legs', () => {
  test('what is left, by hand', () => {
    // 20 W above 200 W for 600 s: 12 kJ of 15; 600 s of rest at 200 W below leave e^-8 of what was spent; four such runs
    const query = 'name=A,B&time=10:00,10:00&power=220W&control-time=none&way-down=5:00&cool-down=5:00&repeats=2';
    const q = Math.exp(-8);
    const spent = 12_000 * (1 + q + q * q + q ** 3);
    expect(planOf(query).si('legs-lowest')).toBeCloseTo((15_000 - spent) / 15_000, 9);
    expect(planOf(query).si('rider-work')).toBeCloseTo(4 * 220 * 600, 6);
  });

  test('at the highest power that they last they are used up, and a watt more is too much', () => {
    const power = planOf('power=210W').si('power-lasting');
    expect(Math.abs(planOf(`power=${power}W`).si('legs-lowest'))).toBeLessThan(1e-6);
    expect(planOf(`power=${power + 1}W`).si('legs-lowest')).toBeLessThan(0);
  });

  test('where rests bring them back, the shortest one does', () => {
    const query = 'power=221W&way-down=0:00&cool-down=0:00';
    const rest = planOf(query).si('rest-lasting');
    expect(rest).toBeGreaterThan(60);
    const at = (seconds: number): number =>
      planOf(
        `${query.replace('&cool-down=0:00', '')}&cool-down=${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`,
      ).si('legs-lowest');
    expect(at(Math.ceil(rest))).toBeGreaterThanOrEqual(0);
    expect(at(Math.floor(rest) - 1)).toBeLessThan(0);
    expect(planOf(query).said).toContain('they do not come back between the runs. Drop first: (1)');
  });

  test('what to drop comes in one order: runs, power, rest', () => {
    const said = planOf('power=221W&way-down=0:00&cool-down=0:00').said;
    const places = ['ride each bike twice', 'hold 2', 'cool down for'].map((words) => said.indexOf(words));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  test('one run too long: no rest helps, less power does', () => {
    const { result, said } = planOf('power=300W');
    expect(result('rest-lasting').reason).toBe('One run alone asks more than your legs have.');
    expect(said).toContain('one run alone is too long at that power');
    expect(said).toContain('W on every run');
  });

  test('control runs alone too much', () => {
    const { result, said } = planOf('control-power=300,300&control-time=20:00,20:00');
    expect(result('power-lasting').reason).toBe('The control runs alone ask more than your legs have.');
    expect(said).toContain('ride the control runs at less power');
  });
});

describe('gaps that are expected', () => {
  test('each bike against the next faster one', () => {
    const { si, result } = planOf('time=11:00,10:00,9:30');
    expect([si('gap', 1), si('gap', 2)]).toEqual([60, 30]);
    expect(result('gap', 3).reason).toBe('No bike is faster.');
    expect(si('gap-chance', 1)).toBeGreaterThan(si('gap-chance', 2));
    expect(si('repeats-for-gaps')).toBe(
      Math.max(si('repeats-for-gap', 1), si('repeats-for-gap', 2), si('repeats-for-gap', 3)),
    );
  });

  test('bikes alike are no gap that runs could show', () => {
    const { si, result } = planOf('time=10:00,10:00,8:00');
    expect(si('gap', 1) + si('gap', 2)).toBe(120);
    expect(result('repeats-for-gap', 1).reason).toBe('No number of runs to 60 shows it.');
    expect(result('repeats-for-gaps').reason).toMatch(/every gap/);
  });
});

describe('what cannot be', () => {
  test('a difference of nothing', () => {
    const { result, said } = planOf('difference=0s');
    expect(result('repeats').reason).toBe('No number of runs shows a difference of nothing.');
    expect(said).toContain('Say how many seconds would matter');
  });

  test('one run of each shows no scatter of the bikes', () => {
    const { result, said, si } = planOf('repeats=1&control-time=none');
    expect(result('detectable-difference').reason).toBe('One run of each shows no scatter.');
    expect(si('chance')).toBe(0);
    expect(said).toContain('ride each bike twice at least');
  });

  test('nobody pedals, or a road that is steeper than long: one sentence for every result', () => {
    for (const query of ['power=0W', 'distance=200m&gain=200m', 'grade=-10&power=0W']) {
      const { outcome, remarks } = planOf(query);
      for (const { reason } of outcome.results) expect(reason, query).toBe(remarks.at(-1));
    }
  });

  test('an expected time faster than the limit, or slower than legs alone', () => {
    expect(planOf('time=2:00,9:00,8:00').said).toContain('Light: the expected time is faster than its motor may help.');
    expect(planOf('time=1:30:00,9:00,8:00').said).toContain(
      'Light: the expected time is longer than legs alone would need.',
    );
    expect(planOf('gain=60m').said).toContain('of its assist limit, where its motor begins to give less');
  });

  test('nonsense in texts that must have a form', () => {
    for (const [name, text, sentence] of [
      ['own-times', '7:22', 'Your own repeats: write two to twenty times, such as 7:22, 7:18, 7:30.'],
      ['own-times', '7:22, soon', 'Your own repeats: “soon” cannot be read. Write 7:22, 1:05:30 or 16 min 43 s.'],
      ['order', 'any', 'Order: write rotated or forward-and-back. Until then the answer uses rotated.'],
      ['same-tyres', 'maybe', 'Same tyres on all: write yes or no. Until then the answer uses yes.'],
      [
        'first-start',
        '25:00',
        'First start: write a time of the day, such as 9:30 or 17:15. Until then the answer uses 9:00.',
      ],
      [
        'last-light',
        '13 pm',
        'Last light: write a time of the day, such as 9:30 or 17:15. Until then the answer uses 19:00.',
      ],
    ] as const) {
      const query = `${name}=${encodeURIComponent(text)}`;
      expect(problemsOf(readLink('plan', query)).map(({ problem }) => problem)).toEqual([sentence]);
      expect(planOf(query).outcome.results).toEqual(planOf().outcome.results);
    }
  });

  test('times and clocks as people write them', () => {
    const scatter = planOf('own-times=7:22.5,7:18,7:30').si('scatter');
    for (const text of ['7:22,5; 7:18; 7:30', '7:22.5 7:18 7:30', ' 7:22,5, 7:18,  7:30,'])
      expect(planOf(`own-times=${encodeURIComponent(text)}`).si('scatter'), text).toBe(scatter);
    for (const text of ['17:30', '17.30', '17h30', '5:30 pm', '5:30 p.m.', '05:30PM'])
      expect(aboutOf(`last-light=${encodeURIComponent(text)}`).lastLight, text).toBe(17.5 * 3600);
    expect(aboutOf('first-start=12am&last-light=12pm').schedule.runs[0]?.start).toBe(0);
  });
});

test('what a plan assumes is what a test day assumes', () => {
  const { scatter, meterRepeatability, stopwatch, efficiencyBetween } = DAY_DOUBTS;
  expect(['scatter', 'meter-repeat', 'watch', 'between'].map((name) => defaultOf('plan', name))).toEqual([
    scatter,
    meterRepeatability,
    stopwatch,
    efficiencyBetween,
  ]);
});

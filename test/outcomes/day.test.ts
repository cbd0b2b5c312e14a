/** Test days, from what is typed to results and sentences. */
import { describe, expect, test } from 'vitest';
import { checksOf } from '../../calculators/day/checks.ts';
import type { DayBike, DayDocument, DayRun, Texts } from '../../calculators/day/document.ts';
import { emptyDay } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { bikeInputs, runInputs, setupInputs } from '../../calculators/day/inputs.ts';
import { biggerHillQuery } from '../../calculators/day/onward.ts';
import { dayOutcome, pairResult } from '../../calculators/day/outcome.ts';
import { dayResultNames } from '../../calculators/day/results.ts';
import { resultsCsv } from '../../calculators/day/results-file.ts';
import { headlineOf, publishedSentence } from '../../calculators/day/sentences.ts';
import { rankedPairs } from '../../calculators/day/verdicts.ts';
import type { Result } from '../../calculators/scenario/outcome.ts';
import { random } from '../random.ts';
import { timedHill } from '../reference/timed-hill.ts';
import { answer } from './outcome.ts';
import { timedDay, withBike, withoutRuns, withRepeats, withSetup, withTexts } from './timed-day.ts';

/** What a document answers, in the shape that tests ask in. */
function told(document: DayDocument) {
  const outcome = dayOutcome(document);
  const result = (name: string, bike?: number): Result => {
    const found = outcome.results.find((one) => one.name === name && (bike === undefined || one.bike === bike));
    if (!found) throw new Error(`There is no ${name} of bike ${bike}.`);
    return found;
  };
  const si = (name: string, bike?: number): number => result(name, bike).si ?? Number.NaN;
  const halfOf = ({ low = Number.NaN, high = Number.NaN }: Result): number => (high - low) / 2;
  const checks = checksOf(document, outcome);
  /** the verdict on two bikes by name, the faster first */
  const verdict = (faster: string, slower: string) => {
    const names = outcome.reading.bikeNames;
    const pair = rankedPairs(outcome).find((one) => names[one.faster] === faster && names[one.slower] === slower);
    if (!pair) throw new Error(`There is no verdict on ${faster} before ${slower}.`);
    return { ...pair.verdict, time: pair.pair.time, motorPower: pair.pair.motorPower };
  };
  return {
    outcome,
    result,
    si,
    half: (name: string, bike?: number) => halfOf(result(name, bike)),
    halfOf,
    checks,
    said: checks.map(({ text }) => text).join('\n'),
    verdict,
    headline: headlineOf(document, outcome),
    sentence: publishedSentence(document, outcome),
  };
}

const [LIGHT, MID, FULL] = [2, 3, 4] as const;

/** A second light-assist bike, 17 s faster: with 450 to 500 W in all, 17/425 of them are about 21 W. */
const second = (texts: Texts = {}): DayDocument =>
  withBike('other', { name: 'Second light', bike: '37', ...texts }, [['7:05', '200']]);

describe('the hill of 1 mile and 550 ft as a test day', () => {
  const { si, result, outcome } = told(timedDay);

  test('motors of about 300, 450 and 620 W, within 5 %, each inside its range', () => {
    for (const [i, bike] of [LIGHT, MID, FULL].entries()) {
      const { low = 0, high = 0 } = result('motor-power', bike);
      const motor = timedHill.bikes[i]?.motor ?? 0;
      expect(Math.abs(si('motor-power', bike) / motor - 1)).toBeLessThan(0.05);
      expect(low).toBeLessThan(motor);
      expect(high).toBeGreaterThan(motor);
    }
  });

  test('the times at the target power are those that were ridden at it: 7:22, 5:57, 4:56', () => {
    expect([LIGHT, MID, FULL].map((bike) => si('time', bike))).toEqual(
      [442, 357, 296].map((time) => expect.closeTo(time, 6)),
    );
  });

  test('light and mid assist are apart, told as real', () => {
    const { verdict } = told(timedDay);
    expect(verdict('Mid', 'Light').text).toBe('Real, also as one of all 3 pairs of the day.');
    const gap = pairResult(outcome, 'gap-time', MID, LIGHT);
    expect(gap?.si).toBeCloseTo(357 - 442, 6);
    expect(gap?.high).toBeLessThan(0);
    expect(pairResult(outcome, 'gap-power', MID, LIGHT)?.low).toBeGreaterThan(0);
  });

  test('the control bike has no results of its own', () => {
    expect(outcome.results.filter(({ bike }) => bike === 1)).toEqual([]);
  });

  test('the headline names the fastest two and how far they are apart', () => {
    const { headline } = told(timedDay);
    expect(headline?.of).toBe('At 200\u202fW, Full is first up, ahead of Mid by');
    expect(headline?.value).toBe('1:01');
  });

  test('the sentence to print holds hill, rider, power, runs, masses and ranges', () => {
    const { sentence } = told(timedDay);
    for (const part of [
      'Up a hill of 1\u202fmi that gains 550\u202fft',
      'at 200\u202fW from a rider of 176.4\u202flb with kit',
      '4:56 (',
      'on Full (52\u202flb, 1\u202frun)',
      'Full before Mid and Mid before Light',
      'from 5\u202fruns, 2 of them control runs.',
    ])
      expect(sentence).toContain(part);
  });
});

describe('a second light-assist bike with 7:05', () => {
  test('has about 21 W more', () => {
    const { outcome } = told(second());
    expect(pairResult(outcome, 'gap-power', 5, LIGHT)?.si).toBeCloseTo(21, 0);
  });

  test('is apart with instruments alone', () => {
    const { verdict } = told(withSetup({ scatter: '0' }, second()));
    expect(verdict('Second light', 'Light').text).toMatch(/^Real/);
  });

  test('is barely apart with ordinary day scatter: not with one run of each, alone with three', () => {
    expect(told(second()).verdict('Second light', 'Light').text).toBe(
      'Not shown. If these two alone were compared, a difference of this size would need 1\u202fmore run of each.',
    );
    const three = told(withRepeats(second(), ORDINARY));
    const { time, motorPower } = three.verdict('Second light', 'Light');
    expect(time.realAlone).toBe(true);
    // its range ends within a third of itself from zero
    const { value, high } = motorPower.difference;
    expect((high - value) / value).toBeGreaterThan(2 / 3);
  });

  test('with unlike tyres its motor is not apart, and no number of runs would show it', () => {
    const document = withSetup({ scatter: '0' }, second({ tyres: 'others' }));
    const { verdict, said } = told(document);
    const { text, motorPower, time } = verdict('Second light', 'Light');
    expect(time.realAmongAll).toBe(true);
    expect(motorPower.realAlone).toBe(false);
    expect(motorPower.runsNeeded).toBeNull();
    expect(text).toContain(
      'In watts of the motor: not shown, and no number of runs would show it. The same in every run: tyres that are not alike.',
    );
    expect(said).toMatch(/Second light rolls on tyres that no control run was ridden on.*±\d+\u202fW/);
  });
});

/** Factors on the time of a bike's three runs: 1.8 % of scatter, as one run to the next has on an ordinary day. */
const ORDINARY = [0.982, 1, 1.018];

describe('a run 3 W under target', () => {
  const under = ['l1', 'm1', 'f1'].reduce((day, run) => withTexts(run, { power: '197' }, day), timedDay);
  const correction = (document: DayDocument): number[] =>
    [LIGHT, MID, FULL].map((bike) => -told(document).si('correction', bike));

  // computed for the project beforehand with motors of 300, 450 and 620 W exactly: 2.4, 1.5, 0.9 s; these times are those of 298, 447 and 618 W
  test('is corrected by about 2.4, 1.5 and 0.9 s with motors that give their most', () => {
    expect(correction(under)).toEqual([2.4, 1.5, 0.9].map((s) => expect.closeTo(s, 0)));
    for (const [i, s] of [2.4, 1.5, 0.9].entries())
      expect(Math.abs((correction(under)[i] ?? 0) - s)).toBeLessThan(0.15);
  });

  test('and by 6.1, 4.9 and 3.9 s where support × rider power binds, which is said', () => {
    // 298, 447 and 618 W over 197 W
    const binding = Object.entries({ light: '152.7 %', mid: '228.7 %', full: '315.3 %' }).reduce(
      (day, [bike, support]) => withTexts(bike, { support }, day),
      under,
    );
    for (const [i, s] of [6.1, 4.9, 3.9].entries())
      expect(Math.abs((correction(binding)[i] ?? 0) - s)).toBeLessThan(0.25);
    expect(told(binding).said).toContain(
      'Light, Mid and Full: at 200\u202fW the motors give their support times the rider’s power',
    );
    expect(told(under).said).not.toContain('support');
  });
});

describe('without control runs, a meter good to 1 %, C_rr 0.015 to 0.035', () => {
  // a day as one should be ridden: three runs of each, alike to 0.5 %
  const ridden = withSetup({ meter: '1 %' }, withRepeats(timedDay, [0.995, 1, 1.005]));
  const without = withoutRuns(['c1', 'c2'], ridden);

  test('the absolute ranges at least double', () => {
    for (const bike of [LIGHT, MID, FULL])
      expect(told(without).half('motor-power', bike)).toBeGreaterThan(2 * told(ridden).half('motor-power', bike));
  });

  test('the page says why, and that gaps suffer far less', () => {
    const { said, verdict } = told(without);
    expect(said).toMatch(
      /No control run, so nobody knows how this hill rolls: ordinary trails lie between 0\.015 and 0\.035, and all of that width is allowed for\. That alone is ±\d+\u202fW of the ±\d+\u202fW around Full’s motor; far less of it falls on the gaps/,
    );
    expect(verdict('Mid', 'Light').real).toBe(true);
    expect(told(ridden).said).not.toContain('No control run');
  });
});

describe('a day without any rider power', () => {
  // without the second control run, which was ridden at another power
  const unread: DayDocument = {
    ...timedDay,
    runs: timedDay.runs.slice(0, 4).map(({ texts: { power: _, ...texts }, ...run }) => ({ ...run, texts })),
  };

  test('has far wider watts, hardly wider gaps in time, and both are said', () => {
    const half = (document: DayDocument): number => told(document).half('motor-power', FULL);
    // a meter that is off by a share is so for control and assisted runs, so the motor of 618 W is off by that share: 93 W beside the rest
    expect(half(unread)).toBeGreaterThan(2 * half(timedDay));
    expect(half(unread)).toBeGreaterThan(0.15 * 618);
    const { said, sentence, verdict } = told(unread);
    expect(said).toMatch(
      /No run has a rider power, so 200\u202fW is taken for all of them, known to ±15\u202f% at best/,
    );
    expect(said).not.toContain('Hang known weights');
    expect(sentence).toContain('at 200\u202fW by feel, not by a meter, from');
    expect(verdict('Mid', 'Light').time.realAmongAll).toBe(true);
  });
});

describe('a doubtful meter', () => {
  // 3.2 % is one standard deviation of 54 meters (Maier and others 2017), so ±6.3 % holds 95 of 100
  const doubtful = withSetup({ meter: '6.3 %' }, timedDay);

  test('widens the motors’ ranges, and the page says that it makes the control runs worth less', () => {
    expect(told(doubtful).half('motor-power', FULL)).toBeGreaterThan(1.15 * told(timedDay).half('motor-power', FULL));
    expect(told(doubtful).said).toMatch(/only known to ±6\.3\u202f%.*makes the control runs worth less/);
    expect(told(timedDay).said).not.toContain('power meter');
  });

  test('hardly touches the gaps in time', () => {
    const gap = (document: DayDocument): number => {
      const { outcome, halfOf } = told(document);
      return halfOf(pairResult(outcome, 'gap-time', MID, LIGHT) as Result);
    };
    expect(gap(doubtful) / gap(timedDay)).toBeLessThan(1.05);
  });
});

describe('what is odd, in words', () => {
  const says = (document: DayDocument, part: string | RegExp): void => {
    const { said } = told(document);
    if (typeof part === 'string') expect(said).toContain(part);
    else expect(said).toMatch(part);
  };

  test('a row whose time and mean speed cannot both be true: one mile in 7:05 is 8.47 mph, not 10', () => {
    const { checks } = told(withTexts('l1', { time: '7:05', speed: '10' }));
    expect(checks[0]?.tone).toBe('wrong');
    expect(checks[0]?.text).toMatch(/^Run\u202f2: 1\u202fmi in 7:05 is 8\.47\u202fmph, not 10\u202fmph/);
    expect(told(withTexts('l1', { time: '7:05', speed: '8.47' })).said).not.toContain('mph');
  });

  test('the plain day has nothing wrong', () => {
    expect(told(timedDay).checks.map(({ tone }) => tone)).not.toContain('wrong');
    expect(told(exampleDay()).checks).toEqual([]);
  });

  test('a time that needs a motor stronger than the bike’s claim', () => {
    says(
      withTexts('light', { motor: '250' }),
      /Light: these times need 298\u202fW from a motor whose claim is 250\u202fW/,
    );
    // its range, 272 to 324 W, reaches down to 290
    expect(told(withTexts('light', { motor: '290' })).said).not.toContain('claim');
  });

  test('a time longer than the rider alone would need', () => {
    says(withTexts('l1', { time: '20:00' }), /Light: its runs took longer than the rider alone would need.*below zero/);
  });

  test('an efficiency that cannot be, and what is likely wrong', () => {
    const gauge = (start: string, end: string, battery = '360'): DayDocument =>
      withTexts('light', { battery }, withTexts('l1', { start, end }));
    // 298 W for 442 s is 36.6 Wh: of 360 Wh a tenth
    says(
      gauge('90', '88'),
      /the battery gave 7\.2\u202fWh, less than the work that its motor did.*gauge readings, the battery’s energy/,
    );
    says(gauge('90', '79'), /Light: the drive would have an efficiency of 0\.92, better than drives are/);
    says(gauge('90', '60'), /Light: the drive would have an efficiency of 0\.34, worse than drives are/);
    expect(told(gauge('90', '77')).said).not.toContain('efficiency');
  });

  test('a rolling resistance that looks absurd names the rider’s mass first', () => {
    says(
      withSetup({ rider: '120 kg' }),
      /below zero, which no tyre does.*check the rider’s mass \(264\.6\u202flb with kit\) first/,
    );
    says(withSetup({ rider: '65 kg' }), /outside what ordinary trails have \(0\.015 to 0\.035\).*rider’s mass/);
  });

  test('power off target by more than correcting covers names the runs', () => {
    says(withTexts('l1', { power: '185' }), 'Run\u202f2 (Light): more than 5\u202f% off the target of 200\u202fW.');
    says(
      withTexts('m1', { power: '212' }, withTexts('l1', { power: '185' })),
      'Runs\u202f2 (Light) and 3 (Mid): more than 5\u202f% off the target',
    );
    expect(told(withTexts('l1', { power: '191' })).said).not.toContain('off the target');
  });

  test('one control run only, and control runs that are not first and last', () => {
    says(withoutRuns(['c2']), 'Run\u202f1 (Control) is the only control run: its error moves every motor alike');
    const [c1, ...others] = timedDay.runs;
    const late: DayDocument = { ...timedDay, runs: [...others, ...(c1 ? [c1] : [])] };
    says(late, 'The control runs do not stand first and last');
    expect(told(timedDay).said).not.toContain('first and last');
  });

  test('control runs that disagree', () => {
    // 16:43 and 15:43 at the same power are 6 % of power apart
    says(
      withTexts('c2', { time: '15:43', power: '200' }),
      /The control runs disagree: runs\u202f1 and 5 are [56]\.\d\u202f% of power apart/,
    );
    expect(told(timedDay).said).not.toContain('disagree');
  });

  test('a run at another cadence than the other runs of its bike', () => {
    const ridden = (...cadences: readonly string[]): DayDocument =>
      cadences.reduce(
        (day, cadence, i) => withTexts(`l1${i + 1}`, { cadence }, day),
        withRepeats(
          timedDay,
          cadences.map(() => 1),
        ),
      );
    // forward and back: the light bike is ridden in runs 2, 7 and 8
    says(
      ridden('78', '80', '62'),
      'Run\u202f8 (Light): more than 10\u202frpm off other runs of its bike (62\u202frpm to 80\u202frpm).',
    );
    says(ridden('62', '80'), 'Runs\u202f2 and 7 (Light): more than 10\u202frpm off other runs of its bike');
    // two and two: none of them is the odd one
    says(ridden('62', '80', '79', '63'), /^Runs\u202f2, .* and \d+ \(Light\): more than 10\u202frpm/m);
    for (const cadences of [['70', '80'], ['60', '70', '80'], ['62'], ['62', '', '']])
      expect(told(ridden(...cadences)).said, cadences.join()).not.toContain('rpm');
    // legs alone have no motor that hangs on the cadence
    const control = withTexts('c1', { cadence: '50' }, withTexts('c2', { cadence: '90' }));
    expect(told(control).said).not.toContain('rpm');
  });

  test('a limit close to a bike’s speed, and one that it was ridden inside the fade of', () => {
    // 1 mile in 4:56 is 12.16 mph = 19.6 km/h
    says(withTexts('full', { limit: '22 km/h' }), /Full comes within 1\.9\u202fmph of its limit of 13\.7\u202fmph/);
    says(withTexts('full', { limit: '20.5 km/h' }), /Full was ridden inside the fade before its limit.*a lower bound/);
    says(
      withTexts('full', { limit: '18 km/h' }),
      /Run\u202f4 \(Full\) was ridden at 12\.2\u202fmph, above the assist limit of 11\.2\u202fmph/,
    );
    expect(told(withTexts('full', { limit: '25 km/h' })).said).not.toContain('limit');
  });

  test('wind above 1 m/s, of the day or of a run', () => {
    says(withSetup({ wind: '1.5 m/s' }), /All runs: more than 2\.2\u202fmph of wind/);
    says(withTexts('m1', { wind: '-2 m/s' }), /Run\u202f3 \(Mid\): more than 2\.2\u202fmph of wind/);
  });

  test('one run only of a bike, and that the scatter is assumed', () => {
    says(timedDay, /Light, Mid and Full: one run each.*scatter of a run is assumed/);
  });

  test('an outlying run, when the others tell what is ordinary', () => {
    const day = withRepeats(timedDay, [0.998, 1, 1.002, 1.003, 0.997]);
    says(
      withTexts('l13', { time: '8:10' }, day),
      /Run\u202f\d+ \(Light\) stands apart: \d+\.\d\u202f% less total power/,
    );
    expect(told(day).said).not.toContain('stands apart');
  });

  test('repeats that scatter more than the instruments explain', () => {
    says(
      withRepeats(timedDay, [0.96, 1, 1.04]),
      /Your repeats differ by \d\.\d\u202f% of total power from run to run; meter and stopwatch explain/,
    );
    expect(told(withRepeats(timedDay, [0.995, 1, 1.005])).said).not.toContain('Your repeats');
  });

  test('a drift over the day', () => {
    // each round 2 % slower than the one before, all bikes alike
    says(withRepeats(timedDay, [1, 1.02, 1.04, 1.06]), /Total power fell as the day went on, by about \d+\.\d\u202f%/);
  });

  test('a run that is kept and not counted is to be published with its reason', () => {
    const day = { ...timedDay, runs: timedDay.runs.map((run) => (run.id === 'm1' ? { ...run, counted: false } : run)) };
    says(day, '1\u202frun (3) is kept but not counted. Publish it with the reason.');
    expect(told(day).sentence).toContain('; 1\u202frun not counted.');
  });

  test('what contradicts itself comes before what widens ranges, that before what is only to be known', () => {
    const { checks } = told(withSetup({ meter: '6 %' }, withTexts('light', { motor: '200' }, withoutRuns(['c2']))));
    const order = checks.map(({ tone }) => ['wrong', 'caution', 'plain'].indexOf(tone));
    expect(order).toEqual([...order].sort());
    expect(new Set(order).size).toBe(3);
  });
});

describe('a paired experiment', () => {
  const variant = (id: string, name: string): DayBike => ({
    id,
    texts: { name, bike: '20 kg', tyres: name, limit: 'none' },
  });
  const run = (owner: string, time: string, i: number): DayRun => ({
    id: `${owner}${i}`,
    bike: owner,
    assisted: true,
    counted: true,
    texts: { time, power: '200' },
  });
  // forward and back; the second tyres take 12 s longer each time
  const tyres: DayDocument = {
    ...emptyDay(),
    comparing: 'tyres',
    setup: { distance: '1.5', gain: '150', rider: '80', power: '200' },
    bikes: [variant('a', 'Fast'), variant('b', 'Knobbly')],
    runs: [
      run('a', '6:00', 1),
      run('b', '6:12', 2),
      run('b', '6:13', 3),
      run('a', '6:01', 4),
      run('a', '5:59', 5),
      run('b', '6:11', 6),
    ],
  };

  test('names the factor, and answers with its effect in time and watts', () => {
    const { headline, verdict } = told(tyres);
    expect(headline?.of).toBe('The effect of the tyres: at 200\u202fW, Knobbly costs against Fast');
    expect(headline?.value).toMatch(/^12\u202fs$/);
    expect(headline?.words).toMatch(/^In watts of a motor that is as much as −\d+\u202fW/);
    expect(verdict('Fast', 'Knobbly').text).toMatch(/^Real/);
  });

  test('does not put down to the motor what the tyres do', () => {
    const { sentence, said } = told(tyres);
    expect(sentence).not.toContain('motor giving');
    expect(sentence).toMatch(/The effect of the tyres: .* costs against Fast 12\u202fs \(/);
    expect(said).not.toContain('Same tyres and pressure for all');
  });
});

describe('onward', () => {
  test('the calculator of bigger hills finds the same motors', () => {
    const { si, outcome } = told(timedDay);
    const carried = answer('bigger-hill', `${biggerHillQuery(timedDay, outcome).slice(1)}&target-gain=2000ft`);
    for (const bike of [1, 2, 3])
      expect(Math.abs(carried.si('motor-power', bike) / si('motor-power', bike + 1) - 1)).toBeLessThan(0.005);
  });

  test('nothing is carried while there is no time', () => {
    const document = withoutRuns(['l1', 'm1', 'f1']);
    expect(biggerHillQuery(document, dayOutcome(document))).toBe('');
  });
});

describe('results', () => {
  test('are those that the reference lists, each once', () => {
    const { outcome } = told(withSetup({ 'target-gain': '2000 ft' }, second()));
    const known = new Map(dayResultNames.map((one) => [one.name, one]));
    const keys = outcome.results.map(({ name, bike, against }) => `${name} ${bike} ${against}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(outcome.results.map(({ name }) => name))).toEqual(new Set(known.keys()));
    for (const { name, kind } of outcome.results) expect(kind, name).toBe(known.get(name)?.kind);
  });

  test('as CSV: one row each, values unrounded, names quoted, formulas defused', () => {
    const document = withTexts('light', { name: '=1+1, "light"' });
    const outcome = dayOutcome(document);
    const rows = resultsCsv(document, outcome).trim().split('\r\n');
    expect(rows.length).toBe(outcome.results.length + 1);
    const power = outcome.results.find(({ name, bike }) => name === 'motor-power' && bike === 2);
    expect(rows).toContain(`motor-power,2,"'=1+1, ""light""",,,${power?.si},${power?.low},${power?.high},,W`);
  });

  test('as CSV: every value with its unit', () => {
    const document = withSetup({ 'target-gain': '2000 ft' }, second());
    const rows = resultsCsv(document, dayOutcome(document)).trimEnd().split('\r\n');
    expect(rows[0]).toBe('\ufeffresult,bike,name,against,against-name,value,low,high,reason,unit');
    const units = Object.fromEntries(rows.slice(1).map((row) => [row.split(',')[0], row.split(',').at(-1)]));
    expect(units).toEqual({
      runs: '1',
      time: 's',
      speed: 'm/s',
      'motor-power': 'W',
      correction: 's',
      'battery-energy': 'J',
      'implied-efficiency': '1',
      'target-time': 's',
      'target-time-proportional': 's',
      'gap-time': 's',
      'gap-power': 'W',
      'runs-needed': '1',
      rolling: '1',
      drag: 'm2',
      scatter: '1',
      drift: '1',
    });
  });
});

describe('any document', () => {
  const { between, whole, pick, chance } = random(4);
  const NASTY = [
    '',
    ' ',
    '0',
    '-1',
    '1e9',
    'nonsense',
    '7:22',
    '5:57',
    '200',
    '37 lb',
    '1 mi',
    'none',
    '100 %',
    '٣',
    '1,609',
    '999999',
    '0:01',
    '23:59:59',
    '\ud800',
    '<b>',
  ];
  const likely: Readonly<Record<string, () => string>> = {
    distance: () => `${between(50, 20000).toFixed(0)} m`,
    gain: () => `${between(-50, 2000).toFixed(0)} m`,
    bike: () => `${between(5, 80).toFixed(1)} kg`,
    rider: () => `${between(25, 250).toFixed(0)} kg`,
    power: () => between(1, 1500).toFixed(0),
    time: () => `${whole(0, 99)}:${String(whole(0, 59)).padStart(2, '0')}`,
    start: () => `${whole(0, 100)}`,
    end: () => `${whole(0, 100)}`,
  };
  const text = (name: string): string => (chance(0.8) ? (likely[name]?.() ?? pick(NASTY)) : pick(NASTY));
  const texts = (inputs: readonly { name: string }[], share: number, always: readonly string[] = []): Texts =>
    Object.fromEntries(
      inputs.filter(({ name }) => always.includes(name) || chance(share)).map(({ name }) => [name, text(name)]),
    );
  const document = (): DayDocument => {
    const bikes = Array.from({ length: whole(0, 5) }, (_, i) => ({
      id: `b${i}`,
      texts: texts(bikeInputs, 0.3, ['bike']),
    }));
    return {
      version: 1,
      system: pick(['metric', 'us'] as const),
      comparing: pick(['bikes', 'tyres', 'mass', 'setting'] as const),
      setup: texts(setupInputs, 0.15, ['distance', 'gain']),
      bikes,
      runs: Array.from({ length: whole(0, 12) }, (_, i) => ({
        id: `r${i}`,
        bike: pick([...bikes.map(({ id }) => id), ...bikes.map(({ id }) => id), 'gone', '']),
        assisted: chance(0.75),
        counted: chance(0.9),
        texts: texts(runInputs, 0.3, ['time', 'power']),
      })),
    };
  };

  test('gives results or reasons, never NaN, and sentences without one', () => {
    let reduced = 0;
    for (let round = 0; round < 400; round++) {
      const one = document();
      const { outcome, said, headline, sentence } = told(one);
      if (outcome.about) reduced++;
      for (const { name, si, low, high, reason } of outcome.results) {
        const where = `${name} in ${JSON.stringify(one)}`;
        if (si === undefined) expect(reason === undefined ? '' : 'a reason', where).toBe('a reason');
        for (const value of [si, low, high]) if (value !== undefined) expect(Number.isFinite(value), where).toBe(true);
        if (si !== undefined) {
          expect(low ?? si, where).toBeLessThanOrEqual(si);
          expect(high ?? si, where).toBeGreaterThanOrEqual(si);
        }
      }
      expect(
        `${said} ${sentence} ${JSON.stringify(headline ?? '')} ${biggerHillQuery(one, outcome)} ${resultsCsv(one, outcome)}`,
      ).not.toMatch(/NaN|Infinity|undefined/);
    }
    expect(reduced).toBeGreaterThan(100);
  });

  test('an empty one says what to do', () => {
    const { outcome, checks, headline, sentence } = told(emptyDay());
    expect(outcome.reading.missing).toMatch(/Fill in how long the hill is/);
    expect([checks, headline, sentence]).toEqual([[], undefined, '']);
  });
});

/**
 * Test days with known motors, reduced: `npm run bench:days [days]`. How often the 95 % ranges hold the truth, how often two equal bikes are
 * called different, whether the planned number of runs finds what it promises, and what happens on days that break the rules. Seeded: the
 * same figures every time. Figures to read; `test/model/reduce.test.ts` asserts coverage and equal bikes on fewer days, `plan.test.ts` the power.
 */
import { performance } from 'node:perf_hooks';
import {
  type DayDoubts,
  detectableDifference,
  pairPrecision,
  powerOfPair,
  randomSource,
  reduceDay,
  repeatsFor,
  sampleDay,
  type TestPlan,
} from '../../calculators/model/index.ts';
import { COVERAGE, DAY_DOUBTS } from '../../calculators/scenario/doubts.ts';
import {
  anyBikes,
  countDays,
  EQUAL_BIKES,
  onlyScatter,
  type PlantedOptions,
  perCent,
  plantedDay,
  type Tally,
} from '../model/days.ts';

const DAYS = Number(process.argv[2] ?? 4000);

const line = (name: string, ...figures: string[]): void => {
  console.log(`  ${name.padEnd(44)}${figures.map((text) => text.padStart(14)).join('')}`);
};

const range = (shares: readonly number[]): string =>
  `${(100 * Math.min(...shares)).toFixed(1)}–${(100 * Math.max(...shares)).toFixed(1)}`;

function show(name: string, tally: Tally): void {
  line(
    name,
    range(tally.motors.map(perCent)),
    range(tally.differences.map(perCent)),
    range(tally.times.map(perCent)),
    range(tally.timeDifferences.map(perCent)),
    tally.halfWidths.map((sum) => (sum / tally.days).toFixed(0)).join('/'),
    `${((100 * tally.scatter) / tally.days).toFixed(2)}`,
    `${((100 * tally.drifting) / tally.days).toFixed(1)}`,
  );
}

const anyDay = (random: () => number, doubts: DayDoubts): PlantedOptions => ({
  ...anyBikes(random),
  runs: 3 + Math.floor(4 * random()),
  controls: 1 + Math.floor(3 * random()),
  doubts,
});

function coverage(): void {
  console.log(
    `\nHow often 95 % ranges hold the truth, in %, least and most of the bikes (goal: 93 to 97), ${DAYS} days each`,
  );
  line('', 'motors', 'differences', 'times', 'of times', '± W', 'scatter, %', 'drift seen');
  const cases: [string, (random: () => number) => PlantedOptions, DayDoubts?][] = [
    ['4 bikes, 3 to 6 runs, 1 to 3 control runs', (random) => anyDay(random, DAY_DOUBTS)],
    ['3 runs, 1 control run', (random) => ({ ...anyDay(random, DAY_DOUBTS), runs: 3, controls: 1 })],
    ['6 runs, 3 control runs', (random) => ({ ...anyDay(random, DAY_DOUBTS), runs: 6, controls: 3 })],
    ['no control run', (random) => ({ ...anyDay(random, DAY_DOUBTS), controls: 0 })],
    [
      '2 runs, 1 control run, scatter twice',
      (random) => ({ ...anyDay(random, twice(DAY_DOUBTS)), runs: 2, controls: 1 }),
    ],
    ['2 bikes twice, 1 control run, scatter as said', () => ({ ...TWO_TWICE, doubts: DAY_DOUBTS })],
    ['the same, scatter twice', () => ({ ...TWO_TWICE, doubts: twice(DAY_DOUBTS) })],
    [
      'one bike, four settings',
      (random) => ({ ...anyDay(random, DAY_DOUBTS), masses: [20, 20, 20, 20], factor: 'setting' }),
    ],
    ['unlike tyres, ±0.005, not entered', (random) => ({ ...anyDay(random, DAY_DOUBTS), unlikeTyres: 0.005 })],
    ['unlike tyres, entered', (random) => ({ ...anyDay(random, DAY_DOUBTS), unlikeTyres: 0.005, tyresEntered: true })],
    ['surface slower by 10 % over the day', (random) => ({ ...anyDay(random, DAY_DOUBTS), drift: 0.1 })],
    ['surface slower by 30 % over the day', (random) => ({ ...anyDay(random, DAY_DOUBTS), drift: 0.3 })],
    ['head wind of 1 m/s, not entered', (random) => ({ ...anyDay(random, DAY_DOUBTS), wind: 1 })],
    ['the same, wind said to be 0 ± 0 m/s', (random) => ({ ...anyDay(random, calm), wind: 1 }), calm],
  ];
  for (const [name, options, stated = DAY_DOUBTS] of cases) show(name, countDays(DAYS, options, stated));
}

/** Repeats with two degrees of freedom: too few to go by, unless they are worse than what was said. */
const TWO_TWICE = { motors: [320, 420], masses: [18, 21], runs: 2, controls: 1 };
const calm = { ...DAY_DOUBTS, headWind: 0 };
const twice = (doubts: DayDoubts): DayDoubts => ({ ...doubts, scatter: 2 * doubts.scatter });

function equalBikes(): void {
  console.log(`\nFour equal bikes called different, in % (goal: at most 6), ${DAYS} days each`);
  line('', 'a pair, W', 'a day, W', 'a pair, s', 'a day, s');
  // times tell true differences of mass and drive, so bikes that are equal in time have none
  const alike = { ...DAY_DOUBTS, bikeMass: 0, efficiencyBetween: 0 };
  const cases: [string, DayDoubts, Partial<PlantedOptions>][] = [
    ['read masses and drives differ', DAY_DOUBTS, {}],
    ['nothing differs', alike, {}],
    ['nothing differs, 3 runs, 1 control run', alike, { runs: 3, controls: 1 }],
    ['unlike tyres, ±0.005, not entered', DAY_DOUBTS, { unlikeTyres: 0.005 }],
  ];
  for (const [name, doubts, more] of cases) {
    const tally = countDays(DAYS, (random) => ({ ...anyDay(random, doubts), ...EQUAL_BIKES, ...more }), doubts);
    const figures = [tally.realAlone, tally.realAmongAll, tally.timeRealAlone, tally.timeRealAmongAll];
    line(name, ...figures.map((count) => (100 * perCent(count)).toFixed(1)));
  }
}

function plannedPower(): void {
  console.log(
    `\nThe difference that was planned for is found, in % (goal: within 2 of the exact power), ${DAYS} days each`,
  );
  line('', 'runs', 'exact', 'found', 'apart');
  const drive = DAY_DOUBTS.efficiencyBetween / 0.96;
  const cases: [string, number, number, number, boolean][] = [
    ['20 W of 500, scatter 1.8 %, one pair', 0.018, 20, 0, false],
    ['30 W of 500, scatter 1.8 %, one pair', 0.018, 30, 0, false],
    ['30 W of 500, scatter 1.8 %, among all', 0.018, 30, 0, true],
    ['30 W of 500, drives differ, one pair', 0.018, 30, drive / COVERAGE, false],
    ['10 W of 500, scatter 0.8 %, one pair', 0.008, 10, 0, false],
  ];
  for (const [name, scatter, difference, fixed, amongAll] of cases) {
    const controls = 2;
    const plan: TestPlan = { perShare: [500, 500 + difference, 560, 640], scatter, fixed, controls, amongAll };
    const runs = repeatsFor(plan, 0, 1, difference, 0.8) ?? 0;
    const exact = powerOfPair(difference, pairPrecision(plan, 0, 1, runs));
    const doubts = { ...onlyScatter(scatter), efficiencyBetween: fixed > 0 ? DAY_DOUBTS.efficiencyBetween : 0 };
    const random = randomSource(5);
    let found = 0;
    for (let i = 0; i < DAYS; i++) {
      const motors = plan.perShare.map((total) => total - 200);
      const { day } = plantedDay(random, { motors, runs, controls, doubts, pacing: 0 });
      const { motorPower } = reduceDay(day, doubts).pairs[0] ?? {};
      if (motorPower && motorPower.difference.value > 0 && (amongAll ? motorPower.realAmongAll : motorPower.realAlone))
        found++;
    }
    const share = found / DAYS;
    line(name, String(runs), (100 * exact).toFixed(1), (100 * share).toFixed(1), (100 * (share - exact)).toFixed(1));
  }
  const plan: TestPlan = { perShare: [500, 500, 500, 500], scatter: 0.018, fixed: 0, controls: 2, amongAll: false };
  console.log(`  (3 runs of each find ${detectableDifference(plan, 0, 1, 3)?.toFixed(0)} W of 500 with 80 %)`);
}

function speed(): void {
  console.log('\nTime of one day, medians (a phone reduces it anew at every key)');
  line('', 'runs', 'reduce, ms', '20,000 draws, ms');
  for (const runs of [3, 5, 10]) {
    const { day } = plantedDay(randomSource(1), {
      motors: [300, 300, 450, 620],
      runs,
      controls: 2,
      doubts: DAY_DOUBTS,
    });
    for (let i = 0; i < 30; i++) reduceDay(day, DAY_DOUBTS);
    const times = Array.from({ length: 101 }, () => {
      const start = performance.now();
      reduceDay(day, DAY_DOUBTS);
      return performance.now() - start;
    }).sort((a, b) => a - b);
    const start = performance.now();
    sampleDay(day, DAY_DOUBTS, 20_000, randomSource(2));
    line('', String(day.runs.length), (times[50] ?? 0).toFixed(2), (performance.now() - start).toFixed(0));
  }
}

const start = performance.now();
console.log(`Node ${process.version}, test days of our own making with known motors`);
coverage();
equalBikes();
plannedPower();
speed();
console.log(`\n${((performance.now() - start) / 1000).toFixed(0)} s`);

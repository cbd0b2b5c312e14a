/**
 * How fast the calculators compute: `npm run bench`. Medians of several rounds, the two sides of a comparison taken in turn in one run,
 * so that a busy machine slows both. Figures to read, not a test: nothing here passes or fails.
 */
import { performance } from 'node:perf_hooks';
import { polynomialRoot } from 'mathjs';
import {
  type Climb,
  cutProfile,
  findClimbs,
  gainsOf,
  type Hill,
  mendElevation,
  normalDraw,
  randomSource,
  rideClimb,
  rideProfile,
  rideStages,
  SMOOTHING_WINDOW,
  simplifyProfile,
  smoothElevation,
  steadySpeed,
} from '../../calculators/model/index.ts';
import { outcomeOf } from '../../calculators/outcomes.ts';
import { type CalculatorName, readLink, writeLink } from '../../calculators/scenario/vocabulary.ts';
import { anyHill, PLAIN } from '../model/climbs.ts';
import { Solver } from '../odex.ts';
import { random, relative } from '../random.ts';
import { anyCubic, cubicOf, cubicRoot } from '../reference/comparisons.ts';
import { anyLongClimb, marched } from '../reference/long-climbs.ts';

const ROUNDS = 15;

/** Keeps results alive, so that no work is optimised away. */
let sink = 0;

const median = (values: number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
};

/** Nanoseconds of one call. `work` does `count` of them. */
function nanoseconds(work: () => void, count: number): number {
  const start = performance.now();
  work();
  return ((performance.now() - start) * 1e6) / count;
}

/** Median nanoseconds of each of several works, taken in turn. */
function race(works: { work: () => void; count: number }[]): number[] {
  for (const { work } of works) for (let i = 0; i < 3; i++) work();
  const times = works.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round++)
    works.forEach(({ work, count }, i) => {
      times[i]?.push(nanoseconds(work, count));
    });
  return times.map(median);
}

const figure = (value: number): string => value.toPrecision(3);
const line = (name: string, ...figures: string[]): void => {
  console.log(`  ${name.padEnd(34)}${figures.map((text) => text.padStart(16)).join('')}`);
};

function speed(): void {
  console.log('Steady speed for a given power, against polynomialRoot of mathjs (goal: 500 times as fast)');
  line('', 'ours, ns', 'mathjs, ns', 'times as fast', 'disagree by');
  for (const [name, stillAir] of [
    ['still air', true],
    ['head wind', false],
  ] as const) {
    const r = random(stillAir ? 1 : 2);
    const inputs = Array.from({ length: 1000 }, () => anyCubic(r, stillAir));
    const cubics = inputs.map(({ resistance, wheelPower }) => cubicOf(resistance, wheelPower));
    const [ours = 0, theirs = 0] = race([
      {
        work: () => {
          for (let pass = 0; pass < 50; pass++)
            for (const { resistance, wheelPower } of inputs) sink += steadySpeed(resistance, wheelPower);
        },
        count: 50 * inputs.length,
      },
      {
        work: () => {
          for (const cubic of cubics) sink += polynomialRoot(...cubic).length;
        },
        count: cubics.length,
      },
    ]);
    const largest = Math.max(
      ...inputs.map(({ resistance, wheelPower }, i) =>
        relative(steadySpeed(resistance, wheelPower), cubicRoot(cubics[i] ?? [0, 0, 0, 0])),
      ),
    );
    line(name, figure(ours), figure(theirs), figure(theirs / ours), largest.toExponential(1));
  }
}

const LONG =
  'name=a,b,c,d,e,f&bike=15,17,19,21,23,25&time=12:00,11:00,10:00,9:00,8:00,7:00&control-time=28:00,27:00,26:00,25:00,24:00,23:00&control-power=170,180,190,200,210,220&target-grade=6';
/** An invented hill of as many pieces as the page makes of a recording, every ninth of them falling. */
const PIECES = Array.from(
  { length: 40 },
  (_, i) => `${60 + ((i * 37) % 50)},${4 + ((i * 53) % 17) - (i % 9 === 8 ? 10 : 0)}`,
);
const HILL = `1:${PIECES.join(':')}`;
const LINKS: [string, CalculatorName, string][] = [
  ['climb-time', 'climb-time', ''],
  ['climb-time, heat and battery', 'climb-time', 'gain=1200&distance=12000&continuous=200&battery=400&torque=60'],
  ['side-by-side, 3 bikes', 'side-by-side', ''],
  ['side-by-side, 6 bikes', 'side-by-side', 'name=a,b,c,d,e,f&bike=15,17,19,21,23,25&motor=200,300,400,500,600,700'],
  ['bigger-hill, 3 bikes', 'bigger-hill', ''],
  ['bigger-hill, 6 bikes, 6 control runs', 'bigger-hill', LONG],
  ['power-to-weight', 'power-to-weight', ''],
  ['torque-at-cadence', 'torque-at-cadence', ''],
  ['gears-and-restart', 'gears-and-restart', ''],
  ['holding-peak-power', 'holding-peak-power', ''],
  ['watt-hours', 'watt-hours', ''],
  ['keep-up', 'keep-up', ''],
  ['what-changes-it', 'what-changes-it', ''],
  ['plan', 'plan', ''],
  ['your-hill, 3 bikes', 'your-hill', ''],
  ['your-hill, 3 bikes, 40 pieces', 'your-hill', `profile=${HILL}`],
  [
    'the same, all that can run out',
    'your-hill',
    `profile=${HILL}&torque=60&support=250&endurance=160&continuous=200&battery=100`,
  ],
  ['side-by-side, 3 bikes, 40 pieces', 'side-by-side', `profile=${HILL}`],
  ['bigger-hill, 3 bikes, 40 pieces', 'bigger-hill', `target-profile=${HILL}`],
  ['keep-up, 40 pieces', 'keep-up', `profile=${HILL}`],
  ['watt-hours, 40 pieces, 8 climbs', 'watt-hours', `profile=${HILL}&laps=8`],
];

function longClimbs(): void {
  const STEPS = 2000;
  console.log(`\nA long climb on which heat and battery may give out, against ${STEPS} small steps in time`);
  line('', 'stages, ns', 'one speed, ns', 'steps, ns', 'times as fast', 'disagree by');
  const r = random(3);
  const inputs = Array.from({ length: 200 }, () => anyLongClimb(r));
  const [stages = 0, steady = 0, steps = 0] = race([
    {
      work: () => {
        for (let pass = 0; pass < 10; pass++)
          for (const { climb, reserves } of inputs) sink += rideStages(climb, reserves).time;
      },
      count: 10 * inputs.length,
    },
    {
      work: () => {
        for (let pass = 0; pass < 10; pass++) for (const { climb } of inputs) sink += rideClimb(climb).time;
      },
      count: 10 * inputs.length,
    },
    {
      work: () => {
        for (const { climb, reserves } of inputs) sink += marched(climb, reserves, STEPS).time;
      },
      count: inputs.length,
    },
  ]);
  const largest = Math.max(
    ...inputs.map(({ climb, reserves }) =>
      relative(rideStages(climb, reserves).time, marched(climb, reserves, STEPS).time),
    ),
  );
  line('any motor', ...[stages, steady, steps, steps / stages].map(figure), largest.toExponential(1));
}

/** Four bikes with one rider: without a motor, and with three that meet their limits. */
const FOUR: readonly Omit<Climb, 'hill'>[] = [0, 250, 450, 620].map((motorPower, i) => ({
  ...PLAIN,
  mass: 92 + 4 * i,
  motorPower,
  assistLimit: 25 / 3.6,
  torque: 40 + 20 * i,
  cadence: 70,
  gear: { wheelRadius: 0.36, turns: 0.9 },
}));

/** A rider alone along a profile by odex, each piece begun anew: time in s. */
function byOdex(climb: Climb, tolerance: number): number {
  const { mass, rolling, density, dragArea, efficiency, riderPower, hill } = climb;
  const { distance, height } = hill.profile ?? { distance: [], height: [] };
  const solver = new Solver(2);
  solver.absoluteTolerance = solver.relativeTolerance = tolerance;
  let state = [0, rideProfile(climb, {}).points.speed[0] as number];
  for (let i = 0; i + 1 < distance.length; i++) {
    const length = (distance[i + 1] as number) - (distance[i] as number);
    const sin = ((height[i + 1] as number) - (height[i] as number)) / length;
    const constant = mass * 9.80665 * (sin + rolling * Math.sqrt(1 - sin * sin)) + 0.091;
    const k = 0.5 * density * dragArea;
    solver.initialStepSize = Math.min(1, length);
    const derivative = (_: number, [, v = 0]: number[]): number[] => [
      1 / v,
      ((efficiency * riderPower) / v - constant - v * (0.0087 + k * v)) / (mass * v),
    ];
    state = solver.solve(derivative, 0, state, length).y;
  }
  return state[0] as number;
}

function profiles(): void {
  console.log(
    '\nRides along a profile, four bikes with limit, torque and gear (goal: time grows with the points, not faster)',
  );
  line('', 'ms', 'µs per piece', 'growth by 10');
  const r = random(4);
  let before = 0;
  for (const points of [1e3, 1e4, 1e5]) {
    const hill = anyHill(r, points - 1, [-0.02, 0.16], [5, 30]);
    const ride = (): void => {
      for (const bike of FOUR) sink += rideProfile({ ...bike, hill }, {}).time;
    };
    const [time = 0] = race([{ work: ride, count: 1 }]);
    const growth = before > 0 ? figure(time / before) : '';
    line(
      `${points.toLocaleString('en')} points`,
      figure(time / 1e6),
      figure(time / 1e3 / points / FOUR.length),
      growth,
    );
    before = time;
  }

  console.log('\nOne ride along 40 pieces of 100 m');
  line('', 'µs');
  const hill: Hill = anyHill(r, 40, [0, 0.16], [50, 150]);
  const [plain = 0, bound = 0, all = 0] = race(
    [
      () => rideProfile({ ...PLAIN, hill }, {}),
      () => rideProfile({ ...(FOUR[2] as Climb), hill }, {}),
      () =>
        rideProfile(
          { ...(FOUR[2] as Climb), hill },
          {
            battery: { energy: 700e3, unitEfficiency: 0.8, idle: 5 },
            heat: { continuous: 250, continuousCadence: 70, timeConstant: 600, fixedLosses: 0.2, rise: 0 },
            endurance: { criticalPower: 150, workAbove: 9000 },
          },
        ),
    ].map((ride) => ({
      work: () => {
        for (let i = 0; i < 200; i++) sink += ride().time;
      },
      count: 200,
    })),
  );
  line('one power', figure(plain / 1e3));
  line('limit, torque, gear', figure(bound / 1e3));
  line('and heat, battery, W′', figure(all / 1e3));

  console.log('\nA rider alone along 1,000 points, against odex (goal: 20 times as fast at equal error)');
  line('', 'ours, ms', 'odex, ms', 'times as fast', 'odex is off by', 'ours by');
  const climb: Climb = { ...PLAIN, motorPower: 0, hill: anyHill(r, 999, [-0.02, 0.16], [20, 60]) };
  const truth = byOdex(climb, 1e-13);
  for (const tolerance of [1e-3, 1e-6, 1e-9, 1e-12]) {
    const [ours = 0, theirs = 0] = race([
      { work: () => (sink += rideProfile(climb, {}).time), count: 1 },
      { work: () => (sink += byOdex(climb, tolerance)), count: 1 },
    ]);
    const off = [byOdex(climb, tolerance), rideProfile(climb, {}).time].map((time) => relative(time, truth));
    line(
      `tolerance ${tolerance.toExponential()}`,
      ...[ours / 1e6, theirs / 1e6, theirs / ours].map(figure),
      ...off.map((share) => share.toExponential(1)),
    );
  }
}

/** A ride over rolling land, invented: a point every 0.8 m whose height trembles as a barometer's does. */
function rollingRide(points: number): { distance: Float64Array; elevation: Float64Array; breaks: [] } {
  const source = randomSource(7);
  let trembling = 0;
  const distance = Float64Array.from({ length: points }, (_, i) => 0.8 * i);
  const elevation = distance.map((place) => {
    trembling = 0.95 * trembling + 0.1 * normalDraw(source);
    return 400 + 150 * Math.sin(place / 1500) + 40 * Math.sin(place / 311) + trembling;
  });
  return { distance, elevation, breaks: [] };
}

function tracks(): void {
  console.log('\nHeights of a recorded ride mended, smoothed and summed, its climbs found; and the whole in 40 pieces');
  line('points', 'climbs, ms', 'ns per point', '40 pieces, ms');
  for (const points of [1e3, 1e4, 1e5]) {
    const track = rollingRide(points);
    const { distance, breaks } = track;
    const heights = smoothElevation(distance, track.elevation, SMOOTHING_WINDOW, breaks);
    const [all = 0, pieces = 0] = race([
      {
        work: () => {
          const { elevation } = mendElevation(track);
          const height = smoothElevation(distance, elevation, SMOOTHING_WINDOW, breaks);
          sink += gainsOf(distance, elevation, breaks).smoothed + findClimbs(distance, height, breaks).length;
        },
        count: 1,
      },
      {
        work: () => {
          sink += simplifyProfile(cutProfile(distance, heights, breaks, 0, points - 1), 40).distance.length;
        },
        count: 1,
      },
    ]);
    line(points.toExponential(0), figure(all / 1e6), figure(all / points), figure(pieces / 1e6));
  }
}

function outcomes(): void {
  console.log(
    '\nA whole answer from the text of a link, ranges and sentences included (budget: 4 ms of script per change)',
  );
  line('', 'ms', 'of the budget');
  const times = race(
    LINKS.map(([, calculator, query]) => ({
      work: () => {
        for (let i = 0; i < 20; i++) sink += outcomeOf(calculator, query).results.length;
      },
      count: 20,
    })),
  );
  LINKS.forEach(([name], i) => {
    const ms = (times[i] ?? 0) / 1e6;
    line(name, figure(ms), `${figure((ms / 4) * 100)} %`);
  });
}

function links(): void {
  console.log('\nLinks');
  line('', 'read, µs', 'write, µs', 'characters');
  for (const [name, calculator, query] of LINKS.filter(([, , text]) => text !== '')) {
    const scenario = readLink(calculator, query);
    const [reading = 0, writing = 0] = race([
      {
        work: () => {
          for (let i = 0; i < 200; i++) sink += readLink(calculator, query).bikes;
        },
        count: 200,
      },
      {
        work: () => {
          for (let i = 0; i < 200; i++) sink += writeLink(scenario).length;
        },
        count: 200,
      },
    ]);
    line(name, figure(reading / 1000), figure(writing / 1000), String(query.length));
  }
}

console.log(`Node ${process.version}, medians of ${ROUNDS} rounds\n`);
speed();
longClimbs();
profiles();
tracks();
outcomes();
links();
if (Number.isNaN(sink)) console.log('A result was not a number.');

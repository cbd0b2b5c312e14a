import {
  type Combined,
  combine,
  covariance,
  effectiveFreedom,
  expandedUncertainty,
  fitLine,
  lineAt,
  meanOf,
  monteCarlo,
  normalDraw,
  randomSource,
  type Sampled,
  standardDeviation,
  summaryOf,
} from '../../calculators/model/index.ts';
import type { Check, Status } from './check.ts';

/*
 * The worked examples of the GUM (JCGM 100:2008, annex H) and of its supplement on drawing (JCGM 101:2008, clause 9). Data and results of annex
 * H were seen in the documentation of a national laboratory's library; those of clause 9 are values from memory.
 */

type Row = [string, () => number, number];
interface Group {
  quantity: string;
  unit: string;
  tolerance: number;
  relative?: boolean;
  source: string;
  status: Status;
}
const rows = (group: Group, values: readonly Row[]): Check[] =>
  values.map(([given, computed, expected]) => ({ ...group, given, expected, computed }));

/** H.1: the length of an end gauge, nm, from a standard, the difference, and how they grow with temperature. */
const gaugeDifference = [
  { standard: 5.8, freedom: 24 },
  { standard: 3.9, freedom: 5 },
  { standard: 6.7, freedom: 8 },
];
const gaugeInputs = [
  { value: 50_000_623, standard: 25, freedom: 18 },
  { value: 215, standard: Math.hypot(5.8, 3.9, 6.7), freedom: effectiveFreedom(gaugeDifference) },
  // difference of the two coefficients of expansion, then the temperature off 20 °C, a mean of 0.2 and a cycle of 0.5
  { value: 0, standard: 1e-6 / Math.sqrt(3), freedom: 50 },
  { value: -0.1, standard: Math.hypot(0.2, 0.5 / Math.SQRT2) },
  // coefficient of the standard, difference of the two temperatures
  { value: 11.5e-6, standard: 2e-6 / Math.sqrt(3) },
  { value: 0, standard: 0.05 / Math.sqrt(3), freedom: 2 },
];
const gaugeLength = ([standard = 0, difference = 0, expansion = 0, warmth = 0, alpha = 0, warmer = 0]: number[]) => [
  standard + difference - standard * (expansion * warmth + alpha * warmer),
];
const gauge = combine(gaugeInputs, gaugeLength)[0] as Combined;

/** H.2: resistance, reactance and impedance from five readings of voltage (V), current (A) and phase (rad) at once. */
const readings = [
  [5.007, 4.994, 5.005, 4.99, 4.999],
  [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3],
  [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
];
function readTogether(i: number, j: number): number {
  const off = (k: number): number[] => (readings[k] ?? []).map((value) => value - meanOf(readings[k] ?? []));
  const [a, b] = [off(i), off(j)];
  const product = (x: number[], y: number[]): number => x.reduce((sum, value, k) => sum + value * (y[k] ?? 0), 0);
  return product(a, b) / Math.sqrt(product(a, a) * product(b, b));
}
const circuitInputs = readings.map((values) => ({
  value: meanOf(values),
  standard: standardDeviation(values) / Math.sqrt(values.length),
}));
const circuit = combine(
  circuitInputs,
  ([volts = 0, amps = 0, phase = 0]) => [
    (volts / amps) * Math.cos(phase),
    (volts / amps) * Math.sin(phase),
    volts / amps,
  ],
  readTogether,
) as [Combined, Combined, Combined];
const [resistance, reactance, impedance] = circuit;
const together = (a: Combined, b: Combined): number =>
  covariance(a.shifts, b.shifts, readTogether) / (a.standard * b.standard);

/** H.3: corrections of a thermometer, °C, as a line over the reading less 20 °C. */
const thermometer = fitLine(
  [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511].map((t) => t - 20),
  [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16],
);
const at30 = lineAt(thermometer, 10);

const guide = (example: string) => ({ source: `JCGM 100:2008, ${example}`, status: 'secondary' }) as const;
const apart = { source: 'the same data, worked out apart', status: 'recomputed' } as const;
const GAUGE = 'GUM, end gauge';
const CIRCUIT = 'GUM, correlated inputs';
const LINE = 'GUM, thermometer line';

// printed values to half a unit of their last digit, unless a comment says why not
const annexH: Check[] = [
  ...rows({ quantity: GAUGE, unit: 'nm', tolerance: 0.5, ...guide('H.1') }, [
    ['length over 50 mm', () => gauge.value - 50e6, 838],
    ['combined standard uncertainty', () => gauge.standard, 32],
  ]),
  // 2.92 times the rounded 32 nm; from the unrounded one it is 92.5
  ...rows({ quantity: GAUGE, unit: 'nm', tolerance: 1, ...guide('H.1') }, [
    ['99 % half-width', () => expandedUncertainty(gauge.standard, Math.floor(gauge.freedom ?? 0), 0.99), 93],
  ]),
  ...rows({ quantity: GAUGE, unit: '', tolerance: 0.005, ...apart }, [
    ['effective degrees of freedom', () => gauge.freedom ?? 0, 16.75],
  ]),
  ...rows({ quantity: CIRCUIT, unit: 'Ω', tolerance: 5e-4, ...guide('H.2') }, [
    ['resistance', () => resistance.value, 127.732],
    ['its standard uncertainty', () => resistance.standard, 0.071],
    ['reactance', () => reactance.value, 219.847],
    ['its standard uncertainty', () => reactance.standard, 0.296],
    ['impedance', () => impedance.value, 254.26],
    ['its standard uncertainty', () => impedance.standard, 0.236],
  ]),
  ...rows({ quantity: CIRCUIT, unit: '', tolerance: 5e-4, ...guide('H.2') }, [
    ['voltage with current', () => readTogether(0, 1), -0.355],
    ['voltage with phase', () => readTogether(0, 2), 0.858],
    ['current with phase', () => readTogether(1, 2), -0.645],
    ['resistance with reactance', () => together(resistance, reactance), -0.588],
    ['resistance with impedance', () => together(resistance, impedance), -0.485],
    ['reactance with impedance', () => together(reactance, impedance), 0.993],
  ]),
  ...rows({ quantity: CIRCUIT, unit: '', relative: true, tolerance: 5e-7, ...apart }, [
    ['resistance', () => resistance.value, 127.73217],
    ['its standard uncertainty', () => resistance.standard, 0.0710714],
    ['reactance', () => reactance.value, 219.84651],
    ['its standard uncertainty', () => reactance.standard, 0.2955817],
    ['impedance', () => impedance.value, 254.2597],
    ['its standard uncertainty', () => impedance.standard, 0.2363361],
  ]),
  ...rows({ quantity: LINE, unit: '°C', tolerance: 5e-5, ...guide('H.3') }, [
    ['intercept', () => thermometer.intercept, -0.1712],
    ['its standard uncertainty', () => thermometer.interceptError, 0.0029],
    ['scatter about the line', () => thermometer.residualDeviation, 0.0035],
    ['correction at 30 °C', () => at30.value, -0.1494],
    ['its standard uncertainty', () => at30.standard, 0.0041],
  ]),
  ...rows({ quantity: LINE, unit: '', tolerance: 5e-6, ...guide('H.3') }, [
    ['slope', () => thermometer.slope, 0.00218],
    ['its standard uncertainty', () => thermometer.slopeError, 0.00067],
  ]),
  ...rows({ quantity: LINE, unit: '', tolerance: 5e-4, ...guide('H.3') }, [
    ['correlation of the two', () => thermometer.correlation, -0.93],
  ]),
  ...rows({ quantity: LINE, unit: '', relative: true, tolerance: 1e-8, ...apart }, [
    ['intercept', () => thermometer.intercept, -0.17120379013135],
    ['its standard uncertainty', () => thermometer.interceptError, 0.00287759784],
    ['slope', () => thermometer.slope, 0.00218269773988728],
    ['its standard uncertainty', () => thermometer.slopeError, 0.00066793877],
    ['scatter about the line', () => thermometer.residualDeviation, 0.00349756396],
    ['squares about it', () => thermometer.squares, 1.10096583109e-4],
  ]),
  ...rows({ quantity: LINE, unit: '', tolerance: 5e-8, ...apart }, [
    ['correlation of the two', () => thermometer.correlation, -0.9304296],
  ]),
  ...rows({ quantity: LINE, unit: '°C', tolerance: 5e-9, ...apart }, [
    ['correction at 30 °C', () => at30.value, -0.14937681],
    ['its standard uncertainty', () => at30.standard, 0.0041386],
  ]),
];

const TRIALS = 200_000;
/** Trials are drawn once, when the first check asks. */
function drawn(seed: number, draw: (random: () => number) => readonly number[]): (index: number) => Sampled {
  let samples: Sampled[] | null = null;
  return (index) => {
    samples ??= monteCarlo(draw, TRIALS, randomSource(seed)).map((trials) => summaryOf(trials));
    return samples[index] as Sampled;
  };
}

const even = (random: () => number, low: number, high: number): number => low + (high - low) * random();
/** An even value with standard deviation 1. */
const evenUnit = (random: () => number): number => even(random, -Math.sqrt(3), Math.sqrt(3));

/** 9.2: sums of four inputs. */
const sums = drawn(101, (random) => {
  const [a, b, c] = [evenUnit(random), evenUnit(random), evenUnit(random)];
  return [
    normalDraw(random) + normalDraw(random) + normalDraw(random) + normalDraw(random),
    a + b + c + evenUnit(random),
    a + b + c + 10 * evenUnit(random),
  ];
});
const sumOfFour = (standards: readonly number[]): Combined =>
  combine(
    standards.map((standard) => ({ value: 0, standard })),
    (values) => [values.reduce((sum, value) => sum + value, 0)],
  )[0] as Combined;
const half = ({ low, high }: { low: number; high: number }): number => (high - low) / 2;
const linearHalf = (standards: readonly number[]): number =>
  expandedUncertainty(sumOfFour(standards).standard, Infinity);

/** 9.3: what a weight is off 100 g, mg, weighed in air that pushes weight and reference up unlike. */
const weightOff = ([reference = 0, added = 0, air = 0, weight = 0, referenceDensity = 0]: number[]): number[] => [
  (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / referenceDensity)) - 100_000,
];
export const weightLinear = combine(
  [
    { value: 100_000, standard: 0.05 },
    { value: 1.234, standard: 0.02 },
    { value: 1.2, standard: 0.1 / Math.sqrt(3) },
    { value: 8000, standard: 1000 / Math.sqrt(3) },
    { value: 8000, standard: 50 / Math.sqrt(3) },
  ],
  weightOff,
)[0] as Combined;
export const weightDrawn = drawn(102, (random) =>
  weightOff([
    100_000 + 0.05 * normalDraw(random),
    1.234 + 0.02 * normalDraw(random),
    even(random, 1.1, 1.3),
    even(random, 7000, 9000),
    even(random, 7950, 8050),
  ]),
);

/** 9.4: the loss of a power meter, in millionths: the squares of two parts of a reflection, each known to 0.005, at three places of the first. */
const PLACES = [0, 0.01, 0.05];
const loss = ([first = 0, second = 0]: number[]): number[] => [1e6 * (first ** 2 + second ** 2)];
export const lossLinear = PLACES.map(
  (value) =>
    combine(
      [
        { value, standard: 0.005 },
        { value: 0, standard: 0.005 },
      ],
      loss,
    )[0] as Combined,
);
export const lossDrawn = drawn(103, (random) => {
  const [first, second] = [0.005 * normalDraw(random), 0.005 * normalDraw(random)];
  return PLACES.flatMap((place) => loss([place + first, second]));
});

const supplement = (example: string) => ({ source: `JCGM 101:2008, ${example}`, status: 'memory' }) as const;
const worked = { source: 'worked out exactly', status: 'recomputed' } as const;
const SUMS = 'Sum of four inputs, 95 % half-width';
const WEIGHT = 'Calibration of a weight';
const LOSS = 'Loss in calibrating a microwave power meter, millionths';

/*
 * 200,000 trials leave a mean uncertain by 0.0022 of the standard deviation, the standard deviation by 0.0016 of itself (0.0032 where the tail is
 * long, as in 9.4) and the end of a range by about 0.006. The tolerances of what is drawn are some three times that.
 */
const clause9: Check[] = [
  ...rows({ quantity: `${SUMS}, linear`, unit: '', tolerance: 0.05, ...supplement('9.2') }, [
    ['four normal', () => linearHalf([1, 1, 1, 1]), 3.92],
    ['one of the four ten times as wide', () => linearHalf([1, 1, 1, 10]), 19.9],
  ]),
  ...rows({ quantity: `${SUMS}, drawn`, unit: '', tolerance: 0.05, ...supplement('9.2') }, [
    ['four normal', () => half(sums(0).symmetric), 3.92],
    ['four even', () => half(sums(1).symmetric), 3.88],
    ['one of the four ten times as wide', () => half(sums(2).symmetric), 17],
  ]),
  ...rows({ quantity: `${SUMS}, linear`, unit: '', tolerance: 5e-7, ...worked }, [
    // √103 times 1.959964
    ['one of the four ten times as wide', () => linearHalf([1, 1, 1, 10]), 19.891462],
  ]),
  ...rows({ quantity: `${SUMS}, drawn`, unit: '', tolerance: 0.025, ...worked }, [
    ['four normal', () => half(sums(0).symmetric), 3.919928],
    ['four even, Irwin and Hall', () => half(sums(1).symmetric), 3.8794067413],
    ['one of the four ten times as wide', () => half(sums(2).symmetric), 17.0158],
  ]),
  ...rows({ quantity: `${WEIGHT}, linear`, unit: 'mg', tolerance: 5e-5, ...supplement('9.3') }, [
    ['value', () => weightLinear.value, 1.234],
    ['standard uncertainty', () => weightLinear.standard, 0.0539],
    ['low end', () => weightLinear.value - expandedUncertainty(weightLinear.standard, Infinity), 1.1285],
    ['high end', () => weightLinear.value + expandedUncertainty(weightLinear.standard, Infinity), 1.3395],
  ]),
  ...rows({ quantity: `${WEIGHT}, drawn`, unit: 'mg', tolerance: 0.001, ...supplement('9.3') }, [
    ['value', () => weightDrawn(0).mean, 1.2341],
    ['standard uncertainty', () => weightDrawn(0).standard, 0.0754],
    ['low end', () => weightDrawn(0).shortest.low, 1.0834],
    ['high end', () => weightDrawn(0).shortest.high, 1.3825],
  ]),
  ...rows({ quantity: `${LOSS}, linear`, unit: '', tolerance: 0.5, ...supplement('9.4') }, [
    ['at 0.01', () => lossLinear[1]?.value ?? 0, 100],
    ['at 0.01, standard uncertainty', () => lossLinear[1]?.standard ?? 0, 100],
    ['at 0.05', () => lossLinear[2]?.value ?? 0, 2500],
    ['at 0.05, standard uncertainty', () => lossLinear[2]?.standard ?? 0, 500],
  ]),
  ...rows({ quantity: `${LOSS}, drawn`, unit: '', tolerance: 3, ...supplement('9.4') }, [
    ['at 0', () => lossDrawn(0).mean, 50],
    ['at 0, standard uncertainty', () => lossDrawn(0).standard, 50],
    ['at 0, end of the shortest range', () => lossDrawn(0).shortest.high, 150],
    ['at 0.01', () => lossDrawn(1).mean, 150],
    ['at 0.01, standard uncertainty', () => lossDrawn(1).standard, 112],
    ['at 0.05', () => lossDrawn(2).mean, 2551],
    ['at 0.05, standard uncertainty', () => lossDrawn(2).standard, 502],
  ]),
  ...rows({ quantity: `${LOSS}, drawn`, unit: '', relative: true, tolerance: 0.01, ...worked }, [
    ['at 0', () => lossDrawn(0).mean, 50],
    ['at 0, standard uncertainty', () => lossDrawn(0).standard, 50],
    ['at 0, end of the shortest range', () => lossDrawn(0).shortest.high, 149.787],
    ['at 0.01', () => lossDrawn(1).mean, 150],
    ['at 0.01, standard uncertainty', () => lossDrawn(1).standard, 111.803],
    ['at 0.05', () => lossDrawn(2).mean, 2550],
    ['at 0.05, standard uncertainty', () => lossDrawn(2).standard, 502.494],
  ]),
];

export const uncertainty: Check[] = [...annexH, ...clause9];

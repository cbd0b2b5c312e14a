import type { DayDoubts, DoubtName } from './day.ts';
import type { SortedDay, SortedRun } from './sortDay.ts';

/*
 * What may be off on a test day, one entry for each independent cause. What all runs share is one entry, so that it cancels in a difference
 * exactly as far as it does.
 */

/** What is to be added to the figures of a day: absolute or relative as in `DayDoubts`. What has no entry is right. */
export interface DayErrors {
  meterScale: number;
  riderMass: number;
  distance: number;
  gain: number;
  dragArea: number;
  /** of C_rr where there is no control run */
  rolling: number;
  rollingWithSpeed: number;
  efficiency: number;
  density: number;
  headWind: number;
  targetRolling: number;
  /** by bike: kg; of chain and gears; of the battery, relative; of one climb's share of the battery */
  bikeMass: number[];
  efficiencyBetween: number[];
  battery: number[];
  gauge: number[];
  /** by tyres: C_rr */
  tyres: number[];
  /** by run: of the total power that belongs to its time, relative */
  runs: number[];
}

/** A day on which everything is as it was read. */
export const noErrors = (): DayErrors => ({
  meterScale: 0,
  riderMass: 0,
  distance: 0,
  gain: 0,
  dragArea: 0,
  rolling: 0,
  rollingWithSpeed: 0,
  efficiency: 0,
  density: 0,
  headWind: 0,
  targetRolling: 0,
  bikeMass: [],
  efficiencyBetween: [],
  battery: [],
  gauge: [],
  tyres: [],
  runs: [],
});

/** One independent cause of error. */
export interface ErrorSource {
  name: DoubtName;
  /** standard uncertainty */
  standard: number;
  /** degrees of freedom that `standard` was estimated with; all finite ones are the same estimate */
  freedom: number;
  /** the sum of so many readings, each evenly within its step; absent: normal */
  readings?: number;
  /** the run that it is an error of: it averages over the runs of a bike */
  run?: SortedRun;
  add: (errors: DayErrors, amount: number) => void;
}

/** How far runs scatter. */
export interface Scatter {
  /** standard deviation of one run relative to total power, over what instruments and an assumed day amount to */
  ratio: number;
  /** degrees of freedom; 0 when it is assumed */
  freedom: number;
  assumed: boolean;
}

/** 95 % half-width over standard uncertainty, of all that is reduced as a day. Why plans have another: `scenario/doubts.ts`. */
export const COVERAGE = 1.959964;

/** What one run may be off by itself, relative to total power: standard uncertainties by cause. */
export interface RunDoubt {
  stopwatch: number;
  meterRepeatability: number;
  scatter: number;
}

/**
 * What instruments and an assumed day leave open of one run.
 * @param riderShare of total power: what of it the meter sees
 * @param steepness relative change of total power for that of speed: 1 without air
 */
export function runDoubtOf(time: number, riderShare: number, steepness: number, doubts: DayDoubts): RunDoubt {
  return {
    stopwatch: (steepness * doubts.stopwatch) / time / COVERAGE,
    meterRepeatability: (riderShare * doubts.meterRepeatability) / COVERAGE,
    scatter: doubts.scatter / COVERAGE,
  };
}

/** Where a run is said to have no doubt at all, all runs count alike. */
const LEAST_SIZE = 1e-6;

/** Standard deviation of one run, relative to total power, that its doubt amounts to. */
export const sizeOf = ({ stopwatch, meterRepeatability, scatter }: RunDoubt): number =>
  Math.max(LEAST_SIZE, Math.hypot(stopwatch, meterRepeatability, scatter));

type Shared = { [Name in keyof DayErrors]: DayErrors[Name] extends number ? Name : never }[keyof DayErrors];
type Listed = Exclude<keyof DayErrors, Shared>;

const shared = (name: Shared & DoubtName, halfWidth: number): ErrorSource => ({
  name,
  standard: halfWidth / COVERAGE,
  freedom: Infinity,
  add: (errors, amount) => {
    errors[name] += amount;
  },
});

/** The same error for each of these bikes, runs or tyres. */
const listed = (name: DoubtName, list: Listed, places: readonly number[], standard: number): ErrorSource => ({
  name,
  standard,
  freedom: Infinity,
  add: (errors, amount) => {
    for (const place of places) errors[list][place] = (errors[list][place] ?? 0) + amount;
  },
});

/** Everything that may be off on this day, as the comparison has it: what is held in a paired experiment is one error for all its bikes. */
export function errorSourcesOf(
  sorted: SortedDay,
  doubts: DayDoubts,
  scatter: Scatter,
  runDoubts: readonly RunDoubt[],
): ErrorSource[] {
  const sources = [
    shared('meterScale', doubts.meterScale),
    shared('riderMass', doubts.riderMass),
    shared('distance', doubts.distance),
    shared('gain', doubts.gain),
    shared('dragArea', doubts.dragArea),
    shared('efficiency', doubts.efficiency),
    shared('density', doubts.density),
    shared('headWind', doubts.headWind),
    ...rollingSources(sorted, doubts),
    ...bikeSources(sorted, doubts),
    ...runSources(sorted, scatter, runDoubts),
  ];
  return sources.filter(({ standard }) => standard > 0);
}

/** Rolling resistance: what no control run saw of these tyres, of these speeds and of the other hill. */
function rollingSources({ groups, isCalibrated, carriesRolling }: SortedDay, doubts: DayDoubts): ErrorSource[] {
  const { rollingLow, rollingHigh, tyres } = doubts;
  const other = carriesRolling ? [] : [shared('targetRolling', doubts.targetRolling)];
  const unseen = groups.filter(({ controls }) => controls.length === 0);
  // two tyres differ by `tyres`, so each is off what such tyres have in the mean by the root of half of that, the calibrated ones too
  const own = tyres / COVERAGE / Math.SQRT2;
  const between = groups.length > 1 ? unseen.map(({ index }) => listed('tyres', 'tyres', [index], own)) : [];
  if (!isCalibrated) return [shared('rolling', (rollingHigh - rollingLow) / 2), ...between, ...other];
  const places = unseen.map(({ index }) => index);
  const seen = listed('tyres', 'tyres', places, own / Math.sqrt(groups.length - unseen.length));
  return [
    shared('rollingWithSpeed', doubts.rollingWithSpeed),
    ...between,
    ...(places.length > 0 ? [seen] : []),
    ...other,
  ];
}

/** Mass and drive of each bike for itself, or of the one bike that they are variants of; each battery and its gauge. */
function bikeSources({ day, bikes }: SortedDay, doubts: DayDoubts): ErrorSource[] {
  const every = bikes.map(({ index }) => index);
  const one = (name: 'bikeMass' | 'efficiencyBetween', places: number[]): ErrorSource =>
    listed(name, name, places, doubts[name] / COVERAGE);
  const each = (name: 'bikeMass' | 'efficiencyBetween', from = 0): ErrorSource[] =>
    every.slice(from).map((index) => one(name, [index]));
  const own =
    day.factor === 'bikes'
      ? [...each('bikeMass'), ...each('efficiencyBetween')]
      : [
          one('bikeMass', every),
          one('efficiencyBetween', every),
          // the mass that was added is weighed too
          ...(day.factor === 'mass' ? each('bikeMass', 1) : []),
        ];
  const batteries = bikes.flatMap(({ index, gauge }) =>
    gauge === null
      ? []
      : [
          listed('battery', 'battery', [index], doubts.battery / COVERAGE),
          {
            // each reading is off by up to half a step, evenly
            ...listed('gauge', 'gauge', [index], (day.gaugeStep * Math.sqrt(gauge.readings / 12)) / gauge.climbs),
            readings: gauge.readings,
          },
        ],
  );
  return [...own, ...batteries];
}

/**
 * What each run is off by itself. Repeats show stopwatch, repeatability and the day together: how they share it between a control run and an
 * assisted one, of whose power the meter sees less, stays as stated.
 */
function runSources({ runs }: SortedDay, scatter: Scatter, doubts: readonly RunDoubt[]): ErrorSource[] {
  return runs.flatMap((run, i) => {
    const doubt = doubts[i];
    if (!doubt) return [];
    const source = (name: keyof RunDoubt, standard: number): ErrorSource => ({
      ...listed(name, 'runs', [run.index], standard),
      freedom: scatter.assumed ? Infinity : scatter.freedom,
      run,
    });
    // repeats that agree by chance make no run better than its stopwatch
    if (!scatter.assumed) return [source('scatter', Math.max(scatter.ratio * sizeOf(doubt), doubt.stopwatch))];
    const stated = Object.entries(doubt) as [keyof RunDoubt, number][];
    return stated.map(([name, standard]) => source(name, scatter.ratio * standard));
  });
}

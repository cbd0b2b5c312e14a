import type { TestBike, TestDay, TestRun } from './day.ts';

/*
 * A day sorted out before anything is computed: which runs calibrate which tyres, which belong to which bike, and what is compared.
 */

export interface TyreGroup {
  index: number;
  /** number of the tyres, as the bikes state it */
  tyres: number;
  controls: readonly SortedRun[];
}

export interface SortedRun {
  index: number;
  run: TestRun;
  bike: TestBike;
  /** index of its bike and of the tyres on it */
  bikeIndex: number;
  tyreIndex: number;
}

/** What the gauge of a bike said over its runs. */
export interface GaugeReadings {
  /** assisted runs with a reading before and after, and their mean share of the battery */
  climbs: number;
  share: number;
  runs: readonly SortedRun[];
  /** readings whose errors do not cancel: one after a run that is also the one before the next counts for nothing */
  readings: number;
}

export interface SortedBike {
  index: number;
  bike: TestBike;
  tyreIndex: number;
  /** assisted */
  runs: readonly SortedRun[];
  gauge: GaugeReadings | null;
}

export interface SortedDay {
  day: TestDay;
  groups: readonly TyreGroup[];
  bikes: readonly SortedBike[];
  runs: readonly SortedRun[];
  /** there is a control run */
  isCalibrated: boolean;
  /** the other hill is more of the measured one: same grade, same surface */
  carriesRolling: boolean;
}

/** @throws RangeError for a run of a bike that is not there */
export function sortDay(day: TestDay): SortedDay {
  const tyres = [...new Set(day.bikes.map((bike) => bike.tyres))];
  const runs = day.runs.map((run, index): SortedRun => {
    const bike = day.bikes[run.bike];
    if (!bike) throw new RangeError('A run needs one of the bikes.');
    return { index, run, bike, bikeIndex: run.bike, tyreIndex: tyres.indexOf(bike.tyres) };
  });
  const { target } = day;
  return {
    day,
    runs,
    groups: tyres.map((number, index) => ({
      index,
      tyres: number,
      controls: runs.filter(({ run, tyreIndex }) => !run.assisted && tyreIndex === index),
    })),
    bikes: day.bikes.map((bike, index) => {
      const own = runs.filter(({ run, bikeIndex }) => run.assisted && bikeIndex === index);
      return { index, bike, tyreIndex: tyres.indexOf(bike.tyres), runs: own, gauge: gaugeOf(own, bike.usableEnergy) };
    }),
    isCalibrated: runs.some(({ run }) => !run.assisted),
    carriesRolling:
      target === undefined ||
      (target.rolling === undefined && Math.abs(target.hill.grade - day.hill.grade) < 1e-6 * Math.abs(day.hill.grade)),
  };
}

function gaugeOf(runs: readonly SortedRun[], usableEnergy: number | undefined): GaugeReadings | null {
  const read = runs.filter(({ run }) => run.gaugeBefore !== undefined && run.gaugeAfter !== undefined);
  if (read.length === 0 || usableEnergy === undefined) return null;
  let share = 0;
  let readings = 0;
  let last: number | undefined;
  for (const { run } of read) {
    const { gaugeBefore = 0, gaugeAfter = 0 } = run;
    share += (gaugeBefore - gaugeAfter) / read.length;
    // the same figure again is the same reading: it was added once and taken off once
    readings += gaugeBefore === last ? 0 : 2;
    last = gaugeAfter;
  }
  return { climbs: read.length, share, runs: read, readings };
}

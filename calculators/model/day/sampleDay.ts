import { coverageInterval } from '../gum.ts';
import { chiSquareDraw, normalDraw } from '../random.ts';
import { meanOf, standardDeviation } from '../statistics.ts';
import type { DayDoubts, TestDay } from './day.ts';
import { type DayErrors, type ErrorSource, noErrors } from './dayErrors.ts';
import { type BikeResult, type DayResults, FIGURES } from './dayResults.ts';
import { type PreparedDay, prepareDay } from './prepareDay.ts';

/*
 * The ranges of a day by drawing (JCGM 101): every cause of error is drawn anew in each trial, what runs share once for all of them, and the
 * whole reduction is done again.
 */

/** What the trials of one figure say. `low` to `high` holds 95 % of them, as many below as above. */
export interface SampledRange {
  mean: number;
  standard: number;
  low: number;
  high: number;
}

export type SampledFigures = Partial<Record<keyof BikeResult, SampledRange>>;

export interface SampledDay {
  trials: number;
  /** by bike; empty of one without an assisted run */
  bikes: readonly SampledFigures[];
  /** every two bikes with assisted runs, by index: second minus first */
  pairs: readonly { first: number; second: number; differences: SampledFigures }[];
}

const COMPARED = ['motorPower', 'time', 'targetTime'] as const;

/**
 * Draws the errors of a day `trials` times.
 * @param onBatch is told what there is after every `batch` trials, for somebody who watches
 */
export function sampleDay(
  day: TestDay,
  doubts: DayDoubts,
  trials: number,
  random: () => number,
  onBatch?: (soFar: SampledDay) => void,
  batch = 1000,
): SampledDay {
  const prepared = prepareDay(day, doubts);
  const compared = prepared.sorted.bikes.filter(({ runs }) => runs.length > 0).map(({ index }) => index);
  const samples = prepared.sorted.bikes.map(() => FIGURES.map(() => new Float64Array(trials)));
  for (let trial = 0; trial < trials; ) {
    trialOf(prepared, random).bikes.forEach((bike, i) => {
      FIGURES.forEach((name, k) => {
        const values = samples[i]?.[k];
        if (values) values[trial] = bike?.[name] ?? Number.NaN;
      });
    });
    trial++;
    if (onBatch && trial % batch === 0 && trial < trials) onBatch(summaryOf(samples, compared, trial));
  }
  return summaryOf(samples, compared, trials);
}

/** What the day says when everything is off by chance. */
export function trialOf({ sources, resultsWith }: PreparedDay, random: () => number): DayResults {
  return resultsWith(drawErrors(sources, random));
}

/** One error of each source. A scatter from few repeats may be larger or smaller than they showed: drawn once for all runs, a scaled t. */
function drawErrors(sources: readonly ErrorSource[], random: () => number): DayErrors {
  const errors = noErrors();
  let spread = 0;
  for (const source of sources) {
    const { standard, freedom, readings } = source;
    if (freedom < Infinity && spread === 0) spread = Math.sqrt(freedom / chiSquareDraw(random, freedom));
    const draw = readings ? evenSum(readings, random) : normalDraw(random);
    source.add(errors, standard * (freedom < Infinity ? spread : 1) * draw);
  }
  return errors;
}

/** Sum of so many even errors, of mean 0 and standard deviation 1. */
function evenSum(count: number, random: () => number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += random() - 0.5;
  return sum * Math.sqrt(12 / count);
}

function summaryOf(
  samples: readonly (readonly Float64Array[])[],
  compared: readonly number[],
  trials: number,
): SampledDay {
  const valuesOf = (bike: number, name: keyof BikeResult): Float64Array =>
    samples[bike]?.[FIGURES.indexOf(name)]?.subarray(0, trials) ?? new Float64Array();
  const pairs = compared.flatMap((first, i) => compared.slice(i + 1).map((second) => ({ first, second })));
  return {
    trials,
    bikes: samples.map((_, bike) =>
      compared.includes(bike) ? summarise(FIGURES, (name) => valuesOf(bike, name)) : {},
    ),
    pairs: pairs.map(({ first, second }) => ({
      first,
      second,
      differences: summarise(COMPARED, (name) => {
        const base = valuesOf(first, name);
        return valuesOf(second, name).map((value, i) => value - (base[i] ?? Number.NaN));
      }),
    })),
  };
}

/** Ranges of the figures that there are. */
function summarise(
  names: readonly (keyof BikeResult)[],
  valuesOf: (name: keyof BikeResult) => Float64Array,
): SampledFigures {
  const figures: SampledFigures = {};
  for (const name of names) {
    const values = valuesOf(name).filter(Number.isFinite);
    if (values.length === 0) continue;
    const all = Array.from(values);
    figures[name] = { mean: meanOf(all), standard: standardDeviation(all), ...coverageInterval(values).symmetric };
  }
  return figures;
}

import type { DoubtName, Estimate } from '../model/day/day.ts';

/** A source of doubt in words. */
export interface Cause {
  /** as in a sentence: "Most of the doubt is the surface." */
  words: string;
  /** what would make it smaller */
  remedy: string;
  /** each run has an error of its own, so that more runs make it smaller */
  averages?: true;
}

export const causes: Readonly<Record<DoubtName, Cause>> = {
  meterScale: { words: 'the power meter’s scale', remedy: 'check the meter with hung weights, before and after' },
  meterRepeatability: { words: 'the power meter from run to run', remedy: 'more runs', averages: true },
  stopwatch: { words: 'the stopwatch', remedy: 'more runs, or a longer hill', averages: true },
  riderMass: { words: 'the rider’s weight', remedy: 'weigh the rider with kit and bottle' },
  bikeMass: { words: 'the bikes’ weights', remedy: 'weigh each bike to 0.1 kg' },
  distance: { words: 'the measured distance', remedy: 'measure it with a wheel' },
  gain: { words: 'the measured height', remedy: 'take it from a survey' },
  dragArea: { words: 'how much air the rider pushes', remedy: 'sit alike on all bikes' },
  rolling: { words: 'the surface', remedy: 'ride control runs, first and last' },
  tyres: { words: 'tyres that are not alike', remedy: 'same tyres and pressure on all bikes' },
  rollingWithSpeed: {
    words: 'whether rolling rises with speed',
    remedy: 'a faster control run, on a gentler stretch',
  },
  efficiency: { words: 'the chain and gears', remedy: 'clean and oil them' },
  efficiencyBetween: { words: 'chains and gears that differ', remedy: 'treat all chains alike' },
  density: { words: 'the density of the air', remedy: 'note altitude and temperature' },
  headWind: { words: 'wind', remedy: 'measure it, and ride in still air' },
  scatter: { words: 'one run to the next', remedy: 'more runs, alike in wind, line and pacing', averages: true },
  gauge: { words: 'the steps of the gauge', remedy: 'several climbs between two readings', averages: true },
  battery: { words: 'how much the battery really holds', remedy: 'measure a full charge at the wall' },
  targetRolling: { words: 'the surface of the other hill', remedy: 'state its rolling resistance' },
};

/** Half of a 95 % range. */
export const halfOf = ({ low, high }: Estimate): number => (high - low) / 2;

/** Half-width that these causes alone would make. */
export function partOf(estimate: Estimate, names: readonly DoubtName[]): number {
  const share = estimate.causes.reduce((sum, cause) => (names.includes(cause.name) ? sum + cause.share : sum), 0);
  return halfOf(estimate) * Math.sqrt(share);
}

/** The largest cause of an estimate's doubt that more runs would not make smaller; undefined where all would. */
export function lastingCause(estimate: Estimate): Cause | undefined {
  const largest = estimate.causes.find(({ name, share }) => share > 0 && !causes[name].averages);
  return largest && causes[largest.name];
}

/** Mean shares of the causes over several estimates, by what is said of them; largest first. */
export function rankedCauses(estimates: readonly Estimate[]): { cause: Cause; share: number }[] {
  const sums = new Map<Cause, number>();
  for (const { causes: own } of estimates)
    for (const { name, share } of own) {
      const cause = causes[name];
      sums.set(cause, (sums.get(cause) ?? 0) + share / estimates.length);
    }
  return [...sums].map(([cause, share]) => ({ cause, share })).sort((a, b) => b.share - a.share);
}

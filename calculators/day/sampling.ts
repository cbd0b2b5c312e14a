import { useEffect, useState } from 'preact/hooks';
import { formatNumber, type System } from '../quantities/index.ts';
import { agreementText } from './agreement.ts';
import type { DayOutcome } from './outcome.ts';
import type { Asked, Told } from './worker.ts';

export const TRIALS = 20_000;
/** For so many ms a day must stay as it is before it is worth drawing. */
const PAUSE = 600;

/**
 * One worker for as long as the page lives: its file is asked for once, early, because on a hill there may be no signal for a second
 * one. Undefined while the page is built and without workers.
 */
let worker: Worker | undefined;
/** Number of the last day that was asked about: words about an earlier one are not shown. */
let asked = 0;

export function readySampling(): Worker | undefined {
  if (worker || typeof Worker === 'undefined') return worker;
  try {
    worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  } catch {
    return undefined;
  }
  worker.onerror = (event): void => {
    event.preventDefault();
    // with a signal the next day may have better luck
    worker = undefined;
  };
  return worker;
}

/**
 * In words how far many drawn days agree with the ranges of an outcome, and until then how far the drawing is. Empty where nothing can be
 * drawn: while the page is built, without workers, or when the worker’s file did not come.
 */
export function useSimulation(outcome: DayOutcome, system: System): string {
  const [words, setWords] = useState('');
  useEffect(() => {
    setWords('');
    const { about, reading } = outcome;
    if (!about || about.reduction.bikes.every(({ motorPower }) => !motorPower)) return;
    const id = ++asked;
    const listen = ({ data: { id: of, trials, sampled } }: MessageEvent<Told>): void => {
      if (of !== id) return;
      setWords(
        sampled
          ? agreementText(about.reduction, sampled, reading.bikeNames, system)
          : `${formatNumber(trials)} of ${formatNumber(TRIALS)} days drawn…`,
      );
    };
    const ready = readySampling();
    ready?.addEventListener('message', listen);
    const timer = setTimeout(
      () => ready?.postMessage({ id, day: about.day, doubts: reading.doubts, trials: TRIALS } satisfies Asked),
      PAUSE,
    );
    return () => {
      clearTimeout(timer);
      ready?.removeEventListener('message', listen);
    };
  }, [outcome, system]);
  return words;
}

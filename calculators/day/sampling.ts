import { useEffect, useState } from 'preact/hooks';
import { formatNumber, type System } from '../quantities/index.ts';
import { agreementText } from './agreement.ts';
import type { DayOutcome } from './outcome.ts';
import type { Asked, Told } from './worker.ts';

export const TRIALS = 20_000;
/** For so many ms a day must stay as it is before it is worth drawing. */
const PAUSE = 600;

/**
 * In words how far many drawn days agree with the ranges of an outcome, and until then how far the drawing is. Empty where nothing can be
 * drawn: while the page is built, without workers, or when the worker’s file did not come.
 */
export function useSimulation(outcome: DayOutcome, system: System): string {
  const [words, setWords] = useState('');
  useEffect(() => {
    setWords('');
    const { about, reading } = outcome;
    if (!about || about.reduction.bikes.every(({ motorPower }) => !motorPower) || typeof Worker === 'undefined') return;
    let worker: Worker | undefined;
    const timer = setTimeout(() => {
      try {
        worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
      } catch {
        return;
      }
      worker.onmessage = ({ data: { trials, sampled } }: MessageEvent<Told>): void =>
        setWords(
          sampled
            ? agreementText(about.reduction, sampled, reading.bikeNames, system)
            : `${formatNumber(trials)} of ${formatNumber(TRIALS)} days drawn…`,
        );
      worker.onerror = (event): void => {
        event.preventDefault();
        setWords('');
      };
      worker.postMessage({ day: about.day, doubts: reading.doubts, trials: TRIALS } satisfies Asked);
    }, PAUSE);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [outcome, system]);
  return words;
}

import { formatNumber, fromSi, type Kind, type System, shownUnit, toSi } from '../quantities/index.ts';

/** A mark on an axis: where it is, SI, and what it says. */
export interface Tick {
  at: number;
  text: string;
}

/** Round numbers from 0 to `top`, about `count` steps of 1, 2 or 5 times a power of ten. */
export function roundNumbers(top: number, count: number): number[] {
  const power = 10 ** Math.floor(Math.log10(top / count));
  const step = power * ([1, 2, 5].find((factor) => factor * power * count >= top * 0.99) ?? 10);
  return Array.from({ length: Math.floor(top / step + 1e-9) + 1 }, (_, i) => i * step);
}

/** Round marks from `low` to `top` (SI) in the reader's unit. Times are marked in minutes. */
export function axisTicks(
  top: number,
  kind: Kind,
  system: System,
  count = 4,
  low = 0,
): { unit: string; ticks: Tick[] } {
  const unit = kind === 'duration' ? undefined : shownUnit(kind, system);
  const toShown = (si: number): number => (unit ? fromSi(si, unit) : si / 60);
  const toValue = (shown: number): number => (unit ? toSi(shown, unit) : shown * 60);
  const [, step = 1] = roundNumbers(toShown(top - low), count);
  const first = Math.ceil(toShown(low) / step - 1e-9);
  const last = Math.floor(toShown(top) / step + 1e-9);
  return {
    unit: unit ? unit.text : 'min',
    ticks: Array.from({ length: last - first + 1 }, (_, i) => {
      const shown = (first + i) * step;
      return { at: toValue(shown), text: formatNumber(shown, Number.isInteger(shown) ? 0 : step < 0.1 ? 2 : 1) };
    }),
  };
}

/** Position in percent, two decimals: what a chart's element needs, and no more bytes. */
export function percent(share: number): string {
  return `${Math.round(share * 1e4) / 1e2}%`;
}

/** Series colours and marks go together, so that colour is never all that tells two apart. */
export const SERIES = ['one', 'two', 'three', 'four', 'five', 'six'] as const;

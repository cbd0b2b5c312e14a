/** An input known only to within a range that holds it with 95 %. The value need not be in the middle. */
export interface UncertainInput {
  name: string;
  value: number;
  low: number;
  high: number;
}

/** A result with its 95 % range and how much of it each input makes. A side that no number bounds is infinite. */
export interface UncertainResult {
  value: number;
  low: number;
  high: number;
  /** inputs by the size of what they move, largest first; `down` ≤ 0 ≤ `up` */
  causes: { name: string; down: number; up: number }[];
}

/**
 * Linear propagation: each input goes to both ends of its 95 % range while the others stay, and the shifts of either sign add in squares
 * (the numerical form in JCGM 100:2008, 5.1.3 note 2, kept apart by side because some ranges are lopsided).
 * An input that several results share is moved once for all of them, so in a difference it cancels exactly as far as it does.
 * @param f maps input values, in order, to any number of results
 */
export function propagate(inputs: readonly UncertainInput[], f: (values: number[]) => number[]): UncertainResult[] {
  const values = inputs.map((input) => input.value);
  const centre = f(values);
  const results = centre.map((value): UncertainResult & { down2: number; up2: number } => ({
    value,
    low: value,
    high: value,
    causes: [],
    down2: 0,
    up2: 0,
  }));
  inputs.forEach((input, i) => {
    const atLow = f(values.with(i, input.low));
    const atHigh = f(values.with(i, input.high));
    results.forEach((result, k) => {
      const shifts = [(atLow[k] ?? Number.NaN) - result.value, (atHigh[k] ?? Number.NaN) - result.value];
      const down = Math.min(0, ...shifts);
      const up = Math.max(0, ...shifts);
      // no result at that end: nothing is known to bound this one
      if (Number.isNaN(down) || Number.isNaN(up)) {
        if (Number.isFinite(result.value)) result.down2 = result.up2 = Number.POSITIVE_INFINITY;
        return;
      }
      result.causes.push({ name: input.name, down, up });
      result.down2 += down * down;
      result.up2 += up * up;
    });
  });
  return results.map(({ down2, up2, value, causes }) => ({
    value,
    low: value - Math.sqrt(down2),
    high: value + Math.sqrt(up2),
    causes: causes.sort((a, b) => b.up - b.down - (a.up - a.down)),
  }));
}

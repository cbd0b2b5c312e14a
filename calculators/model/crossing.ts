/**
 * Where an increasing function goes through zero between two ends, one on either side of it: by the secant, an end that stays twice counting half
 * (the Illinois method). Relative error 1e-12 where the function is that exact.
 */
export function crossingOf(f: (x: number) => number, lowEnd: number, highEnd: number): number {
  let [low, high] = [lowEnd, highEnd];
  let [below, above] = [f(low), f(high)];
  let kept = 0;
  for (let i = 0; i < 100 && high - low > 1e-12 * Math.abs(high); i++) {
    const middle = high - (above * (high - low)) / (above - below);
    const off = f(middle);
    if (Math.abs(off) < 1e-13) return middle;
    if (off < 0) {
      [low, below] = [middle, off];
      if (kept < 0) above /= 2;
      kept = -1;
    } else {
      [high, above] = [middle, off];
      if (kept > 0) below /= 2;
      kept = 1;
    }
  }
  return high;
}

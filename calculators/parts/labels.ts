/** A name short enough to stand beside a chart. */
export const shorten = (label: string, most = 12): string =>
  label.length > most ? `${label.slice(0, most - 1)}…` : label;

/** Heights (percent) between which labels stand. */
const HIGHEST = 4;
const LOWEST = 97;

/** Pushes label heights (percent, any order) apart until neighbours have `least` between them, as little as possible, and all into the chart. */
export function spreadLabels(heights: readonly number[], least: number): number[] {
  const order = heights.map((height, i) => ({ height, i })).sort((a, b) => a.height - b.height);
  for (let round = 0; round < 50; round++) {
    let moved = false;
    for (let k = 1; k < order.length; k++) {
      const upper = order[k - 1];
      const lower = order[k];
      if (!upper || !lower) continue;
      const missing = least - (lower.height - upper.height);
      if (missing <= 1e-9) continue;
      upper.height -= missing / 2;
      lower.height += missing / 2;
      moved = true;
    }
    if (!moved) break;
  }
  const down = Math.max(0, HIGHEST - (order[0]?.height ?? HIGHEST));
  const up = Math.max(0, (order.at(-1)?.height ?? LOWEST) - LOWEST);
  const spread: number[] = [];
  for (const { height, i } of order) spread[i] = height + down - up;
  return spread;
}

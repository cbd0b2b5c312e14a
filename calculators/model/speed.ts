import { type Resistance, resistingForce } from './resistance.ts';

/** Speed, m/s, at which the hill or a tail wind alone carries the bike: `F(v) = 0`. Zero when it holds the bike back at rest. */
export function coastingSpeed(r: Resistance): number {
  if (resistingForce(r, 0) >= 0) return 0;
  // quadratic in the air speed u: k·u|u| + b·u + c = 0, written without cancellation
  const c = r.constant - r.linear * r.headWind;
  if (c === 0) return -r.headWind; // nothing but the wind: the bike goes with it
  const u = (-2 * c) / (r.linear + Math.sqrt(r.linear * r.linear + 4 * r.quadratic * Math.abs(c)));
  return u - r.headWind;
}

/**
 * Steady speed, m/s, that `wheelPower` (W, at the wheel, not negative) keeps up: the root of `v·F(v) = P` with `F(v) ≥ 0`.
 * F rises with v, so there is exactly one such root on any slope and in any wind; without power it is the coasting speed.
 * Newton's method started from an upper bound and kept inside a bracket; no allocation.
 * Infinity when nothing grows with speed and the slope pushes.
 */
export function steadySpeed(r: Resistance, wheelPower: number): number {
  let low = coastingSpeed(r);
  if (!(wheelPower > 0) || low === Number.POSITIVE_INFINITY) return low;
  const atLow = resistingForce(r, low);
  // F(low + d) ≥ k d²/2 (the worst case has the still-air point in the middle), so the root lies below low + cbrt(2P/k) …
  let high = r.quadratic > 0 ? low + Math.cbrt((2 * wheelPower) / r.quadratic) : low + Math.sqrt(wheelPower / r.linear);
  // … and F never falls below F(low), so it also lies below P / F(low).
  if (atLow > 0) high = Math.min(high, wheelPower / atLow);
  let v = high;
  for (let i = 0; i < 200; i++) {
    const u = v + r.headWind;
    const size = Math.abs(u);
    const force = r.constant + r.linear * v + r.quadratic * u * size;
    const excess = v * force - wheelPower;
    if (excess > 0) high = v;
    else low = v;
    let next = v - excess / (force + v * (r.linear + 2 * r.quadratic * size));
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    if (Math.abs(next - v) <= 4e-16 * next) return next;
    v = next;
  }
  return v;
}

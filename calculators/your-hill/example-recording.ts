import { gainsOf, normalDraw, randomSource } from '../model/index.ts';

/*
 * An invented recording of a hill that is known: what pages tell of gain figures comes from here. No road and no device is meant.
 */

/** How an invented device errs in height. */
export type HeightSensor = 'exact' | 'barometer' | 'positions';

/** m of way and m of height of each piece of the invented hill: two ramps, a dip and a gentler part. */
const ROAD = [
  [600, 48],
  [900, 90],
  [300, -18],
  [700, 70],
  [1000, 35],
  [500, 45],
] as const;

const LENGTH = ROAD.reduce((sum, [way]) => sum + way, 0);
const FOOT = 420;

/** What the hill truly gains, m: its rises summed, and its top less its foot. */
export const TRUE_RISES = ROAD.reduce((sum, [, rise]) => sum + Math.max(0, rise), 0);
export const TRUE_NET = ROAD.reduce((sum, [, rise]) => sum + rise, 0);

function trueHeight(place: number): number {
  let [height, left] = [FOOT, place];
  for (const [way, rise] of ROAD) {
    const share = Math.min(1, Math.max(0, left / way));
    height += share * rise;
    left -= way;
  }
  return height;
}

/**
 * A ride up the invented hill at one speed, recorded once a second. A barometer here reads steps of 0.3 m, trembles by 0.15 m and drifts
 * by about 1 m over the ride. Heights from positions wander by some 4 m, half of it forgotten after 35 s. All four are assumptions.
 * @param speed m/s
 * @returns m along the road and m above the sea, s from the start
 */
export function exampleRecording(
  seed: number,
  sensor: HeightSensor,
  speed: number,
): { distance: Float64Array; elevation: Float64Array; time: Float64Array } {
  const random = randomSource(seed);
  const points = Math.floor(LENGTH / speed) + 1;
  const kept = 0.5 ** (1 / 35);
  let wander = 4 * normalDraw(random);
  const drift = normalDraw(random);
  const distance = new Float64Array(points);
  const elevation = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    const place = Math.min(LENGTH, i * speed);
    distance[i] = place;
    const height = trueHeight(place);
    if (sensor === 'exact') elevation[i] = height;
    else if (sensor === 'barometer') {
      const trembling = 0.15 * normalDraw(random);
      elevation[i] = 0.3 * Math.round((height + drift * Math.sin((Math.PI * place) / LENGTH) + trembling) / 0.3);
    } else {
      elevation[i] = height + wander;
      wander = kept * wander + Math.sqrt(1 - kept * kept) * 4 * normalDraw(random);
    }
  }
  return { distance, elevation, time: Float64Array.from(distance, (_, i) => i) };
}

/** What each method of summing makes of the true rises of the invented hill, as a share of them: 1 is right. */
export interface GainRatios {
  raw: number;
  smoothed: number;
  threshold: number;
  net: number;
}

/**
 * Mean of the gains by each method over many invented recordings, as shares of the true rises.
 * @param window m
 * @param threshold m
 */
export function exampleGains(
  sensor: HeightSensor,
  speed: number,
  { window, threshold }: { window: number; threshold: number },
  recordings = 40,
): GainRatios {
  const sum = { raw: 0, smoothed: 0, threshold: 0, net: 0 };
  for (let seed = 1; seed <= recordings; seed++) {
    const { distance, elevation } = exampleRecording(seed, sensor, speed);
    const gains = gainsOf(distance, elevation, [], { window, threshold });
    for (const name of ['raw', 'smoothed', 'threshold', 'net'] as const)
      sum[name] += gains[name] / (TRUE_RISES * recordings);
  }
  return sum;
}

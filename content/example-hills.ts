import {
  type Drive,
  drivenSpeed,
  type Gains,
  gainsOf,
  hillFromGrade,
  type Load,
  normalDraw,
  randomSource,
  resistanceOf,
} from '../calculators/model/index.ts';

/*
 * Invented hills for the pages on a recorded hill. Their figures are the model's, computed when the site is built.
 */

/** A road of one length and one mean grade, whoever lays it out; without bearings and without loss in the drive. SI, grades as tan. */
export const ROAD = {
  distance: 10_000,
  grade: 0.06,
  steep: 0.11,
  power: 250,
  mass: 80,
  rolling: 0.004,
  dragArea: 0.35,
  density: 1.2,
} as const;

const legs: Drive = { riderPower: ROAD.power, motorPower: 0, assistLimit: null, efficiency: 1 };

/** Time, s, over `distance` (m along the road) at a steady speed on one grade (tan). */
function steadyTime(distance: number, grade: number): number {
  const { sin, cos } = hillFromGrade(distance, grade);
  const { mass, rolling, dragArea, density } = ROAD;
  const load: Load = { mass, sin, cos, rolling, dragArea, density, headWind: 0, bearings: false };
  return distance / drivenSpeed(resistanceOf(load), legs);
}

/** Share of the way that is steep where all of its rise is made there. */
export const STEEP_SHARE = hillFromGrade(1, ROAD.grade).sin / hillFromGrade(1, ROAD.steep).sin;

/** Time of that road at its mean grade all the way, s. */
export const uniformTime = (): number => steadyTime(ROAD.distance, ROAD.grade);

/** Time of the same length and height as one steep part and a level rest, s; no time is lost or won between them. */
export const unevenTime = (): number =>
  steadyTime(STEEP_SHARE * ROAD.distance, ROAD.steep) + steadyTime((1 - STEEP_SHARE) * ROAD.distance, 0);

/** A steady climb, recorded: m along the road, m up, and m from point to point. */
export const CLIMB = { distance: 2400, gain: 168, step: 4 } as const;
/** What scatters: m, and how much of one point's error the next still has. As from satellites, and as from a barometer. */
export const SATELLITES = { scatter: 3, kept: 0.95 } as const;
export const BAROMETER = { scatter: 0.3, kept: 0 } as const;
/** Real dips of a road like it: how many, m deep, and m of road that fall. */
export const DIPS = { count: 6, depth: 3, length: 60 } as const;

const along = Float64Array.from({ length: CLIMB.distance / CLIMB.step + 1 }, (_, i) => CLIMB.step * i);
const steady = along.map((distance) => (CLIMB.gain * distance) / CLIMB.distance);

/** Heights that scatter about the true ones, stored in steps of 0.2 m as devices do. The same with every build. */
function recorded(heights: Float64Array, { scatter, kept }: { scatter: number; kept: number }): Float64Array {
  const random = randomSource(1);
  let error = 0;
  return heights.map((height) => {
    error = kept * error + Math.sqrt(1 - kept * kept) * scatter * normalDraw(random);
    return Math.round(5 * (height + error)) / 5;
  });
}

/** As long and as high, without noise, with dips at even distances. */
function dipping(): Float64Array {
  const part = CLIMB.distance / DIPS.count;
  const rise = CLIMB.gain / DIPS.count;
  const up = part - DIPS.length;
  return along.map((distance) => {
    const into = distance % part;
    const below = Math.floor(distance / part) * rise;
    const within = into <= up ? ((rise + DIPS.depth) * into) / up : rise + (DIPS.depth * (part - into)) / DIPS.length;
    return below + within;
  });
}

/** The gain of that climb by each method, m: as satellites and as a barometer would have it, and of the road with dips as it is. */
export const gains: Readonly<Record<'satellites' | 'barometer' | 'dips', Gains>> = {
  satellites: gainsOf(along, recorded(steady, SATELLITES), []),
  barometer: gainsOf(along, recorded(steady, BAROMETER), []),
  dips: gainsOf(along, dipping(), []),
};

import {
  type Drive,
  drivenSpeed,
  hillFromGrade,
  hillFromProfile,
  type Load,
  resistanceOf,
  rideProfile,
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

/** Time of that road, s, as it is ridden: it begins at the steady speed of its first part, and must settle to that of the second. */
export function riddenTime(first: 'steep' | 'flat'): number {
  const { distance, grade, mass, rolling, dragArea, density } = ROAD;
  const steep = STEEP_SHARE * distance;
  const gain = hillFromGrade(distance, grade).gain;
  const [bend, height] = first === 'steep' ? [steep, gain] : [distance - steep, 0];
  const hill = hillFromProfile({
    distance: Float64Array.of(0, bend, distance),
    height: Float64Array.of(0, height, gain),
  });
  return rideProfile({ ...legs, hill, mass, rolling, dragArea, density, headWind: 0, bearings: false }, {}).time;
}

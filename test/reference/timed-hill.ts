import {
  airDensity,
  type Climb,
  calibrate,
  hillFromGain,
  inferMotor,
  rideClimb,
} from '../../calculators/model/index.ts';

/**
 * Three assisted bikes and two rides without a motor on one hill of 1 mile along the road and 550 ft of gain.
 * Common practice, no source: check values for the whole way from times to motors. Masses and lengths by the exact definitions.
 */
export const MILE = 1609.344;
export const FOOT = 0.3048;
export const POUND = 0.45359237;

const clock = (text: string): number => text.split(':').reduce((total, part) => total * 60 + Number(part), 0);

export const timedHill = {
  about: 'common practice, no source',
  distance: MILE,
  gain: 550 * FOOT,
  /** no motor, a bike of 23 lb */
  controls: [
    { riderPower: 200, bike: 23 * POUND, time: clock('16:43') },
    { riderPower: 300, bike: 23 * POUND, time: clock('11:18') },
  ],
  /** 200 W of the rider and full assist; `motor` is what the times are said to amount to, W */
  bikes: [
    { name: 'light assist, 35 N·m', bike: 37 * POUND, time: clock('7:22'), motor: 300 },
    { name: 'mid assist', bike: 45 * POUND, time: clock('5:57'), motor: 450 },
    { name: 'full assist', bike: 52 * POUND, time: clock('4:56'), motor: 620 },
  ],
  riderPower: 200,
} as const;

/** The same in a link, in the units that it is told in. */
export const TIMED_HILL_LINK =
  'distance=1mi&gain=550ft&power=200W&bike=37lb,45lb,52lb&time=7:22,5:57,4:56&control-time=16:43&control-power=200W&control-bike=23lb';

export const hill = hillFromGain(timedHill.distance, timedHill.gain);
const [slow, fast] = timedHill.controls;

export interface Assumed {
  rider: number;
  dragArea: number;
  altitude: number;
}

/** Calibrated with the 200 W run, C_dA held. */
export function calibrated({ rider, dragArea, altitude }: Assumed) {
  const setting = { hill, density: airDensity(altitude, 15), headWind: 0, efficiency: 0.96, dragArea };
  const { rolling } = calibrate([{ time: slow.time, riderPower: slow.riderPower, mass: rider + slow.bike }], {
    ...setting,
    dragAreaUncertainty: 0.051,
    powerRepeatability: 0.012,
  });
  const climb = (bike: number, riderPower: number): Climb => ({
    ...setting,
    rolling,
    mass: rider + bike,
    riderPower,
    motorPower: 0,
    assistLimit: null,
  });
  const motors = timedHill.bikes.map(({ bike, time }) => inferMotor(climb(bike, timedHill.riderPower), time).mean);
  return { rolling, climb, motors };
}

/** Everything that nobody wrote down about that day. */
export const cases: Assumed[] = [65, 70, 75, 80, 85, 90, 95].flatMap((rider) =>
  [0.36, 0.45, 0.56].flatMap((dragArea) => [0, 750, 1500].map((altitude) => ({ rider, dragArea, altitude }))),
);

/** Largest share by which the 300 W run is missed when the hill is calibrated with the 200 W run. */
export function fastRunError(): number {
  const errors = cases.map((assumed) => {
    const { climb } = calibrated(assumed);
    return Math.abs(rideClimb(climb(fast.bike, fast.riderPower)).time / fast.time - 1);
  });
  return Math.max(...errors);
}

/** Largest share by which a motor read back differs from what it is said to be. */
export function motorError(): number {
  const errors = cases.flatMap((assumed) =>
    calibrated(assumed).motors.map((motor, i) => Math.abs(motor / (timedHill.bikes[i]?.motor ?? 0) - 1)),
  );
  return Math.max(...errors);
}

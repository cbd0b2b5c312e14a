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

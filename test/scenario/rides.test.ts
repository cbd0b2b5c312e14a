import { expect, test } from 'vitest';
import { type Climb, FADE_WIDTH, type Reserves, rideStages } from '../../calculators/model/index.ts';
import { ridesOf } from '../../calculators/scenario/rides.ts';
import { hillOfPieces, PLAIN } from '../model/climbs.ts';

/* Rides that are ridden once must be those that would be ridden anew, whatever differs between two of them. */

const hill = hillOfPieces([
  [1200, 0.08],
  [900, -0.06],
  [1200, 0.09],
]);
const CLIMB = {
  ...PLAIN,
  hill,
  assistLimit: 25 / 3.6,
  fadeWidth: FADE_WIDTH,
  // nine tenths of any one of the three are the least
  motorPower: 330,
  support: 2,
  torque: 47,
  cadence: 70,
  gear: { wheelRadius: 0.35, turns: 1.8 },
  topSpeed: 9,
  wheelMass: 1,
  bearings: undefined,
} satisfies Climb;
const HEAT = { continuous: 200, continuousCadence: 65, timeConstant: 300, fixedLosses: 0.2, rise: 0.1 };
const ENDURANCE = { criticalPower: 150, workAbove: 4000 };
const BATTERY = { energy: 1e6, unitEfficiency: 0.8, idle: 5 };

/** Every field of a climb and of what runs out, each with another value. */
const OTHERS: [string, Climb, Reserves][] = [
  ...Object.entries(CLIMB)
    .filter(([name]) => name !== 'hill')
    .map(([name, value]): [string, Climb, Reserves] => {
      const other =
        name === 'bearings'
          ? false
          : name === 'gear'
            ? { wheelRadius: 0.3, turns: 1.8 }
            : name === 'headWind'
              ? 1
              : 0.9 * Number(value);
      return [name, { ...CLIMB, [name]: other }, { heat: HEAT, endurance: ENDURANCE }];
    }),
  ['turns', { ...CLIMB, gear: { wheelRadius: 0.35, turns: 1.6 } }, { heat: HEAT, endurance: ENDURANCE }],
  ...Object.entries(HEAT).map(([name, value]): [string, Climb, Reserves] => [
    `heat ${name}`,
    CLIMB,
    { heat: { ...HEAT, [name]: 0.9 * value }, endurance: ENDURANCE },
  ]),
  ...Object.entries(ENDURANCE).map(([name, value]): [string, Climb, Reserves] => [
    `endurance ${name}`,
    CLIMB,
    { heat: HEAT, endurance: { ...ENDURANCE, [name]: 0.9 * value } },
  ]),
  ['no heat', CLIMB, { endurance: ENDURANCE }],
  ['no endurance', CLIMB, { heat: HEAT }],
];

test.each(OTHERS)('a ride with another %s is another ride', (_, climb, reserves) => {
  const riding = ridesOf(hill);
  const first = riding(CLIMB, { heat: HEAT, endurance: ENDURANCE });
  expect(riding(CLIMB, { heat: HEAT, endurance: ENDURANCE }).time).toBe(first.time);
  expect(riding(climb, reserves)).toEqual(rideStages(climb, reserves));
});

test('what is changed does change the ride, so that the above could fail', () => {
  const { time } = rideStages(CLIMB, { heat: HEAT, endurance: ENDURANCE });
  for (const [name, climb, reserves] of OTHERS) expect(rideStages(climb, reserves).time, name).not.toBe(time);
});

test('with a battery that lasts it is the same ride, with what it draws; one that does not last is ridden', () => {
  const riding = ridesOf(hill);
  for (const energy of [BATTERY.energy, 3e4]) {
    const reserves: Reserves = { heat: HEAT, battery: { ...BATTERY, energy } };
    const [once, again, anew] = [riding(CLIMB, reserves), riding(CLIMB, reserves), rideStages(CLIMB, reserves)];
    expect(once.time).toBe(anew.time);
    // a sum over the pieces, and mean power times time
    expect(once.energy / anew.energy).toBeCloseTo(1, 12);
    expect(again).toEqual(once);
  }
});

import {
  crankTorque,
  type Drive,
  forces,
  type Gear,
  gaugeEnergy,
  impliedEfficiency,
  motorBound,
  steepestGrade,
  torqueCadence,
  torquePower,
  torqueRatio,
  wheelForce,
  wheelTorque,
} from '../../calculators/model/index.ts';
import type { Check } from './check.ts';

/* Exact arithmetic that anybody can redo: torque, cadence, gears, watt-hours. */

const HAND = 'worked out by hand';

/** A motor of this torque that gives 600 W at most, under a rider who brings all of it out. */
function capped(torque: number, cadence: number): number {
  const drive: Drive = { riderPower: 200, motorPower: 600, assistLimit: null, efficiency: 1, torque, cadence };
  return motorBound(drive).power;
}

// N·m, rpm, W: 2π × 70 ÷ 60 is 7.33038 W for each rpm, 2π × 90 ÷ 60 is 9.42478; 90 N·m reaches 600 W at 63.7 rpm
const rows: [number, number, number][] = [
  [70, 30, 219.9115],
  [70, 40, 293.2153],
  [70, 50, 366.5191],
  [70, 60, 439.823],
  [70, 70, 513.1268],
  [70, 80, 586.4306],
  [90, 30, 282.7433],
  [90, 40, 376.9911],
  [90, 50, 471.2389],
  [90, 60, 565.4867],
  [90, 70, 600],
  [90, 80, 600],
];

/** 51 teeth at a wheel of 0.35 m, 34 at the crank; and a motor in the hub, which knows no gears. */
const LOWEST: Gear = { wheelRadius: 0.35, turns: 34 / 51 };
const HUB: Gear = { wheelRadius: 0.35, turns: 1 };

/** Steepest grade in percent that 50 N·m hold: 110 kg, C_rr 0.01, no drive loss, no rider. */
const held = (gear: Gear): number => 100 * (steepestGrade(wheelForce(50, gear), 110, 0.01) ?? Number.NaN);

// common practice, no source: 12 % of 320 to 360 Wh on a climb of 7:22 with about 300 W, by a gauge of 1 % steps
const implied = impliedEfficiency(300 * 442, gaugeEnergy(340 * 3600, 0.12, 0, 0.01, 20 / 340));

export const torque: Check[] = [
  ...rows.map(
    ([newtonMetres, cadence, expected]): Check => ({
      quantity: 'Motor output from torque and cadence, at most 600 W',
      given: `${newtonMetres} N·m at ${cadence} rpm`,
      expected,
      computed: () => capped(newtonMetres, cadence),
      unit: 'W',
      tolerance: 1e-4,
      source: HAND,
      status: 'recomputed',
    }),
  ),
  {
    quantity: 'Power from torque and cadence',
    given: '118.5 N·m at 129.8 rpm, the means of twelve track sprinters',
    expected: 1610.7,
    computed: () => torquePower(118.5, 129.8),
    unit: 'W',
    tolerance: 0.05,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Power from torque and cadence',
    given: 'the same, against the mean of their peaks, each at a cadence of its own',
    expected: 1600,
    computed: () => torquePower(118.5, 129.8),
    unit: 'W',
    // the standard error of the mean of twelve peaks that scatter by 116 W is 116 ÷ √12 = 33.5 W
    tolerance: 33,
    source: 'Dorel et al. 2005',
    status: 'seen',
  },
  {
    quantity: 'Cadence at which a torque makes a power',
    given: '85 N·m and 600 W',
    expected: 67.4,
    computed: () => torqueCadence(600, 85),
    unit: 'rpm',
    tolerance: 0.05,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Mean torque of a rider',
    given: '200 W at 60 rpm: 200 ÷ 2π',
    expected: 31.831,
    computed: () => crankTorque(200, 60),
    unit: 'N·m',
    tolerance: 5e-4,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Torque at the wheel',
    given: '50 N·m at the crank through 34 and 51 teeth',
    expected: 75,
    computed: () => wheelTorque(50, LOWEST),
    unit: 'N·m',
    tolerance: 1e-12,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Steepest grade that 50 N·m hold',
    given: 'at the crank through 34 and 51 teeth; 110 kg, wheel 0.35 m, C_rr 0.01',
    expected: 19.2,
    computed: () => held(LOWEST),
    unit: '%',
    tolerance: 0.05,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Steepest grade that 50 N·m hold',
    given: 'in the hub; 110 kg, wheel 0.35 m, C_rr 0.01',
    expected: 12.3,
    computed: () => held(HUB),
    unit: '%',
    tolerance: 0.05,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Copper losses at two cadences',
    given: '450 W at 60 rpm over 450 W at 80 rpm: (80 ÷ 60)²',
    expected: 1.7778,
    computed: () => {
      const heat = { continuous: 250, continuousCadence: 75, timeConstant: 1200, fixedLosses: 0.5, rise: 0 };
      return (torqueRatio(450, 60, heat) / torqueRatio(450, 80, heat)) ** 2;
    },
    unit: '',
    tolerance: 5e-5,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Energy of lift',
    given: '10 kg over 1,000 m',
    expected: 27.2407,
    computed: () => {
      const load = { mass: 10, sin: 1, cos: 0, rolling: 0, dragArea: 0, density: 0, headWind: 0, bearings: false };
      return (forces(load, 1).gravity * 1000) / 3600;
    },
    unit: 'Wh',
    tolerance: 5e-5,
    source: HAND,
    status: 'recomputed',
  },
  {
    quantity: 'Energy for each kilometre',
    given: '95 % of 625 Wh over 159 km',
    expected: 3.73,
    computed: () => gaugeEnergy(625 * 3600, 1, 0.05, 0.01).value / 3600 / 159,
    unit: 'Wh/km',
    tolerance: 0.005,
    source: HAND,
    status: 'recomputed',
  },
  ...(
    [
      ['low', 0.8],
      ['high', 1.05],
    ] as const
  ).map(
    ([end, expected]): Check => ({
      quantity: 'Efficiency that a gauge of 1 % steps leaves open',
      given: `12 % of 320 to 360 Wh, 7:22 with about 300 W: ${end} end`,
      expected,
      computed: () => implied[end],
      unit: '',
      tolerance: 0.02,
      source: 'a timed climb',
      status: 'practice',
    }),
  ),
];

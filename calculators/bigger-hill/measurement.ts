import { airDensity, FADE_WIDTH, type Hill, type UncertainInput } from '../model/index.ts';
import {
  assistLimitOf,
  BIKE_SCALE,
  columnsOf,
  DISTANCE_RELATIVE,
  dragDoubt,
  efficiencyDoubt,
  fadeDoubt,
  fixedLossesDoubt,
  GAIN_RELATIVE,
  inputOf,
  isGiven,
  METER_SCALE,
  measured,
  numberOf,
  optionalOf,
  PACK_KNOWN,
  RIDER_SCALE,
  reservesOf,
  rollingDoubt,
  type Scenario,
  STATED_ROLLING,
  STEADINESS,
  STOPWATCH,
  SURFACE_THERE,
  warmUpDoubt,
} from '../scenario/index.ts';
import { type Measurement, misread } from './carry.ts';

/** What the reader entered, as the model takes it. */
export function measurementOf(scenario: Scenario, hill: Hill, targetHill: Hill): Measurement {
  const rider = numberOf(scenario, 'rider');
  const altitude = numberOf(scenario, 'altitude');
  const temperature = numberOf(scenario, 'temperature');
  return {
    hill,
    density: airDensity(altitude, temperature),
    headWind: numberOf(scenario, 'wind'),
    efficiency: numberOf(scenario, 'drive'),
    dragArea: numberOf(scenario, 'drag'),
    rolling: numberOf(scenario, 'rolling'),
    fadeWidth: FADE_WIDTH,
    controls: columnsOf(scenario, 'control-time').flatMap((run) => {
      const time = inputOf(scenario, 'control-time', run);
      if (typeof time !== 'number') return []; // "none" takes this run out
      const mass = controlRider(scenario, run) + numberOf(scenario, 'control-bike', run);
      return [{ time, riderPower: numberOf(scenario, 'control-power', run), mass }];
    }),
    runs: columnsOf(scenario, 'time').map((bike) => ({
      time: numberOf(scenario, 'time', bike),
      riderPower: numberOf(scenario, 'power'),
      mass: rider + numberOf(scenario, 'bike', bike),
      assistLimit: assistLimitOf(scenario, bike),
      reserves: reservesOf(scenario, bike),
    })),
    target: {
      hill: targetHill,
      density: airDensity(
        optionalOf(scenario, 'target-altitude') ?? altitude,
        optionalOf(scenario, 'target-temperature') ?? temperature,
      ),
      headWind: optionalOf(scenario, 'target-wind') ?? numberOf(scenario, 'wind'),
      riderPower: optionalOf(scenario, 'target-power') ?? numberOf(scenario, 'power'),
      riderMassChange: (optionalOf(scenario, 'target-rider') ?? rider) - rider,
      rolling: optionalOf(scenario, 'target-rolling') ?? null,
      rollingChange: 0,
    },
  };
}

function controlRider(scenario: Scenario, run: number): number {
  const value = inputOf(scenario, 'control-rider', run);
  return typeof value === 'number' ? value : numberOf(scenario, 'rider');
}

/** Another hill is another surface: ±0.004, or less where the reader states a small figure. */
function surfaceThere(m: Measurement): UncertainInput {
  const { rolling } = m.target;
  return measured(
    'surfaceThere',
    0,
    rolling === null ? SURFACE_THERE : Math.min(SURFACE_THERE, STATED_ROLLING * rolling),
  );
}

/** What may be wrong with the measurement, and the measurement when it is wrong by that much. */
export function doubtsOf(scenario: Scenario, m: Measurement, sameHill: boolean) {
  const inputs: UncertainInput[] = [
    dragDoubt(m.dragArea),
    efficiencyDoubt('drive', m.efficiency),
    efficiencyDoubt('unit', numberOf(scenario, 'unit')),
    measured('meter', 1, METER_SCALE),
    measured('riderMass', 0, RIDER_SCALE),
    measured('distance', 1, DISTANCE_RELATIVE),
    measured('gain', 1, GAIN_RELATIVE),
    ...(sameHill && m.target.rolling === null ? [] : [surfaceThere(m)]),
    fadeDoubt,
    measured('pack', 1, PACK_KNOWN),
    ...(m.runs.some(({ reserves }) => reserves.heat)
      ? [
          warmUpDoubt(numberOf(scenario, 'warm-up'), isGiven(scenario, 'warm-up')),
          fixedLossesDoubt(numberOf(scenario, 'fixed-losses')),
        ]
      : []),
    ...(m.controls.length === 0 ? [rollingDoubt(m.rolling, isGiven(scenario, 'rolling'))] : []),
    ...m.runs.flatMap((_, i) => [
      measured(`bikeMass:${i}`, 0, BIKE_SCALE),
      measured(`steady:${i}`, 1, STEADINESS),
      measured(`watch:${i}`, 0, STOPWATCH),
    ]),
    ...m.controls.flatMap((_, i) => [
      measured(`bikeMass:c${i}`, 0, BIKE_SCALE),
      measured(`steady:c${i}`, 1, STEADINESS),
      measured(`watch:c${i}`, 0, STOPWATCH),
    ]),
  ];
  const samePower = optionalOf(scenario, 'target-power') === undefined;
  const index = new Map(inputs.map((input, i) => [input.name, i]));
  const at = (values: number[]): Measurement | null => {
    const value = (name: string, otherwise = 0): number => values[index.get(name) ?? -1] ?? otherwise;
    const hill = misread(m.hill, value('distance'), value('gain'));
    // "the same grade" means more of the same hill, measured by the same instruments: its errors follow
    const target = sameHill ? misread(m.target.hill, value('distance'), value('gain')) : m.target.hill;
    if (!hill || !target) return null;
    return {
      ...m,
      hill,
      efficiency: value('drive'),
      dragArea: value('drag'),
      rolling: value('rolling', m.rolling),
      controls: m.controls.map((run, i) => ({
        time: run.time + value(`watch:c${i}`),
        riderPower: run.riderPower * value('meter') * value(`steady:c${i}`),
        mass: run.mass + value('riderMass') + value(`bikeMass:c${i}`),
      })),
      runs: m.runs.map((run, i) => ({
        ...run,
        time: run.time + value(`watch:${i}`),
        riderPower: run.riderPower * value('meter') * value(`steady:${i}`),
        mass: run.mass + value('riderMass') + value(`bikeMass:${i}`),
        reserves: {
          battery: run.reserves.battery && {
            ...run.reserves.battery,
            energy: run.reserves.battery.energy * value('pack', 1),
            unitEfficiency: value('unit', 1),
          },
          heat: run.reserves.heat && {
            ...run.reserves.heat,
            timeConstant: value('warm-up', 1),
            fixedLosses: value('fixed-losses'),
          },
        },
      })),
      fadeWidth: value('fade'),
      target: {
        ...m.target,
        hill: target,
        rollingChange: value('surfaceThere'),
        // the same power is the same reading of the same meter; a figure of its own is taken as true
        riderPower: m.target.riderPower * (samePower ? value('meter') : 1),
      },
    };
  };
  return { inputs, at, unit: index.get('unit') ?? -1 };
}

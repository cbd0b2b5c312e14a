import {
  airDensity,
  type Climb,
  distanceForGain,
  FADE_WIDTH,
  type Hill,
  hillFromGain,
  hillFromGrade,
  type UncertainInput,
} from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import { dragDoubt, efficiencyDoubt, fadeDoubt, rollingDoubt } from './doubts.ts';
import type { Remark } from './outcome.ts';
import { inputOf, isGiven, numberOf, type Scenario } from './scenario.ts';

/** A hill, or the sentence that says why there is none; `notes` say which of too many givens counted, and stand beside the other's field. */
export type Setting<T> = { ok: true; value: T; notes: Remark[] } | { ok: false; problem: string; field: string };

const overruled = (field: string, text: string): Remark => ({ tone: 'caution', text, field });

/** The (measured) hill: height beats grade. */
export function hillOf(scenario: Scenario): Setting<Hill> {
  const distance = numberOf(scenario, 'distance');
  const grade = inputOf(scenario, 'grade');
  if (typeof grade === 'number' && !isGiven(scenario, 'gain'))
    return { ok: true, value: hillFromGrade(distance, grade), notes: [] };
  const gain = numberOf(scenario, 'gain');
  if (gain >= distance) return { ok: false, problem: tooSteep(scenario, distance, gain), field: 'gain' };
  const notes =
    typeof grade === 'number'
      ? [overruled('grade', 'Height and grade are both given: the height counts. Empty it to use the grade.')]
      : [];
  return { ok: true, value: hillFromGain(distance, gain), notes };
}

function tooSteep(scenario: Scenario, distance: number, gain: number): string {
  const text = (si: number, kind: 'distance' | 'height'): string => formatQuantity(si, kind, scenario.system);
  return `A road of ${text(distance, 'distance')} cannot gain ${text(gain, 'height')}: the height must be smaller than the distance along the road.`;
}

/** The other hill of `bigger-hill`. `measured` is the hill whose grade serves when none is given. */
export function targetHillOf(scenario: Scenario, measured: Hill): Setting<Hill> {
  const distance = inputOf(scenario, 'target-distance');
  const hasGain = isGiven(scenario, 'target-gain') || typeof distance !== 'number';
  const gain = numberOf(scenario, 'target-gain');
  const given = inputOf(scenario, 'target-grade');
  const grade = typeof given === 'number' ? given : measured.grade;
  if (typeof distance === 'number' && hasGain) {
    if (gain >= distance) return { ok: false, problem: tooSteep(scenario, distance, gain), field: 'target-gain' };
    const notes =
      typeof given === 'number'
        ? [
            overruled(
              'target-grade',
              'Distance, height and grade of the other hill are all given: distance and height count.',
            ),
          ]
        : [];
    return { ok: true, value: hillFromGain(distance, gain), notes };
  }
  if (typeof distance === 'number') return { ok: true, value: hillFromGrade(distance, grade), notes: [] };
  if (gain === 0)
    return {
      ok: false,
      problem: 'A hill that gains no height needs its distance: fill it in beside.',
      field: 'target-gain',
    };
  if (!(grade > 0))
    return {
      ok: false,
      problem: `A hill that gains height needs a grade above zero, not ${formatQuantity(grade, 'grade', scenario.system)}.`,
      field: 'target-grade',
    };
  return { ok: true, value: hillFromGrade(distanceForGain(gain, grade), grade), notes: [] };
}

/** Motor output of a bike, W: `none` is 0. */
export function motorOf(scenario: Scenario, column: number): number {
  const motor = inputOf(scenario, 'motor', column);
  return typeof motor === 'number' ? motor : 0;
}

/** Assist limit of a bike, m/s, null where there is none. */
export function limitOf(scenario: Scenario, column: number): number | null {
  const limit = inputOf(scenario, 'limit', column);
  return typeof limit === 'number' ? limit : null;
}

/** Nominal battery energy of a bike, J. */
export function batteryOf(scenario: Scenario, column: number): number | undefined {
  const battery = inputOf(scenario, 'battery', column);
  return typeof battery === 'number' ? battery : undefined;
}

/** The climb of one bike up the (measured) hill, everything at its stated value. */
export function climbOf(scenario: Scenario, hill: Hill, column: number): Climb {
  return {
    hill,
    mass: numberOf(scenario, 'rider') + numberOf(scenario, 'bike', column),
    rolling: numberOf(scenario, 'rolling'),
    dragArea: numberOf(scenario, 'drag'),
    density: airDensity(numberOf(scenario, 'altitude'), numberOf(scenario, 'temperature')),
    headWind: numberOf(scenario, 'wind'),
    efficiency: numberOf(scenario, 'drive'),
    riderPower: numberOf(scenario, 'power'),
    motorPower: motorOf(scenario, column),
    assistLimit: limitOf(scenario, column),
  };
}

/**
 * What hardly anyone can know about a predicted climb: surface, air, drive, drive unit and where the motor fades, in this order.
 * `at` is a climb with these values; the drive unit, the fourth, does not change it.
 */
export function climbDoubts(scenario: Scenario): {
  inputs: UncertainInput[];
  at: (climb: Climb, values: number[]) => Climb;
} {
  return {
    inputs: [
      rollingDoubt(numberOf(scenario, 'rolling'), isGiven(scenario, 'rolling')),
      dragDoubt(numberOf(scenario, 'drag')),
      efficiencyDoubt('drive', numberOf(scenario, 'drive')),
      efficiencyDoubt('unit', numberOf(scenario, 'unit')),
      fadeDoubt,
    ],
    at: (climb, [rolling = 0, dragArea = 0, efficiency = 1, , fadeWidth = FADE_WIDTH]) => ({
      ...climb,
      rolling,
      dragArea,
      efficiency,
      fadeWidth,
    }),
  };
}

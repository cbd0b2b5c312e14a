import {
  airDensity,
  type Climb,
  type Condition,
  distanceForGain,
  enduranceTime,
  type Gear,
  type Heat,
  type Hill,
  hillFromGain,
  hillFromGrade,
  hillFromProfile,
  type Profile,
  type Reserves,
  type UncertainInput,
  usableEnergy,
} from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import {
  dragDoubt,
  efficiencyDoubt,
  fadeDoubt,
  fixedLossesDoubt,
  measured,
  PACK_KNOWN,
  rollingDoubt,
  warmUpDoubt,
} from './doubts.ts';
import type { Remark } from './outcome.ts';
import { TOP_SPEED } from './parameters/profile.ts';
import { profileFromText } from './profile-text.ts';
import { profileInWords } from './profile-words.ts';
import { columnsOf, inputOf, isGiven, numberOf, optionalOf, type Scenario } from './scenario.ts';

/** A hill, or the sentence that says why there is none; `notes` say that, or which of too many givens counted, beside its field. */
export type Setting<T> =
  | { ok: true; value: T; notes: Remark[] }
  | { ok: false; problem: string; field: string; notes: Remark[] };

const impossible = (field: string, problem: string): Setting<never> => ({
  ok: false,
  problem,
  field,
  notes: [{ tone: 'wrong', text: problem, field }],
});

const overruled = (field: string, text: string): Remark => ({ tone: 'caution', text, field });

/** The hill in pieces of a calculator that always has one. @throws RangeError when that is not so: a mistake in our own code. */
export function hillInPieces(scenario: Scenario): Hill & { profile: Profile } {
  const text = inputOf(scenario, 'profile');
  if (typeof text !== 'string') throw new RangeError('There is no hill in pieces.');
  const profile = profileFromText(text);
  return { ...hillFromProfile(profile), profile };
}

/** The hill in pieces under that name, where there is one. `beaten` are other inputs of a hill: one that is given is said not to count. */
function piecesBefore(
  scenario: Scenario,
  name: 'profile' | 'target-profile',
  beaten: readonly string[],
): Setting<Hill> | undefined {
  const text = inputOf(scenario, name);
  if (typeof text !== 'string') return undefined;
  const given = beaten.find((other) => isGiven(scenario, other));
  const notes: Remark[] = given
    ? [overruled(given, 'The hill in pieces counts, under “More”. Empty it to use this.')]
    : [
        {
          tone: 'plain',
          field: beaten[0] ?? name,
          text: `The hill in pieces counts: ${profileInWords(text, scenario.system)}. Empty it under “More” to say a plain length and height.`,
        },
      ];
  for (const note of notes) note.pieces = name;
  return { ok: true, value: hillFromProfile(profileFromText(text)), notes };
}

/** The (measured) hill: pieces beat height, and height beats grade. */
export function hillOf(scenario: Scenario): Setting<Hill> {
  const inPieces = piecesBefore(scenario, 'profile', ['distance', 'gain', 'grade']);
  if (inPieces) return inPieces;
  const distance = numberOf(scenario, 'distance');
  const grade = inputOf(scenario, 'grade');
  if (typeof grade === 'number' && !isGiven(scenario, 'gain'))
    return { ok: true, value: hillFromGrade(distance, grade), notes: [] };
  const gain = numberOf(scenario, 'gain');
  if (gain >= distance) return impossible('gain', tooSteep(scenario, distance, gain));
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
  const inPieces = piecesBefore(scenario, 'target-profile', ['target-gain', 'target-grade', 'target-distance']);
  if (inPieces) return inPieces;
  const distance = inputOf(scenario, 'target-distance');
  const hasGain = isGiven(scenario, 'target-gain') || typeof distance !== 'number';
  const gain = numberOf(scenario, 'target-gain');
  const given = inputOf(scenario, 'target-grade');
  const grade = typeof given === 'number' ? given : measured.grade;
  if (typeof distance === 'number' && hasGain) {
    if (gain >= distance) return impossible('target-gain', tooSteep(scenario, distance, gain));
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
    return impossible('target-gain', 'A hill that gains no height needs its distance: fill it in beside.');
  if (!(grade > 0))
    return impossible(
      'target-grade',
      `A hill that gains height needs a grade above zero, not ${formatQuantity(grade, 'grade', scenario.system)}.`,
    );
  return { ok: true, value: hillFromGrade(distanceForGain(gain, grade), grade), notes: [] };
}

/** Motor output of a bike, W: `none` is 0. */
export function motorOf(scenario: Scenario, column: number): number {
  const motor = inputOf(scenario, 'motor', column);
  return typeof motor === 'number' ? motor : 0;
}

/** Assist limit of a bike, m/s, null where there is none. */
export function assistLimitOf(scenario: Scenario, column: number): number | null {
  const limit = inputOf(scenario, 'limit', column);
  return typeof limit === 'number' ? limit : null;
}

/** Nominal battery energy of a bike, J. */
export const batteryOf = (scenario: Scenario, column: number): number | undefined =>
  optionalOf(scenario, 'battery', column);

/** What of a battery's nominal energy can be used. */
export const conditionOf = (scenario: Scenario): Condition => ({
  health: optionalOf(scenario, 'health') ?? 1,
  cold: optionalOf(scenario, 'cold') ?? 1,
  reserve: optionalOf(scenario, 'reserve') ?? 0,
});

/** A bike's motor as it warms up, where anything is said of what it holds. */
export function heatOf(scenario: Scenario, column: number): Heat | undefined {
  const continuous = optionalOf(scenario, 'continuous', column);
  if (continuous === undefined) return undefined;
  // Where no page asks for a cadence, the motor turns as it did when that output was stated: only the ratio of the two counts, so any number will do.
  const cadence = optionalOf(scenario, 'cadence') ?? 1;
  return {
    continuous,
    continuousCadence: optionalOf(scenario, 'continuous-cadence') ?? cadence,
    timeConstant: numberOf(scenario, 'warm-up'),
    fixedLosses: numberOf(scenario, 'fixed-losses'),
    rise: optionalOf(scenario, 'warm') ?? 0,
  };
}

/** What a bike can use up on a long climb: its battery, and what heat leaves of its motor. */
export function reservesOf(scenario: Scenario, column: number): Reserves {
  const nominal = batteryOf(scenario, column);
  return {
    battery:
      nominal === undefined
        ? undefined
        : {
            energy: usableEnergy(nominal, conditionOf(scenario)),
            unitEfficiency: numberOf(scenario, 'unit'),
            idle: optionalOf(scenario, 'idle') ?? 0,
          },
    heat: heatOf(scenario, column),
  };
}

/** How long the rider lasts at the power held, s, where anything is said of it. */
export function enduranceOf(scenario: Scenario, power = numberOf(scenario, 'power')): number | undefined {
  const criticalPower = optionalOf(scenario, 'endurance');
  if (criticalPower === undefined) return undefined;
  return enduranceTime(power, { criticalPower, workAbove: numberOf(scenario, 'endurance-work') });
}

/** The lowest gear, where a calculator asks for it. */
function gearOf(scenario: Scenario): Gear | undefined {
  const [ring, sprocket, wheelRadius] = ['ring', 'sprocket', 'wheel'].map((name) => optionalOf(scenario, name));
  if (ring === undefined || sprocket === undefined || wheelRadius === undefined) return undefined;
  return { wheelRadius, turns: ring / sprocket };
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
    assistLimit: assistLimitOf(scenario, column),
    support: optionalOf(scenario, 'support', column),
    torque: optionalOf(scenario, 'torque', column),
    cadence: optionalOf(scenario, 'cadence'),
    gear: gearOf(scenario),
    topSpeed: hill.profile && (optionalOf(scenario, 'top-speed') ?? TOP_SPEED),
  };
}

/** Doubts of a climb: the inputs, and the climb and what it uses up with other values of them. */
export interface ClimbDoubts {
  inputs: UncertainInput[];
  /** a climb with these values */
  at: (climb: Climb, values: readonly number[]) => Climb;
  /** what it uses up, likewise */
  reservesAt: (reserves: Reserves, values: readonly number[]) => Reserves;
  /** the efficiency of the drive unit among them */
  unitAt: (values: readonly number[]) => number;
}

/**
 * What hardly anyone can know about a predicted climb: surface, air, drive, drive unit and where the motor fades; how much the battery
 * really holds; and where heat is considered, how fast the motor warms up.
 */
export function climbDoubts(scenario: Scenario): ClimbDoubts {
  const hasBattery = batteryOf(scenario, 0) !== undefined;
  const isHot = columnsOf(scenario, 'motor').some((bike) => heatOf(scenario, bike));
  const inputs: UncertainInput[] = [
    rollingDoubt(numberOf(scenario, 'rolling'), isGiven(scenario, 'rolling')),
    dragDoubt(numberOf(scenario, 'drag')),
    efficiencyDoubt('drive', numberOf(scenario, 'drive')),
    efficiencyDoubt('unit', numberOf(scenario, 'unit')),
    fadeDoubt,
    ...(hasBattery ? [measured('pack', 1, PACK_KNOWN)] : []),
    ...(isHot
      ? [
          warmUpDoubt(numberOf(scenario, 'warm-up'), isGiven(scenario, 'warm-up')),
          fixedLossesDoubt(numberOf(scenario, 'fixed-losses')),
        ]
      : []),
  ];
  const index = new Map(inputs.map(({ name }, i) => [name, i]));
  const valueAt = (values: readonly number[], name: string): number => values[index.get(name) ?? -1] ?? Number.NaN;
  return {
    inputs,
    at: (climb, values) => ({
      ...climb,
      rolling: valueAt(values, 'rolling'),
      dragArea: valueAt(values, 'drag'),
      efficiency: valueAt(values, 'drive'),
      fadeWidth: valueAt(values, 'fade'),
    }),
    reservesAt: ({ battery, heat, ...rest }, values) => ({
      ...rest,
      battery: battery && {
        ...battery,
        energy: battery.energy * valueAt(values, 'pack'),
        unitEfficiency: valueAt(values, 'unit'),
      },
      heat: heat && { ...heat, timeConstant: valueAt(values, 'warm-up'), fixedLosses: valueAt(values, 'fixed-losses') },
    }),
    unitAt: (values) => valueAt(values, 'unit'),
  };
}

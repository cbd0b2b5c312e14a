import { airDensity, type Climb, GRAVITY, rideClimb, type UncertainResult } from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import {
  climbDoubts,
  climbOf,
  exact,
  hillOf,
  none,
  numberOf,
  type Outcome,
  parameterOf,
  propagateNamed,
  type Remark,
  type Result,
  ranged,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';

/** What can be changed, in the order of the form. */
export const CHANGES = ['mass', 'rolling', 'power', 'motor', 'wind', 'altitude'] as const;
export type Change = (typeof CHANGES)[number];

export interface WhatChangesItOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  /** the changes that have a value, by the size of what they do, largest first */
  ranked: Change[];
  /** what the other sentences are about; absent where there is no hill */
  about?: {
    climb: Climb;
    /** s by which the first of them changes the time */
    largest: UncertainResult | undefined;
    /** the assist limit holds the bike back now; or only once it has changed */
    limited: boolean;
    limitedThen: boolean;
  };
}

/** Something that can be done to a climb, or why not. */
type Step = { ok: true; to: (climb: Climb) => Climb } | { ok: false; reason: string };

const possible = (to: (climb: Climb) => Climb): Step => ({ ok: true, to });
const impossible = (reason: string): Step => ({ ok: false, reason });

/** Each change as what it does to a climb, whatever is assumed of the surface and the air. */
function stepsOf(scenario: Scenario, climb: Climb): Readonly<Record<Change, Step>> {
  const by = (change: Change): number => numberOf(scenario, `change-${change}`);
  const lightest = parameterOf('rider').min + parameterOf('bike').min;
  const altitude = numberOf(scenario, 'altitude') + by('altitude');
  const { min, max } = parameterOf('altitude');
  const metres = (si: number): string => formatQuantity(si, 'height', scenario.system);
  const density = (): number => airDensity(altitude, numberOf(scenario, 'temperature'));
  return {
    mass:
      climb.mass + by('mass') < lightest
        ? impossible('No rider and bike weigh so little.')
        : possible((now) => ({ ...now, mass: now.mass + by('mass') })),
    rolling: possible((now) => ({ ...now, rolling: now.rolling * (1 + by('rolling')) })),
    power:
      climb.riderPower + by('power') < 0
        ? impossible('That is more than you hold.')
        : possible((now) => ({ ...now, riderPower: now.riderPower + by('power') })),
    motor:
      climb.motorPower + by('motor') < 0
        ? impossible('That is more than the motor gives.')
        : possible((now) => ({ ...now, motorPower: now.motorPower + by('motor') })),
    wind: possible((now) => ({ ...now, headWind: now.headWind + by('wind') })),
    altitude:
      altitude < min || altitude > max
        ? impossible(`Altitudes here go from ${metres(min)} to ${metres(max)}.`)
        : possible((now) => ({ ...now, density: density() })),
  };
}

/** Public name of what a change does. */
export const resultName = (change: Change): string => `change-${change}-time`;

const NAMES: [string, Result['kind']][] = [
  ['time', 'duration'],
  ...CHANGES.map((change): [string, Result['kind']] => [resultName(change), 'seconds']),
  ['all-changes-time', 'seconds'],
  ['lift-energy', 'energy'],
];
const SOME_IMPOSSIBLE = 'One of the changes cannot be made.';

/**
 * What each change does to the time, and all at once. What is not known of surface, air and drive is the same before and after, so a
 * difference is surer than the times.
 */
export function whatChangesIt(scenario: Scenario): WhatChangesItOutcome {
  const setting = hillOf(scenario);
  if (!setting.ok)
    return {
      results: NAMES.map(([name, kind]) => none(name, kind, setting.problem)),
      notes: setting.notes,
      ranked: [],
    };
  const climb = climbOf(scenario, setting.value, 0);
  const steps = stepsOf(scenario, climb);
  const timeAfter = (now: Climb, change: Change): number => {
    const step = steps[change];
    return step.ok ? rideClimb(step.to(now)).time : Number.NaN;
  };
  const allPossible = CHANGES.every((change) => steps[change].ok);
  const together = (now: Climb): Climb =>
    CHANGES.reduce((before, change) => {
      const step = steps[change];
      return step.ok ? step.to(before) : before;
    }, now);

  const { inputs, at } = climbDoubts(scenario);
  const spread = propagateNamed(inputs, (values) => {
    const now = at(climb, values);
    const { time } = rideClimb(now);
    return {
      time,
      ...(Object.fromEntries(CHANGES.map((change) => [change, timeAfter(now, change) - time])) as Record<
        Change,
        number
      >),
      all: allPossible ? rideClimb(together(now)).time - time : Number.NaN,
    };
  });

  const results: Result[] = [
    ranged('time', 'duration', spread.time, STANDS_STILL),
    ...CHANGES.map((change) => {
      const step = steps[change];
      return ranged(resultName(change), 'seconds', spread[change], step.ok ? STANDS_STILL : step.reason);
    }),
    ranged('all-changes-time', 'seconds', spread.all, allPossible ? STANDS_STILL : SOME_IMPOSSIBLE),
    steps.mass.ok
      ? exact('lift-energy', 'energy', numberOf(scenario, 'change-mass') * GRAVITY * climb.hill.gain, '')
      : none('lift-energy', 'energy', steps.mass.reason),
  ];
  const size = (change: Change): number => Math.abs(spread[change].value);
  const ranked = CHANGES.filter((change) => Number.isFinite(size(change))).sort((a, b) => size(b) - size(a));
  const [first] = ranked;
  return {
    results,
    notes: setting.notes,
    ranked,
    about: {
      climb,
      largest: first && spread[first],
      limited: isLimited(climb),
      limitedThen: CHANGES.some((change) => {
        const step = steps[change];
        return step.ok && isLimited(step.to(climb));
      }),
    },
  };
}

/** The assist limit takes something of what the motor would give. */
function isLimited(climb: Climb): boolean {
  const { riderPower, motorPower } = climb;
  return riderPower > 0 && rideClimb(climb).motorPower < motorPower;
}

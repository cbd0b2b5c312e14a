import {
  batteryEnergy,
  type Hill,
  isGradeFar,
  type Limit,
  limitsOf,
  propagate,
  type UncertainResult,
} from '../model/index.ts';
import {
  type Binds,
  batteryOf,
  bindingOf,
  bindingReason,
  bindsOf,
  columnsOf,
  enduranceOf,
  enduranceResult,
  exact,
  hillOf,
  isGiven,
  none,
  type Outcome,
  optionalOf,
  placeOfBinding,
  type Remark,
  type Result,
  ranged,
  type Scenario,
  type Setting,
  targetHillOf,
} from '../scenario/index.ts';
import { ridesOf } from '../scenario/rides.ts';
import { carry, isLimited, type Measurement } from './carry.ts';
import { doubtsOf, measurementOf } from './measurement.ts';

export interface BiggerHillOutcome extends Outcome {
  /** height of the other hill, m, for the chart */
  targetGain: number;
  /** sentences about what was entered */
  notes: Remark[];
  /** what the other sentences are about; absent where one of the hills is none */
  about?: {
    measurement: Measurement;
    centre: ReturnType<typeof carry>;
    /** which bikes the assist limit holds back on the other hill */
    limited: boolean[];
    /** what else holds each back there */
    limits: Limit[][];
    /** s for which the rider lasts there */
    endures: number | undefined;
    /** what each control run alone asks for as C_rr */
    ownRolling: number[];
    /** the grades are too different for multiplying */
    far: boolean;
    /** the other hill is more of the measured one */
    sameHill: boolean;
    /** time of the bike that takes longest */
    slowest: UncertainResult | undefined;
  };
}

const NOT_UP_THERE = 'This bike does not get up the other hill with that power.';

const PER_BIKE: [string, Result['kind']][] = [
  ['time', 'duration'],
  ['time-proportional', 'duration'],
  ['gap', 'duration'],
  ['motor-power', 'power'],
  ['motor-held', 'power'],
  ['speed', 'speed'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
  ['binds-after', 'duration'],
  ['binds-height', 'height'],
  ['time-lost', 'duration'],
];
const FIRST_OF_BINDING = PER_BIKE.findIndex(([name]) => name === 'binds-after');
/** What adding in squares must not take below zero. */
const NEVER_NEGATIVE = new Set(['time', 'gap', 'speed', 'battery-energy', 'battery-share', 'binds-after', 'time-lost']);
const ONCE: [string, Result['kind']][] = [
  ['rolling', 'ratio'],
  ['grade', 'grade'],
  ['target-grade', 'grade'],
  ['endurance-time', 'duration'],
];

/** Both hills, or what keeps one of them from being a hill. */
function hillsOf(scenario: Scenario): Setting<{ hill: Hill; targetHill: Hill }> {
  const measuredHill = hillOf(scenario);
  if (!measuredHill.ok) return measuredHill;
  const target = targetHillOf(scenario, measuredHill.value);
  if (!target.ok) return target;
  return {
    ok: true,
    value: { hill: measuredHill.value, targetHill: target.value },
    notes: [...measuredHill.notes, ...target.notes],
  };
}

function impossible(scenario: Scenario, problem: string, notes: Remark[]): BiggerHillOutcome {
  const perBike: [string, Result['kind']][] = [...PER_BIKE, ['binds', 'text']];
  const results = columnsOf(scenario, 'bike').flatMap((bike) =>
    perBike.map(([name, kind]) => none(name, kind, problem, bike + 1)),
  );
  return {
    results: [...results, ...ONCE.map(([name, kind]) => none(name, kind, problem))],
    notes,
    targetGain: 0,
  };
}

/** A measured climb carried to another hill: proportional and modelled time of each bike, motor read back, gaps, energy and what binds. */
export function biggerHill(scenario: Scenario): BiggerHillOutcome {
  const hills = hillsOf(scenario);
  if (!hills.ok) return impossible(scenario, hills.problem, hills.notes);
  const { hill, targetHill } = hills.value;
  const sameHill =
    !targetHill.profile &&
    optionalOf(scenario, 'target-grade') === undefined &&
    !(isGiven(scenario, 'target-distance') && isGiven(scenario, 'target-gain'));
  const m = measurementOf(scenario, hill, targetHill);
  const riding = ridesOf(targetHill);
  const centre = carry(m, riding);
  const first = centre.bikes.reduce(
    (best, bike, i) => (bike.ride.time < (centre.bikes[best]?.ride.time ?? 0) ? i : best),
    0,
  );

  const endures = enduranceOf(scenario, m.target.riderPower);
  const limits = centre.bikes.map((bike) =>
    limitsOf(bike.climb, bike.reserves, riding).filter((one) => one.limit !== 'assist-limit' || isLimited(bike)),
  );
  const binds = centre.bikes.map(
    (bike, i): Binds =>
      // a run inside the fade began its own where it was ridden
      limits[i]?.length === 0 && isLimited(bike) ? 'assist-limit' : bindsOf(limits[i] ?? [], endures, bike.ride.time),
  );
  const { inputs, at, unit } = doubtsOf(scenario, m, sameHill);
  const spread = propagate(inputs, (values) => {
    const setup = at(values);
    if (!setup) return [];
    const carried = carry(setup, riding);
    const fastest = carried.bikes[first]?.ride.time ?? 0;
    const perBike = carried.bikes.flatMap((bike, i) => {
      const { ride, climb, reserves } = bike;
      const energy = reserves.battery ? ride.energy : batteryEnergy(ride.motorPower, ride.time, values[unit] ?? 1);
      const bound = bindingOf(binds[i] ?? 'none', climb, reserves, ride, endures, riding);
      const share = energy / (batteryOf(scenario, i) ?? Number.NaN);
      return [
        bike.ride.time,
        bike.proportionalTime,
        bike.ride.time - fastest,
        bike.motor.mean,
        bike.motor.mean,
        bike.ride.speed,
        energy,
        share,
        bound.after,
        bound.height,
        bound.lost,
      ];
    });
    return [...perBike, carried.rolling];
  });

  const { profile } = targetHill;
  const lowest = profile && Math.min(...profile.height);
  const results: Result[] = [];
  const far = isGradeFar(hill.grade, targetHill.grade);
  centre.bikes.forEach((bike, i) => {
    const own = spread.slice(i * PER_BIKE.length, (i + 1) * PER_BIKE.length);
    PER_BIKE.forEach(([name, kind], k) => {
      const computed = own[k];
      if (!computed) return;
      const result = name.startsWith('binds-') ? placeOfBinding(computed, binds[i] ?? 'none', targetHill) : computed;
      const reason =
        name === 'time-proportional'
          ? 'Multiplying heights needs two hills that gain height.'
          : k >= FIRST_OF_BINDING
            ? bindingReason(binds[i] ?? 'none')
            : NOT_UP_THERE;
      // multiplying has no model of its doubt: its expected error is told in a remark instead
      const one =
        name === 'time-proportional'
          ? exact(name, kind, result.value, reason, i + 1)
          : ranged(
              name,
              kind,
              result,
              reason,
              i + 1,
              NEVER_NEGATIVE.has(name) ? 0 : name === 'binds-height' ? lowest : undefined,
              name === 'binds-height' ? Math.max(targetHill.gain, ...(targetHill.profile?.height ?? [])) : undefined,
            );
      // nothing bounds a motor from above that was already fading
      if (name === 'motor-held' && bike.motor.insideFade) delete one.high;
      results.push(one);
    });
    const bound = binds[i] ?? 'none';
    results.push({ name: 'binds', kind: 'text', bike: i + 1, text: bound === 'none' && far ? 'grade' : bound });
  });
  const rolling = spread[centre.bikes.length * PER_BIKE.length];
  results.push(rolling ? ranged('rolling', 'ratio', rolling, '') : none('rolling', 'ratio', ''));
  results.push(exact('grade', 'grade', hill.grade, ''), exact('target-grade', 'grade', targetHill.grade, ''));
  results.push(enduranceResult(endures));

  const slowest = centre.bikes.reduce(
    (worst, bike, i) => (bike.ride.time > (centre.bikes[worst]?.ride.time ?? 0) ? i : worst),
    0,
  );
  return {
    results,
    notes: hills.notes,
    targetGain: targetHill.gain,
    about: {
      measurement: m,
      centre,
      limited: centre.bikes.map(isLimited),
      limits,
      endures,
      ownRolling: m.controls.map((run) => carry({ ...m, controls: [run], runs: [] }).rolling),
      far,
      sameHill,
      slowest: spread[slowest * PER_BIKE.length],
    },
  };
}

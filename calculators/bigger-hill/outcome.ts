import {
  airDensity,
  batteryEnergy,
  type Hill,
  isGradeFar,
  propagate,
  type UncertainInput,
  type UncertainResult,
} from '../model/index.ts';
import { formatNumber, formatQuantity } from '../quantities/index.ts';
import {
  BIKE_SCALE,
  batteryOf,
  bikeName,
  columnsOf,
  DISTANCE_RELATIVE,
  dragDoubt,
  efficiencyDoubt,
  exact,
  GAIN_RELATIVE,
  hillOf,
  inputOf,
  isGiven,
  limitOf,
  METER_SCALE,
  mainCause,
  measured,
  none,
  numberOf,
  type Outcome,
  type Remark,
  type Result,
  RIDER_SCALE,
  ranged,
  rollingDoubt,
  type Scenario,
  type Setting,
  STATED_ROLLING,
  STEADINESS,
  STOPWATCH,
  SURFACE_THERE,
  targetHillOf,
  UNSURVEYED_ROLLING,
} from '../scenario/index.ts';
import { carry, type Measurement, misread } from './carry.ts';

export interface BiggerHillOutcome extends Outcome {
  /** heights of both hills, m, for the chart */
  gain: number;
  targetGain: number;
}

const PER_BIKE: [string, Result['kind']][] = [
  ['time', 'duration'],
  ['time-proportional', 'duration'],
  ['gap', 'duration'],
  ['motor-power', 'power'],
  ['motor-held', 'power'],
  ['speed', 'speed'],
  ['battery-energy', 'energy'],
  ['battery-share', 'percent'],
];
const ONCE: [string, Result['kind']][] = [
  ['rolling', 'ratio'],
  ['grade', 'grade'],
  ['target-grade', 'grade'],
];

const STANDS_STILL = 'This bike does not get up the other hill with that power.';

/** Effective C_rr beyond what surface and ±0.008 of back-solving explain. */
const ABSURD_ROLLING = { low: UNSURVEYED_ROLLING.low - 0.008, high: UNSURVEYED_ROLLING.high + 0.008 };

function optional(scenario: Scenario, name: string): number | undefined {
  const value = inputOf(scenario, name);
  return typeof value === 'number' ? value : undefined;
}

function measurementOf(scenario: Scenario, hill: Hill, targetHill: Hill): Measurement {
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
      assistLimit: limitOf(scenario, bike),
    })),
    target: {
      hill: targetHill,
      density: airDensity(
        optional(scenario, 'target-altitude') ?? altitude,
        optional(scenario, 'target-temperature') ?? temperature,
      ),
      headWind: optional(scenario, 'target-wind') ?? numberOf(scenario, 'wind'),
      riderPower: optional(scenario, 'target-power') ?? numberOf(scenario, 'power'),
      riderMassChange: (optional(scenario, 'target-rider') ?? rider) - rider,
      rolling: optional(scenario, 'target-rolling') ?? null,
      rollingChange: 0,
    },
  };
}

function controlRider(scenario: Scenario, run: number): number {
  const value = inputOf(scenario, 'control-rider', run);
  return typeof value === 'number' ? value : numberOf(scenario, 'rider');
}

/** Another hill is another surface: ±0.004 where nothing is said about it, ±15 % of a figure that the reader states. */
function surfaceThere(m: Measurement): UncertainInput {
  const { rolling } = m.target;
  return measured('surfaceThere', 0, rolling === null ? SURFACE_THERE : STATED_ROLLING * rolling);
}

/** What may be wrong with the measurement, and the measurement when it is wrong by that much. */
function doubtsOf(scenario: Scenario, m: Measurement, sameHill: boolean) {
  const inputs: UncertainInput[] = [
    dragDoubt(m.dragArea),
    efficiencyDoubt('drive', m.efficiency),
    efficiencyDoubt('unit', numberOf(scenario, 'unit')),
    measured('meter', 1, METER_SCALE),
    measured('riderMass', 0, RIDER_SCALE),
    measured('distance', 1, DISTANCE_RELATIVE),
    measured('gain', 1, GAIN_RELATIVE),
    ...(sameHill ? [] : [surfaceThere(m)]),
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
      })),
      target: { ...m.target, hill: target, rollingChange: value('surfaceThere') },
    };
  };
  return { inputs, at, unit: index.get('unit') ?? -1 };
}

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

function impossible(scenario: Scenario, problem: string, field: string): BiggerHillOutcome {
  const perBike: [string, Result['kind']][] = [...PER_BIKE, ['binds', 'text']];
  const results = columnsOf(scenario, 'bike').flatMap((bike) =>
    perBike.map(([name, kind]) => none(name, kind, problem, bike + 1)),
  );
  return {
    results: [...results, ...ONCE.map(([name, kind]) => none(name, kind, problem))],
    remarks: [{ tone: 'wrong', text: problem, field }],
    gain: 0,
    targetGain: 0,
  };
}

/** A measured climb carried to another hill: proportional and modelled time of each bike, motor read back, gaps, energy and what binds. */
export function biggerHill(scenario: Scenario): BiggerHillOutcome {
  const hills = hillsOf(scenario);
  if (!hills.ok) return impossible(scenario, hills.problem, hills.field);
  const { hill, targetHill } = hills.value;
  const sameHill =
    optional(scenario, 'target-grade') === undefined &&
    !(isGiven(scenario, 'target-distance') && isGiven(scenario, 'target-gain'));
  const m = measurementOf(scenario, hill, targetHill);
  const centre = carry(m);
  const first = centre.bikes.reduce(
    (best, bike, i) => (bike.ride.time < (centre.bikes[best]?.ride.time ?? 0) ? i : best),
    0,
  );

  const { inputs, at, unit } = doubtsOf(scenario, m, sameHill);
  const spread = propagate(inputs, (values) => {
    const setup = at(values);
    if (!setup) return [];
    const carried = carry(setup);
    const fastest = carried.bikes[first]?.ride.time ?? 0;
    const perBike = carried.bikes.flatMap((bike, i) => {
      const energy = batteryEnergy(bike.ride.motorPower, bike.ride.time, values[unit] ?? 1);
      const share = energy / (batteryOf(scenario, i) ?? Number.NaN);
      return [
        bike.ride.time,
        bike.proportionalTime,
        bike.ride.time - fastest,
        bike.motor.mean,
        bike.motor.held,
        bike.ride.speed,
        energy,
        share,
      ];
    });
    return [...perBike, carried.rolling];
  });

  const results: Result[] = [];
  const remarks: Remark[] = hills.notes.map((text) => ({ tone: 'plain', text }));
  const far = isGradeFar(hill.grade, targetHill.grade);
  centre.bikes.forEach((bike, i) => {
    const own = spread.slice(i * PER_BIKE.length, (i + 1) * PER_BIKE.length);
    PER_BIKE.forEach(([name, kind], k) => {
      const result = own[k];
      if (!result) return;
      const reason =
        name === 'time-proportional' ? 'A measured hill without height has no ratio of heights.' : STANDS_STILL;
      // multiplying has no model of its doubt: its expected error is told in a remark instead
      const one =
        name === 'time-proportional'
          ? exact(name, kind, result.value, reason, i + 1)
          : ranged(name, kind, result, reason, i + 1);
      // inside the fade the mean is all that is certain, and nothing bounds the motor from above
      if (name === 'motor-held' && bike.motor.insideFade && bike.motor.mean > 0 && one.si !== undefined) {
        one.low = bike.motor.mean;
        delete one.high;
      }
      results.push(one);
    });
    const limited = bike.ride.motorPower < bike.climb.motorPower && bike.climb.riderPower > 0;
    results.push({ name: 'binds', kind: 'text', bike: i + 1, text: limited ? 'assist-limit' : far ? 'grade' : 'none' });
  });
  const rolling = spread[centre.bikes.length * PER_BIKE.length];
  results.push(rolling ? ranged('rolling', 'ratio', rolling, '') : none('rolling', 'ratio', ''));
  results.push(exact('grade', 'grade', hill.grade, ''), exact('target-grade', 'grade', targetHill.grade, ''));

  const slowest = centre.bikes.reduce(
    (worst, bike, i) => (bike.ride.time > (centre.bikes[worst]?.ride.time ?? 0) ? i : worst),
    0,
  );
  const slowestTime = spread[slowest * PER_BIKE.length];
  remarks.push(...remarksOf(scenario, m, centre, far, slowestTime));
  return { results, remarks, gain: hill.gain, targetGain: targetHill.gain };
}

function remarksOf(
  scenario: Scenario,
  m: Measurement,
  centre: ReturnType<typeof carry>,
  far: boolean,
  slowest: UncertainResult | undefined,
): Remark[] {
  const remarks: Remark[] = [];
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  remarks.push(...calibrationRemarks(scenario, m, centre));
  const cause = slowest && mainCause(slowest);
  if (cause) remarks.push({ tone: 'plain', text: `Most of the doubt about the times is ${cause.cause}.` });

  centre.bikes.forEach((bike, i) => {
    const name = bikeName(scenario, i);
    if (bike.motor.mean < 0) {
      remarks.push({
        tone: 'wrong',
        text: `${name}: ${text(m.runs[i]?.time ?? 0, 'duration')} is longer than the rider alone would need, so its motor comes out below zero. Check that time, the rider’s power and the weights.`,
      });
    }
    if (bike.motor.insideFade && bike.motor.mean >= 0) {
      remarks.push({
        tone: 'caution',
        text: `${name} was ridden so close to its assist limit that the motor was already fading: ${text(bike.motor.mean, 'power')} is a lower bound for what it can give. A steeper measured hill would tell.`,
      });
    }
    if (bike.ride.motorPower < bike.climb.motorPower && bike.climb.assistLimit !== null && bike.climb.riderPower > 0) {
      remarks.push({
        tone: 'caution',
        text: `${name} is held back by the assist limit of ${text(bike.climb.assistLimit, 'speed')} on the other hill: its motor gives ${text(bike.ride.motorPower, 'power')} of ${text(bike.climb.motorPower, 'power')}. Without a limit it would take ${text(bike.freeTime, 'duration')}.`,
      });
    }
    const battery = batteryOf(scenario, i);
    const energy = batteryEnergy(bike.ride.motorPower, bike.ride.time, numberOf(scenario, 'unit'));
    if (battery !== undefined && energy > battery) {
      remarks.push({
        tone: 'caution',
        text: `${name} would need ${text(energy, 'energy')} of a ${text(battery, 'energy')} battery. What happens once it is empty is not worked out here yet.`,
      });
    }
    if (!Number.isFinite(bike.ride.time)) {
      remarks.push({
        tone: 'wrong',
        text:
          bike.climb.riderPower === 0
            ? `${name}: nobody pedals, and a motor that assists gives nothing then.`
            : `${name}: ${STANDS_STILL}`,
      });
    }
  });
  if (far) remarks.push({ tone: 'caution', text: farRemark(scenario, m, centre) });
  return remarks;
}

function farRemark(scenario: Scenario, m: Measurement, centre: ReturnType<typeof carry>): string {
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  const errors = centre.bikes
    .map((bike) => bike.proportionalTime / bike.ride.time - 1)
    .filter((error) => Number.isFinite(error));
  const worst = errors.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  const amount =
    errors.length > 0
      ? ` Here multiplying by height comes out up to ${formatNumber(Math.abs(worst) * 100)} % too ${worst < 0 ? 'short' : 'long'}.`
      : '';
  return `The other hill has ${text(m.target.hill.grade, 'grade')}, the measured one ${text(m.hill.grade, 'grade')}. That is more than a tenth apart, too different for multiplying times.${amount}`;
}

function calibrationRemarks(scenario: Scenario, m: Measurement, centre: ReturnType<typeof carry>): Remark[] {
  if (!centre.calibration) {
    return [
      {
        tone: 'caution',
        text: 'Without a control run the surface is a guess, so the motor powers carry its whole range. One run without assistance at a known power would narrow them.',
      },
    ];
  }
  const remarks: Remark[] = [];
  if (isGiven(scenario, 'rolling'))
    remarks.push({
      tone: 'plain',
      text: 'The control run sets the rolling resistance of the measured hill; your own figure is not used. Remove the control runs to use it.',
    });
  const { rolling } = centre;
  const shown = formatQuantity(rolling, 'ratio', scenario.system);
  const mass = formatQuantity(numberOf(scenario, 'rider'), 'mass', scenario.system);
  if (rolling < ABSURD_ROLLING.low || rolling > ABSURD_ROLLING.high) {
    const why = rolling < 0 ? 'below zero, which no tyre does' : 'which no ordinary trail has';
    remarks.push({
      tone: 'wrong',
      text: `The control run asks for a rolling resistance of ${shown}, ${why}. Some inputs contradict each other: most often the rider’s mass (${mass} with kit), then the height gained, the control run’s power or its time. The motor powers hardly change with the mass, other hills do.`,
    });
  } else if (rolling < UNSURVEYED_ROLLING.low || rolling > UNSURVEYED_ROLLING.high) {
    remarks.push({
      tone: 'caution',
      text: `The control run asks for a rolling resistance of ${shown}, outside the ${UNSURVEYED_ROLLING.low} to ${UNSURVEYED_ROLLING.high} of ordinary trails. If the surface was ordinary, check the rider’s mass (${mass} with kit) first.`,
    });
  }
  if (m.target.rolling === null && Math.abs(m.target.hill.grade - m.hill.grade) > 0.1 * Math.abs(m.hill.grade)) {
    remarks.push({
      tone: 'plain',
      text: 'The rolling resistance found by the control run also holds the errors of mass, height and meter. They cancel on the same grade, not on another.',
    });
  }
  return remarks;
}

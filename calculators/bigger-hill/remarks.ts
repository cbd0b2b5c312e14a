import { isGradeFar } from '../model/index.ts';
import { formatNumber, formatQuantity } from '../quantities/index.ts';
import {
  bikeName,
  isGiven,
  mainCause,
  numberOf,
  type Remark,
  type Result,
  resultOf,
  type Scenario,
  STEADINESS,
  UNSURVEYED_ROLLING,
} from '../scenario/index.ts';
import { brakingRemark, enduranceRemarks, limitRemarks, partOfTheWay } from '../scenario/limit-remarks.ts';
import type { carry, Measurement } from './carry.ts';
import type { BiggerHillOutcome } from './outcome.ts';

type About = NonNullable<BiggerHillOutcome['about']>;

/** Effective C_rr beyond what surface and ±0.008 of back-solving explain. */
const ABSURD_ROLLING = { low: UNSURVEYED_ROLLING.low - 0.008, high: UNSURVEYED_ROLLING.high + 0.008 };

/** What the reader should know about the answer, in sentences. */
export function biggerHillRemarks(scenario: Scenario, outcome: BiggerHillOutcome): Remark[] {
  const { notes, about } = outcome;
  if (!about) return notes;
  const { measurement: m, centre, limited, limits, endures, far, sameHill, slowest } = about;
  const remarks: Remark[] = [...notes];
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  const given = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system, { trim: true });
  remarks.push(...calibrationRemarks(scenario, about));
  const cause = slowest && mainCause(slowest);
  if (cause) remarks.push({ tone: 'plain', text: `Most of the doubt about the times is ${cause.cause}.` });
  if (sameHill)
    remarks.push({
      tone: 'plain',
      text: 'Without a grade of its own the other hill is more of the same, measured by the same instruments.',
    });

  centre.bikes.forEach((bike, i) => {
    const name = bikeName(scenario, i);
    // a control run that contradicts the rest would blame every bike
    if (bike.motor.mean < 0 && centre.rolling >= 0) {
      remarks.push({
        tone: 'wrong',
        text: `${name}: ${text(m.runs[i]?.time ?? 0, 'duration')} is longer than the rider alone would need, so its motor comes out below zero. Check that time, the rider’s power and the weights.`,
      });
    }
    const limit = m.runs[i]?.assistLimit ?? null;
    const measuredSpeed = m.hill.distance / (m.runs[i]?.time ?? 1);
    if (bike.motor.aboveLimit) {
      remarks.push({
        tone: 'wrong',
        text: `${name} was measured at ${text(measuredSpeed, 'speed')}, above its assist limit of ${given(limit ?? 0, 'speed')}, where a motor gives nothing. Its limit or its time is another; the answer leaves the limit out.`,
      });
    } else if (bike.motor.insideFade && bike.motor.mean > 0) {
      remarks.push({
        tone: 'caution',
        text: `${name} was ridden so close to its assist limit that the motor was already fading: ${text(bike.motor.mean, 'power')} is a lower bound for what it can give, and on a steeper hill its time an upper one.`,
      });
    }
    if (limit !== null && limited[i]) {
      const way = { ...bike, limits: limits[i] ?? [] };
      const found = way.limits.find((one) => one.limit === 'assist-limit');
      const part = found ? partOfTheWay(scenario, way, found) : '';
      const held = `${name} is held back by the assist limit of ${given(limit, 'speed')} on the other hill`;
      const cost = part
        ? `,${part}. Without a limit it would take ${text(bike.freeTime, 'duration')}`
        : `: its motor gives ${text(bike.ride.stages[0]?.motorPower ?? 0, 'power')} of ${text(bike.climb.motorPower, 'power')}. Without a limit it would take ${text(bike.freeTime, 'duration')}`;
      remarks.push({ tone: 'caution', text: `${held}${bike.motor.insideFade ? '' : cost}.` });
    }
    remarks.push(...limitRemarks(scenario, { ...bike, limits: limits[i] ?? [] }, `${name} on the other hill`));
    if (!Number.isFinite(bike.ride.time)) {
      remarks.push({
        tone: 'wrong',
        text:
          bike.climb.riderPower === 0
            ? `${name}: nobody pedals, and a motor that assists gives nothing then.`
            : `${name}: ${resultOf(outcome, 'time', i + 1).reason}`,
      });
    }
  });
  remarks.push(
    ...enduranceRemarks(
      scenario,
      m.target.riderPower,
      endures,
      slowest?.value ?? 0,
      'The slowest bike on the other hill',
    ),
  );
  remarks.push(...brakingRemark(scenario, limits));
  if (m.target.hill.profile)
    remarks.push({
      tone: 'plain',
      text: 'The other hill comes in pieces. The model rides along them; multiplying knows their height alone, and grades are compared by the mean of all.',
    });
  if (far) remarks.push({ tone: 'caution', text: farRemark(scenario, m, centre) });
  return remarks;
}

function farRemark(scenario: Scenario, m: Measurement, centre: ReturnType<typeof carry>): string {
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  const errors = centre.bikes
    .map((bike) => bike.proportionalTime / bike.freeTime - 1)
    .filter((error) => Number.isFinite(error));
  const worst = errors.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  const amount =
    errors.length > 0
      ? ` Here multiplying by height comes out up to ${formatNumber(Math.abs(worst) * 100)} % too ${worst < 0 ? 'short' : 'long'}.`
      : '';
  const mean = m.target.hill.profile ? ' on average' : '';
  return `The other hill has ${text(m.target.hill.grade, 'grade')}${mean}, the measured one ${text(m.hill.grade, 'grade')}. More than a tenth apart is too different for multiplying times.${amount}`;
}

/** Control runs that ask for surfaces further apart than riding them unsteadily explains. */
function disagreement(scenario: Scenario, { measurement: m, ownRolling: own }: About): Remark[] {
  const [least, most] = [Math.min(...own), Math.max(...own)];
  // of one run C_rr is off by about its steadiness times all that resists, of a difference by the root of two times that
  const explained = Math.SQRT2 * STEADINESS * (m.hill.sin + Math.abs(least));
  if (!(most - least > explained)) return [];
  const shown = own.map((rolling) => formatQuantity(rolling, 'ratio', scenario.system)).join(', ');
  return [
    {
      tone: 'wrong',
      text: `The control runs disagree: one by one they ask for a rolling resistance of ${shown}. That is more than steadiness explains. Something drifted, or one of their times or powers is mistyped.`,
    },
  ];
}

function calibrationRemarks(scenario: Scenario, about: About): Remark[] {
  const { measurement: m, centre } = about;
  if (!centre.calibration) {
    return [
      {
        tone: 'caution',
        text: 'Without a control run the surface is a guess, so the motor powers carry its whole range. A run without assistance would narrow them.',
      },
    ];
  }
  const remarks: Remark[] = disagreement(scenario, about);
  if (isGiven(scenario, 'rolling'))
    remarks.push({
      tone: 'plain',
      text: 'The control run sets the rolling resistance: your own figure is not used.',
    });
  const { rolling } = centre;
  const runs = m.controls.length > 1 ? 'control runs ask' : 'control run asks';
  const shown = formatQuantity(rolling, 'ratio', scenario.system);
  const mass = formatQuantity(numberOf(scenario, 'rider'), 'mass', scenario.system);
  if (rolling < ABSURD_ROLLING.low || rolling > ABSURD_ROLLING.high) {
    const why = rolling < 0 ? 'below zero, which no tyre does' : 'which no ordinary trail has';
    remarks.push({
      tone: 'wrong',
      text: `The ${runs} for a rolling resistance of ${shown}, ${why}. Some inputs contradict each other: most often the rider’s mass (${mass} with kit), then the height gained, the control run’s power or its time. The motor powers hardly change with the mass, other hills do.`,
    });
  } else if (rolling < UNSURVEYED_ROLLING.low || rolling > UNSURVEYED_ROLLING.high) {
    remarks.push({
      tone: 'caution',
      text: `The ${runs} for a rolling resistance of ${shown}, outside the ${UNSURVEYED_ROLLING.low} to ${UNSURVEYED_ROLLING.high} of ordinary trails. If the surface was ordinary, check the rider’s mass (${mass} with kit) first.`,
    });
  }
  if (m.target.rolling === null && isGradeFar(m.hill.grade, m.target.hill.grade)) {
    remarks.push({
      tone: 'plain',
      text: 'The rolling resistance found by the control run also holds the errors of mass, height and meter. They cancel on the same grade, not on another.',
    });
  }
  return remarks;
}

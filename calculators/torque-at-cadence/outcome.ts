import { type Drive, motorBound, riderForPeak, torqueCadence, torquePower } from '../model/index.ts';
import {
  columnsOf,
  exact,
  motorOf,
  none,
  numberOf,
  type Outcome,
  type Result,
  type Scenario,
} from '../scenario/index.ts';

/** What the sentences and the chart need of one motor. Powers in W, torque in N·m. */
export interface MotorDetail {
  torque: number;
  support: number;
  peak: number;
  /** what it gives at the rider's cadence, and which of the three is the least there */
  power: number;
  binds: 'peak' | 'torque' | 'support';
  /** what peak and support leave of it at a cadence that torque does not limit */
  ceiling: number;
  /** rpm from which torque no longer limits; 0 where it never does */
  cadence: number;
  /** rider power that brings out the peak, Infinity where none does */
  riderForPeak: number;
  /** output from the least to the greatest cadence of the chart: straight between these points */
  curve: { cadence: number; power: number }[];
}

export interface TorqueAtCadenceOutcome extends Outcome {
  motors: MotorDetail[];
}

/** Cadences of the chart, rpm: to what people keep, or to the greatest that can be typed. */
const SLOWEST = 20;
const USUAL = 120;
const GREATEST = 160;

const NO_OUTPUT = 'The motor gives nothing here, so its torque never limits it.';
const NO_MOTOR = 'A bike without a motor has no peak.';
const NO_SUPPORT = 'Without support no rider power brings out the peak.';

/** What each motor gives at one cadence and one rider power: the least of torque × cadence, support × rider power, and peak. */
export function torqueAtCadence(scenario: Scenario): TorqueAtCadenceOutcome {
  const rider = numberOf(scenario, 'power');
  const cadence = numberOf(scenario, 'cadence');
  const motors = columnsOf(scenario, 'torque').map((column): MotorDetail => {
    const torque = numberOf(scenario, 'torque', column);
    const support = numberOf(scenario, 'support', column);
    const peak = motorOf(scenario, column);
    const drive: Drive = { riderPower: rider, motorPower: peak, assistLimit: null, efficiency: 1, torque, support };
    const at = (rpm: number): number => motorBound(drive, rpm).power;
    const ceiling = Math.min(peak, support * rider);
    const turning = torqueCadence(ceiling, torque);
    const fastest = cadence > USUAL ? GREATEST : USUAL;
    const bends = turning > SLOWEST && turning < fastest ? [turning] : [];
    return {
      torque,
      support,
      peak,
      ...motorBound(drive, cadence),
      ceiling,
      cadence: turning,
      riderForPeak: riderForPeak(peak, support),
      curve: [SLOWEST, ...bends, fastest].map((rpm) => ({ cadence: rpm, power: at(rpm) })),
    };
  });
  return { results: motors.flatMap((motor, i) => resultsOf(motor, cadence, rider, i + 1)), motors };
}

function resultsOf(motor: MotorDetail, cadence: number, rider: number, bike: number): Result[] {
  const { torque, support, peak, power, ceiling, binds } = motor;
  return [
    exact('motor-power', 'power', power, '', bike),
    exact('torque-limit', 'power', torquePower(torque, cadence), '', bike),
    exact('support-limit', 'power', support * rider, '', bike),
    ceiling > 0
      ? exact('torque-cadence', 'cadence', motor.cadence, '', bike)
      : none('torque-cadence', 'cadence', NO_OUTPUT, bike),
    peak > 0
      ? exact('rider-for-peak', 'power', motor.riderForPeak, NO_SUPPORT, bike)
      : none('rider-for-peak', 'power', NO_MOTOR, bike),
    { name: 'binds', kind: 'text', text: binds, bike },
  ];
}

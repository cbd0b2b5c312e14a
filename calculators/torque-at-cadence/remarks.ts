import { formatQuantity } from '../quantities/index.ts';
import { bikeName, NOBODY_PEDALS, numberOf, type Remark, type Result, type Scenario } from '../scenario/index.ts';
import type { MotorDetail, TorqueAtCadenceOutcome } from './outcome.ts';

/** rpm that hardly anybody keeps up on a climb: an assumption. */
const RARE = 110;

/** What the reader should know about the answer, in sentences. */
export function torqueAtCadenceRemarks(scenario: Scenario, { motors }: TorqueAtCadenceOutcome): Remark[] {
  if (numberOf(scenario, 'power') === 0) return [{ tone: 'wrong', text: NOBODY_PEDALS }];
  const remarks = motors.flatMap((motor, i) => motorRemarks(scenario, bikeName(scenario, i), motor));
  const working = motors.filter(({ power }) => power > 0);
  if (working.length === 0) return remarks;
  const [first] = working;
  const alike = motors.every(({ power }) => Math.abs(power - (first?.power ?? 0)) < 1e-9 * power);
  if (alike && motors.some(({ torque }) => torque !== first?.torque))
    remarks.push({ tone: 'plain', text: 'All give the same here, however much their torques differ.' });
  remarks.push(
    {
      tone: 'plain',
      text: 'More torque brings a motor to the most it gives at a lower cadence, and changes nothing else.',
    },
    {
      tone: 'plain',
      text: 'Boxes name the peak torque and seldom the cadence that goes with it. It is taken here as the same at every cadence.',
    },
  );
  return remarks;
}

function motorRemarks(scenario: Scenario, name: string, motor: MotorDetail): Remark[] {
  const { binds, peak, support, ceiling, cadence, power } = motor;
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system, { trim: true });
  const remarks: Remark[] = [];
  const say = (words: string): void => {
    remarks.push({ tone: 'plain', text: words });
  };
  if (peak === 0) return remarks;
  if (support === 0) {
    say(`${name} adds nothing to your power.`);
    return remarks;
  }
  const legs = ceiling < peak;
  if (binds === 'torque')
    say(
      cadence > RARE
        ? `${name} is held by its torque at any cadence that people keep on a climb: only at ${text(cadence, 'cadence')} would it give ${text(ceiling, 'power')}.`
        : `${name} is held by its torque up to ${text(cadence, 'cadence')}; from there on it gives ${text(ceiling, 'power')}${legs ? ', all that it adds to your power' : ', its peak'}.`,
    );
  else if (!legs && power > 0)
    say(`${name} gives its peak: more torque or a quicker cadence would change nothing here.`);
  if (legs)
    say(
      `${name} adds ${text(support, 'percent')} of your power and no more: for its peak of ${text(peak, 'power')} it needs ${text(motor.riderForPeak, 'power')} from you.`,
    );
  return remarks;
}

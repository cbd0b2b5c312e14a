import { assistShare, rideClimb } from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import { NOBODY_PEDALS, type Remark, type Result, type Scenario, waitsForPedals } from '../scenario/index.ts';
import type { PowerToWeightOutcome } from './outcome.ts';

/** What the reader should know about the answer, in sentences. */
export function powerToWeightRemarks(scenario: Scenario, { climb, notes }: PowerToWeightOutcome): Remark[] {
  const remarks: Remark[] = [...notes];
  if (!climb) return remarks;
  const ride = rideClimb(climb);
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  if (waitsForPedals(climb)) remarks.push({ tone: 'wrong', text: NOBODY_PEDALS });
  else if (climb.motorPower > 0 && climb.assistLimit !== null && assistShare(ride.speed, climb.assistLimit) < 1) {
    remarks.push({
      tone: 'caution',
      text: `At ${text(ride.speed, 'speed')} the assist limit leaves ${text(ride.motorPower, 'power')} of the motor’s ${text(climb.motorPower, 'power')}, so the equivalent is lower than rider and motor together.`,
    });
  }
  return remarks;
}

import { inferMotor, rideClimb, type UncertainResult } from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import { bikeName, isGiven, mainCause, numberOf, type Remark, type Result, type Scenario } from '../scenario/index.ts';
import type { BikeDetail, SideBySideOutcome } from './outcome.ts';

/** What the reader should know about the answer, in sentences. */
export function sideBySideRemarks(scenario: Scenario, { bikes, notes }: SideBySideOutcome): Remark[] {
  const remarks: Remark[] = [...notes, ...bikes.flatMap((detail, bike) => bikeRemarks(scenario, bike, detail))];
  if (bikes.length === 0) return remarks;
  const slowest = bikes
    .map(({ time }) => time)
    .reduce<UncertainResult | undefined>((worst, one) => (!worst || one.value > worst.value ? one : worst), undefined);
  const cause = slowest && mainCause(slowest);
  if (cause)
    remarks.unshift({
      tone: 'plain',
      text: `Most of the doubt is ${cause.cause}. All bikes share it, so the gaps are surer than the times.`,
    });
  if (numberOf(scenario, 'power') === 0 && bikes.some(({ climb }) => climb.motorPower > 0))
    remarks.unshift({ tone: 'wrong', text: 'Nobody pedals: a motor that assists gives nothing then.' });
  return remarks;
}

function bikeRemarks(scenario: Scenario, bike: number, { climb, measured, limited, share }: BikeDetail): Remark[] {
  const remarks: Remark[] = [];
  const name = bikeName(scenario, bike);
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  if (measured !== undefined) {
    const { mean } = inferMotor(climb, measured);
    if (isGiven(scenario, 'motor', bike))
      remarks.push({ tone: 'plain', text: `${name} has a measured time, which beats its motor figure.` });
    if (mean < 0)
      remarks.push({
        tone: 'wrong',
        text: `${name}: ${text(measured, 'duration')} is longer than the rider alone would need, so the motor comes out below zero. Check the time, the rider’s power and the weights.`,
      });
  }
  if (limited && climb.assistLimit !== null) {
    const free =
      measured === undefined
        ? ` Without a limit it would take ${text(rideClimb({ ...climb, assistLimit: null }).time, 'duration')}.`
        : '';
    remarks.push({
      tone: 'caution',
      text: `${name} is held back by the assist limit of ${formatQuantity(climb.assistLimit, 'speed', scenario.system, { trim: true })}.${free}`,
    });
  }
  if (share > 1)
    remarks.push({
      tone: 'caution',
      text: `${name} would need more than its battery holds; what follows an empty battery is not worked out here yet.`,
    });
  return remarks;
}

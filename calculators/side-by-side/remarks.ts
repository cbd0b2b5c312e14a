import { inferMotor, type UncertainResult } from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import type { BikeDetail } from '../scenario/comparison.ts';
import {
  bikeName,
  isGiven,
  mainCause,
  NOBODY_PEDALS,
  numberOf,
  type Remark,
  type Result,
  type Scenario,
  waitsForPedals,
} from '../scenario/index.ts';
import { assistLimitRemark, brakingRemark, enduranceRemarks, limitRemarks } from '../scenario/limit-remarks.ts';
import type { SideBySideOutcome } from './outcome.ts';

/** What the reader should know about the answer, in sentences. */
export function sideBySideRemarks(scenario: Scenario, { bikes, notes, endures }: SideBySideOutcome): Remark[] {
  const remarks: Remark[] = [...notes, ...bikes.flatMap((detail, bike) => bikeRemarks(scenario, bike, detail))];
  remarks.push(
    ...brakingRemark(
      scenario,
      bikes.map(({ limits }) => limits),
    ),
  );
  const tiring = bikes
    .filter(({ measured }) => measured === undefined)
    .reduce((most, { time }) => Math.max(most, time.value), 0);
  remarks.push(...enduranceRemarks(scenario, numberOf(scenario, 'power'), endures, tiring, 'The slowest bike'));
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
  if (bikes.some(({ climb }) => waitsForPedals(climb))) remarks.unshift({ tone: 'wrong', text: NOBODY_PEDALS });
  return remarks;
}

function bikeRemarks(
  scenario: Scenario,
  bike: number,
  { climb, measured, ride, limits, limited, share }: BikeDetail,
): Remark[] {
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
  if (limited) remarks.push(...assistLimitRemark(scenario, { climb, ride, limits }, name));
  if (ride) remarks.push(...limitRemarks(scenario, { climb, ride, limits }, name));
  if (measured !== undefined && share > 1)
    remarks.push({
      tone: 'wrong',
      text: `${name}: with that time its motor would have drawn more than its battery holds. Check the time, the battery and the rider’s power.`,
    });
  return remarks;
}

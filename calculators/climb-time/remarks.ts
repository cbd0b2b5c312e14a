import { rideClimb } from '../model/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import { mainCause, type Remark, type Scenario, STANDS_STILL } from '../scenario/index.ts';
import type { ClimbTimeOutcome } from './outcome.ts';

/** Grade (tan) beyond which grip decides: an assumption. */
const STEEP = 0.3;

/** Speed, m/s, below which people push: an assumption. */
const STROLL = 0.8;

/** What the reader should know about the answer, in sentences. */
export function climbTimeRemarks(scenario: Scenario, { about, problem }: ClimbTimeOutcome): Remark[] {
  if (!about) return problem ? [problem] : [];
  const { climb, time, share, limited } = about;
  const remarks: Remark[] = [...about.notes];
  const duration = (si: number): string => formatQuantity(si, 'duration', scenario.system);
  if (!Number.isFinite(time.value)) {
    const text =
      climb.riderPower === 0 && climb.motorPower > 0
        ? 'Nobody pedals: a motor that assists gives nothing then.'
        : STANDS_STILL;
    return [...remarks, { tone: 'wrong', text }];
  }
  const cause = mainCause(time);
  if (cause && Number.isFinite(cause.high)) {
    remarks.push({
      tone: 'plain',
      text: `Most of the doubt is ${cause.cause}: that alone puts the time anywhere from ${duration(cause.low)} to ${duration(cause.high)}.`,
    });
  }
  if (limited && climb.assistLimit !== null) {
    const free = rideClimb({ ...climb, assistLimit: null });
    const motor = rideClimb(climb).motorPower;
    remarks.push({
      tone: 'caution',
      text: `The assist limit of ${formatQuantity(climb.assistLimit, 'speed', scenario.system, { trim: true })} holds this bike back: the motor gives ${formatQuantity(motor, 'power', scenario.system)} of its ${formatQuantity(climb.motorPower, 'power', scenario.system)} here, and without a limit the climb would take ${duration(free.time)}.`,
    });
  }
  if (climb.riderPower === 0 && climb.motorPower > 0)
    remarks.push({
      tone: 'caution',
      text: 'Nobody pedals: a motor that assists gives nothing then, so this is the bike rolling by itself.',
    });
  if (share > 1)
    remarks.push({
      tone: 'caution',
      text: `That is more than the battery holds. What happens once it is empty is not worked out here yet: take it that you ride the rest without help.`,
    });
  if (climb.hill.grade > STEEP)
    remarks.push({
      tone: 'caution',
      text: 'On a slope this steep a tyre slips or the front wheel lifts before power runs out; neither is worked out here.',
    });
  if (climb.hill.gain > 0 && time.value * STROLL > climb.hill.distance)
    remarks.push({ tone: 'caution', text: 'That is slower than a stroll: most people would be pushing.' });
  return remarks;
}

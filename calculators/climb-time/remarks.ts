import { formatQuantity } from '../quantities/index.ts';
import {
  isGiven,
  isUnused,
  mainCause,
  NOBODY_PEDALS,
  optionalOf,
  type Remark,
  ROLLS_BY_ITSELF,
  type Scenario,
  STANDS_STILL,
  waitsForPedals,
} from '../scenario/index.ts';
import { enduranceRemarks, limitRemarks, wayOf } from '../scenario/limit-remarks.ts';
import type { ClimbTimeOutcome } from './outcome.ts';

type About = NonNullable<ClimbTimeOutcome['about']>;

/** Grade (tan) beyond which grip decides: an assumption. */
const STEEP = 0.3;

/** Speed, m/s, below which people push: an assumption. */
const STROLL = 0.8;

/** What the reader should know about the answer, in sentences. */
export function climbTimeRemarks(scenario: Scenario, { about, notes }: ClimbTimeOutcome): Remark[] {
  if (!about) return notes;
  const { climb, ride, limits, time, endures } = about;
  const remarks: Remark[] = [...notes];
  const duration = (si: number): string => formatQuantity(si, 'duration', scenario.system);
  if (!Number.isFinite(time.value)) {
    const text = waitsForPedals(climb) ? NOBODY_PEDALS : STANDS_STILL;
    return [...remarks, { tone: 'wrong', text }];
  }
  const cause = mainCause(time);
  if (cause && Number.isFinite(cause.high)) {
    remarks.push({
      tone: 'plain',
      text: `Most of the doubt is ${cause.cause}: that alone puts the time anywhere from ${duration(cause.low)} to ${duration(cause.high)}.`,
    });
  }
  const way = wayOf(climb.hill);
  const held = limits.find(({ limit }) => limit === 'assist-limit');
  // where something else costs more, a limit that takes next to nothing is not worth a sentence
  if (climb.assistLimit !== null && held && (held === limits[0] || held.lost > 0.005 * ride.time))
    remarks.push({ tone: 'caution', text: assistLimitText(scenario, climb.assistLimit, about) });
  remarks.push(
    ...limitRemarks(scenario, about, `On this ${way}`),
    ...enduranceRemarks(scenario, climb.riderPower, endures, ride.time, `The ${way}`),
  );
  if (waitsForPedals(climb)) remarks.push({ tone: 'caution', text: ROLLS_BY_ITSELF });
  remarks.push(...cadenceRemarks(scenario));
  if (climb.hill.grade > STEEP)
    remarks.push({
      tone: 'caution',
      text: 'On a slope this steep a tyre slips or the front wheel lifts before power runs out; neither is worked out here.',
    });
  if (climb.hill.gain > 0 && time.value * STROLL > climb.hill.distance)
    remarks.push({ tone: 'caution', text: 'That is slower than a stroll: most people would be pushing.' });
  return remarks;
}

/** What a cadence does here and what it does not: with a torque it bounds the motor, and of its heat it says nothing. */
function cadenceRemarks(scenario: Scenario): Remark[] {
  if (!isGiven(scenario, 'cadence')) return [];
  const isHot = optionalOf(scenario, 'continuous') !== undefined;
  if (isUnused(scenario, 'cadence'))
    return [
      {
        tone: 'plain',
        text: `Your cadence changes nothing here while the motor’s torque is empty${isHot ? '; what it does to the heat, Holding peak power works out' : ''}.`,
      },
    ];
  if (!isHot) return [];
  return [
    {
      tone: 'plain',
      text: 'Heat is worked out here as if what the motor holds for ever were stated at your cadence. Holding peak power takes the two apart.',
    },
  ];
}

/** What the assist limit costs here, and from which motor on it is all the same. */
function assistLimitText(scenario: Scenario, assistLimit: number, about: About): string {
  const { climb, ride, limitPower, unlimited } = about;
  const power = (si: number): string => formatQuantity(si, 'power', scenario.system);
  const duration = (si: number): string => formatQuantity(si, 'duration', scenario.system);
  const limit = formatQuantity(assistLimit, 'speed', scenario.system, { trim: true });
  const held = `The assist limit of ${limit} holds this bike back: the motor gives ${power(ride.stages[0]?.motorPower ?? 0)} of its ${power(climb.motorPower)} here, and without a limit the ${wayOf(climb.hill)} would take ${duration(unlimited)}.`;
  const most =
    limitPower === null
      ? ''
      : ` On this hill ${power(limitPower)} of motor would ride at the limit; more gains next to nothing, for no motor, however strong, is faster than ${duration(climb.hill.distance / assistLimit)}.`;
  return held + most;
}

import {
  assistShare,
  type Climb,
  gaugeEnergy,
  impliedEfficiency,
  type Limits,
  type UncertainResult,
} from '../model/index.ts';
import { inputOf, numberOf, PACK_KNOWN, type Remark, type Scenario } from '../scenario/index.ts';

/** What two readings of a gauge say. */
export interface Readings {
  /** J between the readings; limits from half a step at each */
  energy: Limits;
  /** the motor's work over that energy; limits from the readings, the pack and, where it is modelled, the work */
  efficiency?: Limits;
  /** why there is no efficiency */
  reason: string;
  /** the time between the readings was measured, not modelled */
  timed: boolean;
}

/** Both readings, or the sentence that says what keeps them from being two. */
export type Read = { ok: true; value: Readings } | { ok: false; reason: string; note?: Remark };

const FILL_IN = 'This needs the gauge before and after.';
const ONE = 'One reading of the gauge says nothing: fill in the other too.';
const BACKWARDS = 'The gauge must show less after the climb than before it.';

/**
 * Energy and implied efficiency from the gauge.
 * @param climb all climbs as one: what was ridden between the readings
 * @param full J that a full battery gives until its gauge shows nothing
 * @param work the motor's modelled work on it, J, for want of a measured time
 */
export function readingsOf(scenario: Scenario, climb: Climb, full: number, work: UncertainResult): Read {
  const start = inputOf(scenario, 'start');
  const end = inputOf(scenario, 'end');
  if (typeof start !== 'number' || typeof end !== 'number') {
    if (typeof start === typeof end) return { ok: false, reason: FILL_IN };
    return { ok: false, reason: FILL_IN, note: { tone: 'caution', text: ONE } };
  }
  if (start <= end) return { ok: false, reason: BACKWARDS, note: { tone: 'wrong', text: BACKWARDS, field: 'end' } };
  const readings = [full, start, end, numberOf(scenario, 'step')] as const;
  const energy = gaugeEnergy(...readings);
  const time = inputOf(scenario, 'time');
  const timed = typeof time === 'number';
  const done = timed ? workIn(climb, time) : work;
  if (!(done.value > 0 && done.value < Number.POSITIVE_INFINITY)) {
    const reason = climb.motorPower > 0 ? 'The motor does no work there.' : 'Without a motor there is none.';
    return { ok: true, value: { energy, reason, timed } };
  }
  // a pack not known better than to ±6 %, and the worst of everything together
  const pack = gaugeEnergy(...readings, PACK_KNOWN);
  const efficiency = {
    value: impliedEfficiency(done.value, pack).value,
    low: impliedEfficiency(Math.max(0, done.low), pack).low,
    high: impliedEfficiency(done.high, pack).high,
  };
  return { ok: true, value: { energy, efficiency, reason: '', timed } };
}

/** The motor's work in a measured time, J. At the mean speed that was ridden it may have been fading. */
function workIn(climb: Climb, time: number): Limits {
  const helped = climb.riderPower > 0 ? assistShare(climb.hill.distance / time, climb.assistLimit) : 0;
  const work = climb.motorPower * helped * time;
  return { value: work, low: work, high: work };
}

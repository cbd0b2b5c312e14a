import { formatQuantity, formatRange } from '../quantities/index.ts';
import {
  isGiven,
  mainCause,
  NOBODY_PEDALS,
  numberOf,
  optionalOf,
  PACK_KNOWN,
  type Remark,
  type Result,
  ROLLS_BY_ITSELF,
  resultOf,
  type Scenario,
  waitsForPedals,
} from '../scenario/index.ts';
import type { WattHoursOutcome } from './outcome.ts';

/** Implied efficiencies that a drive unit with its battery does not have. Common practice, no source. */
const IMPOSSIBLE = { low: 0.5, high: 0.9 };
/** °C below which a battery is cold: an assumption. */
const COLD = 5;

/** What the reader should know about the answer, in sentences. */
export function wattHoursRemarks(scenario: Scenario, outcome: WattHoursOutcome): Remark[] {
  const { notes, about } = outcome;
  if (!about) return notes;
  const { climb, needed, full, empty, unsure, limited } = about;
  const remarks: Remark[] = [...notes, ...labelRemarks(scenario)];
  const text = (name: string): string => {
    const { si, kind } = resultOf(outcome, name);
    return formatQuantity(si, kind, scenario.system);
  };
  const of = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system, { trim: true });
  const say = (tone: Remark['tone'], sentence: string): void => {
    remarks.push({ tone, text: sentence });
  };
  const laps = numberOf(scenario, 'laps');
  const moves = resultOf(outcome, 'time').si !== undefined;

  if (!moves) {
    say('wrong', waitsForPedals(climb) ? NOBODY_PEDALS : (resultOf(outcome, 'time').reason ?? ''));
  } else if (empty) {
    const where = climb.hill.gain > 0 ? `${text('empty-at')} of climbing` : `${text('empty-distance')}`;
    say(
      'caution',
      `The battery is empty after ${where}${laps > 1 ? `, on climb ${text('empty-lap')} of ${of(laps, 'count')}` : ''}. The rest takes ${text('time-without-help')} without help. To keep up the pace you would have to hold ${text('watts-per-kilogram-unassisted-equivalent')} instead of your ${text('watts-per-kilogram')}.`,
    );
    const reserve = numberOf(scenario, 'reserve');
    if (reserve > 0 && needed.value <= full)
      say(
        'plain',
        `Empty means that only your reserve of ${of(reserve, 'percent')} is left. With it you would have help to the top.`,
      );
    else if (reserve > 0)
      say('plain', `Your reserve of ${of(reserve, 'percent')} is left then, but would not take you to the top either.`);
    if (unsure) say('plain', 'It may last all the same: that lies within what is not known.');
  } else if (unsure) {
    say('caution', 'It may not last: at the worse end of what is not known the battery is empty before the top.');
  }
  if (moves && waitsForPedals(climb)) say('caution', ROLLS_BY_ITSELF);
  if (moves && climb.motorPower === 0 && needed.value > 0)
    say('plain', 'Without a motor the battery runs only the display and lights.');
  const cause = moves && climb.motorPower > 0 && mainCause(needed);
  if (cause) say('plain', `Most of the doubt about what a climb takes is ${cause.cause}.`);
  if (limited && moves && climb.assistLimit !== null)
    say(
      'caution',
      `The assist limit of ${of(climb.assistLimit, 'speed')} holds the motor back ${climb.hill.profile ? 'on part of the way' : 'here'}: it gives less than you entered, and takes less.`,
    );
  remarks.push(...stateRemarks(scenario));
  remarks.push(...timeRemarks(scenario, outcome));
  remarks.push(...gaugeRemarks(scenario, outcome));
  if (laps > 1)
    say('plain', 'Only the ways up are counted. Rolling down takes what display and lights take, and is left out.');
  return remarks;
}

/** Which of volts, amp-hours and watt-hours count. */
function labelRemarks(scenario: Scenario): Remark[] {
  const [volts, charge] = ['volts', 'amp-hours'].map((name) => isGiven(scenario, name));
  const caution = (text: string): Remark => ({ tone: 'caution', text });
  if (volts && charge) {
    const text = 'Watt-hours and volts with amp-hours are both given: volts with amp-hours count.';
    return isGiven(scenario, 'battery') ? [{ ...caution(text), field: 'battery' }] : [];
  }
  if (!volts && !charge) return [];
  const [given, missing] = volts ? ['volts', 'amp-hours'] : ['amp-hours', 'volts'];
  return [caution(`Only ${given} are given. Without ${missing} they say nothing, so the battery’s watt-hours count.`)];
}

/** Cold and age in words. */
function stateRemarks(scenario: Scenario): Remark[] {
  const cold = numberOf(scenario, 'cold');
  const temperature = numberOf(scenario, 'temperature');
  if (cold < 1 && numberOf(scenario, 'health') < 1)
    return [
      { tone: 'plain', text: 'What the cold takes comes back when the battery is warm again. What age took does not.' },
    ];
  if (cold < 1) return [{ tone: 'plain', text: 'What the cold takes comes back when the battery is warm again.' }];
  if (temperature >= COLD || isGiven(scenario, 'cold')) return [];
  const shown = formatQuantity(temperature, 'temperature', scenario.system);
  return [
    {
      tone: 'caution',
      text: `At ${shown} a battery that was kept outdoors gives less. That is not counted while “Left by the cold” is 100\u202f%.`,
    },
  ];
}

/** A measured time that the other inputs do not allow. */
function timeRemarks(scenario: Scenario, outcome: WattHoursOutcome): Remark[] {
  const measured = optionalOf(scenario, 'time');
  const { si, low = si, high = si } = resultOf(outcome, 'time');
  if (measured === undefined || si === undefined || low === undefined || high === undefined) return [];
  if (low <= measured && measured <= high) return [];
  const [modelled, taken] = [
    formatRange(low, high, 'duration', scenario.system),
    formatQuantity(measured, 'duration', scenario.system),
  ];
  return [
    {
      tone: 'caution',
      field: 'time',
      text: `The measured ${taken} and the other inputs contradict each other: with them the model takes ${modelled}. Check the time, the motor, your power and the hill.`,
    },
  ];
}

/** What the two readings say about the other inputs, and what would make them say more. */
function gaugeRemarks(scenario: Scenario, outcome: WattHoursOutcome): Remark[] {
  const { efficiency, timed = false, reason = '' } = outcome.about?.read ?? {};
  const [start, end] = ['start', 'end'].map((name) => optionalOf(scenario, name));
  if (start !== undefined && end !== undefined && start <= end) return [{ tone: 'wrong', text: reason, field: 'end' }];
  if (start !== end && (start === undefined || end === undefined))
    return [{ tone: 'caution', text: 'One reading of the gauge says nothing: fill in the other too.' }];
  const { si, low, high } = resultOf(outcome, 'implied-efficiency');
  if (!efficiency || si === undefined) return [];
  const range =
    low !== undefined && high !== undefined
      ? formatRange(low, high, 'percent', scenario.system)
      : `${formatQuantity(low, 'percent', scenario.system)} or more`;
  const found = `By the gauge the drive turned ${range} of what left the battery into work at the crank`;
  const wrong = (why: string): Remark => ({ tone: 'wrong', text: `${found}: ${why}` });
  const fewer = numberOf(scenario, 'laps') > 1 ? 'the readings belong to fewer climbs, ' : '';
  const remarks: Remark[] = [];
  if (efficiency.low > IMPOSSIBLE.high)
    remarks.push(
      wrong(
        `more than any drive does, so an input is wrong. The likely ones: ${fewer}the motor gives less than you entered, the climb was shorter or quicker, or the battery holds more.`,
      ),
    );
  else if (efficiency.high < IMPOSSIBLE.low)
    remarks.push(
      wrong(
        'less than any drive that works, so an input is wrong. The likely ones: the motor gave more than you entered, it helped elsewhere between the readings, or the battery holds less for its age or the cold.',
      ),
    );
  else {
    const beyond = si > IMPOSSIBLE.high || si < IMPOSSIBLE.low;
    const doubt = beyond
      ? ` The middle of that is not believable, but the range reaches what is: ${timed ? 'two readings so coarse cannot tell' : 'readings and a time that was not measured cannot tell'}.`
      : '';
    remarks.push({ tone: beyond ? 'caution' : 'plain', text: `${found}.${doubt}` });
  }
  const better = [
    ...(timed ? [] : ['a measured time']),
    'a longer climb or more of them between the readings',
    'a gauge with finer steps',
    'a meter on the battery',
  ];
  remarks.push({
    tone: 'plain',
    text: `The range holds half a step at each reading and a pack known to ±${formatQuantity(PACK_KNOWN, 'percent', scenario.system)}${timed ? '' : ', and what is not known about the climb'}. To narrow it: ${better.join(', ')}.`,
  });
  return remarks;
}

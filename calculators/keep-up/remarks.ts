import { formatQuantity } from '../quantities/index.ts';
import {
  doubts,
  mainCause,
  numberOf,
  parameterOf,
  type Remark,
  type Result,
  resultOf,
  type Scenario,
} from '../scenario/index.ts';
import { enduranceRemarks, wayOf } from '../scenario/limit-remarks.ts';
import type { KeepUpOutcome } from './outcome.ts';

/** W per kilogram of body that competitive riders averaged in simulated races without assistance (Smekal et al. 2015, abstract). */
const RACE = 2.66;

/** W: a motor of more than this is no bicycle's, so what the limit does to it is of no interest. An assumption. */
const STRONGEST = 1000;

/** W per kilogram of body that the best riders in the world hold for half an hour: a value from memory. */
const BEST = 6.5;

/** s: whoever tells so little time apart from a sprint is told nothing. */
const NO_SPRINT = 600;

/** More watts than anybody holds for that time, s. Body and kit in kg; nobody at all rides with more than a field takes. */
const isBeyondAnybody = (power: number, time: number, rider: number): boolean =>
  power > parameterOf('power').max || (time >= NO_SPRINT && power > BEST * rider);

/** What the reader should know about the answer, in sentences. */
export function keepUpRemarks(scenario: Scenario, outcome: KeepUpOutcome): Remark[] {
  const { notes, about } = outcome;
  if (!about) return notes;
  const { you, companion, pace, motorPower, rider, motor, limitPower, endures } = about;
  const remarks: Remark[] = [...notes];
  const say = (tone: Remark['tone'], text: string): void => {
    remarks.push({ tone, text });
  };
  const of = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system, { trim: true });
  const result = (name: string): Result => resultOf(outcome, name);
  const text = (name: string): string => of(result(name).si ?? Number.NaN, result(name).kind);

  if (companion.riderPower === 0 && companion.motorPower > 0)
    say('wrong', 'The companion does not pedal: a motor that assists gives nothing then.');
  if (!(pace > 0)) {
    if (companion.riderPower > 0 || companion.motorPower === 0) say('wrong', result('companion-time').reason ?? '');
    return remarks;
  }
  if (you.riderPower === 0 && you.motorPower > 0)
    say('caution', 'You do not pedal: a motor that assists gives nothing then.');
  else if (result('time').si === undefined) say('caution', `As you are: ${result('time').reason}`);

  const needed = result('rider-needed');
  const isBehind = needed.si !== undefined && needed.si > you.riderPower;
  if (needed.si !== undefined) {
    const cause = mainCause(rider);
    if (cause && Number.isFinite(cause.low - cause.high))
      say(
        'plain',
        `Most of the doubt is ${cause.cause}: that alone puts your power anywhere from ${of(Math.max(0, cause.low), 'power')} to ${of(cause.high, 'power')}.${cause.cause === doubts.drag?.cause ? ' What slows you both alike hardly counts.' : ''}`,
      );
    if (isBehind) {
      const time = rideTime(outcome);
      const tires = enduranceRemarks(scenario, needed.si, endures, time, `The ${wayOf(you.hill)}`);
      remarks.push(...tires);
      if (endures === undefined)
        say(
          'plain',
          'Whether you hold that to the top is a question of endurance: fill in the power you hold for long, under “More”.',
        );
      else if (tires.length === 0) say('plain', 'By what you hold for long, you can keep that up to the top.');
      // enduranceRemarks says it already
      if (isBeyondAnybody(needed.si, time, numberOf(scenario, 'rider')))
        say(
          'caution',
          `That is more than anybody holds for so long: a handful of riders in the world hold about ${of(BEST, 'specific-power')} of body for half an hour (value from memory). Ride behind, or with more motor.`,
        );
      else if (tires.length === 0 && needed.si > RACE * numberOf(scenario, 'rider'))
        say(
          'caution',
          `That is a hard effort: competitive riders averaged ${of(RACE, 'specific-power')} of body in simulated races (Smekal et al. 2015). If you are not used to such efforts, ask a doctor first.`,
        );
    }
  }
  if (result('binds').text === 'battery')
    say(
      'caution',
      'At that pace your battery is empty before the top: the last part is all legs, and the watts that you need have it in them. The companion’s battery is taken to last.',
    );
  if (you.assistLimit !== null && you.motorPower > 0 && result('binds').text === 'assist-limit') {
    const limit = of(you.assistLimit, 'speed');
    const there = `Your companion rides at ${text('companion-speed')}`;
    if (you.hill.profile)
      say(
        'caution',
        `On part of the way the pace is close to your assist limit of ${limit} or beyond it: there your motor gives less or nothing, and your legs make up for it.`,
      );
    else if (pace >= you.assistLimit)
      say(
        'caution',
        `${there}, which your assist limit of ${limit} does not help you to: up there the watts are all from your legs.`,
      );
    else
      say(
        'caution',
        `${there}, close to your assist limit of ${limit}, where ${of(motorPower, 'power')} of your motor’s ${of(you.motorPower, 'power')} are left. Your legs make up the rest.`,
      );
  }
  if (motor === 'beyond-limit' && you.motorPower === 0)
    say('caution', 'No motor with your assist limit would take you along: the companion rides faster than it helps.');
  if (typeof motor === 'number' && about.highest !== result('class-needed').text)
    say(
      'plain',
      about.highest
        ? 'At the upper end of its range, the motor you need belongs to a stronger class.'
        : 'Within what is not known, your companion may ride faster than your assist limit helps: no motor is enough then.',
    );
  if (isBehind && you.assistLimit !== null && limitPower !== null && limitPower < STRONGEST && you.riderPower > 0)
    say(
      'plain',
      `However strong a motor is, with your legs it gives at most ${text('limit-power')} here: that is what the hill takes at your assist limit of ${of(you.assistLimit, 'speed')}. No motor gets you up in less than ${text('limit-time')}.`,
    );
  return remarks;
}

const rideTime = (outcome: KeepUpOutcome): number => resultOf(outcome, 'companion-time').si ?? Number.NaN;

import {
  type Climb,
  finalRise,
  type Heat,
  type Hill,
  heldPower,
  hillFromGain,
  holdTime,
  rideClimb,
  rideStages,
  type Stage,
  torqueRatio,
  type UncertainResult,
} from '../model/index.ts';
import {
  climbDoubts,
  climbOf,
  exact,
  heatOf,
  hillOf,
  none,
  numberOf,
  type Outcome,
  propagateNamed,
  type Remark,
  type Result,
  ranged,
  type Scenario,
  STANDS_STILL,
} from '../scenario/index.ts';

export interface HoldingPeakPowerOutcome extends Outcome {
  /** sentences about what was entered */
  notes: Remark[];
  /** the climb as it is ridden; empty where the bike stands still */
  stages: Stage[];
  /** what the sentences are about; absent where there is no hill */
  about?: {
    climb: Climb;
    heat: Heat;
    hold: UncertainResult;
    /** s until heat limits it on this hill, beyond the top where it does not */
    limitTime: UncertainResult;
    /** torque over what is held for ever, at the peak; the same in a lower gear, and its cadence in rpm */
    ratio: number;
    lower: { ratio: number; cadence: number };
    /** heat limits the motor on this hill */
    hot: boolean;
    /** within the ranges it may come out the other way */
    unsure: boolean;
    /** the assist limit takes part of the peak on this hill */
    faded: boolean;
  };
}

/** What a lower gear adds to the cadence, rpm: about what one sprocket of a wide cassette does. Common practice, no source. */
const LOWER_GEAR = 10;

const NO_MOTOR = 'There is no motor.';

/** How long a motor holds its peak, and what heat does to a climb. */
export function holdingPeakPower(scenario: Scenario): HoldingPeakPowerOutcome {
  const setting = hillOf(scenario);
  if (setting.ok) return climbed(scenario, setting.value, setting.notes);
  // the results of any hill, none of them with a value
  const { results } = climbed(scenario, hillFromGain(1000, 0), []);
  return {
    results: results.map(({ name, kind }) => none(name, kind, setting.problem)),
    notes: setting.notes,
    stages: [],
  };
}

function climbed(scenario: Scenario, hill: Hill, notes: Remark[]): HoldingPeakPowerOutcome {
  const climb = climbOf(scenario, hill, 0);
  const { motorPower: peak } = climb;
  const cadence = numberOf(scenario, 'cadence');
  // the example says what its motor holds, so there always is one
  const heat = heatOf(scenario, 0) as Heat;
  const ratio = torqueRatio(peak, cadence, heat);
  const quicker = cadence + LOWER_GEAR;
  const lower = { cadence: quicker, ratio: torqueRatio(peak, quicker, heat) };

  const { inputs, at, reservesAt } = climbDoubts(scenario);
  const spread = propagateNamed(inputs, (values) => {
    const there = at(climb, values);
    const warming = reservesAt({ heat }, values).heat ?? heat;
    const cold = rideClimb(there);
    const ridden = rideStages(there, { heat: warming });
    // on this hill it may give less than its peak, and then holds that for longer
    const until = holdTime(torqueRatio(cold.motorPower, cadence, warming), warming);
    return {
      'hold-time': holdTime(ratio, warming),
      'hold-time-lower-gear': holdTime(lower.ratio, warming),
      'final-rise': finalRise(ratio, warming.fixedLosses),
      'mean-power': ridden.motorPower,
      time: ridden.time,
      'time-cold': cold.time,
      'time-lost': ridden.time - cold.time,
      'limit-height': until * cold.verticalSpeed,
      'limit-distance': until * cold.speed,
      'limit-time': until,
    };
  });

  const cold = rideClimb(climb);
  const { stages } = rideStages(climb, { heat });
  const moves = Number.isFinite(cold.time);
  const hot = stages.some(({ limit }) => limit === 'heat');
  const faded = climb.riderPower > 0 && cold.motorPower < peak;
  const limitTime = spread['limit-time'];

  type Varying = keyof typeof spread;
  /** the result of that name, or the reason why there is none */
  const give = (name: Varying, kind: Result['kind'], without: string | false, reason: string): Result =>
    without ? none(name, kind, without) : ranged(name, kind, spread[name], reason, undefined, 0);
  const ofMotor = (name: Varying, kind: Result['kind']): Result =>
    give(name, kind, peak === 0 && NO_MOTOR, 'It holds this for ever.');
  const ofClimb = (name: Varying, kind: Result['kind'], without: string | false = false): Result =>
    give(name, kind, moves ? without : STANDS_STILL, STANDS_STILL);
  const notHot =
    !hot &&
    (peak === 0
      ? NO_MOTOR
      : limitTime.value < Number.POSITIVE_INFINITY
        ? 'The top comes first.'
        : 'Heat never limits it here.');
  /** where heat limits; what lies beyond the top is no bound */
  const upTo = (end: number, result: Result): Result => {
    if (result.high !== undefined && result.high > end) delete result.high;
    return result;
  };
  const results: Result[] = [
    ofMotor('hold-time', 'duration'),
    ofMotor('hold-time-lower-gear', 'duration'),
    exact('torque-ratio', 'percent', ratio, ''),
    ofMotor('final-rise', 'percent'),
    exact('held-power', 'power', Math.min(peak, heldPower(cadence, heat)), ''),
    ofClimb('mean-power', 'power'),
    ofClimb('time', 'duration'),
    ofClimb('time-cold', 'duration'),
    ofClimb('time-lost', 'duration'),
    upTo(
      hill.gain,
      ofClimb('limit-height', 'height', notHot || (hill.gain <= 0 && 'This road gains no height: see the distance.')),
    ),
    upTo(hill.distance, ofClimb('limit-distance', 'distance', notHot)),
    upTo(cold.time, ofClimb('limit-time', 'duration', notHot)),
    { name: 'binds', kind: 'text', text: hot ? 'heat' : faded ? 'assist-limit' : 'none' },
  ];
  const unsure = hot ? !(limitTime.high < cold.time) : limitTime.low < cold.time;
  return {
    results,
    notes,
    stages,
    about: { climb, heat, hold: spread['hold-time'], limitTime, ratio, lower, hot, unsure, faded },
  };
}

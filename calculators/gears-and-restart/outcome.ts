import {
  crankTorque,
  type Drive,
  type Gear,
  GRAVITY,
  gearSpeed,
  holdingForce,
  motorBound,
  pedalTorque,
  steepestGrade,
  type UncertainResult,
  wheelForce,
  wheelTorque,
} from '../model/index.ts';
import {
  efficiencyDoubt,
  exact,
  isGiven,
  motorOf,
  numberOf,
  type Outcome,
  type Result,
  ranged,
  rollingDoubt,
  type Scenario,
} from '../scenario/index.ts';
import { propagateNamed } from '../scenario/named.ts';

export type Verdict = 'holds-and-restarts' | 'holds' | 'too-steep';

/** What the sentences and the chart need. */
export interface GearsAndRestartOutcome extends Outcome {
  /** the ramp, tan */
  grade: number;
  verdict: Verdict;
  held: UncertainResult;
  /** wheel turns for one turn of the crank in the lowest gear */
  turns: number;
  /** m/s at the cadence in that gear */
  speed: number;
  /** there is a motor, and the rider brings it out */
  helped: boolean;
}

const HOLDS_ANYTHING = 'That force carries more than the weight: no ramp is too steep for it.';

/** Torques of rider and motor, N·m: pedalling at a cadence, and at the first push on a level pedal. */
interface Torques {
  pedalling: { rider: number; motor: number };
  push: { rider: number; motor: number };
}

/**
 * A motor whose axle turns `turns` times for each turn of the crank: 1 at the crank itself, as often as the wheel in a hub.
 * It gives what its torque, its peak and its support allow. At the first push nothing turns: torque, and support times the rider's.
 */
function torquesOf(
  drive: Drive & { torque: number; support: number; cadence: number },
  turns: number,
  push: number,
): Torques {
  const axle = drive.cadence * turns;
  return {
    pedalling: {
      rider: crankTorque(drive.riderPower, drive.cadence),
      motor: crankTorque(motorBound(drive, axle).power, axle),
    },
    push: { rider: push, motor: drive.motorPower > 0 ? Math.min(drive.torque, (drive.support * push) / turns) : 0 },
  };
}

/** Steepest grade; beyond every bound where the force carries more than the weight. */
const steepest = (force: number, mass: number, rolling: number): number =>
  steepestGrade(force, mass, rolling) ?? Number.POSITIVE_INFINITY;

/** Which ramps a motor and a rider hold in the lowest gear, and on which they can start again; the same torque at the crank and in a hub. */
export function gearsAndRestart(scenario: Scenario): GearsAndRestartOutcome {
  const number = (name: string): number => numberOf(scenario, name);
  const grade = number('grade');
  const rider = number('rider');
  const mass = rider + number('bike');
  const gear: Gear = { wheelRadius: number('wheel'), turns: number('ring') / number('sprocket') };
  const motorPower = motorOf(scenario, 0);
  const drive = {
    riderPower: number('power'),
    motorPower,
    assistLimit: null,
    efficiency: 1,
    torque: motorPower > 0 ? number('torque') : 0,
    support: number('support'),
    cadence: number('cadence'),
  };
  const push = pedalTorque(number('push') * rider * GRAVITY, number('crank'));
  const crank = torquesOf(drive, 1, push);
  const hub = torquesOf(drive, gear.turns, push);

  const inputs = [
    rollingDoubt(number('rolling'), isGiven(scenario, 'rolling')),
    efficiencyDoubt('drive', number('drive')),
  ];
  const spread = propagateNamed(inputs, ([rolling = 0, efficiency = 1]) => {
    const throughChain = (torque: number): number => efficiency * wheelForce(torque, gear);
    const held = ({ rider: legs, motor }: Torques['push']): number =>
      steepest(throughChain(legs + motor), mass, rolling);
    // a hub turns the wheel itself: its torque does not pass the chain
    const heldByHub = ({ rider: legs, motor }: Torques['push']): number =>
      steepest(throughChain(legs) + motor / gear.wheelRadius, mass, rolling);
    return {
      'steepest-held': held(crank.pedalling),
      'steepest-restart': held(crank.push),
      'steepest-motor': held({ rider: 0, motor: drive.torque }),
      'rider-alone': held({ rider: crank.pedalling.rider, motor: 0 }),
      'steepest-hub-held': heldByHub(hub.pedalling),
      'steepest-hub-restart': heldByHub(hub.push),
      'steepest-hub': heldByHub({ rider: 0, motor: drive.torque }),
      'wheel-torque': efficiency * wheelTorque(drive.torque, gear),
      'wheel-force': throughChain(crank.pedalling.rider + crank.pedalling.motor),
      'force-needed': holdingForce(mass, grade, rolling),
    };
  });
  const of = (name: keyof typeof spread, kind: Result['kind']): Result =>
    ranged(name, kind, spread[name], HOLDS_ANYTHING);
  const speed = gearSpeed(drive.cadence, gear);
  const held = spread['steepest-held'];
  const verdict: Verdict =
    held.value < grade ? 'too-steep' : spread['steepest-restart'].value < grade ? 'holds' : 'holds-and-restarts';
  return {
    results: [
      of('steepest-held', 'grade'),
      of('steepest-restart', 'grade'),
      of('steepest-motor', 'grade'),
      of('rider-alone', 'grade'),
      of('steepest-hub-held', 'grade'),
      of('steepest-hub-restart', 'grade'),
      of('steepest-hub', 'grade'),
      of('wheel-torque', 'torque'),
      of('wheel-force', 'force'),
      of('force-needed', 'force'),
      exact('speed', 'speed', speed, ''),
      { name: 'verdict', kind: 'text', text: verdict },
    ],
    grade,
    verdict,
    held,
    turns: gear.turns,
    speed,
    helped: crank.pedalling.motor > 0,
  };
}

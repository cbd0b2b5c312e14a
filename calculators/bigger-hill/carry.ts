import {
  type Calibration,
  type Climb,
  type ControlRun,
  calibrate,
  FADE_WIDTH,
  type Hill,
  hillFromGain,
  type InferredMotor,
  inferMotor,
  isAlongProfile,
  proportionalTime,
  type Reserves,
  rideStages,
  type StagedClimb,
} from '../model/index.ts';
import { COVERAGE, DRAG_HALF_WIDTH, POWER_REPEATABILITY } from '../scenario/index.ts';
import { TOP_SPEED } from '../scenario/parameters/profile.ts';
import type { Riding } from '../scenario/rides.ts';

/** A measured climb and the hill it is carried to, all values in SI. */
export interface Measurement {
  hill: Hill;
  density: number;
  headWind: number;
  efficiency: number;
  dragArea: number;
  /** width of the fade before an assist limit, m/s, where the run itself does not give it away */
  fadeWidth: number;
  /** C_rr to use when there is no control run */
  rolling: number;
  controls: readonly ControlRun[];
  runs: readonly { time: number; riderPower: number; mass: number; assistLimit: number | null; reserves: Reserves }[];
  target: {
    hill: Hill;
    density: number;
    headWind: number;
    riderPower: number;
    /** kg more or less than on the measured hill */
    riderMassChange: number;
    /** C_rr there; null: as on the measured hill after calibration */
    rolling: number | null;
    /** added to that C_rr: how far another surface may differ */
    rollingChange: number;
  };
}

/** One bike carried over. */
export interface Carried {
  motor: InferredMotor;
  /** the climb on the other hill, with and without the assist limit */
  climb: Climb;
  reserves: Reserves;
  ride: StagedClimb;
  freeTime: number;
  proportionalTime: number;
}

/**
 * The whole way from times to times: calibrate the measured hill, read each motor back, ride the other hill with it.
 * @param riding rides the other hill
 */
export function carry(
  m: Measurement,
  riding: Riding = rideStages,
): {
  calibration: Calibration | null;
  rolling: number;
  bikes: Carried[];
} {
  const { hill, density, headWind, efficiency, target } = m;
  const calibration =
    m.controls.length > 0
      ? calibrate(m.controls, {
          hill,
          density,
          headWind,
          efficiency,
          dragArea: m.dragArea,
          dragAreaUncertainty: DRAG_HALF_WIDTH / COVERAGE,
          powerRepeatability: POWER_REPEATABILITY,
        })
      : null;
  const rolling = calibration?.rolling ?? m.rolling;
  const dragArea = calibration?.dragArea ?? m.dragArea;
  // Control runs that contradict each other may ask for a drag below zero, which the page names: with it no bike settles to a speed along a hill in pieces.
  const dragThere = target.hill.profile ? Math.max(0, dragArea) : dragArea;
  const bikes = m.runs.map(({ reserves, ...run }): Carried => {
    const measured = { hill, density, headWind, efficiency, dragArea, rolling, ...run };
    const motor = inferMotor(measured, run.time);
    const climb: Climb = {
      ...measured,
      hill: target.hill,
      dragArea: dragThere,
      topSpeed: target.hill.profile && TOP_SPEED,
      density: target.density,
      headWind: target.headWind,
      riderPower: target.riderPower,
      mass: run.mass + target.riderMassChange,
      rolling: (target.rolling ?? rolling) + target.rollingChange,
      // a motor below zero is a contradiction that the page names; carried over it counts as none
      motorPower: Math.max(0, motor.mean),
      // a run inside the fade shows where its motor stands; one above the limit shows that the limit is another
      fadeWidth: motor.fadeWidth ?? m.fadeWidth,
      assistLimit: motor.aboveLimit ? null : run.assistLimit,
    };
    return {
      motor,
      climb,
      reserves,
      ride: riding(climb, reserves),
      get freeTime() {
        return riding({ ...climb, assistLimit: null }, {}).time;
      },
      proportionalTime:
        hill.gain > 0 && target.hill.gain > 0 ? proportionalTime(run.time, hill.gain, target.hill.gain) : Number.NaN,
    };
  });
  return { calibration, rolling, bikes };
}

/** The bike rides in the fade before its assist limit on the other hill, with a motor that helps. A run inside the fade began its own where it was ridden. */
export function isLimited({ climb, ride }: Carried): boolean {
  if (isAlongProfile(ride)) return ride.spans.some(({ limit }) => limit === 'assist-limit');
  const speed = ride.stages[0]?.speed ?? 0;
  const { riderPower, motorPower, assistLimit, fadeWidth = FADE_WIDTH } = climb;
  return riderPower > 0 && motorPower > 0 && assistLimit !== null && speed > (assistLimit - fadeWidth) * (1 - 1e-9);
}

/** A hill whose height and length are off by these factors; null where that is not a hill any more. */
export function misread(hill: Hill, distanceFactor: number, gainFactor: number): Hill | null {
  const distance = hill.distance * distanceFactor;
  const gain = hill.gain * gainFactor;
  return gain < distance ? hillFromGain(distance, gain) : null;
}

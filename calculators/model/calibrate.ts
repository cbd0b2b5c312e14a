import { BEARINGS_CONSTANT, BEARINGS_PER_SPEED, GRAVITY } from './constants.ts';
import type { Hill } from './hill.ts';

/** A run of known rider power without assistance, up the hill that is to be calibrated. */
export interface ControlRun {
  /** s */
  time: number;
  /** W at the crank */
  riderPower: number;
  /** kg, rider, kit and bike */
  mass: number;
}

/** What is held while calibrating. */
export interface CalibrationSetting {
  hill: Hill;
  density: number;
  headWind: number;
  efficiency: number;
  /** prior for C_dA, m², with its standard uncertainty: it enters the fit as one more observation */
  dragArea: number;
  dragAreaUncertainty: number;
  /** relative standard uncertainty of one run's rider power */
  powerRepeatability: number;
}

/** C_rr and C_dA that the control runs support. Standard uncertainties, from repeatability and the prior alone. */
export interface Calibration {
  rolling: number;
  rollingUncertainty: number;
  dragArea: number;
  dragAreaUncertainty: number;
  /** the data halved the prior's uncertainty or brought it below 0.05 m² (95 %): only then is C_dA worth reporting */
  dragAreaIsInformed: boolean;
}

/**
 * Fits C_rr to control runs with C_dA held by its prior: weighted least squares, linear in both.
 * Each run says `η P / v − m g sin θ − bearings = m g cos θ · C_rr + ½ ρ u|u| · C_dA`. With one run C_dA stays at its prior
 * and C_rr absorbs every error of mass, gain and meter: it is an effective value for this hill.
 * @throws RangeError without a control run
 */
export function calibrate(runs: readonly ControlRun[], setting: CalibrationSetting): Calibration {
  if (runs.length === 0) throw new RangeError('Calibration needs at least one control run.');
  const { hill, density, headWind, efficiency } = setting;
  // normal equations of (C_rr, C_dA), the prior first
  const priorWeight = 1 / setting.dragAreaUncertainty ** 2;
  let rr = 0;
  let ra = 0;
  let aa = priorWeight;
  let ry = 0;
  let ay = priorWeight * setting.dragArea;
  for (const run of runs) {
    const v = hill.distance / run.time;
    const u = v + headWind;
    const weight = run.mass * GRAVITY;
    const y = (efficiency * run.riderPower) / v - weight * hill.sin - BEARINGS_CONSTANT - BEARINGS_PER_SPEED * v;
    const perRolling = weight * hill.cos;
    const perDragArea = 0.5 * density * u * Math.abs(u);
    const w = (v / (efficiency * run.riderPower * setting.powerRepeatability)) ** 2;
    rr += w * perRolling * perRolling;
    ra += w * perRolling * perDragArea;
    aa += w * perDragArea * perDragArea;
    ry += w * perRolling * y;
    ay += w * perDragArea * y;
  }
  const determinant = rr * aa - ra * ra;
  const dragAreaUncertainty = Math.sqrt(rr / determinant);
  return {
    rolling: (aa * ry - ra * ay) / determinant,
    rollingUncertainty: Math.sqrt(aa / determinant),
    dragArea: (rr * ay - ra * ry) / determinant,
    dragAreaUncertainty,
    dragAreaIsInformed: dragAreaUncertainty < 0.5 * setting.dragAreaUncertainty || 1.96 * dragAreaUncertainty < 0.05,
  };
}

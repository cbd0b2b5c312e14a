/*
 * The whole vocabulary, for prose, tables, tests and scripts. A calculator's view imports `index.ts` and its own description instead:
 * its reader need not load the others'.
 */
import { biggerHill } from './definitions/bigger-hill.ts';
import { climbTime } from './definitions/climb-time.ts';
import { gearsAndRestart } from './definitions/gears-and-restart.ts';
import { holdingPeakPower } from './definitions/holding-peak-power.ts';
import { keepUp } from './definitions/keep-up.ts';
import { plan } from './definitions/plan.ts';
import { powerToWeight } from './definitions/power-to-weight.ts';
import { sideBySide } from './definitions/side-by-side.ts';
import { torqueAtCadence } from './definitions/torque-at-cadence.ts';
import { wattHours } from './definitions/watt-hours.ts';
import { whatChangesIt } from './definitions/what-changes-it.ts';
import { yourHill } from './definitions/your-hill.ts';
import { GAUGE, USABLE } from './parameters/battery.ts';
import { CHANGE } from './parameters/change.ts';
import { CLIMB } from './parameters/climb.ts';
import { COMPANION } from './parameters/companion.ts';
import { ENDURANCE } from './parameters/endurance.ts';
import { GEARS } from './parameters/gears.ts';
import { HEAT } from './parameters/heat.ts';
import { CARRIED, TIMED } from './parameters/measured.ts';
import { MOTOR } from './parameters/motor.ts';
import { PLAN } from './parameters/plan.ts';
import { DOWNHILL, PROFILE, TARGET_PROFILE } from './parameters/profile.ts';
import { RESERVE } from './parameters/reserve.ts';
import { WARMING } from './parameters/warming.ts';
import type { Calculator, CalculatorName, Parameter } from './schema.ts';

export * from './index.ts';
export * from './presets.ts';

/** Every calculator, in the order of the site. */
export const calculators: Readonly<Record<CalculatorName, Calculator>> = {
  'climb-time': climbTime,
  'side-by-side': sideBySide,
  'bigger-hill': biggerHill,
  'power-to-weight': powerToWeight,
  'torque-at-cadence': torqueAtCadence,
  'gears-and-restart': gearsAndRestart,
  'holding-peak-power': holdingPeakPower,
  'watt-hours': wattHours,
  'keep-up': keepUp,
  'what-changes-it': whatChangesIt,
  'your-hill': yourHill,
  plan,
};

/** Every parameter, each once, those that a calculator of this page does not read included. */
export const parameters: readonly Parameter[] = [
  CLIMB,
  TIMED,
  CARRIED,
  MOTOR,
  ENDURANCE,
  HEAT,
  WARMING,
  RESERVE,
  USABLE,
  GAUGE,
  GEARS,
  COMPANION,
  CHANGE,
  PLAN,
  PROFILE,
  TARGET_PROFILE,
  DOWNHILL,
].flat();

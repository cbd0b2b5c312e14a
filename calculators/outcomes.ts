/** Every calculator's outcome by name: for prose, tables and preview cards at build, and for tests. A view imports only its own. */
import { biggerHill } from './bigger-hill/outcome.ts';
import { biggerHillRemarks } from './bigger-hill/remarks.ts';
import { climbTime } from './climb-time/outcome.ts';
import { climbTimeRemarks } from './climb-time/remarks.ts';
import { gearsAndRestart } from './gears-and-restart/outcome.ts';
import { gearsAndRestartRemarks } from './gears-and-restart/remarks.ts';
import { holdingPeakPower } from './holding-peak-power/outcome.ts';
import { holdingPeakPowerRemarks } from './holding-peak-power/remarks.ts';
import { keepUp } from './keep-up/outcome.ts';
import { keepUpRemarks } from './keep-up/remarks.ts';
import { plan } from './plan/outcome.ts';
import { planRemarks } from './plan/remarks.ts';
import { powerToWeight } from './power-to-weight/outcome.ts';
import { powerToWeightRemarks } from './power-to-weight/remarks.ts';
import {
  type CalculatorName,
  type Outcome,
  type Remark,
  type Remarks,
  readLink,
  type Scenario,
} from './scenario/vocabulary.ts';
import { sideBySide } from './side-by-side/outcome.ts';
import { sideBySideRemarks } from './side-by-side/remarks.ts';
import { torqueAtCadence } from './torque-at-cadence/outcome.ts';
import { torqueAtCadenceRemarks } from './torque-at-cadence/remarks.ts';
import { wattHours } from './watt-hours/outcome.ts';
import { wattHoursRemarks } from './watt-hours/remarks.ts';
import { whatChangesIt } from './what-changes-it/outcome.ts';
import { whatChangesItRemarks } from './what-changes-it/remarks.ts';
import { yourHill } from './your-hill/outcome.ts';
import { yourHillRemarks } from './your-hill/remarks.ts';

type Answer = Outcome & { remarks: Remark[] };

/** What computes a calculator's results, and what writes its sentences, in one. */
const both =
  <O extends Outcome>(outcome: (scenario: Scenario) => O, remarks: Remarks<O>) =>
  (scenario: Scenario): Answer => {
    const answer = outcome(scenario);
    return { ...answer, remarks: remarks(scenario, answer) };
  };

const answers: Readonly<Record<CalculatorName, (scenario: Scenario) => Answer>> = {
  'climb-time': both(climbTime, climbTimeRemarks),
  'side-by-side': both(sideBySide, sideBySideRemarks),
  'bigger-hill': both(biggerHill, biggerHillRemarks),
  'power-to-weight': both(powerToWeight, powerToWeightRemarks),
  'torque-at-cadence': both(torqueAtCadence, torqueAtCadenceRemarks),
  'gears-and-restart': both(gearsAndRestart, gearsAndRestartRemarks),
  'holding-peak-power': both(holdingPeakPower, holdingPeakPowerRemarks),
  'watt-hours': both(wattHours, wattHoursRemarks),
  'keep-up': both(keepUp, keepUpRemarks),
  'what-changes-it': both(whatChangesIt, whatChangesItRemarks),
  'your-hill': both(yourHill, yourHillRemarks),
  plan: both(plan, planRemarks),
};

/** What a calculator answers in a scenario, with its sentences. */
export function answerOf(scenario: Scenario): Answer {
  return answers[scenario.calculator](scenario);
}

/** What a calculator answers when it is opened with this query (`distance=1mi&gain=550ft`). */
export function outcomeOf(calculator: CalculatorName, query: string): Answer {
  return answerOf(readLink(calculator, query));
}

import { formatQuantity } from '../quantities/index.ts';
import {
  bikeName,
  calculatorOf,
  inputOf,
  isGiven,
  numberOf,
  type Remark,
  type Result,
  resultOf,
  type Scenario,
} from '../scenario/index.ts';
import { clockText } from './clock.ts';
import type { PlanAbout, PlanOutcome } from './outcome.ts';

/** m/s that every bike should stay below its limit: there its motor begins to give less. */
const BELOW_LIMIT = 3 / 3.6;

/** What the tester should know about the plan, in sentences. */
export function planRemarks(scenario: Scenario, outcome: PlanOutcome): Remark[] {
  const { notes, about } = outcome;
  if (!about) return notes;
  return [
    ...notes,
    ...findRemarks(scenario, outcome, about),
    ...scatterRemarks(scenario, outcome, about),
    ...legsRemarks(scenario, outcome, about),
    ...lightRemarks(scenario, outcome, about),
    ...bikeRemarks(scenario, about),
    ...controlRemarks(scenario),
    {
      tone: 'plain',
      text: 'These are hard efforts: if you are not used to them, ask a doctor first. Others use an open trail, and local rules say who may: ride at your own pace down, give way, and let motors, brakes and batteries cool.',
    },
  ];
}

const text = (scenario: Scenario, si: number, kind: Result['kind']): string =>
  formatQuantity(si, kind, scenario.system, { trim: true });

/** A result as people read it. */
function said(scenario: Scenario, outcome: PlanOutcome, name: string): string {
  const { si, kind } = resultOf(outcome, name);
  return formatQuantity(si, kind, scenario.system);
}

const times = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);

/** What the plan finds, and what it cannot. */
function findRemarks(scenario: Scenario, outcome: PlanOutcome, about: PlanAbout): Remark[] {
  const of = (name: string): string => said(scenario, outcome, name);
  const wanted = text(scenario, numberOf(scenario, 'chance'), 'percent');
  const difference = numberOf(scenario, 'difference');
  const remarks: Remark[] = [];
  if (resultOf(outcome, 'detectable-difference').si === undefined)
    remarks.push({
      tone: 'caution',
      text: 'One run of each shows no scatter, so nothing can be called real: ride each bike twice at least.',
    });
  else
    remarks.push({
      tone: 'plain',
      text: `Between two bikes as slow as ${bikeName(scenario, about.slowest)}, ${about.repeats === 1 ? 'one run of each finds' : `${about.repeats} runs of each find`} ${of('detectable-difference')}, about ${of('detectable-power')}, with a chance of ${wanted}. Smaller differences they may miss. Where every pair is judged at once, it takes ${of('detectable-difference-all')}.`,
    });
  if (about.needed === null)
    remarks.push({
      tone: 'wrong',
      text:
        difference > 0
          ? `No number of runs to 60 finds ${text(scenario, difference, 'seconds')} with a chance of ${wanted}. Tyres and drive do not average: what they may differ by hides anything below ${of('least-difference')}. Make the bikes more alike, or look for more.`
          : 'No number of runs shows a difference of nothing. Say how many seconds would matter to a reader.',
      field: 'difference',
    });
  else if (isGiven(scenario, 'repeats') && about.repeats < about.needed)
    remarks.push({
      tone: 'caution',
      text: `You plan ${about.repeats} of each; ${text(scenario, difference, 'seconds')} with that chance takes ${about.needed}. With yours the chance is ${of('chance')}.`,
    });
  if (inputOf(scenario, 'same-tyres') === 'no')
    remarks.push({
      tone: 'caution',
      text: `Unlike tyres cost more than many motors differ by. Put the same tyres on all, or ride two runs on each bike with its motor off.`,
    });
  return remarks;
}

function scatterRemarks(scenario: Scenario, outcome: PlanOutcome, { scatter }: PlanAbout): Remark[] {
  if (typeof inputOf(scenario, 'own-times') !== 'string')
    return [
      {
        tone: 'plain',
        text: 'The scatter is assumed. Three repeats of your own on one bike tell more: put their times under the fold.',
      },
    ];
  const { low, high } = resultOf(outcome, 'repeats');
  const range =
    low === undefined || (low === high && high !== undefined)
      ? ''
      : ` So few repeats tell it roughly: ${high === undefined ? `${low} runs of each or many more` : `${low} to ${high} runs of each`} may be needed.`;
  return [
    {
      tone: scatter.relative > 0 ? 'plain' : 'caution',
      text:
        scatter.relative > 0
          ? `Your own repeats count in place of the assumed scatter, the meter and the stopwatch: one run lies within ±${said(scenario, outcome, 'scatter')} of total power.${range}`
          : 'Your own repeats are all alike, which no day is: the plan has no scatter to go by.',
    },
  ];
}

/** Whether the legs last and, where they do not, what to drop first. */
function legsRemarks(scenario: Scenario, outcome: PlanOutcome, { legs, nearest, repeats }: PlanAbout): Remark[] {
  if (legs.lowest >= 0)
    return [
      {
        tone: 'plain',
        text: `Your legs last by the endurance you give. That says nothing about being tired after ${said(scenario, outcome, 'rider-work')} of work in a day.`,
      },
    ];
  const power = resultOf(outcome, 'power-lasting');
  const rest = resultOf(outcome, 'rest-lasting');
  const steps = [
    // where one run is too long by itself, fewer of them do not help
    ...(rest.si === undefined ? [] : spared(scenario, nearest, repeats)),
    power.si === undefined
      ? legs.aloneTooMuch
        ? 'ride the control runs at less power'
        : ''
      : `hold ${text(scenario, Math.floor(power.si), 'power')} on every run`,
    rest.si === undefined ? '' : `cool down for ${formatQuantity(Math.ceil(rest.si / 60) * 60, 'duration', 'metric')}`,
  ].filter((step) => step !== '');
  return [
    {
      tone: 'caution',
      text: `This asks more of your legs than they have: ${rest.si === undefined ? 'one run alone is too long at that power' : 'they do not come back between the runs'}. ${dropFirst(steps)}`,
    },
  ];
}

/** Bikes far enough from all others for fewer runs. */
function spared(scenario: Scenario, nearest: PlanAbout['nearest'], repeats: number): string[] {
  const far = nearest.flatMap((one, i) =>
    one.repeats !== null && one.repeats < repeats
      ? [{ name: bikeName(scenario, i), least: Math.max(2, one.repeats) }]
      : [],
  );
  if (far.length === 0) return [];
  if (far.length === nearest.length)
    return [
      `ride each bike ${times(Math.max(...far.map(({ least }) => least)))}, which shows the gaps that you expect`,
    ];
  return [
    `ride the bikes that are least alike less often, if their times come out as expected (${far
      .map(({ name, least }) => `${name} ${times(least)}`)
      .join(', ')})`,
  ];
}

const dropFirst = (steps: string[]): string =>
  steps.length === 0
    ? ''
    : `Drop first: ${steps.map((step, i) => (steps.length > 1 ? `(${i + 1}) ${step}` : step)).join('; ')}.`;

function lightRemarks(scenario: Scenario, outcome: PlanOutcome, about: PlanAbout): Remark[] {
  const { schedule, lastLight, nearest, repeats } = about;
  if (schedule.end <= lastLight) return [];
  const first = schedule.runs[0]?.start ?? 0;
  if (lastLight <= first)
    return [{ tone: 'wrong', text: 'Last light comes before the first start.', field: 'last-light' }];
  const fits = resultOf(outcome, 'repeats-in-light').si ?? 0;
  const found = resultOf(outcome, 'detectable-in-light');
  const steps = [
    ...spared(scenario, nearest, repeats),
    fits > 1 && found.si !== undefined
      ? `ride ${fits} of each, which find ${said(scenario, outcome, 'detectable-in-light')}`
      : '',
    'ride a second day, with control runs of its own',
  ].filter((step) => step !== '');
  return [
    {
      tone: 'caution',
      text: `The last run is back at ${clockText(schedule.end)}, after last light at ${clockText(lastLight)}: ${said(scenario, outcome, 'runs-in-light')} of ${schedule.runs.length} runs fit. ${dropFirst(steps)}`,
    },
  ];
}

function bikeRemarks(scenario: Scenario, { bikes, small }: PlanAbout): Remark[] {
  const remarks: Remark[] = [];
  for (const i of small)
    remarks.push({
      tone: 'wrong',
      text: `${bikeName(scenario, i)}: one run takes more than its battery gives above what is kept. Choose a shorter hill, or keep less.`,
    });
  bikes.forEach(({ climb, time, totalPower }, i) => {
    const name = bikeName(scenario, i);
    const speed = climb.hill.distance / time;
    const motor = totalPower - climb.riderPower;
    if (motor < -0.5)
      remarks.push({
        tone: 'wrong',
        text: `${name}: the expected time is longer than legs alone would need. Check the time, the power and the weights.`,
      });
    else if (climb.assistLimit !== null && motor > 0.5 && speed >= climb.assistLimit)
      remarks.push({
        tone: 'wrong',
        text: `${name}: the expected time is faster than its motor may help. Check the time, the hill and the limit.`,
      });
    else if (climb.assistLimit !== null && motor > 0.5 && speed > climb.assistLimit - BELOW_LIMIT)
      remarks.push({
        tone: 'caution',
        text: `${name} comes within ${text(scenario, BELOW_LIMIT, 'speed')} of its assist limit, where its motor begins to give less: a steeper hill shows what it can do.`,
      });
    if (isGiven(scenario, 'time', i) && isGiven(scenario, 'motor', i))
      remarks.push({ tone: 'plain', text: `${name} has an expected time, which beats its motor figure.` });
  });
  return remarks;
}

function controlRemarks(scenario: Scenario): Remark[] {
  if (scenario.controls >= 2) return [];
  const example = calculatorOf(scenario.calculator).controls;
  return [
    {
      tone: 'caution',
      text:
        scenario.controls === 0
          ? `Without a control run nobody can tell the motors’ watts, only the gaps in time. Ride ${example}, first and last.`
          : 'One control run shows no drift, and every motor hangs on it. Ride two, first and last.',
    },
  ];
}

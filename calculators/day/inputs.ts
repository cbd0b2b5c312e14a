import type { Kind, Parsed, System } from '../quantities/index.ts';
import { kmh } from '../scenario/amounts.ts';
import {
  BIKE_SCALE,
  DAY_DOUBTS,
  DISTANCE_RELATIVE,
  DRAG_HALF_WIDTH,
  GAIN_RELATIVE,
  METER_SCALE,
  RIDER_SCALE,
  STEADINESS,
  STOPWATCH,
} from '../scenario/doubts.ts';
import { readText } from '../scenario/editing.ts';
import { GAUGE } from '../scenario/parameters/battery.ts';
import { CLIMB } from '../scenario/parameters/climb.ts';
import { CARRIED, TIMED } from '../scenario/parameters/measured.ts';
import { MOTOR } from '../scenario/parameters/motor.ts';
import type { Parameter } from '../scenario/schema.ts';

/*
 * Every text that a test day holds. Names, kinds and ranges are those of the public vocabulary where it has them, so that a table, a file
 * and a link of a calculator call the same thing by the same name.
 */

/** One input of a test day. `min`, `max` and `default` in SI; of a text `max` is the number of characters. */
export interface DayInput {
  name: string;
  kind: Kind;
  min: number;
  max: number;
  label: string;
  hint?: string;
  /** counts while nothing is typed; null is the word `none` */
  default?: number | null;
  allowNone?: boolean;
  choices?: readonly { label: string; text?: string }[];
}

/** Part of the set-up that an input belongs to. */
export type SetupGroup = 'about' | 'hill' | 'conditions' | 'rider' | 'instruments' | 'target';

export interface SetupInput extends DayInput {
  group: SetupGroup;
}

type Own = Partial<Omit<DayInput, 'name' | 'kind'>>;

const vocabulary = new Map(
  [...CLIMB, ...MOTOR, ...TIMED, ...GAUGE, ...CARRIED].map((parameter): [string, Parameter] => [
    parameter.name,
    parameter,
  ]),
);

/** An input as the vocabulary has it, with what a test day says differently. */
function known(name: string, own: Own = {}): DayInput {
  const parameter = vocabulary.get(name);
  if (!parameter) throw new RangeError(`The vocabulary has no parameter “${name}”.`);
  const { kind, min, max, label, allowNone, choices } = parameter;
  return { name, kind, min, max, label, ...(allowNone ? { allowNone } : {}), ...(choices ? { choices } : {}), ...own };
}

const text = (name: string, label: string, max: number, hint?: string): DayInput => ({
  name,
  kind: 'text',
  min: 0,
  max,
  label,
  ...(hint ? { hint } : {}),
});

/** How well something is known: a half-width that holds 95 of 100. */
const known95 = (name: string, kind: Kind, max: number, label: string, standard: number, hint?: string): DayInput => ({
  name,
  kind,
  min: 0,
  max,
  label,
  default: standard,
  ...(hint ? { hint } : {}),
});

const group = (name: SetupGroup, inputs: readonly DayInput[]): SetupInput[] =>
  inputs.map((input) => ({ ...input, group: name }));

export const setupInputs: readonly SetupInput[] = [
  ...group('about', [text('title', 'Title', 80), text('date', 'Date', 40)]),
  ...group('hill', [
    known('distance', { hint: 'From start line to finish line, as a wheel or a track measures it.' }),
    known('gain', { hint: 'From a survey or a map; a barometer errs by some per cent.' }),
    text('place', 'Place', 80, 'As near as others may know; links and files carry it.'),
  ]),
  ...group('conditions', [
    known('altitude', { default: 500 }),
    known('temperature', { default: 15 }),
    known('wind', { default: 0, hint: 'On all runs; a run can have its own. A tail wind has a minus.' }),
    known('rolling', { default: 0.028, hint: 'Before any control run is looked at; a control run counts for more.' }),
    known('drag', { default: 0.45 }),
    known('drive', { default: 0.96 }),
  ]),
  ...group('rider', [
    known('rider', { default: 82, hint: 'With kit, helmet and bottle, as ridden.' }),
    known('power', {
      min: 1,
      label: 'Target power',
      hint: 'Results are compared at this power. Empty: the mean of the runs.',
    }),
    text('tester', 'Who rode', 80, 'Name or initials; links and files carry it too.'),
  ]),
  ...group('instruments', [
    known95('meter', 'percent', 0.3, 'Power meter, all runs alike', METER_SCALE),
    known95('meter-repeat', 'percent', 0.3, 'Power meter, each run', STEADINESS),
    known95('watch', 'seconds', 60, 'Stopwatch', STOPWATCH),
    known95('scale-rider', 'mass', 20, 'Scale, rider', RIDER_SCALE),
    known95('scale-bike', 'mass', 10, 'Scale, bikes', BIKE_SCALE),
    known95('distance-known', 'percent', 0.3, 'Distance', DISTANCE_RELATIVE),
    known95('gain-known', 'percent', 0.5, 'Height gained', GAIN_RELATIVE),
    known95('wind-known', 'wind', 10, 'Wind', DAY_DOUBTS.headWind),
    known95('drag-known', 'area', 0.5, 'Drag area', DRAG_HALF_WIDTH),
    known95('density-known', 'percent', 0.3, 'Air density', DAY_DOUBTS.density),
    known95('between', 'percent', 0.3, 'Chains and gears, bike to bike', DAY_DOUBTS.efficiencyBetween),
    known95(
      'rolling-by-speed',
      'percent',
      0.3,
      'Rolling, for each m/s faster',
      DAY_DOUBTS.rollingWithSpeed,
      'A slow control run cannot see it.',
    ),
    known95(
      'tyres-known',
      'ratio',
      0.05,
      'Rolling between unlike tyres',
      DAY_DOUBTS.tyres,
      'Counts only where tyres differ.',
    ),
    known95(
      'scatter',
      'percent',
      0.5,
      'One run to the next',
      DAY_DOUBTS.scatter,
      'Of total power. Your own repeats take its place.',
    ),
    known95('battery-known', 'percent', 0.5, 'Battery energy', DAY_DOUBTS.battery),
    known('step', { default: 0.01, label: 'Gauge moves in steps of', hint: 'Five bars are steps of 20 %.' }),
  ]),
  ...group('target', [
    known('target-distance', { hint: 'With distance and height, no grade is needed.' }),
    known('target-gain'),
    known('target-grade', { hint: 'Empty: the measured hill’s.' }),
    known('target-rider', { hint: 'Empty: the tester’s.' }),
    known('target-power', { min: 1, hint: 'Empty: the target power.' }),
    known('target-rolling', { hint: 'Empty: as on the measured hill.' }),
    known('target-wind', { hint: 'Empty: as on the measured hill.' }),
    known('target-altitude', { hint: 'Empty: as on the measured hill.' }),
    known('target-temperature', { hint: 'Empty: as on the measured hill.' }),
  ]),
];

export const bikeInputs: readonly DayInput[] = [
  known('name'),
  known('bike', { hint: 'Weigh it as ridden, to 0.1 kg: differences between bikes count.' }),
  known('motor', {
    label: 'Claimed peak power',
    hint: 'Only to check the result against. Write none for a bike without a motor.',
  }),
  known('limit', {
    default: kmh(25),
    hint: 'What applies to you is local law. Write none where nothing limits the motor.',
  }),
  known('battery', { hint: 'What its label says.' }),
  known('support', { hint: 'Motor power as a share of yours at full assist, where it is known.' }),
  text('tyres', 'Tyre and pressure', 80, 'The same words on two bikes mean the same tyres.'),
];

export const runInputs: readonly DayInput[] = [
  known('time', { label: 'Time', hint: 'From line to line.' }),
  known('power', { min: 1, label: 'Rider power', hint: 'Mean of exactly the timed stretch, zeros included.' }),
  known('cadence', { hint: 'Mean. Only to find runs that were ridden unlike the others of their bike.' }),
  known('start', { hint: 'As shown at the start line.' }),
  known('end', { hint: 'As shown at the finish.' }),
  {
    name: 'speed',
    kind: 'speed',
    min: kmh(1),
    max: kmh(120),
    label: 'Mean speed',
    hint: 'Only to check the time against.',
  },
  known('rider', { hint: 'Only if it differs from the day’s.' }),
  known('wind', { hint: 'Only if it differs from the day’s.' }),
  text('note', 'Note', 200),
];

/** Where texts stand: in the set-up, with a bike, with a run. */
export type Place = 'setup' | 'bike' | 'run';

export const inputsOf: Readonly<Record<Place, readonly DayInput[]>> = {
  setup: setupInputs,
  bike: bikeInputs,
  run: runInputs,
};

const byName: Readonly<Record<Place, ReadonlyMap<string, DayInput>>> = {
  setup: new Map(setupInputs.map((input) => [input.name, input])),
  bike: new Map(bikeInputs.map((input) => [input.name, input])),
  run: new Map(runInputs.map((input) => [input.name, input])),
};

/** The input of that name; undefined for a text that this version does not know. */
export const inputOf = (place: Place, name: string): DayInput | undefined => byName[place].get(name);

/** Reads what somebody typed; a plain number has the unit that fields of this system show. Never throws. */
export const readInput = (input: DayInput, typed: string, system: System): Parsed =>
  readText(input, typed, 'field', system);

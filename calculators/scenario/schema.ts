import type { Kind } from '../quantities/index.ts';

/** Addresses a calculator: `/calculators/NAME/`. */
export type CalculatorName = 'climb-time' | 'side-by-side' | 'bigger-hill' | 'power-to-weight';

export type Group = 'hill' | 'rider' | 'bike' | 'conditions' | 'control' | 'target' | 'companion';

/**
 * One input of the public vocabulary. `min` and `max` are SI (grade as tan, percent as a ratio, temperature in °C, cadence in rpm).
 * The table below is the only place that knows names, units, ranges and wording: links, fields, `/reference/links/` and prose read it.
 * What the links page says of each stands in `meanings.ts`, which readers of a calculator need not load.
 */
export interface Parameter {
  name: string;
  group: Group;
  kind: Kind;
  min: number;
  max: number;
  /** a link carries one value per bike or per control run, separated by commas */
  list?: 'bike' | 'control';
  /** the word `none` is a value: no motor, no assist limit, no control run */
  allowNone?: boolean;
  /** beside the field */
  label: string;
  /** below the field */
  hint?: string;
  /** id in the bibliography of a figure that the hint names */
  source?: string;
  /** values that one tap sets; without a value, the default */
  choices?: readonly { label: string; text?: string }[];
}

// the same arithmetic as a typed value, so that a typed default is the default to the last digit
const kmh = (value: number): number => (value * 5) / 18;
const wattHours = (value: number): number => value * 3600;

export const parameters: readonly Parameter[] = [
  {
    name: 'distance',
    group: 'hill',
    kind: 'distance',
    min: 20,
    max: 200_000,
    label: 'Along the road',
  },
  {
    name: 'gain',
    group: 'hill',
    kind: 'height',
    min: 0,
    max: 9000,
    label: 'Height gained',
  },
  {
    name: 'grade',
    group: 'hill',
    kind: 'grade',
    min: -0.4,
    max: 0.6,
    label: 'Or mean grade',
    hint: 'Used when the height is left empty. 10 %, 1 in 10 and 5.7° all work.',
  },
  {
    name: 'altitude',
    group: 'conditions',
    kind: 'height',
    min: -430,
    max: 6000,
    label: 'Altitude',
  },
  {
    name: 'temperature',
    group: 'conditions',
    kind: 'temperature',
    min: -40,
    max: 50,
    label: 'Temperature',
  },
  {
    name: 'wind',
    group: 'conditions',
    kind: 'wind',
    min: -20,
    max: 20,
    label: 'Head wind',
  },
  {
    name: 'rolling',
    group: 'conditions',
    kind: 'ratio',
    min: 0,
    max: 0.15,
    label: 'Rolling resistance',
    hint: 'A paved path took 0.008, two cross-country courses 0.022 and 0.030.',
    source: 'tengattini-2018',
    choices: [{ label: 'Paved path', text: '0.008' }, { label: 'Trail' }],
  },
  {
    name: 'drag',
    group: 'conditions',
    kind: 'area',
    min: 0.1,
    max: 1.2,
    label: 'Drag area',
  },
  {
    name: 'drive',
    group: 'conditions',
    kind: 'percent',
    min: 0.5,
    max: 1,
    label: 'Chain and gears',
  },
  {
    name: 'unit',
    group: 'conditions',
    kind: 'percent',
    min: 0.5,
    max: 1,
    label: 'Drive unit',
  },
  {
    name: 'rider',
    group: 'rider',
    kind: 'mass',
    min: 25,
    max: 250,
    label: 'Body and kit',
  },
  {
    name: 'power',
    group: 'rider',
    kind: 'power',
    min: 0,
    max: 1500,
    label: 'Power you hold',
    hint: 'For scale: racers averaged 2.7 W per kilogram of body; most of us hold less.',
    source: 'smekal-2015',
  },
  {
    name: 'name',
    group: 'bike',
    kind: 'text',
    min: 0,
    max: 40,
    list: 'bike',
    label: 'Name',
  },
  {
    name: 'bike',
    group: 'bike',
    kind: 'mass',
    min: 5,
    max: 80,
    list: 'bike',
    label: 'Bike mass',
  },
  {
    name: 'motor',
    group: 'bike',
    kind: 'power',
    min: 0,
    max: 3000,
    list: 'bike',
    allowNone: true,
    label: 'Motor gives',
    hint: 'What it gives on a climb, not what it is rated. Write none for a bike without a motor.',
  },
  {
    name: 'battery',
    group: 'bike',
    kind: 'energy',
    min: wattHours(10),
    max: wattHours(5500),
    list: 'bike',
    label: 'Battery',
  },
  {
    name: 'limit',
    group: 'bike',
    kind: 'speed',
    min: kmh(5),
    max: kmh(100),
    list: 'bike',
    allowNone: true,
    label: 'Assist limit',
    hint: 'What applies to you is local law. Write none where nothing limits the motor.',
  },
  {
    name: 'time',
    group: 'bike',
    kind: 'duration',
    min: 5,
    max: 360_000,
    list: 'bike',
    label: 'Measured time',
  },
  {
    name: 'control-time',
    group: 'control',
    kind: 'duration',
    min: 5,
    max: 360_000,
    list: 'control',
    allowNone: true,
    label: 'Time',
  },
  {
    name: 'control-power',
    group: 'control',
    kind: 'power',
    min: 1,
    max: 1500,
    list: 'control',
    label: 'Rider power',
  },
  {
    name: 'control-bike',
    group: 'control',
    kind: 'mass',
    min: 5,
    max: 80,
    list: 'control',
    label: 'Bike mass',
  },
  {
    name: 'control-rider',
    group: 'control',
    kind: 'mass',
    min: 25,
    max: 250,
    list: 'control',
    label: 'Body and kit',
  },
  {
    name: 'target-distance',
    group: 'target',
    kind: 'distance',
    min: 20,
    max: 200_000,
    label: 'Along the road',
    hint: 'With distance and height, no grade is needed.',
  },
  {
    name: 'target-gain',
    group: 'target',
    kind: 'height',
    min: 0,
    max: 9000,
    label: 'Height gained',
  },
  {
    name: 'target-grade',
    group: 'target',
    kind: 'grade',
    min: -0.4,
    max: 0.6,
    label: 'Mean grade',
    hint: 'Empty: the measured hill’s.',
  },
  {
    name: 'target-altitude',
    group: 'target',
    kind: 'height',
    min: -430,
    max: 6000,
    label: 'Altitude there',
  },
  {
    name: 'target-temperature',
    group: 'target',
    kind: 'temperature',
    min: -40,
    max: 50,
    label: 'Temperature there',
  },
  {
    name: 'target-wind',
    group: 'target',
    kind: 'wind',
    min: -20,
    max: 20,
    label: 'Head wind there',
  },
  {
    name: 'target-rolling',
    group: 'target',
    kind: 'ratio',
    min: 0,
    max: 0.15,
    label: 'Rolling resistance there',
  },
  {
    name: 'target-rider',
    group: 'target',
    kind: 'mass',
    min: 25,
    max: 250,
    label: 'Body and kit there',
  },
  {
    name: 'target-power',
    group: 'target',
    kind: 'power',
    min: 0,
    max: 1500,
    label: 'Power held there',
  },
];

const byName = new Map(parameters.map((parameter) => [parameter.name, parameter]));

/** The parameter of that name. @throws RangeError for a name that the vocabulary does not have: a mistake in our own code. */
export function parameterOf(name: string): Parameter {
  const parameter = byName.get(name);
  if (!parameter) throw new RangeError(`The vocabulary has no parameter “${name}”.`);
  return parameter;
}

/** Values of version 1 of the vocabulary, SI. A list has one default per column, the last one serving all further columns; null is the word `none`. Absent: no default, the field starts empty. */
export type Defaults = Readonly<Record<string, number | string | null | readonly (number | string | null)[]>>;

/** Shared by every calculator. The hill and the bikes are invented; ranges and sources of the physical ones stand in `doubts.ts`. */
const COMMON: Defaults = {
  distance: 2400,
  gain: 235,
  altitude: 500,
  temperature: 15,
  wind: 0,
  rolling: 0.028,
  drag: 0.45,
  drive: 0.96,
  unit: 0.8,
  rider: 82,
  power: 170,
  limit: kmh(25),
};

const THREE_BIKES: Defaults = {
  name: ['Light', 'Mid', 'Full', 'Bike 4', 'Bike 5', 'Bike 6'],
  bike: [17, 21, 24, 22],
  motor: [280, 400, 560, 400],
  battery: [wattHours(360), wattHours(540), wattHours(720), wattHours(540)],
};

export interface Calculator {
  name: CalculatorName;
  title: string;
  /** inputs in the order of the form, by section; `folded` ones stand under the fold */
  sections: readonly { group: Group; names: readonly string[]; folded?: readonly string[] }[];
  /** how many bikes it takes, and how many its example has */
  bikes: { min: number; max: number; example: number };
  /** control runs of the example; 0 to 6 can be given where there is a control section */
  controls: number;
  /** by version of the vocabulary: a link without `v` means version 1 for ever */
  defaults: Readonly<Record<number, Defaults>>;
}

const HILL = { group: 'hill', names: ['distance', 'gain', 'grade'] } as const;
const RIDER = { group: 'rider', names: ['rider', 'power'] } as const;
const CONDITIONS = {
  group: 'conditions',
  names: ['rolling'],
  folded: ['drag', 'drive', 'unit', 'altitude', 'temperature', 'wind'],
} as const;

export const calculators: Readonly<Record<CalculatorName, Calculator>> = {
  'climb-time': {
    name: 'climb-time',
    title: 'Climb time',
    sections: [HILL, RIDER, { group: 'bike', names: ['bike', 'motor'], folded: ['battery', 'limit'] }, CONDITIONS],
    bikes: { min: 1, max: 1, example: 1 },
    controls: 0,
    defaults: { 1: { ...COMMON, name: 'Bike', bike: 20, motor: 380, battery: wattHours(540) } },
  },
  'side-by-side': {
    name: 'side-by-side',
    title: 'Side by side',
    sections: [
      HILL,
      RIDER,
      { group: 'bike', names: ['name', 'bike', 'motor'], folded: ['time', 'battery', 'limit'] },
      CONDITIONS,
    ],
    bikes: { min: 2, max: 6, example: 3 },
    controls: 0,
    defaults: { 1: { ...COMMON, ...THREE_BIKES } },
  },
  'bigger-hill': {
    name: 'bigger-hill',
    title: 'Another hill',
    sections: [
      HILL,
      RIDER,
      { group: 'bike', names: ['name', 'bike', 'time'], folded: ['battery', 'limit'] },
      { group: 'control', names: ['control-time', 'control-power', 'control-bike'], folded: ['control-rider'] },
      {
        group: 'target',
        names: ['target-gain', 'target-grade', 'target-distance', 'target-rider', 'target-power'],
        folded: ['target-rolling', 'target-altitude', 'target-temperature', 'target-wind'],
      },
      { ...CONDITIONS, names: [], folded: ['rolling', ...CONDITIONS.folded] },
    ],
    bikes: { min: 1, max: 6, example: 3 },
    controls: 1,
    defaults: {
      1: {
        ...COMMON,
        ...THREE_BIKES,
        time: [704, 575, 478, 600],
        'control-time': [1720, 1360],
        'control-power': [170, 220],
        'control-bike': [13],
        'target-gain': 600,
      },
    },
  },
  'power-to-weight': {
    name: 'power-to-weight',
    title: 'Power to weight',
    sections: [RIDER, { group: 'bike', names: ['bike', 'motor'], folded: ['limit'] }, HILL, CONDITIONS],
    bikes: { min: 1, max: 1, example: 1 },
    controls: 0,
    defaults: { 1: { ...COMMON, name: 'Bike', bike: 20, motor: 380 } },
  },
};

export const VERSION = 1;

/** Every parameter that a calculator reads. */
export function namesOf(calculator: CalculatorName): string[] {
  return calculators[calculator].sections.flatMap((section) => [...section.names, ...(section.folded ?? [])]);
}

/** Default of a parameter in a column (from 0), SI; undefined where the field starts empty. */
export function defaultOf(
  calculator: CalculatorName,
  name: string,
  column = 0,
  version = VERSION,
): number | string | null | undefined {
  const value = calculators[calculator].defaults[version]?.[name];
  return Array.isArray(value) ? (value[column] ?? value.at(-1)) : (value as number | string | null | undefined);
}
